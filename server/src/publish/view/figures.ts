/**
 * Knows how a figure, its cell and its bar are written in the tables of the page: numerals on the point, lengths in per cent.
 * Refuses to know what any of them is of.
 */
import { escapeHtml } from '../escape-html.ts';

/** From 10 up whole, below that one decimal; `<0.1` of what is there and too little for that. */
export function figure(value: number): string {
  if (value === 0) return '0';
  if (Math.abs(value) < 0.05) return '<0.1';
  return value >= 9.95 ? String(Math.round(value)) : value.toFixed(1);
}

/** Whole numbers keep room for the decimal that others of their column have. */
export const figureCell = (value: number, more = ''): string => {
  const text = figure(value);
  return `<td class="n${text.includes('.') ? '' : ' d0'}${more}">${escapeHtml(text)}</td>`;
};

/** A length in per cent of the drawing; never outside it. */
export const percentOf = (value: number): string => `${Number(Math.min(100, Math.max(0, value)).toFixed(1))}%`;

export interface Piece {
  readonly class: 'bar' | 'ink' | 'notknown';
  /** Per cent of the full width. */
  readonly from?: number;
  readonly width: number;
}

/** A bar that says again what stands beside it. */
export function bar(pieces: readonly Piece[], more = ''): string {
  const drawn = pieces.map(({ class: of, from = 0, width }) => {
    const x = from > 0 ? ` x="${percentOf(from)}"` : '';
    return `<rect class="${of}"${x} width="${percentOf(Math.min(width, 100 - from))}" height="9"/>`;
  });
  return `<svg class="draw" height="9" aria-hidden="true">${drawn.join('')}${more}</svg>`;
}

/** `salt, eggs and butter`, each bold. */
export function namesIn(names: readonly string[]): string {
  const bold = names.map((name) => `<b>${escapeHtml(name)}</b>`);
  const last = bold.pop() ?? '';
  return bold.length === 0 ? last : `${bold.join(', ')} and ${last}`;
}

/** What leads to a line of the text, where there is one. */
export const lineLink = (line: number | undefined, words: string): string =>
  line === undefined
    ? escapeHtml(words)
    : `<a class="at" href="#line-${line}" data-line="${line}">${escapeHtml(words)}</a>`;
