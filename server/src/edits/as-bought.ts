/**
 * Knows how the weight as bought and the weight after trimming follow from each other.
 * Refuses to know why they differ: the food book says what is trimmed away.
 */
import { likelyGrams } from '../food/weigh.ts';
import { kitchenGrams } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle } from '../measure/quantity.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { Document } from '../notation/document.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';
import { lineOf } from './list-line.ts';
import { setGrams } from './set-amount.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface TrimEdit {
  readonly grams: number;
  readonly edits: readonly TextEdit[];
}

/** Writes what must be bought for the weight on the line: `from 560 g`. Undefined where it stands so, or the trim is not known. */
export function writeAsBought(
  document: Document,
  recipe: Recipe,
  part: Part,
  ingredient: Ingredient,
): TrimEdit | undefined {
  const { node, weighed, food } = ingredient;
  const share = food?.trim?.share;
  if (share === undefined || !(share > 0 && share < 1) || !weighed.known || node.name === undefined) return undefined;
  if (node.amount?.kind !== 'measured' || node.bought?.kind === 'free') return undefined;
  const grams = kitchenGrams(likelyGrams(weighed) / (1 - share));
  const line = lineOf(recipe, part, ingredient);
  const written = `${trimmed(grams, 2)} g`;
  if (node.bought === undefined) {
    const at = node.preparation?.end ?? node.name.end;
    return { grams, edits: [replaceSpan(line, { start: at, end: at }, ` from ${written}`)] };
  }
  const has = massG(node.bought);
  if (has !== undefined && Math.abs(has / grams - 1) < NEAR) return undefined;
  const text = document.lines[line]?.text.slice(node.bought.start, node.bought.end);
  return text === written ? undefined : { grams, edits: [replaceSpan(line, node.bought, written)] };
}

/** Writes what is left of the weight as bought once it is trimmed. */
export function writeTrimmed(recipe: Recipe, part: Part, ingredient: Ingredient): TrimEdit | undefined {
  const { node, weighed, food } = ingredient;
  const share = food?.trim?.share;
  const bought = node.bought?.kind === 'measured' ? massG(node.bought) : undefined;
  if (share === undefined || !(share > 0 && share < 1) || bought === undefined || !weighed.known) return undefined;
  const grams = kitchenGrams(bought * (1 - share));
  if (Math.abs(likelyGrams(weighed) / grams - 1) < NEAR) return undefined;
  const set = setGrams(recipe, part.index, ingredient, grams);
  return set === undefined ? undefined : { grams, edits: set.edits };
}

/** Two weights this near are one: trimming is no exact matter. */
const NEAR = 0.03;

function massG(node: MeasuredNode): number | undefined {
  const unit = node.unit?.symbol;
  return unit === undefined || dimensionOf(unit) !== 'mass'
    ? undefined
    : middle(node.quantity) * (baseOf(unit, 'us') ?? 1);
}
