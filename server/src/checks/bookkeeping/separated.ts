/**
 * Knows when eggs are used as yolks and whites apart, so that a portion of one is none of the other.
 */

import { nameSpeaksOf, speaksOf } from '../../recipe/journey/deeds.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';

/** Whole eggs of which the steps, or the line itself, speak as yolks and whites. */
export function isSeparated({ food, name, node }: Ingredient, part: Part): boolean {
  if (food?.class !== 'egg' || nameSpeaksOf(name, 'egg half')) return false;
  if (nameSpeaksOf(node.preparation?.text ?? '', 'egg half')) return true;
  return part.steps.some((step) => speaksOf(step, 'egg half'));
}
