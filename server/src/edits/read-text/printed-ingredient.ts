/**
 * Knows which printed lines of a list the notation reads as they stand, once the marks of the page are off them.
 * Refuses to reword: a line that is not understood as a line of the notation is not understood.
 */
import { readLine } from '../../notation/statements.ts';
import { bindBare } from '../../recipe/list/bare-line.ts';
import { bindIngredients } from '../../recipe/list/ingredient.ts';
import { leavesFigure } from '../../recipe/list/not-understood.ts';
import type { Ingredient, World } from '../../recipe/model.ts';
import { withoutMarks } from './marks.ts';

/** Longer than any line of a list. */
const LONGEST = 400;

/** The line of the notation for a printed one, without indent; undefined where it is not understood. */
export function readIngredient(printed: string, world: World): string | undefined {
  if (printed.length > LONGEST) return undefined;
  const text = asList(printed);
  return [text, rearranged(text), amountFirst(text), named(text, world)].find(
    (line) => line !== undefined && isUnderstood(line, world),
  );
}

/** Whether a line that ends in `or` goes on in the next one. */
export const goesOn = (printed: string): boolean => /[\s,]or\s*$/i.test(printed);

function asList(printed: string): string {
  return (
    withoutMarks(printed)
      .replace(/\[([^\]]*)\]/g, '($1)')
      .replace(/[*†‡.;,]+$/, '')
      // The size of a can stays.
      .replace(/#(?!\s?\d[\d ½/.-]*\s?(?:cans?|tins?)\b)(\d+)?/gi, (_, number?: string) =>
        number === undefined ? ' ' : `(no. ${number})`,
      )
      .replaceAll('\\', ' ')
      .trim()
  );
}

/** Read back, every ingredient of it has a name, and no figure is left over. */
function isUnderstood(line: string, world: World): boolean {
  const found = ingredientsOf(line, world);
  return found.length > 0 && !found.some((i) => leavesFigure(i, world));
}

function ingredientsOf(line: string, world: World): readonly Ingredient[] {
  const { statement, faults, comment } = readLine(line);
  if (comment !== undefined) return [];
  if (statement.kind === 'unread') return statement.bare === undefined ? [] : bindBare(statement.bare, 0, world);
  return statement.kind === 'ingredient' && faults.length === 0 ? bindIngredients(statement, 0, world) : [];
}

/** What the notation has in other words: `Optional: 1 tbsp capers`. */
function rearranged(text: string): string | undefined {
  const optional = /^optional\s*:?\s+/i.exec(text);
  if (optional !== null) return `optional ${text.slice(optional[0].length)}`;
  return undefined;
}

/** `Nonfat milk .... 1 qt` where the book has no such food: only a list tells that it is one, and in front the amount says so. */
function amountFirst(text: string): string | undefined {
  const { statement } = readLine(text);
  const amount = statement.kind === 'unread' ? statement.bare?.amount : undefined;
  if (amount?.kind !== 'measured' || amount.unit === undefined || text.includes(',', amount.end)) return undefined;
  return `${text.slice(amount.start)} ${text.slice(0, amount.start).replace(/[\s.…:=·–-]+$/, '')}`;
}

/** In a list of ingredients the name of a food alone is one, as much of it as is needed. */
function named(text: string, world: World): string | undefined {
  if (!/^\p{L}[\p{L}' -]{2,40}$/u.test(text) || world.book.findInText(text).kind === 'unknown') return undefined;
  return `as needed ${text}`;
}
