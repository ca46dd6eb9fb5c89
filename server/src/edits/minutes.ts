/**
 * Knows how the minutes that a plan puts for work are written into its steps: `Roll out, about 5 min, and line the pan`.
 * Refuses to know whether they are right, and to write into another file.
 */
import type { Recipe } from '../recipe/model.ts';
import { tasksOf } from '../recipe/plan/from-recipe.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

/** The orders of a recipe that say no minutes, and for which some are put. */
export const putIn = (recipe: Recipe): number =>
  tasksOf(recipe, new Map(), true).filter(({ from }) => from === 'put').length;

/** An edit each, of those that its own file says; `ownLine` takes a line of the recipe to that of the file, from 0. */
export function minutesEdits(recipe: Recipe, ownLine: (line: number) => number | undefined): readonly TextEdit[] {
  return tasksOf(recipe, new Map(), true).flatMap(({ from, part, line, start, end, minutes }): TextEdit[] => {
    const text = recipe.parts[part]?.head.source.lines[line]?.text;
    const at = ownLine((recipe.partsAt[part] ?? 0) + line);
    if (from !== 'put' || text === undefined || at === undefined) return [];
    const own = start + text.slice(start, end).replace(/[\s,;:.]+$/, '').length;
    // What follows without a comma goes on with it.
    const behind = /^\s+\S/.test(text.slice(own)) ? ',' : '';
    return [replaceSpan(at, { start: own, end: own }, `, about ${minutes} min${behind}`)];
  });
}
