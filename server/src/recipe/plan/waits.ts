/**
 * Knows how long what a step leaves may wait, and be as good and as safe; and after which steps it may wait for days.
 * Refuses to know what a plan makes of it.
 */
import type { Act, Event, PlaceKind } from '../../prose/event.ts';

export const DAY_MIN = 1440;

/** What lies warm, or raw on the worktop: two hours of the four that a time without heat or cold may be (Food Code 3-501.19; judgement). */
const ON_THE_SIDE_MIN = 120;
/** A joint that has rested, or a dish at the table's side, keeps warm for 20 to 40 min (common practice, no source): the safe end. */
const WARM_MIN = 20;
/** A dough that has risen falls, whipped egg weeps: they go on at once. */
const AT_ONCE_MIN = 0;
/** In the cold a dough hardly rises any more: it waits for half as long again as it was given (judgement). */
const COLD_RISE_SHARE = 0.5;
/** What is cold is as good a day later (judgement); longer where the recipe says so, and no longer than the Food Code's week at 5 °C. */
const COLD_DAYS = 1;
const MOST_DAYS = 7;
/** Colder than this it is kept cold, °C. */
const COLD_C = 8;
/** Shorter than this a cold rest is none to leave it after (judgement). */
const LEAST_REST_MIN = 15;

const COLD: ReadonlySet<PlaceKind | undefined> = new Set<PlaceKind>(['cold', 'frozen']);

/** It lies in the cold by then; a cool box that keeps a joint at 65 °C is none. */
export const isInTheCold = ({ where, temperatures }: Event): boolean =>
  !temperatures.some(({ of, celsius }) => of !== 'nothing' && celsius.high > COLD_C) &&
  (temperatures.some(({ of }) => of === 'around') ||
    where.some(({ is, way, not }) => COLD.has(is) && (way === 'at' || way === 'to') && !not));

const COOLS: ReadonlySet<Act> = new Set<Act>(['cool', 'freeze']);
const RESTS: ReadonlySet<Act> = new Set<Act>(['cool', 'freeze', 'stay', 'steep', 'put']);

/** Days for which it may lie there before the next step; 0 where it must go on the same day. `isHot`: it comes from the heat. */
export function daysAhead(event: Event, minutes: number, saidDays: number, isHot: boolean): number {
  // What is only left somewhere, hot, may be kept so.
  if (isHot && !COOLS.has(event.act)) return 0;
  if (!RESTS.has(event.act) || !isInTheCold(event) || minutes < LEAST_REST_MIN) return 0;
  return Math.min(MOST_DAYS, Math.max(COLD_DAYS, saidDays));
}

/** Whole days for which the recipe says that something keeps in the cold. */
export function daysSaid(events: readonly Event[]): number {
  const days = events.flatMap((event) =>
    isInTheCold(event)
      ? event.times.flatMap(({ kind, minutes }) => (kind === 'life' ? Math.floor(minutes.low / DAY_MIN) : []))
      : [],
  );
  return Math.max(0, ...days);
}

export interface InPlan {
  readonly event: Event;
  /** Likely, and at the most. */
  readonly minutes: number;
  readonly most: number;
  readonly days: number;
  /** Nothing but a rest is between it and the table. */
  readonly isServedSo: boolean;
  /** It was hot when it began. */
  readonly isHot: boolean;
  readonly isWaiting: boolean;
}

/** Minutes. */
export function mayWait({ event, minutes, most, days, isServedSo, isHot, isWaiting }: InPlan): number {
  // Within the time that the recipe gives itself it waits anyway.
  const slack = isWaiting && Number.isFinite(most) ? Math.max(0, most - minutes) : 0;
  // What lies about by then has used up some of its time.
  const isCold = isInTheCold(event);
  const lain = isWaiting && !isCold ? minutes : 0;
  return Math.max(slack, days * DAY_MIN, base(event, isCold, isServedSo, isHot, minutes) - lain, 0);
}

function base({ act, craft }: Event, isCold: boolean, isServedSo: boolean, isHot: boolean, minutes: number): number {
  if (act === 'rise' && isCold) return minutes * COLD_RISE_SHARE;
  if (act === 'rise' || craft === 'whip') return AT_ONCE_MIN;
  if (act === 'heat' && isServedSo) return WARM_MIN;
  return act === 'stay' && isHot ? minutes + WARM_MIN : ON_THE_SIDE_MIN;
}
