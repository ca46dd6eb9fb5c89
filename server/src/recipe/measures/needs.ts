/**
 * Knows which foods are what a kind is made of: its flour, its egg, what makes it rise or set.
 * Refuses to know how much.
 */
import { FLESH, type Food, type FoodClass } from '../../food/food.ts';
import type { Need } from './kind.ts';
import { isStarter, whiteShare } from './shares.ts';

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
  gelling: ofClass('gelling', 'starch'),
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
} satisfies Readonly<Record<Need, (food: Food) => boolean>>;

/** Whether the food is what is needed. */
export const meets = (need: Need, food: Food): boolean => NEEDS[need](food);
