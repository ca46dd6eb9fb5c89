/**
 * Knows which limit a food is held to by what it is and what was done to it, and whether what was read of it meets that limit.
 * Refuses to know recipes that give no figure.
 */
import type { Act } from '../../prose/event.ts';
import { type FoodState, type Read, WAS } from '../../recipe/journey/bodies.ts';
import { LEAST_HEATED_C, LEAST_READ_C, spentIn } from '../../recipe/journey/readings.ts';
import { isIn, isOf, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Kind } from '../../recipe/measures/kind.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { FoodSafetyRules } from '../house.ts';
import {
  EGGS_IN_SHELL,
  type Group,
  groupOf,
  holdingLimits,
  holdS,
  type Limit,
  limitOf,
  THERMOMETER_C,
} from '../safety/limits.ts';

/** Resting, the middle of a roast rises no further by itself (common practice, no source). */
const CARRIES_C = 8;
/** Meat is as warm as the water it lies in after so long, where nobody says how thick it is; thin pieces sooner (judgement). */
const LONG_IN_BATH_MIN = 45;
/** Air warms meat as slowly as this (common practice, no source). */
const LONG_IN_AIR_MIN = 360;

/** What a food counts as; minced by its line, by a step, or by what it is to be. Undefined for what is no risk raw. */
export function groupIn(ingredient: Ingredient, { cut }: FoodState, kind: Kind | undefined): Group | undefined {
  const food = foodOf(ingredient);
  const group = food && groupOf(food);
  if (food === undefined) return undefined;
  const listed = listedAs(ingredient);
  // Raw gammon is salted, and no safer for it; crab meat is bought cooked where nobody says that it is raw.
  if (group === undefined) {
    if (food.class === 'cured meat' && food.roles.includes('raw risk')) return 'meat';
    return listed.has('raw') && (food.class === 'fish' || food.class === 'shellfish') ? 'fish' : undefined;
  }
  if (isOf(food, 'ratite')) return 'pierced';
  if ((group === 'meat' || group === 'ground meat') && (isIn(ingredient, 'wild') || listed.has('wild'))) return 'game';
  if (group !== 'meat') return group;
  return cut === 'minced' || kind?.minced
    ? 'ground meat'
    : cut === 'pierced' || listed.has('pierced')
      ? 'pierced'
      : group;
}

/** The limit for a group, where it is stuffed or cooked in patches that of poultry or of the microwave oven. */
export function limitFor(group: Group, { was }: FoodState, isStuffed: boolean, rules: FoodSafetyRules): Limit {
  if ((was & WAS.microwaved) !== 0) {
    const { title, microwave } = holdingLimits(rules);
    const { section, ...rule } = microwave;
    return { ...rule, group, source: `${title}, ${section}`, holds: [] };
  }
  return limitOf(isStuffed && group !== 'egg' && group !== 'game' ? 'poultry' : group, rules);
}

/** Whether what was read is enough; else the warmest of it, and whether only how thick the food is decides. */
export type Reached =
  | { readonly is: 'enough' | 'unread' }
  | { readonly is: 'short' | 'by thickness'; readonly read: Read };

export function reached(state: FoodState, group: Group, limit: Limit): Reached {
  let best: Read | undefined;
  let thick: Read | undefined;
  let inFood: Read | undefined;
  for (const read of state.reads) {
    const { of, held, celsius, fahrenheit } = read;
    if (of === 'oven' || celsius.low < (of === 'food' ? LEAST_HEATED_C : LEAST_READ_C) || isPast(read, state, group))
      continue;
    const seconds = holdS(limit, celsius.low, fahrenheit);
    if (of === 'food') {
      const isCarried = inFood !== undefined && celsius.low > inFood.celsius.low + CARRIES_C && read.when === 'resting';
      if (isCarried) continue;
      inFood = read;
      if (celsius.low >= limit.celsius - THERMOMETER_C || isHeld(held.low, seconds)) return { is: 'enough' };
    } else if (group === 'egg' && of === 'around' && isHeldInShell(read)) return { is: 'enough' };
    else if (seconds !== undefined) {
      // Ten minutes in a bath are no ten minutes in the food.
      const slow = of === 'air' ? LONG_IN_AIR_MIN : LONG_IN_BATH_MIN;
      if (held.low * 60 >= seconds && held.low >= slow) return { is: 'enough' };
      if (of === 'around' && held.low > 0 && held.low * 60 >= seconds) thick ??= read;
    }
    // What is kept warm at less than it was cooked at is no less cooked.
    if (of === 'food' || (celsius.low < limit.celsius && (read.by.event.act !== 'stay' || read.when === 'cooking')))
      if (best === undefined || celsius.low > best.celsius.low) best = read;
  }
  if (thick !== undefined) return { is: 'by thickness', read: thick };
  return best === undefined ? { is: 'unread' } : { is: 'short', read: best };
}

/** Below this nothing is cooked that is heated on. */
const LEAST_DONE_C = 45;
/** So long at most only the outside is finished (judgement). */
const CRISPS_MIN = 2;

/** It was heated on after that: an egg baked, flesh from where it was only warm. */
function isPast({ by, celsius }: Read, { heatedBy }: FoodState, group: Group): boolean {
  if (!HEATS.has(by.event.act) || heatedBy === undefined || heatedBy === by || heatedBy.event.cooks !== 'as read')
    return false;
  // `Uncover and fry for 1 min until crisp`: the middle is no hotter for that.
  const { high } = spentIn(heatedBy.event);
  if (group !== 'egg' && high > 0 && high <= CRISPS_MIN) return false;
  const isBaked = heatedBy.event.where.some(({ is, not }) => is === 'oven' && !not);
  return group === 'egg' ? isBaked : celsius.low < LEAST_DONE_C;
}

/** Acts that heat where the figure beside them is read; others read what is heated already. */
const HEATS: ReadonlySet<Act> = new Set(['heat', 'combine', 'put', 'smoke', 'cover', 'close']);

const isHeldInShell = ({ celsius, held }: Read): boolean => {
  const seconds = EGGS_IN_SHELL.holds.findLast(([at = 0]) => at <= celsius.low)?.[1];
  return seconds !== undefined && held.low * 60 >= seconds;
};

const isHeld = (minutes: number, seconds: number | undefined): boolean =>
  seconds !== undefined && seconds > 0 && minutes * 60 >= seconds;
