/**
 * Knows how long each bake of a recipe is likely to take, from what lies in the oven, or why that is not estimated.
 * Refuses to judge what the recipe says.
 */
import { bird, estimate, type Form, type HeatEstimate, joint, type Load } from '../../heat/estimate.ts';
import type { HeatKind } from '../../heat/kinds.ts';
import { densityAt } from '../../heat/material.ts';
import type { Oven } from '../../heat/oven.ts';
import type { Extent } from '../../heat/shapes.ts';
import { startOf } from '../../heat/starts.ts';
import { keptOn } from '../../notation/kept.ts';
import type { PanNode } from '../../notation/tree.ts';
import type { Tells } from '../../prose/event.ts';
import { panSize } from '../measures/pan-size.ts';
import type { Recipe } from '../model.ts';
import { type Bake, bakesOf } from './bakes.ts';
import { type Declined, type InOven, sortOf } from './kind-of-bake.ts';
import { madeOf, withoutPastry } from './made-of.ts';
import { piecesIn } from './pieces.ts';
import { tinShape } from './tins.ts';

export type OvenTime = { readonly bake: Bake } & (
  | { readonly is: 'declined'; readonly why: Declined }
  | {
      readonly is: 'estimated';
      readonly load: Load;
      readonly estimate: HeatEstimate;
      /** The end is the kind's, and not said. */
      readonly targetAssumed: boolean;
      /** Of this recipe, that the estimate has learned from. */
      readonly trials: number;
    }
);

const TIMES = keptOn<Recipe, readonly OvenTime[]>();

/** Of each bake, in the order of the steps. */
export function ovenTimes(recipe: Recipe): readonly OvenTime[] {
  let times = TIMES.get(recipe);
  if (times === undefined) {
    times = bakesOf(recipe).map((bake) => timeOf(recipe, bake));
    TIMES.set(recipe, times);
  }
  return times;
}

/** °C of water around a cup in an oven: it evaporates (McGee, from memory: 80 to 95). */
const BATH_C = 88;

function timeOf(recipe: Recipe, bake: Bake): OvenTime {
  const declined = (why: Declined): OvenTime => ({ bake, is: 'declined', why });
  if (recipe.inherits || bake.body === undefined || bake.body.members.length === 0) return declined('contents');
  const made = madeOf(recipe, bake.body);
  if (made === undefined) return declined('no weight');
  if (bake.stages.length === 0) return declined('no heat');
  const inOven: InOven = { bake, made, ...tinOf(recipe, bake) };
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
    covered: bake.covered,
    ...(kind.form === 'cup' && { bathC: BATH_C }),
  };
  const found = estimate(load);
  if (found === undefined) return declined('out of range');
  return {
    bake,
    is: 'estimated',
    load,
    estimate: found,
    targetAssumed: bake.target === undefined,
    trials: 0,
  };
}

/** Until it bubbles, what is in the dish is nearly as hot as it gets (common practice, no source). */
const BUBBLING_C = 95;
const BUBBLES: ReadonlySet<Tells | undefined> = new Set<Tells>(['boiling', 'tender']);

const targetOf = ({ target: { low, high } }: HeatKind, { until }: Bake): number =>
  Math.max((low + high) / 2, until.some(({ is }) => BUBBLES.has(is)) ? BUBBLING_C : 0);

const ovenOf = ({ stages }: Bake): Oven => ({ stages, fan: stages.at(-1)?.fan === true });

/** The tin that it is in, and how many there are of it or of the pieces. */
function tinOf(recipe: Recipe, { part, body }: Bake): Pick<InOven, 'tin' | 'pieces'> {
  const held = new Set(body?.members.map(({ of }) => of.part));
  const node: PanNode | undefined =
    part.head.pan?.node ??
    recipe.parts.findLast(({ index, head }) => held.has(index) && head.pan !== undefined)?.head.pan?.node ??
    recipe.pan?.node;
  const size = node === undefined ? undefined : panSize(node, recipe.world.measures);
  const shape = node === undefined || size === undefined ? undefined : tinShape(node, size);
  const tin = size === undefined || shape === undefined ? undefined : { size, shape };
  const count = listedCount(recipe, body);
  return { tin, pieces: tin?.size.count ?? count ?? piecesIn(recipe, part) ?? 1 };
}

/** `20 potatoes of 180 g`. */
function listedCount({ parts }: Recipe, body: Bake['body']): number | undefined {
  const counts = (body?.members ?? []).flatMap(({ of }) => {
    const ingredient = parts[of.part]?.head.ingredients[of.ingredient];
    if (ingredient === undefined || !ingredient.weighed.known) return [];
    const { amount } = ingredient.node;
    return amount?.kind === 'measured' && amount.unit === undefined && ingredient.weighed.grams.low > 50
      ? [amount.quantity.low]
      : [];
  });
  return counts.length === 1 ? counts[0] : undefined;
}

function formOf({ tin }: InOven, length: number, form: string, massKg: number, density: number): Form | undefined {
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
