/**
 * Rounding of nutrition labels, row by row: 21 CFR 101.9(c) as set out in the FDA Food Labeling Guide, appendix H (rounding the values according
 * to FDA rounding rules). A tie goes up, as the guide's examples have it.
 */
import { describe, expect, test } from 'vitest';
import {
  type LabelFigure,
  US_DAILY,
  usCholesterol,
  usDailyValue,
  usEnergy,
  usFat,
  usGrams,
  usMineralDailyValue,
  usServings,
  usSodium,
} from '../../../server/src/publish/label.ts';

type Row = readonly [number, string];
const rows = (round: (value: number) => LabelFigure, table: readonly Row[]) =>
  test.each(table)('%s is %s', (value, text) => expect(round(value).text).toBe(text));

describe('energy, 101.9(c)(1): below 5 kcal 0; to 50 the nearest 5; above 50 the nearest 10', () => {
  rows(usEnergy, [
    [0, '0'],
    [4.9, '0'],
    [5, '5'],
    [7.4, '5'],
    [7.5, '10'],
    [22.4, '20'],
    [22.5, '25'],
    [47.4, '45'],
    [50, '50'],
    [50.1, '50'],
    [54.9, '50'],
    [55, '60'],
    [96, '100'],
    [104.9, '100'],
    [105, '110'],
    [2345, '2350'],
  ]);
});

describe('fat and each kind of it, 101.9(c)(2): below 0.5 g 0; below 5 g the nearest 0.5; from 5 g the nearest 1', () => {
  rows(usFat, [
    [0, '0 g'],
    [0.49, '0 g'],
    [0.5, '0.5 g'],
    [0.74, '0.5 g'],
    [0.75, '1 g'],
    [1.2, '1 g'],
    [1.25, '1.5 g'],
    [4.7, '4.5 g'],
    [4.75, '5 g'],
    [4.99, '5 g'],
    [5, '5 g'],
    [5.49, '5 g'],
    [5.5, '6 g'],
    [17.6, '18 g'],
  ]);
});

describe('cholesterol, 101.9(c)(3): below 2 mg 0; 2 to 5 mg "less than 5 mg"; above 5 the nearest 5', () => {
  rows(usCholesterol, [
    [0, '0 mg'],
    [1.9, '0 mg'],
    [2, 'less than 5 mg'],
    [5, 'less than 5 mg'],
    [5.1, '5 mg'],
    [7.4, '5 mg'],
    [7.5, '10 mg'],
    [188, '190 mg'],
  ]);
});

describe('sodium, 101.9(c)(4): below 5 mg 0; 5 to 140 mg the nearest 5; above 140 the nearest 10', () => {
  rows(usSodium, [
    [0, '0 mg'],
    [4.9, '0 mg'],
    [5, '5 mg'],
    [7.5, '10 mg'],
    [137.4, '135 mg'],
    [140, '140 mg'],
    [140.1, '140 mg'],
    [144.9, '140 mg'],
    [145, '150 mg'],
    [463, '460 mg'],
  ]);
});

describe('carbohydrate, fibre, sugars, protein, 101.9(c)(6) and (7): below 0.5 g 0; below 1 g "less than 1 g"; else the nearest 1', () => {
  rows(usGrams, [
    [0, '0 g'],
    [0.49, '0 g'],
    [0.5, 'less than 1 g'],
    [0.99, 'less than 1 g'],
    [1, '1 g'],
    [1.49, '1 g'],
    [1.5, '2 g'],
    [26.5, '27 g'],
  ]);
});

describe('per cent of the daily value, 101.9(c)(7), (8)(iii) and (9)', () => {
  test.each([
    ['fat', 8, US_DAILY.fatG, 10],
    ['saturates', 1, US_DAILY.saturatesG, 5],
    ['sodium', 160, US_DAILY.sodiumMg, 7],
    ['carbohydrate', 37, US_DAILY.carbohydrateG, 13],
    ['fibre', 4, US_DAILY.fibreG, 14],
    ['added sugars', 10, US_DAILY.addedSugarsG, 20],
    // The specimen label of the 2016 rule: 8 g fat 10 %, 1 g saturates 5 %, 160 mg sodium 7 %, 37 g carbohydrate 13 %, 4 g fibre 14 %, 10 g added sugars 20 %.
  ])('%s', (_, amount, daily, want) => expect(usDailyValue(amount, daily)).toBe(want));

  test.each([
    [1.9, 0],
    [2, 2],
    [2.9, 2],
    [3, 4],
    [9.1, 10],
    [10, 10],
    [12.4, 10],
    [12.5, 15],
    [48, 50],
    [54.9, 50],
    [55, 60],
    [104, 100],
  ])('a mineral of %s is declared as %s', (percent, want) => expect(usMineralDailyValue(percent)).toBe(want));
});

describe('servings in a container, 101.9(b)(8): from 2 to 5 the nearest half, above the nearest whole, with "about"', () => {
  rows(usServings, [
    [2, '2'],
    [2.2, 'about 2'],
    [3.5, '3.5'],
    [3.6, 'about 3.5'],
    [5.4, 'about 5'],
    [8, '8'],
    [16.5, 'about 17'],
  ]);
});
