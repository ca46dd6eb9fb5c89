/**
 * Knows how an amount is written anew at another size, in the writer's unit and manner.
 * Refuses to know the line around it.
 */

import { fractionText, gramsText, significant } from '../measure/number-text.ts';
import { statedSpan } from '../notation/item-amounts.ts';
import type { IngredientNode, MeasuredNode, NumeralNode, Span } from '../notation/tree.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

/** The edits that multiply an amount: its one or two numbers; unit, size and count word stay. */
export function scaleAmount(line: number, amount: MeasuredNode, by: number): TextEdit[] {
  if (amount.unit?.symbol === '%') return [];
  const edits = [replaceSpan(line, amount.low, scaledText(amount.low, amount, by))];
  if (amount.high !== undefined) edits.push(replaceSpan(line, amount.high, scaledText(amount.high, amount, by)));
  return edits;
}

/** Names stand this far behind the indent in the canonical layout; a long amount pushes its own on. */
const NAME_COLUMN = 10;

/**
 * The edit that keeps the name in its column when the amount before it has grown or shrunk by so many characters; a name
 * that a long amount had pushed on comes back to the column. Nothing where the writer left one blank and no column.
 */
export function keepColumn(line: number, text: string, amountEnd: number, grown: number): TextEdit[] {
  const gap = /^ */.exec(text.slice(amountEnd))?.[0].length ?? 0;
  const canonical = text.length - text.trimStart().length + NAME_COLUMN;
  const column = gap === 2 && amountEnd + gap > canonical ? canonical : amountEnd + gap;
  const wanted = Math.max(2, column - amountEnd - grown);
  return (gap < 2 && column !== canonical) || wanted === gap
    ? []
    : [replaceSpan(line, { start: amountEnd, end: amountEnd + gap }, ' '.repeat(wanted))];
}

/** Where a line's amounts stand, with what follows `=`; in `6 cloves` the name is no part of it. */
export function amountSpan(node: IngredientNode): Span | undefined {
  const { amount, name } = node;
  const stated = statedSpan(node);
  if (amount === undefined || stated === undefined) return undefined;
  if (name === undefined || name.start >= stated.end || name.start < stated.start) return stated;
  return { start: amount.start, end: amount.kind === 'measured' ? (amount.high ?? amount.low).end : amount.start };
}

/** By how many characters edits make their line longer. */
export const grownBy = (edits: readonly TextEdit[]): number =>
  edits.reduce((sum, e) => sum + e.text.length - (e.end.character - e.start.character), 0);

/** One number of an amount at another size, as a kitchen writes it. */
export function scaledText(numeral: NumeralNode, amount: MeasuredNode, by: number): string {
  const value = numeral.value * by;
  switch (amount.unit?.symbol) {
    case 'g':
    case 'ml':
      return gramsText(value);
    case 'mg':
    case 'kg':
    case 'l':
    case 'cl':
    case 'dl':
      return significant(value);
    case undefined:
    case 'tsp':
    case 'tbsp':
    case 'cup':
    case 'pint':
    case 'quart':
    case 'gallon':
    case 'pinch':
    case 'dash':
    case 'drop':
      return fractionText(value, numeral.style === 'glyph') ?? significant(value, value >= 100 ? 3 : 2);
    default:
      return numeral.style === 'decimal'
        ? significant(value)
        : (fractionText(value, numeral.style === 'glyph') ?? significant(value));
  }
}

/** `240 g`: what an amount in grams is written as. */
export const gramsAmount = (grams: number): string => `${gramsText(grams)} g`;
