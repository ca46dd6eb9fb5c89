/**
 * Knows how much of a food counts as water, fat, sugar, salt, egg, flour and the like, by its composition.
 * Refuses to know the formula it stands in. A share is per gram of food; a range where it depends on how the food is used, undefined where it is not known.
 */
import { bookIdOf, type Composition, FLESH, type Food } from '../../food/food.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Ingredient } from '../model.ts';

export type Share = number | Range | undefined;

/** A component of 100 g as a share. */
export function part(food: Food, of: keyof Composition): number | undefined {
  const value = food.per100[of];
  return value === undefined ? undefined : value / 100;
}

const isDry = (food: Food): boolean => (part(food, 'water') ?? 1) < DRY;

/** Anything from none of it to so much. */
const upTo = (high: number | undefined): Share => (high === undefined ? undefined : { low: 0, high });

const within = (food: Food, classes: ReadonlySet<Food['class']>): boolean => classes.has(food.class);

/** Moisture of flour. */
const FLOUR_MOISTURE = 0.12;
/** Below this share of water a food is a dry one: grain, powder, nuts, chocolate. */
const DRY = 0.16;

/** A sourdough starter or the like: flour and water that ferment. */
export const isStarter = (food: Food): boolean => food.class === 'other' && food.roles.includes('leavening');

/** Flour of any cereal, starch that stands for it, and the flour in a starter (what is not water, with the moisture of flour; of a dry mix all). */
export function flourShare(food: Food): number | undefined {
  if (food.class === 'flour' || food.class === 'starch') return 1;
  if (!isStarter(food)) return 0;
  const water = part(food, 'water');
  return water === undefined ? undefined : Math.min(1, (1 - water) / (1 - FLOUR_MOISTURE));
}

/** Dry grain, bread, nuts and cocoa may stand for flour in a cake, or lie in it. */
export function flourLikeShare(food: Food): Share {
  if (within(food, FLOUR_LIKE) || (food.class === 'grain' && isDry(food))) return upTo(1);
  const water = part(food, 'water');
  if (food.class === 'bread' && water !== undefined) return upTo(Math.min(1, (1 - water) / (1 - FLOUR_MOISTURE)));
  return flourShare(food);
}

const FLOUR_LIKE: ReadonlySet<Food['class']> = new Set(['nut', 'seed', 'chocolate']);

/** Water that wets a dough: not the flour's own, and half of what chopped herbs, vegetables, fruit and cheese hold (common practice, no source). */
export function freeWater(food: Food): number | undefined {
  if (food.class === 'flour' || food.class === 'starch' || food.class === 'dried fruit') return 0;
  // What is dissolved in water wets as well: 60 g on 100 g of flour are 60 %.
  if (food.class === 'water') return 1;
  const water = part(food, 'water');
  if (water === undefined) return undefined;
  // What is dry holds its moisture and wets nothing.
  if (water < DRY && food.class !== 'fat' && food.class !== 'syrup') return 0;
  if (isStarter(food)) return water - FLOUR_MOISTURE * (flourShare(food) ?? 0);
  return food.roles.includes('holds its water') || food.class === 'cheese' ? water / 2 : water;
}

/** The same for a batter, where fruit that is left whole or in pieces may keep all its water. */
export function batterWater(food: Food, ingredient?: Ingredient): Share {
  const water = freeWater(food);
  const { name, preparation } = ingredient?.node ?? {};
  const inPieces =
    food.class === 'fruit' &&
    food.roles.includes('holds its water') &&
    !BROKEN_UP.test([name?.text, preparation?.text].join(' '));
  return inPieces ? upTo(water) : water;
}

const BROKEN_UP = /\b(?:mashed|crushed|pur[eé]ed?|pulp|grated|squeezed|juiced|blended|stewed|cooked)\b/i;

/** All of it. */
export const wholeShare = (): number => 1;

/** Flour, and dry meal and grain that may stand for it, as in an oatcake, or lie in it. */
export function flourOrMealShare(food: Food): Share {
  return food.class === 'grain' && isDry(food) ? upTo(1) : flourShare(food);
}

/** Pure fat but the flour's own; that of nuts, seeds and chocolate may stay in the pieces, and half of a cheese's in its curd. */
export function fatShare(food: Food): Share {
  if (food.class === 'flour' || food.class === 'starch') return 0;
  const fat = part(food, 'fat');
  if (food.class === 'cheese' && fat !== undefined) return { low: fat / 2, high: fat };
  return within(food, FLOUR_LIKE) ? upTo(fat) : fat;
}

const BRING_NO_SUGAR: ReadonlySet<Food['class']> = new Set([
  'flour',
  'starch',
  'grain',
  'milk',
  'cream',
  'dairy',
  'cheese',
  'egg',
  'fat',
  'oil',
  'water',
  'salt',
  'leavening',
  'yeast',
  'vegetable',
  'fruit',
  'dried fruit',
  'nut',
  'seed',
  'leafy herb',
  'dried herb',
  'spice',
]);

/** Where nobody says how much sugar is in them, it may be as much as their carbohydrate. */
const MAY_BE_SWEET: ReadonlySet<Food['class']> = new Set([
  'sugar',
  'syrup',
  'sauce',
  'condiment',
  'drink',
  'juice',
  'alcohol',
  'vinegar',
  'chocolate',
  'bread',
  'other',
]);

/** Sugars as solids, without lactose and what fruit, grain and nuts bring of their own; chocolate's may stay in the pieces. */
export function addedSugar(food: Food): Share {
  const { sugars, sucrose, lactose, carbohydrate } = food.per100;
  if (food.class === 'milk' || food.class === 'dairy') return sucrose === undefined ? 0 : sucrose / 100;
  if (within(food, BRING_NO_SUGAR)) return 0;
  if (sugars === undefined) return within(food, MAY_BE_SWEET) ? upTo(carbohydrate && carbohydrate / 100) : 0;
  const share = (sugars - (lactose ?? 0)) / 100;
  return food.class === 'chocolate' ? upTo(share) : share;
}

/** All sugars but lactose, as ice-cream makers count them. */
export function sugarsButLactose(food: Food): Share {
  const { sugars, lactose, carbohydrate } = food.per100;
  if (sugars === undefined)
    return food.class === 'flour' || food.class === 'gelling' ? 0 : upTo(carbohydrate && carbohydrate / 100);
  const isPlainMilk = within(food, MILKS) && lactose === undefined;
  return isPlainMilk ? undefined : (sugars - (lactose ?? 0)) / 100;
}

const MILKS: ReadonlySet<Food['class']> = new Set(['milk', 'cream', 'dairy']);

/** Milk solids not fat: what is neither water, fat nor added sugar. */
export function milkSolids(food: Food): number | undefined {
  const butter = food.class === 'fat' && (food.per100.lactose ?? 0) > 0;
  if (!within(food, MILKS) && !butter) return 0;
  const { water, fat, sugars, sucrose, lactose } = food.per100;
  if (water === undefined || fat === undefined) return undefined;
  const added = sucrose ?? (sugars === undefined || lactose === undefined ? undefined : sugars - lactose);
  return added === undefined ? undefined : Math.max(0, 100 - water - fat - added) / 100;
}

export const waterShare = (food: Food): number | undefined => part(food, 'water');

/** All that is neither water nor alcohol. */
export function solidsShare(food: Food): number | undefined {
  const water = part(food, 'water');
  return water === undefined ? undefined : 1 - water - (part(food, 'alcohol') ?? 0);
}

/** mg of sodium in 100 g from which a salt is salt by itself, and no blend with something else: table salt has 38,758 (USDA SR26, NDB 02047). */
const PURE_SALT = 35_000;

/** Salt as a cook counts it: what is salt by itself by its grams, other foods by their sodium × 2.5 (EU 1169/2011, annex I). */
export function saltIn(food: Food): number | undefined {
  const { sodium } = food.per100;
  if (food.class === 'salt' && (sodium === undefined || sodium >= PURE_SALT)) return 1;
  return sodium === undefined ? undefined : (sodium * 2.5) / 100_000;
}

/** Below this share of salt it is a trace, as in flour, sugar and water: no baker counts it. */
const TRACE = 0.0002;

/** Salt from every source, but not the sodium of leavening. */
export function saltShare(food: Food, ingredient?: Ingredient): Share {
  if (food.class === 'leavening') return 0;
  // The sodium of self-raising flour is its baking powder's, and 0 to 1 % of salt (common practice).
  if (food.class === 'flour' && food.roles.includes('leavening')) return upTo(0.01);
  const share = saltIn(food);
  if (share !== undefined && share < TRACE) return 0;
  // `butter` alone may be salted or not.
  return bookIdOf(food) === 'butter' && !/salted/i.test(ingredient?.name ?? '') ? upTo(share) : share;
}

/** Egg as shelled and fresh: dried egg counts as what it is mixed up to. */
export function eggShare(food: Food): number {
  if (food.class !== 'egg') return 0;
  const water = food.per100.water ?? 76;
  return water > 20 ? 1 : (100 - water) / (isWhite(food) ? 12.4 : 24);
}

const isWhite = (food: Food): boolean =>
  food.class === 'egg' && (food.per100.fat ?? 10) < 1.5 && (food.per100.protein ?? 12) > 5;
const isYolk = (food: Food): boolean => food.class === 'egg' && (food.per100.fat ?? 10) > 20 && !isDried(food);
const isDried = (food: Food): boolean => (food.per100.water ?? 76) < 20;

/** The yolk itself: all of a yolk, 17 g of a large egg's 50 (USDA SR26, NDB 01123, 01125). */
export function yolkShare(food: Food): number {
  if (food.class !== 'egg' || isWhite(food)) return 0;
  return isYolk(food) ? 1 : 0.34 * eggShare(food);
}

/** What thickens like yolk: of a whole egg its yolk, or, with the white, up to two yolks. */
export function yolkStrength(food: Food): Share {
  if (food.class !== 'egg' || isWhite(food)) return 0;
  return isYolk(food) ? 1 : { low: 0.34 * eggShare(food), high: 0.68 * eggShare(food) };
}

export const whiteShare = (food: Food): number => (isWhite(food) ? eggShare(food) : 0);

export const eggProtein = (food: Food): number | undefined => (food.class === 'egg' ? part(food, 'protein') : 0);

const LIQUIDS: ReadonlySet<Food['class']> = new Set([
  'water',
  'milk',
  'cream',
  'stock',
  'juice',
  'drink',
  'alcohol',
  'vinegar',
]);

/** Liquids by their whole weight, as a cook pours them. */
export function liquidShare(food: Food): Share {
  if (isDry(food)) return 0;
  if (within(food, LIQUIDS) || isCoconutMilk(food)) return 1;
  return food.class === 'dairy' || food.class === 'sauce' ? upTo(1) : 0;
}

/** Liquids, and what half is one: soft fruit and vegetables, fresh cheese. */
export function looseLiquidShare(food: Food): Share {
  return within(food, HALF_LIQUID) ? upTo(1) : liquidShare(food);
}

const HALF_LIQUID: ReadonlySet<Food['class']> = new Set(['dairy', 'fruit', 'vegetable', 'cheese']);

const isCoconutMilk = (food: Food): boolean => food.class === 'other' && /^coconut (?:milk|cream)$/.test(food.name);

/** Milk, cream, yoghurt and what is used in their place. */
export function dairyShare(food: Food): Share {
  if (isDry(food)) return 0;
  if (within(food, MILKS) || isCoconutMilk(food)) return 1;
  return food.class === 'water' || food.class === 'juice' || food.class === 'alcohol' || food.class === 'drink'
    ? upTo(1)
    : 0;
}

export const creamShare = (food: Food): Share => (isDry(food) ? 0 : within(food, MILKS) || isCoconutMilk(food) ? 1 : 0);

/** Starch that sets a cream: flour counts for less of its weight (Gisslen and McGee, from memory). */
export function settingStarch(food: Food): Share {
  if (food.class === 'starch') return 1;
  return food.class === 'flour' ? { low: 0.6, high: 0.75 } : 0;
}

/** Thickener as flour: pure starch does for twice its weight of flour. */
export function thickenerShare(food: Food): Share {
  if (food.class === 'starch') return { low: 1.8, high: 2.2 };
  return food.class === 'flour' ? 1 : 0;
}

/** Oil and fat that is whisked in. */
export const oilShare = (food: Food): number | undefined =>
  food.class === 'oil' || food.class === 'fat' ? part(food, 'fat') : 0;

export const butterShare = (food: Food): number => (food.class === 'fat' ? 1 : 0);

/** Vinegar and sour juice by weight; of a sour fruit, what it gives when squeezed. */
export function acidLiquid(food: Food): Share {
  if (food.class === 'vinegar') return 1;
  if (!food.roles.includes('acid')) return 0;
  if (food.class === 'juice') return 1;
  return food.class === 'fruit' ? { low: 0.25, high: 1 } : 0;
}

/** Acid in vinegar and sour juice, as such. */
export function acidShare(food: Food): Share {
  const acid = part(food, 'acid');
  if (food.class === 'vinegar') return acid;
  if (food.class === 'juice' || bookIdOf(food) === 'citric-acid')
    return acid ?? (food.roles.includes('acid') ? upTo(0.06) : 0);
  return 0;
}

/** What a pickling liquor is made of: vinegar, water, wine, juice. */
export function liquorShare(food: Food): Share {
  if (food.class === 'vinegar' || food.class === 'water' || food.class === 'juice' || food.class === 'alcohol')
    return 1;
  return food.class === 'sauce' || food.class === 'stock' ? upTo(1) : 0;
}

export const sugarSolids = (food: Food): number | undefined =>
  food.class === 'sugar' || food.class === 'syrup' ? part(food, 'sugars') : 0;

/** Fruit as prepared, and vegetables cooked like it; dried fruit takes up its water again, and marmalade is boiled with its own. */
export function preparedFruit(food: Food): Share {
  if (food.class === 'fruit' || food.class === 'vegetable') return 1;
  if (food.class === 'dried fruit') return { low: 1, high: 3 };
  return food.class === 'juice' || food.class === 'water' ? upTo(1) : 0;
}

export const chocolateShare = (food: Food): number => (food.class === 'chocolate' ? 1 : 0);

export const grainShare = (food: Food): number => (food.class === 'grain' && isDry(food) ? 1 : 0);

/** Water for cooking grain: liquids, and some of what vegetables give. */
export function cookingLiquid(food: Food): Share {
  return food.class === 'vegetable' || food.class === 'fruit' ? upTo(0.5) : liquidShare(food);
}

const MEATS: ReadonlySet<Food['class']> = new Set([...FLESH, 'cured meat']);

export const fleshShare = (food: Food): number => (within(food, MEATS) || food.class === 'egg' ? 1 : 0);

/** What gives a stock its taste: bones, meat, fish, vegetables. */
export function stockSolids(food: Food): number {
  return within(food, MEATS) || /bone|carcass|frame/.test(food.name) || within(food, GARDEN) ? 1 : 0;
}

const GARDEN: ReadonlySet<Food['class']> = new Set(['vegetable', 'mushroom', 'leafy herb']);

/** Things that may lie whole in what holds them. */
export const mayLieIn = (food: Food): Share => (within(food, PIECES) ? upTo(1) : 1);

/** Vegetables and meat that lie in a filling and are no part of what sets. */
export const mixWithoutPieces = (food: Food): number => (within(food, PIECES) ? 0 : 1);

const PIECES: ReadonlySet<Food['class']> = new Set([
  'vegetable',
  'mushroom',
  'fruit',
  ...FLESH,
  'cured meat',
  'leafy herb',
  'legume',
  'nut',
]);
