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
