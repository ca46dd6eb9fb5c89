/**
 * Knows of what a temperature in a clause is: points for each word that tells, the highest by two.
 * Refuses to know what the body it is said of may be: those points are added where bodies are known.
 */
import type { SentenceItem } from '../notation/tree.ts';
import type { Clause } from './clauses.ts';
import type { TemperatureSaid } from './event.ts';
import type { Piece } from './pieces.ts';
import type { VerbRow } from './rows.ts';

/** The temperatures that stand between the pieces `from` and `to`, said of what the verb (its own, or one before) does. */
export function temperaturesIn(
  _pieces: readonly Piece[],
  _items: readonly SentenceItem[],
  _clause: Clause,
  _verb: VerbRow | undefined,
): readonly TemperatureSaid[] {
  return [];
}
