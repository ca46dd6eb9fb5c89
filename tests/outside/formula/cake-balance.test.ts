/** The classic rules of cake balance (Gisslen; Figoni; Pyler; from memory), on published cakes and on broken ones. */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';
import { measured } from '../../support/measured.ts';

const cake = (flour: number, sugar: number, butter: number, egg: number, milk: number, kind = 'creamed cake') =>
  `recipe Cake as ${kind}\n  ${flour} g  plain flour\n  ${sugar} g  caster sugar\n  ${butter} g  unsalted butter\n  ${egg} g  eggs\n  ${milk} g  whole milk\n  8 g  baking powder\n  do Cream the butter with the sugar, beat in the eggs and fold in the flour, baking powder and milk.\n`;

const messages = (text: string) =>
  open(text)
    .findings.open.filter((f) => f.check.family === 'formula')
    .map((f) => `${f.severity} ${f.code}: ${f.said.message}`);

test('a pound of each, ten eggs (Farmer, 1896, from memory): every rule holds', () => {
  const text =
    'recipe Pound cake as pound cake\n  1 lb  butter\n  1 lb  sugar\n  10  eggs\n  1 lb  plain flour\n  2 tbsp  brandy\n  do Cream the butter with the sugar; beat in the eggs, the flour and the brandy.\n';
  expect(measured(text, 'sugar')).toBeCloseTo(1, 2);
  expect(measured(text, 'egg per fat')).toBeGreaterThan(1);
  expect(measured(text, 'liquid per sugar')).toBeGreaterThan(1);
  expect(messages(text)).toEqual([]);
});

describe('by hand', () => {
  test('egg to fat: 150 g of egg to 150 g of butter of 81 % fat, and the fat of the egg', () => {
    expect(measured(cake(200, 180, 150, 150, 80), 'egg per fat')).toBeCloseTo(
      150 / (150 * 0.8111 + 150 * 0.0951 + 80 * 0.0327),
      2,
    );
  });

  test('liquid to sugar: egg and milk by their whole weight', () => {
    expect(measured(cake(200, 180, 150, 150, 80), 'liquid per sugar')).toBeCloseTo(230 / (180 * 0.998), 2);
  });
});

describe('what a balanced cake is told, and a cake out of balance', () => {
  test('balanced: nothing', () => expect(messages(cake(200, 180, 150, 160, 80))).toEqual([]));

  test('egg short of the fat is information, and says which rule', () => {
    const [only, ...more] = messages(cake(200, 160, 170, 80, 120));
    expect(only).toMatch(/^info egg-out-of-range: .*egg of at least the weight of the fat/);
    expect(more).toEqual([]);
  });

  test('sugar beyond flour and liquid is a warning', () => {
    expect(messages(cake(200, 420, 150, 150, 100))[0]).toMatch(/^warning sugar-out-of-range/);
  });

  test('a cake without egg is not asked for it', () => {
    const text = cake(250, 180, 100, 1, 220).replace(/^.*eggs\n/m, '');
    expect(messages(text).filter((m) => m.includes('egg-out-of-range'))).toEqual([]);
  });
});
