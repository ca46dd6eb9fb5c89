/**
 * Knows what an ingredient brings to a sum by what it likely weighs, and the list in which some lines weigh so many times as much.
 * Refuses to know what is added up.
 */
import { likelyGrams, timesTheWeight } from '../../food/weigh.ts';
import { middle } from '../../measure/quantity.ts';
import { timesOf } from '../../measure/total.ts';
import type { Ingredient } from '../model.ts';
import { countsFor, type ShareOf } from './open.ts';

/** What an ingredient likely weighs, in grams; 0 where it is not known. */
export const gramsOf = (i: Ingredient): number => (i.weighed.known ? likelyGrams(i.weighed) : 0);

/** What a gram of the ingredient brings, by the middle of the range. */
export const bringing = (i: Ingredient, share: ShareOf): number => middle(countsFor(share, i));

/** The ingredient as if so many times of it were written. */
export function timesTheIngredient(ingredient: Ingredient, by: number): Ingredient {
  const { node, weighed } = ingredient;
  const { amount } = node;
  if (by === 1 || !weighed.known || amount?.kind !== 'measured') return ingredient;
  const quantity = timesOf(amount.quantity, { low: by, high: by });
  return {
    ...ingredient,
    node: { ...node, amount: { ...amount, quantity } },
    weighed: timesTheWeight(weighed, by),
  };
}
