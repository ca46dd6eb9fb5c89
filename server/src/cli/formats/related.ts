/**
 * Knows how a finding points at what it has to do with, in its own file or in one that the file builds on.
 */
import { visibleLine } from '../../publish/visible.ts';
import type { CheckedFinding } from '../checked-file.ts';

export type Shown = (path: string) => string;

/** Its words, and the line of another file that it comes from or looks at: `(see base.quern:7)`. */
export function wordsOf({ message, related }: CheckedFinding, shown: Shown): string {
  for (const { file, at } of related) if (file !== undefined) return `${message} (see ${shown(file)}:${at.line + 1})`;
  return message;
}

/** The name of a file at the beginning of a line: whatever it is called, the line is one, and no order to whoever logs it. */
export function placeName(shown: string): string {
  const name = visibleLine(shown);
  return /^(?:::|##)/.test(name) ? `./${name}` : name;
}

/** A place that a finding has to do with. */
export interface RelatedPlace {
  readonly path: string;
  readonly at: CheckedFinding['at'];
  readonly message: string;
}

export const relatedPlaces = ({ related }: CheckedFinding, own: string, shown: Shown): readonly RelatedPlace[] =>
  related.map(({ file, at, message }) => ({ path: file === undefined ? own : shown(file), at, message }));
