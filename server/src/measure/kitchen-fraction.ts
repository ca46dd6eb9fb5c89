/**
 * Knows when a range with a hyphen may be a fraction whose stroke was set as one: `1-3 cup`.
 * Refuses to know which is meant.
 */
import { unitSpelled } from './unit.ts';

const FRACTIONS: ReadonlySet<string> = new Set(['1/2', '1/3', '2/3', '1/4', '3/4']);
/** One form for one and for many. */
const SHORT: ReadonlySet<string> = new Set(['lb', 'qt', 'pt', 'gal', 'tsp', 'tbsp']);

/** Whether two figures with a hyphen between may be a fraction: the unit in the singular leaves it open. */
export function isEitherFraction(low: string, high: string, unit: string): boolean {
  const one = unit.toLowerCase();
  const isSingular = !SHORT.has(one) && unitSpelled(one)?.spellings.includes(`${one}s`) === true;
  return isSingular && FRACTIONS.has(`${low}/${high}`);
}
