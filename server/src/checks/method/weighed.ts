/**
 * Knows whether all that a part is made of has a weight.
 */
import type { FoodClass } from '../../food/food.ts';
import { isIn } from '../../recipe/list/families.ts';
import { isAside } from '../../recipe/measures/contents.ts';
import type { Part, PartHead } from '../../recipe/model.ts';
import { listedPart } from '../../recipe/part.ts';
import { onceFor } from '../once.ts';

export const isWeighed = onceFor(
  ({ head, includes }: Part): boolean =>
    isListWeighed(head) &&
    // A part that is on another's list would be counted twice.
    !includes.some((other) => listedPart(head, other.name) !== undefined),
);

/** The same of the list alone, with the parts that stand on it. */
export const isListWeighed = ({ ingredients, massG, nominal }: PartHead): boolean =>
  massG.complete &&
  !nominal &&
  // Where its flour is a percentage, a part takes its batch from the yield itself; what is added as needed is not in the sum, but for flour to dust with, and oil.
  !ingredients.some(
    (i) =>
      (i.percent !== undefined && i.food?.class === 'flour') ||
      (i.free && isBulk(i.food?.class) && (isIn(i, 'water') || !isAside(i))),
  );

const BULK: ReadonlySet<FoodClass> = new Set(['water', 'flour', 'stock', 'milk', 'sugar', 'grain']);
const isBulk = (kind: FoodClass | undefined): boolean => kind === undefined || BULK.has(kind);
