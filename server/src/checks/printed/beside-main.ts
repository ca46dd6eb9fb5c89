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
import { onceFor } from '../once.ts';
import { allListed } from './foods-named.ts';
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

/** What is added up of one row. */
interface Sum {
  readonly low: number;
  readonly high: number;
  readonly most: { readonly part: number; readonly of: Ingredient; readonly grams: number };
}

export function tooMuchBeside(recipe: Recipe, eaters: Made): TooMuch | undefined {
  const title = new Set([recipe.name, ...recipe.parts.map(({ head }) => head.name)].flatMap(wordsOf));
  const sums = sumsIn(recipe);
  for (const row of portionRows()) {
    const sum = sums.get(row);
    if (sum === undefined) continue;
    const { low, high, most } = sum;
    if (isIn(most.of, 'fat') && low > weighedIn(recipe) * COOKED_IN) continue;
    const isNamed = wordsOf(most.of.name).some((word) => title.has(word));
    const edge = row.high * (isNamed ? NAMED : 1);
    const each = { low: low / eaters.high, high: high / eaters.low };
    if (each.low > edge) return { part: most.part, of: most.of, each, row: { ...row, high: edge } };
  }
  return undefined;
}

function sumsIn({ parts }: Recipe): ReadonlyMap<PortionRow, Sum> {
  const sums = new Map<PortionRow, Sum>();
  for (const part of parts)
    for (const of of part.head.ingredients) {
      const { weighed } = of;
      if (!weighed.known || of.optional) continue;
      const rows = rowsOf(of);
      if (rows.length === 0 || isFriedIn(of, part)) continue;
      const { low, high } = weighed.grams;
      const own = { part: part.index, of, grams: low };
      for (const row of rows) {
        const sum = sums.get(row) ?? { low: 0, high: 0, most: own };
        sums.set(row, {
          low: sum.low + low,
          high: sum.high + high,
          most: own.grams > sum.most.grams ? own : sum.most,
        });
      }
    }
  return sums;
}

const rowsOf = onceFor((ingredient: Ingredient): readonly PortionRow[] => {
  const food = foodOf(ingredient);
  if (food === undefined) return [];
  const id = bookIdOf(food) ?? '';
  return portionRows().filter(({ when, of }) => when === 'beside' && (of.includes(food.class) || of.includes(id)));
});

const isFriedIn = (ingredient: Ingredient, { steps }: Part): boolean =>
  isIn(ingredient, 'fat') && anyDoes(steps, FRIES);

const weighedIn = (recipe: Recipe): number => allListed(recipe).reduce((all, each) => all + gramsOf(each), 0);
