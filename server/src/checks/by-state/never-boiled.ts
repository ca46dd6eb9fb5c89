/**
 * Knows which dried kidney beans cook in a slow cooker and are never boiled, and which milk as it comes from the animal is eaten unheated.
 * Refuses to know flesh and egg.
 */
import { isIn, isOf, listedAs, listedBehind } from '../../recipe/families.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import { type Body, type FoodState, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { onceFor } from '../once.ts';
import { type Held, membersIn } from './spoils.ts';

/** Water that is no hotter leaves the poison as it is, or makes more of it (FDA, Bad Bug Book: phytohaemagglutinin). */
const BOILS_C = 95;
/** Pasteurising by the batch (FDA, Grade A Pasteurized Milk Ordinance: 63 °C for 30 min). */
const PASTEURISES_C = 62.5;
/** Cheese of raw milk that is as old may be sold (21 CFR 133.182: 60 days at 1.7 °C or above). */
const AGED_MIN = 60 * 1440;

/** Beans that a step slow-cooks, and none boils. */
export const unboiledBeans = onceFor((journey: Journey): readonly Held[] => {
  const isSlow = journey.steps.some(({ events }) =>
    events.some(({ event }) => event.said === 'yes' && event.where.some(({ is, not }) => is === 'hot' && !not)),
  );
  // `I have quit boiling` boils nothing.
  const isBoiling = journey.steps.some(({ events }) =>
    events.some(
      ({ event }) => event.act === 'heat' && event.cooks === 'through' && event.as !== 'beside' && event.said === 'yes',
    ),
  );
  if (!isSlow) return NONE;
  return oneALine(journey, ({ member: { state }, ingredient }) => isBean(ingredient) && !(isBoiling && boiled(state)));
});

/** Milk that the list says comes straight from the animal, and that nothing heats. */
export const rawMilk = onceFor((journey: Journey): readonly Held[] =>
  oneALine(
    journey,
    ({ member: { state }, ingredient }, { coldMin, warmMin }) =>
      isRawMilk(ingredient) && !isPasteurised(state) && coldMin.low + warmMin.low < AGED_MIN,
  ),
);

const NONE: readonly Held[] = [];

function oneALine(journey: Journey, is: (held: Held, body: Body) => boolean): readonly Held[] {
  const found: Held[] = [];
  for (const body of journey.bodies)
    for (const held of membersIn(journey, body))
      if (is(held, body) && !found.some(({ ingredient }) => ingredient === held.ingredient)) found.push(held);
  return found.length === 0 ? NONE : found;
}

const isBean = (ingredient: Ingredient): boolean => {
  const states = listedAs(ingredient);
  if (states.has('cooked')) return false;
  const { match } = ingredient;
  // Soaked or dry, what may be canned is not.
  const isDry = states.has('dried') || states.has('soaked');
  return (
    isIn(ingredient, 'kidney bean') ||
    (isDry && match.kind === 'ambiguous' && match.foods.some((food) => isOf(food, 'kidney bean')))
  );
};

/** Cooked by what boils, or under pressure; a figure says otherwise. */
const boiled = ({ cooked, was, reads }: FoodState): boolean =>
  cooked === 'through' || (was & WAS.pressed) !== 0 || reads.some(({ celsius }) => celsius.low >= BOILS_C);

const isRawMilk = (ingredient: Ingredient): boolean => {
  const states = listedAs(ingredient);
  return (
    isOf(foodOf(ingredient), 'milk') &&
    !states.has('treated') &&
    (states.has('raw') || listedBehind(ingredient).has('from the animal'))
  );
};

const isPasteurised = ({ cooked, reads }: FoodState): boolean =>
  cooked === 'through' ||
  reads.some(({ celsius }) => celsius.low >= PASTEURISES_C) ||
  (cooked === 'unsaid' && reads.length === 0);
