/**
 * Rounding in the European Union, for 100 g: the Commission's guidance document on tolerances for nutrient values on a label, December 2012,
 * section 6 (from memory). Energy factors: Regulation (EU) 1169/2011, annex XIV.
 */
import { describe, expect, test } from 'vitest';
import { euLabel, usLabel } from '../../../server/src/publish/declared.ts';
import { euEnergy, euGrams, euSalt, euSaturates } from '../../../server/src/publish/label.ts';
import type { Nutrition } from '../../../server/src/publish/nutrition.ts';

describe('rounding', () => {
  test.each([
    [0, '0 g'],
    [0.5, '<0.5 g'],
    [0.51, '0.5 g'],
    [3.44, '3.4 g'],
    [3.45, '3.5 g'],
    [9.94, '9.9 g'],
    [10, '10 g'],
    [10.5, '11 g'],
    [62.4, '62 g'],
  ])('fat, carbohydrate, sugars, fibre, protein: %s is %s', (value, want) => expect(euGrams(value).text).toBe(want));

  test.each([
    [0, '0 g'],
    [0.1, '<0.1 g'],
    [0.11, '0.1 g'],
    [9.96, '10 g'],
    [12.6, '13 g'],
  ])('saturates: %s is %s', (value, want) => expect(euSaturates(value).text).toBe(want));

  test.each([
    [0, '0 g'],
    [0.0125, '<0.01 g'],
    [0.013, '0.01 g'],
    [0.126, '0.13 g'],
    [0.994, '0.99 g'],
    [1, '1 g'],
    [1.25, '1.3 g'],
  ])('salt: %s is %s', (value, want) => expect(euSalt(value).text).toBe(want));

  test('energy in both, whole', () => expect(euEnergy(1046.4, 249.6).text).toBe('1046 kJ / 250 kcal'));
});

const NOTHING = { fat: 0, saturates: 0, carbohydrate: 0, sugars: 0, fibre: 0, protein: 0, alcohol: 0, salt: 0 };
const NONE = { low: 0, high: 0 };
const of100 = (whole: Partial<Nutrition['whole']>): Nutrition => ({
  rawG: 100,
  cookedG: null,
  weighedTrials: 0,
  whole: { ...NOTHING, ...whole },
  minerals: { calcium: NONE, iron: NONE, potassium: NONE, cholesterol: NONE, 'vitamin D': NONE },
  addedSugars: { low: 0, high: 0 },
  transFat: { low: 0, high: 0 },
  servings: 1,
  serving: '1 piece',
  notCounted: [],
});

describe('energy factors', () => {
  // Annex XIV: carbohydrate 17 kJ, 4 kcal; fat 37, 9; protein 17, 4; alcohol 29, 7; fibre 8, 2.
  test.each<[string, Partial<Nutrition['whole']>, string]>([
    ['fat', { fat: 10 }, '370 kJ / 90 kcal'],
    ['carbohydrate', { carbohydrate: 10 }, '170 kJ / 40 kcal'],
    ['fibre, which the tables count among the carbohydrate', { carbohydrate: 10, fibre: 10 }, '80 kJ / 20 kcal'],
    ['protein', { protein: 10 }, '170 kJ / 40 kcal'],
    ['alcohol', { alcohol: 10 }, '290 kJ / 70 kcal'],
  ])('EU, 10 g of %s', (_, whole, want) => expect(euLabel(of100(whole))?.energy?.text).toBe(want));

  // 21 CFR 101.9(c)(1)(i)(B): 4, 4 and 9 kcal for protein, total carbohydrate and total fat.
  test.each<[string, Partial<Nutrition['whole']>, string]>([
    ['fat', { fat: 10 }, '90 kcal'],
    ['carbohydrate with its fibre', { carbohydrate: 10, fibre: 10 }, '40 kcal'],
    ['protein', { protein: 10 }, '40 kcal'],
  ])('US, 10 g of %s', (_, whole, want) => expect(usLabel(of100(whole))?.energy?.text).toBe(want));

  test('salt is sodium times 2.5 (annex I): 1 g of salt is 400 mg', () => {
    expect(usLabel(of100({ salt: 1 }))?.sodium?.text).toBe('400 mg');
    expect(euLabel(of100({ salt: 1 }))?.salt?.text).toBe('1 g');
  });
});

describe('what is not known', () => {
  test('stays unknown, and takes the energy with it', () => {
    const label = usLabel(of100({ fat: null, protein: 3 }));
    expect(label).toMatchObject({ energy: null, fat: null, protein: { text: '3 g' } });
    expect(euLabel(of100({ fibre: null, carbohydrate: 20 }))).toMatchObject({ carbohydrate: null, energy: null });
  });

  test('no yield, no serving; no mass, no 100 g', () => {
    expect(usLabel({ ...of100({}), servings: null })).toBeNull();
    expect(euLabel({ ...of100({}), rawG: null })).toBeNull();
  });
});
