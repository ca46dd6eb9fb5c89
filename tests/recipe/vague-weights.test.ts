/**
 * What an amount weighs of a food that could be several, or of which only the noun is known. Cups are those of USDA SR26: whipping cream
 * 238 g (NDB 01053), single cream 240 g (NDB 01050), milk 244 g (NDB 01211), orange juice 248 g (NDB 09206).
 */
import { describe, expect, test } from 'vitest';
import { likelyGrams } from '../../server/src/food/weigh.ts';
import { open } from '../support/harness.ts';

const weighed = (line: string) => open(`recipe X\n  ${line}\n`).recipe.parts[0]?.head.ingredients[0]?.weighed;

describe('a food that could be several', () => {
  test.each<[string, number, number, number]>([
    ['1 cup cream', 228, 242, 238],
    ['2 cups cream', 456, 484, 476],
    ['1 cup milk and water', 235, 245, 240],
    ['100 g cream', 100, 100, 100],
    ['1 tin of 400 g chickpeas', 400, 400, 400],
  ])('%s', (line, low, high, likely) => {
    const found = weighed(line);
    expect(found).toMatchObject({ known: true });
    if (found?.known !== true) return;
    expect(found.grams.low).toBeGreaterThanOrEqual(low - 1);
    expect(found.grams.high).toBeLessThanOrEqual(high + 1);
    expect(Math.abs(likelyGrams(found) / likely - 1)).toBeLessThan(0.03);
  });

  test('says which', () => {
    expect(weighed('1 cup cream')).toMatchObject({
      reason: { words: expect.stringMatching(/whipping cream, double cream and single cream, whichever it is$/) },
    });
  });

  test('has no weight where one of them has none', () => {
    // One bell pepper can be weighed, one black pepper not.
    expect(weighed('1 pepper')).toMatchObject({ known: false });
  });
});

describe('a food of which only the noun is known', () => {
  test.each<[string, number, number]>([
    ['100 ml xylo milk', 95, 105],
    ['1 cup xylo cream', 224, 249],
    ['1 l xylo stock', 950, 1050],
    ['1 bottle of 250 ml xylo juice', 237, 263],
    ['about 100 ml xylo milk', 85, 116],
  ])('%s is weighed as a liquid', (line, low, high) => {
    const found = weighed(line);
    expect(found).toMatchObject({ known: true, reason: { kind: 'density' } });
    if (found?.known !== true) return;
    expect(found.grams.low).toBeGreaterThanOrEqual(low);
    expect(found.grams.high).toBeLessThanOrEqual(high);
  });

  test.each([
    '1 cup xylo',
    '1 cup xylo flour',
    '1 cup xylo cheese',
    '2 xylo creams',
    '1 cup xylo butter',
    '1 cup xylo milk powder',
  ])('%s is not', (line) => {
    expect(weighed(line)).toMatchObject({ known: false });
  });

  test('is never said to have no weight where it has one', () => {
    const [weighs, not] = ['100 ml  xylo milk', '1 cup  xylo'].map(
      (line) => open(`recipe X\n  ${line}\n`).findings.open.find((f) => f.code === 'unknown-food')?.said.message,
    );
    expect(weighs).not.toContain('weighed');
    expect(not).toContain('so it cannot be weighed');
  });
});
