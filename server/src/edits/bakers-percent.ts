/**
 * Knows how the list of a part is written as a formula in baker's percentages with one weight, and back.
 * Refuses a part without flour: there is nothing that could be the 100 %.
 */
import { likelyGrams } from '../food/weigh.ts';
import { kitchenGrams } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle } from '../measure/quantity.ts';
import { isFlour } from '../recipe/list/ingredient.ts';
import type { Ingredient, Part } from '../recipe/model.ts';
import { amountSpan, grownBy, keepColumn } from './amount-text.ts';
import { isLeft, isWanted, type Work } from './conversion.ts';
import { dropped, saidBehind } from './said-behind.ts';
import { replaceSpan } from './text-edit.ts';

/** Every line but the main flour becomes a percentage; that flour stays as the one weight that fixes the batch. */
export function toPercent(work: Work, part: Part): void {
  const { ingredients } = part.head;
  const flours = ingredients.filter((i) => isFlour(i) && i.weighed.known && !i.optional);
  const flourG = flours.reduce((sum, i) => sum + gramsOf(i), 0);
  if (!(flourG > 0)) {
    if (ingredients.length > 0)
      work.said.push(`${part.head.name || 'The list'} stays as written: it has no flour to be the 100 %.`);
    return;
  }
  // A percentage among them that may be of something else would be taken for one of the flour.
  const at = (i: Ingredient) => (work.recipe.partsAt[part.index] ?? 0) + i.line;
  if (ingredients.some((i) => i.percent !== undefined && isLeft(work, at(i)))) return;
  const written = flours.filter((i) => i.percent === undefined);
  const main = written.reduce<Ingredient | undefined>(
    (a, b) => (a === undefined || gramsOf(b) > gramsOf(a) ? b : a),
    undefined,
  );
  for (const ingredient of ingredients) {
    if (ingredient.percent !== undefined || ingredient.free) continue;
    if (!ingredient.weighed.known) {
      work.said.push(`${ingredient.name} stays as written: ${ingredient.weighed.why}.`);
      continue;
    }
    if (ingredient === main) {
      if (!isGrams(ingredient)) rewrite(work, part, ingredient, gramsWritten(gramsOf(ingredient)));
    } else rewrite(work, part, ingredient, `${percentText((gramsOf(ingredient) * 100) / flourG)} %`);
  }
}

/** Every percentage becomes grams of the flour that the part, its yield or the wish fixes. */
export function fromPercent(work: Work, part: Part): void {
  const lines = part.head.ingredients.filter((i) => i.percent !== undefined);
  if (lines.length === 0) return;
  const { flourG } = work.wish;
  if (part.head.nominal && flourG === undefined) {
    work.said.push(
      `${part.head.name || 'The list'} stays in percentages: nothing says how large the batch is; give the weight of its flour.`,
    );
    return;
  }
  for (const ingredient of lines) {
    if (!ingredient.weighed.known) continue;
    const grams =
      part.head.nominal && flourG !== undefined && ingredient.percent !== undefined
        ? (flourG * middle(ingredient.percent)) / 100
        : gramsOf(ingredient);
    rewrite(work, part, ingredient, gramsWritten(grams));
  }
}

const gramsOf = ({ weighed }: Ingredient): number => (weighed.known ? likelyGrams(weighed) : 0);

const gramsWritten = (grams: number): string => `${trimmed(kitchenGrams(grams), 2)} g`;

const isGrams = ({ node: { amount } }: Ingredient): boolean =>
  amount?.kind === 'measured' && (amount.unit?.symbol === 'g' || amount.unit?.symbol === 'kg');

/** Three figures, as a formula is printed. */
const percentText = (percent: number): string => trimmed(percent, percent < 1 ? 3 : percent < 10 ? 2 : 1);

function rewrite(work: Work, part: Part, ingredient: Ingredient, text: string): void {
  const { amount } = ingredient.node;
  const line = (work.recipe.partsAt[part.index] ?? 0) + ingredient.line;
  const { text: of } = work.document.lines[line] ?? { text: '' };
  const span = amountSpan(ingredient.node);
  if (amount === undefined || span === undefined || !isWanted(work, line) || isLeft(work, line)) return;
  const { takes, eachOf } = ingredient.node;
  if (takes !== undefined || eachOf === true || ingredient.shares === true || ingredient.bare === true) {
    work.said.push(`${ingredient.name} stays as written: the line has no amount of its own in front.`);
    return;
  }
  const { end } = span;
  const edit = replaceSpan(line, span, text);
  work.edits.push(
    edit,
    ...keepColumn(line, of, end, grownBy([edit])),
    ...dropped(line, saidBehind(of, ingredient.node)),
  );
  work.changes.push(`${ingredient.name} ${of.slice(amount.start, end)} → ${text}`);
}
