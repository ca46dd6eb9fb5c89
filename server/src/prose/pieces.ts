/**
 * Knows what a sentence falls into while it is read: rows of the lexicon, names, figures and marks, in order.
 * Refuses to know how they are found and what they are for.
 */
import type { Range } from '../measure/quantity.ts';
import type { Span } from '../notation/tree.ts';
import type { TimeKind, TimeSaid } from './event.ts';

/** The range of items that is somebody's name: of a food or a part. `to` is the item after the last. */
export interface NameRun {
  readonly from: number;
  readonly to: number;
}

export type Sort = 'word' | 'mark' | 'name' | 'duration' | 'time' | 'temperature' | 'amount' | 'length';

/** What a piece is in its clause. */
export type Part =
  /** Not settled, or nothing else fits. */
  | 'thing'
  /** An order, or what somebody or something does. */
  | 'verb'
  /** `stirring` behind a comma, `by`, `while`. */
  | 'beside'
  /** `to keep`, `for use` */
  | 'purpose'
  /** `is added`, `may be served` */
  | 'passive'
  /** The verb of a clause that orders nothing: `until it boils`, `which keeps`. */
  | 'framed'
  /** Words of a verb that stand behind its object: `bring the milk to a boil`. */
  | 'tail'
  /** Stands before a noun, or behind `is`: `chilled`, `hot`. */
  | 'describes'
  | 'joint';

/** A clause ends at it. */
export const isHard = (mark: string): boolean => HARD.includes(mark);
const HARD = '.;:()?!';
/** A clause may end at it. */
export const isSoft = (mark: string): boolean => SOFT.includes(mark);
const SOFT = ',-–—';

export class Piece implements Span {
  readonly start: number;
  readonly end: number;
  sort: Sort;
  /** Its first item, and the item after its last. */
  readonly from: number;
  readonly to: number;
  /** The word or words in the lexicon (`lexicon.ts`); 0 where nobody knows them. */
  sense: number;
  part: Part = 'thing';
  /** Of a time. */
  readonly time: FoundTime | undefined;
  /** Of one word: the word, in small letters; of a mark the mark. Empty where it is more, or a figure. */
  readonly word: string;

  constructor(sort: Sort, span: Span, from: number, to: number, sense: number, word: string, time?: FoundTime) {
    this.sort = sort;
    this.start = span.start;
    this.end = span.end;
    this.from = from;
    this.to = to;
    this.sense = sense;
    this.word = word;
    this.time = time;
  }
}

/** A time as its own words say it; whose it is, and whether it is a life, is settled later. */
export interface FoundTime {
  /** Minutes; `Infinity` where the end is open: `at least 2 h`. */
  readonly minutes: Range;
  readonly kind: TimeKind;
  readonly per?: TimeSaid['per'];
  /** It is another choice of the time before it: `or overnight`. */
  readonly orElse: boolean;
  /** `before` or `after` follows it: a point in time where its verb cannot last so long, as in `add it 10 min before the end`. */
  readonly before?: true;
  /** `within`: it may be done much sooner. */
  readonly within?: boolean;
}
