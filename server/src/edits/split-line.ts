/**
 * Knows how a line that the steps take in portions becomes one line for each use, in the part that takes it.
 * Refuses where a portion is not sure.
 */

import type { Document } from '../notation/document.ts';
import { isPlain } from '../notation/item-amounts.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';
import { grownBy, keepColumn } from './amount-text.ts';
import { isOnOwnLine, lineOf, newLine } from './list-line.ts';
import { portionEdit, shareText, sureShares } from './portion-text.ts';
import { insertLineAfter, replaceSpan, type TextEdit } from './text-edit.ts';

export interface SplitLine {
  /** `140 g`, `10 g`. */
  readonly written: readonly string[];
  readonly edits: readonly TextEdit[];
}

export function splitLine(
  document: Document,
  recipe: Recipe,
  part: Part,
  ingredient: Ingredient,
): SplitLine | undefined {
  const { amount, bought, name } = ingredient.node;
  if (!isOnOwnLine(part, ingredient) || ingredient.bare === true) return undefined;
  if (amount?.kind !== 'measured' || !isPlain(ingredient.node) || bought !== undefined || name === undefined)
    return undefined;
  if (name.start < amount.end || part.head.ingredients.some((i) => i !== ingredient && i.name === ingredient.name))
    return undefined;
  const uses = part.ledger.find((e) => e.ingredient === ingredient)?.uses ?? [];
  const shares = sureShares(uses);
  if (shares === undefined || uses.length < 2 || Math.abs(shares.reduce((a, b) => a + b, 0) - 1) > 0.02)
    return undefined;
  // Two lines that one step takes would be one again.
  if (new Set(uses.map((u) => `${u.part} ${u.step}`)).size !== uses.length) return undefined;
  const texts = shares.map((s) => shareText(ingredient, s));
  if (texts.some((t) => t === undefined)) return undefined;
  const written = texts.filter((t): t is string => t !== undefined);
  const line = lineOf(recipe, part, ingredient);
  const { text } = document.lines[line] ?? { text: '' };
  const own = replaceSpan(line, amount, written[0] ?? '');
  const edits: TextEdit[] = [own, ...keepColumn(line, text, amount.end, grownBy([own]))];
  const behind = text.slice(name.end, Math.max(name.end, ingredient.node.preparation?.end ?? 0));
  for (const [k, use] of uses.entries()) {
    const named = use.part === part.index && !use.mention.weak;
    edits.push(portionEdit(recipe, use, 'the ', named ? undefined : ingredient.name));
    const to = recipe.parts[use.part];
    if (k === 0 && use.part !== part.index) return undefined;
    if (k === 0 || to === undefined) continue;
    if (to !== part && to.head.ingredients.some((i) => i.name === ingredient.name)) return undefined;
    const at = to === part ? line : lastListed(recipe, to);
    const words = `${ingredient.name}${to === part ? behind : ''}`;
    edits.push(insertLineAfter(document, at, newLine(document, recipe, part, ingredient, written[k] ?? '', words)));
  }
  return { written, edits };
}

/** The last line of a part's list, or its first line. */
function lastListed(recipe: Recipe, part: Part): number {
  const last = part.head.ingredients.at(-1);
  return last === undefined ? (recipe.partsAt[part.index] ?? 0) : lineOf(recipe, part, last);
}
