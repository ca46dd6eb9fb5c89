/** What steps speak of twice and use once, each beside a twin that takes too much. Common practice, no source. */
import { describe, expect, test } from 'vitest';
import { onlyCheck, open } from '../support/harness.ts';

const overdrawn = (list: string, ...steps: readonly string[]): number =>
  open(`recipe R\n  ${list}\n${steps.map((step) => `  do ${step}\n`).join('')}`, onlyCheck('overdrawn-amount')).findings
    .open.length;

describe('is no second taking', () => {
  test.each<[string, string, string]>([
    [
      '250 ml olive oil',
      'Heat the oil and fry the potatoes in it. Drain, keeping the oil.',
      'Heat 2 tbsp of the oil and pour in the eggs.',
    ],
    ['200 g butter', 'Melt the butter.', 'Brush the tins with half the butter.'],
    ['200 g butter', 'Stir in two-thirds of the butter.', 'Rub the top with the rest of the butter.'],
    ['200 g butter', 'Melt three parts of the butter with the mace.', 'Clarify the remainder of the butter.'],
    ['100 ml ice water', 'Add 1.5 litres of water and boil.', 'Blend with the ice water.'],
  ])('%s: %s %s', (list, ...steps) => expect(overdrawn(list, ...steps)).toBe(0));
});

describe('is one', () => {
  test.each<[string, string, string]>([
    ['200 g butter', 'Rub the butter into the flour.', 'Brush the tins with half the butter.'],
    ['200 g cheddar', 'Stir in the cheddar.', 'Scatter over the rest of the cheddar.'],
    ['100 ml water', 'Mix the water into the flour.', 'Thin with 60 ml of the water.'],
  ])('%s: %s %s', (list, ...steps) => expect(overdrawn(list, ...steps)).toBe(1));
});
