/**
 * Knows of which foods there is more for one who eats than anybody takes of them.
 * Refuses to judge the main food, and what is fried in.
 */
import { bookIdOf } from '../../food/food.ts';
import type { Range } from '../../measure/quantity.ts';
import { anyDoes } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { wordsOf } from '../../recipe/words.ts';
import { FRIES } from '../formula/far-from-name.ts';
import type { Made } from './pieces-made.ts';
import { type PortionRow, portionRows } from './portion-rows.ts';

export interface TooMuch {
  readonly part: number;
  /** Of those that are added up, what there is most of. */
  readonly of: Ingredient;
  readonly each: Range;
  readonly row: PortionRow;
}

/** As many times as much where a title names it. */
const NAMED = 3;
/** Fat that is so much of all is cooked in. */
const COOKED_IN = 1 / 3;

export function tooMuchBeside(recipe: Recipe, eaters: Made): TooMuch | undefined {
  const title = new Set([recipe.name, ...recipe.parts.map(({ head }) => head.name)].flatMap(wordsOf));
  for (const row of portionRows()) {
    if (row.when !== 'beside') continue;
    let [low, high] = [0, 0];
    let most: { readonly part: number; readonly of: Ingredient; readonly grams: number } | undefined;
    for (const part of recipe.parts)
      for (const of of part.head.ingredients) {
        const { weighed } = of;
        if (!weighed.known || of.optional || !isOf(row, of) || isFriedIn(of, part)) continue;
        low += weighed.grams.low;
        high += weighed.grams.high;
        if (most === undefined || weighed.grams.low > most.grams)
          most = { part: part.index, of, grams: weighed.grams.low };
      }
    if (most === undefined) continue;
    if (isFat(most.of) && low > weighedIn(recipe) * COOKED_IN) continue;
    const isNamed = wordsOf(most.of.name).some((word) => title.has(word));
    const edge = row.high * (isNamed ? NAMED : 1);
    const each = { low: low / eaters.high, high: high / eaters.low };
    if (each.low > edge) return { part: most.part, of: most.of, each, row: { ...row, high: edge } };
  }
  return undefined;
}

function isOf({ of }: PortionRow, ingredient: Ingredient): boolean {
  const food = foodOf(ingredient);
  return food !== undefined && (of.includes(food.class) || of.includes(bookIdOf(food) ?? ''));
}

const isFat = (ingredient: Ingredient): boolean => isIn(ingredient, 'fat') || isIn(ingredient, 'oil');

const isFriedIn = (ingredient: Ingredient, { steps }: Part): boolean => isFat(ingredient) && anyDoes(steps, FRIES);

const weighedIn = ({ parts }: Recipe): number =>
  parts.reduce((sum, { head }) => sum + head.ingredients.reduce((all, each) => all + gramsOf(each), 0), 0);
