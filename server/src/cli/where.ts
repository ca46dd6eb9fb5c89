/**
 * Knows where the lines of a recipe written out in full are to be found.
 */
import { visibleLine } from '../publish/visible.ts';
import { capital } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Io } from './io.ts';

/** Says of a line of the whole recipe where its writer finds it: `line 7`, or `line 7 of base.quern`. */
export function whereIn({ whole }: Snapshot, io: Io): (line: number) => string {
  return (line) => {
    const origin = whole.writtenFrom?.lines[line]?.origin;
    return `line ${(origin?.line ?? line) + 1}${origin?.kind === 'base' ? ` of ${visibleLine(io.shown(origin.path))}` : ''}`;
  };
}

/** The line of its own file, from 0; undefined where a base says it. */
export function ownLineIn({ whole }: Snapshot): (line: number) => number | undefined {
  return (line) => {
    const lines = whole.writtenFrom?.lines;
    if (lines === undefined) return line;
    const origin = lines[line]?.origin;
    return origin === undefined || origin.kind === 'base' ? undefined : origin.line;
  };
}

/** The folder's own name, as a title. */
export const folderTitle = (folder: string): string =>
  capital(folder.split(/[\\/]/).findLast((part) => part !== '') ?? 'Recipes');
