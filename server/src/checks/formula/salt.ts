/**
 * Knows which line of a list salts it.
 */

import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { saltShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { mostBringing, mostOf } from './band.ts';

/** The line of salt itself that brings most. */
export const saltLine = (part: Part): Ingredient | undefined =>
  mostOf(
    part.head.ingredients.filter((i) => i.food?.class === 'salt'),
    (i) => gramsOf(i) * bringing(i, saltShare),
  );

/** The salt line, else what brings most salt. */
export const mainSalt = (part: Part): Ingredient | undefined => saltLine(part) ?? mostBringing(part, saltShare);
