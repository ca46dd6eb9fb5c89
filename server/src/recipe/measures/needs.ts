/**
 * Knows which foods are what a kind is made of: its flour, its egg, what makes it rise or set.
 * Refuses to know how much.
 */
import { FLESH, type Food, type FoodClass } from '../../food/food.ts';
import type { Need } from './kind.ts';
import { isStarter, saltIn, whiteShare } from './shares.ts';

/** What a dish may not be made without; `powder`: what raises it, however much egg there is. */
export const DISH_NEEDS = [
  'raise',
  'powder',
  'wet',
  'salty',
  'sweet',
  'fat',
  'oil',
  'egg',
  'white',
  'gelling',
  'thickener',
  'culture',
  'sour',
] as const;
export type DishNeed = (typeof DISH_NEEDS)[number];

const ofClass =
  (...classes: FoodClass[]) =>
  (food: Food): boolean =>
    classes.includes(food.class);

const NEEDS = {
  flour: ofClass('flour', 'starch', 'grain', 'nut'),
  starch: ofClass('starch', 'flour'),
  fat: ofClass('fat', 'oil', 'nut', 'cream', 'cheese'),
  oil: ofClass('oil', 'fat', 'nut', 'seed'),
  sugar: (food: Food): boolean =>
    (food.per100.sucrose ?? 0) > 10 ||
    ofClass('sugar', 'syrup', 'condiment', 'dried fruit', 'drink', 'juice', 'chocolate', 'other')(food),
  egg: ofClass('egg'),
  white: (food: Food): boolean => whiteShare(food) > 0,
  yeast: (food: Food): boolean => food.class === 'yeast' || isStarter(food),
  dairy: (food: Food): boolean =>
    ofClass('milk', 'cream', 'dairy', 'cheese', 'nut')(food) || food.name.startsWith('coconut'),
  cheese: ofClass('cheese'),
  gelling: (food: Food): boolean => ofClass('gelling', 'starch')(food) || food.roles.includes('gelling'),
  chocolate: ofClass('chocolate'),
  fruit: ofClass('fruit', 'dried fruit', 'juice'),
  vegetable: ofClass('vegetable', 'mushroom', 'legume', 'fruit', 'nut'),
  juice: ofClass('juice'),
  spirit: ofClass('alcohol'),
  salt: (food: Food): boolean => ofClass('salt', 'curing salt', 'sauce')(food),
  vinegar: ofClass('vinegar'),
  sour: (food: Food): boolean => food.roles.includes('acid'),
  flesh: ofClass(...FLESH, 'cured meat', 'egg'),
  grain: ofClass('grain'),
  bread: ofClass('bread'),
  raise: (food: Food): boolean => raises(food),
  powder: (food: Food): boolean => raises(food),
  culture: (food: Food): boolean =>
    ofClass('vinegar', 'other')(food) || food.roles.includes('acid') || (food.class === 'dairy' && !isDry(food)),
  sweet: (food: Food): boolean =>
    ofClass('sugar', 'syrup', 'dried fruit', 'chocolate', 'condiment', 'drink', 'bread')(food) ||
    (food.class !== 'fruit' && (food.per100.sugars ?? 0) > TASTES_SWEET),
  thickener: (food: Food): boolean =>
    ofClass('starch', 'flour', 'gelling', 'egg', 'bread')(food) ||
    food.roles.includes('thickener') ||
    food.roles.includes('gelling'),
  wet: (food: Food): boolean => (food.per100.water ?? 100) > 40 && food.class !== 'leavening' && food.class !== 'yeast',
  salty: (food: Food): boolean => !ofClass('leavening', 'bread')(food) && (saltIn(food) ?? 1) > TASTES_SALT,
} satisfies Readonly<Record<Need | DishNeed, (food: Food) => boolean>>;

/** Share of salt from which a food brings some to the dish: salted butter and cheese do, milk does not (judgement). */
const TASTES_SALT = 0.005;

/** Sugars in 100 g from which a food sweetens the dish, if it is no fruit (judgement): condensed milk does, lemon juice does not. */
const TASTES_SWEET = 12;

const isDry = (food: Food): boolean => (food.per100.water ?? 100) < 20;

/** Yeast and powder, starters, self-raising flour and mixes. */
const raises = (food: Food): boolean =>
  ofClass('yeast', 'leavening')(food) ||
  food.roles.includes('leavening') ||
  (food.class === 'other' && food.roles.includes('raw risk'));

/** Whether a cell of a table names one. */
export const isDishNeed = (name: string): name is DishNeed => DISH_NEEDS.some((each) => each === name);

/** Whether the food is what is needed. */
export const meets = (need: Need | DishNeed, food: Food): boolean => NEEDS[need](food);
