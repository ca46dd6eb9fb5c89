/**
 * Knows what a recipe makes, in the words of its yield.
 * Refuses to know what it weighs.
 */
import type { Statement } from '../notation/tree.ts';

export type YieldNode = Extract<Statement, { kind: 'yield' }>;

/** What is made: `rolls of 60 g`, `loaf (12 slices)`; servings where the line only says how many it serves. */
export function yieldNoun({ amount, of, serves }: YieldNode): string {
  const words = of?.text.trim() ?? '';
  if (!serves) return words === '' ? (amount?.unit?.symbol ?? '') : words;
  return words === ''
    ? 'servings'
    : /^(?:people|persons|servings?|portions?)\b/.test(words)
      ? words
      : `servings ${words}`;
}

/** `rolls of 60 g` are rolls, `small tarts (for four)` tarts. */
export const pieceNoun = (words: string): string => words.replace(/(?: of | \(|,).*$/, '').trim();

/** The yield as written, its noun once: `1 loaf (12 slices)`, `6-8 servings`; `line` is its line. */
export function yieldWords(node: YieldNode, line: string): string | undefined {
  const { amount, of, serves } = node;
  if (amount === undefined) return undefined;
  if (serves) return `${line.slice(amount.start, amount.end).trim()} ${yieldNoun(node)}`;
  return line.slice(amount.start, Math.max(amount.end, of?.end ?? 0)).trim();
}
