/** The freezing point of mixes by the published method: sucrose equivalents in Leighton's table, and the salts of milk. */
import { describe, expect, test } from 'vitest';
import { depressionC, freezingPointC, saltDepressionC } from '../../../server/src/recipe/measures/freezing.ts';
import { measured, measuredRange } from '../../support/measured.ts';

test("Leighton's table (1927), and between its rows", () => {
  expect(depressionC(0)).toBe(0);
  expect(depressionC(0.3)).toBeCloseTo(1.86, 3);
  expect(depressionC(0.9)).toBeCloseTo(6.23, 3);
  expect(depressionC(0.345)).toBeCloseTo((2.03 + 2.21) / 2, 3);
  expect(depressionC(1.2)).toBeUndefined();
});

test.each([
  // Freezing point depression of sucrose by per cent of weight, CRC Handbook of Chemistry and Physics, from memory.
  [10, 0.63],
  [20, 1.49],
  [30, 2.64],
])('sucrose of %d %% agrees with measured solutions within 0.05 °C', (percent, celsius) => {
  expect(Math.abs((depressionC(percent / (100 - percent)) ?? 0) - celsius)).toBeLessThan(0.05);
});

test('a mix of 10 % MSNF, 2 % whey solids, 12 % sucrose, 4 % 42-DE syrup solids and 60 % water', () => {
  // Goff's method (University of Guelph, freezing curve), by hand: SE = 10 × 0.545 + 2 × 0.765 + 12 + 4 × 0.42 = 20.66;
  // 34.43 in 100 of water: 2.03 + (2.21 − 2.03) × 1.43 / 3 = 2.116 °C. Salts: (10 + 2) × 2.37 / 60 = 0.474 °C.
  const equivalents = (10 * 0.545 + 2 * 0.765 + 12 + 4 * 0.42) / 60;
  expect(depressionC(equivalents)).toBeCloseTo(2.116, 2);
  expect(saltDepressionC(12 / 60)).toBeCloseTo(0.474, 3);
  const point = freezingPointC({ low: equivalents, high: equivalents }, { low: 12 / 60, high: 12 / 60 });
  expect(point.low).toBeCloseTo(-2.59, 2);
  expect(point.high).toBeCloseTo(-2.59, 2);
});

const MIX =
  'recipe Ice as ice cream\n  500 g  whole milk\n  250 g  double cream\n  145 g  caster sugar\n  12 g  skimmed milk powder\n';

describe('a mix written as a recipe', () => {
  test('its milk solids and lactose, by hand from USDA SR26', () => {
    // MSNF: milk 100 − 88.13 − 3.27 = 8.60 %; cream 100 − 47.5 − 48 = 4.5 %; powder 100 − 3.16 − 0.77 = 96.07 %.
    const solids = 500 * 0.086 + 250 * 0.045 + 12 * 0.9607;
    expect(measured(MIX, 'milk solids')).toBeCloseTo(solids / 907, 4);
    const water = 500 * 0.8813 + 250 * 0.475 + 12 * 0.0316 + 145 * 0.0002;
    expect(measured(MIX, 'lactose in water')).toBeCloseTo((solids * 0.545) / water, 3);
  });

  test('its freezing point, by hand', () => {
    const solids = 500 * 0.086 + 250 * 0.045 + 12 * 0.9607;
    const water = 500 * 0.8813 + 250 * 0.475 + 12 * 0.0316;
    const equivalents = (145 * 0.998 + solids * 0.545) / water;
    const by = (depressionC(equivalents) ?? 0) + (solids * 2.37) / water;
    expect(measured(MIX, 'freezing point')).toBeCloseTo(-by, 2);
  });

  test('is within the mixes of the trade: −2 to −3.5 °C (common practice, no source)', () => {
    expect(measured(MIX, 'freezing point')).toBeLessThan(-2);
    expect(measured(MIX, 'freezing point')).toBeGreaterThan(-3.5);
  });

  test('dextrose lowers it 1.9 times as far as the sugar it replaces, weight for weight of solids', () => {
    const point = (sugar: string) => measured(`recipe Ice as sorbet\n  1 kg  water\n  ${sugar}\n`, 'freezing point');
    expect(point('100 g  caster sugar')).toBeCloseTo(-0.6, 1);
    // 110 g of the monohydrate are 100 g of dextrose, and 10 g of water.
    expect(point('110 g  dextrose') / point('100 g  caster sugar')).toBeCloseTo(1.9, 0);
  });

  test('alcohol lowers it by its molecules: 1.86 °C for a mole in a kilogram of water', () => {
    const text = 'recipe Ice as sorbet\n  850 g  water\n  150 g  vodka\n';
    // 50.1 g of alcohol in 950 g of water.
    expect(measured(text, 'freezing point')).toBeCloseTo(-1.86 * (50.1 / 46.07) * (1000 / 950), 1);
  });

  test('a syrup whose sugars are not told apart is a range', () => {
    const { low, high } = measuredRange(
      'recipe Ice as sorbet\n  1 kg  water\n  300 g  liquid glucose\n',
      'freezing point',
    );
    expect(high - low).toBeGreaterThan(0.2);
  });
});
