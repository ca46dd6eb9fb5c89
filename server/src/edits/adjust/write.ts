/**
 * Knows how lines that move are written anew, each by its own factor: on the list in the writer's measure where a scale or a jug has it, else
 * in grams, and where a step names an amount of one, so that what the steps take adds up to the line still.
 * Refuses to work out the factors.
 */
import { kitchenGrams } from '../../measure/kitchen.ts';
import { trimmed } from '../../measure/number-text.ts';
import { dimensionOf } from '../../measure/unit.ts';
import type { Document } from '../../notation/document.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import type { Ingredient, Part, Recipe, TakenUse } from '../../recipe/model.ts';
import { scaleIngredient } from '../scale-list.ts';
import { closePortions } from '../scale-steps.ts';
import { lineIn, type ScaleEvent, type ToScale, textOf } from '../scaling.ts';
import { inColumn, listGrams, setCount } from '../set-amount.ts';
import { sizeAmount } from '../sized-amount.ts';
import { plainly } from '../sizes.ts';
import { replaceSpan, type TextEdit } from '../text-edit.ts';
import { isCounted } from './carriers.ts';
import type { Factors } from './landing.ts';

/** One line that moves, as it was written and as it will be. */
export interface Moved {
  readonly ingredient: Ingredient;
  /** `70 g`, and `28 g`. */
  readonly before: string;
  readonly after: string;
  readonly gramsBefore: number;
  /** As it is written then, rounded. */
  readonly gramsAfter: number;
}

export interface Rewritten {
  readonly edits: readonly TextEdit[];
  readonly moved: readonly Moved[];
}

/** A line that moves less than this is left as it is: no scale shows it. */
const STAYS = 5e-4;

/** Undefined where a line has no place for another amount. */
export function rewriteLines(document: Document, recipe: Recipe, part: Part, factors: Factors): Rewritten | undefined {
  const manner = { measures: recipe.world.measures, exact: false };
  const work: ToScale = { document, recipe, parts: [part], sizes: plainly(1), manner };
  const events: ScaleEvent[] = [];
  const moved: Moved[] = [];
  for (const [ingredient, by] of factors) {
    if (Math.abs(by - 1) < STAYS) continue;
    const line = writeLine(work, part, ingredient, by);
    if (line === undefined) return undefined;
    if (line.events.every((e) => e.kind !== 'edits' || e.edits.length === 0)) continue;
    moved.push(line.moved);
    events.push(...line.events);
    const entry = part.ledger.find((e) => e.ingredient === ingredient);
    for (const use of entry?.uses ?? []) events.push(...writePortion(work, ingredient, use, line));
  }
  const all = [...events, ...closePortions(work, events)];
  const edits = all.flatMap((e) => (e.kind === 'edits' ? e.edits : []));
  return { edits: edits.filter((e) => changes(work, e)), moved };
}

const changes = (work: ToScale, { start, end, text }: TextEdit): boolean =>
  textOf(work, start.line).slice(start.character, end.character) !== text;

interface WrittenLine {
  readonly moved: Moved;
  readonly events: readonly ScaleEvent[];
  /** By how many times the line grows as it is written. */
  readonly by: number;
  /** Its own measure gives way to grams. */
  readonly inGrams: boolean;
}

function writeLine(work: ToScale, part: Part, ingredient: Ingredient, by: number): WrittenLine | undefined {
  if (ingredient.percent !== undefined) return writePercent(work, part, ingredient, by);
  if (isCounted(ingredient) && isWhole(ingredient, by)) return writeCount(work, part, ingredient, by);
  if (isCooksMeasure(ingredient)) return writeGrams(work, part, ingredient, by);
  const events: ScaleEvent[] = [];
  const sizing = scaleIngredient(work, lineIn(work, part, ingredient.line), ingredient, by);
  let next = sizing.next();
  for (; next.done !== true; next = sizing.next()) events.push(next.value);
  const sized = next.value;
  if (sized === undefined) return undefined;
  const grown = by * (1 + sized.error);
  // Of pieces that are no whole number the weight is written too.
  const weight = events.flatMap((e) => (e.kind === 'edits' ? e.edits : [])).find(({ text }) => text.startsWith(' = '));
  return writtenAs(ingredient, sized.before, `${sized.after}${weight?.text ?? ''}`, grown, events, false);
}

function writtenAs(
  ingredient: Ingredient,
  before: string,
  after: string,
  by: number,
  events: readonly ScaleEvent[],
  inGrams: boolean,
): WrittenLine {
  const gramsBefore = gramsOf(ingredient);
  const moved = { ingredient, before, after, gramsBefore, gramsAfter: gramsBefore * by };
  return { moved, events, by, inGrams };
}

const amountOf = ({ node: { amount } }: Ingredient) => (amount?.kind === 'measured' ? amount : undefined);

const isWhole = (ingredient: Ingredient, by: number): boolean => {
  const count = (amountOf(ingredient)?.low.value ?? 0) * by;
  return Math.abs(count - Math.round(count)) < 1e-6 && count > 0.5;
};

/** Spoons and cups, which no fraction brings to the gram. */
function isCooksMeasure(ingredient: Ingredient): boolean {
  const symbol = amountOf(ingredient)?.unit?.symbol;
  if (symbol === undefined || ingredient.node.beside !== undefined || dimensionOf(symbol) === 'mass') return false;
  return !JUGS.has(symbol);
}

/** Volumes that a jug or a scale reads off. */
const JUGS: ReadonlySet<string> = new Set(['ml', 'cl', 'dl', 'l']);

function writeCount(work: ToScale, part: Part, ingredient: Ingredient, by: number): WrittenLine | undefined {
  const count = Math.round((amountOf(ingredient)?.low.value ?? 0) * by);
  const set = setCount(work.recipe, part.index, ingredient, count);
  if (set === undefined) return undefined;
  const own = lineIn(work, part, ingredient.line);
  // The steps' amounts are written with those of the others.
  const edits = set.edits.filter((e) => e.start.line === own);
  return writtenAs(
    ingredient,
    writtenOf(work, part, ingredient),
    set.written,
    by,
    [
      { kind: 'edits', edits },
      { kind: 'line', ingredient, written: { value: count, unit: undefined } },
    ],
    false,
  );
}

function writeGrams(work: ToScale, part: Part, ingredient: Ingredient, by: number): WrittenLine | undefined {
  const grams = kitchenGrams(gramsOf(ingredient) * by);
  const set = listGrams(work.recipe, part.index, ingredient, grams);
  if (set === undefined) return undefined;
  const value = Number.parseFloat(set.written);
  return writtenAs(
    ingredient,
    writtenOf(work, part, ingredient),
    set.written,
    value / gramsOf(ingredient),
    [
      { kind: 'edits', edits: set.edits },
      { kind: 'line', ingredient, written: { value, unit: 'g' } },
    ],
    true,
  );
}

/** A percentage of the flour, in steps a baker writes. */
function writePercent(work: ToScale, part: Part, ingredient: Ingredient, by: number): WrittenLine | undefined {
  const { percent } = ingredient;
  const amount = amountOf(ingredient);
  if (percent === undefined || amount === undefined || percent.low !== percent.high) return undefined;
  const number = percentNear(percent.low * by);
  const span = { start: amount.low.start, end: amount.low.end };
  const edits = inColumn(work.recipe, part.index, ingredient, [
    replaceSpan(lineIn(work, part, ingredient.line), span, number),
  ]);
  return writtenAs(
    ingredient,
    writtenOf(work, part, ingredient),
    `${number} %`,
    Number(number) / percent.low,
    [{ kind: 'edits', edits }],
    false,
  );
}

const percentNear = (exact: number): string => trimmed(exact, exact < 10 ? 2 : 1);

/** The amount as it stands, without its name. */
function writtenOf(work: ToScale, part: Part, ingredient: Ingredient): string {
  const amount = amountOf(ingredient);
  const text = textOf(work, lineIn(work, part, ingredient.line));
  return amount === undefined ? '' : text.slice(amount.low.start, amount.end).replace(/\s+/g, ' ').trim();
}

/** An amount of the line that a step names goes with it; in grams where the line does. */
function* writePortion(
  work: ToScale,
  ingredient: Ingredient,
  use: TakenUse,
  { by, inGrams }: WrittenLine,
): Generator<ScaleEvent> {
  const { portion, ingredients } = use.mention;
  if (portion.kind !== 'amount' || ingredients.length !== 1) return;
  const { measured } = portion;
  const { unit } = measured;
  if (unit?.symbol === '%') return;
  const line = (work.recipe.partsAt[use.part] ?? 0) + use.line;
  const at = { node: measured, part: ingredients[0]?.part ?? use.part };
  const share =
    use.taken.low === use.taken.high && use.times.low === use.times.high ? use.taken.low / use.times.low : 0;
  if (
    inGrams &&
    unit !== undefined &&
    dimensionOf(unit.symbol) === 'volume' &&
    share > 0 &&
    measured.high === undefined
  ) {
    const grams = kitchenGrams(gramsOf(ingredient) * by * share);
    const edits = [replaceSpan(line, { start: measured.low.start, end: unit.end }, `${trimmed(grams, 2)} g`)];
    yield { kind: 'portion', ingredient, portion: { edits, value: grams, unit: 'g', ...at } };
    return;
  }
  const sized = sizeAmount(line, textOf(work, line), measured, by, work.manner);
  yield { kind: 'portion', ingredient, portion: { edits: sized.edits, value: sized.value, unit: sized.unit, ...at } };
}
