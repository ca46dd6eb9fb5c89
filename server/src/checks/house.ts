/**
 * Knows what a house sets: its measures and foods, severities and food-safety rules. One frozen object, so that it can key caches.
 */
import type { World } from '../recipe/model.ts';
import type { Severity } from './severity.ts';

export type FoodSafetyRules = 'us-food-code-2022' | 'usda-fsis-home';

export interface House {
  readonly world: World;
  readonly severities: Readonly<Record<string, Severity | 'off'>>;
  readonly foodSafety: FoodSafetyRules;
  /** Foods that the file describes for itself alone, by name. */
  readonly ownFoods?: readonly string[];
}
