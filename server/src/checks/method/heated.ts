/**
 * Knows what a recipe heats, bakes, fries and lets rise, each with its heats and times as they are written, and within what a thing of that kind is
 * heated at all: by its kind where one is said or plain, else by what lies there.
 * Refuses to judge.
 */
import { type HeatSpan, type HeatWay, spansOf } from '../../heat/spans.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import type { Bake } from '../../recipe/baking/bakes.ts';
import { ovenTimes } from '../../recipe/baking/oven-time.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { isBaked, isInOven } from '../../recipe/journey/deeds.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import { journeysOf } from '../../recipe/journey/fold.ts';
import { plainKind } from '../../recipe/kind-evidence.ts';
import { isFamily, isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { mixtureOf, type Portioned } from '../../recipe/measures/mixture.ts';
import type { Ingredient, Part, PartHead, Recipe } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { overParts } from '../over-parts.ts';

export interface Heated {
  readonly way: HeatWay;
  /** `cookie`, `meringue or shortcrust`, `any dough` */
  readonly of: string;
  readonly spans: readonly HeatSpan[];
  /** What is written of its heat. */
  readonly heats: readonly WrittenHeat[];
  readonly times: readonly WrittenTime[];
  /** Minutes of all its heats, Infinity where one does not say. */
  readonly totalMin: number;
}

export interface WrittenHeat {
  /** The part and its line; the head's oven has no part. */
  readonly part?: number;
  readonly line: number;
  readonly figure: Pick<HeatFigure, 'start' | 'end' | 'celsius' | 'written'>;
  /** It is no more than warmed, or goes on to be hotter. */
  readonly isOnTheWay?: boolean;
}

export interface WrittenTime extends Range, Span {
  readonly part: number;
  readonly line: number;
  /** °C while it lasts, as far as it is said. */
  readonly at: readonly number[];
}

/** All that is heated, part by part, and what lies in the oven. */
export const heatedIn = onceFor((recipe: Recipe): readonly Heated[] =>
  recipe.inherits ? [] : [...bakedIn(recipe), ...ofParts(recipe).flatMap(({ value }) => value), ...chocolateIn(recipe)],
);

/** A bake that is no keeping warm. */
const isWhole = ({ event }: Bake): boolean =>
  event.act === 'heat' &&
  // `Toast the rice` is done in a pan as well.
  (event.craft === 'bake' || event.craft === 'roast' || event.where.some(isInOven)) &&
  event.cooks !== 'again' &&
  event.cooks !== 'barely' &&
  event.cooks !== 'outside';

function bakedIn(recipe: Recipe): readonly Heated[] {
  const bakes = ovenTimes(recipe).flatMap(({ bake }) => (isWhole(bake) ? [bake] : []));
  return bakes.map((bake) => {
    const { of, spans } = spansOfBake(recipe, bake);
    const { part, line, said } = bake;
    const at = bake.stages.map(({ celsius }) => celsius);
    return {
      way: 'oven',
      of,
      spans,
      heats: at.flatMap((celsius) => writtenAt(recipe, bake, celsius) ?? []),
      times: said === undefined ? [] : [{ ...said, part: part.index, line, at }],
      totalMin: bakes.reduce(
        (sum, each) => (isOfSame(bake, each) ? sum + (each.said?.high ?? Number.POSITIVE_INFINITY) : sum),
        0,
      ),
    };
  });
}

/** Something of the one is in the other, or nobody knows. */
function isOfSame(a: Bake, b: Bake): boolean {
  if (a === b) return true;
  if (a.body === undefined || b.body === undefined) return true;
  return a.body.members.some(({ of }) =>
    b.body?.members.some((other) => other.of.part === of.part && other.of.ingredient === of.ingredient),
  );
}

/** Where so much heat of an oven is written: in the steps of the part, before them, or above the parts. */
function writtenAt(recipe: Recipe, { part, line }: Bake, celsius: number): WrittenHeat | undefined {
  for (let index = part.index; index >= 0; index--) {
    const there = recipe.parts[index];
    for (const step of there?.steps.toReversed() ?? [])
      if (index < part.index || step.line <= line)
        for (const figure of heatsOf(step))
          if (figure.of === 'oven' && middle(figure.celsius) === celsius)
            return figure.meant === undefined && figure.cannot !== true
              ? { part: index, line: step.line, figure }
              : undefined;
  }
  return undefined;
}

interface Held {
  readonly of: string;
  readonly spans: readonly HeatSpan[];
}

/** What lies in the oven, by the kinds that its parts are, and of what is of no kind by what that is. */
function spansOfBake(recipe: Recipe, { body, part }: Bake): Held {
  const names = new Set<string>();
  const spans: HeatSpan[] = [];
  const others: Portioned[] = [];
  const foods =
    body?.members.flatMap(({ of, share }) => {
      const ingredient = recipe.parts[of.part]?.head.ingredients[of.ingredient];
      return ingredient === undefined ? [] : [{ part: of.part, portioned: { ingredient, share: middle(share) } }];
    }) ?? part.head.ingredients.map((ingredient) => ({ part: part.index, portioned: { ingredient, share: 1 } }));
  for (const { part: index, portioned } of foods) {
    const name = kindOf(recipe.parts[index]);
    const own = name === undefined ? [] : spansOf(name, 'oven');
    if (name === undefined || own.length === 0) others.push(portioned);
    else if (!names.has(name)) {
      names.add(name);
      spans.push(...own);
    }
  }
  if (names.size === 0 || others.some(isMuch)) {
    const any = anyOf(others);
    names.add(any);
    spans.push(...spansOf(any, 'oven'));
  }
  return { of: [...names].join(' or '), spans };
}

/** What is brushed or strewn on it says nothing of what it is. */
const isMuch = ({ ingredient }: Portioned): boolean =>
  !ingredient.weighed.known || ingredient.weighed.grams.high > LITTLE_G;
const LITTLE_G = 60;

const kindOf = (part: Part | undefined): string | undefined => part && (part.head.kind ?? plainKind(part))?.name;

/** Shares of the mass, by which what is of no kind is one of these (judgement). */
const FLESHY = 0.5;
const FLOURY = 0.15;
const EGGY = 0.12;

function anyOf(foods: readonly Portioned[]): string {
  const { of, massG, has, unweighed } = mixtureOf(foods);
  if (massG <= 0 || unweighed > 0) return 'any';
  if (of.flesh > FLESHY * massG) return 'any flesh';
  if (of.flour > FLOURY * massG) return has.has('yeast') || has.has('culture') ? 'any dough' : 'any batter';
  return of.egg > EGGY * massG && has.has('milk') ? 'any custard' : 'any';
}

/** On the stove, in fat, and as it rises. */
const ofParts = overParts((part): readonly Heated[] | undefined => {
  const name = kindOf(part);
  const found = [
    name === undefined ? undefined : onStove(part, name),
    inFat(part, name),
    name === undefined && !isCulturedMilk(part.head) ? undefined : rising(part, name ?? 'any cultured milk'),
  ].flatMap((each) => each ?? []);
  return found.length === 0 ? undefined : found;
});

const spansFor = (name: string, way: HeatWay, { ingredients }: PartHead): readonly HeatSpan[] => {
  const rows = spansOf(name, way);
  const needed = rows.filter(({ needs }) => needs !== '' && ingredients.some((i) => hasFamily(i, needs)));
  return needed.length > 0 ? needed : rows.filter(({ needs }) => needs === '');
};

const hasFamily = (ingredient: Ingredient, family: string): boolean => isFamily(family) && isIn(ingredient, family);

/** `Stir over a low heat` */
const isOverHeat = ({ act, where }: Event): boolean =>
  act === 'combine' && where.some(({ is, way, not }) => (is === 'stove' || is === 'bath') && way === 'at' && !not);

/** Heat of the stove, of steam or of water. */
const isStoveHeat = (event: Event): boolean =>
  (event.act === 'heat' || isOverHeat(event)) &&
  event.said === 'yes' &&
  event.as !== 'before' &&
  !isBaked(event) &&
  event.cooks !== 'again' &&
  event.medium?.is !== 'pressure' &&
  event.medium?.is !== 'microwaves' &&
  event.medium?.is !== 'smoke';

/** It is cooked by that, and not made ready for it. */
const cooksThrough = (event: Event): boolean =>
  (event.cooks === 'through' || event.cooks === 'as read' || isOverHeat(event)) &&
  event.craft !== 'fry' &&
  event.craft !== 'deep-fry';

function onStove(part: Part, of: string): Heated | undefined {
  const spans = spansFor(of, 'stove', part.head);
  if (spans.length === 0) return undefined;
  const heats: WrittenHeat[] = [];
  const times: WrittenTime[] = [];
  const hottest = Math.max(
    ...stepsOf(part).flatMap(({ figures }) => figures.filter(isOfPot).map((f) => f.celsius.high)),
  );
  let totalMin = part.usesByLater.length > 0 ? Number.POSITIVE_INFINITY : 0;
  for (const { line, events, figures } of stepsOf(part)) {
    for (const figure of figures)
      if (figure.event !== undefined && isStoveHeat(figure.event) && figure.of === 'food' && isFigure(figure))
        heats.push({
          part: part.index,
          line,
          figure,
          isOnTheWay: !cooksThrough(figure.event) || figure.celsius.high < hottest,
        });
    for (const event of events) {
      if (event.act === 'heat' && !isStoveHeat(event)) totalMin = Number.POSITIVE_INFINITY;
      if (!isStoveHeat(event)) continue;
      const spent = spentIn(event);
      for (const time of spent) times.push({ ...time, part: part.index, line, at: [] });
      if (!cooksThrough(event)) continue;
      if (spent.length > 0) totalMin += spent.reduce((sum, { high }) => sum + high, 0);
      // `Bring to the boil` takes no time worth counting; what goes on until a sign may take any.
      else if (event.lasts !== 'no' || event.until.length > 0) totalMin = Number.POSITIVE_INFINITY;
    }
  }
  return heats.length + times.length === 0 ? undefined : { way: 'stove', of, spans, heats, times, totalMin };
}

/** Of what is in the pot, or nobody says of what. */
const isOfPot = ({ of, bound }: HeatFigure): boolean => (of === 'food' || of === 'nothing') && bound !== 'change';

const spentIn = ({ times }: Event): readonly (Range & Span)[] =>
  times.flatMap(({ kind, minutes, start, end, per, choice }) =>
    kind === 'spent' && per === undefined && choice === 0 && Number.isFinite(minutes.high)
      ? [{ ...minutes, start, end }]
      : [],
  );

/** A figure that is one, and not in the wrong scale by what anything can be. */
const isFigure = ({ bound, meant, cannot }: HeatFigure): boolean =>
  bound !== 'change' && meant === undefined && cannot !== true;

interface ReadStep {
  readonly line: number;
  readonly events: readonly Event[];
  readonly figures: readonly HeatFigure[];
}

const stepsOf = ({ steps }: Part): readonly ReadStep[] =>
  steps.map((step) => ({
    line: step.line,
    events: boundEvents(step).map(({ event }) => event),
    figures: heatsOf(step).filter(({ event }) => event?.said === 'yes'),
  }));

function inFat(part: Part, name: string | undefined): Heated | undefined {
  const steps = stepsOf(part);
  if (!steps.some(({ events }) => events.some(isFrying))) return undefined;
  const own = name === undefined ? [] : spansOf(name, 'fat');
  const heats = steps.flatMap(({ line, figures }) =>
    figures.flatMap((figure): readonly WrittenHeat[] =>
      figure.of === 'medium' && isFigure(figure) && isOfFat(figure.event) ? [{ part: part.index, line, figure }] : [],
    ),
  );
  if (heats.length === 0) return undefined;
  const spans = own.length > 0 ? own : spansOf('any fat', 'fat');
  return {
    way: 'fat',
    of: own.length > 0 && name !== undefined ? name : 'any fat',
    spans,
    heats,
    times: [],
    totalMin: Number.POSITIVE_INFINITY,
  };
}

const isFrying = ({ craft, said }: Event): boolean => said === 'yes' && (craft === 'deep-fry' || craft === 'fry');
/** `Heat the oil to 180 C` says it before anything lies in it. */
const isOfFat = (event: Event | undefined): boolean =>
  event !== undefined && (event.medium?.is === 'fat' || (event.medium === undefined && event.cooks === 'barely'));

const isCulturedMilk = ({ ingredients, massG }: PartHead): boolean =>
  massG.high > 0 &&
  ingredients.some((i) => isIn(i, 'culture')) &&
  mixtureOf(ingredients.map((ingredient) => ({ ingredient, share: 1 }))).of.milk > MILKY * massG.high;
const MILKY = 0.6;

/** Of milk with a culture in it, what stands warm for so long is cultured. */
const LEAST_CULTURED_MIN = 120;

function rising(part: Part, of: string): Heated | undefined {
  const spans = spansOf(of, 'rise');
  if (spans.length === 0) return undefined;
  const isMilk = part.head.ingredients.some((i) => isIn(i, 'milk')) && part.head.flourG.high === 0;
  const heats: WrittenHeat[] = [];
  const times: WrittenTime[] = [];
  for (const { line, events, figures } of stepsOf(part)) {
    const rises = events.filter(
      (event) =>
        event.said === 'yes' &&
        (event.act === 'rise' ||
          (isMilk && event.act === 'stay' && spentIn(event).some(({ low }) => low >= LEAST_CULTURED_MIN))),
    );
    for (const figure of figures)
      if (rises.some((event) => event === figure.event) && figure.of !== 'food' && isFigure(figure))
        heats.push({ part: part.index, line, figure });
    for (const event of rises)
      if (event.act === 'rise')
        for (const time of spentIn(event)) times.push({ ...time, part: part.index, line, at: [] });
  }
  return heats.length + times.length === 0
    ? undefined
    : { way: 'rise', of, spans, heats, times, totalMin: Number.POSITIVE_INFINITY };
}

/** Chocolate that is melted by itself. */
function chocolateIn(recipe: Recipe): readonly Heated[] {
  if (!recipe.heads.some(({ ingredients }) => ingredients.some(isChocolate))) return [];
  const heats: WrittenHeat[] = [];
  for (const journey of journeysOf(recipe))
    for (const folded of journey.steps) {
      const step = recipe.parts[folded.part]?.steps.find(({ line }) => line === folded.line);
      if (step === undefined) continue;
      for (const figure of heatsOf(step)) {
        const by = folded.events.find(({ event }) => event === figure.event);
        if (by?.event.act !== 'heat' || (figure.of !== 'food' && figure.of !== 'nothing') || !isFigure(figure))
          continue;
        const body = [...folded.after.bodies, ...folded.ended].findLast(({ members }) =>
          members.some(({ state }) => state.heatedBy !== undefined && folded.events.includes(state.heatedBy)),
        );
        const isAll = body?.members.every(({ of }) => {
          const ingredient = recipe.parts[of.part]?.head.ingredients[of.ingredient];
          return ingredient !== undefined && isChocolate(ingredient);
        });
        if (isAll === true) heats.push({ part: folded.part, line: folded.line, figure });
      }
    }
  const spans = spansOf('any chocolate', 'stove');
  return heats.length === 0
    ? []
    : [{ way: 'stove', of: 'any chocolate', spans, heats, times: [], totalMin: Number.POSITIVE_INFINITY }];
}

const isChocolate = (ingredient: Ingredient): boolean => foodOf(ingredient)?.class === 'chocolate';
