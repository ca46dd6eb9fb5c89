/**
 * Knows the ingredients of one line worked out: which food each is, what it weighs and why.
 * Refuses to know what the steps do with it.
 */

import type { Food, FoodMatch, Weighed } from '../food/food.ts';
import type { Range } from '../measure/quantity.ts';
import type { IngredientNode, TextNode } from '../notation/tree.ts';
import { namedOn } from './line-names.ts';
import { weighLine, weighTakes } from './line-weight.ts';
import type { World } from './world.ts';

export interface Ingredient {
  /** The line in its part, from 0. */
  readonly line: number;
  readonly node: IngredientNode;
  /** What it is called, without preparation. */
  readonly name: string;
  /** Where on its line the name stands: of two on one line, each has its own. */
  readonly nameNode: TextNode;
  readonly match: FoodMatch;
  readonly food?: Food;
  /** What goes into the part, trimmed. */
  readonly weighed: Weighed;
  /** A baker's percentage, when the line is written in one. */
  readonly percent?: Range;
  readonly optional: boolean;
  /** `to taste`, `as needed`, and no amount where the purpose or the food allows it. */
  readonly free: boolean;
  /** The alternatives behind `or`, which may be taken in its place. */
  readonly others?: readonly Named[];
  /** Foods that the line names besides, and that may be in it: `cream, or coconut milk`. */
  readonly mayHold?: readonly Named[];
  /** What is taken out of it, where that is more than one thing: `zest and juice of 1 lemon`. */
  readonly takes?: readonly FoodMatch[];
  /** Another ingredient of the same line has this amount as well: it is written once. */
  readonly shares?: true;
  /** Its line gives no amount in front. */
  readonly bare?: true;
}

/** A food by the name that the line gives it. */
export interface Named {
  readonly name: TextNode;
  readonly match: FoodMatch;
}

/** The ingredients of an ingredient line; a baker's percentage gets its grams later, from the flour of its part. */
export function bindIngredients(node: IngredientNode, line: number, world: World): Ingredient[] {
  const found: Ingredient[] = [];
  for (const item of node.more === undefined ? [node] : [node, ...node.more]) {
    const names = namedOn(item, world);
    if (item.listed && names.every(({ match }) => match.kind === 'unknown')) continue;
    names.forEach((named, i) => {
      const { name, called, match, others, mayHold, takes, free, counted = item } = named;
      const { amount } = item;
      const food = match.kind === 'food' ? match.food : undefined;
      const isShare = amount?.kind === 'measured' && amount.unit?.symbol === '%';
      found.push({
        line,
        node: item,
        name: called,
        nameNode: name,
        match,
        ...(food !== undefined && { food }),
        weighed: free
          ? TO_TASTE
          : takes === undefined
            ? weighLine(counted, match, world)
            : weighTakes(counted, takes, world),
        ...(isShare && { percent: { low: amount.quantity.low, high: amount.quantity.high } }),
        optional: item.optional !== undefined,
        free,
        ...(takes !== undefined && { takes }),
        ...(others !== undefined && { others }),
        ...(mayHold !== undefined && { mayHold }),
        ...(i > 0 && !free && { shares: true as const }),
      });
    });
  }
  return found;
}

/** The first ingredient of a line: all of it, where it holds one. */
export const bindIngredient = (node: IngredientNode, line: number, world: World): Ingredient | undefined =>
  bindIngredients(node, line, world)[0];

const TO_TASTE: Weighed = { known: false, why: 'it is added to taste' };

/** Whether a food is flour in the sense of baker's percentages. */
export function isFlour(ingredient: Ingredient): boolean {
  return ingredient.food?.roles.includes('baking flour') ?? false;
}
