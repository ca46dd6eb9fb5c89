/**
 * Knows what boiling down leaves of a recipe of one part, where a step says how far: `reduce by half`, `until 300 ml remain`.
 * Refuses to guess how much boils off where no step says it.
 */
import { addRanges, type Range, scaleRange } from '../../measure/quantity.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { type Left, leftIn } from '../../prose/left.ts';
import { isIn } from '../list/families.ts';
import type { Ingredient, LedgerEntry, Part, Recipe, Step } from '../model.ts';
import { anyDoes, deed, does, eventsOf, isBaked } from './deeds.ts';

export interface Reduced {
  /** Grams that are left of all that goes in. */
  readonly grams: Range;
  /** Millilitres; undefined where so much else lies in it that no volume is that of the liquid. */
  readonly ml?: Range;
}

/** A jug in steam is read so well (judgement). */
const READ: Range = { low: 0.9, high: 1.1 };
/** g/ml, from fat stock to syrup of two thirds sugar (judgement; 65 % boils at 104 °C, and weighs 1.32). */
const DENSITY: Range = { low: 0.95, high: 1.35 };
/** Above this share of solids an amount is not that of all that is in the pot. */
const FEW_SOLIDS = 0.3;

const HEATED = deed((event) => event.act === 'heat' && !isBaked(event));
const BAKED = deed(isBaked);
const POURED_OFF = deed(
  ({ act, craft }) => act === 'discard' || craft === 'drain' || craft === 'strain' || craft === 'press',
);

/** One of what is in the pot; `isLiquid`: it boils away. */
interface InPot {
  readonly grams: Range;
  readonly ml: Range;
  readonly isLiquid: boolean;
}
/** By ingredient; what came to an amount together stands under none. */
type Pot = Map<Ingredient | undefined, InPot>;

export function reducedTo({ parts, inherits }: Recipe): Reduced | undefined {
  const [part, ...others] = parts;
  if (part === undefined || others.length > 0 || inherits || !part.head.massG.complete) return undefined;
  return part.steps.some((step) => leftIn(step.sentence.items) !== undefined) ? reducedIn(part) : undefined;
}

function reducedIn(part: Part): Reduced | undefined {
  const { steps, ledger } = part;
  if (anyDoes(steps, BAKED)) return undefined;
  const pot: Pot = new Map();
  let last = -1;
  for (const step of steps) {
    const left = leftOf(step);
    for (const entry of ledger) if (goesIn(entry, part, step, 0, left?.end)) add(pot, entry.ingredient);
    if (left === undefined) continue;
    last = step.line;
    if (left.amount === undefined) boilDown(pot, objectsOf(step, part, left), left.share);
    else if (!comesTo(pot, objectsOf(step, part, left), left.amount, isClear(steps, step))) return undefined;
    for (const entry of ledger) if (goesIn(entry, part, step, left.end)) add(pot, entry.ingredient);
  }
  return last < 0 || pot.size === 0 ? undefined : allIn(pot, part, last);
}

/** What the step says is left of what it heats; of a flame that is turned down nothing is. */
function leftOf(step: Step): Left | undefined {
  const left = leftIn(step.sentence.items);
  if (left === undefined || !does(step, HEATED)) return undefined;
  const isOfFlame = eventsOf(step).some(
    ({ act, start, end }) => act === 'adjust' && start <= left.start && left.start < end,
  );
  return isOfFlame ? undefined : left;
}

/** Whether the step is the first to take it, between two places of its line. */
function goesIn({ uses }: LedgerEntry, { index }: Part, { line }: Step, from: number, to = Infinity): boolean {
  const first = uses.find((use) => use.part === index);
  return first !== undefined && first.line === line && first.mention.start >= from && first.mention.start < to;
}

function add(pot: Pot, ingredient: Ingredient): void {
  if (!ingredient.weighed.known) return;
  const { grams } = ingredient.weighed;
  pot.set(ingredient, {
    grams,
    ml: { low: grams.low / DENSITY.high, high: grams.high / DENSITY.low },
    isLiquid: isIn(ingredient, 'liquid'),
  });
}

/** What the verb itself names: `reduce the wine by half`; none where it is all that is in the pot. */
const objectsOf = ({ mentions }: Step, { head, index }: Part, { start, end }: Left): ReadonlySet<Ingredient> =>
  new Set(
    mentions
      .filter((mention) => mention.start >= start && mention.start < end)
      .flatMap(({ ingredients }) => ingredients)
      .flatMap((ref) => (ref.part === index ? (head.ingredients[ref.ingredient] ?? []) : [])),
  );

const isClear = (steps: readonly Step[], { line }: Step): boolean =>
  steps.some((step) => step.line <= line && does(step, POURED_OFF));

const isMeant = (objects: ReadonlySet<Ingredient>, one: Ingredient | undefined): boolean =>
  objects.size === 0 || (one !== undefined && objects.has(one));

/** What is no liquid may lose nothing. */
function boilDown(pot: Pot, objects: ReadonlySet<Ingredient>, share: Range): void {
  for (const [ingredient, { grams, ml, isLiquid }] of pot) {
    if (!isMeant(objects, ingredient)) continue;
    const most = isLiquid ? share.high : 1;
    const less = ({ low, high }: Range): Range => ({ low: low * share.low, high: high * most });
    pot.set(ingredient, { grams: less(grams), ml: less(ml), isLiquid });
  }
}

/** What is meant comes to the amount; false where too much of it is no liquid. */
function comesTo(
  pot: Pot,
  objects: ReadonlySet<Ingredient>,
  { unit, quantity }: NonNullable<Left['amount']>,
  isClearOfSolids: boolean,
): boolean {
  const base = unit === undefined ? undefined : baseOf(unit.symbol, 'us');
  if (unit === undefined || base === undefined) return false;
  const meant = [...pot].filter(([ingredient]) => isMeant(objects, ingredient));
  if (!isClearOfSolids && shareOfSolids(meant.map(([, each]) => each)) > FEW_SOLIDS) return false;
  for (const [ingredient] of meant) pot.delete(ingredient);
  const { low, high } = scaleRange(quantity, base);
  const read: Range = { low: low * READ.low, high: high * READ.high };
  const isMass = dimensionOf(unit.symbol) === 'mass';
  pot.set(undefined, {
    grams: isMass ? read : { low: read.low * DENSITY.low, high: read.high * DENSITY.high },
    ml: isMass ? { low: read.low / DENSITY.high, high: read.high / DENSITY.low } : read,
    isLiquid: true,
  });
  return true;
}

function shareOfSolids(all: readonly InPot[]): number {
  const sum = (of: readonly InPot[]): number => of.reduce((grams, each) => grams + each.grams.high, 0);
  const whole = sum(all);
  return whole > 0 ? sum(all.filter(({ isLiquid }) => !isLiquid)) / whole : 0;
}

/** Bones, vegetables and herbs that are lifted out are in nothing; what no step takes, or takes some of later, may be. */
function allIn(pot: Pot, { steps, ledger, index }: Part, last: number): Reduced {
  const isStrained = anyDoes(steps, POURED_OFF);
  let [grams, ml]: [Range, Range] = [NOTHING, NOTHING];
  for (const each of pot.values()) {
    const stays = isStrained && !each.isLiquid ? 0 : 1;
    grams = addRanges(grams, { low: each.grams.low * stays, high: each.grams.high });
    ml = addRanges(ml, { low: each.ml.low * stays, high: each.ml.high });
  }
  for (const { ingredient, uses } of ledger) {
    const own = uses.filter((use) => use.part === index);
    const isLater = (own[0]?.line ?? -1) <= last && own.slice(1).some(({ line }) => line > last);
    if (!ingredient.weighed.known || !(own.length === 0 || isLater)) continue;
    const { high } = ingredient.weighed.grams;
    grams = addRanges(grams, { low: 0, high });
    ml = addRanges(ml, { low: 0, high: high / DENSITY.low });
  }
  return { grams, ...((isStrained || shareOfSolids([...pot.values()]) <= FEW_SOLIDS) && { ml }) };
}

const NOTHING: Range = { low: 0, high: 0 };
