/**
 * Knows a text as its lines, each read once, and makes a new document from an edit by reading only the lines it touched.
 * Refuses to know what the lines mean together.
 */
import { onceByText } from '../measure/once.ts';
import { readLine } from './statements.ts';
import type { Line } from './tree.ts';

export interface Position {
  readonly line: number;
  /** UTF-16 units. */
  readonly character: number;
}

export interface PositionRange {
  readonly start: Position;
  readonly end: Position;
}

/** A text, read. Always at least one line; the last has an empty line end. */
export interface Document {
  readonly lines: readonly Line[];
  readonly eols: readonly string[];
}

export function parseDocument(text: string): Document {
  const seen = new Map<string, Line>();
  return readLines(text, (line) => {
    let read = seen.get(line);
    if (read === undefined) {
      read = readLine(line);
      seen.set(line, read);
    }
    return read;
  });
}

/** The same for a text put together from others: a line that was read for one of them lately is the same object. */
export const parseTogether = (text: string): Document => readLines(text, readLately);

/** Those of some hundred recipes. */
const readLately = onceByText(readLine, { texts: 10_000, letters: 2000 });
/** The document after the text between two positions is replaced. Positions outside the text are clamped to it. */
export function editDocument(document: Document, range: PositionRange, newText: string): Document {
  const start = clamp(document, range.start);
  const end = clamp(document, range.end);
  if (start.line > end.line || (start.line === end.line && start.character > end.character)) {
    return editDocument(document, { start: range.end, end: range.start }, newText);
  }
  const lineText = (i: number) => document.lines[i]?.text ?? '';
  // The line end before and after belong to the stretch: a lone CR and a following LF become one line end.
  const from =
    start.line > 0 && document.eols[start.line - 1] === '\r' && start.character === 0 ? start.line - 1 : start.line;
  const head = from < start.line ? `${lineText(from)}\r` : lineText(start.line).slice(0, start.character);
  const lastEol = document.eols[end.line] ?? '';
  const joins = lastEol === '\n' && end.line + 1 < document.lines.length;
  const middle = readLines(head + newText + lineText(end.line).slice(end.character) + (joins ? lastEol : ''), readLine);
  const lines = document.lines.slice(0, from);
  const eols = document.eols.slice(0, from);
  const whole = joins ? middle.lines.length - 1 : middle.lines.length;
  for (let i = 0; i < whole; i++) {
    const line = middle.lines[i] as Line;
    const old = document.lines[from + i];
    lines.push(old?.text === line.text ? old : line);
    eols.push(i === whole - 1 && !joins ? lastEol : (middle.eols[i] ?? ''));
  }
  return {
    lines: lines.concat(document.lines.slice(end.line + 1)),
    eols: eols.concat(document.eols.slice(end.line + 1)),
  };
}

/** The text of the document, character for character. */
export function printDocument(document: Document): string {
  let text = '';
  for (let i = 0; i < document.lines.length; i++) text += (document.lines[i]?.text ?? '') + (document.eols[i] ?? '');
  return text;
}

/** The nearest position that is in the document and not inside a line end. */
export function clamp(document: Document, position: Position): Position {
  if (position.line < 0) return { line: 0, character: 0 };
  const last = document.lines.length - 1;
  const line = Math.min(position.line, last);
  const length = document.lines[line]?.text.length ?? 0;
  const character = position.line > last ? length : Math.max(0, Math.min(position.character, length));
  return { line, character };
}

/** Cuts a text at every LF, CR LF and lone CR. */
function readLines(text: string, read: (line: string) => Line): Document {
  const lines: Line[] = [];
  const eols: string[] = [];
  let from = 0;
  let lf = text.indexOf('\n');
  let cr = text.indexOf('\r');
  while (lf >= 0 || cr >= 0) {
    const isLf = cr < 0 || (lf >= 0 && lf < cr);
    const end = isLf ? lf : cr;
    const eol = isLf ? '\n' : lf === cr + 1 ? '\r\n' : '\r';
    lines.push(read(text.slice(from, end)));
    eols.push(eol);
    from = end + eol.length;
    if (lf >= 0 && lf < from) lf = text.indexOf('\n', from);
    if (cr >= 0 && cr < from) cr = text.indexOf('\r', from);
  }
  lines.push(read(text.slice(from)));
  eols.push('');
  return { lines, eols };
}
