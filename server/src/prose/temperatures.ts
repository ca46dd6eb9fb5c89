/**
 * Knows of what a temperature in a clause is: points for each word that tells, the highest by two.
 * Refuses to know what the body it is said of may be: those points are added where bodies are known.
 */
import type { SentenceItem } from '../notation/tree.ts';
import type { Clause } from './clauses.ts';
import type { Event, TemperatureSaid } from './event.ts';
import type { Piece } from './pieces.ts';

/** The temperatures that the clause says, of the event that is its own or that it is a sign of. */
export function temperaturesIn(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clause: Clause,
  event: Event,
): readonly TemperatureSaid[] {
  let said: TemperatureSaid[] | undefined;
  for (let at = clause.from; at < clause.to; at++) {
    const piece = pieces[at] as Piece;
    const item = items[piece.from];
    if (item?.kind !== 'temperature') continue;
    said ??= [];
    said.push({
      start: piece.start,
      end: piece.end,
      celsius: { low: item.lowDegrees, high: item.highDegrees },
      of: event.act === 'heat' ? 'oven' : 'nothing',
      sure: 'unread',
      bound: 'is',
      inside: false,
    });
  }
  return said ?? NONE;
}

const NONE: readonly TemperatureSaid[] = [];
