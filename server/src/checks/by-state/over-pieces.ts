/**
 * Knows how a rule is asked of every piece of a journey, what one part leaves to judge, again only where that is another.
 * What a rule gives of a piece hangs on its stays, its bodies and the foods in them alone. What is held against other pieces comes after that.
 */
import type { Journey } from '../../recipe/journey/fold.ts';
import type { Piece } from '../../recipe/journey/pieces.ts';
import type { House } from '../house.ts';
import { onceFor } from '../once.ts';
import type { Lists } from './spoils.ts';

const NONE: readonly never[] = [];

/** All that a rule gives of the pieces, in their order. */
export function overPieces<V>(ask: (lists: Lists, piece: Piece) => readonly V[]): (journey: Journey) => readonly V[] {
  const last = onceFor((_piece: Piece): { given?: readonly V[] } => ({}));
  return (journey) =>
    ofAll(journey, (piece) => {
      const kept = last(piece);
      kept.given ??= ask(journey, piece);
      return kept.given;
    });
}

/** The same under the rules of a house. */
export function overPiecesIn<R, V>(
  rulesOf: (house: House) => R,
  ask: (rules: R, lists: Lists, piece: Piece) => readonly V[],
): (house: House, journey: Journey) => readonly V[] {
  const last = onceFor((_piece: Piece): { by?: { readonly rules: R; readonly given: readonly V[] } } => ({}));
  return (house, journey) => {
    const rules = rulesOf(house);
    return ofAll(journey, (piece) => {
      const kept = last(piece);
      if (kept.by?.rules !== rules) kept.by = { rules, given: ask(rules, journey, piece) };
      return kept.by.given;
    });
  };
}

function ofAll<V>({ pieces }: Journey, givenOf: (piece: Piece) => readonly V[]): readonly V[] {
  const all: V[] = [];
  for (const piece of pieces) for (const each of givenOf(piece)) all.push(each);
  return all.length === 0 ? NONE : all;
}
