/**
 * Knows how long a time is by its own words: an amount, a span, one of a unit, a part of the day, until a horizon or an hour of the clock.
 * Refuses to know what bounds it, and what follows (`times.ts`).
 */
import type { Range } from '../measure/quantity.ts';
import { numberInWord } from '../notation/words.ts';
import type { TimeKind } from './event.ts';
import { LEAST_AHEAD_MIN, Points } from './from-to.ts';
import { type Core, coreOf, DAY, NEXT_DAY, ranged, WEEK, WHOLE_DAY, wholeOf } from './time-amounts.ts';

/** What stands before a time. */
export interface Prefix {
  to: number;
  low: number;
  high: number;
  kind: TimeKind | undefined;
  /** Of what follows all, or a share of all. */
  whole: boolean;
  /** Two ends follow. */
  between: boolean;
  any: boolean;
  /** It may be done much sooner. */
  within: boolean;
}

const DAY_H = 24;
/** Of the clock: what waits until the next day was cooked between these (judgement). */
const FIRST_COOKED_H = 12;
const LAST_COOKED_H = 21;

/** Reads the time itself, behind what stands before it. */
export class Lengths extends Points {
  /** The time itself, behind what stands before it. */
  protected coreAt(prefix: Prefix): Core | undefined {
    const { whole, between, any, kind } = prefix;
    const at = any ? this.pastArticle(prefix.to) : prefix.to;
    if (kind === 'until')
      return this.horizonAt(prefix.to) ?? this.horizonAt(at) ?? this.clockAt(at) ?? this.beforeAt(at);
    if (between) return this.fromTo(at) ?? ranged(this.amountAt(at, true));
    const sure = any && prefix.kind !== undefined ? undefined : this.fromTo(at, true);
    if (sure !== undefined) return sure;
    return (
      this.rowCoreAt(prefix.to) ??
      (any ? undefined : this.dayOfPlan(at)) ??
      (whole ? this.wholeAt(at) : undefined) ??
      this.amountAt(at, false) ??
      this.oneAt(at, prefix)
    );
  }

  /** `Day 2:`, behind what was done the day before. */
  private dayOfPlan(at: number): Core | undefined {
    const row = this.rowAt(at);
    if (row?.is !== 'unit' || row.range?.low !== DAY.low || this.items[at + 1]?.kind !== 'measured') return undefined;
    const count = this.countAt(at + 1);
    if (count === undefined || count.low < 2 || !this.isBare(count)) return undefined;
    // `Date the lids day 12`: the first is the day that it is made.
    const isCounted = at > 0 && this.items[at - 1]?.kind === 'word';
    const range = isCounted ? { low: (count.low - 1) * DAY.low, high: count.high * DAY.low } : NEXT_DAY;
    return { ...range, to: count.to, unitMin: DAY.low, kind: 'point' };
  }

  /** A time of its own words: `overnight`, `the next day`. */
  private rowCoreAt(at: number): Core | undefined {
    const row = this.rowAt(at);
    if (row?.is === 'next') return coreOf(row.range, this.end, row.kind);
    if (row?.is !== 'span') return undefined;
    const core = coreOf(row.range, this.end, row.kind === 'spent' ? undefined : row.kind);
    // `within the hour`
    return core && row.kind === 'limit' ? { ...core, within: true } : core;
  }

  /** `the best part of a day` */
  private wholeAt(at: number): Core | undefined {
    const row = numberInWord(this.wordAt(at))?.article ? this.rowAt(at + 1) : undefined;
    return row?.is === 'unit' ? coreOf(row.all ?? row.range, this.end, undefined) : undefined;
  }

  /** One of a unit, or a part of the day, without a number. */
  protected oneAt(at: number, { any, kind, whole }: Prefix): Core | undefined {
    const row = this.rowAt(at);
    if (row === undefined) return undefined;
    const to = this.end;
    switch (row.is) {
      case 'unit': {
        if (!any || (row.range?.high ?? 0) < 1) return undefined;
        const one = coreOf(whole ? (row.all ?? row.range) : row.range, to, undefined);
        return one === undefined || whole ? one : (this.behindUnit(one) ?? one);
      }
      case 'hour':
        if (kind === 'every') return coreOf(DAY, to, undefined);
        return whole ? coreOf(wholeOf(row), to, undefined) : undefined;
      case 'day':
        if (kind === 'every') return coreOf(WEEK, to, undefined);
        return whole ? coreOf(WHOLE_DAY, to, undefined) : undefined;
      case 'horizon':
        return whole ? coreOf(wholeOf(row), to, undefined) : undefined;
    }
    return undefined;
  }

  /** What `until` waits for. */
  private horizonAt(at: number): Core | undefined {
    const row = this.rowAt(at);
    switch (row?.is) {
      case 'hour': {
        const { end } = this;
        return this.nextDay(end, row.range) ?? coreOf(row.all, end, undefined);
      }
      case 'day':
        return coreOf(row.all, this.pastHour(this.end), undefined);
      case 'horizon': {
        const { end } = this;
        return this.nextDay(end, undefined) ?? coreOf(row.range, this.pastFrom(end), undefined);
      }
      case 'next':
        return coreOf(row.range, this.end, undefined);
    }
    return undefined;
  }

  /** `until lunch the next day`, `until you get up the next morning`. */
  private nextDay(at: number, hours: Range | undefined): Core | undefined {
    const row = this.rowAt(at);
    if (
      row?.is !== 'next' ||
      row.range === undefined ||
      row.range.low < LEAST_AHEAD_MIN ||
      row.range.high > DAY.high * 1.5
    )
      return undefined;
    const range =
      hours === undefined
        ? row.range
        : { low: (DAY_H + hours.low - LAST_COOKED_H) * 60, high: (DAY_H + hours.high - FIRST_COOKED_H) * 60 };
    return coreOf(range, this.end, undefined);
  }

  /** `home from a full day at work`: how long that was tells nothing. */
  private pastFrom(at: number): number {
    const from = this.past(at, 'between');
    return from === undefined ? at : (this.amountAt(from, false)?.to ?? at);
  }

  /** `Saturday supper`, `Thursday morning` */
  private pastHour(at: number): number {
    return this.past(at, 'hour') ?? at;
  }

  /** `until 2 hours before serving`: nobody knows how long that is. */
  private beforeAt(at: number): Core | undefined {
    const amount = this.amountAt(at, false);
    return amount !== undefined && this.past(amount.to, 'mark') !== undefined
      ? { low: 0, high: Number.POSITIVE_INFINITY, to: amount.to, unitMin: amount.unitMin }
      : undefined;
  }

  /** `until 6 pm` */
  private clockAt(at: number): Core | undefined {
    const count = this.countAt(at);
    if (count === undefined) return undefined;
    const row = this.rowAt(count.to);
    // `until six the next morning`
    if (row?.is === 'next' && row.all !== undefined) return coreOf(row.range, this.end, undefined);
    return row?.is === 'clock' ? coreOf(row.all, this.end, undefined) : undefined;
  }
}
