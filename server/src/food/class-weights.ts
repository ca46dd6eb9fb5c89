/**
 * Knows what a measure or a count word weighs of a whole class of foods, where the book has weighed none of the food itself.
 * Refuses to know single foods.
 */
import classWeightsText from '../../data/foods/class-weights.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn } from '../measure/table-rows.ts';
import type { Food, FoodClass } from './food.ts';

export interface ClassWeight {
  /** `cup`, or a count word. */
  readonly what: string;
  readonly classes: ReadonlySet<FoodClass>;
  /** Absent where it is the same of both. */
  readonly raw?: boolean;
  /** g. */
  readonly typical: number;
  /** g. */
  readonly grams: Range;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';

const ROWS = once((): readonly ClassWeight[] =>
  rowsIn(classWeightsText).map(([what = '', classes = '', state = '', typical, low, high, source = '']) => {
    return {
      what,
      classes: new Set(classes.split(';') as FoodClass[]),
      ...(state !== '' && { raw: state === 'raw' }),
      typical: Number(typical),
      grams: { low: Number(low), high: Number(high) },
      source: source === 'practice' ? PRACTICE : source,
    };
  }),
);

/** What one of it weighs of a food of its class. */
export const classWeight = (food: Food, what: string): ClassWeight | undefined =>
  ROWS().find(
    (row) =>
      row.what === what &&
      row.classes.has(food.class) &&
      (row.raw === undefined || row.raw === food.roles.includes('raw risk')),
  );
