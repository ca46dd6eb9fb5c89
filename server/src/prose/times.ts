/**
 * Knows how a time is said: bounds before and behind it, of what each it is, limits, and what stands between two of them.
 * Refuses to know how long the time itself is (`time-lengths.ts`), whose it is, and every word: they are the rows of `times.tsv` and
 * the units and numbers of `measure`.
 */
import type { Range } from '../measure/quantity.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import type { Per } from './event.ts';
import { mayBeTime, sensesOf, timeOf, UNKNOWN } from './lexicon.ts';
import type { FoundTime, NameRun } from './pieces.ts';
import { type Core, scaled } from './time-amounts.ts';
import { Lengths, type Prefix } from './time-lengths.ts';
import { IN_NAME } from './time-rows.ts';

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

class Reader extends Lengths {
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
    // `pressing it under each day` says no bound.
    let { low, high, kind } = core.kind === 'every' ? { ...EMPTY, kind: core.kind } : prefix;
    kind ??= core.kind;
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
    // `until the guests are seated, about 10 minutes`: a figure says how long that is.
    const isFigure = kind === 'until' && time.kind === 'spent' && !time.orElse && this.markAt(before.to) === ',';
    if (isBeside && isFigure && this.isCounted(from))
      return { from: before.from, to, time: { ...before.time, kind: 'spent', minutes: time.minutes } };
    const isWord = first?.kind === 'duration' ? first.overnight : this.rowAt(before.from)?.is === 'span';
    const isVague = isWord === true && minutes.low < minutes.high;
    if (!isBeside || !isVague || kind !== 'spent' || time.kind !== 'spent' || orElse || time.orElse) return undefined;
    const low = Math.max(minutes.low, time.minutes.low);
    const high = Math.min(minutes.high, time.minutes.high);
    return low > high ? undefined : { from: before.from, to, time: { ...before.time, minutes: { low, high } } };
  }

  /** Its words have a number. */
  private isCounted(from: number): boolean {
    const at = this.prefixAt(from).to;
    const item = this.items[at];
    return (item?.kind === 'duration' && !item.overnight) || this.countAt(at) !== undefined;
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
