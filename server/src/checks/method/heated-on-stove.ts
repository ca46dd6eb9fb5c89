/**
 * Knows what the parts of a recipe that are of a kind heat on the stove and as they rise, with their heats and times as they are written.
 * Refuses to judge.
 */
import { type HeatSpan, type HeatWay, spansOf } from '../../heat/spans.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { isBaked } from '../../recipe/journey/deeds.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import { type Family, isFamily, isIn } from '../../recipe/list/families.ts';
import { kindNamed } from '../../recipe/measures/kinds.ts';
import { mixtureOf } from '../../recipe/measures/mixture.ts';
import type { Ingredient, Part, PartHead, Recipe } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { overParts } from '../over-parts.ts';
import { kindOf } from './taken-for.ts';
import type { Heated, WrittenHeat, WrittenTime } from './written-heat.ts';

/** On the stove, and as it rises; what a later part may heat too takes any time. */
export const heatedByParts = (recipe: Recipe): readonly Heated[] =>
  heatedByPart(recipe).flatMap(({ part, value }) =>
    part.usesByLater.some(({ use }) => heatsOn(recipe.parts[use.part])) ? value.map(goingOn) : value,
  );

const heatsOn = (part: Part | undefined): boolean =>
  part?.steps.some((step) => boundEvents(step).some(({ event }) => event.act === 'heat')) === true;

const goingOn = onceFor(
  (heated: Heated): Heated => (heated.way === 'stove' ? { ...heated, totalMin: Number.POSITIVE_INFINITY } : heated),
);

const heatedByPart = overParts((part): readonly Heated[] | undefined => {
  const name = kindOf(part) ?? kindNamed(part.head.name)?.name;
  const found = [
    name === undefined ? undefined : onStove(part, name),
    rising(
      part,
      name ??
        (isCulturedMilk(part.head)
          ? 'any cultured milk'
          : isLeaven(part.head)
            ? LEAVEN_NAME
            : isRaised(part.head)
              ? 'any dough'
              : undefined),
    ),
  ].flatMap((each) => each ?? []);
  return found.length === 0 ? undefined : found;
});

const spansFor = (name: string, way: HeatWay, { ingredients }: PartHead): readonly HeatSpan[] => {
  const rows = spansOf(name, way);
  const needed = rows.filter(({ needs }) => needs !== '' && ingredients.some((i) => hasFamily(i, needs)));
  return needed.length > 0 ? needed : rows.filter(({ needs }) => needs === '');
};

const hasFamily = (ingredient: Ingredient, family: string): boolean => isFamily(family) && isIn(ingredient, family);

/** `Stir over a low heat`, `set in a pan over the heat` */
const isOverHeat = ({ act, where }: Event): boolean =>
  (act === 'combine' || act === 'put') &&
  where.some(({ is, way, not }) => (is === 'stove' || is === 'bath') && way === 'at' && !not);

/** Heat of the stove, of steam or of water. */
export const isStoveHeat = (event: Event): boolean =>
  (event.act === 'heat' || isOverHeat(event)) &&
  event.said === 'yes' &&
  event.as !== 'before' &&
  !isBaked(event) &&
  event.cooks !== 'again' &&
  event.medium?.is !== 'pressure' &&
  event.medium?.is !== 'microwaves' &&
  event.medium?.is !== 'smoke';

/** On the stove, or as it is beaten over water. */
export const heatsFood = (event: Event): boolean =>
  isStoveHeat(event) ||
  (event.act === 'combine' && event.said === 'yes' && (event.medium?.is === 'water' || event.medium?.is === 'steam'));

/** It is cooked by that, and not made ready for it. */
export const cooksThrough = (event: Event): boolean =>
  (event.cooks === 'through' || event.cooks === 'as read' || event.act !== 'heat') &&
  event.craft !== 'fry' &&
  event.craft !== 'deep-fry';

function onStove(part: Part, of: string): Heated | undefined {
  const spans = spansFor(of, 'stove', part.head);
  if (spans.length === 0) return undefined;
  const heats: WrittenHeat[] = [];
  const times: WrittenTime[] = [];
  const hottestFrom = (line: number): number =>
    Math.max(
      ...stepsOf(part).flatMap((step) =>
        step.line < line ? [] : step.figures.filter(isOfPot).map((f) => f.celsius.high),
      ),
    );
  let totalMin = 0;
  for (const { line, events, figures } of stepsOf(part)) {
    for (const figure of figures) {
      if (figure.event === undefined || !isOfFood(figure) || !isFigure(figure)) continue;
      const isHeated = heatsFood(figure.event);
      if (isHeated || isStirredTo(figure))
        heats.push({
          part: part.index,
          line,
          figure,
          // What was hotter before is another thing: milk that boils, and goes on to the yolks.
          isOnTheWay: !isHeated || !cooksThrough(figure.event) || figure.celsius.high < hottestFrom(line),
        });
    }
    for (const event of events) {
      // `It must never boil dry.`
      if (event.said === 'not') continue;
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

/** `Stir until it reads 82 C`, over what a step before set it on: no stirring makes it as hot. */
const isStirredTo = ({ of, event }: HeatFigure): boolean =>
  of === 'food' && event?.act === 'combine' && event.until.some(({ from }) => from === 'until');

/** `Boil the sugar and water to 104 C` is of the water as well. */
const isOfFood = ({ of, event }: HeatFigure): boolean =>
  of === 'food' || (of === 'medium' && (event?.medium?.is === 'water' || event?.medium?.is === 'syrup'));

/** Of what is in the pot, or nobody says of what. */
const isOfPot = ({ of, bound }: HeatFigure): boolean => (of === 'food' || of === 'nothing') && bound !== 'change';

export const spentIn = ({ times }: Event): readonly (Range & Span)[] =>
  times.flatMap(({ kind, minutes, start, end, per, choice }) =>
    kind === 'spent' && per === undefined && choice === 0
      ? [{ low: minutes.low, high: Number.isFinite(minutes.high) ? minutes.high : minutes.low, start, end }]
      : [],
  );

/** A figure that is one, and not in the wrong scale by what anything can be. */
export const isFigure = ({ bound, meant, cannot }: HeatFigure): boolean =>
  bound !== 'change' && meant === undefined && cannot !== true;

interface ReadStep {
  readonly line: number;
  readonly events: readonly Event[];
  readonly figures: readonly HeatFigure[];
}

export const stepsOf = ({ steps }: Part): readonly ReadStep[] =>
  steps.map((step) => ({
    line: step.line,
    events: boundEvents(step).map(({ event }) => event),
    figures: heatsOf(step).filter(({ event }) => event?.said === 'yes'),
  }));

const isCulturedMilk = ({ ingredients, massG }: PartHead): boolean =>
  massG.high > 0 &&
  ingredients.some((i) => isIn(i, 'culture')) &&
  mixtureOf(ingredients.map((ingredient) => ({ ingredient, share: 1 }))).of.milk > MILKY * massG.high;
const MILKY = 0.6;

/** How warm it is where it rises, as far as a figure says. */
const placesOf = ({ temperatures }: Event): readonly number[] =>
  temperatures.flatMap(({ of, bound, celsius }) => (of === 'around' && bound === 'is' ? [celsius.low] : []));

const isRaised = ({ ingredients }: PartHead): boolean =>
  ingredients.some((i) => isIn(i, 'flour')) && ingredients.some((i) => isIn(i, 'yeast'));

const LEAVEN_NAME = 'any leaven';

/** Flour and water with what raises them, and nothing that is baked in it. */
const isLeaven = ({ ingredients }: PartHead): boolean =>
  ingredients.length > 1 &&
  ingredients.some((i) => isIn(i, 'flour')) &&
  ingredients.some((i) => isIn(i, 'culture') || isIn(i, 'yeast')) &&
  ingredients.every((i) => LEAVEN.some((each) => isIn(i, each)));
const LEAVEN = ['flour', 'water', 'culture', 'yeast'] as const satisfies readonly Family[];

/** Of milk with a culture in it, what stands warm for so long is cultured. */
const LEAST_CULTURED_MIN = 120;

/** So warm nothing stands but to be cultured, °C. */
const isCulturing = (celsius: number): boolean => celsius >= 30 && celsius <= 52;

function rising(part: Part, of: string | undefined): Heated | undefined {
  const spans = of === undefined ? [] : spansOf(of, 'rise');
  if (of === undefined || spans.length === 0) return undefined;
  const isMilk = part.head.ingredients.some((i) => isIn(i, 'milk')) && part.head.flourG.high === 0;
  const standsToRise = isMilk || of === LEAVEN_NAME;
  const heats: WrittenHeat[] = [];
  const times: WrittenTime[] = [];
  let totalMin = 0;
  for (const { line, events, figures } of stepsOf(part)) {
    const rises = events.filter(
      (event) =>
        event.said === 'yes' &&
        (event.act === 'rise' ||
          (standsToRise &&
            event.act === 'stay' &&
            (placesOf(event).some(isCulturing) || spentIn(event).some(({ low }) => low >= LEAST_CULTURED_MIN)))),
    );
    for (const figure of figures)
      if (rises.some((event) => event === figure.event) && figure.of !== 'food' && isFigure(figure))
        heats.push({ part: part.index, line, figure });
    for (const event of rises) {
      const spent = event.act === 'rise' || placesOf(event).some(isCulturing) ? spentIn(event) : [];
      for (const time of spent) times.push({ ...time, part: part.index, line, at: placesOf(event) });
      // Where one says no time it rises for any.
      totalMin += spent.length > 0 ? spent.reduce((sum, { high }) => sum + high, 0) : Number.POSITIVE_INFINITY;
    }
  }
  return heats.length + times.length === 0 ? undefined : { way: 'rise', of, spans, heats, times, totalMin };
}
