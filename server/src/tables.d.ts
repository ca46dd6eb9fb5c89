/** A table under `server/data/`, imported as its text. */
declare module '*.tsv' {
  const text: string;
  export default text;
}
