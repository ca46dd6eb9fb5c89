/**
 * Foods reckoned by those that they are like (`data/label/like.tsv`), against what the US Department of Agriculture published of foods made so: National
 * Nutrient Database for Standard Reference, release 26 (2013), by NDB number, per 100 g.
 */
import { describe, expect, test } from 'vitest';
import { builtInBook } from '../../../server/src/food/book.ts';
import type { Food } from '../../../server/src/food/food.ts';
import { addedSugarsIn, transFatIn } from '../../../server/src/food/label-shares.ts';
import { MINERALS, type Mineral, mineralIn } from '../../../server/src/food/minerals.ts';
import { likenessesSaid } from '../../../server/src/publish/label/assumed.ts';
import { open } from '../../support/harness.ts';

const food = (id: string): Food => builtInBook().byId(id) ?? expect.fail(id);
/** The composition that was published, under the name of the food whose row says how it is mixed. */
const as = (id: string, published: string): Food => ({ ...food(published), id, source: 'none' });

describe('what is mixed of two foods', () => {
  test.each<[string, Food, Partial<Record<Mineral, number>>]>([
    // Half-and-half, 01049, of cream of 19 % fat and whole milk.
    ['half and half', as('low-fat-creme-fraiche', 'half-and-half'), { calcium: 105, potassium: 130, cholesterol: 37 }],
    // Evaporated milk, 01214, of dried whole milk and water.
    ['evaporated milk', as('khoa', 'evaporated-milk'), { calcium: 261, potassium: 303, cholesterol: 29 }],
  ])('%s', (_, like, published) => {
    for (const [mineral, want] of Object.entries(published) as [Mineral, number][]) {
      const got = mineralIn(like, mineral);
      expect(got?.high, mineral).toBe(got?.low);
      expect(Math.abs((got?.high ?? Number.NaN) / want - 1), mineral).toBeLessThan(0.2);
    }
  });
});

describe('what lies between others', () => {
  // Whole milk 01211 and plain yogurt 01116 have 113 and 121 mg of calcium, 10 and 13 of cholesterol; each figure may be a tenth off.
  test('kefir', () => {
    const calcium = mineralIn(food('kefir'), 'calcium');
    expect(calcium?.low).toBeGreaterThan(100);
    expect(calcium?.high).toBeLessThan(134);
    expect(mineralIn(food('kefir'), 'cholesterol')?.high).toBeLessThan(15);
  });
  // Farmed salmon, 15236, has no vitamin D in that table; sockeye, 15085, has 14.2 µg in a later release.
  test('vitamin D of salmon lies within what fish have', () => {
    const { low = 99, high = 0 } = mineralIn(food('salmon'), 'vitamin D') ?? {};
    expect(low).toBeLessThan(14.2);
    expect(high).toBeGreaterThan(14.2);
  });
  test('what has no figures has the sugars and fat of its sort', () => {
    expect(addedSugarsIn(food('thai-curry-paste'))?.low).toBe(0);
    expect(transFatIn(food('thai-curry-paste'))?.high).toBeGreaterThan(0);
  });
});

test('sort by sort, some mineral is known of nearly every food', () => {
  for (const id of [
    'double-cream',
    'self-raising-flour',
    'ginger-biscuit',
    '00-flour',
    'golden-syrup',
    'dijon-mustard',
  ])
    for (const mineral of MINERALS) expect(mineralIn(food(id), mineral), `${id} ${mineral}`).toBeDefined();
});

describe('on a label', () => {
  const { recipe } = open('recipe Dish\n  500 g double cream\n  100 g sugar\n');
  test('it is said by what', () => {
    expect(likenessesSaid(recipe)).toEqual([
      'Minerals, cholesterol and vitamin D that the public table does not have are taken by likeness: double cream as whipping cream and unsalted butter mixed to its fat or water.',
    ]);
  });
});
