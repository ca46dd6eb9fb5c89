/**
 * Knows which foods are eaten as what some must not eat: raw, runny, in the piece, or at all.
 * Refuses to know who eats.
 */

import type { Act } from '../../prose/event.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { type Body, type FoodState, isSameRef, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { isOf, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, IngredientRef } from '../../recipe/model.ts';
import { speaks, thingsAt } from '../../recipe/things-said.ts';
import { type Hazard, hazardsOf } from '../../recipe/unsafe-for.ts';
import { onceFor } from '../once.ts';
import { overPieces } from './over-pieces.ts';
import { type Held, membersIn } from './spoils.ts';

export interface NotForAll {
  readonly hazard: Hazard;
  readonly ingredient: Ingredient;
  readonly of: IngredientRef;
}

/** Flesh that is hot enough for all in its middle (FDA Food Code 2022, 3-401.11(A)(1)). */
const COOKED_C = 62.5;
/** An egg in its shell is firm after so many minutes in boiling water (common practice, no source). */
const FIRM_MIN = 7;

const those = overPieces((lists, { bodies, folded: { part, steps } }): readonly NotForAll[] => [
  ...bodies.flatMap((body) =>
    membersIn(lists, body).flatMap((held) =>
      hazardsOf(held.ingredient).flatMap((hazard) =>
        isHarmful(body, asMeant(steps, held), hazard)
          ? [{ hazard, ingredient: held.ingredient, of: held.member.of }]
          : [],
      ),
    ),
  ),
  // What no step names is served with it.
  ...part.head.ingredients.flatMap((ingredient, at) =>
    (part.ledger[at]?.uses.length ?? 0) > 0
      ? []
      : hazardsOf(ingredient).flatMap((hazard) =>
          hazard.state === 'any' || hazard.state === 'unheated'
            ? [{ hazard, ingredient, of: { part: part.index, ingredient: at } }]
            : [],
        ),
  ),
]);

/** What puts a food to others. */
const ADDS: ReadonlySet<Act> = new Set(['cut', 'combine', 'put', 'divide', 'cover']);

/**
 * As it lies there, or raw: of a list that is taken whole, a heat that names nothing heats what was named before it, and not what is cut or
 * added only later.
 */
function asMeant(steps: readonly FoldedStep[], held: Held): Held {
  const { heatedBy, cooked } = held.member.state;
  if (heatedBy === undefined || cooked === 'raw' || heatedBy.names.length > 0) return held;
  const events = steps.flatMap((step) => step.events);
  const heat = events.indexOf(heatedBy);
  const first = events.findIndex((by) => namesIt(by, held.member.of));
  const isLater = heat >= 0 && first > heat && ADDS.has((events[first] as BoundEvent).event.act);
  const isNamed = events
    .slice(0, Math.max(0, heat))
    .some(({ names }) => names.some(({ mention }) => mention.part === undefined));
  return isLater && isNamed
    ? { ...held, member: { ...held.member, state: { ...held.member.state, cooked: 'raw' } } }
    : held;
}

const namesIt = ({ names }: BoundEvent, of: IngredientRef): boolean =>
  names.some(({ mention }) => mention.part === undefined && mention.ingredients.some((ref) => isSameRef(ref, of)));

/** Each ingredient once for each hazard. */
export const notForAll = onceFor((journey: Journey): readonly NotForAll[] => {
  const found: NotForAll[] = [];
  for (const { hazard, ingredient, of } of those(journey)) {
    if (found.some((each) => each.ingredient === ingredient && each.hazard === hazard)) continue;
    if (isChanged(journey, of, hazard)) continue;
    found.push({ hazard, ingredient, of });
  }
  return found;
});

function isHarmful({ members }: Body, { member: { state }, ingredient }: Held, { state: as }: Hazard): boolean {
  const isUnheated = state.cooked === 'raw' || state.cooked === 'outside';
  switch (as) {
    case 'any':
      return true;
    case 'whole':
      return state.cut === 'whole';
    case 'rounds':
      return state.cut !== 'minced';
    case 'unheated':
      return isUnheated && !listedAs(ingredient).has('treated');
    case 'rare': {
      const states = listedAs(ingredient);
      if (!isOf(foodOf(ingredient), 'flesh') || states.has('cooked') || states.has('cured') || states.has('treated'))
        return false;
      return (state.was & WAS.implied) === 0 && (isUnheated || isRare(state));
    }
    case 'soft':
      return (state.was & (WAS.implied | WAS.animal)) === WAS.animal && (isSoft(state) || isSoftBoiled(members, state));
  }
}

/** What is read in it is less than cooks it, or it is left pink on purpose. */
function isRare({ cooked, reads, was }: FoodState): boolean {
  const inside = reads.filter(({ of }) => of === 'food');
  return (
    cooked !== 'through' &&
    ((was & WAS.rare) !== 0 || (inside.length > 0 && inside.every(({ celsius }) => celsius.high < COOKED_C)))
  );
}

const isSoft = ({ cooked, was }: FoodState): boolean => cooked === 'raw' || (was & WAS.rare) !== 0;

const isSoftBoiled = (members: Body['members'], { cut, heatedMin, heatedBy, reads }: FoodState): boolean =>
  cut === 'whole' &&
  reads.length === 0 &&
  heatedMin < FIRM_MIN &&
  heatedBy?.event.medium?.is === 'water' &&
  members.every(({ state }) => state.heatedBy === heatedBy || state.cooked === 'raw');

/** Blended, strained, mashed or cut lengthways, nothing in the piece is left. */
function isChanged(journey: Journey, of: IngredientRef, { state: as }: Hazard): boolean {
  if (as !== 'whole' && as !== 'rounds') return false;
  return journey.steps.some((step) => {
    const things = thingsAt(journey.parts, step);
    const isNamed = step.events.some(
      ({ names, event }) =>
        event.said === 'yes' && names.some(({ mention }) => mention.ingredients.some((ref) => isSameRef(ref, of))),
    );
    if (speaks(things, 'lengthways') && isNamed) return true;
    if (as === 'rounds') return false;
    return (
      speaks(things, 'blender', 'stick blender') ||
      step.events.some(
        ({ event }) =>
          event.craft === 'strain' ||
          event.craft === 'press' ||
          (event.act === 'combine' && event.until.some(({ is }) => is === 'mixed')),
      )
    );
  });
}
