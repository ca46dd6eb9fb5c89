/**
 * Knows how a variant becomes a recipe that stands alone: what it inherits is written into it, and every remark is kept.
 * Refuses where a file or part it builds on is not there.
 */
import type { TextEdit } from '../edits/text-edit.ts';
import { parseDocument } from '../notation/document.ts';
import { layout } from '../notation/layout.ts';
import type { Snapshot } from './snapshot.ts';
import { isSpacer } from './written.ts';

/** Undefined for a file that builds on nothing, or on what is not there. */
export function writeInFull(snapshot: Snapshot): TextEdit[] | undefined {
  const { written, whole, document } = snapshot;
  if (written === undefined || whole === snapshot || !snapshot.isWhole) return undefined;
  const own = new Set(written.lines.flatMap(({ origin }) => (origin.kind === 'own' ? [origin.line] : [])));
  const foods = snapshot.outline.foods.filter(({ at }) => !own.has(at));
  const kept = new Set([...own, ...foods.flatMap(({ at, lines }) => lines.map((_, i) => at + i))]);
  const before = remarksBefore(snapshot, kept);
  const lines: string[] = [];
  for (const line of written.lines) {
    const { text, origin } = line;
    if (origin.kind === 'base' || isSpacer(line, document)) {
      lines.push(text);
      continue;
    }
    lines.push(...(before.get(origin.line) ?? []), withRemark(text, snapshot, origin.line));
    before.delete(origin.line);
  }
  for (const { at, lines: block } of foods) {
    lines.push('', ...(before.get(at) ?? []), ...block.map((line) => line.text));
    before.delete(at);
  }
  lines.push(...[...before.values()].flat());
  return changed(
    document.lines.map((l) => l.text),
    layout(parseDocument(tidy(lines).join('\n'))),
  );
}

/** Remarks of lines that are not written out, by the next line that is; those after the last by -1. */
function remarksBefore({ document }: Snapshot, kept: ReadonlySet<number>): Map<number, string[]> {
  const before = new Map<number, string[]>();
  let waiting: string[] = [];
  document.lines.forEach(({ comment }, at) => {
    if (kept.has(at)) {
      if (waiting.length > 0) before.set(at, waiting);
      waiting = [];
    } else if (comment !== undefined) waiting.push(`  ${comment.text}`);
  });
  if (waiting.length > 0) before.set(-1, waiting);
  return before;
}

/** A line that was written out without its remark gets it back. */
function withRemark(text: string, { document }: Snapshot, line: number): string {
  const remark = document.lines[line]?.comment?.text;
  return remark === undefined || text.includes(remark) ? text : `${text.trimEnd()}  ${remark}`;
}

/** One blank line where several would stand, and none at the end but the last line's own. */
function tidy(lines: readonly string[]): string[] {
  const tidied = lines.filter((text, i) => text.trim() !== '' || (lines[i - 1] ?? '').trim() !== '');
  while (tidied.at(-1)?.trim() === '') tidied.pop();
  return [...tidied, ''];
}

/** One edit for the lines between what begins and what ends alike. */
function changed(before: readonly string[], after: readonly string[]): TextEdit[] {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  if (head === before.length && head === after.length) return [];
  // A line that begins and ends alike at both ends is left to the tail.
  const last = before.length - tail;
  const rest = after.slice(head, after.length - tail);
  if (tail === 0)
    return [
      {
        start: { line: head, character: 0 },
        end: { line: before.length - 1, character: before.at(-1)?.length ?? 0 },
        text: rest.join('\n'),
      },
    ];
  return [
    {
      start: { line: head, character: 0 },
      end: { line: last, character: 0 },
      text: rest.map((l) => `${l}\n`).join(''),
    },
  ];
}
