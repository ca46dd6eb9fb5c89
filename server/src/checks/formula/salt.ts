/**
 * Knows which line of a list salts it.
 */
import type { Ingredient } from '../../recipe/ingredient.ts';
import { saltShare } from '../../recipe/measures/shares.ts';
import type { Part } from '../../recipe/recipe.ts';
import { bringing, gramsOf, mostBringing, mostOf } from './band.ts';

/** The line of salt itself that brings most. */
export const saltLine = (part: Part): Ingredient | undefined =>
  mostOf(
    part.head.ingredients.filter((i) => i.food?.class === 'salt'),
    (i) => gramsOf(i) * bringing(i, saltShare),
  );

/** The salt line, else what brings most salt. */
export const mainSalt = (part: Part): Ingredient | undefined => saltLine(part) ?? mostBringing(part, saltShare);
