/**
 * Knows which numbers of a sentence count the pieces of a batch, and which amounts are those of one piece.
 * Refuses to know what is divided, and how many there will be at another size.
 */
import { numberOfWord } from '../measure/number-words.ts';
import type { MeasuredNode, SentenceItem, Span } from '../notation/tree.ts';
import { senseOf, verbOf } from './lexicon.ts';
import { isHard } from './pieces.ts';
import type { VerbRow } from './rows.ts';
import { topicBits, topicsAt } from './topics.ts';

const SHARES = topicBits(['share']);
const EACH = topicBits(['each']);
/** `Divide`, `shape`, `cut` and `slice`, not `score`. */
export const divides = (row: VerbRow | undefined): boolean =>
  row?.act === 'divide' || row?.act === 'shape' || row?.craft === 'cut';

/** A number of pieces that stands behind `divide … in` or `into`. */
export interface Division {
  /** The item that divides, and the number behind it. */
  readonly verb: number;
  readonly number: number;
}

/** Where a batch, or a thing, is divided into a whole number of pieces, and not each of several. */
export function divisionsIn(items: readonly SentenceItem[]): readonly Division[] {
  const found: Division[] = [];
  for (let at = 0; at < items.length; at++) {
    const verb = items[at];
    if (verb?.kind !== 'word' || !divides(verbOf(senseOf(verb.word)))) continue;
    const number = numberBehind(items, at);
    if (number !== undefined && !saysEach(items, number - 1)) found.push({ verb: at, number });
  }
  return found;
}

/** The first number behind `in` or `into` in the clause. */
function numberBehind(items: readonly SentenceItem[], from: number): number | undefined {
  for (let at = from + 1; at < items.length; at++) {
    const item = items[at];
    if (endsClause(item)) return undefined;
    if (item?.kind === 'word' && (item.word === 'in' || item.word === 'into'))
      return isWhole(items[at + 1]) ? at + 1 : undefined;
  }
  return undefined;
}

const isWhole = (item: SentenceItem | undefined): boolean =>
  (item?.kind === 'measured' &&
    item.unit === undefined &&
    item.high === undefined &&
    Number.isInteger(item.low.value)) ||
  numberSaid(item) !== undefined;

/** The whole number that a word of a sentence is: `twelve`. */
export const numberSaid = (item: SentenceItem | undefined): number | undefined =>
  item?.kind === 'word' ? numberOfWord(item.word) : undefined;

const endsClause = (item: SentenceItem | undefined): boolean =>
  item?.kind === 'mark' && (isHard(item.mark) || item.mark === ',');

const isShare = (item: SentenceItem | undefined): boolean => {
  const { one, several } = topicsAt(item);
  return ((one | several) & SHARES) !== 0;
};

/** What a number at `at` counts, where it is pieces of a batch: `24 rolls`. */
export function nounOf(items: readonly SentenceItem[], at: number): Span | undefined {
  const item = items[at];
  if (item?.kind === 'measured' && item.counted !== undefined) return item.counted;
  const next = items[at + 1];
  return next !== undefined && isShare(next) ? next : undefined;
}

/** Whether a bare number counts pieces of a batch, by what it counts. */
export function isOfPieces(items: readonly SentenceItem[], at: number): boolean {
  const item = items[at];
  if (item?.kind !== 'measured') return false;
  const { counted } = item;
  return isShare(
    counted === undefined
      ? items[at + 1]
      : { kind: 'word', start: counted.start, end: counted.end, word: counted.text.toLowerCase() },
  );
}

/** `each`, `every`, `per` or `apiece` stands in the same clause. */
export function saysEach(items: readonly SentenceItem[], at: number): boolean {
  for (const step of [-1, 1] as const)
    for (let i = at + step; i >= 0 && i < items.length && !endsClause(items[i]); i += step) {
      const { one, several } = topicsAt(items[i]);
      if (((one | several) & EACH) !== 0) return true;
    }
  return false;
}

const isWord = (item: SentenceItem | undefined, ...words: readonly string[]): boolean =>
  item?.kind === 'word' && words.includes(item.word);

/** `balls of 60 g`, `60 g each`, `60 g pieces`: the amount of one. */
export function isOfOne(items: readonly SentenceItem[], at: number): boolean {
  if (saysEach(items, at) || isShare(items[at + 1])) return true;
  const earlier = items[at - 2];
  return isWord(items[at - 1], 'of', 'at', 'weighing') && (earlier?.kind === 'measured' || isShare(earlier));
}

/** So far behind a number stands the weight of one at the most. */
const NEAR = 3;

/** The amount of one that a bare number at `at` is followed by: `24 of 60 g`, `24, 60 g each`. */
export function amountOfOne(items: readonly SentenceItem[], at: number): MeasuredNode | undefined {
  for (let i = at + 1; i <= at + NEAR; i++) {
    const item = items[i];
    if (item?.kind === 'measured') return isWord(items[i - 1], 'of') || isWord(items[i + 1], 'each') ? item : undefined;
  }
  return undefined;
}
