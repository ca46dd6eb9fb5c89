/**
 * Knows how the measures of a formula are worked out from composition: hydration, fat, sugar, salt and egg per flour; shares of the mix.
 * Refuses to judge them: the bands are in `kinds.ts`.
 */
import type { Composition, Food } from '../food/food.ts';
import { addRanges, type Range } from '../measure/quantity.ts';
import { type Ingredient, isFlour } from './ingredient.ts';

export type MeasureName = 'hydration' | 'fat' | 'sugar' | 'salt' | 'egg' | 'egg protein' | 'salt share';

export type MeasureValue =
  | { readonly known: true; readonly value: Range }
  | { readonly known: false; readonly why: string };

interface Definition {
  readonly words: string;
  /** What is added up, as a share of the ingredient's weight; undefined is not known. */
  readonly share: (food: Food) => number | undefined;
  readonly per: 'flour' | 'mix' | 'mix without pieces';
}

/** `words` complete "… per flour" or "… of the mix". */
export const MEASURES: Readonly<Record<MeasureName, Definition>> = {
  hydration: { words: 'water per flour', share: freeWater, per: 'flour' },
  fat: { words: 'fat per flour', share: (f) => (isFlourFood(f) ? 0 : part(f, 'fat')), per: 'flour' },
  sugar: { words: 'sugar per flour', share: addedSugar, per: 'flour' },
  salt: { words: 'salt per flour', share: saltShare, per: 'flour' },
  egg: { words: 'egg per flour', share: (f) => (f.class === 'egg' ? 1 : 0), per: 'flour' },
  'egg protein': {
    words: 'egg protein in the mix',
    share: (f) => (f.class === 'egg' ? part(f, 'protein') : 0),
    per: 'mix without pieces',
  },
  'salt share': { words: 'salt in the whole', share: saltShare, per: 'mix' },
};

/** Ingredients of unknown composition are ignored up to this share of the whole. */
const NEGLIGIBLE = 0.03;

/** A measure over ingredients, as a ratio; the range carries every range of the amounts. */
export function measure(name: MeasureName, ingredients: readonly Ingredient[]): MeasureValue {
  const { share, per } = MEASURES[name];
  let top: Range = { low: 0, high: 0 };
  let bottom: Range = { low: 0, high: 0 };
  let whole = 0;
  let unknown = 0;
  const missing: string[] = [];
  for (const ingredient of ingredients) {
    if (ingredient.free) continue;
    const { weighed, food } = ingredient;
    if (!weighed.known) {
      if (!isPinch(ingredient))
        return { known: false, why: `the weight of ${ingredient.name} is not known: ${weighed.why}` };
      continue;
    }
    const grams = ingredient.optional ? { low: 0, high: weighed.grams.high } : weighed.grams;
    whole += grams.high;
    const of = food === undefined ? undefined : share(food);
    if (food === undefined || of === undefined) {
      unknown += grams.high;
      missing.push(ingredient.name);
    } else top = addRanges(top, { low: grams.low * of, high: grams.high * of });
    if (per === 'flour' ? isFlour(ingredient) : per === 'mix' || !isPiece(food)) bottom = addRanges(bottom, grams);
  }
  if (unknown > whole * NEGLIGIBLE)
    return { known: false, why: `the composition of ${missing.join(', ')} is not known` };
  if (bottom.low <= 0) return { known: false, why: per === 'flour' ? 'there is no flour' : 'nothing is weighed' };
  return { known: true, value: { low: top.low / bottom.high, high: top.high / bottom.low } };
}

function isPinch(ingredient: Ingredient): boolean {
  const amount = ingredient.node.amount;
  const unit = amount?.kind === 'measured' ? amount.unit?.symbol : undefined;
  return unit === 'pinch' || unit === 'dash' || unit === 'drop' || unit === 'tsp';
}

const isFlourFood = (food: Food): boolean => food.roles.includes('baking flour');

const PIECES: ReadonlySet<Food['class']> = new Set([
  'vegetable',
  'mushroom',
  'fruit',
  'meat',
  'ground meat',
  'poultry',
  'ground poultry',
  'cured meat',
  'fish',
  'shellfish',
  'leafy herb',
  'legume',
  'nut',
]);

/** Vegetables and meat that lie in a filling and are no part of what sets. */
const isPiece = (food: Food | undefined): boolean => food !== undefined && PIECES.has(food.class);

function part(food: Food, of: keyof Composition): number | undefined {
  const value = food.per100[of];
  return value === undefined ? undefined : value / 100;
}

/** Water that wets a dough: not the flour's own, and half of what chopped herbs, vegetables and fruit hold (common practice, no source). */
export function freeWater(food: Food): number | undefined {
  if (isFlourFood(food) || food.class === 'starch') return 0;
  const water = part(food, 'water');
  return water === undefined ? undefined : food.roles.includes('holds its water') ? water / 2 : water;
}

const BRING_NO_SUGAR: ReadonlySet<Food['class']> = new Set([
  'flour',
  'starch',
  'grain',
  'milk',
  'cream',
  'dairy',
  'cheese',
  'egg',
  'fat',
  'oil',
  'water',
  'salt',
  'leavening',
  'yeast',
  'vegetable',
  'fruit',
  'nut',
  'seed',
  'leafy herb',
  'dried herb',
  'spice',
]);

/** Sugars as solids, without lactose and what fruit, grain and nuts bring of their own. */
function addedSugar(food: Food): number | undefined {
  if (BRING_NO_SUGAR.has(food.class)) return 0;
  const { sugars, lactose } = food.per100;
  if (sugars === undefined) return food.class === 'sugar' || food.class === 'syrup' ? undefined : 0;
  return (sugars - (lactose ?? 0)) / 100;
}

/** Salt from every source, as sodium × 2.5 (EU 1169/2011, annex I), but not the sodium of leavening. */
function saltShare(food: Food): number | undefined {
  if (food.class === 'leavening') return 0;
  const { sodium } = food.per100;
  return sodium === undefined ? undefined : (sodium * 2.5) / 100_000;
}
