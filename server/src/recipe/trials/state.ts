/**
 * Knows what the kitchen's record says of a recipe: never cooked, cooked but changed since, or cooked as written.
 * Refuses to call it good: that is the trial's verdict.
 */
import type { Recipe } from '../model.ts';
import { factsOf, isAsTested, readTrials, type Trial } from './trials.ts';

export type RecipeState = 'never cooked' | 'cooked, changed since' | 'cooked as written';

export interface RecipeRecord {
  readonly state: RecipeState;
  readonly trials: readonly Trial[];
  /** The trial that tested the recipe as it stands now. */
  readonly asWritten?: Trial;
}

/**
 * The state of a recipe by its trials. A trial without a fingerprint does not prove that the recipe was cooked as it stands,
 * and one that rejected it proves nothing.
 */
export function recipeRecord(recipe: Recipe, trials: readonly Trial[] = readTrials(recipe.outline)): RecipeRecord {
  if (trials.length === 0) return { state: 'never cooked', trials };
  if (trials.every((t) => t.tested === undefined)) return { state: 'cooked, changed since', trials };
  const facts = factsOf(recipe);
  const asWritten = trials.findLast(
    (t) => t.tested !== undefined && t.verdict !== 'reject' && isAsTested(facts, t.tested),
  );
  return asWritten === undefined
    ? { state: 'cooked, changed since', trials }
    : { state: 'cooked as written', trials, asWritten };
}
