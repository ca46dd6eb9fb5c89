/**
 * The first pass: knows where rows of the lexicon, names, figures, times and marks stand in a sentence; of rows that begin at a word the
 * longest.
 * Refuses to know which of its rows a word is there.
 */
import type { SentenceItem } from '../notation/tree.ts';
import type { ClockRun } from './clock.ts';
import {
  beginsVerb,
  formOf,
  isRow,
  isTimeAlone,
  jointOf,
  longerSense,
  senseOf,
  sensesOf,
  signOf,
  thingOf,
  UNKNOWN,
  verbOf,
} from './lexicon.ts';
import { isHard, type NameRun, Piece, type Sort } from './pieces.ts';
import type { TimeRun } from './times.ts';

const SORTS: Readonly<Record<SentenceItem['kind'], Sort>> = {
  word: 'word',
  mark: 'mark',
  forced: 'name',
  temperature: 'temperature',
  duration: 'duration',
  measured: 'amount',
  length: 'length',
};

/** All items in pieces, in order. A name gives way to a longer row that begins with it: `ice bath`; no row reaches into a time. */
export function tag(
  items: readonly SentenceItem[],
  runs: readonly NameRun[],
  times: readonly TimeRun[],
  senses: readonly number[] = sensesOf(items),
  clocks: readonly ClockRun[] = [],
): Piece[] {
  const pieces: Piece[] = [];
  let next = 0;
  let nextTime = 0;
  let nextClock = 0;
  for (let at = 0; at < items.length; ) {
    const item = items[at] as SentenceItem;
    const time = times[nextTime];
    if (time?.from === at) {
      const span = { start: item.start, end: (items[time.to - 1] as SentenceItem).end };
      pieces.push(new Piece('time', span, at, time.to, UNKNOWN, '', time.time));
      at = time.to;
      nextTime++;
      continue;
    }
    while (nextClock < clocks.length && (clocks[nextClock] as ClockRun).from < at) nextClock++;
    const clock = clocks[nextClock];
    // `At eight`, `after supper`: when it is, and no more.
    if (clock?.from === at && !clock.does && (time === undefined || clock.to <= time.from)) {
      const first = opensPoint(pieces.at(-1), clock.whole === true) ? (pieces.pop() as Piece) : item;
      const { end } = items[clock.to - 1] as SentenceItem;
      const from = first instanceof Piece ? first.from : at;
      pieces.push(new Piece('time', { start: first.start, end }, from, clock.to, UNKNOWN, ''));
      at = clock.to;
      continue;
    }
    const limit = time?.from ?? items.length;
    while (next < runs.length && (runs[next] as NameRun).from < at) next++;
    const run = runs[next]?.from === at ? runs[next] : undefined;
    let sense = UNKNOWN;
    let to = at + 1;
    if (item.kind === 'word') {
      sense = senses[at] ?? UNKNOWN;
      let longer = sense;
      // `Set to low` orders.
      const opens = formOf(sense) !== undefined && opensClause(pieces.at(-1));
      // `in the heat` is a place, and `in the heat lamp` another.
      const isPlaced = jointOf(sense)?.is === 'preposition';
      const isNoun = jointOf(pieces.at(-1)?.sense ?? UNKNOWN)?.is === 'article';
      for (let i = at + 1; longer !== UNKNOWN && i < limit; i++) {
        const word = items[i];
        if (word?.kind !== 'word') break;
        longer = longerSense(longer, word.word);
        if (
          longer !== UNKNOWN &&
          isRow(longer) &&
          !(jointOf(longer)?.is === 'particle' && opensNoun(items[i + 1])) &&
          !isTimeAlone(longer) &&
          !(opens && jointOf(longer)?.is === 'preposition') &&
          !(
            (verbOf(longer) !== undefined || signOf(longer) !== undefined || isPlaced) &&
            beginsPlace(word.word, items[i + 1])
          ) &&
          !(verbOf(longer) !== undefined && beginsWay(word.word, items[i + 1])) &&
          !(isNoun && isWayOut(longer, word.word))
        ) {
          sense = longer;
          to = i + 1;
        }
      }
    }
    let sort = SORTS[item.kind];
    if (run !== undefined && run.to >= to) {
      if (run.to > to) sense = UNKNOWN;
      sort = 'name';
      to = Math.min(run.to, items.length);
    }
    if (item.kind === 'word' && item.word === 'that' && to === at + 1 && isPointedAt(pieces)) sense = senseOf('this');
    const { end } = items[to - 1] as SentenceItem;
    const word = to > at + 1 ? '' : item.kind === 'word' ? item.word : item.kind === 'mark' ? item.mark : '';
    pieces.push(new Piece(sort, { start: item.start, end }, at, to, sense, word));
    at = to;
  }
  joinTails(pieces, items);
  return pieces;
}

/** `On that dying warmth`, `don't pour that lovely marinade away`: it opens no clause there. */
function isPointedAt(before: readonly Piece[]): boolean {
  const last = before.at(-1);
  if (last === undefined) return false;
  if (jointOf(last.sense)?.is === 'preposition') return true;
  const act = formOf(last.sense) === 'base' ? verbOf(last.sense)?.act : undefined;
  return (act === 'put' || act === 'discard') && jointOf(before.at(-2)?.sense ?? UNKNOWN)?.is !== 'article';
}

/** `in half the oil` */
function opensNoun(next: SentenceItem | undefined): boolean {
  if (next?.kind !== 'word') return false;
  return jointOf(senseOf(next.word))?.is === 'article';
}

/** `cook on low`: the last word of the verb begins a place. */
function beginsPlace(word: string, next: SentenceItem | undefined): boolean {
  if (next?.kind !== 'word') return false;
  return thingOf(longerSense(senseOf(word), next.word)) !== undefined;
}

/** `leave out of the fridge`: the last word of the verb begins a preposition. */
function beginsWay(word: string, next: SentenceItem | undefined): boolean {
  if (next?.kind !== 'word') return false;
  const longer = jointOf(longerSense(senseOf(word), next.word));
  return longer?.is === 'preposition' && jointOf(senseOf(next.word))?.way === 'of';
}

/** `Take the dish out of the oven` is no `dish out`. */
function isWayOut(longer: number, last: string): boolean {
  const is = jointOf(senseOf(last))?.is;
  return verbOf(longer) !== undefined && thingOf(longer) === undefined && (is === 'preposition' || is === 'particle');
}

/** `at`, `after`, `before`, right before an hour; `when` before a clause that is one. */
function opensPoint(before: Piece | undefined, isWhole: boolean): boolean {
  const joint = before?.sort === 'word' ? jointOf(before.sense) : undefined;
  return (
    (isWhole && joint?.is === 'when') ||
    joint?.is === 'after' ||
    joint?.is === 'before' ||
    (joint?.is === 'preposition' && joint.way === 'at' && joint.adds.length > 0)
  );
}

const opensClause = (before: Piece | undefined): boolean =>
  before === undefined || (before.sort === 'mark' && isHard(before.word)) || jointOf(before.sense)?.is === 'then';

/** How many pieces an object may have before the rest of its verb. */
const LONGEST_OBJECT = 12;

/** `bring the milk to a boil`, `set the bowl aside`: the verb is all of its words. */
function joinTails(pieces: readonly Piece[], items: readonly SentenceItem[]): void {
  for (let at = 0; at < pieces.length; at++) {
    const head = pieces[at] as Piece;
    if (head.to !== head.from + 1 || head.sort === 'name' || !beginsVerb(head.sense)) continue;
    for (let i = at + 2; i < pieces.length && i < at + LONGEST_OBJECT; i++) {
      if (endsObject(pieces[i - 1] as Piece)) break;
      if (opensThing(pieces[i - 1] as Piece)) continue;
      const { sense, count } = tailAt(pieces, i, items, head.sense);
      if (count === 0) continue;
      head.sense = sense;
      for (let tail = i; tail < i + count; tail++) (pieces[tail] as Piece).part = 'tail';
      break;
    }
  }
}

/** The verb that the words from a piece on make of its first word, and how many pieces they are; none of them a part of a piece. */
function tailAt(
  pieces: readonly Piece[],
  from: number,
  items: readonly SentenceItem[],
  head: number,
): { sense: number; count: number } {
  let sense = head;
  let found = { sense: UNKNOWN, count: 0 };
  for (let at = from; at < pieces.length; at++) {
    const piece = pieces[at] as Piece;
    if (piece.sort !== 'word' && piece.sort !== 'name') break;
    for (let i = piece.from; i < piece.to && sense !== UNKNOWN; i++) {
      const item = items[i];
      sense = item?.kind === 'word' ? longerSense(sense, item.word) : UNKNOWN;
    }
    if (sense === UNKNOWN) break;
    if (verbOf(sense) !== undefined && (at > from || isAlone(pieces[at + 1]))) found = { sense, count: at + 1 - from };
  }
  return found;
}

/** `take it out`, `pour it in;`: nothing follows that the word could be a preposition of. */
function isAlone(next: Piece | undefined): boolean {
  if (next === undefined || next.sort === 'mark' || next.sort === 'time') return true;
  const is = jointOf(next.sense)?.is;
  return (
    is === 'preposition' ||
    is === 'to' ||
    is === 'conjunction' ||
    is === 'or' ||
    is === 'then' ||
    is === 'until' ||
    is === 'when'
  );
}

/** `Heat in the oven` is no `heat oven`. */
function opensThing({ sense }: Piece): boolean {
  const is = jointOf(sense)?.is;
  return is === 'preposition' || is === 'to' || is === 'article';
}

const endsObject = ({ sort, word, sense }: Piece): boolean =>
  (sort === 'mark' && word !== ',') ||
  // `Once it has stood, is it ready`
  sort === 'time' ||
  jointOf(sense)?.is === 'then' ||
  (sort === 'word' && formOf(sense) === 'base' && verbOf(sense)?.noun === false);
