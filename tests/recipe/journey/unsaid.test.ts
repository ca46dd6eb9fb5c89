/**
 * What the steps take without naming it, each beside a twin whose list has walnuts that no order takes. How cooks write is common
 * practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { onlyCheck, open } from '../../support/harness.ts';

const unused = (list: readonly string[], steps: readonly string[]): string[] => {
  const text = `recipe R\n${list.map((line) => `  ${line}\n`).join('')}${steps.map((step) => `  do ${step}\n`).join('')}`;
  const { findings } = open(text, onlyCheck('unused-ingredient'));
  return findings.open.map(({ at }) => text.split('\n')[at.line]?.slice(at.start, at.end) ?? '');
};

/** A list, how the steps speak of it, and the same orders by name. */
const CASES: readonly (readonly [list: readonly string[], unsaid: readonly string[], named: readonly string[]])[] = [
  [['200 g oats', '80 g butter'], ['Mix together.'], ['Mix the oats and the butter.']],
  [['20 g coriander seeds', '10 g cumin seeds'], ['Grind together.'], ['Grind the coriander and the cumin.']],
  [
    ['500 g bread flour', '300 g water', '10 g salt'],
    ['Knead and let rise 1 h.'],
    ['Knead the flour, water and salt.'],
  ],
  [
    ['150 g sugar', '150 g butter', '3 eggs'],
    ['Cream, then beat in the eggs.'],
    ['Cream the sugar and butter, then beat in the eggs.'],
  ],
  [
    ['1 kg cabbage', '20 g salt'],
    ['Shred finely and pack into a jar.'],
    ['Shred the cabbage, salt it and pack into a jar.'],
  ],
  [['4 chicken breasts', '10 g salt'], ['Season and roast at 200 C.'], ['Rub the chicken breasts with the salt.']],
  [['1 goose', '10 g salt'], ['Rub with the salt and roast at 200 C.'], ['Rub the goose with the salt.']],
  [
    ['800 g minced beef', '1 tsp salt'],
    ['Shape six patties, season and grill.'],
    ['Shape the minced beef, season and grill.'],
  ],
  [['1 kg venison, cubed', '20 ml oil'], ['Brown the cubes in the oil.'], ['Brown the venison in the oil.']],
  [
    ['1 kg courgettes, cut in spears', '500 ml vinegar'],
    ['Pack the spears in jars and pour over the vinegar.'],
    ['Pack the courgettes in jars and pour over the vinegar.'],
  ],
  [['4 heads garlic, peeled', '300 ml oil'], ['Cook the cloves in the oil.'], ['Cook the garlic in the oil.']],
  [
    ['500 g stewing beef', '1 onion', '1 tsp cumin'],
    ['Brown the beef, add the rest and simmer 2 h.'],
    ['Brown the beef, add the onion and cumin and simmer 2 h.'],
  ],
  [
    ['300 g flour', '10 g baking powder', '2 eggs'],
    ['Sift the dry ingredients and beat in the eggs.'],
    ['Sift the flour and baking powder and beat in the eggs.'],
  ],
  [
    ['500 g lamb mince', '1 onion', '2 tsp cumin'],
    ['Knead the mince with all the flavourings.'],
    ['Knead the mince with the onion and cumin.'],
  ],
  [
    ['1 kg pork belly', '20 g salt', '10 g sugar'],
    ['Brine for 4 h, rinse and roast at 150 C.'],
    ['Lay the pork in the salt and sugar.'],
  ],
  [
    ['4 chicken thighs', '1 lime', '20 ml oil'],
    ['Marinate the thighs overnight and grill.'],
    ['Turn the thighs in the lime and oil and grill.'],
  ],
  [
    ['1 kg chicken carcasses', '2 l water', '1 onion'],
    ['Cover, bring up, skim and simmer 5 h.'],
    ['Simmer the carcasses and onion in the water for 5 h.'],
  ],
  [['300 g rice', '400 ml water'], ['Cook the rice.'], ['Cook the rice in the water.']],
  [
    ['1 puff pastry sheet', '1 egg'],
    ['Roll the pastry, glaze and bake at 200 C.'],
    ['Roll the pastry, brush with the egg and bake at 200 C.'],
  ],
  [['200 g plain flour', '100 g butter'], ['Rub in the butter.'], ['Rub the butter into the flour.']],
  [['300 ml cream', '30 ml rum'], ['Whip the cream and stir in the liquor.'], ['Whip the cream and stir in the rum.']],
];

describe('what is said without a name is used', () => {
  test.each(CASES)('%j: %j', (list, unsaid) => expect(unused(list, unsaid)).toEqual([]));
});

describe('what no order takes is left over, where the others are named', () => {
  test.each(CASES)('%j, with walnuts: not %j', (list, _, named) =>
    expect(unused([...list, '80 g walnuts'], named)).toEqual(['walnuts']),
  );
});

describe('water of several lines', () => {
  test.each([
    [['10 g gelatine', '100 ml cold water', '400 g sugar', '120 ml water'], 1],
    [['10 g gelatine', '400 g sugar', '120 ml water'], 0],
  ])('%#', (list, found) => {
    const steps = ['Boil the sugar and the 120 ml water to 116 C.', 'Pour over the gelatine and whisk for 10 min.'];
    expect(unused(list, steps)).toHaveLength(found);
  });
  test('what is boiled has its water', () => {
    expect(unused(['500 g pasta', '4 l water'], ['Boil the pasta for 10 min.'])).toEqual([]);
  });
});

describe('a list that is told off one by one', () => {
  const BISCUITS = ['200 g plain flour', '120 g butter', '80 g caster sugar', '1 egg', '1/2 tsp ground cinnamon'];
  const MIXED = 'Beat the butter, sugar and egg, add the flour and bring it all together.';
  test('has nothing more in `all`, `the rest`, or in what is scattered with something else', () => {
    expect(unused(BISCUITS, [MIXED, 'Return it all to the bowl and roll out.'])).toEqual(['ground cinnamon']);
    expect(unused(BISCUITS, [MIXED, 'Bake half at 180 C for 12 min, then bake the rest.'])).toEqual([
      'ground cinnamon',
    ]);
    expect(unused([...BISCUITS, '20 g parsley'], [MIXED, 'Scatter with the parsley.'])).toEqual(['ground cinnamon']);
  });
  test('is left as it is where an order takes what is not named', () => {
    expect(unused(BISCUITS, ['Beat the butter, sugar, egg and flour.', 'Add all the rest.'])).toEqual([]);
    expect(unused(BISCUITS, ['Beat the butter, sugar and egg.', 'Fold in the dry ingredients.'])).toEqual([]);
    expect(unused(BISCUITS, [MIXED, 'Dust the biscuits.'])).toEqual([]);
  });
  const withMethod = (sugar: readonly string[], ...steps: readonly string[]): string[] =>
    unused(
      [
        'part dough',
        '300 g plain flour',
        '150 g butter',
        '60 ml milk',
        '1 egg',
        ...sugar,
        'part filling',
        '400 g apples',
        '50 g caster sugar',
        'part method',
      ],
      steps,
    );
  test('is so though its part is named', () => {
    const fill = 'Toss the apples with the sugar and fill the dough with them.';
    expect(withMethod([], 'Rub the butter into the flour and stir in the milk.', fill)).toEqual(['egg']);
    expect(withMethod([], 'Rub the butter into the flour and stir in the milk and egg.', fill)).toEqual([]);
  });
  test('has a food of two lists as often as it is said', () => {
    const dough = 'Rub the butter into the flour and stir in the milk and egg.';
    const fill = 'Toss the apples with the sugar and wrap them in.';
    const sugar = ['90 g caster sugar'];
    expect(withMethod(sugar, dough, fill)).toEqual(['caster sugar']);
    expect(withMethod(sugar, 'Melt the sugar.', dough, fill)).toEqual([]);
    expect(withMethod(sugar, dough.replace('egg', 'egg and sugar'), fill)).toEqual([]);
  });
});
