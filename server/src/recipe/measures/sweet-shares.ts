/**
 * Knows how much of a food counts as sugar and syrup, juice, spirit, nuts, potato, and as what makes an icing run.
 * Refuses to know the formula it stands in; the shares of doughs, creams and sauces are in `shares.ts`.
 */
import type { Food, FoodClass } from '../../food/food.ts';
import { eggShare, liquidShare, part, type Share, whiteShare } from './shares.ts';

const upTo = (high: number): Share => ({ low: 0, high });

/** Juice, and what a fruit gives when squeezed or put through a sieve. */
export function juiceShare(food: Food): Share {
  if (food.class === 'juice') return 1;
  return food.class === 'fruit' ? { low: 0.25, high: 1 } : 0;
}

/** What sugar is dissolved in: liquids, and what fruit may give of its juice. */
export const steepedIn = (food: Food): Share => (food.class === 'fruit' ? upTo(1) : liquidShare(food));

/** What a batter is stirred with: nothing of what vegetables in it hold. */
export const pouredShare = (food: Food): Share => (food.class === 'egg' ? eggShare(food) : liquidShare(food));

export const spiritShare = (food: Food): number => (food.class === 'alcohol' ? 1 : 0);

/** What makes an icing run, or is to be boiled off: liquids and white of egg; cream and soft cheese may be whipped to stand. */
export function thinLiquid(food: Food): Share {
  if (food.class === 'egg') return whiteShare(food);
  const liquid = liquidShare(food);
  return food.class === 'cream' && liquid === 1 ? upTo(1) : liquid;
}

export const nutShare = (food: Food): number => (food.class === 'nut' || food.class === 'seed' ? 1 : 0);

/** Potato, and what is worked in its place: pumpkin, beetroot. */
export const potatoShare = (food: Food): number =>
  food.class === 'vegetable' && (part(food, 'water') ?? 0) > 0.16 ? 1 : 0;

/** Fat of butter, oil, milk, cream and cheese: what nuts and crumbs have stays in them. */
export const addedFat = (food: Food): number | undefined => (FATTY.has(food.class) ? part(food, 'fat') : 0);

const FATTY: ReadonlySet<FoodClass> = new Set(['milk', 'cream', 'dairy', 'fat', 'oil', 'cheese']);

export const butterOrOil = (food: Food): number => (food.class === 'fat' || food.class === 'oil' ? 1 : 0);

export const sweetenerShare = (food: Food): number => (food.class === 'sugar' || food.class === 'syrup' ? 1 : 0);
