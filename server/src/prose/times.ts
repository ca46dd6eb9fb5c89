/**
 * Knows how a time is said: number and unit, numbers in words, parts of the day, horizons, bounds, and what stands between two of them.
 * Refuses to know whose time it is, and every word: they are the rows of `times.tsv` and the units and numbers of `measure`.
 */
import type { Range } from '../measure/quantity.ts';
import { baseOf, unitSpelled } from '../measure/unit.ts';
import type { MeasuredNode, SentenceItem } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import type { Per, TimeKind } from './event.ts';
import { jointOf, longerSense, mayBeTime, sensesOf, timeOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { FoundTime, NameRun } from './pieces.ts';
import type { TimeRole, TimeRow } from './rows.ts';

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

/** The sense of what lies in a name: nothing begins or goes on there. */
const IN_NAME = -1;

/** Minutes as far as they are read, and what follows them. */
interface Core extends Range {
  readonly to: number;
  /** Minutes of one of its unit. */
  readonly unitMin: number;
  /** Two ends are said. */
  readonly ranged?: boolean;
  readonly kind?: TimeKind | undefined;
}

interface Count extends Range {
  readonly to: number;
  /** `a`, `an` */
  readonly article?: boolean;
  /** A part of one: `half`, `3/4`. */
  readonly part?: boolean;
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
}

/** As much of a part of the day as `all` of it is at least (judgement). */
const LEAST_OF_ALL = 0.5;
/** Of the clock: a meal is no part of the day that something lasts. */
const LEAST_PART_H = 4;
const KG = 1000;

class Reader {
  private readonly items: readonly SentenceItem[];
  private readonly senses: readonly number[];
  /** Behind the row that `rowAt` found last. */
  private end = 0;
  /** What `rowAt` found, by item, and behind which. */
  private readonly rows: (TimeRow | undefined)[] = [];
  private readonly ends: number[] = [];
  /** Of the last time. */
  private unitMin = 1;

  constructor(items: readonly SentenceItem[], senses: readonly number[]) {
    this.items = items;
    this.senses = senses;
    for (let at = 0; at < senses.length; at++) {
      this.rows.push(undefined);
      this.ends.push(0);
    }
  }

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

  /** The longest row that begins at an item. */
  private rowAt(at: number): TimeRow | undefined {
    if (at >= this.senses.length) return undefined;
    const known = this.ends[at];
    if (known !== undefined && known > 0) this.end = known;
    else this.find(at);
    return this.rows[at];
  }

  private find(at: number): void {
    const { senses } = this;
    let sense = senses[at] as number;
    let row: TimeRow | undefined;
    this.end = at + 1;
    if (sense > UNKNOWN) {
      row = timeOf(sense);
      for (let i = at + 1; i < senses.length; i++) {
        const item = this.items[i];
        if (item?.kind !== 'word' || senses[i] === IN_NAME) break;
        sense = longerSense(sense, item.word);
        if (sense === UNKNOWN) break;
        const longer = timeOf(sense);
        if (longer !== undefined) {
          row = longer;
          this.end = i + 1;
        }
      }
    }
    this.rows[at] = row;
    this.ends[at] = this.end;
  }

  /** The item behind a row of one of these roles; undefined where none stands there. */
  private past(at: number, ...roles: readonly TimeRole[]): number | undefined {
    const row = this.rowAt(at);
    return row !== undefined && roles.includes(row.is) ? this.end : undefined;
  }

  private wordAt(at: number): string {
    const item = this.items[at];
    return item?.kind === 'word' && this.senses[at] !== IN_NAME ? item.word : '';
  }

  private markAt(at: number): string {
    const item = this.items[at];
    return item?.kind === 'mark' ? item.mark : '';
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
    const time = { minutes, kind: kind ?? 'spent', ...(per && { per }), orElse: false, ...(before && { before }) };
    return { from, to: at, time };
  }

  private prefixAt(from: number): Prefix {
    const prefix: Prefix = { to: from, low: 1, high: 1, kind: undefined, whole: false, between: false, any: false };
    for (;;) {
      const row = this.rowAt(prefix.to);
      if (row === undefined) break;
      if (row.is === 'between') prefix.between = true;
      else if (row.is === 'share') prefix.whole = true;
      else if (row.is !== 'bound' && row.is !== 'either') break;
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
    return row?.is === 'span' ? coreOf(row.range, this.end, row.kind === 'spent' ? undefined : row.kind) : undefined;
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

  private pastArticle(at: number): number {
    const word = this.wordAt(at);
    return word !== '' && jointOf(this.senses[at] as number)?.is === 'article' && numberInWord(word) === undefined
      ? at + 1
      : at;
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

  /** A number and its unit, with all that belongs to it: `an hour and a half`, `2 to 3 days`. */
  private amountAt(at: number, withAnd: boolean): Core | undefined {
    let core = this.unitsAt(at, withAnd);
    if (core === undefined) return undefined;
    core = this.behindUnit(core) ?? core;
    return this.rangeFrom(core, withAnd) ?? core;
  }

  private unitsAt(at: number, withAnd: boolean): Core | undefined {
    const item = this.items[at];
    if (item?.kind === 'duration')
      return {
        low: item.lowMin,
        high: item.highMin,
        to: at + 1,
        unitMin: item.unitMin,
        ranged: item.lowMin < item.highMin,
      };
    const many = this.rowAt(at);
    if (many?.is === 'number') {
      const { end } = this;
      // `some 20 minutes`
      const isUnit = this.rowAt(end)?.is === 'unit';
      return (
        this.unitsAt(end, withAnd) ?? (many.range && isUnit ? this.timesUnit({ ...many.range, to: end }) : undefined)
      );
    }
    const count = this.countAt(at);
    if (count === undefined) return undefined;
    return this.timesUnit(count) ?? this.upToNext(count, withAnd);
  }

  /** So many of the unit that follows: `half an hour`, `two good hours`. */
  private timesUnit(count: Count): Core | undefined {
    let at = this.past(count.to, 'of') ?? count.to;
    if (count.part && numberInWord(this.wordAt(at))?.article) at++;
    at = this.past(at, 'full', 'either') ?? at;
    const longest = this.rowAt(at);
    // `half a day before`
    const word = timeOf(Math.max(this.senses[at] ?? UNKNOWN, UNKNOWN));
    const row = longest?.is !== 'unit' && word?.is === 'unit' ? word : longest;
    const to = row === longest ? this.end : at + 1;
    // `for an afternoon`, `two winters`
    const part = row === undefined || count.part ? undefined : wholeOf(row);
    // `a spring onion` and `an afternoon tea` are none.
    const isNoun = count.article && (row?.is === 'horizon' || !this.isBare({ ...count, to }));
    if (part !== undefined && row?.is !== 'unit' && !isNoun)
      return { low: count.low * part.low, high: count.high * part.high, to, unitMin: part.low };
    if (row?.is !== 'unit' || row.range === undefined) return undefined;
    // `a second layer` is no time.
    if (count.article && row.range.low * 60 === 1) return undefined;
    const one = count.part ? (row.all ?? row.range) : row.range;
    return {
      low: count.low * one.low,
      high: count.high * one.high,
      to,
      unitMin: row.range.low,
      ranged: count.low < count.high,
    };
  }

  /** `two or three hours`, `2 to 3 days`: the unit stands behind the second. */
  private upToNext(count: Count, withAnd: boolean): Core | undefined {
    const at = this.pastJoin(count.to, withAnd);
    if (at === undefined) return undefined;
    const next = this.unitsAt(at, false);
    if (next === undefined || next.unitMin * count.high > next.high) return undefined;
    return { ...next, low: count.low * next.unitMin, ranged: true };
  }

  /** Behind what joins the two ends of a range. */
  private pastJoin(at: number, withAnd: boolean): number | undefined {
    if (DASHES.has(this.markAt(at))) return at + 1;
    const row = this.rowAt(at);
    if (row === undefined) return undefined;
    return row.is === 'to' || row.is === 'joins' || (withAnd && row.is === 'and') ? this.end : undefined;
  }

  /** `and a half`, `or two`, `and twenty minutes`; undefined where nothing of the kind follows. */
  private behindUnit(core: Core): Core | undefined {
    const { unitMin } = core;
    const and = this.past(core.to, 'and');
    if (and !== undefined) {
      const part = this.countAt(and);
      if (part?.part && this.timesUnit(part) === undefined)
        return { ...core, low: core.low + part.low * unitMin, high: core.high + part.high * unitMin, to: part.to };
    }
    const or = this.past(core.to, 'joins');
    const other = or === undefined ? undefined : this.countAt(or);
    if (other !== undefined && !other.article && !other.part && this.isBare(other))
      return { ...core, high: Math.max(core.high, other.high * unitMin), to: other.to, ranged: true };
    // `1 h 30`
    const bare = unitMin === 60 ? this.countAt(core.to) : undefined;
    if (bare !== undefined && this.items[core.to]?.kind === 'measured' && bare.high < 60 && this.isBare(bare))
      return { ...core, low: core.low + bare.low, high: core.high + bare.high, to: bare.to };
    const less = this.unitsAt(and ?? core.to, false);
    return less !== undefined && less.unitMin < unitMin && less.high < unitMin && core.high - core.low < unitMin
      ? { ...core, low: core.low + less.low, high: core.high + less.high, to: less.to }
      : undefined;
  }

  /** Nothing that it could count follows the number. */
  private isBare({ to }: Count): boolean {
    const item = this.items[to];
    if (item === undefined || item.kind === 'mark') return true;
    if (item.kind !== 'word' || this.rowAt(to)?.is === 'unit') return false;
    const sense = this.senses[to] as number;
    return (jointOf(sense) ?? verbOf(sense)) !== undefined;
  }

  /** `20 minutes to half an hour`, `50 minutes to 1 hour`, `2 h up to overnight` */
  private rangeFrom(core: Core, withAnd: boolean): Core | undefined {
    let at = DASHES.has(this.markAt(core.to)) ? core.to + 1 : this.past(core.to, 'to');
    if (withAnd) at ??= this.past(core.to, 'and');
    if (at === undefined) return undefined;
    const end = this.unitsAt(at, false) ?? this.spanAt(at);
    const last = end && (this.behindUnit(end) ?? end);
    return last === undefined || last.high < core.high
      ? undefined
      : { low: core.low, high: last.high, to: last.to, unitMin: core.unitMin, ranged: true };
  }

  private spanAt(at: number): Core | undefined {
    const row = this.rowAt(at);
    return row?.is === 'span' && row.kind === 'spent' ? coreOf(row.range, this.end, undefined) : undefined;
  }

  /** A number in figures or words: `2`, `two and a half`, `three quarters`, `a couple`, `a few`, `half a dozen`. */
  private countAt(at: number): Count | undefined {
    const item = this.items[at];
    if (item?.kind === 'measured') return isNumber(item) ? this.withPart(plain(item, at + 1)) : undefined;
    const word = this.wordAt(at);
    const first = word === '' ? undefined : numberInWord(word);
    if (first === undefined) return undefined;
    const second = numberInWord(this.wordAt(at + 1));
    if (first.article) {
      if (second !== undefined && (second.lot || second.part || second.low < second.high))
        return { ...second, part: second.part === true, to: at + 2 };
      return { low: 1, high: 1, to: at + 1, article: true };
    }
    if (first.part) {
      const lot = second?.article ? numberInWord(this.wordAt(at + 2)) : undefined;
      return lot?.lot
        ? { low: first.low * lot.low, high: first.high * lot.high, to: at + 3 }
        : { low: first.low, high: first.high, to: at + 1, part: true };
    }
    if (second?.part) return { low: first.low * second.low, high: first.high * second.high, to: at + 2, part: true };
    if (second?.lot) {
      const hundreds = { low: first.low * second.low, high: first.high * second.high, to: at + 2 };
      const rest = this.countAt(this.past(at + 2, 'and') ?? at + 2);
      return rest === undefined || rest.article || rest.part || rest.high >= second.low
        ? hundreds
        : { low: hundreds.low + rest.low, high: hundreds.high + rest.high, to: rest.to };
    }
    // `twenty four`
    if (second !== undefined && first.low % 10 === 0 && first.low >= 20 && second.high < 10 && !second.article)
      return this.withPart({ low: first.low + second.low, high: first.high + second.high, to: at + 2 });
    return this.withPart({ low: first.low, high: first.high, to: at + 1 });
  }

  /** `two and a half`, `one and one half` */
  private withPart(count: Count): Count {
    if (count.part) return count;
    const and = this.past(count.to, 'and');
    const part = and === undefined ? undefined : this.countAt(and);
    return part?.part ? { low: count.low + part.low, high: count.high + part.high, to: part.to } : count;
  }

  /** `per pound`, `a lb`, `for each 500 g`: the grams that a time is for. */
  private weightAt(from: number): { readonly grams: number; readonly to: number } | undefined {
    const row = this.rowAt(from);
    const at = row?.is === 'per' ? this.end : numberInWord(this.wordAt(from))?.article ? from + 1 : undefined;
    if (at === undefined) return undefined;
    const item = this.items[at];
    if (item?.kind === 'measured') {
      const grams = (baseOf(item.quantity.unit ?? '%', 'us') ?? 0) * item.quantity.low;
      return item.unit !== undefined && unitSpelled(item.unit.symbol)?.dimension === 'mass' && grams > 0
        ? { grams, to: at + 1 }
        : undefined;
    }
    const unit = unitSpelled(this.wordAt(at));
    const grams = unit?.dimension === 'mass' ? baseOf(unit.symbol, 'us') : undefined;
    return grams === undefined ? undefined : { grams, to: at + 1 };
  }

  /** `2 hours, up to 2 days`: a limit right behind a time is its end. */
  private withLimit(run: TimeRun): TimeRun {
    const { minutes, kind } = run.time;
    if (kind !== 'spent') return run;
    const at = this.markAt(run.to) === ',' ? run.to + 1 : (this.past(run.to, 'joins', 'and') ?? run.to);
    const limit = this.runAt(at);
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

/** Minutes of all of what a row names: of a part of the day, a season, a service. */
function wholeOf({ is, range, all }: TimeRow): Range | undefined {
  if (is === 'horizon') return all;
  if (is !== 'hour' || range === undefined || range.high - range.low < LEAST_PART_H) return undefined;
  return scaled({ low: LEAST_OF_ALL, high: 1 }, (range.high - range.low) * 60);
}

const DASHES: ReadonlySet<string> = new Set(['-', '–', '—']);
/** On the face of a clock. */
const HOURS = 12;
const DAY: Range = { low: 1440, high: 1440 };
/** From when somebody is up until they sleep, or all of it. */
const WHOLE_DAY: Range = { low: 480, high: 1440 };
const NEXT_DAY: Range = { low: 720, high: 1440 };
const WEEK: Range = { low: 10080, high: 10080 };

const scaled = ({ low, high }: Range, by: number): Range => ({ low: low * by, high: high * by });

const coreOf = (range: Range | undefined, to: number, kind: TimeKind | undefined): Core | undefined =>
  range && { ...range, to, unitMin: range.low, kind };

const ranged = (core: Core | undefined): Core | undefined => (core?.ranged ? core : undefined);

/** A number and nothing that it counts. */
export const isNumber = ({ quantity: { unit, size, count, each, upTo } }: MeasuredNode): boolean =>
  unit === undefined && size === undefined && count === undefined && each === undefined && upTo === undefined;

const plain = ({ quantity: { low, high } }: MeasuredNode, to: number): Count => ({ low, high, to, part: high < 1 });
