/** Knows what is kept for the next start of a program, and how its figures stand behind it. */

/**
 * The text and the tables are kept, then what was compiled. Behind that stand, in four bytes each, how long text and tables are, how many
 * bytes of code the process had then, whether the tables are Latin letters, and the checksum of all before it.
 */
export const NUMBERS = 4;
export const NUMBER_BYTES = 4;

export interface Texts {
  readonly text: Buffer;
  readonly tables: Buffer;
  /** A byte a letter, which are read ten times as fast as UTF-8. */
  readonly isLatin: boolean;
}

/** What was compiled, and how many bytes of code the process had then. */
export interface Code {
  readonly data: Buffer;
  readonly codeBytes: number;
}
