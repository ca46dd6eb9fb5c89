/**
 * Knows where the parts of a program lie in the packed file, as the build writes it down for what starts each.
 */
export interface Program {
  /** The packed file, so many bytes of whose beginning give so many unpacked, which begin with this. */
  readonly file: string;
  readonly packedBytes: number;
  readonly unpackedBytes: number;
  readonly head: string;
  /** What makes its text, a function of what a module has: words, and places among the unpacked bytes. */
  readonly text: readonly (string | Place)[];
  /** One table after the other, `BETWEEN_TABLES` between, packed (`packed-tables.ts`). */
  readonly tables?: Place;
  /** Of the whole. */
  readonly sum: number;
  /** It runs in a process that others started for more than this. */
  readonly isGuest?: true;
}

/** From and to. */
export type Place = readonly [number, number];

export const BETWEEN_TABLES = '\0';
