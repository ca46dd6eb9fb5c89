/**
 * Knows which milk as it comes from the animal is eaten unheated.
 * Refuses to know who eats it.
 */

import type { FoodState } from '../../recipe/journey/bodies.ts';
import { nameSpeaksOf, speaksOf } from '../../recipe/journey/deeds.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isOf, listedAs, listedBehind } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { overPieces } from './over-pieces.ts';
import { type Held, membersIn } from './spoils.ts';

/** Pasteurising by the batch (FDA, Grade A Pasteurized Milk Ordinance: 63 °C for 30 min). */
const PASTEURISES_C = 62.5;
/** Cheese of raw milk that is as old may be sold (21 CFR 133.182: 60 days at 1.7 °C or above). */
const AGED_MIN = 60 * 1440;

/** Of every piece, the milk in it that nothing heats. */
const milk = overPieces((lists, { bodies }) =>
  bodies.flatMap((body) =>
    membersIn(lists, body).filter(
      ({ member: { state }, ingredient }) =>
        isOf(foodOf(ingredient), 'milk') &&
        !listedAs(ingredient).has('treated') &&
        !isPasteurised(state) &&
        body.coldMin.low + body.warmMin.low < AGED_MIN,
    ),
  ),
);

/** Milk that the list, or a step, says comes straight from the animal, and that nothing heats. */
export const rawMilk = onceFor((journey: Journey): readonly Held[] => {
  const those = milk(journey);
  if (those.length === 0) return NONE;
  // Of a goat that is cooked they speak as well.
  const isSaid = journey.parts.some(
    ({ head, steps }) =>
      steps.some((step) => speaksOf(step, 'udder')) &&
      !head.ingredients.some(({ food, name }) => food?.class === 'meat' && nameSpeaksOf(name, 'udder')),
  );
  return oneALine(those.filter(({ ingredient }) => isSaid || isRawMilk(ingredient)));
});

const NONE: readonly Held[] = [];

const oneALine = (those: readonly Held[]): readonly Held[] =>
  those.length === 0
    ? NONE
    : those.filter(({ ingredient }, at) => those.findIndex((each) => each.ingredient === ingredient) === at);

const isRawMilk = (ingredient: Ingredient): boolean =>
  listedAs(ingredient).has('raw') || listedBehind(ingredient).has('from the animal');

const isPasteurised = ({ cooked, reads }: FoodState): boolean =>
  cooked === 'through' ||
  reads.some(({ celsius }) => celsius.low >= PASTEURISES_C) ||
  (cooked === 'unsaid' && reads.length === 0);
