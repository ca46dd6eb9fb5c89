/**
 * Knows how a recipe is scaled that builds on others: written out in full first, as what a base says is scaled in the base.
 * Refuses to write it over the variant: its text is a recipe of its own.
 */
import { type ScaleResult, scaleRecipe } from '../edits/scale.ts';
import type { ScaleTarget } from '../edits/scale-target.ts';
import { applyEdits } from '../edits/text-edit.ts';
import { printDocument } from '../notation/document.ts';
import type { Snapshot } from './snapshot.ts';
import { writeInFull } from './write-in-full.ts';

export interface Scaled {
  /** The file, or the recipe written out in full, to which the edits are made. */
  readonly snapshot: Snapshot;
  readonly result: ScaleResult;
  /** It stands alone: what it says is no change of the file. */
  readonly inFull: boolean;
}

export const WRITTEN_IN_FULL =
  'The recipe builds on another file, and is written out in full here: as it stands here it builds on none.';

/** The file at another size, where it can be; else, of one that builds on others, the whole of it. */
export function scaledInFull(snapshot: Snapshot, target: ScaleTarget, part?: string): Scaled {
  const result = scaleRecipe(snapshot.document, snapshot.recipe, target, part);
  if (result.ok || !result.inherits) return { snapshot, result, inFull: false };
  const edits = writeInFull(snapshot);
  if (edits === undefined) {
    const why = 'the recipe builds on what is not there, so it cannot be written out: its findings say what is missing';
    return { snapshot, result: { ...result, why }, inFull: false };
  }
  const text = printDocument(applyEdits(snapshot.document, edits));
  const full = snapshot.edited(snapshot.version + 1, [{ text }]);
  return { snapshot: full, result: scaleRecipe(full.document, full.recipe, target, part), inFull: true };
}
