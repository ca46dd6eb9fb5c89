/**
 * Pans held against geometry, and against the table of pan volumes that North American cook books print (from memory:
 * cups of water that standard tins take; tins are rounded at the corners, so they hold a tenth less than their outline).
 */
import { describe, expect, test } from 'vitest';
import { scaleRecipe } from '../../../server/src/edits/scale.ts';
import { applyEdits } from '../../../server/src/edits/text-edit.ts';
import { printDocument } from '../../../server/src/notation/document.ts';
import { panIn, panSize } from '../../../server/src/recipe/measures/pan-size.ts';
import { open } from '../../support/harness.ts';

function sizeOf(words: string) {
  const pan = panIn(words);
  const size = pan === undefined ? undefined : panSize(pan);
  if (size === undefined) throw new Error(`${words} has no size`);
  return size;
}

describe('geometry', () => {
  test.each<[string, number, number]>([
    // π 12² × 3; π 12² + π 24 × 3.
    ['round 24 x 3 cm', 1357.17, 678.58],
    ['square 20 x 5 cm', 2000, 800],
    ['rectangle 30 x 20 x 4 cm', 2400, 1000],
    // π (12² − 4²) × 10; its bottom and both walls.
    ['ring 24 x 8 x 10 cm', 4021.24, 1407.43],
    // Twelve of π 3.5² × 3.
    ['12 x round 7 x 3 cm', 1385.44, 1253.5],
  ])('%s holds %f ml and has %f cm² to line', (words, ml, cm2) => {
    const { volumeMl, liningCm2 } = sizeOf(words);
    expect(volumeMl).toBeCloseTo(ml, 1);
    expect(liningCm2).toBeCloseTo(cm2, 1);
  });

  test('an inch is 2.54 cm', () => {
    expect(sizeOf('round 9 x 2 in').volumeMl).toBeCloseTo(sizeOf('round 22.86 x 5.08 cm').volumeMl, 6);
  });

  test('a volume alone is a volume, and has no lining that is known', () => {
    expect(sizeOf('1.2 l').volumeMl).toBe(1200);
    expect(sizeOf('1.2 l').liningCm2).toBeUndefined();
  });
});

/** Cups to the brim. */
const CUPS: readonly (readonly [string, number])[] = [
  ['round 6 x 2 in', 4],
  ['round 8 x 1.5 in', 4.5],
  ['round 8 x 2 in', 6],
  ['round 9 x 1.5 in', 6],
  ['round 9 x 2 in', 8],
  ['round 10 x 2 in', 10.75],
  ['square 8 x 1.5 in', 6],
  ['square 8 x 2 in', 8],
  ['square 9 x 1.5 in', 8],
  ['square 9 x 2 in', 10],
  ['square 10 x 2 in', 12],
  ['rectangle 13 x 9 x 2 in', 14],
  ['loaf 8.5 x 4.5 x 2.5 in', 6],
  ['loaf 9 x 5 x 3 in', 8],
];
const CUP_ML = 236.588;

test.each(CUPS)('%s holds about %f cups', (words, cups) => {
  const ours = sizeOf(words).volumeMl / CUP_ML;
  expect(ours / cups).toBeGreaterThan(0.97);
  expect(ours / cups).toBeLessThan(1.17);
});

test('one pan for another, a recipe grows by what the table says within 11 %, or 19 % at worst', () => {
  const ratios = CUPS.flatMap(([a, cupsA]) =>
    CUPS.map(([b, cupsB]) => sizeOf(a).volumeMl / sizeOf(b).volumeMl / (cupsA / cupsB)),
  );
  const sorted = ratios.map((r) => Math.abs(Math.log(r))).sort((a, b) => a - b);
  expect(Math.exp(sorted[Math.floor(sorted.length * 0.8)] ?? 9)).toBeLessThan(1.11);
  expect(Math.exp(sorted.at(-1) ?? 9)).toBeLessThan(1.19);
});

const TART = `recipe Tart
  yield   8 slices
  pan     round 20 x 3 cm

part case as sweet paste
  200 g     plain flour
  100 g     butter
  do Rub the butter into the flour, roll out and line the pan.

part filling
  300 g     cream
  do Pour the cream into the case.
`;

describe('a part that lines and a part that fills', () => {
  const to = (pan: string, text = TART): string => {
    const { document, recipe } = open(text);
    const result = scaleRecipe(document, recipe, { kind: 'pan', words: pan });
    if (!result.ok) throw new Error(result.why);
    return printDocument(applyEdits(document, result.scaling.edits));
  };

  test('the case goes by bottom and sides, the filling by volume', () => {
    const text = to('round 28 x 4 cm');
    // (π 14² + π 28 × 4) / (π 10² + π 20 × 3) = 308/160; (14² × 4) / (10² × 3) = 784/300.
    expect(text).toContain(`${Math.round((200 * 308) / 160)} g     plain flour`);
    expect(text).toContain(`${Math.round((300 * 784) / 300)} g     cream`);
    expect(text).toContain('pan     round 28 x 4 cm');
  });

  test('a base pressed on the bottom goes by the bottom alone', () => {
    const pressed = TART.replace('roll out and line the pan', 'press into the bottom of the pan');
    expect(to('round 20 x 6 cm', pressed)).toContain('200 g     plain flour');
    expect(to('round 20 x 6 cm', pressed)).toContain('600 g     cream');
  });

  test('two of the same pan take twice of everything', () => {
    expect(to('2 x round 20 x 3 cm')).toContain('400 g     plain flour');
    expect(to('2 x round 20 x 3 cm')).toContain('600 g     cream');
  });

  test('paper in the pan is no crust', () => {
    const papered = TART.replace('case as sweet paste', 'batter')
      .replace('roll out and line the pan', 'line the pan with paper and fill it')
      .replace('into the case', 'over the batter');
    expect(to('round 28 x 4 cm', papered)).toContain('523 g     plain flour');
  });
});
