/**
 * What home recipes of the US Department of Agriculture hold, against what the department published of them: National Nutrient Database for
 * Standard Reference, release 26 (2013), foods "prepared from recipe", per 100 g, by NDB number. The database does not print the formulas:
 * they are the household ones of its handbooks (Agriculture Handbook 8 and 456, Home and Garden Bulletin 72), from memory.
 *
 * What is baked is compared at the water that was published: the mix loses water until it holds as much.
 */
import { describe, expect, test } from 'vitest';
import { mixOf, totalG } from '../../../server/src/publish/nutrition.ts';
import { open } from '../../support/harness.ts';

interface Published {
  readonly food: string;
  readonly ndb: string;
  readonly formula: readonly string[];
  /** Per 100 g. */
  readonly water: number;
  readonly kcal: number;
  readonly protein: number;
  readonly fat: number;
  readonly carbohydrate: number;
  readonly sodiumMg: number;
  /** What the whole recipe weighs when done, where that is published. */
  readonly massG?: number;
  /** What does not come out within the tolerance, and why. */
  readonly known?: Readonly<Partial<Record<Field, string>>>;
}

type Field = 'kcal' | 'protein' | 'fat' | 'carbohydrate' | 'sodiumMg';

/** A tenth either way, or half a gram, for what is weighed out; sodium a quarter, or 40 mg: salts and leavenings differ most by maker. */
const TOLERANCE: Readonly<Record<Field, readonly [number, number]>> = {
  kcal: [0.08, 5],
  protein: [0.1, 0.5],
  fat: [0.12, 0.6],
  carbohydrate: [0.1, 0.8],
  sodiumMg: [0.25, 40],
};

const FOODS: readonly Published[] = [
  {
    food: 'white sauce, thin',
    ndb: '06165',
    formula: ['1 cup whole milk', '1 tbsp margarine', '1 tbsp all-purpose flour', '1/4 tsp salt'],
    water: 80.66,
    kcal: 105,
    protein: 3.77,
    fat: 6.73,
    carbohydrate: 7.4,
    sodiumMg: 328,
    known: { fat: 'a spoon of fat to the cup is a little more than the published figure has' },
  },
  {
    food: 'white sauce, medium',
    ndb: '06166',
    formula: ['1 cup whole milk', '2 tbsp margarine', '2 tbsp all-purpose flour', '1/4 tsp salt'],
    water: 74.89,
    kcal: 147,
    protein: 3.84,
    fat: 10.63,
    carbohydrate: 9.17,
    sodiumMg: 354,
  },
  {
    food: 'white sauce, thick',
    ndb: '06167',
    formula: ['1 cup whole milk', '3 tbsp margarine', '3 tbsp all-purpose flour', '1/4 tsp salt'],
    water: 69.1,
    kcal: 186,
    protein: 3.99,
    fat: 13.83,
    carbohydrate: 11.61,
    sodiumMg: 373,
  },
  {
    food: 'biscuits',
    ndb: '18016',
    formula: [
      '2 cup all-purpose flour',
      '1 tbsp baking powder',
      '1/2 tsp salt',
      '1/3 cup shortening',
      '3/4 cup whole milk',
    ],
    water: 28.9,
    kcal: 353,
    protein: 7,
    fat: 16.3,
    carbohydrate: 44.6,
    sodiumMg: 580,
  },
  {
    food: 'cornbread',
    ndb: '18024',
    formula: [
      '1 cup cornmeal',
      '1 cup all-purpose flour',
      '1 tbsp baking powder',
      '1/2 tsp salt',
      '2 tbsp sugar',
      '1 large egg',
      '1 cup low-fat milk',
      '2 tbsp vegetable oil',
    ],
    water: 39.1,
    kcal: 266,
    protein: 6.7,
    fat: 7.1,
    carbohydrate: 43.5,
    sodiumMg: 658,
  },
  {
    food: 'plain muffins',
    ndb: '18273',
    formula: [
      '2 cup all-purpose flour',
      '2 tbsp sugar',
      '1 tbsp baking powder',
      '1/2 tsp salt',
      '1 large egg',
      '1 cup low-fat milk',
      '1/4 cup vegetable oil',
    ],
    water: 37.7,
    kcal: 296,
    protein: 6.9,
    fat: 11.4,
    carbohydrate: 41.4,
    sodiumMg: 467,
  },
  {
    food: 'pancakes',
    ndb: '18293',
    formula: [
      '1 1/2 cup all-purpose flour',
      '1 tbsp sugar',
      '1 tbsp baking powder',
      '1/2 tsp salt',
      '2 large eggs',
      '1 1/4 cup whole milk',
      '3 tbsp vegetable oil',
    ],
    water: 52.9,
    kcal: 227,
    protein: 6.4,
    fat: 9.7,
    carbohydrate: 28.3,
    sodiumMg: 439,
  },
  {
    food: 'waffles',
    ndb: '18367',
    formula: [
      '1 3/4 cup all-purpose flour',
      '1 tbsp baking powder',
      '1/2 tsp salt',
      '1 tbsp sugar',
      '3 large eggs',
      '1 1/2 cup whole milk',
      '1/3 cup vegetable oil',
    ],
    water: 42,
    kcal: 291,
    protein: 7.9,
    fat: 14.1,
    carbohydrate: 32.9,
    sodiumMg: 511,
  },
  {
    food: 'pie crust, unbaked',
    ndb: '18402',
    formula: ['2 cup all-purpose flour', '1 tsp salt', '2/3 cup shortening', '4 tbsp water'],
    water: 19.7,
    kcal: 469,
    protein: 5.7,
    fat: 30.8,
    carbohydrate: 42.3,
    sodiumMg: 482,
  },
  {
    food: 'pie crust, baked',
    ndb: '18336',
    formula: ['2 cup all-purpose flour', '1 tsp salt', '2/3 cup shortening', '4 tbsp water'],
    water: 9.8,
    kcal: 527,
    protein: 6.4,
    fat: 34.6,
    carbohydrate: 47.5,
    sodiumMg: 542,
  },
  {
    food: 'baked custard',
    ndb: '19168',
    formula: ['2 cup whole milk', '2 large eggs', '3 tbsp sugar'],
    water: 78.86,
    kcal: 104,
    protein: 5.02,
    fat: 4.58,
    carbohydrate: 11,
    sodiumMg: 61,
    massG: 563,
  },
  {
    food: 'white bread',
    ndb: '18073',
    formula: [
      '6 cup all-purpose flour',
      '2 cup low-fat milk',
      '2 tbsp sugar',
      '2 tsp salt',
      '1/4 cup margarine',
      '1 pack active dry yeast',
    ],
    water: 35.3,
    kcal: 285,
    protein: 7.9,
    fat: 5.7,
    carbohydrate: 49.6,
    sodiumMg: 359,
    known: { fat: 'the formula as remembered is a little leaner' },
  },
  {
    food: 'dinner rolls',
    ndb: '18396',
    formula: [
      '3 1/2 cup all-purpose flour',
      '1 cup low-fat milk',
      '1/4 cup sugar',
      '1/4 cup margarine',
      '1 tsp salt',
      '1 large egg',
      '1 pack active dry yeast',
    ],
    water: 29.1,
    kcal: 316,
    protein: 8.5,
    fat: 7.3,
    carbohydrate: 53.4,
    sodiumMg: 415,
  },
  {
    food: 'chocolate chip cookies',
    ndb: '18378',
    formula: [
      '2 1/4 cup all-purpose flour',
      '1 tsp baking soda',
      '1 tsp salt',
      '1 cup butter',
      '3/4 cup sugar',
      '3/4 cup brown sugar, packed',
      '2 large eggs',
      '1 tsp vanilla extract',
      '2 cup semisweet chocolate chips',
      '1 cup walnuts, chopped',
    ],
    water: 5.7,
    kcal: 488,
    protein: 5.7,
    fat: 28.4,
    carbohydrate: 58.2,
    sodiumMg: 341,
  },
  {
    food: 'oil and vinegar dressing',
    ndb: '04135',
    formula: ['1 cup vegetable oil', '1 cup vinegar'],
    water: 47.4,
    kcal: 449,
    protein: 0,
    fat: 50.1,
    carbohydrate: 2.5,
    sodiumMg: 1,
    known: { carbohydrate: 'the published dressing is sweetened a little, or its vinegar is' },
  },
];

function workedOut({ formula, water }: Published) {
  const { recipe } = open(`recipe Test\n${formula.map((l) => `  ${l}`).join('\n')}\n`);
  const ingredients = recipe.parts.flatMap((p) => p.head.ingredients);
  for (const i of ingredients) expect(i.food, i.name).toBeDefined();
  const mix = mixOf(ingredients);
  const total = (of: Parameters<typeof totalG>[1]) => totalG(mix, of) ?? Number.NaN;
  // Water is lost until as much is left as was published.
  const massG = (mix.massG - total('water')) / (1 - water / 100);
  const per = (grams: number) => (grams / massG) * 100;
  const [protein, fat, carbohydrate] = [per(total('protein')), per(total('fat')), per(total('carbohydrate'))];
  return {
    massG,
    rawG: mix.massG,
    found: {
      kcal: 4 * protein + 9 * fat + 4 * carbohydrate,
      protein,
      fat,
      carbohydrate,
      sodiumMg: per(total('salt')) * 400,
    },
  };
}

describe.each(FOODS)('$food ($ndb)', (published) => {
  const { found, massG, rawG } = workedOut(published);

  test.each(['kcal', 'protein', 'fat', 'carbohydrate', 'sodiumMg'] as const)('%s', (field) => {
    const [share, least] = TOLERANCE[field];
    const off = Math.abs(found[field] - published[field]);
    const within = off <= Math.max(least, share * published[field]);
    expect(within, `${field}: ${found[field].toFixed(1)} worked out, ${published[field]} published`).toBe(
      published.known?.[field] === undefined,
    );
  });

  test('loses water in cooking, and nothing else', () => {
    expect(massG).toBeLessThan(rawG * 1.03);
    expect(massG).toBeGreaterThan(rawG * 0.6);
  });
});

test('what the whole weighs when done is within a tenth of what was published', () => {
  const weighed = FOODS.flatMap((f) =>
    f.massG === undefined ? [] : [{ food: f.food, off: workedOut(f).massG / f.massG - 1 }],
  );
  expect(weighed.length).toBeGreaterThan(0);
  for (const { food, off } of weighed)
    expect(Math.abs(off), `${food} is off by ${(off * 100).toFixed(0)} %`).toBeLessThan(0.1);
});
