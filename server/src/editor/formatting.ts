/**
 * Knows the edits that bring a text into canonical layout: per line, only the stretch that differs.
 * Needs the tree only. Refuses to touch lines outside the wanted ones.
 */
import type { TextEdit } from '../edits/text-edit.ts';
import { layout } from '../notation/layout.ts';
import type { Snapshot } from '../workspace/snapshot.ts';

/** `from` and `to` are lines of the document, both included. */
export function formatting(snapshot: Snapshot, from = 0, to = Number.POSITIVE_INFINITY): TextEdit[] {
  const { document } = snapshot;
  const edits: TextEdit[] = [];
  layout(document, snapshot.outline).forEach((text, line) => {
    const old = document.lines[line]?.text ?? '';
    if (line < from || line > to || old === text) return;
    edits.push(differing(line, old, text));
  });
  return edits;
}

function differing(line: number, old: string, text: string): TextEdit {
  const most = Math.min(old.length, text.length);
  let head = 0;
  while (head < most && old[head] === text[head]) head++;
  let tail = 0;
  while (tail < most - head && old[old.length - 1 - tail] === text[text.length - 1 - tail]) tail++;
  return {
    start: { line, character: head },
    end: { line, character: old.length - tail },
    text: text.slice(head, text.length - tail),
  };
}
