/**
 * Knows the clauses that say of a vessel what was done in it, with no word to open them: `the pot it was cooked in`, `the dish you baked it in`.
 * Refuses to know which vessel.
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

/** Nothing follows that the preposition could be of. */
function isStranded(next: Piece | undefined): boolean {
  if (next === undefined || next.sort === 'mark' || next.sort === 'time') return true;
  const is = jointOf(next.sense)?.is;
  return is === 'preposition' || is === 'conjunction' || is === 'or' || is === 'adverb' || is === 'until';
}
