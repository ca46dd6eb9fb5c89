/**
 * Knows how much of a food counts as vegetable or fruit, meat, crumbs, what sours, what dresses and what a ferment is started with.
 * Refuses to know the formula it stands in; the shares of doughs, creams and sauces are in `shares.ts`.
 */
import { bookIdOf, FLESH, type Food, type FoodClass } from '../../food/food.ts';
import type { Ingredient } from '../model.ts';
import { acidShare, liquidShare, part, type Share, saltShare } from './shares.ts';

const upTo = (high: number): Share => ({ low: 0, high });
const of = (food: Food, classes: ReadonlySet<FoodClass>): boolean => classes.has(food.class);
const isSour = (food: Food): boolean => food.roles.includes('acid');
/** Of this much water and less a food is dry: it takes up twice its weight and more in the pot. */
const DRY = 0.16;
const isDry = (food: Food): boolean => (part(food, 'water') ?? 1) < DRY;

const PRODUCE: ReadonlySet<FoodClass> = new Set(['vegetable', 'mushroom', 'fruit', 'dried fruit']);
const MEATS: ReadonlySet<FoodClass> = new Set([...FLESH, 'cured meat']);

/** Vegetables and fruit by their weight; herbs and pastes may be of them or not. */
export function produceShare(food: Food): Share {
  if (of(food, PRODUCE)) return 1;
  return of(food, MAY_BE_PRODUCE) ? upTo(1) : 0;
}
const MAY_BE_PRODUCE: ReadonlySet<FoodClass> = new Set(['leafy herb', 'legume', 'condiment', 'nut', 'sauce']);

/** Salt that was put there: guides to ferments and cures reckon none of what fresh vegetables, fish and meat bring themselves. */
export function addedSaltShare(food: Food, ingredient?: Ingredient): Share {
  const share = saltShare(food, ingredient);
  return of(food, FRESH) && typeof share === 'number' && share < SALTED ? 0 : share;
}
const FRESH: ReadonlySet<FoodClass> = new Set([...PRODUCE, ...FLESH, 'leafy herb']);
/** Chard, the saltiest fresh, has 0.5 % (213 mg of sodium, USDA SR26, NDB 11147); olives, capers and what lies in brine have more. */
const SALTED = 0.01;

/** Vinegar and sour juice as they are poured; a sour fruit may be squeezed or lie in it. */
export function souringShare(food: Food): Share {
  if (food.class === 'vinegar') return 1;
  if (!isSour(food)) return 0;
  if (food.class === 'juice') return (part(food, 'acid') ?? SHARP) < SHARP ? upTo(1) : 1;
  return food.class === 'fruit' ? upTo(0.5) : 0;
}
/** Acid in lemon and lime juice is 5 % and more, in that of an orange about 1 % (from memory). */
const SHARP = 0.03;

/** Acid of vinegar and sour juice as such; of a sour fruit, what half its weight in juice has at the most. */
export function souringAcid(food: Food): Share {
  return food.class === 'fruit' && isSour(food) ? upTo(0.03) : acidShare(food);
}

/** The same to turn milk: what is sour milk itself, or sets it, may be all it takes. */
export function curdlingAcid(food: Food): Share {
  return isCulture(food) ? upTo(1) : souringAcid(food);
}

const isCulture = (food: Food): boolean =>
  isSour(food) && (food.class === 'milk' || food.class === 'dairy' || food.class === 'cream');

/** What makes a liquid ferment, as so much of one that has: yoghurt, buttermilk, sour tea; vinegar may stand for it. */
export function cultureShare(food: Food): Share {
  if (isCulture(food) || bookIdOf(food) === 'kombucha') return 1;
  return food.class === 'vinegar' ? upTo(1) : 0;
}

/** The liquid that it is to ferment: milk or tea; of dried milk what it is mixed up to. */
export function fermentedLiquid(food: Food): Share {
  if (isCulture(food) || bookIdOf(food) === 'kombucha' || food.class === 'vinegar') return 0;
  return liquidShare(food);
}

/** Milk and cream as they are poured. */
export function milkShare(food: Food): number {
  return (food.class === 'milk' || food.class === 'cream') && !isDry(food) ? 1 : 0;
}

/** Meat, fish and poultry by their weight. */
export const meatShare = (food: Food): number => (of(food, MEATS) ? 1 : 0);

/** Bread, crumbs, meal and flour that bind meat. */
export function crumbShare(food: Food): Share {
  if (food.class === 'bread' || food.class === 'flour' || food.class === 'starch') return 1;
  return food.class === 'grain' ? (isDry(food) ? 1 : upTo(0.4)) : 0;
}

/** What is dressed, or mashed: dry grain and pasta as they are boiled; cheese and egg may be of it or of the dressing. */
export function dressedShare(food: Food): Share {
  if (of(food, DRESSED)) return 1;
  if (of(food, BOILED)) return isDry(food) ? { low: 1, high: 3 } : 1;
  return of(food, EITHER) ? upTo(1) : 0;
}
const DRESSED: ReadonlySet<FoodClass> = new Set([...PRODUCE, ...MEATS, 'leafy herb', 'bread', 'nut', 'seed']);
const BOILED: ReadonlySet<FoodClass> = new Set(['grain', 'pasta', 'legume']);
const EITHER: ReadonlySet<FoodClass> = new Set(['cheese', 'egg', 'condiment']);

/** Fat of oil, butter, milk and mayonnaise; that of what is dressed lies in it. */
export function dressingFat(food: Food): Share {
  if (of(food, DRESSED) || of(food, BOILED)) return 0;
  const fat = part(food, 'fat');
  return fat !== undefined && of(food, EITHER) ? upTo(fat) : fat;
}

/** Potatoes, or what is mashed in their place. */
export const mashedShare = (food: Food): Share => (food.class === 'legume' ? upTo(3) : of(food, PRODUCE) ? 1 : 0);

/** Chillies, water and salt of a mash; vinegar and spirit are put to it once it is sour. */
export const fermentingShare = (food: Food): Share =>
  food.class === 'vinegar' || food.class === 'alcohol' ? upTo(1) : 1;
