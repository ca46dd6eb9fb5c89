/**
 * Knows where and for how long a body lies by what an event says, and what that does to its clocks.
 * Refuses to know how long is too long.
 */
import type { Range } from '../../measure/quantity.ts';
import type { Event, Sure, Where } from '../../prose/event.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, type Lying, type Read, type Stay, WAS, withRead, withStates } from './bodies.ts';
import { isLeftClosed, isToldSoLong } from './left-alone.ts';
import { isPartly } from './partly.ts';
import { ANYWHERE, bandOf } from './places.ts';
import { weakest } from './sure.ts';
import type { Settled } from './temperatures.ts';
import { TRANSITIONS } from './transitions.ts';

/** Food is cold up to here and hot from there on, rounding and a thermometer between °C and °F in it (Food Code 2022, 3-501.16). */
const COLD_C = 5.6;
const HOT_C = 56.4;
const FROZEN_C = -5;
/** So long in the cold it is kept there, and not only made firm (judgement). */
const KEPT_COLD_MIN = 240;
/** Off the heat, a pot or an oven that stands closed is a room in the end. */
const COOLING: Range = { low: 10, high: 60 };
/** So long it stays where it was, if it was hot over what goes on heating (minutes). */
const LONG_MIN = 240;

export interface Lain {
  readonly body: Body;
  readonly stay: Stay | undefined;
}

/** The body after it has lain as the event says; no stay where the event says neither a place nor a time. */
export function lie(
  body: Body,
  by: BoundEvent,
  temperatures: readonly Settled[],
  at: { readonly part: number; readonly line: number; readonly branch: boolean },
): Lain {
  const { event } = by;
  const time = minutesOf(event);
  // What takes days is kept, whatever is done; and `it wants a full day`.
  const passes =
    time !== undefined &&
    // Of a label no place is said: it is for where that is kept.
    event.craft !== 'label' &&
    (time.low >= KEPT_MIN || isToldSoLong(event, body, time) || isLeftClosed(event, body, time));
  const how = passes ? 'yes' : TRANSITIONS[event.act].lies;
  const around = temperatures.find(({ of }) => of === 'around' || of === 'oven' || of === 'medium');
  const said = placeSaid(event, body, time);
  const isPlaced = said !== undefined || (around !== undefined && event.act !== 'heat');
  if (
    how === 'no' ||
    (how === 'placed' && !isPlaced) ||
    (time === undefined && !isPlaced && !TAKES_TIME.has(event.act))
  )
    return { body: moved(body, by), stay: undefined };
  const minutes = time ?? OPEN;
  const lies = withFigure(said ?? silent(event, body, minutes), around);
  const sure = weakest(lies.sure, time === undefined ? 'inferred' : timeSure(event));
  const spent = time !== undefined ? minutes : NONE;
  const warm = isWarm(lies) ? longerBy(body.warmMin, spent) : body.warmMin;
  // `Cool to 4 C`: so cold it then is.
  const target = event.act === 'cool' ? temperatures.find(({ of }) => of === 'food')?.said.celsius : undefined;
  const after =
    target === undefined
      ? lies
      : { place: target.high <= COLD_C ? ('cold' as const) : lies.place, celsius: target, sure: lies.sure };
  // `Refrigerate till the party`
  const isTill = event.times.some(({ kind }) => kind === 'until');
  const isKeptCold =
    lies.celsius.high <= COLD_C && (time === undefined || time[isTill ? 'high' : 'low'] >= KEPT_COLD_MIN);
  // `Take the goose from the fire half done, and set it by in a cool place`
  const isPutCool = lies.place === 'cool' && lies.sure === 'said';
  const next: Body = {
    ...withStates(body, (state) => {
      const isPutBy = isKeptCold || (isPutCool && (state.was & WAS.rare) !== 0);
      const partly = isPutBy && (state.was & WAS.animal) !== 0 && isPartly(state) ? WAS.partly : 0;
      const next = { ...state, was: state.was | bitOf(event, spent) | partly };
      return isFrozen(lies) && (state.was & WAS.animal) !== 0 ? withRead(next, frozenAt(by, lies, spent)) : next;
    }),
    lies: after,
    // No time has passed.
    band: time === undefined && bandAt(after) === 'between' ? bandOutOf(event, body) : bandAt(after),
    warmMin: warm,
    warmSure: isWarm(lies) && time !== undefined ? weakest(body.warmSure, sure) : body.warmSure,
    coldMin: lies.celsius.high <= COLD_C ? longerBy(body.coldMin, spent) : body.coldMin,
    waits: undefined,
  };
  const stay: Stay = {
    by,
    ...at,
    body,
    lies,
    minutes,
    timed: time !== undefined,
    sure,
    warmMin: isWarm(lies) ? longerBy(body.warmMin, minutes) : body.warmMin,
  };
  return { body: time === undefined || minutes.high === Infinity ? { ...next, waits: stay } : next, stay };
}

/** How cold flesh lay, for how long: what lives in fish dies of it. */
const frozenAt = (by: BoundEvent, { celsius, sure }: Lying, held: Range): Read => ({
  by,
  at: by.event,
  celsius,
  held,
  of: 'around',
  inside: false,
  sure,
  when: 'cooking',
});

/** Filled into something else, it is off the heat. */
function moved(body: Body, { event: { act, vessel }, into }: BoundEvent): Body {
  const isFilled = vessel === undefined ? into === 'name' : vessel.is !== undefined && vessel.is !== 'tool';
  const isMoved = (act === 'put' || act === 'pack' || act === 'remove') && isFilled;
  return { ...body, ...(isMoved && body.lies.place !== 'room' && { lies: ROOM }), waits: undefined };
}

/** `Fourteen hours later it reads 32 C`, `next morning it is still lukewarm`: so long it has not been cold, wherever it was put while it was hot. */
export function stillWarm(
  { waits, lies }: Body,
  by: BoundEvent,
  temperatures: readonly Settled[],
  at: { readonly part: number; readonly line: number; readonly branch: boolean },
): Stay | undefined {
  const minutes = minutesOf(by.event);
  // `Next morning it is still at 30 C.`
  const isTold = by.event.as === 'told' && by.event.where.length === 0;
  const said = temperatures.find(({ of }) => of === 'food' || (of === 'nothing' && isTold))?.said;
  const felt = by.event.until.find(({ is, from }) => is === 'warm' && from === 'until');
  if (waits?.body.band !== 'hot' || minutes === undefined || (said === undefined && felt === undefined))
    return undefined;
  const celsius = said?.celsius ?? felt?.celsius ?? WARM;
  // A hand is no thermometer.
  const sure = said?.sure ?? 'inferred';
  if (celsius.low <= COLD_C || celsius.high >= HOT_C) return undefined;
  return {
    by,
    ...at,
    body: waits.body,
    lies: { place: lies.place, celsius, sure },
    minutes,
    timed: true,
    sure: weakest(sure, timeSure(by.event)),
    warmMin: minutes,
  };
}

/** Warm, by what is felt. */
const WARM: Range = { low: 30, high: 45 };

/** Time passes by what these say alone. */
const TAKES_TIME: ReadonlySet<Event['act']> = new Set([
  'stay',
  'cool',
  'freeze',
  'thaw',
  'rise',
  'steep',
  'dry',
  'smoke',
]);
/** Two days. */
const KEPT_MIN = 2880;
/** A point so long after the step before is a time that passes. */
const LATER_MIN = 300;
const OPEN: Range = { low: 0, high: Infinity };
const NONE: Range = { low: 0, high: 0 };

export const longerBy = (a: Range, b: Range): Range => ({ low: a.low + b.low, high: a.high + b.high });

/** Whether it may be neither cold nor hot there. */
export const isWarm = ({ celsius }: Lying): boolean => celsius.high > COLD_C && celsius.low < HOT_C;

/** Whether it is kept cold there, frozen or not. */
export const isCold = ({ celsius }: Lying): boolean => celsius.high <= COLD_C;

export const isFrozen = ({ celsius, place }: Lying): boolean => place === 'frozen' || celsius.high <= FROZEN_C;

/** `Take it out of the freezer`: so cold it is yet. */
const bandOutOf = ({ where }: Event, { band }: Body): Body['band'] =>
  band === 'unsaid' && where.some(({ way, is, not }) => way === 'out of' && is === 'frozen' && !not) ? 'frozen' : band;

function bandAt(lies: Lying): Body['band'] {
  const { celsius } = lies;
  if (isFrozen(lies)) return 'frozen';
  if (celsius.high <= COLD_C) return 'cold';
  return celsius.low >= HOT_C ? 'hot' : 'between';
}

/** What rises or ferments for a day turns sour by itself (common practice, no source). */
const FERMENTS_MIN = 1440;

/** In fewer hours only the outside is dry (common practice, no source). */
const DRIES_MIN = 360;
/** By a sign that is seen, in less. */
const DRIES_BY_SIGN_MIN = 60;
/** Where things are hung or spread until they are dry all through. */
const DRYING: ReadonlySet<Where['is']> = new Set<Where['is']>(['outdoors', 'warm', 'hot', 'oven', 'smoker']);

/** `Dry on a towel`, `rinse, dry and pack` takes water off the outside, and dries nothing. */
const driesThrough = ({ times, until, where, medium }: Event, minutes: Range): boolean =>
  times.some(({ kind }) => kind === 'spent')
    ? minutes.low >= (until.length > 0 ? DRIES_BY_SIGN_MIN : DRIES_MIN)
    : until.length > 0 ||
      medium?.is === 'air' ||
      minutes.high > 0 ||
      where.some(({ is, not }) => !not && DRYING.has(is));

const bitOf = (event: Event, minutes: Range): number => {
  const { act, medium } = event;
  switch (act) {
    case 'freeze':
      return WAS.frozen;
    case 'thaw':
      return WAS.thawed;
    case 'dry':
      return driesThrough(event, minutes) ? WAS.dried : 0;
    case 'steep':
      return medium?.is === 'brine' ? WAS.salted : medium?.is === 'acid' ? WAS.soured : 0;
    case 'rise':
      return minutes.high >= FERMENTS_MIN ? WAS.soured : 0;
    default:
      return 0;
  }
};

/** The place that the words say. */
function placeSaid(
  { where, act, craft, medium, times, temperatures }: Event,
  body: Body,
  time: Range | undefined,
): Lying | undefined {
  const at = where.findLast((w) => !w.not && (w.way === 'at' || w.way === 'to'));
  if (at?.is === 'stove' && craft === 'hang') return ABOVE;
  // On the stove for hours, or to cool, it is off the heat.
  if (at?.is === 'stove' && (act === 'cool' || (time !== undefined && time.low >= LONG_MIN)))
    return { ...COOLS, sure: 'said' };
  // Cooked, and brought back for a night with no word of its heat, it lies in an oven that is out.
  if (at?.is === 'oven' && LEAVES.has(act) && isLeftInOven(body, temperatures, time)) return { ...COOLS, sure: 'said' };
  // Left in what was turned off.
  if (
    at?.is !== undefined &&
    WORKS.has(at.is) &&
    (act === 'stay' || act === 'cool') &&
    body.band === 'between' &&
    isOff(body.lies)
  )
    return body.lies;
  if (at !== undefined) return lyingAt(at);
  if (medium?.is === 'ice') return ICE;
  // `Out of the fridge`, `not in the refrigerator`: a room, unless it says another.
  const from = where.find((w) => w.way === 'out of' || w.way === 'off' || w.not);
  if (from === undefined) return undefined;
  // `Within four days, always from the fridge`: it lives there until then.
  if (from.is === 'cold' && !from.not && times.some(({ kind }) => kind === 'life') && act !== 'remove') return IN_COLD;
  if (from.is === 'cold' || from.is === 'frozen' || from.is === 'cool') return ROOM;
  // `Sell off the shelf`: it lies there.
  if (from.way === 'off' && !from.not && from.is !== 'oven' && from.is !== 'stove') return lyingAt(from);
  return body.band === 'hot' ? COOLS : ROOM;
}

const LEAVES: ReadonlySet<Event['act']> = new Set<Event['act']>(['stay', 'put']);

const isLeftInOven = (
  { lies, band, members }: Body,
  figures: Event['temperatures'],
  time: Range | undefined,
): boolean =>
  (lies.place !== 'oven' || band !== 'hot') &&
  figures.length === 0 &&
  time !== undefined &&
  time.low >= LONG_MIN &&
  members.some(({ state }) => state.cooked !== 'raw');

/** Places that are hot as long as they work. */
const WORKS: ReadonlySet<Where['is'] & string> = new Set(['hot', 'oven', 'stove']);
/** On what was turned off. */
export const isOff = ({ place, celsius }: Lying): boolean =>
  place === 'room' && celsius.high === COOLING.high && celsius.low === COOLING.low;

const IN_COLD: Lying = { place: 'cold', celsius: bandOf('cold'), sure: 'said' };
const ICE: Lying = { place: 'cold', celsius: bandOf('cold'), sure: 'said' };
const ROOM: Lying = { place: 'room', celsius: bandOf('room'), sure: 'inferred' };
/** In the air over a stove. */
const ABOVE: Lying = { place: 'warm', celsius: { low: 20, high: 45 }, sure: 'said' };
const COOLS: Lying = { place: 'room', celsius: COOLING, sure: 'inferred' };

const lyingAt = ({ is, sure, celsius }: Where): Lying =>
  is === undefined
    ? { place: undefined, celsius: celsius ?? ANYWHERE, sure: 'unread' }
    : { place: is, celsius: celsius ?? bandOf(is), sure };

/** Where it lies when nobody says. */
function silent({ act, times, as, craft }: Event, body: Body, minutes: Range): Lying {
  const { place } = TRANSITIONS[act];
  if (place === 'ask') return body.band === 'cold' || body.band === 'frozen' ? body.lies : UNREAD;
  if (place !== 'as it lay') return { place, celsius: bandOf(place), sure: act === 'rise' ? 'inferred' : 'said' };
  if (body.band === 'cold' || body.band === 'frozen') return body.lies;
  // `Tub. Cupboard. Use over 2 d.`: there.
  const put = body.waits;
  if (
    put !== undefined &&
    PUTS_BY.has(put.by.event.act) &&
    put.lies.sure === 'said' &&
    times.some(({ kind }) => kind === 'life')
  )
    return put.lies;
  if (
    minutes.low < SHELF_MIN &&
    (times.some(({ kind }) => kind === 'life') ||
      (act === 'stay' && as === 'told' && craft === 'keep' && body.band === 'hot'))
  )
    return UNREAD;
  // `Set the kettle to 75 C and ladle all day`
  if (act === 'put' && body.lies.place === undefined && body.lies.celsius.low >= HOT_C) return body.lies;
  if (act === 'pack' || act === 'put' || act === 'close') return ROOM;
  // Over heat nothing lies for days.
  const isHeated =
    body.lies.place === 'hot' || body.lies.place === 'bath' || (body.lies.place === 'oven' && minutes.low >= LONG_MIN);
  if (isHeated && minutes.low < KEPT_MIN) return { ...body.lies, sure: 'inferred' };
  if (body.lies.place === 'room' || body.lies.place === 'warm' || body.lies.place === 'cool') return body.lies;
  // It was not cold yet when it came there.
  if (body.lies.place === 'cold') return { ...body.lies, celsius: bandOf('cold') };
  return ROOM;
}

const PUTS_BY: ReadonlySet<Event['act']> = new Set<Event['act']>(['stay', 'pack', 'close', 'put']);

/** What is said to keep for so long in no place is meant for a shelf; for less, nobody knows. */
const SHELF_MIN = 14 * 1440;
const UNREAD: Lying = { place: undefined, celsius: ANYWHERE, sure: 'unread' };

/** A figure beside a place says how warm that is. */
function withFigure(lies: Lying, around: Settled | undefined): Lying {
  if (around === undefined) return lies;
  const { celsius, bound } = around.said;
  const range =
    bound === 'at least'
      ? { low: celsius.low, high: Math.max(celsius.high, 100) }
      : bound === 'at most'
        ? { low: Math.min(0, celsius.low), high: celsius.high }
        : celsius;
  return { place: lies.sure === 'said' ? lies.place : undefined, celsius: range, sure: around.sure };
}

function timeSure({ times }: Event): Sure {
  return times.reduce<Sure>((sure, time) => weakest(sure, time.sure), 'said');
}

/** Minutes that an event says pass; undefined where it says none. */
export function minutesOf({ times, act, verb }: Event): Range | undefined {
  const isTimed = times.some(({ kind }) => kind === 'spent');
  let spent: { low: number; high: number } | undefined;
  const choices = new Map<number, Range>();
  for (const { kind, minutes, choice, per, start } of times) {
    // `In the morning let them stand for an hour`: from then on.
    const isBegin = kind === 'point' && verb !== undefined && start < verb.start;
    if (isBegin && (isTimed || act === 'cool')) continue;
    if (kind === 'every' || per === 'kg' || per === 'piece') continue;
    // `1 h before serving`: so long out of where it lay; and `a month later` it lay so long.
    if (kind === 'point' && act !== 'remove' && act !== 'stay' && minutes.low < LATER_MIN) continue;
    // What keeps so long is meant to be kept so long.
    const passes = kind === 'limit' ? { low: 0, high: minutes.high } : minutes;
    if (choice > 0) {
      const other = choices.get(choice);
      choices.set(
        choice,
        other === undefined
          ? passes
          : { low: Math.min(other.low, passes.low), high: Math.max(other.high, passes.high) },
      );
      continue;
    }
    spent = spent === undefined ? { ...passes } : longerBy(spent, passes);
  }
  for (const choice of choices.values()) spent = spent === undefined ? { ...choice } : longerBy(spent, choice);
  return spent;
}
