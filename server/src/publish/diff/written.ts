/**
 * Knows what a line says, and when two texts say the same.
 * Refuses to see comments and blanks.
 */

import type { Line } from '../../notation/tree.ts';
import { collapse } from '../../recipe/words.ts';

/** What a line says after its keyword. */
export function saidBy({ line }: { readonly line: Line }): string {
  const end = line.comment?.start ?? line.text.length;
  return collapse(line.text.slice(line.keyword?.end ?? 0, end));
}

export const sameWords = (a: string | null, b: string | null): boolean =>
  a === b || (a !== null && b !== null && collapse(a) === collapse(b));
