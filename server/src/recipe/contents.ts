/**
 * Knows what a part is made of when its formula is judged: its own list, and earlier parts its steps take in that are no kind of their own.
 */
import { type Ingredient, isFlour } from './ingredient.ts';
import type { Part } from './recipe.ts';

/** A poolish or softened onions count as what they are made of; a crust that a filling is poured into does not. */
export function contentsOf(part: Part): readonly Ingredient[] {
  const own = part.head.ingredients;
  const flourKind = own.some(isFlour);
  const taken = part.includes.filter((h) => h.kind === undefined && (flourKind || !h.ingredients.some(isFlour)));
  return taken.length === 0 ? own : [...own, ...taken.flatMap((h) => h.ingredients)];
}
