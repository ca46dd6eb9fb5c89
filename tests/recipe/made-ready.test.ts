import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

/** Whether too much of the butter is taken. */
const isOver = (...steps: string[]): boolean => {
  const { recipe } = open(
    `recipe X\n  200 g  butter\n  300 g  rolled oats\n  4      lemons\n${steps.map((s) => `  do ${s}\n`).join('')}`,
  );
  return recipe.parts.some(({ ledger }) => ledger.some(({ uses }) => uses.some(({ over }) => over)));
};

describe('what only makes an ingredient ready takes none of it', () => {
  test.each<[string, string, string]>([
    // Each order with portions that fit behind it, and with one that is more than there is.
    ['Melt the butter.', 'Stir in half the butter, and brush with the other half.', 'Stir in 250 g of the butter.'],
    [
      'Soften the butter in a warm room.',
      'Beat in 150 g of the butter.',
      'Beat in 150 g of the butter; top with 80 g of the butter.',
    ],
    [
      'Beat the butter until pale.',
      'Fold in two thirds of the butter.',
      'Fold in two thirds of the butter. Spread with half the butter.',
    ],
    [
      'Brown the butter in a pan and cool it.',
      'Add 180 g of the butter to the oats.',
      'Add 220 g of the butter to the oats.',
    ],
    [
      'Toast the oats for 10 min.',
      'Mix 200 g of the oats with the butter, and strew with 100 g of the oats.',
      'Mix 200 g of the oats with the butter, and strew with 150 g of the oats.',
    ],
    [
      'Sift the oats into a bowl.',
      'Rub a third of the oats into the butter.',
      'Rub 310 g of the oats into the butter.',
    ],
    [
      'Soak the oats in water for 20 min.',
      'Blend half the oats.',
      'Blend half the oats. Stir in two thirds of the oats.',
    ],
    [
      'Dip the lemons in boiling water.',
      'Slice three of the lemons.',
      'Slice three of the lemons and squeeze two of the lemons.',
    ],
    [
      'Chill the butter.',
      'Rub 150 g of the butter into the oats and dot with 50 g of the butter.',
      'Rub 150 g of the butter into the oats and dot with 60 g of the butter.',
    ],
    [
      'Grate the butter.',
      'Fold in three quarters of the butter.',
      'Fold in 75 per cent of the butter, and strew with 40 per cent of the butter.',
    ],
    [
      'Season the oats with salt.',
      'Fold a quarter of the oats into the butter, and strew with the rest of the oats.',
      'Fold 200 g of the oats into the butter, and strew with half the oats.',
    ],
    [
      'Brush the lemons with the butter.',
      'Slice two of the lemons and juice the rest of the lemons.',
      'Slice six of the lemons.',
    ],
  ])('%s', (ready, fits, over) => {
    expect(isOver(ready, fits)).toBe(false);
    expect(isOver(ready, over)).toBe(true);
  });

  test.each<[string, string]>([
    ['Rub the butter into the oats.', 'Brush with 10 g of the butter.'],
    ['Add the butter.', 'Top with the rest of the butter.'],
    ['Stir the butter and oats together.', 'Strew with 50 g of the oats.'],
  ])('%s uses it up', (uses, again) => {
    expect(isOver(uses, again)).toBe(true);
  });

  test.each<[string, boolean]>([
    ['Brush with two tablespoonfuls of the butter.', false],
    ['Brush with twenty tablespoons of the butter.', true],
    ['Brush with half a cup of the butter, and half a cup of the butter again.', true],
    ['Brush each of 4 tins with 60 g of the butter.', true],
    ['Brush each of 4 tins with 40 g of the butter.', false],
  ])('%s', (step, over) => {
    expect(isOver(step)).toBe(over);
  });
});
