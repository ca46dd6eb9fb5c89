/**
 * Knows how long it is from one point of the clock or the week to another: `from Friday to Monday`, `lunch until dinner`, `ten at night till six`.
 * Refuses to know amounts of time, and what a time is for.
 */
import type { Range } from '../measure/quantity.ts';
import { FACE, Faces } from './faces.ts';
import { jointOf, timeOf, UNKNOWN } from './lexicon.ts';
import type { TimeRow } from './rows.ts';
import { type Core, DAY, isNumber, NEXT_DAY, scaled } from './time-amounts.ts';

/** A point: hours of the clock, after midnight above 24, or a day of the week, or both. */
interface Point {
  readonly day: number | undefined;
  readonly hours: Range | undefined;
  /** Only the face of the clock is known. */
  readonly ofTwelve: boolean;
  /** It can be nothing else. */
  readonly sure: boolean;
  /** It is said to be of the next day. */
  readonly ahead: boolean;
  readonly to: number;
}

const DAY_H = 24;
/** Of what happens at a point, before its figure. */
const MOST_WORDS = 5;
const WEEK_D = 7;
/** `This evening` is the same day; from here on a row that stands for the next is ahead. */
export const LEAST_AHEAD_MIN = 300;
/** A night of the clock (judgement). */
const NIGHT: Range = { low: 20, high: 30 };
/** A night is shorter than a day, and longer than an hour. */
export const isNight = ({ is, range, all }: TimeRow): boolean =>
  is === 'unit' && all === undefined && range !== undefined && range.low >= 480 && range.high < DAY.low;

/** Reads what lies between two points, beside amounts and hours. */
export class Points extends Faces {
  /** Behind `from`, or, where both points can be nothing else, without it: `bedtime to breakfast`. */
  protected fromTo(at: number, alone = false): Core | undefined {
    const next = alone ? undefined : this.oneToNext(at);
    if (next !== undefined) return next;
    const both = this.bothAt(at);
    if (both !== undefined) return both;
    const from = this.pointAt(at);
    if (from === undefined || (alone && !from.sure)) return undefined;
    const joint = this.jointTo(from.to);
    if (joint === undefined || (alone && joint.is === 'and')) return undefined;
    const isUntil = joint.kind === 'until';
    const { end } = this;
    const hand = this.rowAt(this.pastArticle(end));
    // `from seven until half past`
    if (hand?.is === 'hand' && from.hours !== undefined && this.faceAt(this.end) === undefined) {
      const past = ((hand.range?.low ?? 0) - (from.hours.low % 1) + 1) % 1;
      return past === 0
        ? undefined
        : { ...scaled({ low: past, high: past }, 60), to: this.end, unitMin: 60, ranged: true };
    }
    const to = (isUntil ? this.pointOf(end) : undefined) ?? this.pointAt(end);
    if (to === undefined || (alone && !to.sure)) return undefined;
    // `from 6 to 8`: of what, the words behind it say.
    if (!isUntil && !from.sure && !to.sure) return undefined;
    const hours = apart(from, to);
    return hours && { ...scaled(hours, 60), to: to.to, unitMin: 60, ranged: true };
  }

  /** `until we unlock at 7`, `until lunch at 1`: the figure tells when that is. */
  private pointOf(from: number): Point | undefined {
    for (let at = from; at < from + MOST_WORDS && this.items[at]?.kind === 'word'; at++) {
      const joint = jointOf(this.senses[at] ?? UNKNOWN);
      if (joint?.is === 'preposition' && joint.way === 'at' && joint.adds.length > 0) return this.pointAt(at + 1);
    }
    return undefined;
  }

  /** What stands between two points: `to`, `until`, `and`; `to the` is one word of it here. */
  private jointTo(at: number): TimeRow | undefined {
    const row = this.rowAt(at);
    if (row?.is === 'to' || row?.is === 'and' || row?.kind === 'until') return row;
    const word = timeOf(Math.max(this.senses[at] ?? UNKNOWN, UNKNOWN));
    this.end = at + 1;
    return word?.is === 'to' ? word : undefined;
  }

  /** `from 6.00 to 6.30 pm`: two figures in one. */
  private bothAt(at: number): Core | undefined {
    const item = this.items[at];
    if (item?.kind !== 'measured' || !isNumber(item)) return undefined;
    const { low, high } = item.quantity;
    if (low >= high || high > DAY_H || this.rowAt(at + 1)?.is !== 'clock') return undefined;
    const [from, to] = [low, high].map((face) => Math.floor(face) + ((face % 1) * 100) / 60) as [number, number];
    return { ...scaled({ low: to - from, high: to - from }, 60), to: this.end, unitMin: 60, ranged: true };
  }

  /** `from one morning to the next` */
  private oneToNext(at: number): Core | undefined {
    const count = this.countAt(at);
    const row = count && count.low === 1 && count.high === 1 ? this.rowAt(count.to) : undefined;
    if (row?.range === undefined || (row.is !== 'hour' && row.is !== 'unit' && row.is !== 'day')) return undefined;
    const from = this.end;
    if (this.jointTo(from) === undefined) return undefined;
    let { end } = this;
    const next = this.rowAt(end);
    if (next?.is === 'bound' && next.kind === undefined) end = this.end;
    // `To the next` may be one word.
    else if (end < from + 3) return undefined;
    if (this.rowAt(end) !== undefined) return undefined;
    const spread = row.is === 'hour' ? (row.range.high - row.range.low) * 60 : 0;
    const each = row.is === 'unit' && !isNight(row) ? row.range : row.is === 'day' ? scaled(DAY, WEEK_D) : DAY;
    return { low: each.low - spread, high: each.high + spread, to: end, unitMin: 60, ranged: true };
  }

  /** `early afternoon`, `well past midnight`, `the end of lunch service`, `nine at night`, `half past six`, `Sunday lunch`. */
  private pointAt(from: number): Point | undefined {
    const at = this.pastArticle(from);
    const row = this.rowAt(at);
    const { end } = this;
    switch (row?.is) {
      case 'edge': {
        const of = this.pointAt(end);
        return of?.hours === undefined ? undefined : { ...of, hours: narrowed(of.hours, row), sure: true };
      }
      case 'bound':
        // `from about eight`
        return row.kind === undefined ? this.pointAt(end) : undefined;
      case 'day': {
        const hour = this.pointAt(end);
        const isOwn = hour?.hours !== undefined && hour.day === undefined;
        return {
          day: row.range?.low,
          hours: isOwn ? hour.hours : undefined,
          ofTwelve: isOwn && hour.ofTwelve,
          sure: true,
          ahead: false,
          to: isOwn ? hour.to : end,
        };
      }
      case 'hour':
        return this.made(row.range, false, true, end);
      case 'unit':
        return isNight(row) ? this.made(NIGHT, false, false, end) : undefined;
      case 'hand': {
        const face = this.faceAt(end);
        const added = row.range?.low ?? 0;
        return face && this.made({ low: face.low + added, high: face.high + added }, face.ofTwelve, true, face.to);
      }
    }
    const face = this.faceAt(at);
    if (face === undefined || (!face.sure && !this.isFree(face.to))) return undefined;
    const part = this.rowAt(face.to);
    const to = part?.is === 'next' && part.all !== undefined ? this.end : face.to;
    return this.made(face, face.ofTwelve, face.sure, to, part);
  }

  /** With what is said of its day. */
  private made(hours: Range | undefined, ofTwelve: boolean, sure: boolean, to: number, part?: TimeRow): Point {
    const row = this.rowAt(to);
    const isNext = row?.is === 'next';
    // `in the morning` says which half of the day it is, and may be today's.
    const ahead =
      ((isNext ? row : part?.is === 'next' ? part : undefined)?.range?.low ?? 0) >=
      (isNext ? LEAST_AHEAD_MIN : NEXT_DAY.low);
    return { day: undefined, hours, ofTwelve, sure, ahead, to: isNext ? this.end : to };
  }
}

/** The share of a part of the day, and the hours beside it. */
function narrowed({ low, high }: Range, { range, all }: TimeRow): Range {
  const long = high - low;
  return {
    low: low + long * (range?.low ?? 0) + (all?.low ?? 0),
    high: low + long * (range?.high ?? 1) + (all?.high ?? 0),
  };
}

/** Hours from one point to the other, at the least and the most; undefined where nobody can tell. */
function apart(from: Point, to: Point): Range | undefined {
  if (from.day !== undefined || to.day !== undefined) return daysApart(from, to);
  const [a, b] = [from.hours, to.hours];
  if (a === undefined || b === undefined) return undefined;
  const wide = a.high - a.low + b.high - b.low;
  if (from.ofTwelve || to.ofTwelve) {
    const low = (b.low - a.high + 3 * FACE) % FACE;
    return low + wide === 0 ? { low: FACE, high: FACE } : { low, high: low + wide };
  }
  let low = b.low - a.high;
  let high = b.high - a.low;
  if (high <= 0 || to.ahead || (a.low === b.low && a.high === b.high)) {
    // Over midnight; but `six the next morning` is no further than that.
    const isOver = high <= 0 || b.low >= a.low;
    low += isOver ? DAY_H : 0;
    high += isOver ? DAY_H : 0;
  }
  return { low: Math.max(low, 0), high };
}

function daysApart(from: Point, to: Point): Range | undefined {
  if (from.day === undefined || to.day === undefined) return undefined;
  const days = (to.day - from.day + WEEK_D) % WEEK_D;
  const [a, b] = [from.hours, to.hours];
  if (a === undefined || b === undefined) return days === 0 ? undefined : scaled({ low: days, high: days }, DAY_H);
  const low = days * DAY_H + b.low - a.high;
  const high = days * DAY_H + b.high - a.low;
  return high <= 0 ? { low: low + WEEK_D * DAY_H, high: high + WEEK_D * DAY_H } : { low: Math.max(low, 0), high };
}
