/**
 * Knows what an egg of a size weighs without its shell, by the rules that eggs of the house are sold by.
 * Refuses to know eggs of a US house: those are pieces of the book.
 */
import eggs from '../../data/egg-sizes.json' with { type: 'json' };
import { type Range, type Size, scaleRange } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { bookIdOf, type Food } from './food.ts';

export interface EggSize {
  readonly size: Size;
  /** Of the edible egg, or of its white or yolk. */
  readonly grams: Range;
  readonly source: string;
}

/** Share of the edible egg: NDB 01123 50 g, 01124 33 g, 01125 17 g. */
const SHARES: Readonly<Record<string, number>> = { egg: 1, 'egg-white': 0.66, 'egg-yolk': 0.34 };

/** An egg of no size is a large one. Undefined for other foods, and where the book's own eggs are meant. */
export function eggSize(food: Food, size: Size = 'large', measures: Measures): EggSize | undefined {
  const share = SHARES[bookIdOf(food)];
  const rule = share === undefined ? undefined : eggs.rules.find((r) => r.measures.includes(measures));
  const [low, high] = rule?.sizes[size] ?? [];
  if (share === undefined || rule === undefined || low === undefined || high === undefined) return undefined;
  const grams = scaleRange({ low, high }, (1 - eggs.shell.share) * share);
  return {
    size,
    grams,
    source: `${rule.source}, in the shell, less ${eggs.shell.share * 100} % of shell (${eggs.shell.source})`,
  };
}
