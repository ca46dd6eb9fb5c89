/**
 * Knows the words that steps have for whatever of a sort is listed: `the fish` is the cod, `the chillies` the jalapeños.
 * Refuses to know lists and sentences.
 */

import text from '../../../data/sorts.tsv';
import type { Food } from '../../food/food.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { keptOn } from '../../notation/kept.ts';
import { wordsOf } from '../words.ts';

interface Sort {
  readonly written: string;
  readonly words: readonly string[];
  readonly classes: ReadonlySet<string>;
  readonly foods: ReadonlySet<string>;
  readonly not: ReadonlySet<string>;
}

/** The word of the table for what an order to season takes. */
export const SEASON = 'season';

const setOf = (cell: string | undefined): ReadonlySet<string> => new Set(wordsIn(cell));

const SORTS: readonly Sort[] = rowsIn(text).map(([word = '', classes, foods, not]) => ({
  written: word,
  words: wordsOf(word),
  classes: setOf(classes),
  foods: setOf(foods),
  not: setOf(not),
}));

/** What is only said of many: `the greens`, and not `green`. */
export const SINGULARS: ReadonlySet<string> = new Set(
  SORTS.flatMap(({ words: [word = '', ...more], written }) => (more.length === 0 && word !== written ? word : [])),
);

/** The words for the sorts that a food is of, as they are compared. */
export function sortsOf(food: Food): readonly (readonly string[])[] {
  let sorts = OF_FOOD.get(food);
  if (sorts === undefined) {
    const { id, class: of } = food;
    sorts = SORTS.filter((s) => (s.foods.has(id) || s.classes.has(of)) && !s.not.has(id)).map((s) => s.words);
    OF_FOOD.set(food, sorts);
  }
  return sorts;
}

const OF_FOOD = keptOn<Food, readonly (readonly string[])[]>();
