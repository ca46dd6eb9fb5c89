/**
 * Knows which points of the clock and of the week a sentence says: `at eight`, `half past two`, `0700`, `after supper`, `Thursday morning`, `Day 2`.
 * Refuses to know how long anything lasts, which is `times.ts`, and every word: they are the rows of `times.tsv` and the numbers of `measure`.
 */
import type { Range } from '../measure/quantity.ts';
import { keptOn } from '../notation/kept.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';
import { Faces, type Hour } from './faces.ts';
import { isNight, LEAST_AHEAD_MIN } from './from-to.ts';
import { jointOf, sensesOf, UNKNOWN } from './lexicon.ts';
import type { NameRun } from './pieces.ts';
import type { TimeRow } from './rows.ts';
import { IN_NAME } from './time-rows.ts';

export interface ClockDay {
  /** Of the week (1 to 7), of a plan (`Day 2`), or so many days after what was said before. */
  readonly of: 'week' | 'plan' | 'ahead';
  readonly day: number;
}

/** A point in time. */
export interface ClockSaid extends Span {
  readonly day: ClockDay | undefined;
  /** Hours, from 0 to 24, between which it lies. */
  readonly hours: Range | undefined;
  /** Only the face of the clock is known: morning or evening. */
  readonly ofTwelve: boolean;
  /** `until`, `by`: it may be an end. */
  readonly until: boolean;
  /** `by`: it may be before which something is done. */
  readonly by: boolean;
  /** Minutes since what was done last, where that is all that is known: `next morning`. */
  readonly since?: Range;
  /** What is done then is done before the day, and waits so long: `the night before`. */
  readonly eve?: true;
  /** Minutes until such a point comes, whenever one begins to wait for it: `by the time the shutters come down`. */
  readonly comes?: Range;
}

const NONE: readonly ClockSaid[] = [];
const DAY_MIN = 1440;
const DAY_H = 24;

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
  /** It is somebody too, who does what follows: `the morning crew lifts off the fat`. */
  readonly does: boolean;
  /** It is a clause: `when you come down`. */
  readonly whole?: boolean;
}

const NO_RUNS: readonly ClockRun[] = [];

interface Kept {
  readonly runs: readonly NameRun[];
  readonly found: readonly ClockRun[];
}

const KEPT = keptOn<readonly SentenceItem[], Kept>();

/** The same by item; `words` are the senses of the items. The same list while the names are where they were. */
export function clockRunsIn(
  items: readonly SentenceItem[],
  runs: readonly NameRun[],
  words: readonly number[],
): readonly ClockRun[] {
  let kept = KEPT.get(items);
  if (kept === undefined || !areSame(kept.runs, runs)) {
    kept = { runs, found: foundIn(items, runs, words) };
    KEPT.set(items, kept);
  }
  return kept.found;
}

const areSame = (a: readonly NameRun[], b: readonly NameRun[]): boolean =>
  a.length === b.length && a.every(({ from, to }, i) => from === b[i]?.from && to === b[i]?.to);

function foundIn(
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
    found.push({ from: at, ...clock });
    at = clock.to;
  }
  return found ?? NO_RUNS;
}

interface FoundDay {
  readonly day: ClockDay;
  readonly to: number;
  readonly since?: Range;
  readonly eve?: true | undefined;
  readonly comes?: Range | undefined;
  /** Of its night. */
  readonly hours?: Range;
}

interface FoundHour extends Hour {
  readonly comes?: Range | undefined;
  readonly does?: boolean;
}

/** What is further off is told of no pot that waits. */
const MOST_COMES_MIN = 2 * DAY_MIN;
/** Of what stands before an hour. */
const MOST_WORDS = 5;
/** Of the clock: a night that a day is named of. */
const NIGHT: Range = { low: 18, high: DAY_H };

class ClockReader extends Faces {
  private endsAt(at: number): boolean {
    const item = this.items[at];
    return item === undefined || item.kind === 'mark';
  }

  at(at: number): Omit<ClockRun, 'from'> | undefined {
    if (!this.mayBegin(at) || this.items[at]?.kind === 'duration') return undefined;
    const day = this.dayAt(at);
    if (day !== undefined) {
      const to = this.pastComma(day.to);
      // `Tuesday after supper`
      const hour = this.hourAt(to, false) ?? (this.isPlaced(to + 1) ? this.hourAt(to + 1, false) : undefined);
      return this.made(at, hour?.to ?? day.to, day, hour);
    }
    const hour = this.hourAt(at, true);
    if (hour === undefined) return this.horizonAt(at);
    // `By noon tomorrow`; but `from eight in the morning` is today.
    const isFrom = this.rowAt(at - 1)?.is === 'between';
    const after = isFrom ? undefined : this.dayAt(hour.to);
    return this.made(at, after?.to ?? hour.to, after, hour);
  }

  /** `When you come down`, `before Christmas`, `till the guests arrive`: when that is nobody knows, but how long until then. */
  private horizonAt(at: number): Omit<ClockRun, 'from'> | undefined {
    const row = this.rowAt(at);
    const { end: to } = this;
    if (row?.is !== 'horizon' || row.range === undefined) return undefined;
    const opener = jointOf(this.senses[this.isArticle(at - 1) ? at - 2 : at - 1] ?? UNKNOWN)?.is;
    const isWhen = this.isWhen(at) || opener === 'after';
    if (!isWhen && opener !== 'before') return undefined;
    const { said } = this.made(at, to, undefined, undefined);
    const comes = isWhen && row.range.high <= MOST_COMES_MIN ? { comes: row.range } : undefined;
    return { said: { ...said, ...comes }, to, does: false, whole: true };
  }

  private made(
    from: number,
    to: number,
    day: FoundDay | undefined,
    hour: FoundHour | undefined,
  ): Omit<ClockRun, 'from'> {
    const { start } = this.items[from] as SentenceItem;
    const { end } = this.items[to - 1] as SentenceItem;
    const hours = hour === undefined ? day?.hours : { low: hour.low, high: hour.high };
    const until = this.rowBefore(from)?.kind === 'until';
    const comes = day === undefined ? hour?.comes : day.comes;
    const said: ClockSaid = {
      start,
      end,
      day: day?.day,
      hours,
      ofTwelve: hour?.ofTwelve === true,
      until,
      by: jointOf(this.senses[from - 1] ?? UNKNOWN)?.way === 'by',
      ...(day?.since !== undefined && { since: day.since }),
      ...(day?.eve && { eve: true }),
      ...(comes !== undefined && { comes }),
    };
    return { said, to, does: hour?.does === true };
  }

  /** The row right before an item, of one word or more: `until`, `by the time`, `until about`. */
  private rowBefore(at: number): TimeRow | undefined {
    if (this.isArticle(at - 1)) return this.rowBefore(at - 1);
    for (let from = at - 1; from >= Math.max(0, at - MOST_WORDS); from--) {
      const row = this.rowAt(from);
      if (row === undefined || this.end !== at) continue;
      // `until about six`
      return row.is === 'bound' && row.kind === undefined && from > 0 ? (this.rowBefore(from) ?? row) : row;
    }
    return undefined;
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
      case 'day': {
        const day: ClockDay = { of: 'week', day: row.range.low };
        const next = this.rowAt(end);
        if (next !== undefined && isNight(next)) return { day, to: this.end, comes: row.all, hours: NIGHT };
        // `Sunday lunch` is an hour of it; `the Sunday roast` is none.
        // `On a Friday,` is one, `on the Saturday bring it up` too.
        const isOwn = !this.isArticle(at - 1) || this.endsAt(end) || this.isOn(at - 2);
        return (this.isFree(end) && isOwn) || next?.is === 'hour' ? { day, to: end, comes: row.all } : undefined;
      }
      case 'next': {
        const isAhead = row.range.low >= LEAST_AHEAD_MIN && row.range.high < 6 * DAY_MIN;
        return isAhead
          ? {
              day: { of: 'ahead', day: Math.max(1, Math.round(row.range.high / DAY_MIN)) },
              to: end,
              since: row.range,
              eve: row.eve,
            }
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

  private isOn(at: number): boolean {
    const joint = jointOf(this.senses[at] ?? UNKNOWN);
    return joint?.is === 'preposition' && joint.way === 'at';
  }

  /** `When the lamps are lit`, `by the time the milkman comes`. */
  private isWhen(at: number): boolean {
    if (this.isArticle(at - 1)) return this.isWhen(at - 1);
    return jointOf(this.senses[at - 1] ?? UNKNOWN)?.is === 'when' || this.rowBefore(at)?.kind === 'until';
  }

  /** Nothing of its clause stands before it. */
  private opens(at: number): boolean {
    const from = this.isArticle(at - 1) ? at - 1 : at;
    const before = this.items[from - 1];
    const joint = jointOf(this.senses[from - 1] ?? UNKNOWN)?.is;
    return before === undefined || before.kind === 'mark' || joint === 'then' || joint === 'conjunction';
  }

  /** `The evening guests will praise it`, `for the breakfast crowd`: whoever comes then. */
  private isOfPeople(at: number, end: number): boolean {
    return this.isArticle(at - 1) && jointOf(this.senses[end] ?? UNKNOWN)?.is === 'person';
  }

  /** `7.15: into the boxes`: an hour with its minutes, alone before what is done then. */
  private heads(at: number, { low, to }: Hour): boolean {
    const next = this.items[to];
    return (
      !Number.isInteger(low) && this.opens(at) && next?.kind === 'mark' && (next.mark === ':' || next.mark === ',')
    );
  }

  /** An hour, of a clock or of the day. `isFirst`: no day stands before it, so that a word has to. */
  private hourAt(at: number, isFirst: boolean): FoundHour | undefined {
    const row = this.rowAt(at);
    const { end } = this;
    if (row?.is === 'hour' && row.range !== undefined) {
      // `The opening speech` is no hour.
      const isPlaced =
        !isFirst ||
        ((this.isPlaced(at) || this.isWhen(at)) && this.isFree(end)) ||
        this.isOfPeople(at, end) ||
        this.dayAt(end) !== undefined;
      const does = !isPlaced && row.kind === 'point' && this.opens(at);
      return isPlaced || does
        ? { ...row.range, ofTwelve: false, to: end, sure: true, comes: row.all, does }
        : undefined;
    }
    const hand = row?.is === 'hand' ? row.range?.low : undefined;
    const hour = this.faceAt(hand === undefined ? at : end);
    if (hour === undefined) return undefined;
    const added = hand ?? 0;
    const isHour =
      hour.sure ||
      hand !== undefined ||
      !isFirst ||
      (this.isPlaced(at) && this.isFree(hour.to)) ||
      this.heads(at, hour);
    return isHour ? { ...hour, low: hour.low + added, high: hour.high + added } : undefined;
  }
}
