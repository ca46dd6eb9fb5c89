/**
 * Knows how long a recipe takes, from the times its sentences give: standing by, and waiting.
 * Refuses to guess what no sentence says.
 */
import type { Recipe, Step } from './recipe.ts';
import { isWaiting } from './verbs.ts';

export interface RecipeTimes {
  /** Minutes with someone at it, as far as the sentences say; null when none gives a time. */
  readonly hands_on: number | null;
  readonly waiting: number | null;
  readonly total: number | null;
}

export function recipeTimes(recipe: Recipe): RecipeTimes {
  let handsOn = 0;
  let waiting = 0;
  let any = false;
  for (const part of recipe.parts) {
    for (const step of part.steps) {
      for (const { minutes, waits } of stepTimes(step)) {
        any = true;
        if (waits) waiting += minutes;
        else handsOn += minutes;
      }
    }
  }
  if (!any) return { hands_on: null, waiting: null, total: null };
  return { hands_on: Math.round(handsOn), waiting: Math.round(waiting), total: Math.round(handsOn + waiting) };
}

/** Each time of a step in minutes, the middle of its range, and whether it is waited out. */
function stepTimes(step: Step): { readonly minutes: number; readonly waits: boolean }[] {
  return step.times.map(({ node, verbClass }) => ({
    minutes: (node.lowMin + node.highMin) / 2,
    waits: verbClass === undefined ? node.lowMin > 15 : isWaiting(verbClass, node.lowMin),
  }));
}
