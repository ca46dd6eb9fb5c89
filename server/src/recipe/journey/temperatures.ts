/**
 * Knows of what a temperature is where its own words do not tell: by what the body may be, and what is possible.
 * Refuses to know words.
 */
import type { Event, HeatOf, Sure, TemperatureSaid } from '../../prose/event.ts';
import { type Body, type FoodState, WAS } from './bodies.ts';

export interface Settled {
  readonly said: TemperatureSaid;
  readonly of: HeatOf;
  readonly sure: Sure;
}

/** No food but syrup and fat is hotter. */
const BOILS_C = 110;
/** A figure no warmer than a room is of where food lies. */
const ROOM_C = 30;
/** Flesh and egg are read between these. */
const LEAST_READ_C = 36;
const MOST_READ_C = 90;
/** Food Code 2022, 3-401.11: the least figure that is enough at once, of poultry and what is stuffed. */
const LETHAL_C = 73;
/** No dough rises at this. */
const LEAST_CARRIED_C = 48;
/** What was cooked lies in a place like this, and is not read again. */
const MOST_AROUND_C = 56;

/** The temperatures of an event that are of something, each of what. */
export function settleTemperatures(
  { temperatures, act, where, verb, times }: Event,
  body: Body | undefined,
): readonly Settled[] {
  return temperatures.flatMap((said): Settled[] => {
    if (said.bound === 'change') return [];
    const { low, high } = said.celsius;
    // `The hot cupboard reads 48 C`: what was cooked lies at it.
    const isAround = (high <= MOST_AROUND_C && isKept(where)) || (high <= ROOM_C && LIES.has(act));
    if (said.of === 'food' && act !== 'cool' && isAround && (!said.inside || LIES.has(act)))
      return [{ said, of: 'around', sure: 'inferred' }];
    // `Bath at 60 C`: with no order beside it, it is the water's.
    if (verb === undefined && !said.inside && where.some(({ is, not }) => is === 'bath' && !not))
      return [{ said, of: 'medium', sure: said.sure }];
    // `It will rise to 64 C`: a roast, and no dough.
    if (act === 'rise' && low >= LEAST_CARRIED_C) return [{ said, of: 'food', sure: 'said' }];
    // `In a 150 C oven to a rosy 54 C`: one of two is the oven's.
    if (isOtherThanOven(temperatures, said) && low >= LEAST_READ_C && isRaw(body))
      return [{ said, of: 'food', sure: said.of === 'food' ? said.sure : 'said' }];
    // `By the range, at 70 C or above`, of what is hot: so hot it stays.
    const mayBeHeld = HOLDS.has(act) && (said.of === 'food' || said.sure === 'unread') && low > MOST_AROUND_C;
    if (mayBeHeld && high <= BOILS_C && !isRaw(body) && isDoneOrHot(body))
      return [{ said, of: 'around', sure: 'inferred' }];
    if (said.sure !== 'unread') return said.of === 'nothing' ? [] : [{ said, of: said.of, sure: said.sure }];
    // The place that a verb says by itself tells nothing of a figure.
    const isPlaced = where.some(
      // Neither coals nor a flame are as cool as food.
      (w) => !w.not && (w.way === 'at' || w.way === 'to') && w.start !== verb?.start && w.is !== 'stove',
    );
    // `Foil over, 150 C for 4 hours`: nothing but an oven is so hot for so long.
    const isBaked = act === 'heat' || (SHUTS_IN.has(act) && times.some(isLong));
    if (high > BOILS_C) return [{ said, of: isBaked ? 'oven' : 'nothing', sure: 'inferred' }];
    if (high <= ROOM_C) return [{ said, of: 'around', sure: 'inferred' }];
    if (body === undefined) return [];
    const lethal = isDoneOrHot(body);
    if (isRaw(body) && !isPlaced && low >= LEAST_READ_C && high <= MOST_READ_C)
      return [{ said, of: 'food', sure: 'inferred' }];
    if ((lethal || isPlaced || act === 'stay') && high <= MOST_AROUND_C)
      return [{ said, of: 'around', sure: 'inferred' }];
    return [];
  });
}

/** Cooked through, or read as hot as nothing lives in. */
const isDone = ({ cooked, reads }: FoodState): boolean =>
  cooked === 'through' || reads.some(({ of, celsius }) => of === 'food' && celsius.low >= LETHAL_C);

/** Flesh or egg that is not cooked through. */
const isRaw = (body: Body | undefined): boolean =>
  body?.members.some(({ state }) => (state.was & WAS.animal) !== 0 && !isDone(state)) === true;

/** Hot food is held by these, or by what no row says. */
const HOLDS: ReadonlySet<Event['act']> = new Set(['stay', 'put', 'reserve', 'unknown']);

const isDoneOrHot = (body: Body | undefined): boolean =>
  body?.band === 'hot' || body?.members.some(({ state }) => state.cooked === 'through') === true;

const isOtherThanOven = (all: readonly TemperatureSaid[], { celsius: { high } }: TemperatureSaid): boolean =>
  high <= MOST_READ_C && all.some(({ of, celsius }) => of === 'oven' && celsius.low > BOILS_C);

/** Beside these a cool figure is of where it lies. */
const LIES: ReadonlySet<Event['act']> = new Set(['stay', 'steep', 'thaw', 'put', 'pack', 'cover']);

/** What is done to food before it bakes, where no order to bake stands beside it. */
const SHUTS_IN: ReadonlySet<Event['act']> = new Set(['cover', 'close', 'put', 'stay', 'pack', 'cut', 'shape']);
const isLong = ({ kind, minutes }: Event['times'][number]): boolean => kind === 'spent' && minutes.low >= BAKED_MIN;
/** Sugar and fat are no longer so hot (judgement). */
const BAKED_MIN = 10;

/** A place where food is kept, and not heated, is said. */
const isKept = (where: Event['where']): boolean =>
  where.some(({ is, not }) => !not && (is === 'cold' || is === 'cool' || is === 'hot'));
