import { describe, expect, test } from 'vitest';
import { builtInBook } from '../../server/src/food/book.ts';
import { compose } from '../../server/src/food/composition.ts';

const book = builtInBook();
const food = (id: string) => {
  const found = book.byId(id);
  if (found === undefined) throw new Error(id);
  return found;
};

describe('a mix of foods', () => {
  test('adds up by weight', () => {
    const mix = compose([
      { food: food('wheat-flour-plain'), grams: 200 },
      { food: food('unsalted-butter'), grams: 100 },
      { food: food('water'), grams: 50 },
    ]);
    expect(mix.massG).toBe(350);
    // NDB 20481: water 11.92, fat 0.98; NDB 01145: water 17.94, fat 81.11; NDB 14411: water 99.9.
    expect(mix.totals.water.grams).toBeCloseTo(2 * 11.92 + 17.94 + 0.5 * 99.9, 6);
    expect(mix.totals.fat.grams).toBeCloseTo(2 * 0.98 + 81.11, 6);
    expect(mix.totals.fat.known).toBe(true);
  });

  test('salt is sodium times 2.5', () => {
    const { totals } = compose([{ food: food('table-salt'), grams: 10 }]);
    expect(totals.salt.grams).toBeCloseTo((10 * 38758 * 2.5) / 100_000, 6);
    expect(totals.salt.grams / 10).toBeGreaterThan(0.96);
  });

  test('says how many grams of food a total lacks', () => {
    const { totals, energyKcal } = compose([
      { food: food('unsalted-butter'), grams: 100 },
      { food: food('sumac'), grams: 5 },
      { food: undefined, grams: 20 },
    ]);
    expect(totals.fat).toEqual({ grams: 81.11, known: false, lacking: 25 });
    expect(energyKcal).toBeUndefined();
  });

  test('of nothing is nothing, and known', () => {
    const { massG, totals, energyKcal } = compose([]);
    expect([massG, totals.water.grams, totals.water.known, energyKcal]).toEqual([0, 0, true, 0]);
  });

  // USDA SR26 prints the energy too: within 6 % of the plain factors for foods without much fibre.
  test.each([
    ['unsalted-butter', 717],
    ['granulated-sugar', 387],
    ['whole-milk', 61],
    ['egg', 143],
    ['wheat-flour-plain', 364],
    ['cheddar', 403],
    ['red-wine', 85],
    ['salmon', 208],
  ])('energy of %s is near %d kcal', (id, kcal) => {
    const { energyKcal } = compose([{ food: food(id), grams: 100 }]);
    expect(Math.abs((energyKcal ?? 0) / kcal - 1)).toBeLessThan(0.06);
  });
});
