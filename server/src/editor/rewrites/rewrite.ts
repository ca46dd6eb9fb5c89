/**
 * Knows what a rewrite offered at a place is.
 * Refuses to know how any is made: each family has a file of its own beside this one.
 */
import type { TextEdit } from '../../edits/text-edit.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { cursorAt, ingredientAt } from '../place.ts';

export type RewriteKind =
  | 'quickfix'
  | 'refactor.rewrite'
  | 'refactor.extract'
  | 'refactor.move'
  | 'source.organizeIngredients.quern';

export interface Rewrite {
  /** An order, in a cook's words; no two at one place are alike. */
  readonly title: string;
  readonly kind: RewriteKind;
  readonly edits: () => readonly TextEdit[];
}

/** The list line that a range begins on, with its part. */
export function listedAt(
  snapshot: Snapshot,
  { start }: PositionRange,
): { readonly part: Part; readonly ingredient: Ingredient } | undefined {
  const cursor = cursorAt(snapshot, start);
  const { part } = cursor;
  const ingredient = ingredientAt(cursor)?.ingredient;
  return part === undefined || ingredient === undefined ? undefined : { part, ingredient };
}
