/**
 * Knows which dried kidney beans cook in a slow cooker and are never boiled, and which milk as it comes from the animal is eaten unheated.
 * Refuses to know flesh and egg.
 */
import { isIn, isOf, listedAs, listedBehind } from '../../recipe/families.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import { type FoodState, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { onceFor } from '../once.ts';
import { overPieces } from './over-pieces.ts';
import { type Held, membersIn } from './spoils.ts';

/** Water that is no hotter leaves the poison as it is, or makes more of it (FDA, Bad Bug Book: phytohaemagglutinin). */
const BOILS_C = 95;
/** Pasteurising by the batch (FDA, Grade A Pasteurized Milk Ordinance: 63 °C for 30 min). */
const PASTEURISES_C = 62.5;
/** Cheese of raw milk that is as old may be sold (21 CFR 133.182: 60 days at 1.7 °C or above). */
const AGED_MIN = 60 * 1440;

/** Of every piece, what the beans and the raw milk in it are. */
const beans = overPieces((lists, { bodies }) =>
  bodies.flatMap((body) => membersIn(lists, body).filter(({ ingredient }) => isBean(ingredient))),
);
const milk = overPieces((lists, { bodies }) =>
  bodies.flatMap((body) =>
    membersIn(lists, body).filter(
      ({ member: { state }, ingredient }) =>
        isRawMilk(ingredient) && !isPasteurised(state) && body.coldMin.low + body.warmMin.low < AGED_MIN,
    ),
  ),
);

/** Beans that a step slow-cooks, and none boils. */
export const unboiledBeans = onceFor((journey: Journey): readonly Held[] => {
  const those = beans(journey);
  if (those.length === 0) return NONE;
  const isSlow = journey.steps.some(({ events }) =>
    events.some(({ event }) => event.said === 'yes' && event.where.some(({ is, not }) => is === 'hot' && !not)),
  );
  if (!isSlow) return NONE;
  // `I have quit boiling` boils nothing.
  const isBoiling = journey.steps.some(({ events }) =>
    events.some(
      ({ event }) => event.act === 'heat' && event.cooks === 'through' && event.as !== 'beside' && event.said === 'yes',
    ),
  );
  return oneALine(those.filter(({ member: { state } }) => !(isBoiling && boiled(state))));
});

/** Milk that the list says comes straight from the animal, and that nothing heats. */
export const rawMilk = onceFor((journey: Journey): readonly Held[] => oneALine(milk(journey)));

const NONE: readonly Held[] = [];

const oneALine = (those: readonly Held[]): readonly Held[] =>
  those.length === 0
    ? NONE
    : those.filter(({ ingredient }, at) => those.findIndex((each) => each.ingredient === ingredient) === at);

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
