/**
 * Knows what a recipe heats on the stove by what lies there, whatever the kind of its part: what is read of a dish that is named, chocolate by
 * itself, and how long potatoes, rice, pasta and eggs boil.
 * Refuses to judge.
 */
import { type HeatWay, spansOf } from '../../heat/spans.ts';
import { type BoundEvent, boundEvents } from '../../recipe/journey/bind.ts';
import { type Body, WAS } from '../../recipe/journey/bodies.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import { type Journey, journeysOf } from '../../recipe/journey/fold.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { type Family, isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, IngredientRef, Part, Recipe } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { cooksThrough, heatsFood, isFigure, isStoveHeat, spentIn } from './heated-on-stove.ts';
import { fleshIn, namedAt } from './taken-for.ts';
import type { Heated, WrittenHeat, WrittenTime } from './written-heat.ts';

/** A figure of food that is heated, and what lies there. */
interface Reading {
  readonly part: Part;
  readonly line: number;
  readonly figure: HeatFigure;
  readonly by: BoundEvent;
  readonly lying: readonly Ingredient[];
}

const readingsIn = onceFor(({ parts, steps }: Journey): readonly Reading[] =>
  steps.flatMap((folded) => {
    const part = parts[folded.part];
    const step = part?.steps.find(({ line }) => line === folded.line);
    if (part === undefined || step === undefined) return [];
    return heatsOf(step).flatMap((figure) => {
      const by = folded.events.find(({ event }) => event === figure.event);
      return by === undefined || !isOfPot(figure) || !isFigure(figure)
        ? []
        : [{ part, line: folded.line, figure, by, lying: heatedBy(parts, folded, by) }];
    });
  }),
);

/** `Boil the sugar and water to 104 C` is of the water as well. */
const isOfPot = ({ of, event }: HeatFigure): boolean =>
  of === 'food' ||
  of === 'nothing' ||
  (of === 'medium' && (event?.medium?.is === 'water' || event?.medium?.is === 'syrup'));

/** What is in the pot then, and not what goes in behind it: what the words name, where it gets hardly warm. */
function heatedBy(parts: readonly Part[], { after, ended, events }: FoldedStep, by: BoundEvent): readonly Ingredient[] {
  const before = new Set(events.slice(0, events.indexOf(by) + 1));
  for (const { members } of [...after.bodies, ...ended])
    if (members.some(({ state }) => state.heatedBy === by))
      return members.flatMap(({ of, state }) =>
        state.heatedBy !== undefined && before.has(state.heatedBy)
          ? (parts[of.part]?.head.ingredients[of.ingredient] ?? [])
          : [],
      );
  return by.names.flatMap(({ role, mention }) =>
    role === 'what'
      ? mention.ingredients.flatMap(({ part, ingredient }) => parts[part]?.head.ingredients[ingredient] ?? [])
      : [],
  );
}

/** Heated to less, nothing is on its way: rooms are as warm (judgement). */
const LEAST_WARMED_C = 20;
const OPEN = Number.POSITIVE_INFINITY;

/** What is read of food on the stove, by its name; of chocolate, and of whatever else. */
export function readOf(recipe: Recipe): readonly Heated[] {
  const chocolate: WrittenHeat[] = [];
  const others: WrittenHeat[] = [];
  const eggs: WrittenHeat[] = [];
  const again: WrittenHeat[] = [];
  const insides = new Map<string, WrittenHeat[]>();
  const named = new Map<string, Heated & { readonly heats: WrittenHeat[] }>();
  for (const { part, line, figure, by, lying } of journeysOf(recipe).flatMap(readingsIn)) {
    const { event } = by;
    const heat = { part: part.index, line, figure };
    if (event.cooks === 'again' && figure.of === 'food' && figure.bound !== 'at most')
      again.push({ ...heat, isOnTheWay: !isKeptBefore(part, line) });
    if (lying.length === 0) continue;
    const flesh = figure.inside && heatsFood(event) ? fleshIn(lying) : undefined;
    if (flesh !== undefined) insides.set(flesh, [...(insides.get(flesh) ?? []), heat]);
    if (event.act === 'heat' && lying.every(isChocolate)) chocolate.push(heat);
    if (part.head.kind !== undefined || event.craft === 'fry' || !heatsFood(event)) continue;
    const portioned = lying.map((ingredient) => ({ ingredient, share: 1 }));
    const taken = namedAt(recipe, { part, line, event }, 'stove', portioned);
    if (taken === undefined) {
      if (figure.of === 'food' && figure.bound !== 'at most')
        if (event.act === 'heat') others.push(heat);
        else if (lying.some((each) => isIn(each, 'egg'))) eggs.push(heat);
      continue;
    }
    const there = named.get(taken.of) ?? { way: 'stove', ...taken, heats: [], times: [], totalMin: OPEN };
    named.set(taken.of, there);
    there.heats.push({
      ...heat,
      isOnTheWay:
        (!cooksThrough(event) && figure.celsius.high >= LEAST_WARMED_C) || figure.celsius.high < hottestIn(part),
    });
  }
  return [
    ...[...named.values()].map((each) => ({ ...each, heats: hottestAlone(each.heats) })),
    ...heatsAlone('any chocolate', chocolate),
    ...heatsAlone('any', others),
    ...heatsAlone('any egg', eggs),
    ...heatsAlone('any leftovers', again),
    ...[...insides].flatMap(([of, heats]) => heatsAlone(of, heats, 'inside')),
  ];
}

const heatsAlone = (of: string, heats: readonly WrittenHeat[], way: HeatWay = 'stove'): readonly Heated[] =>
  heats.length === 0 ? [] : [{ way, of, spans: spansOf(of, way), heats, times: [], totalMin: OPEN }];

/** It lay in the cold, by a step before or the same. */
const isKeptBefore = ({ steps }: Part, line: number): boolean =>
  steps.some(
    (step) =>
      step.line <= line &&
      boundEvents(step).some(
        ({ event: { act, where } }) =>
          act === 'freeze' || where.some(({ is, not }) => (is === 'cold' || is === 'frozen') && !not),
      ),
  );

/** Of what is in its pots, whoever is told of: `until the syrup reads 150 C`. */
const hottestIn = onceFor(({ steps }: Part): number =>
  Math.max(...steps.flatMap((step) => heatsOf(step).flatMap((each) => (isOfPot(each) ? [each.celsius.high] : [])))),
);

/** All but the hottest are on the way to it. */
function hottestAlone(heats: readonly WrittenHeat[]): readonly WrittenHeat[] {
  const hottest = Math.max(...heats.map(({ figure }) => figure.celsius.high));
  return heats.map((heat) => (heat.figure.celsius.high < hottest ? { ...heat, isOnTheWay: true } : heat));
}

const isChocolate = (ingredient: Ingredient): boolean => foodOf(ingredient)?.class === 'chocolate';

/** What boils by a time of its own. */
const BOILED = ['potato', 'rice', 'pasta', 'egg'] as const satisfies readonly Family[];
/** Heat of another sort than that of water and ovens: a time says nothing of it. */
const OTHERWISE = WAS.pressed | WAS.microwaved | WAS.canned;

interface Boiled {
  readonly of: Family;
  readonly times: WrittenTime[];
  /** Of all its heats; Infinity where one does not say. */
  totalMin: number;
}

/** Potatoes, rice, pasta and eggs in their shells that boil by themselves. */
export const boiledIn = (recipe: Recipe): readonly Heated[] =>
  recipe.heads.some(({ ingredients }) => ingredients.some((each) => BOILED.some((of) => isIn(each, of))))
    ? journeysOf(recipe).flatMap(boiledOn)
    : [];

const boiledOn = onceFor((journey: Journey): readonly Heated[] => {
  const boils = new Map<Ingredient, Boiled>();
  for (const folded of journey.steps) boilIn(journey, folded, boils);
  return [...boils.values()].flatMap(({ of, times, totalMin }): readonly Heated[] => {
    const spans = spansOf(`any ${of}`, 'stove');
    return times.length === 0 ? [] : [{ way: 'stove', of: `any ${of}`, spans, heats: [], times, totalMin }];
  });
});

/** The bodies of which a step heats something, and what. */
const heatedAt = onceFor(({ events, after, ended }: FoldedStep) =>
  [...after.bodies, ...ended].flatMap(({ members }) => {
    const heated = members.flatMap(({ of, state }) =>
      state.heatedBy !== undefined && events.includes(state.heatedBy) ? [{ of, state, by: state.heatedBy }] : [],
    );
    return heated.length === 0 ? [] : [{ members, heated }];
  }),
);

/** What a step adds to that. */
function boilIn(journey: Journey, folded: FoldedStep, boils: Map<Ingredient, Boiled>): void {
  const minutes = minutesOf(folded);
  const seen = new Set<Ingredient>();
  for (const { members, heated } of heatedAt(folded))
    for (const { of, state, by } of heated) {
      const ingredient = ingredientAt(journey, of);
      const family = ingredient && BOILED.find((each) => isIn(ingredient, each));
      if (ingredient === undefined || family === undefined || seen.has(ingredient)) continue;
      const boiled = boils.get(ingredient) ?? { of: family, times: [], totalMin: 0 };
      seen.add(ingredient);
      boils.set(ingredient, boiled);
      boiled.totalMin += (state.was & OTHERWISE) === 0 ? minutes : OPEN;
      if (boilsAlone(by, family, members, journey))
        for (const time of spentIn(by.event))
          boiled.times.push({ ...time, part: folded.part, line: folded.line, at: [] });
    }
  const heats = folded.events.filter(({ event }) => event.act === 'heat');
  if (heats.length === 0) return;
  for (const [ingredient, boiled] of boils)
    if (!seen.has(ingredient) && heats.some((by) => isOf(journey, by, ingredient))) boiled.totalMin = OPEN;
}

/** `Fry them`, `deep-fry the potatoes`, whatever became of them by then. */
const isOf = (journey: Journey, { names, unnamed }: BoundEvent, ingredient: Ingredient): boolean =>
  unnamed !== undefined ||
  names.some(({ mention }) => mention.ingredients.some((of) => ingredientAt(journey, of) === ingredient));

/** Of all heats of a step; `bring to the boil` takes no time worth counting. */
const minutesOf = ({ events }: FoldedStep): number =>
  events.reduce((sum, { event }) => {
    if (event.act !== 'heat' || event.said === 'not') return sum;
    const spent = spentIn(event);
    if (spent.length > 0) return sum + spent.reduce((all, { high }) => all + high, 0);
    return event.lasts === 'no' && event.until.length === 0 ? sum : OPEN;
  }, 0);

const ingredientAt = ({ parts }: Pick<Journey, 'parts'>, { part, ingredient }: IngredientRef): Ingredient | undefined =>
  parts[part]?.head.ingredients[ingredient];

/** In water that boils, with nothing beside it that takes its own time. */
function boilsAlone(by: BoundEvent, family: Family, members: Body['members'], journey: Journey): boolean {
  const { event } = by;
  return (
    isStoveHeat(event) &&
    cooksThrough(event) &&
    event.craft === undefined &&
    (event.medium === undefined || event.medium.is === 'water' || event.medium.is === 'steam') &&
    event.temperatures.length === 0 &&
    members.every(({ of, state }) => {
      // What it is mixed with then was not in the water.
      if (state.heatedBy !== by) return true;
      const ingredient = ingredientAt(journey, of);
      return ingredient !== undefined && (isIn(ingredient, family) ? state.cut !== 'minced' : isBeside(ingredient));
    })
  );
}

/** What water is seasoned with. */
const isBeside = (ingredient: Ingredient): boolean =>
  BESIDE.some((each) => isIn(ingredient, each)) || foodOf(ingredient)?.class === 'salt';
const BESIDE = ['water', 'vinegar', 'fat'] as const satisfies readonly Family[];
