/**
 * Knows which step of a part is the first that needs an oven, and whether it or one before it says how hot.
 */
import type { Event } from '../../prose/event.ts';
import { deed, does, eventsOf } from '../../recipe/journey/deeds.ts';
import type { Part, Step } from '../../recipe/model.ts';
import { bakingOrder, type Order } from './cues.ts';

/** What hotter than this is no food and no fat to fry in: fat in a tin is made so hot in the oven, for a batter to go in. */
const LEAST_TIN_C = 190;
/** A bake's own figure from here on is its oven's, whatever it stands in. */
const LEAST_OVEN_C = 100;
const sets = ({ temperatures, craft }: Event): boolean =>
  temperatures.some(
    ({ of, celsius: { low } }) =>
      of === 'oven' || (of !== 'food' && low >= (craft === 'bake' || craft === 'roast' ? LEAST_OVEN_C : LEAST_TIN_C)),
  );
const SET = deed(sets);

/** `Bake for 15 min, then turn down to 200 C`: from what, nobody says. */
const isTurnedAfter = (step: Step, order: Order): boolean => {
  const set = eventsOf(step).find(sets);
  return set?.act === 'adjust' && set.temperatures.length === 1 && order.start < set.start;
};

/** On metal or over embers a bake needs no oven. */
const isInOven = ({ where, medium }: Order): boolean =>
  medium?.is !== 'metal' &&
  !where.some(({ is, not }) => (is === 'stove' || is === 'outdoors' || is === 'smoker') && !not);

/** The step that first says how hot the oven is, or else orders a bake without that, with the order; undefined where no oven is spoken of. */
export function firstInOven({ steps }: Part): { readonly step: Step; readonly order?: Order } | undefined {
  for (const step of steps) {
    const order = bakingOrder(step);
    const isInOne = order !== undefined && isInOven(order);
    if (does(step, SET)) return isInOne && isTurnedAfter(step, order) ? { step, order } : { step };
    if (isInOne) return { step, order };
  }
  return undefined;
}
