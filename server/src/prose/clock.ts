/**
 * Knows which points of the clock and of the week a sentence says: `at eight`, `half past two`, `0700`, `after supper`, `Thursday morning`, `Day 2`.
 * Refuses to know how long anything lasts, which is `times.ts`, and every word: they are the rows of `times.tsv` and the numbers of `measure`.
 */
import type { Range } from '../measure/quantity.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';
import { Faces, type Hour } from './faces.ts';
import { LEAST_AHEAD_MIN } from './from-to.ts';
import { sensesOf, timeOf } from './lexicon.ts';
import type { NameRun } from './pieces.ts';
import type { TimeRow } from './rows.ts';
import { IN_NAME } from './time-amounts.ts';

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
const DAY_MIN = 1440;

/** The points that a sentence says, in order; none begins in a name. */
export const clocksIn = (items: readonly SentenceItem[], runs: readonly NameRun[]): readonly ClockSaid[] => {
  const found = clockRunsIn(items, runs, sensesOf(items));
  return found.length === 0 ? NONE : found.map(({ said }) => said);
};

/** The items that say one point; `to` is the item after the last. */
export interface ClockRun {
  readonly from: number;
  readonly to: number;
  readonly said: ClockSaid;
}

const NO_RUNS: readonly ClockRun[] = [];

/** The same by item; `words` are the senses of the items. */
export function clockRunsIn(
  items: readonly SentenceItem[],
  runs: readonly NameRun[],
  words: readonly number[],
): readonly ClockRun[] {
  const senses = [...words];
  for (const { from, to } of runs) senses.fill(IN_NAME, from, to);
  let found: ClockRun[] | undefined;
  const reader = new ClockReader(items, senses);
  for (let at = 0; at < items.length; ) {
    const clock = reader.at(at);
    if (clock === undefined) {
      at++;
      continue;
    }
    found ??= [];
    found.push({ from: at, to: clock.to, said: clock.said });
    at = clock.to;
  }
  return found ?? NO_RUNS;
}

interface FoundDay {
  readonly day: ClockDay;
  readonly to: number;
  readonly since?: Range;
}

class ClockReader extends Faces {
  private endsAt(at: number): boolean {
    const item = this.items[at];
    return item === undefined || item.kind === 'mark';
  }

  at(at: number): { readonly said: ClockSaid; readonly to: number } | undefined {
    if (!this.mayBegin(at) || this.items[at]?.kind === 'duration') return undefined;
    const day = this.dayAt(at);
    if (day !== undefined) {
      const to = this.pastComma(day.to);
      // `Tuesday after supper`
      const hour = this.hourAt(to, false) ?? (this.isPlaced(to + 1) ? this.hourAt(to + 1, false) : undefined);
      return this.made(at, hour?.to ?? day.to, day, hour);
    }
    const hour = this.hourAt(at, true);
    if (hour === undefined) return undefined;
    // `By noon tomorrow`; but `from eight in the morning` is today.
    const isFrom = this.rowAt(at - 1)?.is === 'between';
    const after = isFrom ? undefined : this.dayAt(hour.to);
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
        // `On a Friday,` is one.
        return (this.isFree(end) && (!this.isArticle(at - 1) || this.endsAt(end))) || this.rowAt(end)?.is === 'hour'
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
        return count === undefined || !this.isFree(end + 1)
          ? undefined
          : { day: { of: 'plan', day: count }, to: end + 1 };
      }
    }
    return undefined;
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
    const isHour = hour.sure || hand !== undefined || !isFirst || (this.isPlaced(at) && this.isFree(hour.to));
    return isHour ? { ...hour, low: hour.low + added, high: hour.high + added } : undefined;
  }
}
