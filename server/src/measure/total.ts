/**
 * Knows what all terms of an amount come to, in the base unit of what they measure.
 * Refuses to know foods: a number of pieces has no total.
 */
import { addRanges, type Quantity, type Range, scaleRange } from './quantity.ts';
import type { Measures } from './systems.ts';
import { baseOf, dimensionOf } from './unit.ts';
import type { Dimension } from './unit-row.ts';

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

/** The least and the most that an amount says, each as an amount; one where it is no range. */
export function endsOf(quantity: Quantity): readonly Quantity[] {
  const { upTo, plus, ...first } = quantity;
  const isRange = upTo !== undefined || [first, ...(plus ?? [])].some((q) => q.low !== q.high);
  if (!isRange) return [quantity];
  const end = (of: Quantity, by: 'low' | 'high'): Quantity => ({ ...of, low: of[by], high: of[by] });
  const least = { ...end(first, 'low'), ...(plus && { plus: plus.map((t) => end(t, 'low')) }) };
  const most =
    upTo === undefined
      ? { ...end(first, 'high'), ...(plus && { plus: plus.map((t) => end(t, 'high')) }) }
      : end(upTo, 'high');
  return [least, most];
}

/** An amount so many times, all its terms. */
export const timesOf = ({ plus, upTo, ...first }: Quantity, by: Range): Quantity => ({
  ...first,
  low: first.low * by.low,
  high: first.high * by.high,
  ...(plus && { plus: plus.map((t) => timesOf(t, by)) }),
  ...(upTo && { upTo: timesOf(upTo, by) }),
});
