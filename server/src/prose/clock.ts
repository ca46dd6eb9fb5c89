/**
 * Knows which points of the clock and of the week a sentence says: `at eight`, `half past two`, `0700`, `after supper`, `Thursday morning`, `Day 2`.
 * Refuses to know how long anything lasts, which is `times.ts`, and every word: they are the rows of `times.tsv` and the numbers of `measure`.
 */
import type { Range } from '../measure/quantity.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import { isTimeAlone, jointOf, longerSense, sensesOf, timeOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { NameRun } from './pieces.ts';
import type { TimeRow } from './rows.ts';
import { isNumber } from './time-amounts.ts';

export interface ClockDay {
  /** Of the week (1 to 7), of a plan (`Day 2`), or so many days after what was said before. */
  readonly of: 'week' | 'plan' | 'ahead';
  readonly day: number;
}

/** A point in time. At least one of day and hours is known. */
export interface ClockSaid extends Span {
  readonly day: ClockDay | undefined;
  /** Hours, from 0 to 24, between which it lies. */
  readonly hours: Range | undefined;
  /** Only the face of the clock is known: morning or evening. */
  readonly ofTwelve: boolean;
  /** `until`, `by`: it may be an end. */
  readonly until: boolean;
  /** Minutes since what was done last, where that is all that is known: `next morning`. */
  readonly since?: Range;
}

const NONE: readonly ClockSaid[] = [];
/** Of the clock's face. */
export const FACE = 12;
const DAY_MIN = 1440;
/** `This evening` is the same day; from here on a row that stands for the next is ahead. */
const LEAST_AHEAD_MIN = 300;

/** The points that a sentence says, in order; none begins in a name. */
export function clocksIn(items: readonly SentenceItem[], runs: readonly NameRun[]): readonly ClockSaid[] {
  const senses = [...sensesOf(items)];
  for (const { from, to } of runs) senses.fill(UNKNOWN, from, to);
  let found: ClockSaid[] | undefined;
  const reader = new ClockReader(items, senses);
  for (let at = 0; at < items.length; ) {
    const clock = reader.at(at);
    if (clock === undefined) {
      at++;
      continue;
    }
    found ??= [];
    found.push(clock.said);
    at = clock.to;
  }
  return found ?? NONE;
}

interface Hour extends Range {
  readonly ofTwelve: boolean;
  readonly to: number;
  /** It can be nothing else than an hour. */
  readonly sure: boolean;
}

interface FoundDay {
  readonly day: ClockDay;
  readonly to: number;
  readonly since?: Range;
}

class ClockReader {
  private readonly items: readonly SentenceItem[];
  private readonly senses: readonly number[];
  /** Behind the row that `rowAt` found last. */
  private end = 0;

  constructor(items: readonly SentenceItem[], senses: readonly number[]) {
    this.items = items;
    this.senses = senses;
  }

  at(at: number): { readonly said: ClockSaid; readonly to: number } | undefined {
    const item = this.items[at];
    if (item?.kind !== 'measured' && item?.kind !== 'word') return undefined;
    const day = this.dayAt(at);
    if (day !== undefined) {
      const to = this.pastComma(day.to);
      // `Tuesday after supper`
      const hour = this.hourAt(to, false) ?? (this.isPlaced(to + 1) ? this.hourAt(to + 1, false) : undefined);
      return this.made(at, hour?.to ?? day.to, day, hour);
    }
    const hour = this.hourAt(at, true);
    if (hour === undefined) return undefined;
    // `By noon tomorrow`
    const after = this.dayAt(hour.to);
    return this.made(at, after?.to ?? hour.to, after, hour);
  }

  private made(from: number, to: number, day: FoundDay | undefined, hour: Hour | undefined) {
    const { start } = this.items[from] as SentenceItem;
    const { end } = this.items[to - 1] as SentenceItem;
    const hours = hour && { low: hour.low, high: hour.high };
    const until = this.rowBefore(from)?.kind === 'until';
    const said = { start, end, day: day?.day, hours, ofTwelve: hour?.ofTwelve === true, until };
    return { said: day?.since === undefined ? said : { ...said, since: day.since }, to };
  }

  /** The longest row that begins at an item. */
  private rowAt(at: number): TimeRow | undefined {
    let sense = this.senses[at] ?? UNKNOWN;
    if (sense === UNKNOWN) return undefined;
    let row = timeOf(sense);
    this.end = at + 1;
    for (let i = at + 1; i < this.items.length; i++) {
      const item = this.items[i];
      if (item?.kind !== 'word') break;
      sense = longerSense(sense, item.word);
      if (sense === UNKNOWN) break;
      const longer = timeOf(sense);
      if (longer !== undefined) {
        row = longer;
        this.end = i + 1;
      }
    }
    return row;
  }

  private rowBefore(at: number): TimeRow | undefined {
    const before = this.senses[at - 1];
    const row = before === undefined ? undefined : timeOf(before);
    // `until about six`
    return row?.is === 'bound' && row.kind === undefined && at > 1 ? (this.rowBefore(at - 1) ?? row) : row;
  }

  private pastComma(at: number): number {
    const item = this.items[at];
    return item?.kind === 'mark' && item.mark === ',' ? at + 1 : at;
  }

  private dayAt(at: number): FoundDay | undefined {
    const row = this.rowAt(at);
    const { end } = this;
    if (row?.range === undefined) return undefined;
    switch (row.is) {
      case 'day':
        // `Sunday lunch` is an hour of it; `the Sunday roast` is none.
        return (this.isBare(end) && !this.isArticle(at - 1)) || this.rowAt(end)?.is === 'hour'
          ? { day: { of: 'week', day: row.range.low }, to: end }
          : undefined;
      case 'next': {
        const isAhead = row.range.low >= LEAST_AHEAD_MIN && row.range.high < 6 * DAY_MIN;
        return isAhead
          ? { day: { of: 'ahead', day: Math.max(1, Math.round(row.range.high / DAY_MIN)) }, to: end, since: row.range }
          : undefined;
      }
      case 'unit': {
        const count = row.range.low === DAY_MIN && end === at + 1 ? this.numberAt(end) : undefined;
        return count === undefined || !this.isBare(end + 1)
          ? undefined
          : { day: { of: 'plan', day: count }, to: end + 1 };
      }
    }
    return undefined;
  }

  private isArticle(at: number): boolean {
    return jointOf(this.senses[at] ?? UNKNOWN)?.is === 'article';
  }

  private numberAt(at: number): number | undefined {
    const item = this.items[at];
    if (item?.kind === 'measured')
      return isNumber(item) && item.quantity.low === item.quantity.high ? item.quantity.low : undefined;
    if (item?.kind !== 'word' || this.senses[at] === UNKNOWN) return undefined;
    const number = numberInWord(item.word);
    return number === undefined || number.article || number.part || number.lot || number.low < number.high
      ? undefined
      : number.low;
  }

  /** An hour, of a clock or of the day. `isFirst`: no day stands before it, so that a word has to. */
  private hourAt(at: number, isFirst: boolean): Hour | undefined {
    const row = this.rowAt(at);
    const { end } = this;
    if (row?.is === 'hour' && row.range !== undefined)
      return !isFirst || this.isPlaced(at) || this.dayAt(end) !== undefined
        ? { ...row.range, ofTwelve: false, to: end, sure: true }
        : undefined;
    const hand = row?.is === 'hand' ? row.range?.low : undefined;
    const hour = this.faceAt(hand === undefined ? at : end);
    if (hour === undefined) return undefined;
    const added = hand ?? 0;
    const isHour = hour.sure || hand !== undefined || !isFirst || (this.isPlaced(at) && this.isBare(hour.to));
    return isHour ? { ...hour, low: hour.low + added, high: hour.high + added } : undefined;
  }

  /** `eight`, `8`, `8.30 am`, `0700`, `13:45`, `eleven thirty`, `nine o'clock`. */
  private faceAt(at: number): Hour | undefined {
    const number = this.numberAt(at);
    const item = this.items[at];
    if (number === undefined || item === undefined) return undefined;
    // `0700`
    if (number >= 100) {
      const isClock = item.end - item.start === 4 && number < 2400 && number % 100 < 60 && number % 5 === 0;
      const before = this.items[at - 1];
      const joint = jointOf(this.senses[at - 1] ?? UNKNOWN);
      const isAlone = before === undefined || before.kind === 'mark' || joint?.way === 'to' || this.isPlaced(at);
      return isClock && isAlone && this.isBare(at + 1) ? hourOf(number, at + 1, false, true) : undefined;
    }
    const second = this.minutesAt(at, number);
    const to = second?.to ?? at + 1;
    const hours = Math.floor(number) + (second?.minutes ?? 0) / 60;
    if (hours > 24 || hours < 0.5) return undefined;
    const half = this.rowAt(to);
    if (half?.is === 'clock') {
      const added = half.range?.low ?? 0;
      const face = hours >= FACE && half.range !== undefined ? hours - FACE : hours;
      return { low: face + added, high: face + added, ofTwelve: half.range === undefined, to: this.end, sure: true };
    }
    if (number > FACE && second === undefined) return undefined;
    return { low: hours, high: hours, ofTwelve: hours <= FACE, to, sure: second?.sure === true && number > FACE };
  }

  private minutesAt(
    at: number,
    number: number,
  ): { readonly minutes: number; readonly to: number; readonly sure: boolean } | undefined {
    if (!Number.isInteger(number)) {
      const minutes = Math.round((number % 1) * 100);
      return minutes < 60 ? { minutes, to: at + 1, sure: false } : undefined;
    }
    const colon = this.items[at + 1];
    const isColon = colon?.kind === 'mark' && colon.mark === ':' && colon.end - colon.start === 1;
    const minutes = this.numberAt(isColon ? at + 2 : at + 1);
    const isMinutes = minutes !== undefined && minutes >= 10 && minutes < 60 && minutes % 5 === 0;
    return isMinutes ? { minutes, to: isColon ? at + 3 : at + 2, sure: isColon } : undefined;
  }

  /** A word stands before it that an hour follows: `at`, `by`, `until`, `from`, `about`, `after`, `before`. */
  private isPlaced(at: number): boolean {
    const before = this.senses[at - 1] ?? UNKNOWN;
    const joint = jointOf(before);
    // `The noon`, `about the evening`
    if (this.isArticle(at - 1)) return at > 1 && this.isPlaced(at - 1);
    // Of the prepositions only those say when that a figure follows: `at`, `around`.
    if (joint?.is === 'preposition') return (joint.way === 'at' && joint.adds.length > 0) || joint.way === 'by';
    if (joint?.is === 'after' || joint?.is === 'before') return true;
    const row = timeOf(before);
    return (
      row?.is === 'between' ||
      (row?.is === 'bound' && (row.kind === undefined || row.kind === 'until' || row.kind === 'point'))
    );
  }

  /** Nothing that it could count or describe follows. */
  private isBare(to: number): boolean {
    const item = this.items[to];
    if (item === undefined || item.kind === 'mark') return true;
    if (item.kind !== 'word') return false;
    const sense = this.senses[to] as number;
    if (timeOf(sense)?.is === 'unit') return false;
    return (jointOf(sense) ?? verbOf(sense)) !== undefined || isTimeAlone(sense);
  }
}

const hourOf = (number: number, to: number, ofTwelve: boolean, sure: boolean): Hour => {
  const hours = Math.floor(number / 100) + (number % 100) / 60;
  return { low: hours, high: hours, ofTwelve, to, sure };
};
