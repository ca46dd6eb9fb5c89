/**
 * Knows how long each bake of a recipe is likely to take, from what lies in the oven, or why that is not estimated.
 * Refuses to judge what the recipe says.
 */

import { bird, type Form, joint, type Load } from '../../heat/estimate.ts';
import type { HeatKind } from '../../heat/kinds.ts';
import { densityAt } from '../../heat/material.ts';
import type { Oven } from '../../heat/oven.ts';
import type { Extent } from '../../heat/shapes.ts';
import { startOf } from '../../heat/starts.ts';
import { middle } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { PanNode } from '../../notation/tree.ts';
import type { Tells } from '../../prose/event.ts';
import { type Journey, journeysOf } from '../journey/fold.ts';
import { onceWithParts } from '../journey/once-with-parts.ts';
import { panSize } from '../measures/pan-size.ts';
import type { Recipe } from '../model.ts';
import { type Bake, bakesIn } from './bakes.ts';
import { thicknessOf } from './cuts.ts';
import { estimateOnce } from './estimate-once.ts';
import { withTrials } from './from-trials.ts';
import { type Declined, type InOven, sortOf } from './kind-of-bake.ts';
import { type MadeOf, madeOf, withoutPastry } from './made-of.ts';
import { piecesIn } from './pieces.ts';
import type { OvenTime } from './time-in-oven.ts';
import { darkOf, tinShape } from './tins.ts';

const TIMES = keptOn<Recipe, readonly OvenTime[]>();

/** Of each bake, in the order of the text, whatever its trials taught. */
export const untriedTimes = (recipe: Recipe): readonly OvenTime[] =>
  journeysOf(recipe)
    .flatMap((journey) => timesIn(recipe, journey, undefined))
    .sort(byPlace);

/** The same by its trials. */
export function ovenTimes(recipe: Recipe): readonly OvenTime[] {
  let times = TIMES.get(recipe);
  if (times === undefined) {
    times = withTrials(recipe, untriedTimes(recipe));
    TIMES.set(recipe, times);
  }
  return times;
}

const byPlace = ({ bake: a }: OvenTime, { bake: b }: OvenTime): number =>
  a.part.index - b.part.index || a.line - b.line || a.event.start - b.event.start;

const timesIn = onceWithParts(
  ({ pieces }: Journey) => pieces.map(({ folded }) => folded.part.index),
  (recipe, journey): readonly OvenTime[] => bakesIn(journey).map(({ bake, cutUp }) => timeOf(recipe, bake, cutUp)),
);

/** °C of water around a cup in an oven: it evaporates, and is kept below the boil, at 82 to 93 (Berolzheimer 1939). */
const BATH_C = 88;

const timeOf = onceWithParts(
  ({ part, body }: Bake) => [part.index, ...(body?.members ?? []).map(({ of }) => of.part)],
  (recipe, bake, cutUp: string): OvenTime => work(recipe, bake, new Set(cutUp.split(' '))),
);

function work(recipe: Recipe, bake: Bake, cutUp: ReadonlySet<string>): OvenTime {
  const declined = (why: Declined): OvenTime => ({ bake, is: 'declined', why });
  if (recipe.inherits || bake.body === undefined || bake.body.members.length === 0) return declined('contents');
  const made = madeOf(recipe, bake.body);
  if (made === undefined) return declined('no weight');
  if (bake.stages.length === 0) return declined('no heat');
  const tray = trayOf(recipe, bake, made);
  const inOven: InOven = { recipe, bake, cutUp, made, ...tray, pieces: tray.pieces ?? 1 };
  const sort = sortOf(inOven);
  if (typeof sort === 'string') return declined(sort);
  const { kind } = sort;
  const { tin, pieces } = inOven;
  // The crust is reckoned as what the heat must pass.
  const filling = kind.crust > 0 ? withoutPastry(made) : made;
  if (filling === undefined) return declined('no weight');
  const massKg = filling.grams / 1000 / pieces;
  const density = densityAt(filling.makeup, 20) * (1 - kind.porosity);
  const form = formOf(inOven, sort.length, kind.form, massKg, density);
  if (form === undefined) return declined(tin === undefined ? 'no pan' : 'unknown sort');
  const start = startOf(kind.name);
  const targetC = bake.target ?? targetOf(kind, bake);
  const load: Load = {
    kind,
    massKg,
    makeup: filling.makeup,
    form,
    startC: bake.body.band === 'cold' ? start.cold : start.usual,
    targetC,
    oven: ovenOf(bake),
    ...(inOven.pan && { pan: inOven.pan }),
    covered: bake.covered,
    ...(kind.form === 'cup' && { bathC: BATH_C }),
  };
  if (targetC > MOST_INSIDE_C) return declined('out of range');
  if (isOverfull(inOven, massKg / density)) return declined('overfull');
  const found = estimateOnce(load);
  if (found === undefined) return declined('out of range');
  return {
    bake,
    is: 'estimated',
    load,
    estimate: found,
    targetAssumed: bake.target === undefined,
    startAssumed: true,
    trials: 0,
  };
}

/** What holds water gets no hotter inside. */
const MOST_INSIDE_C = 105;

/** `volume`: m³ in one tin, while it bakes. */
const isOverfull = ({ tin }: InOven, volume: number): boolean =>
  tin?.size.depthCm !== undefined && volume / tin.shape.areaM2 > (tin.size.depthCm / 100) * HEAPED;
/** What rises stands over the rim. */
const HEAPED = 1.3;

/** Until it bubbles, what is in the dish is nearly as hot as it gets (common practice, no source). */
const BUBBLING_C = 95;
const BUBBLES: ReadonlySet<Tells | undefined> = new Set<Tells>(['boiling', 'tender']);

const targetOf = ({ target }: HeatKind, { until }: Bake): number =>
  Math.max(middle(target), until.some(({ is }) => BUBBLES.has(is)) ? BUBBLING_C : 0);

/** The last heat stays to the end. */
const ovenOf = ({ stages }: Bake): Oven => ({
  stages: stages.map(({ celsius, untilMin }) => ({ celsius, untilMin: Math.min(untilMin, ALWAYS_MIN) })),
  fan: stages.at(-1)?.fan === true,
});
const ALWAYS_MIN = 1e6;

type Tray = Pick<InOven, 'tin' | 'pan'> & { readonly pieces: number | undefined };

/** The tin that it is in, and how many there are of it or of the pieces; undefined where nobody says. */
export function trayOf(recipe: Recipe, { part, body }: Bake, made: MadeOf): Tray {
  const held = new Set(body?.members.map(({ of }) => of.part));
  const node: PanNode | undefined =
    part.head.pan?.node ??
    recipe.parts.findLast(({ index, head }) => held.has(index) && head.pan !== undefined)?.head.pan?.node ??
    recipe.pan?.node;
  const size = node === undefined ? undefined : panSize(node, recipe.world.measures);
  const shape = node === undefined || size === undefined ? undefined : tinShape(node, size);
  const tin = size === undefined || shape === undefined ? undefined : { size, shape };
  return {
    tin,
    pan: tin && node && darkOf(node),
    pieces: tin?.size.count ?? listedCount(made) ?? piecesIn(recipe, part),
  };
}

/** `20 potatoes of 180 g`, where they are nearly all of it. */
function listedCount({ fillings, grams }: MadeOf): number | undefined {
  const [main] = fillings.filter((each) => each.grams > NEARLY_ALL * grams);
  const amount = main?.ingredient.node.amount;
  return amount?.kind === 'measured' && amount.unit === undefined ? amount.quantity.low : undefined;
}
const NEARLY_ALL = 0.8;

function formOf(
  { tin, made }: InOven,
  length: number,
  form: string,
  massKg: number,
  density: number,
): Form | undefined {
  switch (form) {
    case 'joint':
      return { is: 'body', extents: joint(massKg, density, length) };
    case 'bird':
      return { is: 'body', extents: bird(massKg, density) };
    case 'pan':
      return tin && { is: 'pan', area: tin.shape.areaM2, sides: tin.shape.sides };
    case 'brick': {
      if (tin === undefined) return { is: 'body', extents: freeLoaf(massKg / density) };
      const height = massKg / density / tin.shape.areaM2;
      return { is: 'body', extents: [...tin.shape.sides, { half: height / 2, round: false }] };
    }
    case 'slice': {
      const thick = made.fillings.flatMap(({ ingredient }) => thicknessOf(ingredient) ?? [])[0];
      if (thick === undefined) return undefined;
      const half = Math.sqrt(massKg / density / thick / Math.PI);
      return {
        is: 'body',
        extents: [
          { half: thick / 2, round: false },
          { half, round: true },
        ],
      };
    }
    case 'piece': {
      const across = ((4 * massKg) / density / Math.PI / length) ** (1 / 3);
      return {
        is: 'body',
        extents: [
          { half: across / 2, round: true },
          { half: (across * length) / 2, round: false },
        ],
      };
    }
    case 'cup': {
      if (tin === undefined) return undefined;
      const height = massKg / density / tin.shape.areaM2;
      return { is: 'body', extents: [...tin.shape.sides, { half: height / 2, round: false }] };
    }
  }
  return undefined;
}

/** A loaf that stands free, by its height: so much longer and wider (US Armed Forces Recipe Service, card L-035: 33 x 11.5 x 7 cm). */
const FREE_LENGTH = 4.7;
const FREE_WIDTH = 1.64;

function freeLoaf(volume: number): readonly Extent[] {
  const height = (volume / FREE_LENGTH / FREE_WIDTH) ** (1 / 3);
  return [FREE_LENGTH, FREE_WIDTH, 1].map((times) => ({ half: (height * times) / 2, round: false }));
}
