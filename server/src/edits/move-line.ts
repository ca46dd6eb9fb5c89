/**
 * Knows how a line of a list, or a step, changes places with the one beside it; what is accepted above it, remarks
 * and pictures go along.
 * Refuses to leave the part, and to mix lists and steps.
 */
import type { Document } from '../notation/document.ts';
import type { Line } from '../notation/tree.ts';
import type { Recipe } from '../recipe/model.ts';
import type { TextEdit } from './text-edit.ts';

/** One edit over both; undefined where nothing of the same sort stands on that side. `line` is the document's. */
export function moveLine(
  { lines }: Document,
  { parts, partsAt }: Recipe,
  line: number,
  by: 1 | -1,
): TextEdit | undefined {
  const part = parts.find(({ head, index }) => {
    const from = partsAt[index] ?? 0;
    return line >= from && line < from + head.source.lines.length;
  });
  const from = part === undefined ? 0 : (partsAt[part.index] ?? 0);
  const sort = sortOf(lines[line]);
  if (part === undefined || sort === undefined) return undefined;
  const rows = rowsIn(lines, from, from + part.head.source.lines.length);
  const at = rows.findIndex(({ main }) => main === line);
  const [upper, lower] = by < 0 ? [rows[at - 1], rows[at]] : [rows[at], rows[at + 1]];
  if (upper === undefined || lower === undefined || upper.last + 1 !== lower.first) return undefined;
  if (sortOf(lines[upper.main]) !== sortOf(lines[lower.main])) return undefined;
  const textOf = ({ first, last }: Row): string =>
    lines
      .slice(first, last + 1)
      .map(({ text }) => text)
      .join('\n');
  return {
    start: { line: upper.first, character: 0 },
    end: { line: lower.last, character: lines[lower.last]?.text.length ?? 0 },
    text: `${textOf(lower)}\n${textOf(upper)}`,
  };
}

/** A line that says something, with those above and below that belong to it. */
interface Row {
  readonly first: number;
  readonly main: number;
  last: number;
}

function rowsIn(lines: readonly Line[], from: number, to: number): Row[] {
  const rows: Row[] = [];
  let first: number | undefined;
  for (let at = from; at < to; at++) {
    const line = lines[at];
    const row = rows.at(-1);
    if (sortOf(line) !== undefined) {
      rows.push({ first: first ?? at, main: at, last: at });
      first = undefined;
    } else if (line?.statement.kind === 'picture' && row?.last === at - 1) row.last = at;
    else if (line !== undefined && belongsBelow(line)) first ??= at;
    else first = undefined;
  }
  return rows;
}

/** What is accepted, and a remark, stand above what they are of. */
const belongsBelow = ({ statement, comment }: Line): boolean =>
  statement.kind === 'allow' || (statement.kind === 'blank' && comment !== undefined);

function sortOf(line: Line | undefined): 'list' | 'step' | undefined {
  const kind = line?.statement.kind;
  if (kind === 'step') return 'step';
  return kind === 'ingredient' || kind === 'unread' ? 'list' : undefined;
}
