/**
 * Knows how an amount of time is said: number and unit, numbers in words, halves, ranges of them.
 * Refuses to know what bounds it, of what each it is, horizons and the clock (`times.ts`).
 */
import type { Range } from '../measure/quantity.ts';
import { baseOf, unitSpelled } from '../measure/unit.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import type { TimeKind } from './event.ts';
import { jointOf, senseOf, timeOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { TimeRow } from './rows.ts';
import { TimeRows } from './time-rows.ts';

/** Minutes as far as they are read, and what follows them. */
export interface Core extends Range {
  readonly to: number;
  /** Minutes of one of its unit. */
  readonly unitMin: number;
  /** Two ends are said. */
  readonly ranged?: boolean;
  readonly kind?: TimeKind | undefined;
  /** It may be over much sooner. */
  readonly within?: boolean;
}

export interface Count extends Range {
  readonly to: number;
  /** `a`, `an` */
  readonly article?: boolean;
  /** A part of one: `half`, `3/4`. */
  readonly part?: boolean;
}

/** Reads amounts of time; nothing of what stands before or behind one. */
export class Amounts extends TimeRows {
  /** Nothing that it could count follows the number. */
  protected isBare({ to }: Count): boolean {
    const item = this.items[to];
    if (item === undefined || item.kind === 'mark') return true;
    if (item.kind !== 'word' || this.rowAt(to)?.is === 'unit') return false;
    const sense = this.senses[to] as number;
    return (jointOf(sense) ?? verbOf(sense)) !== undefined;
  }

  /** A number in figures or words: `2`, `two and a half`, `three quarters`, `a couple`, `a few`, `half a dozen`. */
  protected countAt(at: number): Count | undefined {
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
  protected withPart(count: Count): Count {
    if (count.part) return count;
    const and = this.past(count.to, 'and');
    const part = and === undefined ? undefined : this.countAt(and);
    return part?.part ? { low: count.low + part.low, high: count.high + part.high, to: part.to } : count;
  }

  /** `per pound`, `a lb`, `for each 500 g`: the grams that a time is for. */
  protected weightAt(from: number): { readonly grams: number; readonly to: number } | undefined {
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

  protected unitsAt(at: number, withAnd: boolean): Core | undefined {
    const item = this.items[at];
    if (item?.kind === 'duration')
      return {
        low: item.lowMin,
        high: item.highMin,
        to: at + 1,
        unitMin: item.unitMin,
        ranged: item.lowMin < item.highMin,
      };
    const joined = this.joinedAt(at);
    if (joined !== undefined) return joined;
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
    return this.timesUnit(count) ?? this.openUnit(count) ?? this.upToNext(count, withAnd);
  }

  /** `the ten-hour shift`, `an 8-hour day`: as long as its first word says. */
  private joinedAt(at: number): Core | undefined {
    const word = this.wordAt(at);
    const parted = word.indexOf('-');
    let count: Range | undefined;
    let unit: TimeRow | undefined;
    let to = at + 1;
    if (parted > 0) {
      const number = numberInWord(word.slice(0, parted));
      count = number?.article || number?.part ? undefined : number;
      unit = timeOf(senseOf(word.slice(parted + 1)));
    } else if (this.markAt(at + 1) === '-') {
      count = this.countAt(at);
      unit = this.rowAt(at + 2);
      to = this.end;
    }
    if (count === undefined || unit?.is !== 'unit' || unit.range === undefined) return undefined;
    const named = this.past(to, 'unit');
    return named === undefined
      ? undefined
      : { ...scaled(count, unit.range.low), to: named, unitMin: unit.range.low, ranged: count.low < count.high };
  }

  /** So many of the unit that follows: `half an hour`, `two good hours`. */
  protected timesUnit(count: Count): Core | undefined {
    let at = this.past(count.to, 'of') ?? count.to;
    if (count.part && numberInWord(this.wordAt(at))?.article) at++;
    at = this.past(at, 'full', 'either') ?? at;
    const joined = count.article ? this.joinedAt(at) : undefined;
    if (joined !== undefined) return joined;
    const longest = this.rowAt(at);
    // `half a day before`
    const word = timeOf(Math.max(this.senses[at] ?? UNKNOWN, UNKNOWN));
    const row = longest?.is !== 'unit' && word?.is === 'unit' ? word : longest;
    const to = row === longest ? this.end : at + 1;
    // `for an afternoon`, `two winters`
    const part = row === undefined || count.part ? undefined : wholeOf(row);
    // `four summer days`: of what kind they are.
    if (part !== undefined && row?.is !== 'unit' && this.rowAt(to)?.is === 'unit')
      return this.timesUnit({ ...count, to });
    // `a spring onion` and `an afternoon tea` are none.
    const isNoun = count.article && (row?.is === 'horizon' || !this.isBare({ ...count, to }));
    if (part !== undefined && row?.is !== 'unit' && !isNoun)
      return { low: count.low * part.low, high: count.high * part.high, to, unitMin: part.low };
    if (row?.is !== 'unit' || row.range === undefined) return undefined;
    // `a second layer` is no time.
    if (count.article && row.range.low * 60 === 1) return undefined;
    // `half a day` may be one of work; less of it is of all its hours.
    const one = count.part && count.high >= HALF ? (row.all ?? row.range) : row.range;
    return {
      low: count.low * one.low,
      high: count.high * one.high,
      to,
      unitMin: row.range.low,
      ranged: count.low < count.high,
    };
  }

  /** `two or more hours` */
  private openUnit(count: Count): Core | undefined {
    const bound = this.rowAt(count.to);
    const high = bound?.is === 'behind' ? bound.range?.high : undefined;
    const core = high === Number.POSITIVE_INFINITY ? this.timesUnit({ ...count, to: this.end }) : undefined;
    return core && { ...core, high: Number.POSITIVE_INFINITY, ranged: true };
  }

  /** `two or three hours`, `2 to 3 days`: the unit stands behind the second. */
  protected upToNext(count: Count, withAnd: boolean): Core | undefined {
    const at = this.pastJoin(count.to, withAnd);
    if (at === undefined) return undefined;
    const next = this.unitsAt(at, false);
    if (next === undefined || next.unitMin * count.high > next.high) return undefined;
    return { ...next, low: count.low * next.unitMin, ranged: true };
  }

  /** Behind what joins the two ends of a range. */
  protected pastJoin(at: number, withAnd: boolean): number | undefined {
    if (DASHES.has(this.markAt(at))) return at + 1;
    const row = this.rowAt(at);
    if (row === undefined) return undefined;
    return row.is === 'to' || row.is === 'joins' || (withAnd && row.is === 'and') ? this.end : undefined;
  }

  /** `and a half`, `or two`, `and twenty minutes`; undefined where nothing of the kind follows. */
  protected behindUnit(core: Core): Core | undefined {
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

  /** `20 minutes to half an hour`, `50 minutes to 1 hour`, `2 h up to overnight` */
  protected rangeFrom(core: Core, withAnd: boolean): Core | undefined {
    let at = DASHES.has(this.markAt(core.to)) ? core.to + 1 : this.past(core.to, 'to');
    if (withAnd) at ??= this.past(core.to, 'and');
    if (at === undefined) return undefined;
    const end = this.unitsAt(at, false) ?? this.spanAt(at);
    const last = end && (this.behindUnit(end) ?? end);
    return last === undefined || last.high < core.high
      ? undefined
      : { low: core.low, high: last.high, to: last.to, unitMin: core.unitMin, ranged: true };
  }

  protected spanAt(at: number): Core | undefined {
    const row = this.rowAt(at);
    return row?.is === 'span' && row.kind === 'spent' ? coreOf(row.range, this.end, undefined) : undefined;
  }

  /** A number and its unit, with all that belongs to it: `an hour and a half`, `2 to 3 days`. */
  protected amountAt(at: number, withAnd: boolean): Core | undefined {
    let core = this.unitsAt(at, withAnd);
    if (core === undefined) return undefined;
    core = this.behindUnit(core) ?? core;
    return this.rangeFrom(core, withAnd) ?? core;
  }
}

/** As much of a part of the day as `all` of it is at least (judgement). */
const LEAST_OF_ALL = 0.5;
const HALF = 0.5;
/** Of the clock: a meal is no part of the day that something lasts. */
const LEAST_PART_H = 4;

/** Minutes of all of what a row names: of a part of the day, a season, a service. */
export function wholeOf({ is, range, all }: TimeRow): Range | undefined {
  if (is === 'horizon') return all;
  if (is !== 'hour' || range === undefined || range.high - range.low < LEAST_PART_H) return undefined;
  return scaled({ low: LEAST_OF_ALL, high: 1 }, (range.high - range.low) * 60);
}

export const DASHES: ReadonlySet<string> = new Set(['-', '–', '—']);
/** On the face of a clock. */
export const HOURS = 12;
export const DAY: Range = { low: 1440, high: 1440 };
/** From when somebody is up until they sleep, or all of it. */
export const WHOLE_DAY: Range = { low: 480, high: 1440 };
export const NEXT_DAY: Range = { low: 720, high: 1440 };
export const WEEK: Range = { low: 10080, high: 10080 };

export const scaled = ({ low, high }: Range, by: number): Range => ({ low: low * by, high: high * by });

export const coreOf = (range: Range | undefined, to: number, kind: TimeKind | undefined): Core | undefined =>
  range && { ...range, to, unitMin: range.low, kind };

export const ranged = (core: Core | undefined): Core | undefined => (core?.ranged ? core : undefined);

/** A number and nothing that it counts. */
export const isNumber = ({ quantity: { unit, size, count, each, upTo } }: MeasuredNode): boolean =>
  unit === undefined && size === undefined && count === undefined && each === undefined && upTo === undefined;

export const plain = ({ quantity: { low, high } }: MeasuredNode, to: number): Count => ({
  low,
  high,
  to,
  part: high < 1,
});
