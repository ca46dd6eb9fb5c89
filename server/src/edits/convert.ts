/**
 * Knows how a file, or some lines of it, is written in other measures: weights, US, metric, baker's percentages, and temperatures.
 * Refuses to change how much of anything there is, beyond what rounding says of itself.
 */

import { numberText } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Document } from '../notation/document.ts';
import { equalOf, isMass } from '../notation/item-amounts.ts';
import type { LengthNode, MeasuredNode, Span } from '../notation/tree.ts';
import { bindIngredient, type Ingredient } from '../recipe/ingredient.ts';
import type { Part, Recipe, Step } from '../recipe/recipe.ts';
import { amountSpan, grownBy, keepColumn } from './amount-text.ts';
import { fromPercent, toPercent } from './bakers-percent.ts';
import { type Conversion, type ConvertTo, type ConvertWish, isLeft, isWanted, type Work } from './conversion.ts';
import { type ConvertedAmount, convertAmount, type Measure } from './convert-amount.ts';
import { convertTemperature, FAN_LOWER_C, type Oven, type TemperatureScale } from './convert-temperature.ts';
import { percentOff } from './scale.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

/** What edits write the recipe in other measures. */
export function convertRecipe(document: Document, recipe: Recipe, wish: ConvertWish): Conversion {
  const work: Work = { document, recipe, wish, edits: [], changes: [], said: [], uncertain: [] };
  const scale = SCALES[wish.to];
  const parts = recipe.parts.filter((p) => touches(work, p));
  if (wish.to === 'percent') for (const part of parts) toPercent(work, part);
  else if (wish.to === 'weight' || wish.to === 'us' || wish.to === 'metric') {
    for (const part of parts) {
      if (wish.to === 'weight') fromPercent(work, part);
      const base = recipe.partsAt[part.index] ?? 0;
      for (const ingredient of part.head.ingredients) convertLine(work, base + ingredient.line, ingredient, wish.to);
      if (wish.both !== true) for (const step of part.steps) convertSentence(work, part, step, wish.to);
    }
    convertChanges(work, wish.to);
    if (wish.both !== true) convertHead(work, wish.to);
  }
  if (scale !== undefined && wish.both !== true) convertHeat(work, parts, scale);
  if (work.uncertain.length > 0)
    work.said.push(`Weights that a kitchen would find to differ: ${work.uncertain.join('; ')}.`);
  return {
    edits: work.edits.filter((e) => textAt(document, e) !== e.text),
    changes: work.changes,
    said: work.said,
  };
}

/** Whether a part has lines that are wanted. */
function touches({ recipe, wish: { lines } }: Work, part: Part): boolean {
  const base = recipe.partsAt[part.index] ?? 0;
  return lines === undefined || (base <= lines.last && base + part.head.source.lines.length > lines.first);
}

const textAt = (document: Document, { start, end }: TextEdit): string =>
  document.lines[start.line]?.text.slice(start.character, end.character) ?? '';

const SCALES: Readonly<Partial<Record<ConvertTo, { readonly scale?: TemperatureScale; readonly oven?: Oven }>>> = {
  us: { scale: 'F' },
  metric: { scale: 'C' },
  celsius: { scale: 'C' },
  fahrenheit: { scale: 'F' },
  gas: { scale: 'gas', oven: 'still' },
  fan: { oven: 'fan' },
  still: { oven: 'still' },
};

/** A weight off by more than this either way is said to be uncertain. */
const UNSURE = 0.15;

/** What a variant swaps in and adds; what it takes from its base stays as it is written there. */
function convertChanges(work: Work, to: Measure): void {
  const { outline, world } = work.recipe;
  for (const { at, line } of outline.head) {
    const { statement } = line;
    if (statement.kind === 'from' && work.wish.lines === undefined)
      work.said.push(`The lines of ${statement.file?.text ?? 'the base'} stay as they are written there.`);
    if (statement.kind !== 'swap' && statement.kind !== 'add') continue;
    const ingredient = bindIngredient(statement.ingredient, at, world);
    if (ingredient !== undefined) convertLine(work, at, ingredient, to);
  }
}

function convertLine(work: Work, line: number, ingredient: Ingredient, to: Measure): void {
  const { amount, bought } = ingredient.node;
  const equals = equalOf(ingredient.node);
  if (!isWanted(work, line) || amount?.kind !== 'measured' || amount.unit?.symbol === '%') return;
  if (isLeft(work, line)) return;
  const { text, statement } = work.document.lines[line] ?? { text: '' };
  const span = amountSpan(ingredient.node) ?? amount;
  const written = text.slice(amount.start, Math.min(amount.end, span.end));
  const edits: TextEdit[] = [];
  if (work.wish.both === true) {
    const both = equals === undefined ? bothOf(amount, written, ingredient, to, work) : undefined;
    if (both === undefined) return;
    edits.push(replaceSpan(line, { start: amount.start, end: Math.min(amount.end, span.end) }, both.text));
    note(work, ingredient, written, both);
  } else {
    const own = ofTheHouse(equals, to) ?? convertAmount(amount, ingredient.match, to, work.recipe.world);
    if (own === undefined) {
      if (to === 'weight' && !isMass(amount) && !ingredient.weighed.known && !isByHand(amount))
        work.said.push(`${ingredient.name} stays as written: ${ingredient.weighed.why}.`);
    } else {
      edits.push(replaceSpan(line, span, own.text));
      note(work, ingredient, written, own);
    }
    const asBought = bought?.kind === 'measured' ? convertAmount(bought, undefined, to, work.recipe.world) : undefined;
    if (asBought !== undefined && bought !== undefined) edits.push(replaceSpan(line, bought, asBought.text));
  }
  if (edits.length === 0) return;
  work.edits.push(...edits);
  if (statement?.kind !== 'ingredient') return;
  const before = edits.filter((e) => e.start.character < span.end);
  work.edits.push(...keepColumn(line, text, span.end, grownBy(before)));
}

function note(work: Work, { name }: Ingredient, before: string, { text, error, doubt }: ConvertedAmount): void {
  const off = Math.abs(error) < 0.005 ? '' : ` (${percentOff(error)})`;
  work.changes.push(`${name} ${before} → ${text}${off}`);
  if (doubt > UNSURE) work.uncertain.push(`${name}, up to ${trimmed(doubt * 100, 0)} % either way`);
}

/** `2 cups = 476 g`: the house has weighed it. */
function ofTheHouse(equals: MeasuredNode | undefined, to: Measure): ConvertedAmount | undefined {
  if (equals === undefined || !isMass(equals) || to === 'us') return undefined;
  const { low, high, unit } = equals;
  const isMetric = unit?.symbol === 'g' || unit?.symbol === 'kg';
  const grams = [low, ...(high === undefined ? [] : [high])].map((n) => trimmed(n.value, 2)).join('-');
  return isMetric ? { text: `${grams} ${unit.symbol}`, error: 0, doubt: 0 } : undefined;
}

/** Volume first, then the weight, whichever was written. */
function bothOf(
  amount: MeasuredNode,
  written: string,
  ingredient: Ingredient,
  to: Measure,
  work: Work,
): ConvertedAmount | undefined {
  const other = convertAmount(amount, ingredient.match, isMass(amount) ? 'us' : 'weight', work.recipe.world);
  if (other === undefined || (isMass(amount) && to !== 'us')) return undefined;
  // Ounces beside grams are one weight said twice.
  if (/ (?:oz|lb)$/.test(other.text)) return undefined;
  return { ...other, text: isMass(amount) ? `${other.text} = ${written}` : `${written} = ${other.text}` };
}

const isByHand = ({ unit }: MeasuredNode): boolean =>
  unit !== undefined && ['pinch', 'dash', 'drop', '%'].includes(unit.symbol);

function convertSentence(work: Work, part: Part, step: Step, to: Measure): void {
  const line = (work.recipe.partsAt[part.index] ?? 0) + step.line;
  if (!isWanted(work, line)) return;
  const done = new Set<number>();
  const put = (span: Span, text: string | undefined) => {
    if (text === undefined || done.has(span.start)) return;
    done.add(span.start);
    if (isLeft(work, line, span)) return;
    work.edits.push(replaceSpan(line, span, text));
  };
  for (const { portion, ingredients } of step.mentions) {
    const [ref] = ingredients;
    const of = ref === undefined ? undefined : work.recipe.parts[ref.part]?.head.ingredients[ref.ingredient];
    if (portion.kind !== 'amount' || portion.measured.unit === undefined || of === undefined) continue;
    put(portion.measured, convertAmount(portion.measured, of.match, to, work.recipe.world)?.text);
  }
  for (const item of step.sentence.items) {
    if (item.kind === 'length' && to !== 'weight') put(item, lengthText(item, to));
    if (item.kind === 'measured' && item.unit !== undefined && to !== 'weight')
      put(item, convertAmount(item, undefined, to, work.recipe.world)?.text);
  }
}

/** Thickness and size in centimetres or inches, as a ruler shows them. */
function lengthText({ measured }: LengthNode, to: 'us' | 'metric'): string | undefined {
  const unit = measured.unit?.symbol;
  if (unit === undefined || (unit === 'in') === (to === 'us')) return undefined;
  const mm = unit === 'in' ? 25.4 : unit === 'cm' ? 10 : 1;
  const values = [measured.low.value, ...(measured.high === undefined ? [] : [measured.high.value])].map((v) => v * mm);
  const about = measured.quantity.about ? 'about ' : '';
  return about + lengths(values, to);
}

function lengths(mm: readonly number[], to: 'us' | 'metric'): string {
  if (to === 'us') return `${mm.map(inchText).join('-')} in`;
  const small = mm.every((v) => v < 10);
  return small
    ? `${mm.map((v) => trimmed(Math.max(0.5, Math.round(v * 2) / 2), 1)).join('-')} mm`
    : `${mm.map((v) => trimmed(v < 100 ? Math.round(v / 5) / 2 : Math.round(v / 10), 1)).join('-')} cm`;
}

function inchText(mm: number): string {
  const inches = mm / 25.4;
  const step = inches < 1 ? 1 / 8 : inches < 6 ? 1 / 4 : 1 / 2;
  return numberText(Math.max(step, Math.round(inches / step) * step), 'plain');
}

/** The yield where it is a weight or volume, and the pan. */
function convertHead(work: Work, to: Measure): void {
  const { recipe } = work;
  const made = recipe.yield?.node.amount;
  if (recipe.yield !== undefined && made?.unit !== undefined && isWanted(work, recipe.yield.at)) {
    const other = convertAmount(made, undefined, to, recipe.world);
    if (other !== undefined && !isLeft(work, recipe.yield.at, made)) {
      work.edits.push(replaceSpan(recipe.yield.at, made, other.text));
      work.changes.push(`yield → ${other.text}`);
    }
  }
  if (recipe.pan === undefined || to === 'weight' || !isWanted(work, recipe.pan.at)) return;
  const { at, node } = recipe.pan;
  const unit = node.unit?.symbol;
  const [first] = node.sizes;
  const last = node.sizes.at(-1);
  if (unit === undefined || node.unit === undefined || first === undefined || last === undefined) return;
  if ((unit === 'in') === (to === 'us') || isLeft(work, at)) return;
  // `9-inch (23 cm)` says both; `9 in x 13 in` has a unit for each.
  const written = work.document.lines[at]?.text.slice(node.start, node.end) ?? '';
  if (
    /[(/]/.test(written) ||
    /\p{L}{2}/u.test(written.slice(first.end - node.start, last.start - node.start).replace('by', ''))
  )
    return;
  const mm = unit === 'in' ? 25.4 : unit === 'cm' ? 10 : 1;
  for (const size of node.sizes) {
    const text = to === 'us' ? inchText(size.value * mm) : trimmed(roundCm((size.value * mm) / 10), 1);
    work.edits.push(replaceSpan(at, size, text));
  }
  work.edits.push(replaceSpan(at, node.unit, to === 'us' ? 'in' : 'cm'));
  work.changes.push(`pan in ${to === 'us' ? 'inches' : 'centimetres'}`);
}

const roundCm = (cm: number): number => (cm < 10 ? Math.round(cm * 2) / 2 : Math.round(cm));

function convertHeat(
  work: Work,
  parts: readonly Part[],
  wish: { readonly scale?: TemperatureScale; readonly oven?: Oven },
): void {
  const { recipe, document } = work;
  let ovens = 0;
  const put = (line: number, node: Parameters<typeof convertTemperature>[2], role: 'oven' | 'other', read?: Step) => {
    if (!isWanted(work, line)) return;
    const heat = read?.heat.find((h) => h.node === node);
    const { text } = document.lines[line] ?? { text: '' };
    const written = convertTemperature(line, text, node, role === 'oven' ? 'oven' : (heat?.role ?? 'unknown'), wish);
    if (written === undefined || isLeft(work, line, node)) return;
    work.edits.push(written.edit);
    work.changes.push(`${written.before} → ${written.after}`);
    if (role === 'oven' || heat?.role === 'oven') ovens++;
  };
  if (recipe.oven !== undefined) put(recipe.oven.at, recipe.oven.node, 'oven');
  for (const part of parts) {
    for (const step of part.steps)
      for (const item of step.sentence.items)
        if (item.kind === 'temperature') put((recipe.partsAt[part.index] ?? 0) + step.line, item, 'other', step);
  }
  if (ovens > 0 && wish.oven !== undefined)
    work.said.push(
      `A fan oven is set ${FAN_LOWER_C} °C lower than a still one for the same bake (common practice); makers differ, so go by your own.`,
    );
}
