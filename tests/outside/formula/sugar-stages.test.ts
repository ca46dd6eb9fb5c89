/** Boiled sugar: the stages and the solids that candy tables of extension services print (from memory). */
import { expect, test } from 'vitest';
import { solidsAtBoiling, sugarStage } from '../../../server/src/recipe/measures/sugar-boiling.ts';

const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;

test.each([
  ['thread', 230, 234, 80],
  ['soft ball', 235, 240, 85],
  ['firm ball', 245, 248, 87],
  ['hard ball', 250, 265, 92],
  ['soft crack', 270, 289, 95],
  ['hard crack', 300, 309, 99],
])('%s, %d to %d °F, is %d %% of sugar', (stage, low, high, percent) => {
  const middle = celsius((low + high) / 2);
  expect(sugarStage(middle)).toBe(stage);
  expect(Math.abs(solidsAtBoiling(middle) * 100 - percent)).toBeLessThan(2.5);
});

test('a jam done at 220 °F, 8 °F over boiling water, has 65 % of solids (USDA Complete Guide to Home Canning, from memory)', () => {
  expect(solidsAtBoiling(celsius(220)) * 100).toBeGreaterThan(63);
  expect(solidsAtBoiling(celsius(220)) * 100).toBeLessThan(68);
});

test('solids rise with the heat, from nothing at boiling water', () => {
  let before = -1;
  for (let at = 99; at <= 170; at += 0.5) {
    const here = solidsAtBoiling(at);
    expect(here).toBeGreaterThanOrEqual(before);
    expect(here).toBeLessThanOrEqual(1);
    before = here;
  }
  expect(solidsAtBoiling(100)).toBe(0);
});
