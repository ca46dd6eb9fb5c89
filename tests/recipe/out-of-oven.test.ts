import { describe, expect, test } from 'vitest';
import { outOfOven } from '../../server/src/recipe/trials/out-of-oven.ts';
import { open } from '../support/harness.ts';

const usual = (text: string) => {
  const out = outOfOven(open(text).recipe);
  if (out === undefined) throw new Error('nothing is baked');
  const rounded = ({ low, high }: { low: number; high: number }) => [Math.round(low), Math.round(high)];
  return { of: rounded(out.ingredients), left: rounded(out.left) };
};
const [WHITES, LOAF] = [
  '  120 g     egg whites\n  240 g     caster sugar\n  do Whisk the whites with the sugar.\n',
  '  500 g     bread flour\n  350 g     water\n  10 g      fine salt\n  5 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n',
];

describe('what comes out of the oven', () => {
  test.each<[string, string, [number, number], [number, number]]>([
    ['bread', `recipe A as lean bread\n${LOAF}  do Bake at 230 C for 40 min.\n`, [865, 865], [666, 813]],
    [
      'a custard in a covered water bath keeps nearly all',
      'recipe A as baked custard\n  300 g     whole eggs\n  700 g     whole milk\n  do Beat the eggs into the milk.\n  do Cover with foil and bake in a water bath at 150 C for 40 min.\n',
      [1000, 1000],
      [870, 1000],
    ],
    [
      'a meringue dried for hours loses most of its water, and no more than it has',
      `recipe A as meringue\n${WHITES}  do Bake at 100 C for 2 h until dry.\n`,
      [360, 360],
      [255, 318],
    ],
    [
      'a meringue browned for minutes loses little',
      `recipe A as meringue\n${WHITES}  do Bake at 200 C for 8 min until brown.\n`,
      [360, 360],
      [255, 349],
    ],
    [
      'cookies can lose no more than the water in them',
      'recipe A as cookie\n  250 g     plain flour\n  250 g     sugar\n  do Rub the sugar into the flour.\n  do Bake at 180 C for 12 min until golden.\n',
      [500, 500],
      [470, 485],
    ],
    [
      'a joint loses water, and fat that runs out',
      'recipe A as roast\n  2 kg      beef sirloin\n  do Roast the sirloin at 180 C for 1 h, until the centre reads 63 C.\n',
      [2000, 2000],
      [1080, 1880],
    ],
    [
      'what is dusted on afterwards may be there or not',
      `recipe A as lean bread\n${LOAF}  100 g     icing sugar\n  do Bake at 230 C for 40 min.\n  do Dust with the icing sugar.\n`,
      [865, 965],
      [666, 913],
    ],
    [
      'dry pasta takes up water that is not listed',
      'recipe A\n  500 g     dried pasta\n  500 g     cheddar\n  do Boil the pasta for 8 min.\n  do Stir in the cheddar and bake at 200 C for 20 min until brown.\n',
      [1000, 1000],
      [767, 2180],
    ],
  ])('%s', (_, text, of, left) => {
    const out = usual(text);
    expect(out.of).toEqual(of);
    expect(out.left).toEqual(left);
  });

  test('a part goes into the oven with the part that takes it, and not with one that takes it once baked', () => {
    const cake = (topping: string) =>
      `recipe A\n\npart cream\n  200 g     butter\n  100 g     icing sugar\n  do Beat the butter with the sugar.\n\npart cake as pound cake\n  200 g     plain flour\n  200 g     sugar\n  200 g     butter\n  200 g     eggs\n  do Beat the butter with the sugar, then the eggs, and fold in the flour.\n${topping}`;
    const baking = '  do Bake at 170 C for 1 h until a skewer comes out clean.\n';
    expect(usual(cake(`${baking}  do Spread with the cream.\n`)).of).toEqual([800, 1100]);
    expect(usual(cake(`  do Spread with the cream.\n${baking}`)).of).toEqual([1100, 1100]);
  });

  test('a starter on the list of a dough counts once', () => {
    const bread =
      'recipe A\n\npart poolish\n  150 g     bread flour\n  150 g     water\n  do Mix the flour with the water.\n\npart dough as lean bread\n  400 g     bread flour\n  200 g     water\n  300 g     poolish\n  3 g       instant yeast\n  do Mix the poolish with the flour, the water and the yeast.\n  do Bake at 230 C for 40 min.\n';
    expect(usual(bread).of).toEqual([903, 903]);
  });

  test.each([
    ['nothing is baked', 'recipe A\n  200 g     butter\n  do Melt the butter.\n'],
    ['a weight is not known', `recipe A\n${LOAF}  2 handfuls wild things\n  do Bake at 230 C for 40 min.\n`],
    ['a part comes from another file', `recipe A\n  from    b.quern\n${LOAF}  do Bake at 230 C for 40 min.\n`],
  ])('nothing is said where %s', (_, text) => expect(outOfOven(open(text).recipe)).toBeUndefined());
});

describe('a trial that weighed it', () => {
  const found = (weighed: string, head = '  yield   2 loaves\n') =>
    open(
      `recipe A as lean bread\n${head}${LOAF}  do Bake at 230 C for 40 min until brown.\n\ntrial 2026-10-03\n  weighed ${weighed} out of the oven\n`,
    ).findings.open.flatMap((f) => (f.code === 'trial-disagrees' ? [f.said.message] : []));

  test.each(['740 g', '0.75 kg', '380 g', '650 g', '26 oz'])('%s is usual', (grams) =>
    expect(found(grams)).toEqual([]),
  );

  test.each([
    ['500 g', '166 g less. Was some left in the bowl, or was it baked dry?'],
    ['850 g', '37 g more. Was it weighed with its tin, or not baked through?'],
    ['900 g', '35 g more than went in. Weigh it without its tin'],
  ])('%s is not', (grams, why) => {
    expect(found(grams)).toEqual([
      expect.stringContaining(
        `Of 865 g of ingredients, 666 to 813 g usually comes out of the oven, and ${grams} was weighed`,
      ),
    ]);
    expect(found(grams)[0]).toContain(why);
  });
});
