/** The line of a list, or the step, that a range begins on, one place up or down within its part. */
import { moveLine } from '../../edits/move-line.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Rewrite } from './rewrite.ts';

export function moveRewrites({ document, recipe }: Snapshot, { start }: PositionRange): Rewrite[] {
  const way = (title: string, by: 1 | -1): Rewrite[] => {
    const moved = moveLine(document, recipe, start.line, by);
    return moved === undefined ? [] : [{ title, kind: 'refactor.move', edits: () => [moved] }];
  };
  return [...way('Move the line up', -1), ...way('Move the line down', 1)];
}
