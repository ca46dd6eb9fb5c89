/**
 * Knows what labels in the United States name besides the composition: calcium, iron, potassium, cholesterol and vitamin D of a food of the book.
 * Refuses to guess: what has no row in the public table lies between the foods that it is like (`likened.ts`), but for what no plant has.
 */
import mineralsText from '../../data/foods/minerals.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import type { Food, FoodClass } from './food.ts';
import { likened } from './likened.ts';
import { figuresByKey } from './packed-figures.ts';
import { readNumbers } from './tables.ts';

/** In the order of the table; mg in 100 g of the edible part, of vitamin D µg. */
export const MINERALS = ['calcium', 'iron', 'potassium', 'cholesterol', 'vitamin D'] as const;
export type Mineral = (typeof MINERALS)[number];

const TABLE = once(() => figuresByKey(mineralsText, readNumbers));

/** The food's number in USDA SR, where its composition is that row's. */
function ndbOf({ source }: Food): number | undefined {
  const ndb = /(?:^|; else )(?:USDA SR26|As [^,]+), NDB (\d{5})(?: \(from memory\))?$/.exec(source)?.[1];
  return ndb === undefined ? undefined : Number(ndb);
}

/** The amount in 100 g, at least and at most; undefined where it is not known. */
export function mineralIn(food: Food, mineral: Mineral): Range | undefined {
  const known = ownMineral(food, mineral);
  return known === undefined ? likened(food, (like) => ownMineral(like, mineral)) : { low: known, high: known };
}

/** What its own row has, or its class has none of; what only fat holds is in nothing without fat. */
function ownMineral(food: Food, mineral: Mineral): number | undefined {
  const ndb = ndbOf(food);
  const known = ndb === undefined ? undefined : TABLE().get(ndb)?.[MINERALS.indexOf(mineral)];
  if (known !== undefined) return known;
  const isOfFat = mineral === 'cholesterol' || mineral === 'vitamin D';
  return hasNone(food.class, mineral) || (isOfFat && food.per100.fat === 0) ? 0 : undefined;
}

/** Whether its row in the public table says what minerals it has. */
export const hasMineralRow = (food: Food): boolean => ownMineral(food, 'calcium') !== undefined;

/** Whether USDA SR26 has none of it in any food of the class that is no mixture; the table has what is otherwise. */
export const hasNone = (of: FoodClass, mineral: Mineral): boolean => NONE_IN[mineral]?.has(of) === true;

const PLANTS: readonly FoodClass[] = [
  'flour',
  'starch',
  'sugar',
  'leafy herb',
  'dried herb',
  'spice',
  'vegetable',
  'dried fruit',
  'fruit',
  'seed',
  'water',
  'vinegar',
  'salt',
  'curing salt',
  'leavening',
  'yeast',
  'legume',
  'syrup',
];
const NONE_IN: Readonly<Partial<Record<Mineral, ReadonlySet<FoodClass>>>> = {
  cholesterol: new Set<FoodClass>([...PLANTS, 'grain', 'juice', 'mushroom', 'nut']),
  'vitamin D': new Set<FoodClass>(PLANTS),
};
