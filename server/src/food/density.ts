/**
 * Knows how heavy a liquid is by what it is made of, where nobody has weighed a cup of it.
 * Refuses to know solids: how they lie in a cup is not in their composition.
 */
import type { Composition, Food, FoodClass } from './food.ts';

const LIQUIDS: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'milk',
  'cream',
  'juice',
  'stock',
  'alcohol',
  'vinegar',
  'drink',
  'water',
  'oil',
  'syrup',
]);

/** Choi and Okos 1986, in kg/m³ at t °C; ethanol from standard tables, 789 at 20 °C. */
const PARTS: readonly { readonly part: keyof Composition; readonly at0: number; readonly perC: number }[] = [
  { part: 'water', at0: 999.8, perC: -0.08 },
  { part: 'protein', at0: 1329.9, perC: -0.5184 },
  { part: 'fat', at0: 925.59, perC: -0.41757 },
  { part: 'carbohydrate', at0: 1599.1, perC: -0.31046 },
  { part: 'ash', at0: 2423.8, perC: -0.28063 },
  { part: 'alcohol', at0: 806, perC: -0.85 },
];

export const DENSITY_SOURCE = 'Choi and Okos 1986, in the ASHRAE Refrigeration Handbook, from the composition';

/** % of water below which a syrup, a drink or a stock is a powder or a paste. */
const LEAST_WATER = 15;

/** g/ml at the temperature, or undefined where the food is no liquid or its composition is not known. */
export function densityOf(food: Food, temperatureC = 20): number | undefined {
  if (!LIQUIDS.has(food.class) || (food.class !== 'oil' && (food.per100.water ?? 0) < LEAST_WATER)) return undefined;
  let grams = 0;
  let millilitres = 0;
  for (const { part, at0, perC } of PARTS) {
    const share = food.per100[part];
    if (share === undefined) {
      if (part === 'ash') continue;
      return undefined;
    }
    grams += share;
    millilitres += (share * 1000) / (at0 + perC * temperatureC);
  }
  return grams > 90 ? grams / millilitres : undefined;
}
