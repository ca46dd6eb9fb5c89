/**
 * Knows which food a line is held to be for safety: what it names, the strictest of what it could be, or a food of its noun's class of which
 * nothing else is known.
 * Refuses to be used for formulas, allergens or prices.
 */

import type { Food, FoodClass } from '../../food/food.ts';
import { strictestOf } from '../../food/nouns.ts';
import { onceByText } from '../../measure/once.ts';
import type { Ingredient } from '../model.ts';

/** The food; undefined where not even a noun is known. */
export function foodOf({ food, match }: Ingredient): Food | undefined {
  if (food !== undefined || match.kind === 'food') return food;
  if (match.kind === 'ambiguous') return strictestOf(match.foods);
  if (match.class === undefined) return undefined;
  return match.raw === true ? rawStandIn(match.class) : standIn(match.class);
}

const standInsOf = (roles: Food['roles']): ((kind: FoodClass) => Food) =>
  onceByText(
    (kind: FoodClass) => ({
      id: `any-${kind.replaceAll(' ', '-')}`,
      name: kind,
      names: [],
      class: kind,
      roles,
      per100: {},
      measures: [],
      pieces: [],
      allergens: { us: [], eu: [], unsaid: true },
      source: 'its noun alone',
    }),
    { texts: 1000 },
  );
const standIn = standInsOf([]);
const rawStandIn = standInsOf(['raw risk']);
