/**
 * Knows whether all that a part is made of has a weight.
 */
import type { FoodClass } from '../../food/food.ts';
import type { Part } from '../../recipe/model.ts';
import { listedPart } from '../../recipe/part.ts';
import { onceFor } from '../once.ts';

export const isWeighed = onceFor(
  ({ head, includes }: Part): boolean =>
    head.massG.complete &&
    !head.nominal &&
    // A part in percentages takes its batch from the yield itself; what is added as needed is not in the sum.
    !head.ingredients.some((i) => i.percent !== undefined || (i.free && isBulk(i.food?.class))) &&
    // A part that is on another's list would be counted twice.
    !includes.some((other) => listedPart(head, other.name) !== undefined),
);

const BULK: ReadonlySet<FoodClass> = new Set(['water', 'flour', 'stock', 'milk', 'oil', 'sugar', 'grain']);
const isBulk = (kind: FoodClass | undefined): boolean => kind === undefined || BULK.has(kind);
