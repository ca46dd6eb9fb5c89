/**
 * Knows what the words before a noun say that it is: cold, hot, cooked already.
 * Refuses to know what the noun is for.
 */
import type { Act, PlaceKind, Slot, Where } from './event.ts';
import { formOf, jointOf, signOf, thingOf, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';

/** `the chilled case`, `a cold vault`: how cold a place is that no row has. */
export function coldBefore(pieces: readonly Piece[], from: number, head: Piece): PlaceKind | undefined {
  for (let at = from; at < pieces.length && pieces[at] !== head; at++) {
    const { sense } = pieces[at] as Piece;
    if (verbOf(sense)?.where === 'cold' || thingOf(sense)?.is === 'cold') return 'cold';
    if (signOf(sense)?.tells === 'cold') return 'cool';
  }
  return undefined;
}

/** `the chilled dough`, `hot milk`. */
export function alreadyIs(pieces: readonly Piece[], from: number, head: Piece): Slot['already'] | undefined {
  for (let at = from; at < pieces.length; at++) {
    const piece = pieces[at] as Piece;
    if (piece === head) return undefined;
    const tells = signOf(piece.sense)?.tells;
    if (tells === 'hot' || tells === 'cold' || tells === 'frozen') return tells;
    const act = formOf(piece.sense) === 'past' ? verbOf(piece.sense)?.act : undefined;
    const already = act && ALREADY[act];
    if (already !== undefined) return already;
  }
  return undefined;
}

/** `Keep it lukewarm`, `where you can bear a finger in it`: how warm what is kept there is; undefined where the clause does not say. */
export function heldAt(pieces: readonly Piece[], from: number, to: number): Where | undefined {
  for (let at = from; at < to; at++) {
    const { sense, start, end, part } = pieces[at] as Piece;
    const sign = part === 'tail' ? undefined : signOf(sense);
    if (sign?.tells !== 'warm' || sign.celsius === undefined || isOfNoun(pieces[at + 1])) continue;
    return { start, end, is: 'warm', sure: 'said', way: 'at', not: false, celsius: sign.celsius };
  }
  return undefined;
}

/** `lukewarm water` */
const isOfNoun = (next: Piece | undefined): boolean =>
  next !== undefined && (next.sort === 'name' || (next.sort === 'word' && jointOf(next.sense) === undefined));

export const ALREADY: Readonly<Partial<Record<Act, Slot['already']>>> = {
  heat: 'cooked',
  cool: 'cold',
  freeze: 'frozen',
  steep: 'soaked',
};
