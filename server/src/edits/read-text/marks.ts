/**
 * Knows the marks of a page that are no part of what a line says: bullets, boxes to tick, typographic blanks and quotes.
 * Refuses to change a word.
 */

/** The line with plain blanks and quotes, and without the bullet or number in front of it. */
export const withoutMarks = (printed: string): string => plainly(printed).replace(BULLET, '').trim();

/** A bullet, a box, or the number of an item: `•`, `[ ]`, `2.`, `3)`. */
const BULLET = /^\s*(?:\[[ xX]?\]\s*|[-–—•*·▪▢□☐◦‣○●✓✔]+(?=\s|\p{L}|\d|[¼-¾⅐-⅞])\s*|\d+[.)](?=\s)\s*)+/u;

/** Blanks and quotes as a keyboard has them. */
export function plainly(printed: string): string {
  return printed
    .replace(/[\u00a0\u2002-\u200a\u202f\u3000\t]/g, ' ')
    .replace(/[\u200b\u2060\ufeff]|\u200c|\u200d/g, '')
    .replace(/[‘’]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/⁄/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}
