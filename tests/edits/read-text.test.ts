import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readIngredient } from '../../server/src/edits/read-text/printed-ingredient.ts';
import { readSteps } from '../../server/src/edits/read-text/printed-step.ts';
import { readText } from '../../server/src/edits/read-text/read-text.ts';
import { quern } from '../support/fake-io.ts';
import { open } from '../support/harness.ts';

const WORLD = open('').recipe.world;

describe('a printed ingredient', () => {
  test.each([
    '1 1/2 cups flour',
    '1-1/2 cups flour',
    '1 and 1/2 cups flour',
    '1½ cups flour',
    'One and a half cups of flour',
    'two-thirds of a cup of milk',
    'a quarter cup sugar',
    'half a pound of butter',
    'a dozen eggs',
    '2 dozen eggs',
    '2 to 3 tablespoons milk',
    '2–3 tbsp. milk',
    'two or three onions',
    'about 2 cups stock',
    'approx. 200g flour',
    '1 c. sugar',
    '2 T. butter',
    '2 t. salt',
    '1 lb. 4 oz. flour',
    '1 cup plus 2 tablespoons flour',
    '1 cup plus 1 tablespoon flour',
    '1 gill cream',
    '1 saltspoonful salt',
    '2 heaping teaspoons baking powder',
    '500ml milk',
    '1.5kg potatoes',
    'a pinch of salt',
    '2 sticks butter',
    '3 cloves garlic, minced',
    '1 medium-sized onion, chopped',
    '1 extra-large egg',
    '1 cup (120 g) flour',
    '1 cup flour (120 g)',
    '1 can (14.5 oz) tomatoes, drained',
    '2 (14-ounce) cans tomatoes',
    '1 8-oz. package cream cheese',
    '8 oz (about 2 cups) cheese, grated',
    '250 g / 9 oz flour',
    '2 cans chickpeas (14 oz each), drained',
    '400g tin chopped tomatoes',
    '142ml pot double cream',
    '1kg pot roast',
    'small bunch chives, snipped',
    '2 squares unsweetened chocolate',
    '1 square dark chocolate',
    '1 x 400g/14oz tin chickpeas, drained',
    '2cm piece of ginger, peeled',
    '5cm/2in piece cinnamon stick',
    '½ an onion, chopped',
    '2 x 5ml spoons salt',
    '1 1/2c flour',
    '1/2 c milk',
    '3 t baking powder',
    '250 gr flour',
    'a glug of olive oil',
    'a good splash of white wine',
    '2 cups flour + more for dusting',
    '1 tbsp oil, plus extra for the tin',
    '50g raisins – optional',
    'Icing sugar to dust',
    'half a pound of suet finely chopped',
    '2 cups flour, sifted, plus more',
    '1 onion (about 150 g), diced',
    '1 cup butter or margarine',
    '1 tsp vanilla or 1/2 tsp almond extract',
    'oil for frying',
    'Salt',
    'Salt and freshly ground black pepper, to taste',
    'butter, as needed',
    'a little milk',
    '1 tbsp capers (optional)',
    'Juice of 1 lemon',
    'Grated zest of ½ orange',
    'whites of 3 eggs',
    'Yolk of 1 egg, beaten',
    '2 eggs plus 1 egg yolk',
    '1 tsp each cinnamon and nutmeg',
    '1 1/2 pounds boneless chicken thighs, trimmed',
    'a knob of butter',
    'Pinch of salt',
    '2 x 400g tins chickpeas, rinsed',
    'zest and juice of 2 limes',
    'Flour, all-purpose ...... 2 lb',
    'Sugar: 1 cup',
    'Butter – 100 g',
    'Flour - 250g',
    '2 cups Dijon mustard',
    'S&P',
    'a three-pound chicken',
    'no more than 1 cup water',
  ])('%s stands as it is', (printed) => {
    expect(readIngredient(printed, WORLD)).toBe(printed);
  });

  test.each([
    ['up to 100ml milk', 'up to 100ml milk'],
    ['at least 2 tbsp oil', 'at least 2 tbsp oil'],
    ['Optional: 1 tbsp capers', 'optional 1 tbsp capers'],
    ['• 2 eggs', '2 eggs'],
    ['- 2 eggs*', '2 eggs'],
    ['2 cups Flour #1 [fine]', '2 cups Flour (no. 1) (fine)'],
    ['1 #10 can tomatoes, [crushed]', '1 #10 can tomatoes, (crushed)'],
    ['[ ] 2 eggs', '2 eggs'],
    ['☐ 2 eggs†', '2 eggs'],
    ['3) 2 eggs;', '2 eggs'],
    ['1 cup “strong”\u00a0flour', '1 cup "strong" flour'],
    ['cocoa', 'as needed cocoa'],
  ])('%s is cleaned', (printed, want) => {
    expect(readIngredient(printed, WORLD)).toBe(want);
  });

  test.each(['Mix everything until smooth.', 'see page 12', 'for the filling', '1', 'cups', ''])(
    '%j is none',
    (printed) => {
      expect(readIngredient(printed, WORLD)).toBeUndefined();
    },
  );
});

test.each([
  ['1 Mix all.', '  do Mix all.'],
  ['1 Salt codfish.', '  1         Salt codfish'],
])('the one counted line under a list: %s', (last, written) => {
  expect(readText(`Bars\n\n200 g oats\n100 g butter\n${last}\n`, WORLD).text).toContain(written);
});

describe('printed prose', () => {
  test.each<[string, readonly string[]]>([
    ['1. Heat oven to 350°F. Mix.', ['Heat oven to 350 F.', 'Mix.']],
    ['Bake at 180°C/350°F/gas 4 for 20 mins', ['Bake at 180 C for 20 mins.']],
    ['Bake at 350 degrees F. for 1 hour.', ['Bake at 350 F for 1 hour.']],
    ['Bake at 350°F (175°C) for an hour and a half.', ['Bake at 350 F for 1 h 30 min.']],
    ['Let rise for half an hour, then bake three-quarters of an hour.', ['Let rise for 30 min, then bake 45 min.']],
    ['Boil ten minutes. Let stand two hours.', ['Boil 10 minutes.', 'Let stand 2 hours.']],
    ['Bake from thirty to forty minutes.', ['Bake from 30 to 40 minutes.']],
    ['Add 2 tbsp. of oil and 1 lb. Carrots.', ['Add 2 tbsp. of oil and 1 lb. Carrots.']],
    ['Simmer 15 mins. Stir in the cream.', ['Simmer 15 mins.', 'Stir in the cream.']],
    ['Bake 1 hr. 30 min. in all.', ['Bake 1 hr. 30 min. in all.']],
    ['Bake at 96°C. Cool at gas 4. Butter a tin.', ['Bake at 96 C.', 'Cool at gas 4.', 'Butter a tin.']],
    ['Use [good] butter & no. #4.', ['Use good butter & no. \\#4.']],
  ])('%s', (printed, want) => {
    expect(readSteps(printed).map((s) => s.line)).toEqual(want.map((w) => `do ${w}`));
  });
});

const CARD = `Gran's Shortbread (the good one)
By Ruth
Serves 8

Ingredients:
100 g butter
50 g caster sugar
150 g plain flour
two handsful of whatever you like best in the world

Method:
Rub all together, press into a tin.
Bake at 160°C for 40 minutes.

Notes
Keeps a week.
Source: a card in the drawer
`;

describe('a whole card', () => {
  const read = readText(CARD, WORLD);

  test('head, list and steps stand where they belong', () => {
    expect(read.text).toMatch(/^recipe Gran's Shortbread \(the good one\)\n {2}by {6}Ruth\n {2}Serves 8\n/);
    expect(read.text).toContain('  100 g     butter\n  50 g      caster sugar\n  150 g     plain flour\n');
    expect(read.text).toContain('  do Bake at 160 C for 40 minutes.\n');
    expect(read.text).toContain('  note    Keeps a week.\n  source  a card in the drawer\n');
  });

  test('what is not understood stays in its place, and is listed with its line', () => {
    const odd = readText(
      CARD.replace(
        'two handsful of whatever you like best in the world',
        'the seeds: see our page of seeds, which has them all',
      ),
      WORLD,
    );
    expect(odd.text).toMatch(/plain flour\n {2}# not understood: the seeds: see our page/);
    expect(odd.missed).toEqual([
      { line: 9, what: 'ingredient', printed: 'the seeds: see our page of seeds, which has them all' },
    ]);
  });

  test('without headings, the shape tells', () => {
    const bare = readText(
      'Pancakes\n\n2 eggs\n300 ml milk\n100 g plain flour\n\nBeat the eggs and milk into the flour. Fry in a little butter.\n',
      WORLD,
    );
    expect(bare.text).toBe(
      'recipe Pancakes\n\n  2         eggs\n  300 ml    milk\n  100 g     plain flour\n\n  do Beat the eggs and milk into the flour.\n  do Fry in a little butter.\n',
    );
  });

  test('a list run on in one line is a line each, and a yield in the title is one', () => {
    const { text, missed } = readText(
      'PANCAKES (makes about 12)\n\n2 eggs, 300ml milk, 150g plain flour, pinch salt, butter for frying\n\nWhisk all but the butter. Fry for 1 min.\n',
      WORLD,
    );
    expect(text).toBe(
      'recipe Pancakes\n  makes about 12\n\n  2         eggs\n  300 ml    milk\n  150 g     plain flour\n  pinch     salt\n  butter for frying\n\n  do Whisk all but the butter.\n  do Fry for 1 min.\n',
    );
    expect(missed).toEqual([]);
    const apart = readText('Eggs\n\n4 eggs, 2 beaten, 2 separated\n200 g flour\n\nMix.\n', WORLD).text;
    expect(apart).toContain('  4         eggs, 2 beaten, 2 separated\n');
  });

  test('parts under headings of their own', () => {
    const parts = readText(
      'Pie\n\nIngredients\n\nFor the crust:\n200 g flour\n\nFor the filling:\n3 apples\n\nMethod\nMake the crust. Fill it with the filling.\n',
      WORLD,
    ).text;
    expect(parts).toMatch(
      /part crust\n {2}200 g {5}flour\n\npart filling\n {2}3 {9}apples\n\npart method\n {2}do Make the crust\./,
    );
  });
});

describe('a recipe from a page', () => {
  const read = (text: string) => readText(text, WORLD);

  test('steps that are counted without a point', () => {
    const { text, missed } = read(
      'Traybake\n\nCuts into 16 squares\n\n225g/8oz plain flour\n1 egg, beaten\n2 Bramley apples\n\n1 Heat oven to 180C/gas 4. Butter a tin.\n2 Mix the flour and egg.\n3 Bake for 40 mins.\n',
    );
    expect(text).toBe(
      'recipe Traybake\n  yield   16 squares\n\n  225 g/8 oz  plain flour\n  1         egg, beaten\n  2         Bramley apples\n\n  do Heat oven to 180C.\n  do Butter a tin.\n  do Mix the flour and egg.\n  do Bake for 40 mins.\n',
    );
    expect(missed).toEqual([]);
  });

  test('several facts of its head on one line', () => {
    const { text, missed } = read('Cake\nSERVES 10 • PREP 20 MINS • COOK 50 MINS\n\n200 g flour\n\nMix.\n');
    expect(text).toMatch(/^recipe Cake\n {2}SERVES 10\n {2}time {4}prep 20 mins, cook 50 mins\n\n/);
    expect(missed).toEqual([]);
  });

  test.each([
    ['Prep: 20 min', 'time    prep 20 min'],
    ['Prep time: 20 min\nTotal time: 1 hr 10 min', 'time    prep time 20 min, total time 1 hr 10 min'],
    ['Cook - 35–40 minutes', 'time    cook 35–40 minutes'],
    ['Time.—1 hour', 'time    1 hour'],
    ['Hands-on: 15 min', 'time    hands on 15 min'],
    ['Ready in: 1½ hours', 'time    ready in 1½ hours'],
    ['Total: 1.5 hours', 'time    total 1.5 hours'],
    ['Prep: in the cool of the evening', 'note    Prep: in the cool of the evening'],
    ['Seasonable at any time', 'note    Seasonable at any time'],
  ])('what %j says of time', (printed, line) => {
    const { text, missed } = read(`Cake\n${printed}\n\n200 g flour\n100 g butter\n\nMix.\n`);
    expect(text.split('\n')).toContain(`  ${line}`);
    expect(open(text).document.lines.flatMap((l) => l.faults)).toEqual([]);
    expect(missed).toEqual([]);
  });

  // schema.org/Recipe, prepTime, cookTime and totalTime: durations of ISO 8601.
  test.each([
    [
      { prepTime: 'PT20M', cookTime: 'PT1H5M', totalTime: 'P1DT1H25M' },
      'prep 20 min, cook 1 h 5 min, total 1 d 1 h 25 min',
    ],
    [{ prepTime: 'PT0M', totalTime: 'PT90M' }, 'total 90 min'],
    [{ prepTime: 'P', cookTime: '', totalTime: 'soon' }, undefined],
  ])('the times of JSON-LD: %j', (times, line) => {
    const json = { '@type': 'Recipe', name: 'Cake', recipeIngredient: ['200 g flour'], ...times };
    const stated = /^ {2}time {4}(.*)$/m.exec(read(JSON.stringify(json)).text)?.[1];
    expect(stated).toBe(line);
  });

  test.each([
    "Ingredient   Weight   Baker's %\nBread flour   500 g   100%\nWater (35°C)   325 g   65%\nSalt   10 g   2 %",
    'Bread flour | 100 % | 500 g\nWater (35°C) | 65 % | 325 g\nSalt | 2 % | 10 g',
    'Bread flour 100% 500 g\nWater (35°C) 65% 325 g\nSalt 2% 10 g',
  ])('a table with the percentages of a baker: %j', (table) => {
    const { text, missed } = read(`Loaf\n\n${table}\n\nMix all.\n`);
    expect(missed).toEqual([]);
    const { ingredients } = open(text).recipe.parts[0]?.head ?? { ingredients: [] };
    expect(ingredients.map((i) => [i.food?.id, i.weighed.known && i.weighed.grams.low])).toEqual([
      ['bread-flour', 500],
      ['water', 325],
      ['table-salt', 10],
    ]);
  });

  test('a line that ends in `or` is read with the next', () => {
    const { text, missed } = read('Cake\n\n200 g flour\n100 g butter or\n100 g margarine\n\nMix.\n');
    expect(text).toContain('  100 g     butter or 100 g margarine\n');
    expect(missed).toEqual([]);
  });
});

describe('a recipe pasted from a letter', () => {
  const read = (text: string) => readText(text, WORLD);

  test('its subject, its yield and its times are not the recipe', () => {
    const { text, missed } = read(
      "Fwd: Nan's shortbread\n\nMakes approx 20 fingers\nPrep 15 mins, cook 40 mins\n\n250g plain flour\n125g butter\n\nRub the butter into the flour.\n",
    );
    expect(text).toMatch(
      /^recipe Nan's shortbread\n {2}Makes approx 20 fingers\n {2}time {4}prep 15 mins, cook 40 mins\n/,
    );
    expect(missed).toEqual([]);
  });

  test('emphasis is not the title, and squares of a yield are no ounces of chocolate', () => {
    const { text } = read(
      '**Brownies**\n\nYield: 16 squares\n\n100g sugar\n100g flour\n\n1. Mix the sugar and the flour.\n',
    );
    expect(text).toMatch(/^recipe Brownies\n {2}Yield: 16 squares\n/);
  });

  test('a yield and a tip below the method stand at the head', () => {
    const { text } = read(
      'Loaf\n\nYou will need\n- 500g flour\n- 300g water\n\nMethod\n1. Mix the flour and the water.\nTip: wet your hands.\n2. Bake 20 to 25 minutes.\nServes 8\n',
    );
    expect(text).toBe(
      'recipe Loaf\n  Serves 8\n  note    wet your hands.\n\n  500 g     flour\n  300 g     water\n\n  do Mix the flour and the water.\n  do Bake 20 to 25 minutes.\n',
    );
  });

  test('a short sentence after a blank line begins the method', () => {
    const { text, missed } = read(
      'Puddings (feeds four)\n\n140g plain flour\n4 eggs\n\nHeat oven to 230C/gas 8.\nBeat the eggs into the flour.\n',
    );
    expect(text).toMatch(/^recipe Puddings\n {2}feeds four\n/);
    expect(text).toContain('  do Heat oven to 230C.\n  do Beat the eggs into the flour.\n');
    expect(missed).toEqual([]);
  });
});

const JSON_LD = {
  '@context': 'https://schema.org',
  '@graph': [
    { '@type': 'WebSite', name: 'A page' },
    {
      '@type': ['Recipe', 'NewsArticle'],
      name: 'Plum &amp; almond tart',
      author: [{ '@type': 'Person', name: 'Ruth' }],
      recipeYield: ['8', '8 slices'],
      keywords: 'autumn, tart',
      recipeIngredient: [
        '200 g plain flour',
        '1 cup (236 ml) milk',
        '<b>3</b> eggs',
        'see the notes on the other page: all of it counts',
      ],
      recipeInstructions: [
        {
          '@type': 'HowToSection',
          name: 'Base',
          itemListElement: [{ '@type': 'HowToStep', text: 'Mix the flour with the milk.' }],
        },
        {
          '@type': 'HowToSection',
          name: 'Bake',
          itemListElement: [{ '@type': 'HowToStep', text: 'Bake at 180 °C for 25 minutes.' }, 'Cool.'],
        },
      ],
    },
  ],
};

describe('schema.org JSON-LD', () => {
  const want =
    'recipe Plum & almond tart\n  by      Ruth\n  yield   8 slices\n  tags    autumn, tart\n\npart main\n  200 g     plain flour\n  1 cup (236 ml)  milk\n  3         eggs\n  # not understood: see the notes on the other page: all of it counts\n\npart base\n  do Mix the flour with the milk.\n\npart bake\n  do Bake at 180 C for 25 minutes.\n  do Cool.\n';

  test('alone', () => expect(readText(JSON.stringify(JSON_LD), WORLD).text).toBe(want));

  test('in a page', () => {
    const page = `<html><script type="application/ld+json">{"@type":"Organization"}</script><script type='application/ld+json'>${JSON.stringify(JSON_LD)}</script></html>`;
    expect(readText(page, WORLD).text).toBe(want);
  });

  test.each([
    '{}',
    '[]',
    '{"@type":"Recipe"}',
    '{"@type":"Recipe","recipeIngredient":7,"recipeInstructions":{"a":[null]}}',
    '{"@type":"Recipe"',
    '[[[[[[[[[[[[{"@type":"Recipe"}]]]]]]]]]]]]',
  ])('%s throws nothing', (text) => {
    expect(readText(text, WORLD).text).toMatch(/^recipe /);
  });

  test('with steps between and after its sections, in their order', () => {
    const section = { '@type': 'HowToSection', name: 'Stew', itemListElement: ['Fry the onion.', { text: 'Simmer.' }] };
    const recipeInstructions = ['Soak the beans.', section, { '@type': 'HowToStep', text: 'Serve.' }];
    const { text } = readText(
      JSON.stringify({ '@type': 'Recipe', name: 'Stew', recipeIngredient: ['1 onion'], recipeInstructions }),
      WORLD,
    );
    expect(text.slice(text.indexOf('part method'))).toBe(
      'part method\n  do Soak the beans.\n\npart stew\n  do Fry the onion.\n  do Simmer.\n\npart method 2\n  do Serve.\n',
    );
  });

  test('what was published is read back as it was', async () => {
    const rolls =
      'recipe Rolls\n  yield   8 rolls\n\n  500 g     bread flour\n  320 g     water\n  10 g      fine salt\n\n  do Mix the flour, water and salt.\n  do Bake at 220 C for 20 min.\n';
    const { out } = await quern(['publish', '--stdin', '--format', 'json-ld'], {}, rolls);
    const { text } = readText(out, WORLD);
    expect(text).toMatch(/500 g .*bread flour/);
    expect(text).toContain('do Bake at 220 C for 20 min.');
  });
});

describe('any text', () => {
  test('gives a text that the notation reads, and loses no ingredient line', () => {
    const lines = fc.array(
      fc.oneof(
        fc.string({ maxLength: 40, unit: 'binary' }),
        fc.constantFrom(
          'Ingredients',
          'Method:',
          '2 cups flour',
          '1. Bake at 350°F.',
          '# a',
          '[b',
          '\\',
          'For the glaze:',
          'Serves 4',
          '1/0 cup x',
          '9999999999999999999 g y',
          '½½ z',
          '{"@type":"Recipe"',
          '\u0000\u2028',
        ),
      ),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(lines, (all) => {
        const { text } = readText(all.join('\n'), WORLD);
        const { findings, document } = open(text);
        expect(document.lines[0]?.statement.kind).toBe('recipe');
        expect(findings.open.filter((f) => f.code === 'syntax')).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  test('a huge one ends', () => {
    expect(readText(`Cake\n${'1 cup a, b; c (d) or 2 e plus 3 f\n'.repeat(5000)}`, WORLD).text.length).toBeGreaterThan(
      1000,
    );
    expect(readText(`Cake\n\n${'a '.repeat(100_000)}`, WORLD).text).toMatch(/^recipe Cake/);
  });
});

describe('the command', () => {
  test('prints the recipe, and what it missed on standard error', async () => {
    const ran = await quern(['read', 'card.txt'], {
      'card.txt': CARD.replace('50 g caster sugar', 'the seeds: see our page of seeds, which has them all'),
    });
    expect(ran.exit).toBe(0);
    expect(ran.out).toMatch(/^recipe Gran's Shortbread \(the good one\)\n/);
    expect(ran.err).toBe(
      'card.txt:7: not understood as an ingredient: the seeds: see our page of seeds, which has them all\n',
    );
  });

  test('standard input', async () => {
    expect((await quern(['read', '--stdin'], {}, CARD)).out).toContain('100 g     butter');
  });

  test('a text without a list is bad usage', async () => {
    const ran = await quern(['read', '--stdin'], {}, 'Dear Ruth,\n\nthe weather has been lovely.\n');
    expect([ran.exit, ran.err]).toEqual([2, expect.stringContaining('no list of ingredients')]);
  });
});
