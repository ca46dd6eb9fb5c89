/**
 * Knows what the clock says of food that was left: which stays it may end, and how long they then were.
 * Refuses to know how long it is from one point to the next (`clock.ts`).
 */
import type { Range } from '../../measure/quantity.ts';
import type { ClockSaid } from '../../prose/clock.ts';
import type { Act, PlaceKind } from '../../prose/event.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, type Lying, type Stay, sharesFood, WAS } from './bodies.ts';
import { clockAt, passed, unspent } from './clock.ts';
import { ANYWHERE } from './places.ts';
import type { FoldState } from './state.ts';
import { isWarm, longerBy, minutesOf } from './stays.ts';
import { weakest } from './sure.ts';

/** What goes on by itself until a point of the clock. */
const LASTS: ReadonlySet<Act> = new Set(['stay', 'cool', 'thaw', 'rise', 'steep', 'dry', 'smoke', 'freeze']);

/** An hour that an event goes on until. `Into the rucksack by 7` begins then. */
export const isEndOf = ({ event }: BoundEvent, { until, by, since, comes }: ClockSaid): boolean =>
  event.craft === 'delay' ||
  (event.act === 'read' && (since !== undefined || comes !== undefined)) ||
  (until && LASTS.has(event.act) && !(by && event.where.some(({ way }) => way === 'to')));

/** `The van goes out with them at five, and is back about one`: it goes on until the second of two points. */
export const goesOn = ({ event }: BoundEvent): boolean => event.act === 'stay';

/** The event with the time until then, as far as the clock tells; what it says besides of that time is the same. */
export function lasting(by: BoundEvent, said: ClockSaid, { clock }: FoldState): BoundEvent {
  const isKnown = clock?.hours !== undefined || clock?.day !== undefined;
  const known = isKnown ? passed(clock, said) : undefined;
  const minutes = known ?? (by.event.act === 'read' ? (said.since ?? said.comes) : undefined);
  if (minutes === undefined) return by;
  const { start, end } = said;
  const others = by.event.times.filter((time) => time.end <= start && time.kind !== 'spent');
  return {
    ...by,
    event: { ...by.event, times: [...others, { start, end, minutes, kind: 'spent', choice: 0, sure: 'said' }] },
  };
}

/** Without the point that the clock said already. */
export const withoutPoint = (by: BoundEvent, { start, end }: ClockSaid): BoundEvent => ({
  ...by,
  event: {
    ...by.event,
    times: by.event.times.filter((time) => time.kind !== 'point' || time.end <= start || time.start >= end),
  },
});

export interface Passed {
  readonly state: FoldState;
  readonly stays: readonly Stay[];
}

const NONE: readonly Stay[] = [];

/**
 * A point is reached: what was left has lain until then. `by` is what is done there. `isPutAway`: the step goes on to put it in the cold, and
 * the point may be what that is for (`It is better tomorrow, so chill it`).
 */
export function passTo(
  state: FoldState,
  said: ClockSaid,
  by: BoundEvent | undefined,
  at: { part: number; line: number },
  isPutAway: boolean,
): Passed {
  // The day is later than that: `eveEnds`.
  if (said.eve && state.clock === undefined)
    return { state: { ...state, clock: clockAt(undefined, said) }, stays: NONE };
  const known = passed(state.clock, said);
  const minutes = known ?? said.comes;
  const left = minutes && unspent(minutes, state.clock);
  const now: FoldState = { ...state, clock: clockAt(state.clock, said) };
  if (left === undefined || left.high <= 0) return { state: now, stays: NONE };
  if (known === undefined) return laterBy(now, left, isToldWhere, true);
  if (now.open.length === 0)
    return {
      state: now,
      stays: said.since === undefined || by === undefined || isPutAway ? NONE : asked(now, left, by, at),
    };
  // From one part of a day to another.
  return laterBy(now, left, () => true, left.high - left.low > VAGUE_MIN);
}

/** `The night before, boil it and leave it on the side`: what a step leaves somewhere, with no word of for how long, waits there until the day. */
export function eveEnds(state: FoldState, { since }: ClockSaid, at: { part: number; line: number }): Passed {
  const isOfStep = (stay: Stay): boolean =>
    !stay.timed && stay.part === at.part && stay.line === at.line && isToldWhere(stay);
  if (since === undefined || !state.open.some(isOfStep)) return { state, stays: NONE };
  const passed = laterBy(state, since, isOfStep, true);
  const { clock } = passed.state;
  return {
    stays: passed.stays,
    state: { ...passed.state, clock: clock && { ...clock, spent: longerBy(clock.spent, since) } },
  };
}

const VAGUE_MIN = 180;

/** Words say where it was left. */
const isToldWhere = ({ by: { event, unnamed }, lies }: Stay): boolean =>
  lies.sure === 'said' ||
  event.where.length > 0 ||
  event.act === 'adjust' ||
  // `Leave the pot where it is.`
  (event.act === 'stay' && unnamed === 'vessel' && event.as === 'ordered');

/** The state once the stays that are open have been so long, of those that are asked for. */
function laterBy(now: FoldState, left: Range, isMeant: (stay: Stay) => boolean, vague: boolean): Passed {
  const told = new Map(
    now.open.map((stay) => [stay, isMeant(stay) ? longer(stay, left, isLast(now, stay), vague) : stay]),
  );
  const bodies = now.bodies.map((body) => {
    const stay = body.waits && told.get(body.waits);
    return stay === undefined
      ? body
      : { ...body, waits: stay, warmMin: stay.warmMin, warmSure: weakest(body.warmSure, stay.sure) };
  });
  const stays = [...told].flatMap(([stay, later]) => (later === stay ? [] : [later]));
  return { state: { ...now, bodies, open: [...told.values()] }, stays };
}

/** Whether it is put in the cold, and is cold then. */
export const putsAway = ({ event }: BoundEvent): boolean =>
  event.said === 'yes' &&
  (event.act === 'freeze' ||
    event.where.some(({ is, not }) => !not && (is === 'cold' || is === 'frozen')) ||
    (event.act === 'cool' && event.temperatures.some(({ of, celsius }) => of === 'food' && celsius.high <= COLD_C)));
/** Cold food, rounded (Food Code 2022, 3-501.16). */
const COLD_C = 5.6;

const isLast = ({ bodies }: FoldState, stay: Stay): boolean => bodies.some(({ waits }) => waits === stay);

/** The stay, so much longer. Of what was taken up since, somebody may have eaten. */
function longer(stay: Stay, minutes: Range, isLast: boolean, vague: boolean): Stay {
  const whole = stay.timed ? longerBy(stay.minutes, minutes) : minutes;
  const { body, lies } = stay;
  return {
    ...stay,
    minutes: whole,
    timed: true,
    ...(vague && { vague }),
    sure: isLast ? lies.sure : weakest(lies.sure, 'inferred'),
    warmMin: isWarm(lies) ? longerBy(body.warmMin, whole) : body.warmMin,
    // One that only the clock opened was never said.
    ...(stay.warmMin !== OPEN && { told: stay }),
  };
}

/** What was hot, and of which nobody says where it was until the next day. */
function asked(
  { bodies }: FoldState,
  minutes: Range,
  by: BoundEvent,
  at: { part: number; line: number },
): readonly Stay[] {
  return bodies.filter(isLeftHot).map((body) => ({
    by,
    ...at,
    body,
    lies: { place: undefined, celsius: ANYWHERE, sure: 'unread' },
    minutes,
    timed: true,
    sure: 'unread',
    branch: false,
    warmMin: longerBy(body.warmMin, minutes),
  }));
}

const isLeftHot = ({ band, lies, members, shut }: Body): boolean =>
  band === 'hot' &&
  shut !== 'jar' &&
  (lies.place === 'stove' || lies.place === 'oven') &&
  members.every(({ state }) => state.cooked !== 'raw' || (state.was & WAS.animal) === 0) &&
  members.every(({ state }) => (state.was & WAS.eaten) === 0);

/** The stays that the clock may end, once this one begins; what lies in the cold, or for a time that is said, ends those before. */
export function openWith(open: readonly Stay[], stay: Stay): readonly Stay[] {
  const others = open.length === 0 ? open : withoutFood(open, stay.body);
  return stay.timed || stay.branch || !isWarm(stay.lies) ? others : [...others, stay];
}

/** Without those of a body that is heated. */
export function withoutFood(open: readonly Stay[], body: Body): readonly Stay[] {
  return open.some((stay) => sharesFood(stay.body, body)) ? open.filter((stay) => !sharesFood(stay.body, body)) : open;
}

/** What is done at a point of the clock and is no heat begins a stay where the food is out of the cold: `the tray goes out at eleven`. */
export function begun(state: FoldState, by: BoundEvent, at: { part: number; line: number }): FoldState {
  if (BEGINS_NOTHING.has(by.event.act)) return state;
  let { open } = state;
  for (const body of state.bodies) {
    const { lies, band } = body;
    const isOut = lies.place !== undefined && OUT.has(lies.place) && band !== 'cold' && band !== 'frozen';
    if (!isOut || !state.focus.includes(body.id)) continue;
    open = [...withoutFood(open, body), openStay(body, lies, by, at)];
  }
  return open === state.open ? state : { ...state, open };
}

/** A stay with no word of for how long, that only the clock may tell of. */
export const openStay = (body: Body, lies: Lying, by: BoundEvent, at: { part: number; line: number }): Stay => ({
  by,
  ...at,
  body,
  lies,
  minutes: OPEN,
  timed: false,
  sure: 'inferred',
  branch: false,
  warmMin: OPEN,
});

const BEGINS_NOTHING: ReadonlySet<Act> = new Set([
  'heat',
  'adjust',
  'ready',
  'read',
  'cut',
  'combine',
  'discard',
  'shape',
]);
const OUT: ReadonlySet<PlaceKind> = new Set(['room', 'outdoors', 'warm']);
const OPEN: Range = { low: 0, high: Infinity };

/** What is done in no time, whatever stands beside it. */
const spends = ({ act, lasts }: BoundEvent['event']): boolean => act === 'heat' || LASTS.has(act) || lasts !== 'no';

/** With the minutes that an event spends. */
export function spending(state: FoldState, { event }: BoundEvent): FoldState {
  const { clock } = state;
  const minutes =
    clock === undefined || event.said !== 'yes' || event.times.length === 0 || !spends(event)
      ? undefined
      : minutesOf(event);
  if (clock === undefined || minutes === undefined || !Number.isFinite(minutes.high)) return state;
  return { ...state, clock: { ...clock, spent: longerBy(clock.spent, minutes) } };
}
