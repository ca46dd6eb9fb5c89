import { describe, expect, test } from 'vitest';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import { readTarget } from '../../server/src/edits/scale-target.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { open } from '../support/harness.ts';

const CAKE = `recipe Cake as creamed cake
  yield   12 squares
  pan     square 20 x 5 cm
  200 g     plain flour
  200 g     caster sugar
  200 g     butter
  4         eggs
  do Beat everything together and bake at 180 C for 35 min until a skewer comes out clean.
`;

function scaled(text: string, words: string) {
  const { document, recipe } = open(text);
  const target = readTarget(words);
  if (target === undefined) throw new Error(`not read: ${words}`);
  const result = scaleRecipe(document, recipe, target);
  if (!result.ok) throw new Error(result.why);
  const { scaling } = result;
  return { text: printDocument(applyEdits(document, scaling.edits)), by: scaling.by, said: scaling.said.join('\n') };
}

describe('another pan with whole eggs', () => {
  test('takes the nearest size at which they are whole, and says how full the pan is', () => {
    // 23² is 1.3225 times 20²: 5.29 eggs, so 5.
    const { text, by, said } = scaled(CAKE, 'to square 23 x 5 cm with whole eggs');
    expect(by).toBe(1.25);
    expect(text).toContain('  5         eggs\n');
    expect(text).toContain('250 g     plain flour');
    expect(text).toContain('pan     square 23 x 5 cm');
    expect(said).toMatch(
      /For whole eggs 5 in the place of 5\.29: 0\.95 times what was asked for, so the pan is filled 0\.95 times as high\./,
    );
  });

  test('of what lines the pan no egg counts, and it goes by the pan', () => {
    const tart = `recipe Tart
  yield   8 slices
  pan     round 20 x 3 cm

part case as shortcrust
  200 g     plain flour
  100 g     butter
  1         egg yolk
  do Rub the butter into the flour, bind with the yolk, roll out and line the pan.

part custard as baked custard
  4         eggs
  500 g     whole milk
  80 g      sugar
  do Beat the eggs with the milk and the sugar, pour into the case and bake at 160 C for 40 min until set.
`;
    const { text, by } = scaled(tart, 'to round 23 x 3 cm and whole eggs');
    expect(by).toBe(1.25);
    expect(text).toContain('  5         eggs\n');
  });

  test.each([
    [
      'no size near has whole eggs',
      CAKE.replace('4         eggs', '1         egg'),
      /No size near that has whole eggs: it wants 1\.32, and the nearest is 1 times/,
    ],
    ['no egg is counted', CAKE.replace('4         eggs', '200 g     eggs'), /No eggs are counted/],
  ])('the pan decides where %s', (_, text, words) => {
    const { by, said } = scaled(text, 'to square 23 x 5 cm with whole eggs');
    expect(by).toBeCloseTo(1.3225, 3);
    expect(said).toMatch(words);
  });
});

describe('advice on seasoning', () => {
  const TASTE = /Taste for spice and salt/;
  const dish = (list: string, steps: string, kind = '') => `recipe Dish${kind}\n${list}  do ${steps}\n`;

  test.each([
    [
      'a stew',
      dish(
        '  1 kg      beef chuck, diced\n  20 g      plain flour\n  2 tsp     paprika\n  10 g      salt\n  1 l       water\n',
        'Simmer everything for 2 h until tender.',
      ),
    ],
    [
      'a soup',
      dish(
        '  1 kg      carrot\n  1 tsp     cumin\n  1 l       water\n',
        'Boil the carrot with the cumin in the water for 30 min.',
      ),
    ],
  ])('is given of %s', (_, text) => {
    expect(scaled(text, 'by 4').said).toMatch(TASTE);
  });

  test.each([
    [
      'a dough',
      dish(
        '  500 g     bread flour\n  340 g     water\n  10 g      salt\n  5 g       instant yeast\n',
        'Mix, knead, prove and bake at 230 C for 35 min.',
        ' as lean bread',
      ),
    ],
    ['a spiced cake', CAKE.replace('  4         eggs\n', '  4         eggs\n  2 tsp     cinnamon\n')],
    [
      'a pickle by its salt',
      dish(
        '  1 kg      cabbage\n  20 g      salt\n',
        'Rub the salt into the cabbage and ferment for 14 days.',
        ' as lacto-ferment',
      ),
    ],
    [
      'flatbreads in a pan',
      dish(
        '  500 g     plain flour\n  300 g     water\n  10 g      salt\n',
        'Mix to a dough and fry in a dry pan for 2 min.',
      ),
    ],
  ])('is none of %s', (_, text) => {
    expect(scaled(text, 'by 4').said).not.toMatch(TASTE);
  });
});
