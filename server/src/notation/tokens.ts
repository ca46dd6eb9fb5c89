/**
 * Knows what kinds of words and marks a line is made of.
 * Refuses to know how they are found (`scan.ts`, `label.ts`) and what they mean together (`statements.ts`).
 */
import type { Written } from './words.ts';

/**
 * What a token is. The order is used: numbers first, then what opens a measure, then the other amounts, and what ends a
 * name after all that a name may hold.
 */
export const Kind = {
  Numeral: 0,
  Fraction: 1,
  Vulgar: 2,
  DecimalComma: 3,
  /** `one`, `half`, `dozen`, on a line of the list. */
  NumberWord: 4,

  About: 5,
  /** The sign of a negative number. */
  Minus: 6,
  Gas: 7,

  /** `to taste`, `as needed`: an amount of no fixed weight. */
  Free: 8,
  Overnight: 9,

  Word: 10,
  DateMark: 11,
  FluidOunce: 12,
  /** `\#` is the character; `\butter` is no mention. */
  Escaped: 13,
  Percent: 14,
  Degree: 15,
  Dash: 16,
  RightParen: 17,
  LeftBracket: 18,
  RightBracket: 19,
  Colon: 20,
  /** Anything else, a pair of surrogates whole, half a pair alone. */
  Other: 21,
  // Words that are given a kind of their own where they stand for it; elsewhere they stay words.
  To: 22,
  UnitWord: 23,
  Fan: 24,
  Times: 25,
  CountedWord: 26,
  SizeWord: 27,
  /** `heaped`, `scant`: how a measure is filled. */
  Bias: 28,
  Of: 29,

  Comma: 30,
  Equals: 31,
  LeftParen: 32,
  From: 33,
  Joiner: 34,
  /** The word that says what the line is. */
  Opening: 35,

  Blank: 36,
  Comment: 37,
  /** There is no token here. */
  End: 38,
} as const;
export type Kind = (typeof Kind)[keyof typeof Kind];

/** A run of characters of a line. */
export class Token {
  kind: Kind;
  readonly start: number;
  readonly end: number;
  /** Of a word: what is known of it. */
  readonly written: Written | undefined;

  constructor(kind: Kind, start: number, end: number, written: Written | undefined) {
    this.kind = kind;
    this.start = start;
    this.end = end;
    this.written = written;
  }
}

/** Number, fraction, glyph or word for one. */
export const isNumber = (kind: Kind): boolean => kind <= Kind.NumberWord;

/** Whether a measure begins here: a number, or what was found to stand before one. */
export const opensMeasure = (kind: Kind): boolean => kind <= Kind.Gas;

export const opensAmount = (kind: Kind): boolean => kind <= Kind.Overnight;

/** Whether a name may go on with this. */
export const isNamePart = (kind: Kind): boolean => kind < Kind.Comma;

/** A word that says nothing but what it names. */
export const isPlain = ({ kind, written }: Token): boolean => kind === Kind.Word && written?.plain === true;
