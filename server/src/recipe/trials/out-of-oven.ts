/**
 * Knows what a recipe usually weighs as it comes out of the oven: by the kind of each part that is baked, and by what its composition can lose.
 * Refuses to judge what a trial weighed.
 */
import data from '../../../data/oven-loss.json' with { type: 'json' };
import type { Food } from '../../food/food.ts';
import { once } from '../../measure/once.ts';
import { addRanges, type Range } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Statement } from '../../notation/tree.ts';
import type { MediumKind } from '../../prose/event.ts';
import { placeNamed } from '../../prose/place-named.ts';
import { anyDoes, deed, does, isBaked, isInOven, speaksOf } from '../journey/deeds.ts';
import { isFlour } from '../list/ingredient.ts';
import { isAside } from '../measures/contents.ts';
import { meets } from '../measures/needs.ts';
import type { Ingredient, Part, PartHead, Recipe } from '../model.ts';
import { listedPart } from '../part.ts';
import { sameItems } from '../steps.ts';

/** Whether a trial's line is a weight, and taken out of the oven. */
export const isOutOfOven = ({ amount, outOf }: WeighedLine): boolean =>
  amount?.unit !== undefined && outOf !== undefined && placeNamed(outOf.text) === 'oven';

type WeighedLine = Pick<Extract<Statement, { kind: 'weighed' }>, 'amount' | 'outOf'>;

/** Grams. */
export interface OutOfOven {
  /** All that is listed and goes into the oven, as far as can be told; what may go on later is between none and all of it. */
  readonly ingredients: Range;
  /** What is usually left of it. */
  readonly left: Range;
  /** How far beyond the usual a weight still says nothing. */
  readonly slackG: number;
  /** What these are the sums of, part by part. */
  readonly parts: readonly { readonly name: string; readonly ingredients: Range; readonly left: Range }[];
}

/** What one part puts in, when it is in the oven, and what is left of that. */
interface PartInOven {
  readonly ingredients: Range;
  /** There is no most where something is poured in that nobody weighed. */
  readonly left: Range;
}

/** Undefined where nothing is baked, or a weight is not known. */
export function outOfOven({ parts, inherits }: Recipe): OutOfOven | undefined {
  return inherits ? undefined : outOfAll(parts.map(inOven));
}

/** The same of all parts of a recipe, as each has to do with the oven. */
export function outOfAll(parts: readonly InOven[]): OutOfOven | undefined {
  if (parts.some(({ isWeighed }) => !isWeighed)) return undefined;
  const baked = bakedOf(parts);
  if (!baked.includes(true)) return undefined;
  const listed = new Set<readonly Ingredient[]>();
  for (const { lists } of parts) for (const list of lists) listed.add(list);
  const [all, left] = [
    { low: 0, high: 0 },
    { low: 0, high: 0 },
  ];
  const sums: OutOfOven['parts'][number][] = [];
  for (let i = 0; i < parts.length; i++) {
    const { head, mostG, given } = parts[i] as InOven;
    // It counts where it stands on another's list.
    if (listed.size > 0 && listed.has(head.ingredients)) continue;
    if (baked[i] === true) {
      const inside = given();
      sums.push({ name: head.name, ...inside });
      all.low += inside.ingredients.low;
      all.high += inside.ingredients.high;
      left.low += inside.left.low;
      left.high += inside.left.high;
    } else {
      const perhaps = { low: 0, high: mostG };
      sums.push({ name: head.name, ingredients: perhaps, left: perhaps });
      all.high += mostG;
      left.high += mostG;
    }
  }
  return all.high > 0 ? { ingredients: all, left, slackG: all.high * data.slack.share, parts: sums } : undefined;
}

const NOTHING: Range = { low: 0, high: 0 };

/** It is baked, or put in for so long. */
const BAKING = deed(
  (event) => isBaked(event) || (event.act === 'put' && event.times.length > 0 && event.where.some(isInOven)),
);

/** How a part has to do with the oven. The same object for as long as its list, and what matters here of its steps, is the same. */
export interface InOven {
  /** It may have had other steps then. */
  readonly head: PartHead;
  readonly isWeighed: boolean;
  readonly mostG: number;
  /** The line of its last step in the oven; -1 where it has none. */
  readonly last: number;
  /** Later parts that take it or something of it, and the line of the step that does. */
  readonly takers: readonly { readonly part: number; readonly line: number }[];
  /** The lists of earlier parts that stand on its list by name. */
  readonly lists: readonly (readonly Ingredient[])[];
  readonly done: Done;
  /** What it puts in; worked out once. */
  readonly given: () => PartInOven;
}

/** What the steps of a part do that tells how much it loses. */
interface Done {
  /** It loses water before the oven, too. */
  readonly stove: boolean;
  readonly away: boolean;
  readonly boiled: boolean;
  readonly covered: boolean;
  readonly isLong: boolean;
  /** Places on its list of what is first taken after the last time in the oven: icing sugar to dust, cream to serve. */
  readonly later: readonly number[];
}

const IN_OVEN = keptOn<readonly Ingredient[], InOven>();

export function inOven(part: Part): InOven {
  const { head, includes, usesByLater } = part;
  const lists = includes.filter((of) => listedPart(head, of.name) !== undefined).map(({ ingredients }) => ingredients);
  const last = lastBake(part);
  // Where it bakes itself, nobody asks who takes it.
  const takers = last >= 0 ? NONE : usesByLater.map(({ use: { part, line } }) => ({ part, line }));
  const done = doneIn(part, last);
  const before = IN_OVEN.get(head.ingredients);
  if (
    before?.last === last &&
    isAlike(before.takers, takers) &&
    sameItems(before.lists, lists) &&
    isSame(before.done, done)
  )
    return before;
  const now: InOven = {
    head,
    isWeighed: head.massG.complete && !head.nominal,
    mostG: head.massG.high,
    last,
    takers,
    lists,
    done,
    given: once(() => workOut(head, done)),
  };
  IN_OVEN.set(head.ingredients, now);
  return now;
}

const NONE: readonly never[] = [];

const isAlike = (a: InOven['takers'], b: InOven['takers']): boolean =>
  a.length === b.length && a.every(({ part, line }, i) => part === b[i]?.part && line === b[i]?.line);

const isSame = (a: Done, b: Done): boolean =>
  a.stove === b.stove &&
  a.away === b.away &&
  a.boiled === b.boiled &&
  a.covered === b.covered &&
  a.isLong === b.isLong &&
  sameItems(a.later, b.later);

function doneIn({ steps, ledger, index }: Part, last: number): Done {
  const later: number[] = [];
  if (last >= 0)
    ledger.forEach(({ uses: [first] }, place) => {
      if (first?.part === index && first.line > last) later.push(place);
    });
  return {
    stove: anyDoes(steps, STOVE) && steps.some((s) => does(s, STOVE) && !does(s, OVEN_SET)),
    away: anyDoes(steps, TAKING_AWAY) || steps.some((s) => speaksOf(s, 'offcut')),
    boiled: anyDoes(steps, BOILING),
    covered: last >= 0 && steps.some((s) => does(s, BAKING) && (does(s, COVERED) || speaksOf(s, 'lid', 'foil'))),
    isLong: anyDoes(steps, LONG_IN_OVEN),
    later: later.length === 0 ? NONE : later,
  };
}

const lastBake = ({ steps }: Part): number => steps.findLast((step) => does(step, BAKING))?.line ?? -1;

/** By part, whether it goes into the oven: in its own steps, or in those of a later part that takes it before it bakes. */
function bakedOf(parts: readonly InOven[]): readonly boolean[] {
  const baked = parts.map(({ last }) => last >= 0);
  for (let i = parts.length - 2; i >= 0; i--) {
    if (baked[i] === true) continue;
    for (const { part, line } of parts[i]?.takers ?? []) {
      if (baked[part] !== true) continue;
      const last = parts[part]?.last ?? -1;
      // One that does not bake itself is taken into the oven by another.
      if (last >= 0 && line > last) continue;
      baked[i] = true;
      break;
    }
  }
  return baked;
}

const STOVE = deed(
  (event) =>
    event.act === 'heat' &&
    event.as !== 'beside' &&
    (event.cooks === 'through' ||
      event.cooks === 'as read' ||
      (event.cooks === 'outside' && event.medium !== undefined) ||
      event.medium?.is === 'fat') &&
    !isBaked(event),
);
const OVEN_SET = deed(({ temperatures }) => temperatures.some(({ of }) => of === 'oven'));
const TAKING_AWAY = deed(({ act, craft }) => act === 'discard' || craft === 'drain');
const BOILING = deed(
  (event) =>
    event.act === 'steep' ||
    (event.act === 'heat' &&
      event.as !== 'beside' &&
      event.cooks !== 'barely' &&
      (event.medium === undefined ? event.lasts === 'waits' : WET.has(event.medium.is)) &&
      !isBaked(event)),
);
const WET: ReadonlySet<MediumKind | undefined> = new Set<MediumKind>(['water', 'steam', 'pressure']);
const COVERED = deed(
  ({ act, vessel, where }) => act === 'cover' || vessel?.is === 'lidded' || where.some(({ is }) => is === 'bath'),
);

interface Loss {
  readonly loss: readonly number[];
}
const KINDS: Readonly<Record<string, Loss>> = data.kinds;

function workOut(head: PartHead, done: Done): PartInOven {
  const inside = head.ingredients.filter((i, place) => !i.free && !isAside(i) && !done.later.includes(place));
  const sum = inside.reduce((g, i) => addRanges(g, gramsOf(i)), NOTHING);
  const most = head.massG.high;
  const [least, worst] = lossOf(head, done, inside);
  const growing = inside.reduce((g, i) => (done.boiled && swells(i.food) ? g + gramsOf(i).high : g), 0);
  const high = sum.high * (1 - least) + (most - sum.high) + growing * (data.boiledGrowth.by - 1);
  const poured = head.ingredients.some((i) => i.free && isPoured(i));
  return {
    ingredients: { low: sum.low, high: most },
    left: { low: sum.low * (1 - worst), high: poured ? Number.POSITIVE_INFINITY : high },
  };
}

const upTo = (high: number): Range => ({ low: 0, high });

function gramsOf({ weighed, optional }: Ingredient): Range {
  if (!weighed.known) return NOTHING;
  return optional ? upTo(weighed.grams.high) : weighed.grams;
}

/** Least and most, as shares of the weight. */
function lossOf(
  { kind }: PartHead,
  { stove, away, covered, isLong }: Done,
  inside: readonly Ingredient[],
): readonly [number, number] {
  const own = KINDS[kind?.name ?? '']?.loss;
  const { share: canLose, water } = losable(inside);
  const [least = 0, most = 0] = own ?? lossOfFoods(inside);
  const { before } = data;
  const more = stove || away ? (own === undefined ? Math.max(most, before.most) : most + before.moreThanKind) : most;
  const worst = away ? more : Math.min(more, canLose);
  if (isLong && kind !== undefined && data.dried.kinds.includes(kind.name))
    return [water * data.dried.waterLeast, worst];
  const best = covered ? 0 : least;
  // What has little water keeps half of it at the least.
  return [Math.min(best, worst / 2), worst];
}

function lossOfFoods(inside: readonly Ingredient[]): readonly number[] {
  let [least, most, all, floury] = [0, 0, 0, 0];
  for (const i of inside) if (isFlour(i)) floury += gramsOf(i).high;
  for (const i of inside) all += gramsOf(i).high;
  const isBound = floury >= all * BINDING_FLOUR;
  for (const i of inside) {
    const grams = gramsOf(i).high;
    const [low = 0, high = 0] = data.foods[groupOf(i.food, isBound)].loss;
    least += grams * low;
    most += grams * high;
  }
  return all > 0 ? [least / all, most / all] : [0, 0];
}

/** A mixture with this share of flour holds the liquid in it (common practice, no source). */
const BINDING_FLOUR = 0.15;

function groupOf(food: Food | undefined, isBound: boolean): keyof typeof data.foods {
  // Of what is not known, anything may be lost.
  if (food === undefined) return 'juicy';
  if (isFlesh(food)) return 'flesh';
  if (isDry(food)) return 'other';
  return JUICY.has(food.class) || (!isBound && LIQUID.has(food.class)) ? 'juicy' : 'other';
}

const JUICY: ReadonlySet<Food['class']> = new Set(['vegetable', 'mushroom', 'fruit', 'leafy herb']);
const LIQUID: ReadonlySet<Food['class']> = new Set(['juice', 'stock', 'water', 'sauce', 'alcohol', 'milk', 'cream']);

const isFlesh = (food: Food): boolean => food.class !== 'egg' && meets('flesh', food);

/** Shares of the weight: what water, alcohol and the fat of flesh come to, and the water alone. */
function losable(inside: readonly Ingredient[]): { readonly share: number; readonly water: number } {
  let [mass, wet, water, fat] = [0, 0, 0, 0];
  for (const ingredient of inside) {
    const { food } = ingredient;
    const grams = gramsOf(ingredient).high;
    const per = food?.per100 ?? {};
    mass += grams;
    water += grams * (per.water ?? 0);
    // What does not say may be all water; few tables give alcohol for foods that have none.
    wet += grams * ((per.water ?? 100) + (per.alcohol ?? 0));
    if (food !== undefined && isFlesh(food)) fat += grams * (per.fat ?? 0);
  }
  if (mass <= 0) return { share: 0, water: 0 };
  return { share: Math.min(1, (wet + fat * data.fatOfFlesh.share) / (100 * mass)), water: water / (100 * mass) };
}

const LONG_IN_OVEN = deed(
  (event) =>
    (isBaked(event) || (event.act === 'dry' && event.where.some(isInOven))) &&
    event.times.some(({ minutes }) => minutes.low >= data.dried.fromMin),
);

/** As shares of 100 g: below this a food is a dry one. */
const DRY_WATER = 16;
const isDry = ({ per100 }: Food): boolean => (per100.water ?? 100) < DRY_WATER;

const SWELLING: ReadonlySet<Food['class']> = new Set(['grain', 'pasta', 'legume']);
const swells = (food: Food | undefined): boolean => food !== undefined && SWELLING.has(food.class) && isDry(food);

/** Of a free amount, what could weigh: a liquid, a fat, or what is not known. */
const isPoured = ({ food }: Ingredient): boolean =>
  food === undefined || (food.per100.water ?? 0) >= 50 || (food.per100.fat ?? 0) >= 50;
