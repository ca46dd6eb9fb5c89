/**
 * Knows which food a line is held to be for safety: what it names, the strictest of what it could be, or a food of its noun's class of which
 * nothing else is known.
 * Refuses to be used for formulas, allergens or prices.
 */
import type { Food, FoodClass } from '../food/food.ts';
import { strictestOf } from '../food/nouns.ts';
import type { Ingredient } from './ingredient.ts';

/** The food; undefined where not even a noun is known. */
export function foodOf({ food, match }: Ingredient): Food | undefined {
  if (food !== undefined || match.kind === 'food') return food;
  if (match.kind === 'ambiguous') return strictestOf(match.foods);
  return match.class === undefined ? undefined : standIn(match.class, match.raw === true);
}

const STAND_INS = new Map<string, Food>();

function standIn(kind: FoodClass, raw: boolean): Food {
  const key = `${raw ? 'raw ' : ''}${kind}`;
  const known = STAND_INS.get(key);
  if (known !== undefined) return known;
  const food: Food = {
    id: `any-${kind.replaceAll(' ', '-')}`,
    name: kind,
    names: [],
    class: kind,
    roles: raw ? ['raw risk'] : [],
    per100: {},
    measures: [],
    pieces: [],
    allergens: { us: [], eu: [], unsaid: true },
    source: 'its noun alone',
  };
  STAND_INS.set(key, food);
  return food;
}
