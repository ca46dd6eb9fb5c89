/**
 * Knows where the writer of a recipe finds a line of it that was written out in full.
 */
import type { Snapshot } from '../workspace/snapshot.ts';

/** `line 7`, or `line 7 of tart.quern` where a base says it, or `file` is given. */
export function sayLineIn({ whole }: Snapshot, file?: string): (line: number) => string {
  return (line) => {
    const origin = whole.writtenFrom?.lines[line]?.origin;
    const of = origin?.kind === 'base' ? nameOf(origin.path) : file;
    return `line ${(origin?.line ?? line) + 1}${of === undefined ? '' : ` of ${of}`}`;
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

const nameOf = (path: string): string => path.split('/').at(-1) ?? path;
