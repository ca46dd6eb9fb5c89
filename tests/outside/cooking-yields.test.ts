/**
 * What foods come to as they are cooked, by published figures: a yield within them is quiet, one that is ten times or a fifth of them is found.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const GUIDE = 'USDA Food Buying Guide, from memory';
const AH102 = 'USDA Agriculture Handbook 102 (1975), from memory';

/** A kilogram of it, what is done, and what times its weight comes of it. */
const ROWS: readonly (readonly [food: string, step: string, low: number, high: number, source: string])[] = [
  [
    'dried chickpeas',
    'Soak overnight, drain, cover with water and boil for 1 h until soft, then drain.',
    2.2,
    2.6,
    GUIDE,
  ],
  ['dried black beans', 'Boil in plenty of water for 90 min until soft and drain.', 2.2, 2.6, GUIDE],
  ['long grain white rice', 'Boil in plenty of salted water for 12 min until tender and drain.', 2.8, 3.1, GUIDE],
  ['brown rice', 'Boil in plenty of salted water for 35 min until tender and drain.', 2.5, 2.8, GUIDE],
  ['spaghetti', 'Boil in salted water for 10 min until tender and drain.', 2.2, 2.5, GUIDE],
  ['boneless beef rump', 'Roast at 170 C for 90 min, to 70 C in the middle.', 0.7, 0.85, AH102],
  ['whole chicken', 'Roast at 190 C for 80 min, until the thigh reads 75 C.', 0.7, 0.75, AH102],
  ['apples, sliced', 'Dry at 57 C in the oven for 10 h until leathery.', 0.1, 0.25, AH102],
];

const recipe = (food: string, step: string, kg: number) =>
  `recipe Sample\n  yield   ${Math.round(kg * 1000)} g\n  1 kg      ${food}\n  do ${step}\n`;

const found = (text: string): boolean => open(text).findings.open.some(({ code }) => code === 'yield-mismatch');

describe.each(ROWS)('%s', (food, step, low, high) => {
  test('as published', () => {
    expect(found(recipe(food, step, low))).toBe(false);
    expect(found(recipe(food, step, high))).toBe(false);
  });

  test('ten times, and a tenth', () => {
    expect(found(recipe(food, step, high * 10))).toBe(true);
    expect(found(recipe(food, step, low / 10))).toBe(true);
  });
});
