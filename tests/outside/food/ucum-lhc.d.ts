/** The part of the library that the tests use; it ships no types. */
declare module '@lhncbc/ucum-lhc' {
  export class UcumLhcUtils {
    static getInstance(): UcumLhcUtils;
    convertUnitTo(from: string, value: number, to: string): { readonly status: string; readonly toVal: number | null };
  }
}
