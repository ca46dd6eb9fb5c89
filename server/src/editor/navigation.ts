/**
 * Knows where a name is defined, where it is spoken of, and which words belong together under the caret.
 * Refuses to know other files.
 */

import type { Position } from '../notation/document.ts';
import { sameName } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { namedAt, type Occurrence, occurrences } from './occurrences.ts';
import { cursorAt, holds, ingredientAt, type Place, placeOf } from './place.ts';

/** The line a name is defined on. */
export function definition(snapshot: Snapshot, position: Position): Place | undefined {
  const found = namedAt(snapshot, position);
  return found === undefined ? undefined : occurrences(snapshot, found.named).find((o) => o.role === 'definition');
}

/** The name of the food under the cursor: of an ingredient's line, or after `like`. */
export function foodName(snapshot: Snapshot, position: Position): string | undefined {
  const cursor = cursorAt(snapshot, position);
  const { character } = cursor;
  const { statement } = cursor.line;
  if (statement.kind === 'like' && holds(statement.name, character)) return statement.name.text;
  const ingredient = ingredientAt(cursor)?.ingredient;
  if (ingredient === undefined) return undefined;
  const other = ingredient.others?.find(({ name }) => holds(name, character));
  if (other !== undefined) return other.match.kind === 'food' ? other.match.food.name : other.name.text;
  return holds(ingredient.nameNode, character) ? (ingredient.food?.name ?? ingredient.name) : undefined;
}

/** The name of the `food` block that describes a food, in one file. */
export function foodBlock(snapshot: Pick<Snapshot, 'outline'>, name: string): Place | undefined {
  for (const { at, lines } of snapshot.outline.foods) {
    const first = lines[0]?.statement;
    if (first?.kind !== 'food' || first.name === undefined) continue;
    const names = lines.flatMap(({ statement }) =>
      statement.kind === 'also' ? statement.names.map((n) => n.text) : [],
    );
    if ([first.name.text, ...names].some((n) => sameName(n, name))) return placeOf(at, first.name);
  }
  return undefined;
}

export function references(snapshot: Snapshot, position: Position, withDefinition: boolean): Place[] {
  const found = namedAt(snapshot, position);
  if (found === undefined) return [];
  return occurrences(snapshot, found.named).filter((o) => withDefinition || o.role !== 'definition');
}

export function highlights(snapshot: Snapshot, position: Position): Occurrence[] {
  const found = namedAt(snapshot, position);
  return found === undefined ? [] : occurrences(snapshot, found.named);
}
