/**
 * Knows the numbers and fractions that cooks write as words, one row a word.
 * Refuses to know what is counted.
 */
import type { Range } from './quantity.ts';

export interface NumberWord extends Range {
  /** `a` counts one of what follows, and is no number by itself. */
  readonly article?: true;
  /** It is a part, of which a number may stand before it: `three quarters`, `one-half`. */
  readonly part?: true;
  /** It is a lot, of which a number may stand before it: `2 dozen`, `half a dozen`. */
  readonly lot?: true;
}

/** From one to twelve, in order: those that prose writes out. */
const NUMBERS_IN_PROSE = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

const TEENS = ['thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'];
const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

const ARTICLE: NumberWord = { low: 1, high: 1, article: true };
const whole = (value: number): NumberWord => ({ low: value, high: value });
const part = (value: number): NumberWord => ({ low: value, high: value, part: true });
const lot = (low: number, high = low): NumberWord => ({ low, high, lot: true });

/** `a few` and `several` have no number: how many is common practice, no source. */
const ROWS: readonly (readonly [string, NumberWord])[] = [
  ['a', ARTICLE],
  ['an', ARTICLE],
  ...NUMBERS_IN_PROSE.map((word, i) => [word, whole(i + 1)] as const),
  ...TEENS.map((word, i) => [word, whole(i + 13)] as const),
  ...TENS.map((word, i) => [word, whole((i + 2) * 10)] as const),
  ['hundred', lot(100)],
  ['dozen', lot(12)],
  ['doz', lot(12)],
  ['dz', lot(12)],
  ['dzn', lot(12)],
  ['score', lot(20)],
  ['pair', lot(2)],
  ['couple', lot(2)],
  ['brace', lot(2)],
  ['few', { low: 3, high: 5 }],
  ['several', { low: 3, high: 6 }],
  ['half', part(1 / 2)],
  ['halves', part(1 / 2)],
  ['third', part(1 / 3)],
  ['thirds', part(1 / 3)],
  ['quarter', part(1 / 4)],
  ['quarters', part(1 / 4)],
  ['fourth', part(1 / 4)],
  ['fourths', part(1 / 4)],
  ['fifth', part(1 / 5)],
  ['fifths', part(1 / 5)],
  ['sixth', part(1 / 6)],
  ['sixths', part(1 / 6)],
  ['eighth', part(1 / 8)],
  ['eighths', part(1 / 8)],
  ['sixteenth', part(1 / 16)],
  ['sixteenths', part(1 / 16)],
];

const BY_WORD: ReadonlyMap<string, NumberWord> = new Map(ROWS);

export const NUMBER_WORDS: readonly string[] = [...BY_WORD.keys()];

/** What a word may count or divide into; undefined when it is no number. */
export const numberWord = (word: string): NumberWord | undefined => BY_WORD.get(word.toLowerCase());

/** The whole number that a word is by itself, from one up; undefined when it is none (`a`, `dozen`, `half`). */
export function numberOfWord(word: string): number | undefined {
  const found = numberWord(word);
  if (found === undefined || found.article || found.part || found.lot || found.low !== found.high) return undefined;
  return found.low;
}

/** A number in words where prose has it so: from one to twelve. */
export const wordOfNumber = (count: number): string | undefined => NUMBERS_IN_PROSE[count - 1];
