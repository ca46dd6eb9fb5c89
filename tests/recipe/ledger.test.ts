import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

/** What is left of the milk, in %, after the steps; `?` when a portion was vague, `!` where more was taken than there was. */
function leftAfter(...steps: string[]): string {
  const { recipe } = open(
    `recipe X\n  300 ml  whole milk\n  4 large  eggs\n${steps.map((s) => `  do ${s}\n`).join('')}`,
  );
  const entry = recipe.parts[0]?.ledger[0];
  if (entry === undefined) return 'no ledger';
  const over = entry.uses.some((u) => u.over) ? '!' : '';
  return `${Math.round(entry.left.low * 100)}${entry.unsure ? '?' : ''}${over}`;
}

describe('the ledger of an ingredient', () => {
  test.each<[string, string[], string]>([
    ['a plain mention takes all', ['Warm the milk.'], '0'],
    ['half and never the rest', ['Warm half the milk.'], '50'],
    ['half and the rest', ['Warm half the milk.', 'Add the rest of the milk.'], '0'],
    ['a third, done twice more', ['Whisk a third of the milk into the eggs; do this twice more.'], '0'],
    ['a third, done once more', ['Whisk a third of the milk into the eggs and repeat once.'], '33'],
    ['a quarter in each of four', ['Pour a quarter of the milk into each of the four cups.'], '0'],
    ['half for each of four, which is of its own', ['Pour half the milk into each of the four cups.'], '0'],
    ['two halves', ['Warm half the milk.', 'Add half the milk.'], '0'],
    [
      'a reference between portions takes nothing',
      ['Warm half the milk.', 'Skim the milk.', 'Add the rest of the milk.'],
      '0',
    ],
    ['a portion after all is gone', ['Stir the milk into the eggs.', 'Add 10 ml of the milk.'], '0!'],
    ['a portion of what was only made ready', ['Warm the milk.', 'Add 30 ml of the milk.'], '90'],
    ['the rest of nothing', ['Stir the milk into the eggs.', 'Add the rest of the milk.'], '0!'],
    [
      'what something is covered with, where portions of it follow',
      ['Cover the eggs with milk and drain.', 'Warm half the milk.', 'Add the rest of the milk.'],
      '0',
    ],
    ['what something is covered with, where none do', ['Cover the eggs with milk.'], '0'],
    ['amounts that add up', ['Warm 200 ml of the milk.', 'Add 100 ml of the milk.'], '0'],
    ['amounts in another unit', ['Warm 20 cl of the milk.', 'Add 0.1 l of the milk.'], '0'],
    ['amounts by weight', ['Warm 155 g of the milk.', 'Add the rest of the milk.'], '0'],
    ['more than there is', ['Warm 400 ml of the milk.'], '0!'],
    ['a little, then plain', ['Brush with a little of the milk.', 'Warm the milk.'], '0'],
    ['a little alone', ['Brush with a little of the milk.'], '0?'],
    ['never', ['Beat the eggs.'], '100'],
  ])('%s', (_, steps, left) => {
    expect(leftAfter(...steps)).toBe(left);
  });
});
