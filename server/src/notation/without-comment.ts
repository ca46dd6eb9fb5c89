/**
 * Knows what of a line is said, and not remarked behind `#`.
 */
import type { Line } from './tree.ts';

/** Without blanks at either end; empty for no line. */
export const withoutComment = (line: Line | undefined): string =>
  line?.text.slice(0, line.comment?.start ?? line.text.length).trim() ?? '';
