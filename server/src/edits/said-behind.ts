/**
 * Knows what a line says of its amount behind the name: further terms, and the same once more, with the signs that bring them.
 * Refuses to know what is written instead.
 */
import { statedSpan } from '../notation/item-amounts.ts';
import type { IngredientNode, Span } from '../notation/tree.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

/** The edits that take spans of a line away. */
export const dropped = (line: number, spans: readonly Span[]): TextEdit[] =>
  spans.map((span) => replaceSpan(line, span, ''));

/** The terms of a sum behind the name. */
export function termsBehind(text: string, { amount, name }: IngredientNode): readonly Span[] {
  if (amount?.kind !== 'measured' || name === undefined) return [];
  return (amount.plus ?? [])
    .filter((t) => t.start >= name.end)
    .map(({ start, end }) => ({
      start: start - (/\s*,?\s*(?:[+&]|plus|and)\s*$/i.exec(text.slice(0, start))?.[0].length ?? 0),
      end,
    }));
}

/** The same, and what says the amount again behind the name, with its sign or bracket. */
export function saidBehind(text: string, node: IngredientNode): readonly Span[] {
  const { name, beside = [] } = node;
  const front = statedSpan(node)?.end ?? 0;
  const spans = beside
    .filter((b) => b.start >= Math.max(front, name?.end ?? 0))
    .map(({ sign, start, end }): Span => {
      const opens = sign === '(' ? text.lastIndexOf('(', start) : start;
      const closes =
        sign === '('
          ? text.indexOf(')', end) + 1
          : end + (/^\s*(?:each|apiece|in all|in total)\b/i.exec(text.slice(end))?.[0].length ?? 0);
      const blanks = /\s*$/.exec(text.slice(0, Math.max(0, opens)))?.[0].length ?? 0;
      return { start: Math.max(0, opens) - blanks, end: Math.max(closes, end) };
    });
  return [...termsBehind(text, node), ...spans.filter((s, i) => spans.findIndex((t) => t.start === s.start) === i)];
}
