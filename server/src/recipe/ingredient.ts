/**
 * Knows one ingredient line worked out: which food it is, what it weighs and why.
 * Refuses to know what the steps do with it.
 */
import type { Food, FoodMatch, Weighed } from '../food/food.ts';
import type { CountWord } from '../measure/count-words.ts';
import type { Quantity, Range } from '../measure/quantity.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { AmountNode, IngredientNode } from '../notation/tree.ts';
import type { World } from './world.ts';

export interface Ingredient {
  /** The line in its part, from 0. */
  readonly line: number;
  readonly node: IngredientNode;
  /** As written, without preparation. */
  readonly name: string;
  readonly match: FoodMatch;
  readonly food?: Food;
  /** What goes into the part, trimmed. */
  readonly weighed: Weighed;
  /** A baker's percentage, when the line is written in one. */
  readonly percent?: Range;
  readonly optional: boolean;
  /** `to taste`, `as needed`. */
  readonly free: boolean;
}

/** An ingredient line worked out; a baker's percentage gets its grams later, from the flour of its part. */
export function bindIngredient(node: IngredientNode, line: number, world: World): Ingredient | undefined {
  if (node.name === undefined) return undefined;
  const match = findFood(node, world);
  const ingredient = {
    line,
    node,
    name: node.name.text,
    match,
    weighed: weighLine(node, match, world),
    optional: node.optional !== undefined,
    free: node.amount?.kind === 'free',
  };
  const { amount } = node;
  const { food } = match.kind === 'food' ? match : NO_FOOD;
  if (amount?.kind === 'measured' && amount.unit?.symbol === '%') {
    const percent = { low: amount.quantity.low, high: amount.quantity.high };
    return food === undefined ? { ...ingredient, percent } : { ...ingredient, food, percent };
  }
  return food === undefined ? ingredient : { ...ingredient, food };
}

const NO_FOOD: { readonly food?: Food } = {};

/** Whether a food is flour in the sense of baker's percentages. */
export function isFlour(ingredient: Ingredient): boolean {
  return ingredient.food?.roles.includes('baking flour') ?? false;
}

/** The food of a line: its name, with a preparation that may change it (`plums, dried`). */
function findFood(node: IngredientNode, world: World): FoodMatch {
  const name = node.name?.text ?? '';
  const match = world.book.find(node.preparation === undefined ? name : `${name}, ${node.preparation.text}`);
  const count = node.amount?.kind === 'measured' ? node.amount.quantity.count : undefined;
  if (count === undefined || match.kind === 'unknown') return match;
  // What holds it or how it grows tells two foods of one name apart: `1 can chickpeas`, `1 bunch coriander`.
  if (count === 'can' || count === 'tin') return oneFood(world.book.find(`canned ${name}`)) ?? match;
  if (match.kind !== 'ambiguous') return match;
  const herbs = GREEN.has(count) ? match.foods.filter((food) => food.class === 'leafy herb') : [];
  const [herb] = herbs;
  return herb !== undefined && herbs.length === 1 ? { kind: 'food', food: herb } : match;
}

const GREEN: ReadonlySet<CountWord> = new Set<CountWord>(['bunch', 'sprig', 'handful', 'leaf', 'stem']);

const oneFood = (match: FoodMatch): FoodMatch | undefined => (match.kind === 'food' ? match : undefined);

function weighLine(node: IngredientNode, match: FoodMatch, world: World): Weighed {
  const { amount, equals } = node;
  if (amount === undefined) return { known: false, why: 'no amount is written' };
  if (amount.kind === 'free') return { known: false, why: 'it is added to taste' };
  const written = massOf(equals);
  const own = massOf(amount);
  if (own === undefined && written !== undefined) {
    const grams = written.about ? { low: written.low * 0.9, high: written.high * 1.1 } : written;
    return {
      known: true,
      grams: { low: grams.low, high: grams.high },
      reason: { kind: 'house', words: 'weighed by the house on this line', source: 'this recipe' },
    };
  }
  return weighQuantity(amount.quantity, match, world);
}

/** What an amount of a matched food weighs; a mass needs no food. */
export function weighQuantity(quantity: Quantity, match: FoodMatch, world: World): Weighed {
  if (quantity.unit === '%') return { known: false, why: 'a percentage of flour that is not known' };
  if (match.kind === 'food') return world.book.weigh(match.food, quantity, world.measures, match.form);
  const { unit } = quantity;
  if (unit !== undefined && dimensionOf(unit) === 'mass') {
    const any = world.book.byId('water');
    if (any !== undefined) return world.book.weigh(any, quantity, world.measures);
  }
  return { known: false, why: match.kind === 'ambiguous' ? 'the name could be two foods' : 'the food is not known' };
}

function massOf(amount: AmountNode | undefined): Quantity | undefined {
  if (amount?.kind !== 'measured' || amount.unit === undefined) return undefined;
  return dimensionOf(amount.unit.symbol) === 'mass' ? inGrams(amount.quantity) : undefined;
}

function inGrams(quantity: Quantity): Quantity {
  const by = baseOf(quantity.unit ?? 'g', 'us') ?? 1;
  return { ...quantity, low: quantity.low * by, high: quantity.high * by, unit: 'g' };
}
