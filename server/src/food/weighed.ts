/**
 * Knows how an answer to what a food weighs is made: the grams, the reason in a clause, how far they go.
 */
import { writeFigure } from '../measure/figure.ts';
import type { Range } from '../measure/quantity.ts';
import type { Weighed, WeightReason } from './food.ts';

/** The source that marks a weight of the house's own. */
export const HOUSE_SOURCE = 'the house';

type Known = Extract<Weighed, { known: true }>;

export function known(grams: Range, kind: WeightReason['kind'], words: string, source: string): Known {
  return { known: true, grams, reason: { kind, words, source } };
}

export function unknown(why: string): Weighed {
  return { known: false, why };
}

export function spreadWords({ low, high }: Range, typical: number): string {
  return high - low < 0.02 * typical ? '' : `${writeFigure(low)} to ${writeFigure(high)}`;
}
