/**
 * Knows how much of a recipe is customarily eaten at once by the law of the United States, from `data/label/reference-amounts.tsv`: by the kinds of its parts, or
 * by the category that somebody names.
 * Refuses to guess one where the parts are of no kind.
 */
import referenceText from '../../../data/label/reference-amounts.tsv';
import { once } from '../../measure/once.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { plainKind } from '../kind-evidence.ts';
import type { Recipe } from '../model.ts';

export interface Reference {
  readonly id: string;
  /** As the law's table has it. */
  readonly name: string;
  /** Absent where the law gives a household measure alone. */
  readonly grams?: number;
  /** `1 cup`, of what is no piece. */
  readonly measure?: string;
}

interface Row extends Reference {
  readonly kinds: readonly string[];
  readonly beside: string;
}

const ROWS = once(() =>
  rowsIn(referenceText).map(
    ([id = '', name = '', grams = '', measure = '', kinds, beside = '']): Row => ({
      id,
      name,
      ...(grams !== '' && { grams: Number(grams) }),
      ...(measure !== '' && { measure }),
      kinds: wordsIn(kinds),
      beside,
    }),
  ),
);

export const references = (): readonly Reference[] => ROWS();

export const referenceNamed = (id: string): Reference | undefined => ROWS().find((row) => row.id === id);

/** The first category that a kind of the recipe is of. */
export function referenceOf({ parts }: Recipe): Reference | undefined {
  const listing = parts.filter(({ head }) => head.ingredients.length > 0);
  const kinds = new Set(listing.flatMap((part) => (part.head.kind ?? plainKind(part))?.name ?? []));
  const beside = listing.length > 1 ? 'with' : 'alone';
  return ROWS().find(
    (row) => (row.beside === '' || row.beside === beside) && row.kinds.some((kind) => kinds.has(kind)),
  );
}
