/**
 * What boiling down leaves of a recipe, by hand: 1 l of stock and 200 ml of wine are 1.2 l; `half` is 40 to 60 % of it, a figure read off a jug 90 to 110 %,
 * and a litre weighs 0.95 to 1.35 kg, from fat stock to syrup.
 */
import { describe, expect, test } from 'vitest';
import { reducedTo } from '../../server/src/recipe/journey/reduced.ts';
import { open } from '../support/harness.ts';

const of = (steps: string, list = '1 l chicken stock;200 ml dry white wine') =>
  reducedTo(
    open(
      `recipe Sauce\npart sauce\n${list
        .split(';')
        .map((line) => `  ${line}\n`)
        .join('')}  do ${steps}\n`,
    ).recipe,
  );

describe('of all that is in the pot', () => {
  test('an amount is what is left', () => {
    expect(of('Boil the stock and the wine until 300 ml remain.')?.ml).toEqual({ low: 270, high: 330 });
  });
  test('a share is of all of it', () => {
    const grams = of('Boil the stock with the wine until reduced by half.')?.grams;
    expect(grams?.low).toBeCloseTo(1210 * 0.4, -2);
    expect(grams?.high).toBeCloseTo(1210 * 0.6, -2);
  });
});

test('what goes in later is whole', () => {
  const grams = of('Reduce the wine by half, then add the stock and boil.')?.grams;
  expect(grams?.low).toBeCloseTo(1010 + 200 * 0.4, -2);
  expect(grams?.high).toBeCloseTo(1010 + 200 * 0.6, -2);
});

test('what is no liquid may lose nothing', () => {
  const grams = of('Boil the stock with the carrots until reduced by half.', '1 l chicken stock;500 g carrots')?.grams;
  expect(grams?.high).toBeGreaterThan(500 + 500);
});

test('among much else an amount is of the liquid alone, and no weight is known', () => {
  expect(of('Boil the stock with the carrots until 300 ml remain.', '1 l chicken stock;800 g carrots')).toBeUndefined();
});

test.each([
  'Bring the stock and the wine to the boil, reduce the heat by half and simmer for 10 min.',
  'Simmer the stock and the wine for 30 min.',
  'Boil the stock and the wine until reduced by half, pour over the bread and bake at 180 C for 20 min.',
])('%s says nothing of it', (steps) => expect(of(steps)).toBeUndefined());
