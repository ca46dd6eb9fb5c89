/**
 * Knows what all terms of an amount come to, in the base unit of what they measure.
 * Refuses to know foods: a number of pieces has no total.
 */
import type { Quantity, Range } from './quantity.ts';
import { addRanges, scaleRange } from './quantity.ts';
import { baseOf, type Dimension, dimensionOf, type Measures } from './unit.ts';

export interface Total extends Range {
  readonly dimension: Dimension;
}

/** In g, ml, mm or s; undefined for pieces, shares and temperatures, and where a term is of another kind than the first. */
export function totalOf({ unit, low, high, plus = [], upTo }: Quantity, measures: Measures): Total | undefined {
  const base = unit === undefined ? undefined : baseOf(unit, measures);
  if (unit === undefined || base === undefined) return undefined;
  const dimension = dimensionOf(unit);
  let sum = scaleRange({ low, high }, base);
  for (const term of plus) {
    const more = totalOf(term, measures);
    if (more?.dimension !== dimension) return undefined;
    sum = addRanges(sum, more);
  }
  const most = upTo === undefined ? undefined : totalOf(upTo, measures);
  return { dimension, low: sum.low, high: Math.max(sum.high, most?.high ?? 0) };
}
