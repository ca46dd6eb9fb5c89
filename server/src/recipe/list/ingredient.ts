/**
 * Knows the ingredients of one line worked out: which food each is, what it weighs and why.
 * Refuses to know what the steps do with it.
 */

import type { Weighed } from '../../food/food.ts';
import { isStrengthOf } from '../../food/strength.ts';
import type { Draft, IngredientNode } from '../../notation/tree.ts';
import type { Ingredient, World } from '../model.ts';
import { namedOn } from './line-names.ts';
import { weighLine, weighTakes } from './line-weight.ts';
import type { NamedFood } from './one-food.ts';

/** The ingredients of an ingredient line; a baker's percentage gets its grams later, from the flour of its part. */
export function bindIngredients(node: IngredientNode, line: number, world: World): Ingredient[] {
  const found: Ingredient[] = [];
  bindItem(node, line, world, found);
  for (const item of node.more ?? NONE) if (!tellsStrength(item, found)) bindItem(item, line, world, found);
  return found;
}

/** `chocolate, 70 % cocoa`, `cream, 35 % fat`: what is listed in per cent behind a food is how much of it the food holds, where it holds some. */
function tellsStrength({ listed, amount, name }: IngredientNode, [first]: readonly Ingredient[]): boolean {
  if (!listed || first === undefined || amount?.kind !== 'measured' || amount.quantity.unit !== '%') return false;
  return first.percent === undefined && isStrengthOf(first.match, `${amount.quantity.low} % ${name?.text ?? ''}`);
}

const NONE: readonly never[] = [];

function bindItem(item: IngredientNode, line: number, world: World, found: Ingredient[]): void {
  const names = namedOn(item, world);
  if (item.listed && names.every(({ match }) => match.kind === 'unknown')) return;
  const first = found.length;
  for (const named of names) found.push(ingredientOf(item, named, line, world, found.length > first));
}

/** `1 whole   chicken`: what stands in columns. */
const BLANKS = /\s{2,}/g;

function ingredientOf(item: IngredientNode, named: NamedFood, line: number, world: World, shares: boolean): Ingredient {
  const { name: nameNode, called, match, others, mayHold, takes, free, counted = item } = named;
  const { amount } = item;
  const name = called.replace(BLANKS, ' ');
  const optional = item.optional !== undefined;
  const weighed = free
    ? TO_TASTE
    : takes === undefined
      ? weighLine(counted, match, world)
      : weighTakes(counted, takes, world);
  const ingredient: Draft<Ingredient> =
    match.kind === 'food'
      ? { line, node: item, name, nameNode, match, food: match.food, weighed, optional, free }
      : { line, node: item, name, nameNode, match, weighed, optional, free };
  if (amount?.kind === 'measured' && amount.unit?.symbol === '%')
    ingredient.percent = { low: amount.quantity.low, high: amount.quantity.high };
  if (takes !== undefined) ingredient.takes = takes;
  if (others !== undefined) ingredient.others = others;
  if (mayHold !== undefined) ingredient.mayHold = mayHold;
  if (shares && (!free || amount?.kind === 'measured')) ingredient.shares = true;
  return ingredient;
}

/** The first ingredient of a line: all of it, where it holds one. */
export const bindIngredient = (node: IngredientNode, line: number, world: World): Ingredient | undefined =>
  bindIngredients(node, line, world)[0];

const TO_TASTE: Weighed = { known: false, why: 'it is added to taste' };

/** Whether a food is flour in the sense of baker's percentages. */
export function isFlour(ingredient: Ingredient): boolean {
  return ingredient.food?.roles.includes('baking flour') ?? false;
}
