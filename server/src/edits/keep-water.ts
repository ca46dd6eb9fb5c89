/**
 * Knows how the water that an addition brings is taken out of the liquid of the list, so that the hydration stays.
 * Refuses where there is not that much to take.
 */
import { likelyGrams } from '../food/weigh.ts';
import { kitchenGrams } from '../measure/kitchen.ts';
import { isFlour } from '../recipe/list/ingredient.ts';
import { freeWater } from '../recipe/measures/shares.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';
import { setGrams } from './set-amount.ts';
import type { TextEdit } from './text-edit.ts';

export interface KeptWater {
  /** The liquid that gives it, and how many grams of that liquid less. */
  readonly liquid: Ingredient;
  readonly lessG: number;
  /** Water that the addition sets free, in grams. */
  readonly waterG: number;
  readonly edits: readonly TextEdit[];
}

/** Additions to a dough that bring water which nobody counted. */
const ADDITIONS: ReadonlySet<string> = new Set([
  'leafy herb',
  'vegetable',
  'mushroom',
  'fruit',
  'cheese',
  'dairy',
  'legume',
  'meat',
  'cured meat',
]);

const LIQUIDS: readonly string[] = ['water', 'milk', 'juice', 'stock'];

/** Less of the part's liquid, by the water of one addition; undefined outside a dough, and where nothing is worth it. */
export function keepWater(recipe: Recipe, part: Part, addition: Ingredient): KeptWater | undefined {
  const { food, weighed } = addition;
  if (food === undefined || !weighed.known || !ADDITIONS.has(food.class)) return undefined;
  const { ingredients } = part.head;
  if (!ingredients.some(isFlour)) return undefined;
  const waterG = (freeWater(food) ?? 0) * likelyGrams(weighed);
  const liquid = LIQUIDS.flatMap((c) => ingredients.filter((i) => i.food?.class === c && i.weighed.known))[0];
  if (!(waterG >= 1) || liquid?.food === undefined || !liquid.weighed.known || liquid.percent !== undefined)
    return undefined;
  const share = (liquid.food.per100.water ?? 0) / 100;
  const now = likelyGrams(liquid.weighed);
  const lessG = share > 0 ? waterG / share : Number.POSITIVE_INFINITY;
  if (lessG > 0.8 * now) return undefined;
  const set = setGrams(recipe, part.index, liquid, kitchenGrams(now - lessG));
  return set === undefined ? undefined : { liquid, lessG, waterG, edits: set.edits };
}
