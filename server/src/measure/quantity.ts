/**
 * Knows what an amount says once it is read: a number or a range of something.
 * Refuses to know where it was written (`notation/`) or what it weighs (`food/`).
 */
import type { UnitSymbol } from './unit.ts';

/** A closed interval; `low === high` for a plain number. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

export type Size = 'small' | 'medium' | 'large' | 'extra large' | 'jumbo';

/** The words that count pieces of a food, in the singular. */
export const COUNT_WORDS = [
  'bag',
  'bar',
  'bottle',
  'box',
  'bulb',
  'bunch',
  'cake',
  'can',
  'carton',
  'clove',
  'cube',
  'ear',
  'envelope',
  'fillet',
  'handful',
  'head',
  'jar',
  'knob',
  'leaf',
  'loaf',
  'pack',
  'packet',
  'piece',
  'pod',
  'rasher',
  'rib',
  'sachet',
  'sheet',
  'slice',
  'sprig',
  'stalk',
  'stem',
  'stick',
  'strip',
  'tin',
  'tub',
  'wedge',
] as const;
export type CountWord = (typeof COUNT_WORDS)[number];

/** An amount as read: `2 large`, `1 1/2 cup`, `3 cloves`, `1 can of 400 g`, `40-45 g`. */
export interface Quantity extends Range {
  /** `about` stood before it. */
  readonly about: boolean;
  readonly unit?: UnitSymbol;
  readonly size?: Size;
  readonly count?: CountWord;
  /** What one counted piece holds: `1 can of 400 g`. */
  readonly each?: Quantity;
}

export const exactly = (value: number): Range => ({ low: value, high: value });
export const scaleRange = (r: Range, by: number): Range => ({ low: r.low * by, high: r.high * by });
export const addRanges = (a: Range, b: Range): Range => ({ low: a.low + b.low, high: a.high + b.high });
export const middle = (r: Range): number => (r.low + r.high) / 2;

const IRREGULAR: Readonly<Record<string, CountWord>> = {
  leaves: 'leaf',
  loaves: 'loaf',
  bunches: 'bunch',
  boxes: 'box',
  pieces: 'piece',
  handfuls: 'handful',
  handsful: 'handful',
  tins: 'tin',
  cakes: 'cake',
  ribs: 'rib',
};
const BY_WORD = new Map<string, CountWord>();
for (const word of COUNT_WORDS) {
  BY_WORD.set(word, word);
  BY_WORD.set(`${word}s`, word);
}
for (const [plural, word] of Object.entries(IRREGULAR)) BY_WORD.set(plural, word);

/** The count word a written word is, singular or plural, any case. */
export function countWord(word: string): CountWord | undefined {
  return BY_WORD.get(word.toLowerCase());
}
