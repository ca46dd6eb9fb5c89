/**
 * Knows how two lines of one food become one, and what the steps must then say of it.
 * Refuses lines that differ in more than their amount and preparation.
 */

import { likelyGrams } from '../food/weigh.ts';
import { kitchenGrams, numberText } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle } from '../measure/quantity.ts';
import type { Document } from '../notation/document.ts';
import { isPlain } from '../notation/item-amounts.ts';
import type { Ingredient, Part, Recipe, TakenUse } from '../recipe/model.ts';
import { wordsOf } from '../recipe/words.ts';
import { grownBy, keepColumn } from './amount-text.ts';
import { isOnOwnLine, lineOf } from './list-line.ts';
import { portionEdit } from './portion-text.ts';
import { deleteLine, replaceSpan, type TextEdit } from './text-edit.ts';

export interface MergedLines {
  /** `160 g`. */
  readonly written: string;
  readonly edits: readonly TextEdit[];
}

/** The earlier line with which a line can be made one: the same food, by the same name or not. */
export function twinOf(part: Part, ingredient: Ingredient): Ingredient | undefined {
  return part.head.ingredients.find(
    (i) =>
      i !== ingredient &&
      isOnOwnLine(part, i) &&
      isOnOwnLine(part, ingredient) &&
      i.line < ingredient.line &&
      i.food !== undefined &&
      i.food === ingredient.food &&
      canMerge(i, ingredient),
  );
}

function canMerge(a: Ingredient, b: Ingredient): boolean {
  const [x, y] = [a.node, b.node];
  return (
    x.amount?.kind === 'measured' &&
    y.amount?.kind === 'measured' &&
    x.amount.high === undefined &&
    y.amount.high === undefined &&
    a.optional === b.optional &&
    a.weighed.known &&
    b.weighed.known &&
    a.bare === undefined &&
    b.bare === undefined &&
    a.percent === undefined &&
    b.percent === undefined &&
    isPlain(x) &&
    isPlain(y) &&
    (x.bought === undefined) === (y.bought === undefined) &&
    (x.note === undefined || y.note === undefined)
  );
}

/** The later line goes into the earlier one; its preparation, note and comment go with it. */
export function mergeLines(
  document: Document,
  recipe: Recipe,
  part: Part,
  first: Ingredient,
  second: Ingredient,
): MergedLines | undefined {
  if (!isOnOwnLine(part, first) || !isOnOwnLine(part, second)) return undefined;
  if (!canMerge(first, second) || !first.weighed.known || !second.weighed.known) return undefined;
  const [a, b] = [first.node.amount, second.node.amount];
  if (a?.kind !== 'measured' || b?.kind !== 'measured' || first.node.name === undefined) return undefined;
  if (first.node.name.start < a.end) return undefined;
  const weights = [likelyGrams(first.weighed), likelyGrams(second.weighed)] as const;
  const sum = weights[0] + weights[1];
  const alike =
    a.unit?.symbol === b.unit?.symbol &&
    a.quantity.count === b.quantity.count &&
    a.quantity.size === b.quantity.size &&
    a.each === undefined;
  const unit = a.unit?.symbol ?? [a.sized?.text, a.counted?.text].filter((w) => w !== undefined).join(' ');
  const total = a.low.value + b.low.value;
  const written = alike
    ? `${numberText(total, a.low.style === 'glyph' ? 'glyph' : 'plain')} ${unit}`.trim()
    : `${trimmed(kitchenGrams(sum), 2)} g`;
  const line = lineOf(recipe, part, first);
  const { text } = document.lines[line] ?? { text: '' };
  const amount = replaceSpan(line, { start: a.low.start, end: a.end }, written);
  const edits: TextEdit[] = [amount, ...keepColumn(line, text, a.end, grownBy([amount]))];
  const tail = tailEdit(document, recipe, part, first, second);
  if (tail === undefined) return undefined;
  edits.push(...tail, deleteLine(document, lineOf(recipe, part, second)));
  const portions = portionEdits(
    recipe,
    part,
    [first, second],
    alike ? { unit, values: [a.low.value, b.low.value] } : { unit: 'g', values: weights },
    sum,
  );
  return portions === undefined ? undefined : { written, edits: [...edits, ...portions] };
}

/** What the second line says behind its name, put behind the first. */
function tailEdit(
  document: Document,
  recipe: Recipe,
  part: Part,
  first: Ingredient,
  second: Ingredient,
): TextEdit[] | undefined {
  const line = lineOf(recipe, part, first);
  const edits: TextEdit[] = [];
  const { preparation, bought, name } = first.node;
  if (name === undefined) return undefined;
  const other = second.node;
  const end = Math.max(name.end, preparation?.end ?? 0, bought?.end ?? 0);
  let behind = '';
  if (
    other.preparation !== undefined &&
    wordsOf(other.preparation.text).join(' ') !== wordsOf(preparation?.text ?? '').join(' ')
  )
    behind += preparation === undefined ? `, ${other.preparation.text}` : `; ${other.preparation.text}`;
  if (bought?.kind === 'measured' && other.bought?.kind === 'measured') {
    if (
      bought.unit?.symbol !== other.bought.unit?.symbol ||
      bought.high !== undefined ||
      other.bought.high !== undefined
    )
      return undefined;
    edits.push(replaceSpan(line, bought.low, trimmed(bought.low.value + other.bought.low.value, 2)));
    if (behind !== '') return undefined;
  }
  if (other.note !== undefined) {
    const text = document.lines[lineOf(recipe, part, second)]?.text ?? '';
    const from = text.lastIndexOf('(', other.note.start);
    const to = text.indexOf(')', other.note.end - 1);
    behind += to < 0 ? '' : ` ${text.slice(from, to + 1)}`;
  }
  if (behind !== '') edits.push(replaceSpan(line, { start: end, end }, behind));
  const comment = document.lines[lineOf(recipe, part, second)]?.comment;
  if (comment !== undefined) {
    const own = document.lines[line];
    const at = own?.text.trimEnd().length ?? 0;
    const words = comment.text.replace(/^#\s*/, '').trimEnd();
    edits.push(replaceSpan(line, { start: at, end: at }, own?.comment === undefined ? `   # ${words}` : `; ${words}`));
  }
  return edits;
}

/** Where the steps took the lines in turn, each says how much, and the last takes the rest. */
function portionEdits(
  recipe: Recipe,
  part: Part,
  lines: readonly [Ingredient, Ingredient],
  { unit, values }: { readonly unit: string; readonly values: readonly [number, number] },
  sumG: number,
): readonly TextEdit[] | undefined {
  const uses = lines.flatMap((line, k) =>
    (part.ledger.find((e) => e.ingredient === line)?.uses ?? []).map((use) => ({ use, whole: values[k] ?? 0 })),
  );
  const places = new Set(uses.map(({ use }) => placeOf(use)));
  if (places.size < 2) return [];
  if (places.size !== uses.length || !(sumG > 0)) return undefined;
  const taking = uses
    .filter(({ use }) => use.taken.high > 0 && !use.mention.verb)
    .sort((x, y) => x.use.part - y.use.part || x.use.step - y.use.step || x.use.mention.start - y.use.mention.start);
  const edits: TextEdit[] = [];
  for (const [i, { use, whole }] of taking.entries()) {
    if (use.mention.portion.kind === 'some') continue;
    // A portion that fits both lines is not known of either.
    if (use.taken.high - use.taken.low > 0.02) return undefined;
    const amount = middle(use.taken) * whole;
    const figure = unit === 'g' ? trimmed(kitchenGrams(amount), 2) : numberText(amount, 'plain');
    const lead = i === taking.length - 1 ? 'the rest of the ' : `${figure} ${unit}`.trim().concat(' of the ');
    edits.push(portionEdit(recipe, use, lead));
  }
  return edits;
}

const placeOf = ({ part, step, mention }: TakenUse): string => `${part} ${step} ${mention.start}`;
