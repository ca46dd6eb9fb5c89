/**
 * Knows how a time is said: number and unit, numbers in words, parts of the day, horizons, bounds; and joins its words into one piece.
 * Refuses to know whose time it is.
 */
import type { SentenceItem } from '../notation/tree.ts';
import { type FoundTime, Piece } from './pieces.ts';

/** The pieces of a sentence with those of each time made one. */
export function joinTimes(pieces: readonly Piece[], items: readonly SentenceItem[]): readonly Piece[] {
  return pieces.map((piece) => {
    const item = items[piece.from];
    if (piece.sort !== 'duration' || item?.kind !== 'duration') return piece;
    const time: FoundTime = { minutes: { low: item.lowMin, high: item.highMin }, kind: 'spent', orElse: false };
    return new Piece('time', piece, piece.from, piece.to, piece.sense, '', time);
  });
}
