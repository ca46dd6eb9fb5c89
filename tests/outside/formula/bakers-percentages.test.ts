/** Baker's percentages of published formulas, worked out by hand beside each. */
import { expect, test } from 'vitest';
import { measured, measuredRange } from '../../support/measured.ts';

test('bread at 5 flour to 3 water is 60 % hydration (Ruhlman 2009, from memory)', () => {
  const text =
    'recipe Loaf as lean bread\n  500 g  bread flour\n  300 g  water\n  10 g  fine salt\n  3 g  instant yeast\n';
  expect(measured(text, 'hydration')).toBeCloseTo(0.6, 2);
  // Bakers weigh the salt itself: 10 g on 500 g (Hamelman, Bread, from memory).
  expect(measured(text, 'salt')).toBeCloseTo(0.02, 4);
  expect(measured(text, 'yeast')).toBeCloseTo(0.006, 4);
});

test('pie dough at 3 flour, 2 fat, 1 water by weight (Ruhlman 2009, from memory)', () => {
  const text = 'recipe Crust as shortcrust\n  300 g  plain flour\n  200 g  lard\n  100 g  water\n';
  expect(measured(text, 'fat')).toBeCloseTo(2 / 3, 2);
  expect(measured(text, 'hydration')).toBeCloseTo(1 / 3, 2);
});

test('the Army pie crust of 1942: 1 lb flour, 8 oz lard, 1/5 oz salt, 1/4 pint water', () => {
  // US War Department, The Army Cook (TM 10-405), 1942, p. 215: 16 oz, 8 oz, 0.2 oz, 118.3 g.
  const text =
    'recipe Crust as shortcrust\n  1 lb  plain flour\n  8 oz  lard\n  1/5 oz  salt\n  1/4 pint  cold water\n';
  expect(measured(text, 'fat')).toBeCloseTo(8 / 16, 2);
  expect(measured(text, 'salt')).toBeCloseTo(0.2 / 16, 3);
  expect(measured(text, 'hydration')).toBeCloseTo(118.3 / 453.6, 2);
});

test('choux at 2 water, 1 butter, 1 flour, 2 egg (Ruhlman 2009, from memory)', () => {
  const text = 'recipe Choux as choux\n  240 g  water\n  120 g  unsalted butter\n  120 g  plain flour\n  240 g  eggs\n';
  expect(measured(text, 'egg')).toBeCloseTo(2, 2);
  // Water 239.8, of the butter 17.94 %, of the egg 76.15 % (USDA SR26, NDB 01145 and 01123).
  expect(measured(text, 'hydration')).toBeCloseTo((239.8 + 21.5 + 182.8) / 120, 2);
  expect(measured(text, 'fat')).toBeCloseTo((0.8111 * 120 + 0.0951 * 240) / 120, 2);
});

test('a poolish and its dough count together, and so does a listed amount of it', () => {
  // 150 g flour and 150 g water in the poolish, 350 g and 180 g after: 330 / 500.
  const whole =
    'recipe Loaf\npart poolish\n  150 g  bread flour\n  150 g  water\n  1 g  instant yeast\n  do Mix the flour, water and yeast.\npart dough as lean bread\n  350 g  bread flour\n  180 g  water\n  10 g  fine salt\n  do Mix the flour and the water with the poolish and the salt.\n';
  expect(measured(whole, 'hydration')).toBeCloseTo(0.66, 2);
  expect(measured(whole, 'yeast')).toBeCloseTo(0.002, 4);
  const listed =
    'recipe Loaf\npart poolish\n  300 g  bread flour\n  300 g  water\n  do Mix the flour and the water.\npart dough as lean bread\n  300 g  poolish\n  350 g  bread flour\n  180 g  water\n  10 g  fine salt\n  do Mix the poolish, flour, water and salt.\n';
  expect(measured(listed, 'hydration')).toBeCloseTo(0.66, 2);
});

test('a sourdough starter at 100 % hydration is half flour, half water (common practice, no source)', () => {
  const text =
    'recipe Loaf as lean bread\n  400 g  bread flour\n  200 g  sourdough starter\n  250 g  water\n  10 g  fine salt\n';
  // (250 + 100) / (400 + 100).
  expect(measured(text, 'hydration')).toBeCloseTo(0.7, 1);
  // 10 g on 400 g and the 100 g in the starter.
  expect(measured(text, 'salt')).toBeCloseTo(0.02, 4);
});

test('yeast in its three forms: fresh 1, active dry 0.4 to 0.5, instant 0.33 to 0.4 (Hamelman; Suas; from memory)', () => {
  const with_ = (yeast: string) => `recipe Loaf as lean bread\n  500 g  bread flour\n  300 g  water\n  ${yeast}\n`;
  const fresh = measuredRange(with_('12 g  fresh yeast'), 'yeast');
  expect(fresh.low).toBeCloseTo((12 * 0.33) / 500, 4);
  expect(fresh.high).toBeCloseTo((12 * 0.4) / 500, 4);
  const active = measuredRange(with_('5 g  active dry yeast'), 'yeast');
  expect(active.low).toBeGreaterThan(0.0074);
  expect(active.high).toBeLessThan(0.0084);
  expect(measured(with_('4 g  instant yeast'), 'yeast')).toBeCloseTo(0.008, 4);
});

test('22 g of salt on 1,000 g of flour are 2.2 %; salt in other foods is sodium × 2.5 (Regulation (EU) 1169/2011, annex I)', () => {
  const loaf = (salt: string) => `recipe Loaf as lean bread\n  1000 g  bread flour\n  650 g  water\n  ${salt}\n`;
  for (const kind of ['fine salt', 'table salt', 'kosher salt', 'flaky sea salt', 'coarse sea salt'])
    expect(measured(loaf(`22 g  ${kind}`), 'salt')).toBeCloseTo(0.022, 6);
  // Soy sauce has 5,493 mg of sodium in 100 g (USDA SR26, NDB 16123).
  expect(measured(loaf('100 g  soy sauce'), 'salt')).toBeCloseTo((0.05493 * 2.5 * 100) / 1000, 3);
});
