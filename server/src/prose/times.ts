/**
 * Knows how a time is said: number and unit, numbers in words, parts of the day, horizons, bounds, and what stands between two of them.
 * Refuses to know whose time it is, and every word: they are the rows of `times.tsv` and the units and numbers of `measure`.
 */
import type { Range } from '../measure/quantity.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import type { Per, TimeKind } from './event.ts';
import { LEAST_AHEAD_MIN, Points } from './from-to.ts';
import { mayBeTime, sensesOf, timeOf, UNKNOWN } from './lexicon.ts';
import type { FoundTime, NameRun } from './pieces.ts';
import { type Core, coreOf, DAY, IN_NAME, NEXT_DAY, ranged, scaled, WEEK, WHOLE_DAY, wholeOf } from './time-amounts.ts';

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

/** `till five`, `from 22:00` */
function isHourAfter(before: number | undefined, item: SentenceItem | undefined): boolean {
  const row = before === undefined ? undefined : timeOf(before);
  if (row?.kind !== 'until' && row?.is !== 'between') return false;
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

const EMPTY: Prefix = {
  to: 0,
  low: 1,
  high: 1,
  kind: undefined,
  whole: false,
  between: false,
  any: false,
  within: false,
};

/** Grams. */
const KG = 1000;
const DAY_H = 24;
/** Of the clock: what waits until the next day was cooked between these (judgement). */
const FIRST_COOKED_H = 12;
const LAST_COOKED_H = 21;

class Reader extends Points {
  /** Of the last time. */
  private unitMin = 1;

  all(): readonly TimeRun[] {
    const runs: TimeRun[] = [];
    for (let at = 0; at < this.items.length; ) {
      if (!this.mayBegin(at)) {
        at++;
        continue;
      }
      const run = this.runAt(at);
      // `fry 5 minutes on one side; turn and fry 4 on the other`
      const other = run === undefined && runs.length > 0 ? this.otherAt(at) : undefined;
      if (other !== undefined) {
        runs.push(other);
        at = other.to;
      } else if (run === undefined) at = this.past(at, 'none') ?? at + 1;
      else {
        const last = this.withLater(this.withLimit(run));
        const before = runs.at(-1);
        const same = before && this.saidAgain(before, last);
        if (same !== undefined) runs[runs.length - 1] = same;
        else runs.push(last);
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
    const more = { low: 0, high: 0 };
    for (let next = this.andWhole(at, prefix, core); next !== undefined; next = this.andWhole(at, prefix, core)) {
      more.low += next.low;
      more.high += next.high;
      at = next.to;
    }
    // `at least 2 h and up to 24`: its end is said.
    if (core.ranged && high === Number.POSITIVE_INFINITY) high = 1;
    const minutes = { low: core.low * low * perKg + more.low, high: core.high * high * perKg + more.high };
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

  /** `all afternoon and evening`, `throughout the day and into the night`: one after the other. */
  private andWhole(at: number, { whole, kind }: Prefix, { unitMin }: Core): Core | undefined {
    const and = whole && unitMin > 1 ? this.past(at, 'and') : undefined;
    if (and === undefined) return undefined;
    const share = this.past(and, 'share') ?? and;
    return this.spanAt(and) ?? this.oneAt(this.pastArticle(share), { ...EMPTY, any: true, whole: true, kind });
  }

  private prefixAt(from: number): Prefix {
    const prefix: Prefix = { ...EMPTY, to: from };
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

  /** `until supper, seven hours later`: so long it is until then. */
  private withLater(run: TimeRun): TimeRun {
    if (run.time.kind === 'point') return run;
    const at = this.markAt(run.to) === ',' ? run.to + 1 : run.to;
    const later = this.amountAt(at, false);
    const row = later && this.rowAt(later.to);
    return later === undefined || row?.is !== 'behind' || row.kind !== 'point'
      ? run
      : { ...run, to: this.end, time: { ...run.time, kind: 'spent', minutes: { low: later.low, high: later.high } } };
  }

  /** `overnight, about ten hours`, `while you are out all day`: the same time said twice, the first with no figure. */
  private saidAgain(before: TimeRun, { from, to, time }: TimeRun): TimeRun | undefined {
    const { minutes, kind, orElse } = before.time;
    const isBeside = from === before.to || (from === before.to + 1 && this.markAt(before.to) === ',');
    const first = this.items[before.from];
    const isWord = first?.kind === 'duration' ? first.overnight : this.rowAt(before.from)?.is === 'span';
    const isVague = isWord === true && minutes.low < minutes.high;
    if (!isBeside || !isVague || kind !== 'spent' || time.kind !== 'spent' || orElse || time.orElse) return undefined;
    const low = Math.max(minutes.low, time.minutes.low);
    const high = Math.min(minutes.high, time.minutes.high);
    return low > high ? undefined : { from: before.from, to, time: { ...before.time, minutes: { low, high } } };
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
    const low = this.countAt(from);
    // `six to eight on the second`
    const join = low && this.pastJoin(low.to, false);
    const high = (join === undefined ? undefined : this.countAt(join)) ?? low;
    const to = high && this.past(high.to, 'other');
    return low !== undefined && high !== undefined && to !== undefined
      ? {
          from,
          to,
          time: { minutes: scaled({ low: low.low, high: high.high }, this.unitMin), kind: 'spent', orElse: false },
        }
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
