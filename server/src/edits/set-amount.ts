/**
 * Knows how one ingredient is given another weight or number: on its line, and where a step names an amount of it.
 * Refuses to choose the weight.
 */

import type { Document } from '../notation/document.ts';
import { statedSpan, takesOf } from '../notation/item-amounts.ts';
import type { IngredientNode, MeasuredNode } from '../notation/tree.ts';
import { isEach } from '../recipe/list/line-weight.ts';
import type { Ingredient, Recipe } from '../recipe/model.ts';
import { amountSpan, gramsAmount, grownBy, keepColumn, scaleAmount, scaledText } from './amount-text.ts';
import { dropped, saidBehind } from './said-behind.ts';
import { sizeAmount } from './sized-amount.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface AmountChange {
  readonly edits: readonly TextEdit[];
  /** As it will be written: `75 g`, `5 large`. */
  readonly written: string;
}

/** Gives an ingredient of a part the weight, in grams, on its line and in the portions that steps name. */
export function setGrams(
  recipe: Recipe,
  part: number,
  ingredient: Ingredient,
  grams: number,
): AmountChange | undefined {
  const listed = listGrams(recipe, part, ingredient, grams);
  if (listed === undefined || !ingredient.weighed.known) return undefined;
  const by = (2 * grams) / (ingredient.weighed.grams.low + ingredient.weighed.grams.high);
  return { ...listed, edits: [...listed.edits, ...portionEdits(recipe, part, ingredient, by)] };
}

/** The same on its line alone: in the writer's own unit when that is one of mass, else in grams. */
export function listGrams(
  recipe: Recipe,
  part: number,
  ingredient: Ingredient,
  grams: number,
): AmountChange | undefined {
  const { weighed, node } = ingredient;
  const amount = node.amount;
  if (!weighed.known || amount?.kind !== 'measured' || weighed.grams.high <= 0) return undefined;
  // What is taken out of a fruit, shared, or written behind its name has no place for a weight of its own.
  if (takesOf(node) !== undefined || node.eachOf === true || ingredient.shares === true || ingredient.bare === true)
    return undefined;
  const by = (2 * grams) / (weighed.grams.low + weighed.grams.high);
  const line = (recipe.partsAt[part] ?? 0) + ingredient.line;
  const inMass = ['g', 'kg', 'mg', 'oz', 'lb'].includes(amount.unit?.symbol ?? '');
  const inFigures = amount.low.style !== 'word' && amount.low.style !== 'implied';
  if ((inMass || amount.unit === undefined) && inFigures && saidOnce(amount, node)) {
    const number = scaledText(amount.low, amount, by);
    const unit = amount.unit?.symbol ?? amount.counted?.text ?? amount.sized?.text ?? '';
    return {
      edits: inColumn(recipe, part, ingredient, scaleAmount(line, amount, by)),
      written: `${number} ${unit}`.trim(),
    };
  }
  const written = gramsAmount(grams);
  const whole = amountSpan(node) ?? amount;
  const { text } = recipe.parts[part]?.head.source.lines[ingredient.line] ?? { text: '' };
  const edits = inColumn(recipe, part, ingredient, [replaceSpan(line, whole, written)]);
  return { edits: [...edits, ...dropped(line, saidBehind(text, node))], written };
}

const saidOnce = ({ plus, upTo }: MeasuredNode, { beside }: IngredientNode): boolean =>
  plus === undefined && upTo === undefined && beside === undefined;

/** Gives a counted ingredient another number of pieces. */
export function setCount(
  recipe: Recipe,
  part: number,
  ingredient: Ingredient,
  count: number,
): AmountChange | undefined {
  const amount = ingredient.node.amount;
  if (amount?.kind !== 'measured' || amount.unit !== undefined || amount.low.value <= 0) return undefined;
  const line = (recipe.partsAt[part] ?? 0) + ingredient.line;
  if (takesOf(ingredient.node) !== undefined || ingredient.node.eachOf === true) return undefined;
  const words = [String(count), amount.sized?.text, amount.counted?.text].filter((w) => w !== undefined);
  const numbers = { start: amount.low.start, end: amount.high?.end ?? amount.low.end };
  const { text } = recipe.parts[part]?.head.source.lines[ingredient.line] ?? { text: '' };
  const manner = { measures: recipe.world.measures, exact: true };
  const by = count / amount.low.value;
  const again = (ingredient.node.beside ?? []).filter((b) => !isEach(amount, b, ingredient.match, recipe.world));
  const written =
    amount.low.style === 'implied'
      ? sizeAmount(line, text, amount, by, manner).edits
      : [replaceSpan(line, numbers, String(count))];
  const follow = again.flatMap((b) => sizeAmount(line, text, b.amount, by, manner).edits);
  const listed = inColumn(recipe, part, ingredient, [...written, ...follow]);
  return {
    edits: [...listed, ...portionEdits(recipe, part, ingredient, by)],
    written: words.join(' '),
  };
}

/** The edits of an ingredient's amount, with its name kept in its column. */
export function inColumn(recipe: Recipe, part: number, ingredient: Ingredient, edits: readonly TextEdit[]): TextEdit[] {
  const end = statedSpan(ingredient.node)?.end ?? 0;
  const line = (recipe.partsAt[part] ?? 0) + ingredient.line;
  const text = recipe.parts[part]?.head.source.lines[ingredient.line]?.text ?? '';
  return [...edits, ...keepColumn(line, text, end, grownBy(edits.filter((e) => e.start.character < end)))];
}

/** Amounts of the ingredient that steps name follow it. */
function portionEdits(recipe: Recipe, part: number, ingredient: Ingredient, by: number): TextEdit[] {
  const entry = recipe.parts[part]?.ledger.find((e) => e.ingredient === ingredient);
  return (entry?.uses ?? []).flatMap((use) => {
    const { portion } = use.mention;
    return portion.kind === 'amount'
      ? scaleAmount((recipe.partsAt[use.part] ?? 0) + use.line, portion.measured, by)
      : [];
  });
}

/** The indent of a part's lines, as the writer has it. */
export function indentOf(document: Document, line: number): string {
  return /^\s*/.exec(document.lines[line]?.text ?? '')?.[0] || '  ';
}
