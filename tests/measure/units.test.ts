import { describe, expect, test } from 'vitest';
import { MEASURES_CHOICES, type Measures } from '../../server/src/measure/systems.ts';
import {
  baseOf,
  dimensionOf,
  UNITS,
  unitInFull,
  unitOf,
  unitPrinted,
  unitSpelled,
} from '../../server/src/measure/unit.ts';
import type { UnitSymbol } from '../../server/src/measure/unit-symbol.ts';

const CUBIC_INCH_ML = 2.54 ** 3;
const US_GALLON_ML = 231 * CUBIC_INCH_ML;
const UK_GALLON_ML = 4546.09;

describe('units follow their definitions', () => {
  // NIST HB 44, appendix C: 1 gal = 231 in³ = 4 qt = 8 pt = 16 cups = 128 fl oz = 256 tbsp = 768 tsp.
  test.each<[UnitSymbol, number]>([
    ['gallon', 1],
    ['quart', 4],
    ['pint', 8],
    ['cup', 16],
    ['fl oz', 128],
    ['tbsp', 256],
    ['tsp', 768],
    ['gill', 32],
  ])('US %s is a gallon over %d', (symbol, parts) => {
    expect(baseOf(symbol, 'us')).toBeCloseTo(US_GALLON_ML / parts, 9);
  });

  // UK Weights and Measures Act 1985, schedule 1.
  test.each<[UnitSymbol, number]>([
    ['gallon', 1],
    ['quart', 4],
    ['pint', 8],
    ['cup', 16],
    ['fl oz', 160],
    ['gill', 32],
    ['peck', 1 / 2],
    ['bushel', 1 / 8],
  ])('imperial %s is a gallon over %d', (symbol, parts) => {
    expect(baseOf(symbol, 'imperial')).toBeCloseTo(UK_GALLON_ML / parts, 9);
  });

  // NIST HB 44, appendix C: the dry bushel is 2150.42 in³, the peck a quarter of it.
  test('a US bushel and peck are dry measures', () => {
    expect(baseOf('bushel', 'us')).toBeCloseTo(2150.42 * CUBIC_INCH_ML, 6);
    expect((baseOf('peck', 'us') ?? 0) * 4).toBeCloseTo(2150.42 * CUBIC_INCH_ML, 6);
  });

  // New South Wales Health, conversion chart: cup 250, tablespoon 20, teaspoon 5 ml, pint 20 fl oz.
  test('an Australian kitchen has the large tablespoon', () => {
    expect((['cup', 'tbsp', 'tsp'] as const).map((unit) => baseOf(unit, 'australian'))).toEqual([250, 20, 5]);
  });

  test.each<Measures>(['metric', 'british', 'australian', 'canadian'])(
    'where a %s cup is 250 ml, the pint is imperial',
    (house) => {
      expect([baseOf('cup', house), baseOf('pint', house), baseOf('fl oz', house)]).toEqual([
        250, 568.26125, 28.4130625,
      ]);
    },
  );

  test.each<[UnitSymbol, Measures, string]>([
    ['cup', 'us', 'US cup'],
    ['cup', 'canadian', 'metric cup'],
    ['tbsp', 'australian', 'Australian tbsp'],
    ['pint', 'metric', 'imperial pint'],
    ['cup', 'imperial', 'imperial cup'],
    ['ml', 'us', 'ml'],
    ['pinch', 'metric', 'pinch'],
  ])('whose %s it is in a house of %s measures', (unit, house, words) => {
    expect(unitInFull(unit, house)).toBe(words);
  });

  test('a pound is 453.59237 g, sixteen ounces', () => {
    expect(baseOf('lb', 'us')).toBe(453.59237);
    expect((baseOf('oz', 'us') ?? 0) * 16).toBeCloseTo(453.59237, 9);
  });

  test.each<[UnitSymbol, number]>([
    ['mg', 0.001],
    ['kg', 1000],
    ['cl', 10],
    ['dl', 100],
    ['l', 1000],
    ['mm', 1],
    ['cm', 10],
    ['in', 25.4],
    ['min', 60],
    ['h', 3600],
    ['d', 86400],
  ])('%s', (symbol, base) => {
    expect(baseOf(symbol, 'metric')).toBe(base);
  });

  test('a metric spoon and cup', () => {
    expect([baseOf('tsp', 'metric'), baseOf('tbsp', 'metric'), baseOf('cup', 'metric')]).toEqual([5, 15, 250]);
  });

  test('temperatures and shares have no base', () => {
    expect([baseOf('C', 'us'), baseOf('F', 'us'), baseOf('gas', 'us'), baseOf('%', 'us')]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe('spellings', () => {
  test('every symbol and every spelling reads as its unit, and no spelling as two', () => {
    const seen = new Map<string, string>();
    for (const unit of UNITS) {
      for (const word of [unit.symbol, ...unit.spellings]) {
        expect(unitSpelled(word)?.symbol, word).toBe(unit.vessel ? undefined : unit.symbol);
        expect(seen.get(word.toLowerCase()) ?? unit.symbol, word).toBe(unit.symbol);
        if (word.length > 1) seen.set(word.toLowerCase(), unit.symbol);
      }
    }
  });

  test.each([
    ['Tablespoons', 'tbsp'],
    ['CUPS', 'cup'],
    ['Fluid Ounces', 'fl oz'],
    ['C', 'C'],
    ['kilos', 'kg'],
  ])('%s is %s', (word, symbol) => {
    expect(unitSpelled(word)?.symbol).toBe(symbol);
  });

  test('a list reads them all, and what is printed beside; no printed spelling is one of two units', () => {
    const seen = new Map<string, string>();
    for (const unit of UNITS) {
      for (const word of [unit.symbol, ...unit.spellings])
        if (word !== 'C') expect(unitPrinted(word)?.symbol, word).toBe(unit.symbol);
      for (const word of unit.printed ?? []) {
        expect(unitPrinted(word)?.symbol, word).toBe(unit.symbol);
        expect(seen.get(word), word).toBeUndefined();
        seen.set(word, unit.symbol);
      }
    }
  });

  test.each([
    ['T', 'tbsp'],
    ['t', 'tsp'],
    ['Tb', 'tbsp'],
    ['TB', 'tbsp'],
    ['Tbs', 'tbsp'],
    ['ts', 'tsp'],
    ['c', 'cup'],
    ['C', 'cup'],
    ['Cupfuls', 'cup'],
    ['TABLESPOONFULS', 'tbsp'],
    ['qts', 'quart'],
    ['gr', 'g'],
    ['G', 'g'],
    ['gill', 'gill'],
    ['teacupful', 'teacup'],
    ['F', 'F'],
  ])('in a list %s is %s', (word, symbol) => {
    expect(unitPrinted(word)?.symbol).toBe(symbol);
  });

  test.each(['T', 't', 'c', 'teacup', 'wineglass', 'cupful'])('in a sentence %s is no unit', (word) => {
    expect(unitSpelled(word)).toBeUndefined();
  });

  test.each(['c', 'f', 'cupful', 'ozs.', '', 'toString', '__proto__'])('%j is no unit', (word) => {
    expect(unitSpelled(word)).toBeUndefined();
  });
});

test('every unit of a dimension with a base has one for every house', () => {
  for (const unit of UNITS) {
    const based = unit.dimension !== 'temperature' && unit.dimension !== 'share';
    for (const house of MEASURES_CHOICES)
      expect((baseOf(unit.symbol, house) ?? 0) > 0, `${unit.symbol} ${house}`).toBe(based);
    expect(dimensionOf(unit.symbol)).toBe(unit.dimension);
    expect(unitOf(unit.symbol)).toBe(unit);
  }
});
