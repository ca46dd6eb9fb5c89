/**
 * Knows a change to a text as the ranges it replaces in the document.
 * Refuses to know why: each kind of change has a file of its own beside this one.
 */
import { type Document, editDocument, type PositionRange } from '../notation/document.ts';
import type { Span } from '../notation/tree.ts';

/** `text` may hold line feeds; they become the document's own line end. */
export interface TextEdit extends PositionRange {
  readonly text: string;
}

/** The document after all edits, none of which may overlap; of two insertions at one place the first stays first. */
export function applyEdits(document: Document, edits: readonly TextEdit[]): Document {
  const eol = lineEnd(document);
  const ordered = edits.map((edit, i) => ({ edit, i }));
  ordered.sort(
    (a, b) => b.edit.start.line - a.edit.start.line || b.edit.start.character - a.edit.start.character || b.i - a.i,
  );
  let edited = document;
  for (const { edit } of ordered)
    edited = editDocument(edited, edit, eol === '\n' ? edit.text : edit.text.replaceAll('\n', eol));
  return edited;
}

/** The line end the document uses. */
export const lineEnd = (document: Document): string => document.eols.find((e) => e !== '') ?? '\n';

/** Replaces a run of characters of one line. */
export function replaceSpan(line: number, span: Span, text: string): TextEdit {
  return { start: { line, character: span.start }, end: { line, character: span.end }, text };
}

/** A new line after the given one. */
export function insertLineAfter(document: Document, line: number, text: string): TextEdit {
  const end = document.lines[line]?.text.length ?? 0;
  return replaceSpan(line, { start: end, end }, `\n${text}`);
}

/** The whole line goes, with its line end. */
export function deleteLine(document: Document, line: number): TextEdit {
  const { length } = document.lines[line]?.text ?? '';
  if (line + 1 < document.lines.length)
    return { start: { line, character: 0 }, end: { line: line + 1, character: 0 }, text: '' };
  const before = document.lines[line - 1]?.text.length ?? 0;
  return {
    start: { line: Math.max(line - 1, 0), character: line === 0 ? 0 : before },
    end: { line, character: length },
    text: '',
  };
}

/** How far ahead two texts are looked through for a line that they share. */
const LOOK_AHEAD = 200;

/** The edits by which one document becomes another of the same line ends: runs of whole lines, those that both have left alone. */
export function editsBetween(before: Document, after: Document): TextEdit[] {
  const [old, made] = [before.lines, after.lines];
  const edits: TextEdit[] = [];
  let [i, j] = [0, 0];
  while (i < old.length || j < made.length) {
    if (i < old.length && j < made.length && old[i]?.text === made[j]?.text) {
      i++;
      j++;
      continue;
    }
    const [toOld, toMade] = nextShared(before, after, i, j);
    edits.push(
      replaceLines(
        before,
        i,
        toOld,
        made.slice(j, toMade).map(({ text }) => text),
      ),
    );
    [i, j] = [toOld, toMade];
  }
  return edits;
}

/** Where both go on with one line, with the fewest lines passed over; their ends where that is not near. */
function nextShared({ lines: old }: Document, { lines: made }: Document, i: number, j: number): [number, number] {
  for (let passed = 1; passed <= LOOK_AHEAD; passed++)
    for (let a = 0; a <= passed; a++) {
      const [here, there] = [old[i + a], made[j + passed - a]];
      if (here !== undefined && here.text === there?.text) return [i + a, j + passed - a];
    }
  return [old.length, made.length];
}

/** Other lines in the place of some, from the first up to the one that stays. */
function replaceLines({ lines }: Document, from: number, to: number, texts: readonly string[]): TextEdit {
  const end = { line: to, character: 0 };
  if (to < lines.length) return { start: { line: from, character: 0 }, end, text: texts.map((t) => `${t}\n`).join('') };
  const last = { line: lines.length - 1, character: lines.at(-1)?.text.length ?? 0 };
  const whole = texts.join('\n');
  // At the end, the line end before goes or comes with them.
  if (from > 0 && (from === to || texts.length === 0))
    return {
      start: { line: from - 1, character: lines[from - 1]?.text.length ?? 0 },
      end: last,
      text: texts.length === 0 ? '' : `\n${whole}`,
    };
  return { start: { line: from, character: 0 }, end: last, text: whole };
}
