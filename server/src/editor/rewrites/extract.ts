/**
 * Knows when the selected lines can become a part of their own.
 * Refuses a caret alone: what goes with what is the writer's to say.
 */
import { extractPart } from '../../edits/extract-part.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { partAt } from '../place.ts';
import type { Rewrite } from './rewrite.ts';

export function extractRewrites(snapshot: Snapshot, { start, end }: PositionRange): Rewrite[] {
  const { document, recipe } = snapshot;
  if (start.line === end.line && start.character === end.character) return [];
  const part = partAt(snapshot, start.line);
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  if (part === undefined || partAt(snapshot, last) !== part) return [];
  const extracted = extractPart(document, recipe, part, start.line, last);
  return extracted === undefined
    ? []
    : [
        {
          title: `Make a part of the selected lines: ${extracted.name}`,
          kind: 'refactor.extract',
          edits: () => extracted.edits,
        },
      ];
}
