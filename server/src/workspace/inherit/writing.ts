/**
 * Knows a file that is being written out: what it builds on, and what is found broken on the way.
 * Refuses to know how it is written out.
 */
import type { BrokenLink } from '../../checks/check.ts';
import type { House } from '../../checks/house.ts';
import type { Document } from '../../notation/document.ts';
import type { Outline } from '../../notation/outline.ts';
import type { Span } from '../../notation/tree.ts';
import type { Bases } from '../ports.ts';
import type { Blocks, WrittenLine, WrittenOut } from '../written.ts';

/** A file being written out, and what was found on the way. */
export interface Writing {
  readonly path: string;
  readonly document: Document;
  readonly of: Outline;
  readonly house: House;
  readonly bases: Bases;
  /** The files that build on it, the outermost first, and itself. */
  readonly above: readonly string[];
  /** A file that it builds on, written out; undefined where that builds on no other. */
  readonly below: (path: string, document: Document, of: Outline) => WrittenOut | undefined;
  readonly loads: Loads;
  readonly broken: BrokenLink[];
  readonly dropped: Dropped[];
  /** The paths of all files that it takes from. */
  readonly files: Set<string>;
}

/** What was read for one recipe, whoever of its bases asked for it. */
export interface Loads {
  count: number;
  /** The files that build on others, by path, as they were written out. */
  readonly done: Map<string, Pick<WrittenOut, 'files' | 'broken'> & { readonly blocks: Blocks }>;
}

/** A step of a base that names what was dropped: the words, and the line that drops it. */
interface Dropped {
  readonly at: number;
  readonly name: Span;
  readonly step: WrittenLine;
  readonly words: string;
}

export function say(
  work: Writing,
  kind: BrokenLink['kind'],
  line: number,
  { start, end }: Span,
  name: string,
  near: readonly string[],
  round?: string,
): void {
  work.broken.push({ kind, line, span: { start, end }, name, near, ...(round !== undefined && { round }) });
}
