/**
 * Knows how a portion of an ingredient is written in a sentence, in the measure of its line.
 * Refuses to know how much it is.
 */
import { likelyGrams } from '../food/weigh.ts';
import { figureIn, kitchenCount, kitchenGrams, numberText } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle } from '../measure/quantity.ts';
import { dimensionOf } from '../measure/unit.ts';
import { isPlain } from '../notation/item-amounts.ts';
import type { Ingredient, Recipe, TakenUse } from '../recipe/model.ts';
import { pluralOf } from './sized-amount.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

/** A share of a line as an amount: `140 g`, `2`, `1/2 tsp`; undefined where its weight is not known. */
export function shareText(ingredient: Ingredient, share: number): string | undefined {
  const { amount } = ingredient.node;
  if (amount?.kind !== 'measured' || amount.quantity.low !== amount.quantity.high || !isPlain(ingredient.node))
    return undefined;
  const value = amount.low.value * share;
  const unit = amount.unit?.symbol;
  if (unit === undefined) {
    const count = kitchenCount(value, 0.02);
    if (Math.abs(count / value - 1) > 0.02) return undefined;
    const word =
      amount.counted === undefined ? undefined : count > 1 ? pluralOf(singularWord(amount)) : singularWord(amount);
    return [numberText(count, 'plain'), amount.sized?.text, word].filter((w) => w !== undefined).join(' ');
  }
  if (unit === '%') {
    const grams = ingredient.weighed.known ? likelyGrams(ingredient.weighed) * share : undefined;
    return grams === undefined ? undefined : `${trimmed(kitchenGrams(grams), 2)} g`;
  }
  const dimension = dimensionOf(unit);
  if (dimension !== 'mass' && dimension !== 'volume') return undefined;
  const figure = figureIn(value, unit, amount.low.style === 'glyph' ? 'glyph' : 'plain');
  return Math.abs(figure.value / value - 1) > 0.03 ? undefined : `${figure.text} ${unit}`;
}

const singularWord = (amount: {
  readonly counted?: { readonly text: string };
  readonly quantity: { readonly count?: string };
}): string => amount.quantity.count ?? amount.counted?.text ?? '';

/** The edit that gives a mention another portion, `the` or `140 g of the`, and another name where it must have one. */
export function portionEdit(recipe: Recipe, { part, line, mention }: TakenUse, lead: string, name?: string): TextEdit {
  const at = (recipe.partsAt[part] ?? 0) + line;
  const end = name === undefined ? mention.start : mention.end;
  return replaceSpan(at, { start: mention.whole.start, end }, `${lead}${name ?? ''}`);
}

/** Shares that uses take, where all are sure and none is a mere reference. */
export function sureShares(uses: readonly TakenUse[]): readonly number[] | undefined {
  const sure = uses.every(
    ({ taken, mention }) =>
      taken.high - taken.low < 0.01 && taken.low > 0.001 && !mention.verb && mention.ingredients.length === 1,
  );
  return sure ? uses.map((u) => middle(u.taken)) : undefined;
}
