/**
 * Knows what a conversion is asked, what it answers, and how it stands while it is worked out.
 * Refuses to convert anything.
 */
import type { Document } from '../notation/document.ts';
import type { Span } from '../notation/tree.ts';
import type { Recipe } from '../recipe/model.ts';
import type { TextEdit } from './text-edit.ts';

export const CONVERSIONS = [
  'weight',
  'us',
  'metric',
  'percent',
  'celsius',
  'fahrenheit',
  'gas',
  'fan',
  'still',
] as const;
export type ConvertTo = (typeof CONVERSIONS)[number];

export interface ConvertWish {
  readonly to: ConvertTo;
  /** Both measures side by side: `1 cup = 120 g`. */
  readonly both?: boolean;
  /** First and last line of the document to touch; all where absent. */
  readonly lines?: { readonly first: number; readonly last: number };
  /** Places by line of the document on which something is wrong: what stands there is left for the cook to mend first. */
  readonly marked?: readonly Marked[];
  /** What all flour weighs, for percentages that nothing else fixes. */
  readonly flourG?: number;
}

export interface Marked extends Span {
  readonly line: number;
}

export interface Conversion {
  readonly edits: readonly TextEdit[];
  /** One line a change: `plain flour 1 cup → 125 g`. */
  readonly changes: readonly string[];
  /** What could not be converted, and what is less sure than it looks. */
  readonly said: readonly string[];
}

/** A conversion under way. */
export interface Work {
  readonly document: Document;
  readonly recipe: Recipe;
  readonly wish: ConvertWish;
  readonly edits: TextEdit[];
  readonly changes: string[];
  readonly said: string[];
  readonly uncertain: string[];
}

/** Whether a line is asked for. */
export const isWanted = ({ wish: { lines } }: Work, line: number): boolean =>
  lines === undefined || (line >= lines.first && line <= lines.last);

/** Whether something is wrong with the span, or with any of the line, so that it stays; which is said. */
export function isLeft({ wish: { marked = [] }, said }: Work, line: number, span?: Span): boolean {
  const isMarked = marked.some(
    (m) => m.line === line && (span === undefined || (m.start < span.end && span.start < m.end)),
  );
  const words = `Line ${line + 1} stays as written until what is wrong there is mended.`;
  if (isMarked && !said.includes(words)) said.push(words);
  return isMarked;
}
