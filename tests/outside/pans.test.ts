/**
 * Pans as cooks and shops say them, against sizes that are published. Sources: `us` the usual American pan table in cups
 * (1 cup 236.6 ml; common practice), `uk` geometry at the usual depth of British tins (common practice), `gn` EN 631-1 with makers'
 * volumes, `card` sizes printed on USDA Quantity Recipes for School Food Service (1988) and US Armed Forces Recipe Service cards,
 * `sum` plain geometry of what is written.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLine } from '../../server/src/notation/statements.ts';
import { panIn, panSize } from '../../server/src/recipe/measures/pan-size.ts';
import { formatted } from '../support/at-cursor.ts';

const CUP = 236.6;

/** Line, least and most litres, how many pans or hollows, source. */
const PANS: readonly (readonly [string, number, number, number, string])[] = [
  ['round 24 x 3 cm', 1.357, 1.357, 1, 'sum'],
  ['12 x round 7 x 3 cm', 1.385, 1.385, 12, 'sum'],
  ['square 20 x 5 cm', 2, 2, 1, 'sum'],
  ['rectangle 30 x 20 x 4 cm', 2.4, 2.4, 1, 'sum'],
  ['1.2 l', 1.2, 1.2, 1, 'sum'],
  ['2 x 1.2 l', 2.4, 2.4, 2, 'sum'],
  ['9 x 13-inch pan', 15 * CUP, 15 * CUP, 1, 'us'],
  ['9x13 in', 15 * CUP, 15 * CUP, 1, 'us'],
  ['9 x 13 pan', 15 * CUP, 15 * CUP, 1, 'us'],
  ['13 by 9 inch baking dish', 15 * CUP, 15 * CUP, 1, 'us'],
  ['9" x 13" glass dish', 15 * CUP, 15 * CUP, 1, 'us'],
  ['13- x 9-inch metal baking pan', 15 * CUP, 15 * CUP, 1, 'us'],
  ['9 in. x 13 in. pan', 15 * CUP, 15 * CUP, 1, 'us'],
  ['13 x 9 x 2-inch baking pan', 3.834, 3.834, 1, 'sum'],
  ['23 x 33 cm baking tin', 15 * CUP, 15 * CUP, 1, 'us'],
  ['11 x 7-inch baking dish', 10 * CUP, 10 * CUP, 1, 'us'],
  ['8-inch square', 6 * CUP, 8 * CUP, 1, 'us'],
  ['8 x 8-inch baking pan', 6 * CUP, 8 * CUP, 1, 'us'],
  ['9-inch square cake pan', 8 * CUP, 10 * CUP, 1, 'us'],
  ['square 9 in, 2 in deep', 2.655, 2.655, 1, 'sum'],
  ['9-inch round cake pan', 6 * CUP, 8 * CUP, 1, 'us'],
  ['8-inch round cake pan', 4 * CUP, 6 * CUP, 1, 'us'],
  ['two 9-inch round cake pans', 12 * CUP, 16 * CUP, 2, 'us'],
  ['2 8-inch round cake pans', 8 * CUP, 12 * CUP, 2, 'us'],
  ['10-inch round', 11 * CUP, 11 * CUP, 1, 'us'],
  ['9 inch round cake pan, 2 inches deep', 2.085, 2.085, 1, 'sum'],
  ['deep 20 cm round', 2.356, 2.356, 1, 'uk'],
  ['20cm deep round cake tin', 2.356, 2.356, 1, 'uk'],
  ['20 cm round cake tin', 1.257, 2.356, 1, 'uk'],
  ['20 cm round cake tin, 7 cm deep', 2.199, 2.199, 1, 'sum'],
  ['2 x 20 cm sandwich tins', 2.513, 2.513, 2, 'uk'],
  ['two 18cm sandwich tins', 2.036, 2.036, 2, 'uk'],
  ['20 cm square cake tin', 1.6, 3, 1, 'uk'],
  ['deep 23 cm square tin', 3.968, 3.968, 1, 'uk'],
  ['20 cm brownie tin', 1.6, 1.6, 1, 'uk'],
  ['30 x 23 cm traybake tin', 2.76, 2.76, 1, 'uk'],
  ['23 cm springform', 2.63, 3.16, 1, 'us'],
  ['9-inch springform pan', 2.606, 3.127, 1, 'us'],
  ['9-inch (23 cm) springform pan', 2.606, 3.127, 1, 'us'],
  ['23cm/9in springform tin', 2.63, 3.16, 1, 'us'],
  ['26 cm springform, 7 cm deep', 3.717, 3.717, 1, 'sum'],
  ['24 cm springform', 3.167, 3.167, 1, 'uk'],
  ['9 x 5 loaf pan', 8 * CUP, 8 * CUP, 1, 'us'],
  ['9 x 5-inch loaf pan', 8 * CUP, 8 * CUP, 1, 'us'],
  ['8 1/2 x 4 1/2-inch loaf pan', 6 * CUP, 6 * CUP, 1, 'us'],
  ['loaf 21 x 11 x 6 cm', 1.275, 1.275, 1, 'sum'],
  ['2 lb loaf tin', 1.8, 1.8, 1, 'uk'],
  ['900 g loaf tin', 1.8, 1.8, 1, 'uk'],
  ['1 lb loaf tin', 0.9, 0.9, 1, 'uk'],
  ['2 x 450 g loaf tins', 1.8, 1.8, 2, 'uk'],
  ['12-cup fluted ring tin', 12 * CUP, 12 * CUP, 1, 'us'],
  ['10-cup fluted ring pan', 10 * CUP, 10 * CUP, 1, 'us'],
  ['10-inch tube pan', 16 * CUP, 16 * CUP, 1, 'us'],
  ['9-inch angel food cake pan', 12 * CUP, 12 * CUP, 1, 'us'],
  ['22 cm gugelhupf tin', 2.5, 2.5, 1, 'uk'],
  ['half sheet', 3.77, 3.835, 1, 'card'],
  ['half sheet pan', 3.77, 3.835, 1, 'card'],
  ['2 quarter sheet pans', 3.83, 3.83, 2, 'us'],
  ['full sheet pan', 7.54, 7.67, 1, 'card'],
  ['swiss roll tin', 1.518, 1.518, 1, 'uk'],
  ['GN 1/1, 65 mm', 9, 9, 1, 'gn'],
  ['gastronorm 1/2, 100 mm deep', 6.5, 6.5, 1, 'gn'],
  ['full hotel pan', 7.9, 13.2, 1, 'card'],
  ['full hotel pan, 4 in deep', 13.2, 13.2, 1, 'us'],
  ['9 inch tart tin', 1.02, 1.05, 1, 'uk'],
  ['23 cm loose-bottomed fluted tart tin', 1.039, 1.039, 1, 'uk'],
  ['28 cm quiche dish', 1.72, 1.73, 1, 'uk'],
  ['four 10 cm tartlet tins', 0.628, 0.628, 4, 'uk'],
  ['9-inch pie plate', 4 * CUP, 4 * CUP, 1, 'us'],
  ['9-inch glass pie dish', 4 * CUP, 4 * CUP, 1, 'us'],
  ['muffin tin, 12', 1.2, 1.28, 12, 'us'],
  ['12-hole muffin tin', 1.2, 1.28, 12, 'us'],
  ['12-cup muffin tin', 1.2, 1.28, 12, 'us'],
  ['non-stick muffin tin', 1.2, 1.28, 12, 'us'],
  ['24-hole mini muffin tin', 0.72, 0.72, 24, 'us'],
  ['6 dariole moulds', 0.9, 0.9, 6, 'uk'],
  ['12 ramekins of 150 ml', 1.8, 1.8, 12, 'sum'],
  ['6 x 150 ml ramekins', 0.9, 0.9, 6, 'sum'],
  ['6 ramekins', 0.708, 1.422, 6, 'us'],
  ['2-quart casserole', 1.893, 1.893, 1, 'sum'],
  ['1.5 l soufflé dish', 1.5, 1.5, 1, 'sum'],
  ['2 pint pudding basin', 1.1365, 1.1365, 1, 'sum'],
  ['12-inch cast-iron skillet', 3.707, 3.707, 1, 'us'],
];

describe('what a pan holds', () => {
  test.each(PANS)('pan %s', (line, low, high, count) => {
    const { statement, faults } = readLine(`pan ${line}`);
    expect(faults).toEqual([]);
    const pan = statement.kind === 'pan' ? statement.pan : undefined;
    const size = pan && panSize(pan);
    // The table has cups as ml and all else as litres.
    const ml = (figure: number) => (figure > 100 ? figure : figure * 1000);
    expect(size?.count).toBe(count);
    for (const [has, wants] of [
      [size?.rangeMl.low, ml(low)],
      [size?.rangeMl.high, ml(high)],
    ] as const)
      expect(Math.abs((has ?? 0) / wants - 1), `${has} for ${wants} ml`).toBeLessThan(0.035);
    expect((size?.assumed.length ?? 0) > 0 || low === high).toBe(true);
  });

  test.each([
    ['9-inch pan', 'say what shape it is'],
    ['9 springform', 'is `9` a size?'],
    ['18 x 26 pan', 'write the unit'],
    ['banana pan', '`banana` is no pan'],
    ['round 24 x 3 kg', 'write'],
    ['roasting tin', 'how large is it?'],
    ['round', 'how large is it?'],
    ['rectangle 30 cm', 'give its sizes'],
    ['round 9 x 2 x 3 in', 'give its sizes'],
    ['0 x 0 cm square', 'write'],
    ['2 lb springform', 'a weight is the size of a loaf tin'],
  ])('pan %s is asked about', (line, words) => {
    const { faults } = readLine(`pan ${line}`);
    expect(faults.map((f) => f.code)).toEqual(['bad-pan']);
    expect(faults[0]?.detail.toLowerCase()).toContain(words.toLowerCase());
  });

  test('an odd size of a known pan has the depth of its kind', () => {
    const pan = panIn('21 cm springform');
    const size = pan && panSize(pan);
    expect(size?.assumed.join()).toMatch(/deep/);
    expect((size?.rangeMl.high ?? 0) / (size?.rangeMl.low ?? 1)).toBeLessThan(1.3);
  });

  test('the formatter leaves every pan what it is', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PANS.map(([line]) => line)), (line) => {
        const laidOut = formatted(`recipe A\n  pan ${line}\n`).split('\n')[1]?.trim() ?? '';
        const size = (text: string) => {
          const pan = panIn(text);
          return pan && panSize(pan);
        };
        expect(size(laidOut.replace(/^pan +/, ''))).toEqual(size(line));
      }),
    );
  });

  test('any words make a pan or a fault, and never throw', () => {
    const words = fc.array(
      fc.constantFrom(
        '9',
        'x',
        '13',
        'in',
        'cm',
        '-',
        'round',
        'tin',
        'half',
        'sheet',
        '(',
        ')',
        '/',
        'deep',
        'lb',
        ',',
        '½',
      ),
      { maxLength: 9 },
    );
    fc.assert(
      fc.property(words, (of) => {
        const { statement, faults } = readLine(`pan ${of.join(' ')}`);
        const pan = statement.kind === 'pan' ? statement.pan : undefined;
        expect(faults.length > 0 || (pan !== undefined && panSize(pan) !== undefined)).toBe(true);
      }),
    );
  });
});
