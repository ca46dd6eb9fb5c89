/**
 * Knows what an amount says once it is read: a number or a range of something.
 * Refuses to know where it was written (`notation/`) or what it weighs (`food/`).
 */
import type { Bias } from './bias.ts';
import type { CountWord } from './count-words.ts';
import type { UnitSymbol } from './unit-symbol.ts';

/** A closed interval; `low === high` for a plain number. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

export type Size = 'small' | 'medium' | 'large' | 'extra large' | 'jumbo';

/** An amount as read: `2 large`, `1 1/2 cup`, `3 cloves`, `1 can of 400 g`, `40-45 g`. */
export interface Quantity extends Range {
  /** `about` stood before it. */
  readonly about: boolean;
  readonly unit?: UnitSymbol;
  readonly size?: Size;
  readonly count?: CountWord;
  /** What one counted piece holds: `1 can of 400 g`. */
  readonly each?: Quantity;
  /** Of what a can holds: the number that the trade has for its size. */
  readonly trade?: string;
  /** How full the measure is: `heaped`. */
  readonly bias?: Bias;
  /** The other end of a range in another unit: `1 tsp to 1 tbsp`. */
  readonly upTo?: Quantity;
  /** The further terms of a sum: `1 lb 4 oz`. */
  readonly plus?: readonly Quantity[];
}

export const exactly = (value: number): Range => ({ low: value, high: value });
export const scaleRange = (r: Range, by: number): Range => ({ low: r.low * by, high: r.high * by });
export const addRanges = (a: Range, b: Range): Range => ({ low: a.low + b.low, high: a.high + b.high });
export const middle = (r: Range): number => (r.low + r.high) / 2;
