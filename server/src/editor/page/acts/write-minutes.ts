/**
 * Knows how the minutes that the day puts for silent work get into the text: as many as are read there as such, and bring no finding.
 */
import { minutesEdits, putIn } from '../../../edits/minutes.ts';
import type { TextEdit } from '../../../edits/text-edit.ts';
import type { Snapshot } from '../../../workspace/snapshot.ts';
import { ownLineIn } from '../../place.ts';
import type { Act } from './act.ts';

export const writeMinutes: Act = ({ snapshot }) => {
  const all = minutesEdits(snapshot.whole.recipe, ownLineIn(snapshot));
  const edits = areRead(snapshot, all) ? all : all.filter((edit) => areRead(snapshot, [edit]));
  const rest = putIn(snapshot.whole.recipe) - edits.length;
  if (edits.length === 0)
    return { refused: 'These steps have no place where minutes could be written and read again.' };
  const steps = `${edits.length} ${edits.length === 1 ? 'step has' : 'steps have'} minutes now`;
  return { edits, said: rest === 0 ? `${steps}.` : `${steps}; ${rest} could not be written.` };
};

/** Each takes one silent order away, and nothing is found that was not: but that no trial tested it so, as after any change. */
function areRead(snapshot: Snapshot, edits: readonly TextEdit[]): boolean {
  const after = snapshot.after(edits);
  const found = ({ findings }: Snapshot): number =>
    findings.open.filter(({ check }) => check.family !== 'testing').length;
  return putIn(after.whole.recipe) === putIn(snapshot.whole.recipe) - edits.length && found(after) <= found(snapshot);
}
