/**
 * Knows whether an event heats what it is done to, by its verb, its place, its medium and its figures.
 * Refuses to know how far that cooks it.
 */
import type { Event, PlaceKind, Tells } from '../../prose/event.ts';
import { type Body, type Member, WAS } from './bodies.ts';
import { GENTLE_C, LETHAL_C } from './readings.ts';
import type { Settled } from './temperatures.ts';

/** What these say of a place is no order to heat what lies there. */
const HEATS_NOTHING: ReadonlySet<Event['act']> = new Set([
  'cool',
  'freeze',
  'thaw',
  'rise',
  'eat',
  'adjust',
  'ready',
  'open',
  'read',
  'dry',
]);
const HEATING: ReadonlySet<PlaceKind> = new Set(['oven', 'stove', 'bath']);
/** These come of heat, beside hot water. */
const HOT_SIGNS: ReadonlySet<Tells> = new Set(['thick', 'set', 'boiling', 'hot', 'through', 'figure']);
/** And these, of what is stirred in a pan of the stove: nothing whipped looks so. */
const COOKED_SIGNS: ReadonlySet<Tells> = new Set(['boiling', 'hot', 'through', 'figure', 'tender', 'colour', 'dry']);
/** No food but syrup and fat is hotter. */
const LEAST_OVEN_C = 110;
/** A bath from here on heats what lies in it. */
const LEAST_BATH_C = 45;
/** Jars are processed for so long at least (USDA Complete Guide to Home Canning, 2015: 5 min for the shortest). */
const PROCESSING_MIN = 5;
/** Smoke cooler than this warms nothing. */
const HOT_SMOKE_C = 57;
/** For so long at most, where nobody says how warm, it is smoked hot (common practice, no source). */
const HOT_SMOKE_MIN = 240;

/** Whether an event heats, by its verb or by where it puts the food: `slide it in the oven`, `whisk over simmering water`. */
export function heats(
  { act, as, batches, cooks, craft, where, medium, until, times, verb, vessel: stands }: Event,
  { band, members, vessel }: Body,
  temperatures: readonly Settled[],
): boolean {
  // `No stove needed.`
  if (act === 'heat') return verb !== undefined || where.length === 0 || where.some(({ not }) => !not);
  // `Sink the legs in the fat and keep at 90 C`, of what is raw
  if (
    act === 'stay' &&
    temperatures.some(({ of, said }) => (of === 'around' || of === 'medium') && said.celsius.low >= LETHAL_C) &&
    members.some(({ state }) => state.cooked === 'raw' && (state.was & WAS.animal) !== 0)
  )
    return true;
  // `Dry out in the oven at 90 C`
  if (act === 'dry' && temperatures.some(({ of, said }) => of === 'oven' && said.celsius.low >= GENTLE_C)) return true;
  if (HEATS_NOTHING.has(act)) return false;
  // `Foil over, 150 C for 4 hours`
  if (
    temperatures.some(({ of, said }) => of === 'oven' && said.sure === 'unread' && said.celsius.low > LEAST_OVEN_C) &&
    times.some(({ kind }) => kind === 'spent')
  )
    return true;
  // `Fire would only spoil it`
  if (act === 'unknown' && as === 'told' && times.length === 0 && temperatures.length === 0 && until.length === 0)
    return false;
  // `Process for 30 min`, of jars: so long nobody blends in them.
  if (
    act === 'combine' &&
    vessel === 'jar' &&
    times.some(({ kind, minutes }) => kind === 'spent' && minutes.low >= PROCESSING_MIN)
  )
    return true;
  // `Roll in layers until set through`, of raw eggs.
  if (act === 'shape' && until.some(({ is }) => is === 'set' || is === 'through')) return true;
  // `Whisk over simmering water until thick`; `process in boiling water`, of jars.
  // `Stir it in a pan until the crumbs turn brown`
  if (
    act === 'combine' &&
    vessel === undefined &&
    stands?.stands === 'stove' &&
    until.some(({ is, from }) => from === 'until' && is !== undefined && COOKED_SIGNS.has(is))
  )
    return true;
  if (
    medium?.is === 'water' &&
    act === 'combine' &&
    (vessel === 'jar' || until.some(({ is }) => is !== undefined && HOT_SIGNS.has(is)))
  )
    return true;
  if (temperatures.some(({ of, said }) => of === 'medium' && said.celsius.low >= LEAST_BATH_C) && act !== 'stay')
    return true;
  // `Slip them into simmering water for 3 min`, `drop into boiling water in batches`.
  if (
    act === 'put' &&
    isBoiling(medium) &&
    (times.some(({ kind }) => kind === 'spent') || until.length > 0 || batches !== undefined)
  )
    return true;
  // `Drop the gnocchi into boiling water, and when they float …`: how long that takes nobody says.
  if (act === 'put' && isBoiling(medium) && members.length > 1 && members.some(isFlour) && !members.some(isMinced))
    return true;
  const places = where.flatMap(({ is, way, not }) => (!not && (way === 'at' || way === 'to') && is ? [is] : []));
  if (act === 'smoke' || places.includes('smoker')) {
    if (cooks === 'barely') return false;
    if (temperatures.length > 0) return temperatures.every(({ said }) => said.celsius.low >= HOT_SMOKE_C);
    // `Hang them in the smoker, and hold the smoke at 38 C`: how warm it is comes after.
    if (act !== 'smoke' && times.length === 0) return until.length > 0;
    // Cold smoke takes longer.
    return times.some(({ kind, minutes }) => kind === 'spent' && minutes.high <= HOT_SMOKE_MIN);
  }
  // A slow cooker cooks what is raw, and holds what is hot.
  if (places.includes('hot')) return band !== 'hot' && members.some(({ state }) => state.cooked === 'raw');
  // `Hang them on the rail over the stove`
  if (craft === 'hang' && places.every((place) => place === 'stove')) return false;
  const isHot = medium?.is === 'steam' || medium?.is === 'pressure' || places.some((place) => HEATING.has(place));
  // What was hot is left there.
  return isHot && (act !== 'stay' || members.every(({ state }) => state.cooked === 'raw'));
}

const isFlour = ({ state }: Member): boolean => (state.was & WAS.flour) !== 0;
const isMinced = ({ state }: Member): boolean => state.cut === 'minced';

/** Water that simmers or boils, by its name. */
export const isBoiling = (medium: Event['medium']): boolean =>
  medium?.is === 'water' && (medium.celsius?.low ?? 0) >= GENTLE_C;
