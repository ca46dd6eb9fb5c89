/**
 * Knows the clauses that say of a thing what was done, or was not, with no word to open them: `the pot it was cooked in`, `the dish you baked
 * it in`, `what isn't eaten` of what keeps in the fridge.
 * Refuses to know which thing.
 */
import { formOf, jointOf, thingOf, UNKNOWN } from './lexicon.ts';
import type { Piece } from './pieces.ts';

/** How many pieces such a clause has that begins at a piece; 0 where none does. */
export function contactAt(pieces: readonly Piece[], from: number): number {
  const is = (at: number) => jointOf(pieces[at]?.sense ?? UNKNOWN)?.is;
  const opens = is(from) === 'it' || is(from) === 'person';
  if (!opens || thingOf(pieces[from - 1]?.sense ?? UNKNOWN)?.sort !== 'vessel') return 0;
  let at = from + 1;
  while (is(at) === 'aux' || is(at) === 'had' || is(at) === 'adverb') at++;
  const form = formOf(pieces[at]?.sense ?? UNKNOWN);
  if (form !== 'past' && form !== 'base or past') return 0;
  // `the bowl it was mixed in`: the preposition may be one with its verb.
  const { from: first, to } = pieces[at] as Piece;
  at++;
  if (to > first + 1 && isStranded(pieces[at])) return at - from;
  if (is(at) === 'it') at++;
  return is(at) === 'preposition' && isStranded(pieces[at + 1]) ? at + 1 - from : 0;
}

/** So many words at most it takes to say what was not done (judgement). */
const MOST_UNDONE = 6;

/**
 * Behind `what is not` at a piece: how many pieces say what, up to the verb of what is left: `eaten that day` before `stays`; 0 where none
 * stands there.
 */
export function undoneBehind(pieces: readonly Piece[], at: number): number {
  const joint = jointOf(pieces[at]?.sense ?? UNKNOWN);
  if (joint?.is !== 'rest' || joint.way !== 'off') return 0;
  for (let to = at + 2; to <= at + 1 + MOST_UNDONE; to++) {
    const piece = pieces[to];
    if (piece === undefined || (piece.sort === 'mark' && piece.word !== ',')) return 0;
    const is = jointOf(piece.sense)?.is;
    if (is === 'modal' || is === 'aux' || formOf(piece.sense) === 's' || isStrangeVerb(pieces, to)) return to - at - 1;
  }
  return 0;
}

/** `goes back`, `lives in`: nobody knows the word, and it stands where a verb does. */
function isStrangeVerb(pieces: readonly Piece[], at: number): boolean {
  const { sense, word, sort } = pieces[at] as Piece;
  const next = jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.is;
  return sort === 'word' && sense === UNKNOWN && word.endsWith('s') && (next === 'particle' || next === 'preposition');
}

/** Nothing follows that the preposition could be of. */
function isStranded(next: Piece | undefined): boolean {
  if (next === undefined || next.sort === 'mark' || next.sort === 'time') return true;
  const is = jointOf(next.sense)?.is;
  return is === 'preposition' || is === 'conjunction' || is === 'or' || is === 'adverb' || is === 'until';
}
