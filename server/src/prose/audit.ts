/**
 * Knows which words of a sentence stand where an order, a place or vessel, a time or a sign does, and are in no row of the lexicon.
 * Refuses to know which of them ought to be.
 */
import type { SentenceItem } from '../notation/tree.ts';
import type { Clause } from './clauses.ts';
import { cut } from './cut.ts';
import { isAdverb } from './forms.ts';
import { frame } from './frame.ts';
import { isStrange, jointOf, verbOf } from './lexicon.ts';
import { settle } from './nouns.ts';
import type { NameRun, Piece } from './pieces.ts';
import { fill } from './slots.ts';
import { tag } from './tag.ts';
import { timesIn } from './times.ts';

/** Where an unknown word stands. */
export type Stands = 'order' | 'place' | 'time' | 'sign';

export interface UnknownWord {
  readonly as: Stands;
  readonly word: string;
}

export function unknownWords(items: readonly SentenceItem[], runs: readonly NameRun[]): readonly UnknownWord[] {
  const pieces = tag(items, runs, timesIn(items, runs));
  settle(pieces);
  const clauses = cut(pieces);
  frame(pieces, items, clauses);
  fill(pieces, items, clauses);
  return clauses.flatMap((clause) => unknownIn(pieces, clause));
}

const isUnknown = (piece: Piece | undefined): piece is Piece =>
  piece?.sort === 'word' && piece.part !== 'joint' && isStrange(piece.sense) && !isAdverb(piece.word);

function unknownIn(pieces: readonly Piece[], clause: Clause): readonly UnknownWord[] {
  const own = pieces.slice(clause.from, clause.to);
  if (clause.frame === 'sign') {
    // A sign that says nothing that is known.
    const isRead = clause.sign?.is !== undefined;
    return isRead ? [] : own.filter(isUnknown).map(({ word }) => ({ as: 'sign', word }));
  }
  const found: UnknownWord[] = [];
  const verb = pieces[clause.verb];
  const first = own[0];
  if (verb !== undefined && isUnknown(verb) && verbOf(verb.sense) === undefined)
    found.push({ as: 'order', word: verb.word });
  else if (verb === undefined && opensSentence(pieces, clause) && isUnknown(first))
    found.push({ as: 'order', word: first.word });
  own.forEach((piece, at) => {
    const joint = jointOf(piece.sense);
    const next = own[at + 1];
    if (piece.part === 'joint' && (joint?.way === 'at' || joint?.way === 'to')) {
      const head = headFrom(own, at + 1);
      if (isUnknown(head)) found.push({ as: 'place', word: head.word });
    }
    // `for two shakes`
    if (
      piece.part === 'joint' &&
      joint?.way === 'for' &&
      (next?.sort === 'amount' || jointOf(next?.sense ?? 0)?.is === 'number')
    ) {
      const head = headFrom(own, at + 2);
      if (isUnknown(head)) found.push({ as: 'time', word: head.word });
    }
  });
  return found;
}

const opensSentence = (pieces: readonly Piece[], { from }: Clause): boolean =>
  from === 0 || pieces[from - 1]?.sort === 'mark';

/** The last word of the thing that begins there. */
function headFrom(pieces: readonly Piece[], from: number): Piece | undefined {
  let head: Piece | undefined;
  for (let at = from; at < pieces.length; at++) {
    const piece = pieces[at] as Piece;
    const is = piece.part === 'joint' ? jointOf(piece.sense)?.is : undefined;
    if (is === 'article' || is === 'adjective' || is === 'number' || is === 'quantity') continue;
    if ((piece.sort !== 'word' && piece.sort !== 'name') || is !== undefined || piece.part === 'verb') break;
    head = piece;
  }
  return head;
}
