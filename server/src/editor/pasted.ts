/**
 * Knows when a text that is pasted, or lies on the clipboard, is a printed recipe, and gives it in the notation.
 * Refuses the notation itself, and prose: what is not surely a printed recipe is left to be pasted as it is.
 */
import { type ReadRecipe, readText } from '../edits/read-text/read-text.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { isWritten } from './rewrites/draft.ts';

/** Fewer lines of a list are no list. */
const LEAST_LISTED = 2;

/** The text of the snapshot as a recipe of the notation; undefined where it is none that was printed elsewhere. */
export function readPasted({ document, recipe: { world } }: Snapshot): ReadRecipe | undefined {
  if (isWritten(document)) return undefined;
  const read = readText(document.lines.map((line) => line.text).join('\n'), world);
  return read.ingredients < LEAST_LISTED ? undefined : read;
}
