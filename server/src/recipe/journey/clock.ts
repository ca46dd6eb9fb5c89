/**
 * Knows how long it is from one point of the clock to the next: `at eight … about one`, `Thursday supper … Saturday morning`.
 * Refuses to know words, and whom the time is given to (`fold.ts`).
 */
import type { Range } from '../../measure/quantity.ts';
import type { ClockDay, ClockSaid } from '../../prose/clock.ts';
import { FACE } from '../../prose/faces.ts';

/** When it is, as far as the steps say. */
export interface Clock {
  readonly day: ClockDay | undefined;
  readonly hours: Range | undefined;
  readonly ofTwelve: boolean;
  /** Minutes that steps said were spent since. */
  readonly spent: Range;
}

const HOUR = 60;
const DAY_H = 24;
const WEEK = 7;
const NO_TIME: Range = { low: 0, high: 0 };
const ANY_HOUR: Range = { low: 0, high: DAY_H };
/** Nobody goes on before dawn (judgement). */
const ANY_LATER: Range = { low: 5, high: DAY_H };

/** Minutes until a point is reached, at the least and the most; undefined where nobody can tell from when on. */
export function passed(before: Clock | undefined, now: ClockSaid): Range | undefined {
  if (before === undefined) return now.since;
  const days = daysTo(before.day, now.day);
  if (now.day !== undefined && days === undefined) return now.since;
  const from = before.hours ?? ANY_HOUR;
  if (days === undefined || days === 0) {
    if (before.hours === undefined || now.hours === undefined) return now.since;
    const hours = sameDay(before, now, from, now.hours);
    return hours && inMinutes(hours);
  }
  const to = now.hours ?? ANY_LATER;
  return inMinutes({
    low: Math.max(0, days * DAY_H + to.low - from.high - (before.ofTwelve ? FACE : 0)),
    high: days * DAY_H + to.high + (now.ofTwelve ? FACE : 0) - from.low,
  });
}

const inMinutes = ({ low, high }: Range): Range => ({ low: low * HOUR, high: high * HOUR });

/** Hours to a later time, of the same day or over midnight. */
function sameDay(before: Clock, now: ClockSaid, from: Range, to: Range): Range | undefined {
  if (before.ofTwelve || now.ofTwelve) {
    const low = (to.low - from.high + 2 * FACE) % FACE;
    const high = low + to.high - to.low + from.high - from.low;
    return high === 0 ? undefined : { low, high };
  }
  if (to.low < from.high && to.high > from.low) return { low: 0, high: to.high - from.low };
  const over = to.low < from.low ? DAY_H : 0;
  return { low: Math.max(0, to.low - from.high + over), high: to.high - from.low + over };
}

function daysTo(before: ClockDay | undefined, now: ClockDay | undefined): number | undefined {
  if (now === undefined) return undefined;
  if (now.of === 'ahead') return now.day;
  if (before?.of !== now.of) return undefined;
  return now.of === 'week' ? (now.day - before.day + WEEK) % WEEK : Math.max(0, now.day - before.day);
}

/** The clock, once a point is reached. */
export function clockAt(before: Clock | undefined, { day, hours, ofTwelve }: ClockSaid): Clock {
  const ahead = day?.of === 'ahead' ? day.day : 0;
  const isOver =
    day === undefined && before?.hours !== undefined && hours !== undefined && hours.high < before.hours.low;
  const added = isOver && !ofTwelve && !before.ofTwelve ? 1 : ahead;
  const now = day === undefined || ahead > 0 ? before?.day && { ...before.day, day: before.day.day + added } : day;
  const isSameDay = now?.day === before?.day?.day && ahead === 0;
  return {
    day: now,
    hours: hours ?? (isSameDay ? before?.hours : undefined),
    ofTwelve: hours === undefined ? before?.ofTwelve === true && isSameDay : ofTwelve,
    spent: NO_TIME,
  };
}

export const isSameClock = (a: Clock | undefined, b: Clock | undefined): boolean =>
  a === b ||
  (a !== undefined &&
    b !== undefined &&
    a.day?.of === b.day?.of &&
    a.day?.day === b.day?.day &&
    a.hours?.low === b.hours?.low &&
    a.hours?.high === b.hours?.high &&
    a.ofTwelve === b.ofTwelve &&
    a.spent.low === b.spent.low &&
    a.spent.high === b.spent.high);

/** What of it no step has said was spent. */
export const unspent = ({ low, high }: Range, clock: Clock | undefined): Range => ({
  low: Math.max(0, low - (clock?.spent.high ?? 0)),
  high: Math.max(0, high - (clock?.spent.low ?? 0)),
});
