/** Cooling, thawing and rising against what was measured or is published. */
import { describe, expect, test } from 'vitest';
import { type Cooling, coolingTime } from '../../../server/src/heat/cooling.ts';
import { bird } from '../../../server/src/heat/estimate.ts';
import { coldPlaces } from '../../../server/src/heat/places.ts';
import { thawingTime } from '../../../server/src/heat/thawing.ts';
import { yeastRate } from '../../../server/src/heat/yeast.ts';

const STEW = { water: 0.8, protein: 0.07, fat: 0.05, carbohydrate: 0.07, ash: 0.01 };

function place(name: string) {
  const found = coldPlaces().get(name);
  if (found === undefined) throw new Error(`no row ${name}`);
  return found;
}

const pan = (depthCm: number, where: string, covered = false): Cooling => ({
  makeup: STEW,
  depth: depthCm / 100,
  startC: 57,
  place: place(where),
  covered,
  thin: false,
});

const hours = (cooling: Cooling, to: number) => (coolingTime(cooling, to)?.likely ?? Number.NaN) / 60;

describe('a pan of thick food', () => {
  // Roberts, Olds, Shanklin, Sauer, Sneed 2013, Food Protection Trends 33(1):27 (abstract): 5.1 cm of chili in open steel pans.
  test('a walk-in freezer meets both limits at 5.1 cm, a walk-in refrigerator does not', () => {
    expect(hours(pan(5.1, 'walk-in freezer'), 21)).toBeLessThan(2.3);
    expect(hours(pan(5.1, 'walk-in freezer'), 5)).toBeLessThan(6);
    expect(hours(pan(5.1, 'walk-in refrigerator'), 21)).toBeGreaterThan(2);
  });

  // Olds and Sneed 2005, Journal of Child Nutrition and Management 29(1) (abstract).
  test('a blast chiller meets them', () => {
    expect(hours(pan(5.1, 'blast chiller'), 21)).toBeLessThan(2);
    expect(hours(pan(5.1, 'blast chiller'), 5)).toBeLessThan(6);
  });

  test('a lid makes it slower, and depth by more than its share', () => {
    expect(hours(pan(5.1, 'refrigerator', true), 21)).toBeGreaterThan(1.3 * hours(pan(5.1, 'refrigerator'), 21));
    expect(hours(pan(10.2, 'refrigerator'), 21)).toBeGreaterThan(2 * hours(pan(5.1, 'refrigerator'), 21));
  });
});

test('white sauce, 30 l as wide as tall, from 40.6 to 13.9 °C in the refrigerator: 25 h measured (J. Milk Food Technol., abstract)', () => {
  const across = (4 * 0.0303) / Math.PI;
  const side = across ** (1 / 3);
  const sauce: Cooling = {
    ...pan(0, 'refrigerator'),
    depth: side,
    across: side,
    startC: 40.6,
    place: { ...place('refrigerator'), celsius: 4 },
  };
  const cooled = coolingTime(sauce, 13.9);
  expect((cooled?.likely ?? 0) / 60).toBeGreaterThan(18);
  expect((cooled?.likely ?? 0) / 60).toBeLessThan(33);
  expect(cooled?.range.low).toBeLessThan(25 * 60);
  expect(cooled?.range.high).toBeGreaterThan(25 * 60);
});

test('nothing cools below what stands around it', () => {
  expect(coolingTime(pan(5, 'room'), 5)).toBeUndefined();
});

describe('thawing of turkeys, USDA FSIS', () => {
  const flesh = { water: 0.68, protein: 0.19, fat: 0.12, carbohydrate: 0, ash: 0.01 };
  test.each([
    ['refrigerator', 3.14, 24, 72],
    ['refrigerator', 8.11, 96, 120],
    ['cold water', 6.29, 6, 8],
    ['cold water', 9.94, 10, 12],
  ])('in the %s, %d kg: %d to %d h', (where, kg, low, high) => {
    const time = thawingTime(flesh, bird(kg, 1040), -18, place(where));
    expect((time?.high ?? 0) / 60).toBeGreaterThan(low);
    expect((time?.low ?? 0) / 60).toBeLessThan(high);
  });
});

describe('yeast', () => {
  // Trade practice: doubled in 60 to 90 min at 24 to 27 °C, in 8 to 16 h at 4 °C.
  test('in the cold six to sixteen times slower', () => {
    const ratio = yeastRate(25.5) / yeastRate(4);
    expect(ratio).toBeGreaterThan(6);
    expect(ratio).toBeLessThan(16);
  });
  // A baking trade article: about a tenth a degree between 23 and 30 °C.
  test('a degree more is 5 to 12 % more', () => {
    expect(yeastRate(26) / yeastRate(25)).toBeGreaterThan(1.05);
    expect(yeastRate(26) / yeastRate(25)).toBeLessThan(1.12);
  });
  test('none in ice, and none beyond its death', () => {
    expect(yeastRate(-6)).toBe(0);
    expect(yeastRate(50)).toBe(0);
  });
});
