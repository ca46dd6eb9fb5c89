/**
 * Knows how a time is said: number and unit, numbers in words, parts of the day, horizons, bounds, and what stands between two of them.
 * Refuses to know whose time it is, and every word: they are the rows of `times.tsv` and the units and numbers of `measure`.
 */
import type { Range } from '../measure/quantity.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import type { Per, TimeKind } from './event.ts';
import { mayBeTime, sensesOf, timeOf, UNKNOWN } from './lexicon.ts';
import type { FoundTime, NameRun } from './pieces.ts';
import {
  Amounts,
  type Core,
  coreOf,
  DAY,
  HOURS,
  IN_NAME,
  NEXT_DAY,
  ranged,
  scaled,
  WEEK,
  WHOLE_DAY,
  wholeOf,
} from './time-amounts.ts';

/** The items that say one time; `to` is the item after the last. */
export interface TimeRun {
  readonly from: number;
  readonly to: number;
  readonly time: FoundTime;
}

const NONE: readonly TimeRun[] = [];

/** The times that a sentence says, in order; none begins in a name. */
export function timesIn(
  items: readonly SentenceItem[],
  runs: readonly NameRun[],
  words: readonly number[] = sensesOf(items),
): readonly TimeRun[] {
  let may = false;
  for (let at = 0; at < items.length && !may; at++)
    may = items[at]?.kind === 'duration' || mayBeTime(words[at] ?? UNKNOWN) || isHourAfter(words[at - 1], items[at]);
  if (!may) return NONE;
  const senses = [...words];
  for (const { from, to } of runs) senses.fill(IN_NAME, from, to);
  return new Reader(items, senses).all();
}

/** `till five` */
function isHourAfter(before: number | undefined, item: SentenceItem | undefined): boolean {
  if (before === undefined || timeOf(before)?.kind !== 'until') return false;
  return item?.kind === 'measured' || (item?.kind === 'word' && numberInWord(item.word) !== undefined);
}

/** What stands before a time. */
interface Prefix {
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

const isOver = (a: Range, b: Range): boolean => a.low <= b.high && b.low <= a.high;

/** Grams. */
const KG = 1000;

class Reader extends Amounts {
  /** Of the last time. */
  private unitMin = 1;

  all(): readonly TimeRun[] {
    const runs: TimeRun[] = [];
    for (let at = 0; at < this.items.length; ) {
      const run = this.runAt(at);
      if (run === undefined) at = this.past(at, 'none') ?? at + 1;
      else {
        const last = this.withLimit(run);
        runs.push(last);
        at = last.to;
        for (let next = this.secondAt(at); next !== undefined; next = this.secondAt(at)) {
          runs.push(next);
          at = next.to;
        }
      }
    }
    return runs;
  }

  private runAt(from: number): TimeRun | undefined {
    const prefix = this.prefixAt(from);
    const core = this.coreAt(prefix);
    if (core === undefined) return undefined;
    let { low, high } = prefix;
    let kind = prefix.kind ?? core.kind;
    let at = core.to;
    let per: Per | undefined;
    let before = false;
    let perKg = 1;
    for (;;) {
      const weight = this.weightAt(at);
      if (weight !== undefined) {
        per = 'kg';
        perKg = KG / weight.grams;
        at = weight.to;
        continue;
      }
      const row = this.rowAt(at);
      if (row === undefined) break;
      if (row.is === 'none') return undefined;
      if (row.is === 'per' && row.per !== 'kg') per = row.per;
      else if (row.is === 'behind' || row.is === 'either') {
        low *= row.range?.low ?? 1;
        high *= row.range?.high ?? 1;
        kind = row.kind ?? kind;
      } else {
        before = row.is === 'mark' || (row.is === 'bound' && row.kind === 'point');
        break;
      }
      at = this.end;
    }
    // `at least 2 h and up to 24`: its end is said.
    if (core.ranged && high === Number.POSITIVE_INFINITY) high = 1;
    const minutes = { low: core.low * low * perKg, high: core.high * high * perKg };
    this.unitMin = core.unitMin;
    // `at 20 min per 500 g`: so long it takes.
    if (per === 'kg' && kind === 'point') kind = 'spent';
    // `some time after supper`
    if (before && core.unitMin === core.low && core.low < core.high && kind === 'spent') kind = 'point';
    const time = {
      minutes,
      kind: kind ?? 'spent',
      ...(per && { per }),
      orElse: false,
      ...(before && { before }),
      ...((prefix.within || core.within) && { within: true }),
    };
    return { from, to: at, time };
  }

  private prefixAt(from: number): Prefix {
    const prefix: Prefix = {
      to: from,
      low: 1,
      high: 1,
      kind: undefined,
      whole: false,
      between: false,
      any: false,
      within: false,
    };
    for (;;) {
      const row = this.rowAt(prefix.to);
      if (row === undefined) break;
      if (row.is === 'between') prefix.between = true;
      else if (row.is === 'share') prefix.whole = true;
      else if (row.is !== 'bound' && row.is !== 'either' && row.is !== 'point' && row.is !== 'within') break;
      prefix.within = row.is === 'within';
      prefix.low *= row.range?.low ?? 1;
      prefix.high *= row.range?.high ?? 1;
      prefix.kind = row.kind ?? prefix.kind;
      prefix.any = true;
      prefix.to = this.end;
      // Behind `until` stands what it waits for.
      if (row.kind === 'until') break;
    }
    return prefix;
  }

  /** The time itself, behind what stands before it. */
  private coreAt(prefix: Prefix): Core | undefined {
    const { whole, between, any, kind } = prefix;
    const at = any ? this.pastArticle(prefix.to) : prefix.to;
    if (kind === 'until')
      return this.horizonAt(prefix.to) ?? this.horizonAt(at) ?? this.clockAt(at) ?? this.beforeAt(at);
    if (between) return this.fromTo(at) ?? ranged(this.amountAt(at, true));
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
    return count !== undefined && count.low >= 2 && this.isBare(count)
      ? { ...NEXT_DAY, to: count.to, unitMin: DAY.low, kind: 'point' }
      : undefined;
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
  private oneAt(at: number, { any, kind, whole }: Prefix): Core | undefined {
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
      case 'hour':
        return coreOf(row.all, this.end, undefined);
      case 'day':
        return coreOf(row.all, this.pastHour(this.end), undefined);
      case 'horizon':
      case 'next':
        return coreOf(row.range, this.end, undefined);
    }
    return undefined;
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
    return row?.is === 'clock' ? coreOf(row.all, this.end, undefined) : undefined;
  }

  /** `from Friday to Monday`, `from lunch until dinner`, `from 9 am to 5 pm` */
  private fromTo(at: number): Core | undefined {
    const from = this.hourAt(at);
    if (from === undefined) return this.fromNumber(at);
    const row = this.rowAt(from.to);
    if (row === undefined || (row.is !== 'to' && row.is !== 'and' && row.kind !== 'until')) return undefined;
    const to = this.hourAt(this.pastArticle(this.end));
    if (to === undefined || to.round !== from.round) return undefined;
    let low = to.low - from.high;
    let high = to.high - from.low;
    if (low <= 0) low += from.round;
    if (high < low) high += from.round;
    return { ...scaled({ low, high }, from.unitMin), to: to.to, unitMin: from.unitMin, ranged: true };
  }

  /** `from nine till five`: hours, since `until` stands between them. */
  private fromNumber(at: number): Core | undefined {
    const from = this.countAt(at);
    const until = from && this.rowAt(from.to)?.kind === 'until' ? this.end : undefined;
    const to = until === undefined ? undefined : this.countAt(until);
    if (from === undefined || to === undefined || !this.isBare(to)) return undefined;
    const [a, b] = [from.low % HOURS, to.low % HOURS];
    const hours = b > a ? b - a : b - a + HOURS;
    return { low: hours * 60, high: hours * 60, to: to.to, unitMin: 60, ranged: true };
  }

  /** An hour of the clock, of 24, or a day of the week, of 7. */
  private hourAt(at: number): (Core & { readonly round: number }) | undefined {
    const row = this.rowAt(at);
    if (row?.range !== undefined && (row.is === 'hour' || row.is === 'day'))
      return row.is === 'hour'
        ? { ...row.range, to: this.end, unitMin: 60, round: 24 }
        : { ...row.range, to: this.pastHour(this.end), unitMin: DAY.low, round: 7 };
    const count = this.countAt(at);
    const clock = count && this.rowAt(count.to);
    if (count === undefined || clock?.is !== 'clock') return undefined;
    const hour = (count.low % HOURS) + (clock.range?.low ?? 0);
    return { low: hour, high: hour, to: this.end, unitMin: 60, round: 24 };
  }

  /** `2 hours, up to 2 days`: a limit right behind a time is its end. */
  private withLimit(run: TimeRun): TimeRun {
    const { minutes, kind } = run.time;
    if (kind !== 'spent') return run;
    const at = this.markAt(run.to) === ',' ? run.to + 1 : (this.past(run.to, 'joins', 'and') ?? run.to);
    const limit = this.runAt(at);
    // `the 12 hours till morning`: until then it is so long.
    if (limit?.time.kind === 'until' && at === run.to && isOver(limit.time.minutes, minutes))
      return { ...run, to: limit.to };
    if (limit?.time.kind !== 'limit' || limit.time.minutes.high < minutes.low) return run;
    return {
      ...run,
      to: limit.to,
      time: { ...run.time, minutes: { low: minutes.low, high: limit.time.minutes.high } },
    };
  }

  /** What goes on from a time: another choice, or `, 4 on the other`. */
  private secondAt(at: number): TimeRun | undefined {
    return this.choiceAt(at) ?? this.otherAt(this.markAt(at) === ',' ? at + 1 : (this.past(at, 'and') ?? at));
  }

  /** `5 minutes on one side, 4 on the other` */
  private otherAt(from: number): TimeRun | undefined {
    const count = this.countAt(from);
    const to = count === undefined ? undefined : this.past(count.to, 'other');
    return count !== undefined && to !== undefined
      ? { from, to, time: { minutes: scaled(count, this.unitMin), kind: 'spent', orElse: false } }
      : undefined;
  }

  /** `or overnight`, `, preferably overnight` */
  private choiceAt(at: number): TimeRun | undefined {
    const isSlash = this.markAt(at) === '/';
    const from = isSlash || this.markAt(at) === ',' ? at + 1 : at;
    const to = isSlash ? from : this.past(from, 'joins');
    const run = to === undefined ? undefined : this.runAt(to);
    return run && { from, to: run.to, time: { ...run.time, orElse: true } };
  }
}
