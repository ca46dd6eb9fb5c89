/**
 * Knows what a hint in the text is: a few words behind a place that nobody typed.
 * Refuses to know how it is drawn.
 */
import type { TextEdit } from '../../edits/text-edit.ts';
import type { Span } from '../../notation/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Fact } from '../hover/fact.ts';

/** `line` is of the part that it stands in, or of the document for one of the head. */
export interface Hint {
  readonly line: number;
  /** What it is said of; it stands behind that. */
  readonly of: Span;
  readonly label: string;
  /** Where the figure comes from, and what writes it; each worked out when somebody asks. `at` is the line of the document. */
  readonly facts?: () => readonly Fact[];
  readonly edits?: (snapshot: Snapshot, at: number) => readonly TextEdit[];
}
