/**
 * Knows the least and the most that a ratio of two sums can be, when every weight and every share is a range.
 * Refuses to know what is added up.
 */
import type { Range } from '../../measure/quantity.ts';

/** One thing of so many grams, and what a gram of it adds above and below the line. */
export interface Term {
  readonly grams: Range;
  readonly top: Range;
  readonly bottom: Range;
}

/**
 * The range of Σ grams·top / Σ grams·bottom. An ingredient that stands above and below the line has one weight, so that the range is
 * no wider than it must be. Undefined where the sum below may be nothing.
 */
export function ratioOf(terms: readonly Term[]): Range | undefined {
  const least = terms.reduce((sum, t) => sum + t.grams.low * t.bottom.low, 0);
  if (!(least > 0)) return undefined;
  return { low: extreme(terms, -1), high: extreme(terms, 1) };
}

/** Dinkelbach's method: each round takes for every term what helps most at the ratio reached, until nothing helps. */
function extreme(terms: readonly Term[], sign: 1 | -1): number {
  let ratio = ratioAt(terms, 0, sign);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = ratioAt(terms, ratio, sign);
    if (Math.abs(next - ratio) <= 1e-9 * Math.max(1, Math.abs(next))) return next;
    ratio = next;
  }
  return ratio;
}

const MOST_ROUNDS = 30;

function ratioAt(terms: readonly Term[], ratio: number, sign: 1 | -1): number {
  let top = 0;
  let bottom = 0;
  for (const term of terms) {
    const above = sign > 0 ? term.top.high : term.top.low;
    const below = sign > 0 ? term.bottom.low : term.bottom.high;
    const grams = sign * (above - ratio * below) > 0 ? term.grams.high : term.grams.low;
    top += grams * above;
    bottom += grams * below;
  }
  return top / bottom;
}
