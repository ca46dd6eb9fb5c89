/**
 * Knows who eats by a figure: how old somebody is (`our eighteen-month-old`, `for 2 year olds`), how far gone (`six months along`), what is
 * still to come (`eight weeks to go`).
 * Refuses to know what they must not eat, and how old a cheese is: an age is somebody's where nothing that it could be of follows.
 */
import type { SentenceItem, Span } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import { jointOf, senseOf, timeOf, verbOf } from './lexicon.ts';
import type { JointKind } from './rows.ts';

export type Whom = 'baby' | 'toddler' | 'child' | 'pregnant';

export interface WhomSaid extends Span {
  readonly is: Whom;
  readonly item: number;
  /** The item behind it. */
  readonly to: number;
}

/** Minutes. */
const WEEK = 10080;
const YEAR = 525600;
/** Of an age, in minutes: from here on the next. */
const FROM_TODDLER = YEAR;
const FROM_CHILD = 4 * YEAR;
const NO_CHILD = 13 * YEAR;
/** Nobody is pregnant for longer. */
const TERM = 42 * WEEK;

interface Length {
  readonly minutes: number;
  readonly unitMin: number;
  readonly to: number;
}

/** Whom a figure at an item tells. `isPerson`: somebody stands at an item; `termAt`: how many items say there that a term is not over. */
export function whomAt(
  items: readonly SentenceItem[],
  at: number,
  isPerson: (item: number) => boolean,
  termAt: (item: number) => number,
): WhomSaid | undefined {
  const length = lengthAt(items, at);
  const first = items[at];
  if (length === undefined || first === undefined) return undefined;
  const said = (is: Whom | undefined, to: number): WhomSaid | undefined => {
    const last = items[to - 1];
    return is === undefined || last === undefined ? undefined : { is, item: at, to, start: first.start, end: last.end };
  };
  const term = termAt(length.to);
  if (term > 0 && length.unitMin < YEAR && length.unitMin >= WEEK && length.minutes <= TERM)
    return said('pregnant', length.to + term);
  const old = oldAt(items, length);
  if (old === undefined) return undefined;
  return old.many || isOfSomebody(items, at, old.to, isPerson) ? said(ofAge(length.minutes), old.to) : undefined;
}

const ofAge = (minutes: number): Whom | undefined =>
  minutes < FROM_TODDLER ? 'baby' : minutes < FROM_CHILD ? 'toddler' : minutes < NO_CHILD ? 'child' : undefined;

/** A person follows, or nothing that is so old: the end, a verb, a joint; and before it stands whose, or who. */
function isOfSomebody(
  items: readonly SentenceItem[],
  at: number,
  to: number,
  isPerson: (item: number) => boolean,
): boolean {
  if (isPerson(to)) return true;
  if (!isAtEnd(items, to) && !isToldOf(items, to)) return false;
  // `She's five months old`
  if (isPerson(at - 1)) return true;
  const before = wordAt(items, at - 1);
  const is = before === undefined ? undefined : jointOf(senseOf(before))?.is;
  return is === 'article' || is === 'preposition' || (is === 'aux' && isPerson(at - 2));
}

/** Nothing follows that the words before could be of: the end, a mark, a verb or a word that joins. */
export function isAtEnd(items: readonly SentenceItem[], at: number): boolean {
  const next = items[at];
  if (next === undefined || next.kind === 'mark') return true;
  if (next.kind !== 'word') return false;
  const sense = senseOf(next.word);
  const is = jointOf(sense)?.is;
  return is === undefined ? verbOf(sense) !== undefined : !OPENS_NOUN.has(is);
}

/** `loves it`, `eats the crusts`: nobody knows the word, and what it does something to follows. */
function isToldOf(items: readonly SentenceItem[], at: number): boolean {
  const [word, behind] = [wordAt(items, at), wordAt(items, at + 1)];
  if (word === undefined || behind === undefined || !word.endsWith('s')) return false;
  const is = jointOf(senseOf(behind))?.is;
  return is === 'it' || is === 'article' || is === 'all';
}

const OPENS_NOUN: ReadonlySet<JointKind> = new Set(['article', 'number', 'quantity', 'adjective']);

/** `old`, `olds` behind a length, or in one word with it. */
function oldAt(
  items: readonly SentenceItem[],
  { to }: Length,
): { readonly to: number; readonly many: boolean } | undefined {
  const last = items[to - 1];
  const inOne = last?.kind === 'word' ? last.word.split('-').at(-1) : undefined;
  if (isOld(inOne)) return { to, many: isMany(inOne) };
  const next = items[to];
  return next?.kind === 'word' && isOld(next.word) ? { to: to + 1, many: isMany(next.word) } : undefined;
}

/** `Two-year-olds`, `a nine-year-old's party` */
const isMany = (word: string | undefined): boolean => word === 'olds' || word === "old's";
const isOld = (word: string | undefined): boolean => word === 'old' || isMany(word);

/** `six months`, `6 months`, `five and a half months`, `two-year-old`, `2-year-old` */
function lengthAt(items: readonly SentenceItem[], at: number): Length | undefined {
  const item = items[at];
  if (item === undefined || isNumberBefore(items, at)) return undefined;
  if (item.kind === 'word' && item.word.includes('-')) {
    const [number = '', ...unit] = item.word.split('-');
    const count = numberInWord(number);
    return count === undefined || count.article ? undefined : times(count.low, unit[0] ?? '', at + 1);
  }
  let count = item.kind === 'measured' ? item.quantity.low : item.kind === 'word' ? plainNumber(item.word) : undefined;
  if (count === undefined || (item.kind === 'measured' && item.quantity.unit !== undefined)) return undefined;
  let to = at + 1;
  const [and, a, half] = [0, 1, 2].map((i) => wordAt(items, to + i));
  if (and === 'and' && a !== undefined && numberInWord(a)?.article && half !== undefined && numberInWord(half)?.part) {
    count += numberInWord(half)?.low ?? 0;
    to += 3;
  }
  const joint = items[to];
  if (joint?.kind === 'mark' && joint.mark === '-') to++;
  const unit = wordAt(items, to)?.split('-')[0];
  return unit === undefined ? undefined : times(count, unit, to + 1);
}

const wordAt = (items: readonly SentenceItem[], at: number): string | undefined => {
  const item = items[at];
  return item?.kind === 'word' ? item.word : undefined;
};

const plainNumber = (word: string): number | undefined => {
  const number = numberInWord(word);
  return number === undefined || number.article || number.part || number.lot ? undefined : number.low;
};

/** The end of a longer number is none. */
const isNumberBefore = (items: readonly SentenceItem[], at: number): boolean => {
  const word = wordAt(items, at - 1);
  return word !== undefined && plainNumber(word) !== undefined;
};

function times(count: number, unit: string, to: number): Length | undefined {
  const row = timeOf(senseOf(unit));
  const unitMin = row?.is === 'unit' ? row.range?.low : undefined;
  return unitMin === undefined || unitMin < 1440 ? undefined : { minutes: count * unitMin, unitMin, to };
}

/** `She has eight weeks to go`: what she has stands a word or two before. */
export const hasBefore = (items: readonly SentenceItem[], at: number): boolean =>
  [1, 2].some((back) => {
    const word = wordAt(items, at - back);
    return word !== undefined && jointOf(senseOf(word))?.is === 'had';
  });
