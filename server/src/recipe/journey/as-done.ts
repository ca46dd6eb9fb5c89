/**
 * Knows what an order comes to where its verb alone does not tell: by what is there to act on.
 * Refuses to know what is done then.
 */
import type { Act, Where } from '../../prose/event.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, WAS } from './bodies.ts';

/** `Oil the prawns` is no tin made ready; what is turned and then read is read; `it can be kept at 50 C` keeps it. */
export function asDone(by: BoundEvent, current: readonly Body[]): BoundEvent {
  const { event, names, unnamed } = by;
  const as = (act: Act): BoundEvent => ({ ...by, event: { ...event, act } });
  if (event.act === 'ready' && names.some(({ role }) => role === 'what')) return as('combine');
  // `Divide the cucumbers among the jars`: they are in them from then on.
  if (event.act === 'divide' && names.length > 0 && (event.vessel?.is === 'jar' || event.vessel?.is === 'airtight'))
    return as('put');
  // `Swill the pan with the wine`
  if (event.act === 'remove' && unnamed === 'vessel' && event.vessel?.stands !== undefined && isWith(names))
    return as('combine');
  // `Line up on the shelf for the winter`; `sterilise an hour`, of jars that are full.
  // `Wipe, lids on`
  if (event.act === 'ready' && names.length === 0 && event.vessel?.is === 'tool' && current.some(isOpenJar))
    return as('close');
  // `Turn the chicken in the marinade`
  if (event.act === 'adjust' && isMixed(names)) return as('combine');
  if (event.act === 'ready' && names.length === 0) {
    if ((unnamed === 'it' && event.where.length > 0) || (unnamed === 'nothing' && event.where.some(isAPlaceToLie)))
      return as('put');
    // `Ready in two weeks`
    if (event.times.some(({ minutes }) => minutes.low >= DAY_MIN)) return as('stay');
    if (event.times.length > 0 && current.some(({ vessel }) => vessel === 'jar'))
      return { ...by, event: { ...event, act: 'heat', cooks: 'through' } };
  }
  if ((event.act === 'adjust' || event.act === 'ready') && readsFood(event))
    return as(event.where.some(({ is, way }) => way === 'at' && (is === 'stove' || is === 'oven')) ? 'heat' : 'read');
  if (isCurve(event)) {
    const falling = event.temperatures.map((said) => ({ ...said, of: 'food' as const, sure: 'said' as const }));
    return { ...by, event: { ...event, act: 'cool', temperatures: falling } };
  }
  if (isKeptWarm(event, current)) {
    const { cooks: _, ...kept } = event;
    return { ...by, event: { ...kept, act: 'stay' } };
  }
  // `Salt, pepper, fish out the bay`: what is cooked is seasoned.
  if (event.act === 'steep' && isOnlySalted(by) && current.length > 0 && current.every(isCooked)) return as('combine');
  // `4 min each side`: nothing else has sides.
  if (event.act === 'unknown' && event.times.some(({ per }) => per === 'side'))
    return { ...by, event: { ...event, act: 'heat', cooks: 'as read' } };
  if (
    event.act === 'read' &&
    event.temperatures.length > 0 &&
    event.temperatures.every(({ of }) => of === 'around' || of === 'nothing')
  )
    return as('stay');
  return by;
}

/** Nothing is cooked or heated again below it (Food Code 2022, 3-501.16: hot food is held from here on). */
const HOT_C = 57;
const DAY_MIN = 1440;
const PUT: ReadonlySet<Act> = new Set(['put', 'unknown', 'return']);

/** `In a water bath at 48 C, for six hours`, of what is cooked: so warm it is kept. */
function isKeptWarm({ act, verb, temperatures }: BoundEvent['event'], current: readonly Body[]): boolean {
  if (!(PUT.has(act) || (act === 'heat' && verb === undefined)) || temperatures.length === 0) return false;
  const isBelow = temperatures.every(
    ({ of, bound, celsius }) => of !== 'food' && of !== 'nothing' && bound !== 'change' && celsius.high < HOT_C,
  );
  return (
    isBelow &&
    current.length > 0 &&
    current.every(
      ({ band, members }) =>
        (band === 'hot' || members.some(({ state }) => state.cooked === 'through')) &&
        members.every(({ state }) => state.cooked !== 'raw' || (state.was & WAS.animal) === 0),
    )
  );
}

/** Nothing is said of where or for how long. */
const isOnlySalted = ({ names, event: { times, where, until, medium, vessel } }: BoundEvent): boolean =>
  names.length === 0 &&
  times.length + where.length + until.length === 0 &&
  medium === undefined &&
  vessel === undefined;

const isCooked = ({ members }: Body): boolean => members.some(({ state }) => state.cooked === 'through');

/** `On ice; in two hours it is at 20 C, and two hours later at 4 C`: figures that fall, a time beside each, cool it. */
function isCurve({ act, temperatures, times, where, medium }: BoundEvent['event']): boolean {
  // `Ice bath, 70F in 2 hr, 41F in 4 more`: where it is cold, one time is enough.
  const isCold = medium?.is === 'ice' || where.some(({ is, not }) => is === 'cold' && !not);
  if (!CURVES.has(act) || temperatures.length < 2 || times.length < (isCold ? 1 : temperatures.length)) return false;
  const isFalling = temperatures.every(
    ({ celsius, of, bound }, i) =>
      of !== 'oven' && bound !== 'change' && (i === 0 || celsius.high < (temperatures[i - 1]?.celsius.low ?? 0)),
  );
  return isFalling && (temperatures[0]?.celsius.high ?? 0) < HOT_C;
}
const CURVES: ReadonlySet<Act> = new Set<Act>(['divide', 'put', 'pack', 'stay', 'reserve', 'unknown']);

const readsFood = ({ temperatures, until }: BoundEvent['event']): boolean =>
  temperatures.some(({ of }) => of === 'food') || until.some(({ celsius }) => celsius !== undefined);

const isAPlaceToLie = ({ is, way, not }: Where): boolean =>
  !not && way === 'at' && is !== 'oven' && is !== 'stove' && is !== 'bath' && is !== 'smoker';

const isOpenJar = ({ vessel, shut }: Body): boolean => vessel === 'jar' && shut !== 'jar';

const isWith = (names: BoundEvent['names']): boolean => names.length > 0 && names.every(({ role }) => role === 'with');

const isMixed = (names: BoundEvent['names']): boolean =>
  names.some(({ role }) => role === 'what') && names.some(({ role }) => role === 'into' || role === 'with');
