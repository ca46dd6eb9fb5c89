/** A table under `server/data/`, imported as its text. */
declare module '*.tsv' {
  const text: string;
  export default text;
}

/** A page of the documentation, imported as its text. */
declare module '*.md' {
  const text: string;
  export default text;
}
