/**
 * What pans hold and what mixtures take up, against published figures. 231 in³ are a US gallon of 16 cups (NIST HB 44), so a cup is
 * 14.4375 in³. Pan charts of home economics leave a little at the rim and round; they are from memory, and held within a fifth.
 */
import { describe, expect, test } from 'vitest';
import { panFills } from '../../../server/src/checks/method/pan-fill.ts';
import { panVolumeMl } from '../../../server/src/recipe/measures/pan-size.ts';
import { open } from '../../support/harness.ts';

const CUP_ML = 236.5882365;
const CUP_IN3 = 231 / 16;

function volumeOf(pan: string): number {
  const { recipe } = open(`recipe Pan\n  pan     ${pan}\n  100 g     water\n  do Chill the water.\n`);
  return (recipe.pan === undefined ? undefined : panVolumeMl(recipe.pan.node)) ?? Number.NaN;
}

describe('pans', () => {
  test.each<[string, number]>([
    ['square 8 x 2 in', 128 / CUP_IN3],
    ['rectangle 13 x 9 x 2 in', 234 / CUP_IN3],
    ['round 9 x 2 in', (Math.PI * 4.5 ** 2 * 2) / CUP_IN3],
  ])('%s is %f cups brimful, by geometry', (pan, cups) => {
    expect(volumeOf(pan) / CUP_ML).toBeCloseTo(cups, 3);
  });

  // Cups by the charts (common practice, from memory).
  test.each<[string, number]>([
    ['round 8 x 2 in', 6],
    ['round 9 x 2 in', 8],
    ['round 10 x 2 in', 11],
    ['square 8 x 2 in', 8],
    ['square 9 x 2 in', 10],
    ['rectangle 11 x 7 x 2 in', 10],
    ['rectangle 13 x 9 x 2 in', 15],
    ['loaf 8.5 x 4.5 x 2.5 in', 6],
    ['loaf 9 x 5 x 3 in', 8],
    ['round 9 x 1.5 in', 6],
  ])('%s holds about %i cups', (pan, cups) => {
    const ratio = volumeOf(pan) / CUP_ML / cups;
    expect(ratio).toBeGreaterThan(0.95);
    expect(ratio).toBeLessThan(1.2);
  });

  test('twelve moulds hold twelve times one', () => {
    expect(volumeOf('12 x round 7 x 3 cm')).toBeCloseTo(12 * Math.PI * 3.5 ** 2 * 3, 3);
  });
});

describe('what a mixture takes up, without air', () => {
  const mlOf = (list: string) => {
    const { recipe } = open(`recipe Mix\n  pan     2 l\npart mix as jelly\n${list}  do Mix all the ingredients.\n`);
    return panFills(recipe)[0]?.rawMl[0] ?? Number.NaN;
  };

  // g/ml at 20 °C: water 0.998, sucrose of 50 % 1.2296 (ICUMSA tables), olive oil 0.911 to 0.916 (Codex Stan 33), whole milk
  // 1.028 to 1.033 (USDA), honey of 17 % water 1.42 (USDA Extracted Honey Grades); from memory but water.
  test.each<[string, string, number, number]>([
    ['water', '  1 kg      water\n', 0.998, 0.005],
    ['a syrup of 50 %', '  500 g     water\n  500 g     caster sugar\n', 1.2296, 0.01],
    ['olive oil', '  1 kg      olive oil\n', 0.914, 0.01],
    ['whole milk', '  1 kg      whole milk\n', 1.031, 0.01],
    ['honey', '  1 kg      honey\n', 1.42, 0.02],
    ['whole egg', '  1 kg      whole eggs\n', 1.03, 0.02],
  ])('%s', (_name, list, density, within) => {
    expect(1000 / mlOf(list) / density).toBeGreaterThan(1 - within);
    expect(1000 / mlOf(list) / density).toBeLessThan(1 + within);
  });
});
