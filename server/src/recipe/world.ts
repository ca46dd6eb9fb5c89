/**
 * Knows what a recipe is worked out with: the food book and what a cup holds. One object a house, so that it can key caches.
 */
import type { FoodBook } from '../food/book.ts';
import type { Language } from '../food/language.ts';
import type { Measures } from '../measure/systems.ts';
import type { HouseBands } from './kinds.ts';

export interface World {
  readonly book: FoodBook;
  readonly measures: Measures;
  /** Whose words for foods come first; none where nothing is said. */
  readonly language?: Language;
  /** What the house calls usual. */
  readonly bands?: HouseBands;
}
