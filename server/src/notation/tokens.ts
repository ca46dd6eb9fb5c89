/**
 * Knows what kinds of words and marks a line is made of, and the words that open one.
 * Refuses to know how they are found (`scan.ts`, `label.ts`) and what they mean together (`statements.ts`).
 */
import type { Written } from './words.ts';

/** The word that opens a line and says what it is. */
export const KEYWORDS = [
  'recipe',
  'by',
  'yield',
  'pan',
  'oven',
  'serve',
  'tags',
  'note',
  'source',
  'from',
  'part',
  'optional',
  'do',
  'trial',
  'took',
  'reached',
  'weighed',
  'used',
  'saw',
  'tested',
  'verdict',
  'swap',
  'drop',
  'add',
  'food',
  'like',
  'also',
  'trim',
  'price',
  'contains',
  'allow',
] as const;
export type Keyword = (typeof KEYWORDS)[number];

/** The composition lines of a food block. */
export const COMPONENTS = [
  'water',
  'fat',
  'protein',
  'carbohydrate',
  'sugar',
  'starch',
  'fibre',
  'salt',
  'ash',
  'alcohol',
] as const;
export type Component = (typeof COMPONENTS)[number];

/**
 * What a token is. The order is used: numbers first, then what opens a measure, then the other amounts, and what ends a
 * name after all that a name may hold.
 */
export const Kind = {
  Numeral: 0,
  Fraction: 1,
  Vulgar: 2,
  DecimalComma: 3,

  About: 4,
  /** The sign of a negative number. */
  Minus: 5,
  Gas: 6,

  /** `to taste`, `as needed`: an amount of no fixed weight. */
  Free: 7,
  Overnight: 8,

  Word: 9,
  DateMark: 10,
  FluidOunce: 11,
  /** `\#` is the character; `\butter` is no mention. */
  Escaped: 12,
  Percent: 13,
  Degree: 14,
  Dash: 15,
  RightParen: 16,
  LeftBracket: 17,
  RightBracket: 18,
  Colon: 19,
  /** Anything else, a pair of surrogates whole, half a pair alone. */
  Other: 20,
  // Words that are given a kind of their own where they stand for it; elsewhere they stay words.
  To: 21,
  UnitWord: 22,
  Fan: 23,
  Times: 24,
  CountedWord: 25,
  SizeWord: 26,
  Of: 27,

  Comma: 28,
  Equals: 29,
  LeftParen: 30,
  From: 31,
  Joiner: 32,
  /** The word that says what the line is. */
  Opening: 33,

  Blank: 34,
  Comment: 35,
  /** There is no token here. */
  End: 36,
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

/** Number, fraction or glyph. */
export const isNumber = (kind: Kind): boolean => kind <= Kind.DecimalComma;

/** Whether a measure begins here: a number, or what was found to stand before one. */
export const opensMeasure = (kind: Kind): boolean => kind <= Kind.Gas;

export const opensAmount = (kind: Kind): boolean => kind <= Kind.Overnight;

/** Whether a name may go on with this. */
export const isNamePart = (kind: Kind): boolean => kind < Kind.Comma;
