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
    ['300 ml olive oil', 'Cook the potatoes in the oil. Drain, saving the oil.', 'Fry the eggs in 2 tbsp of the oil.'],
    [
      '300 g mushrooms',
      'Soak the mushrooms. Chop them and reserve the mushrooms.',
      'Scatter over 100 g of the mushrooms.',
    ],
    [
      '3 onions',
      'Blend one of the onions. Slice the remaining onions and fry two thirds of the sliced onions.',
      'Lay the rest of the onions on top.',
    ],
    [
      '400 g cheddar',
      'Stir in a quarter of the cheddar. Grate the rest of the cheddar.',
      'Layer with half of the grated cheddar and scatter over the remaining cheddar.',
    ],
    ['100 ml ice water', 'Add 1.5 litres of water and boil.', 'Blend with the ice water.'],
  ])('%s: %s %s', (list, ...steps) => expect(overdrawn(list, ...steps)).toBe(0));
});

describe('is one', () => {
  test.each<[string, string, string]>([
    ['200 g butter', 'Rub the butter into the flour.', 'Brush the tins with half the butter.'],
    ['3 onions', 'Slice one of the onions.', 'Fry the remaining onions, then lay the rest of the onions on top.'],
    ['400 g cheddar', 'Grate the rest of the cheddar and stir it in.', 'Scatter over half of the cheddar.'],
    ['300 g mushrooms', 'Reserve half the mushrooms. Fry the mushrooms.', 'Scatter over 200 g of the mushrooms.'],
    ['200 g cheddar', 'Stir in the cheddar.', 'Scatter over the rest of the cheddar.'],
    ['100 ml water', 'Mix the water into the flour.', 'Thin with 60 ml of the water.'],
  ])('%s: %s %s', (list, ...steps) => expect(overdrawn(list, ...steps)).toBe(1));
});
