/**
 * Knows which ingredients are curing salts, by the book or by the names they are sold under.
 * Refuses to know how much of one is too much.
 */

import { weighLine } from '../../recipe/list/line-weight.ts';
import type { Ingredient, World } from '../../recipe/model.ts';

/** Names that are in no book, and have no noun for it: `-cure`, `pink salt`. */
const SOLD_AS = /\b\w+cures?\b|^pink salt\b|^e ?2(?:49|50)\b|\bsel (?:rose|nitrit)|\bp[oö]e?kelsalz\b/i;

export const isCuringSalt = ({ food, match, name, free }: Ingredient): boolean =>
  food === undefined
    ? match.kind === 'unknown' && !free && (match.class === 'curing salt' || SOLD_AS.test(name))
    : food.class === 'curing salt';

/** A spoon of what is in no book weighs as curing salt does. */
export function weighedCure(ingredient: Ingredient, { book, measures }: World): Ingredient {
  const { weighed, node } = ingredient;
  const food = weighed.known || !isCuringSalt(ingredient) ? undefined : book.byId('curing-salt');
  if (food === undefined || node.amount?.kind !== 'measured') return ingredient;
  return { ...ingredient, weighed: weighLine(node, { kind: 'food', food }, { book, measures }) };
}
