/**
 * Knows which faults of a line are told: each of a step, whose pieces stand for themselves, and of any other line the first.
 */
import type { Line, SyntaxFault } from '../../notation/tree.ts';

export function faultsTold({ faults, statement }: Line): readonly SyntaxFault[] {
  if (faults.length < 2 || statement.kind === 'step') return faults;
  return [faults.reduce((first, fault) => (fault.start < first.start ? fault : first))];
}

/** What may be written instead: one for each reading, or the one that was meant. */
export const writesOf = ({ either, write }: SyntaxFault): readonly string[] =>
  either ?? (write === undefined ? [] : [write]);
