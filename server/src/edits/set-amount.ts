/**
 * Knows how one ingredient is given another weight: on its line, and where a step names an amount of it.
 * Refuses to choose the weight.
 */
import type { Document } from '../notation/document.ts';
import type { Ingredient } from '../recipe/ingredient.ts';
import type { Recipe } from '../recipe/recipe.ts';
import { gramsAmount, scaleAmount, scaledText } from './amount-text.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface AmountChange {
  readonly edits: readonly TextEdit[];
  /** As it will be written: `75 g`, `5 large`. */
  readonly written: string;
}

/** Gives an ingredient of a part the weight, in grams, in the writer's own unit when that is one of mass. */
export function setGrams(
  recipe: Recipe,
  part: number,
  ingredient: Ingredient,
  grams: number,
): AmountChange | undefined {
  const { weighed, node } = ingredient;
  const amount = node.amount;
  if (!weighed.known || amount?.kind !== 'measured' || weighed.grams.high <= 0) return undefined;
  const now = (weighed.grams.low + weighed.grams.high) / 2;
  const by = grams / now;
  const line = (recipe.partsAt[part] ?? 0) + ingredient.line;
  const inMass = ['g', 'kg', 'mg', 'oz', 'lb'].includes(amount.unit?.symbol ?? '');
  const counted = amount.unit === undefined;
  if (inMass || counted) {
    const edits = [...scaleAmount(line, amount, by), ...portionEdits(recipe, part, ingredient, by)];
    const number = scaledText(amount.low, amount, by);
    return {
      edits,
      written: `${number} ${amount.unit?.symbol ?? amount.counted?.text ?? amount.sized?.text ?? ''}`.trim(),
    };
  }
  const written = gramsAmount(grams);
  const end = node.equals?.end ?? amount.end;
  return {
    edits: [replaceSpan(line, { start: amount.start, end }, written), ...portionEdits(recipe, part, ingredient, by)],
    written,
  };
}

/** Gives a counted ingredient another number of pieces. */
export function setCount(
  recipe: Recipe,
  part: number,
  ingredient: Ingredient,
  count: number,
): AmountChange | undefined {
  const amount = ingredient.node.amount;
  if (amount?.kind !== 'measured' || amount.unit !== undefined || amount.low.value <= 0) return undefined;
  const by = count / amount.low.value;
  const line = (recipe.partsAt[part] ?? 0) + ingredient.line;
  const words = [String(count), amount.sized?.text, amount.counted?.text].filter((w) => w !== undefined);
  const numbers = { start: amount.low.start, end: amount.high?.end ?? amount.low.end };
  return {
    edits: [replaceSpan(line, numbers, String(count)), ...portionEdits(recipe, part, ingredient, by)],
    written: words.join(' '),
  };
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
