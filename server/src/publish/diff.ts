/**
 * Knows what a cook would do otherwise by one recipe than by another: amounts against the batch, measures, heat, times, steps.
 * Refuses to know how it is said (`diff/words.ts`), and what differs in layout alone.
 */
import { plannedTimes } from '../recipe/journey/durations.ts';
import type { Recipe } from '../recipe/model.ts';
import { allowChanges, foodChanges, trialChanges } from './diff/attached.ts';
import { batchOf, near } from './diff/batch.ts';
import type { Change, RecipeDiff } from './diff/change.ts';
import { fieldChanges, yieldChange, yieldsOf } from './diff/head.ts';
import { ingredientChanges } from './diff/ingredients.ts';
import { measureChanges } from './diff/measures.ts';
import { pairIngredients, pairParts } from './diff/pair.ts';
import { partChanges } from './diff/parts.ts';
import { stepChanges } from './diff/steps.ts';

export function diffRecipes(before: Recipe, after: Recipe): RecipeDiff {
  const parts = pairParts(before.parts, after.parts);
  const pairs = parts.both.flatMap(([a, b]) => pairIngredients(a, b).both);
  const made = yieldsOf(before, after);
  const batch = batchOf(pairs, made.ratio);
  const yieldFollows = batch !== 1 && made.ratio !== undefined && near(made.ratio, batch);
  const changes: Change[] = [
    ...fieldChanges(before, after, batch),
    ...(yieldFollows ? [] : yieldChange(before, after)),
    ...partChanges(parts, before.parts.length, after.parts.length),
    ...ingredientChanges(parts, batch),
    ...parts.both.flatMap(([a, b]) => measureChanges(a, b)),
    ...stepChanges(parts, batch),
    ...timeChange(before, after),
    ...trialChanges(before, after),
    ...allowChanges(before, after),
    ...foodChanges(before.outline.foods, after.outline.foods),
  ];
  const both = yieldFollows && made.from !== undefined && made.to !== undefined;
  return { batch, ...(both && { yield: { from: made.from, to: made.to } }), changes };
}

function timeChange(before: Recipe, after: Recipe): Change[] {
  const [from, to] = [plannedTimes(before).total, plannedTimes(after).total];
  return from === null || to === null || from === to ? [] : [{ kind: 'total-time', fromMin: from, toMin: to }];
}
