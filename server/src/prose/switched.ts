/**
 * Knows whether the words around a place say that it does not work: `the dead fridge`, `the oven with its light off`, `a cool box with no ice in it`.
 * Refuses to know what kind of place it is, and how warm it then is.
 */
import type { SentenceItem } from '../notation/tree.ts';
import { formOf, jointOf, longerSense, senseOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import { topicBits, topicsAt } from './topics.ts';

/** Words from `with` to `off`. */
const LONGEST = 5;

/** The piece behind the words that say so, of a place from one piece to another; undefined where none does. */
export function offUntil(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  from: number,
  head: number,
): number | undefined {
  for (let at = head - 1; at >= from || isBefore(pieces[at]); at--) if (isOff(pieces[at])) return head + 1;
  let at = head + 1;
  // `Circulator off, lid off`
  if (isOffAlone(pieces, at)) return at + 1;
  if (pieces[at]?.word === ',') at++;
  const is = jointOf(pieces[at]?.sense ?? UNKNOWN)?.is;
  // `which is off`
  if (is === 'which' || is === 'aux') {
    do at++;
    while (isHad(pieces[at]));
    if (is === 'which' && isSpent(pieces, items, at)) return head + 1;
    // `that is turned off`
    if (verbOf(pieces[at]?.sense ?? UNKNOWN)?.act === 'adjust' && isOffAlone(pieces, at + 1)) return head + 1;
    return isOff(pieces[at]) || isOffAlone(pieces, at) ? head + 1 : undefined;
  }
  if (isOff(pieces[at])) return at + 1;
  const way = jointOf(pieces[at]?.sense ?? UNKNOWN)?.way;
  if (way !== 'with' && way !== 'without') return undefined;
  const isWithout = way === 'without' || jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.way === 'without';
  let power = false;
  for (let i = at + 1; i < at + LONGEST; i++) {
    const piece = pieces[i];
    if (piece === undefined || piece.sort === 'mark') return undefined;
    // `with its fan off` it works.
    power ||= makesWork(piece, items);
    if (power && isWithout) return pastIn(pieces, i + 1);
    if (power && (isOff(piece) || isOffAlone(pieces, i) || endsOff(piece, items))) return i + 1;
    if (power && goesOut(piece, pieces[i + 1])) return i + 2;
  }
  return undefined;
}

/** `whose ice had melted` */
function isSpent(pieces: readonly Piece[], items: readonly SentenceItem[], from: number): boolean {
  const power = pieces[from];
  if (power === undefined || !makesWork(power, items)) return false;
  let at = from + 1;
  while (isHad(pieces[at])) at++;
  const act = verbOf(pieces[at]?.sense ?? UNKNOWN)?.act;
  return act === 'heat' || act === 'thaw' || isOff(pieces[at]) || isOffAlone(pieces, at);
}

/** Stands before a noun and its other words. */
const isBefore = (piece: Piece | undefined): boolean => {
  const is = piece && jointOf(piece.sense)?.is;
  return is === 'adjective' || is === 'article' || piece?.part === 'describes';
};

const isHad = (piece: Piece | undefined): boolean => {
  const is = piece && jointOf(piece.sense)?.is;
  return is === 'aux' || is === 'had' || is === 'adverb';
};

/** `dead`, `unlit`, `switched-off`. */
function isOff(piece: Piece | undefined): boolean {
  if (piece === undefined) return false;
  const joint = jointOf(piece.sense);
  if (joint?.is === 'adjective') return joint.way === 'off';
  const verb = formOf(piece.sense) === 'past' ? verbOf(piece.sense) : undefined;
  const last = verb?.words[0]?.split(' ').at(-1);
  return verb?.act === 'adjust' && last !== undefined && jointOf(senseOf(last))?.way === 'off';
}

/** `gas off`, `flame out`: one word. */
function endsOff({ sense, to }: Piece, items: readonly SentenceItem[]): boolean {
  const last = items[to - 1];
  const verb = verbOf(sense);
  if (verb?.act === 'adjust' && verb.where === 'stove') return true;
  return verb?.act === 'adjust' && last?.kind === 'word' && jointOf(senseOf(last.word))?.way === 'off';
}

/** `flame out`: two words that are one of a verb. */
function goesOut({ sense }: Piece, next: Piece | undefined): boolean {
  const verb = next === undefined ? undefined : verbOf(longerSense(sense, next.word));
  return verb?.act === 'adjust' && verb.where === 'stove';
}

/** `off`, with nothing that it could be a preposition of. */
function isOffAlone(pieces: readonly Piece[], at: number): boolean {
  if (jointOf(pieces[at]?.sense ?? UNKNOWN)?.way !== 'off') return false;
  const next = pieces[at + 1];
  return next === undefined || next.sort !== 'word' || (jointOf(next.sense) !== undefined && !isBefore(next));
}

/** What a place works by: ice, gas, current. */
const makesWork = ({ sense, from, to }: Piece, items: readonly SentenceItem[]): boolean =>
  thingOf(sense)?.is === 'ice' ||
  items.slice(from, to).some((item) => {
    const { one, several } = topicsAt(item);
    return ((one | several) & POWER) !== 0;
  });
const POWER = topicBits(['power']);

/** `in it` */
function pastIn(pieces: readonly Piece[], at: number): number {
  const [first, second] = [pieces[at], pieces[at + 1]].map((piece) => jointOf(piece?.sense ?? UNKNOWN)?.is);
  return first === 'preposition' && second === 'it' ? at + 2 : at;
}
