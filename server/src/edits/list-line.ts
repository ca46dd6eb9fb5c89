/**
 * Knows where a line of a list stands in the document, and how a new one is written beside it.
 * Refuses to know what is on it.
 */
import type { Document } from '../notation/document.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';
import { indentOf } from './set-amount.ts';

/** The line of the document on which an ingredient of a part stands. */
export const lineOf = (recipe: Recipe, part: Part, { line }: Ingredient): number =>
  (recipe.partsAt[part.index] ?? 0) + line;

/** Whether a line holds this ingredient and no other: only then it can be moved, merged or deleted for it. */
export const isOnOwnLine = ({ head }: Part, { line }: Ingredient): boolean =>
  head.ingredients.filter((i) => i.line === line).length === 1;

/** A line of an amount and a name, indented and in the column of the line beside it. */
export function newLine(
  document: Document,
  recipe: Recipe,
  part: Part,
  beside: Ingredient,
  amount: string,
  name: string,
): string {
  const line = lineOf(recipe, part, beside);
  const indent = indentOf(document, line);
  const column = Math.max(0, Math.min((beside.node.name?.start ?? 0) - indent.length, 10));
  return `${indent}${amount.padEnd(Math.max(column, amount.length + 2))}${name}`;
}
