/**
 * Knows how a file, or some lines of it, is written in other measures: weights, US, metric, baker's percentages, and temperatures.
 * Refuses to change how much of anything there is, beyond what rounding says of itself.
 */

import { numberText } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Document } from '../notation/document.ts';
import type { LengthNode, Span } from '../notation/tree.ts';
import { FAN_LOWER_C } from '../recipe/dials.ts';
import { boundEvents } from '../recipe/journey/bind.ts';
import type { TemperatureScale } from '../recipe/journey/degrees.ts';
import { heatsOf } from '../recipe/journey/figures.ts';
import { bindIngredients } from '../recipe/list/ingredient.ts';
import type { Part, Recipe, Step } from '../recipe/model.ts';
import { fromPercent, toPercent } from './bakers-percent.ts';
import { type Conversion, type ConvertTo, type ConvertWish, isLeft, isWanted, type Work } from './conversion.ts';
import { convertAmount, type Measure } from './convert-amount.ts';
import { convertLine } from './convert-line.ts';
import { convertTemperature, type HeatToConvert, type Oven, ovenHeat } from './convert-temperature.ts';
import { newOvenTimes, newTimeText } from './new-oven-times.ts';
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
      for (const ingredient of part.head.ingredients)
        if (ingredient.shares !== true) convertLine(work, base + ingredient.line, ingredient, wish.to);
      if (wish.both !== true) for (const step of part.steps) convertSentence(work, part, step, wish.to);
    }
    convertChanges(work, wish.to);
    if (wish.both !== true) convertHead(work, wish.to);
  }
  if (scale !== undefined && wish.both !== true) convertHeat(work, parts, scale);
  if (recipe.outline.isCut) work.said.push('Lines past what is worked out of a file or a part stay as they are.');
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

/** What a variant swaps in and adds; what it takes from its base stays as it is written there. */
function convertChanges(work: Work, to: Measure): void {
  const { outline, world } = work.recipe;
  for (const { at, line } of outline.head) {
    const { statement } = line;
    if (statement.kind === 'from' && work.wish.lines === undefined)
      work.said.push(`The lines of ${statement.file?.text ?? 'the base'} stay as they are written there.`);
    if (statement.kind !== 'swap' && statement.kind !== 'add') continue;
    for (const ingredient of bindIngredients(statement.ingredient, at, world))
      if (ingredient.shares !== true) convertLine(work, at, ingredient, to);
  }
}

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
    put(portion.measured, convertAmount(portion.measured.quantity, of.match, to, work.recipe)?.text);
  }
  // `At 11 pounds` is no weight.
  const pressures = boundEvents(step).flatMap(({ event: { medium } }) => (medium?.is === 'pressure' ? [medium] : []));
  for (const item of step.sentence.items) {
    if (pressures.some(({ start, end }) => start <= item.start && item.start < end)) continue;
    if (item.kind === 'length' && to !== 'weight') put(item, lengthText(item, to));
    if (item.kind === 'measured' && item.unit !== undefined && to !== 'weight')
      put(item, convertAmount(item.quantity, undefined, to, work.recipe)?.text);
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
    const other = convertAmount(made.quantity, undefined, to, recipe);
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
  const put = (line: number, heat: HeatToConvert) => {
    if (!isWanted(work, line)) return;
    const { text } = document.lines[line] ?? { text: '' };
    const written = convertTemperature(line, text, heat, wish);
    if (written === undefined || isLeft(work, line, heat)) return;
    work.edits.push(written.edit);
    work.changes.push(`${written.before} → ${written.after}`);
    if (heat.of === 'oven') ovens++;
  };
  if (recipe.oven !== undefined) put(recipe.oven.at, ovenHeat(recipe.oven.node));
  for (const part of parts)
    for (const step of part.steps)
      for (const heat of heatsOf(step)) put((recipe.partsAt[part.index] ?? 0) + step.line, heat);
  if (ovens === 0 || wish.oven === undefined) return;
  work.said.push(
    `A fan oven is set ${FAN_LOWER_C} °C lower than a still one for the same bake (common practice); makers differ, so go by your own.`,
  );
  // Written times stay: a note says what they are likely to be, where that is another.
  for (const time of newOvenTimes(document, recipe, work.edits).times)
    work.said.push(
      `The times stay as written, as practice has it. Computed, ${newTimeText(time, `in ${wish.oven === 'fan' ? 'an oven with a fan' : 'a still oven'} at that heat`)}.`,
    );
}
