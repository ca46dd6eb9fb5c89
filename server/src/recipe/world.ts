/**
 * Knows what a recipe is worked out with: the food book and what a cup holds. One object a house, so that it can key caches.
 */
import type { FoodBook } from '../food/book.ts';
import type { Measures } from '../measure/unit.ts';
import type { HouseBands } from './kinds.ts';

export interface World {
  readonly book: FoodBook;
  readonly measures: Measures;
  /** What the house calls usual. */
  readonly bands?: HouseBands;
}
