import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readIngredient } from '../../server/src/edits/read-text/printed-ingredient.ts';
import { readSteps } from '../../server/src/edits/read-text/printed-step.ts';
import { readText } from '../../server/src/edits/read-text/read-text.ts';
import { quern } from '../support/fake-io.ts';
import { open } from '../support/harness.ts';

const WORLD = open('').recipe.world;

describe('a printed ingredient', () => {
  test.each<[string, string | readonly string[]]>([
    // Numbers.
    ['1 1/2 cups flour', '1 1/2 cup flour'],
    ['1-1/2 cups flour', '1 1/2 cup flour'],
    ['1 and 1/2 cups flour', '1 1/2 cup flour'],
    ['1½ cups flour', '1½ cup flour'],
    ['One and a half cups of flour', '1 1/2 cup flour'],
    ['two-thirds of a cup of milk', '2/3 cup milk'],
    ['a quarter cup sugar', '1/4 cup sugar'],
    ['half a pound of butter', '1/2 lb butter'],
    ['a dozen eggs', '12 eggs'],
    ['2 dozen eggs', '24 eggs'],
    ['2 to 3 tablespoons milk', '2 to 3 tbsp milk'],
    ['2–3 tbsp. milk', '2-3 tbsp milk'],
    ['two or three onions', '2-3 onions'],
    ['about 2 cups stock', 'about 2 cup stock'],
    ['approx. 200g flour', 'about 200 g flour'],
    // Units.
    ['1 c. sugar', '1 cup sugar'],
    ['2 T. butter', '2 tbsp butter'],
    ['2 t. salt', '2 tsp salt'],
    ['1 lb. 4 oz. flour', '1 1/4 lb flour (1 lb plus 4 oz)'],
    ['1 cup plus 2 tablespoons flour', '1 1/8 cup flour (1 cup plus 2 tbsp)'],
    ['1 cup plus 1 tablespoon flour', '17 tbsp flour (1 cup plus 1 tbsp)'],
    ['1 gill cream', '4 fl oz cream'],
    ['1 saltspoonful salt', '1/4 tsp salt'],
    ['2 heaping teaspoons baking powder', '2 tsp baking powder (heaping)'],
    ['500ml milk', '500 ml milk'],
    ['1.5kg potatoes', '1.5 kg potatoes'],
    ['a pinch of salt', '1 pinch salt'],
    ['2 sticks butter', '2 sticks butter'],
    ['3 cloves garlic, minced', '3 cloves garlic, minced'],
    ['1 medium-sized onion, chopped', '1 medium onion, chopped'],
    ['1 extra-large egg', '1 extra large egg'],
    // Brackets.
    ['1 cup (120 g) flour', '1 cup = 120 g flour'],
    ['1 cup flour (120 g)', '1 cup flour (120 g)'],
    ['1 can (14.5 oz) tomatoes, drained', '1 can of 14.5 oz tomatoes, drained'],
    ['2 (14-ounce) cans tomatoes', '2 cans of 14 oz tomatoes'],
    ['1 8-oz. package cream cheese', '1 pack of 8 oz cream cheese'],
    ['8 oz (about 2 cups) cheese, grated', '8 oz cheese, grated (2 cup)'],
    ['250 g / 9 oz flour', '250 g = 9 oz flour'],
    ['2 cans chickpeas (14 oz each), drained', '2 cans of 14 oz chickpeas, drained'],
    ['400g tin chopped tomatoes', '1 tin of 400 g chopped tomatoes'],
    ['142ml pot double cream', '1 tub of 142 ml double cream'],
    ['1kg pot roast', '1 kg pot roast'],
    // Pieces with no number.
    ['small bunch chives, snipped', '1 small bunch chives, snipped'],
    ['thumb-sized piece of ginger, grated', '1 piece ginger, grated (thumb-sized)'],
    ['2 squares unsweetened chocolate', '2 oz unsweetened chocolate'],
    ['1 square dark chocolate', '1 square dark chocolate'],
    ['1 x 400g/14oz tin chickpeas, drained', '1 tin of 400 g chickpeas, drained'],
    ['2cm piece of ginger, peeled', '1 piece ginger, peeled (2cm)'],
    ['5cm/2in piece cinnamon stick', '1 piece cinnamon stick (5cm/2in)'],
    ['½ an onion, chopped', '½ onion, chopped'],
    ['2 x 5ml spoons salt', '2 tsp salt'],
    ['1 1/2c flour', '1 1/2 cup flour'],
    ['1/2 c milk', '1/2 cup milk'],
    ['3 t baking powder', '3 tsp baking powder'],
    ['250 gr flour', '250 g flour'],
    ['up to 100ml milk', '100 ml milk (up to)'],
    ['at least 2 tbsp oil', '2 tbsp oil (at least)'],
    ['a glug of olive oil', 'as needed olive oil'],
    ['a good splash of white wine', 'as needed white wine'],
    // Names and what is done to them.
    ['2 cups flour + more for dusting', '2 cup flour, plus more for dusting'],
    ['1 tbsp oil, plus extra for the tin', '1 tbsp oil, plus extra for the tin'],
    ['50g raisins – optional', 'optional 50 g raisins'],
    ['Icing sugar to dust', 'as needed icing sugar, to dust'],
    ['half a pound of suet finely chopped', '1/2 lb suet, finely chopped'],
    ['S&P', ['to taste salt', 'to taste pepper']],
    ['2 cups flour, sifted, plus more', '2 cup flour, sifted, plus more'],
    ['1 onion (about 150 g), diced', '1 onion, diced (about 150 g)'],
    ['1 cup butter or margarine', '1 cup butter or margarine'],
    ['1 tsp vanilla or 1/2 tsp almond extract', '1 tsp vanilla (or 1/2 tsp almond extract)'],
    ['oil for frying', 'as needed oil, for frying'],
    ['Salt', 'to taste salt'],
    ['Salt and freshly ground black pepper, to taste', ['to taste salt', 'to taste freshly ground black pepper']],
    ['butter, as needed', 'as needed butter'],
    ['a little milk', 'as needed milk'],
    ['1 tbsp capers (optional)', 'optional 1 tbsp capers'],
    ['Optional: 1 tbsp capers', 'optional 1 tbsp capers'],
    ['Juice of 1 lemon', '1 lemon, juice'],
    ['Grated zest of ½ orange', '½ orange, grated zest'],
    ['whites of 3 eggs', '3 egg whites'],
    ['Yolk of 1 egg, beaten', '1 egg yolk, beaten'],
    ['2 eggs plus 1 egg yolk', ['2 eggs', '1 egg yolk']],
    ['1 tsp each cinnamon and nutmeg', ['1 tsp cinnamon', '1 tsp nutmeg']],
    ['a three-pound chicken', '3 lb chicken'],
    ['1 1/2 pounds boneless chicken thighs, trimmed', '1 1/2 lb boneless chicken thighs, trimmed'],
    ['a knob of butter', '1 knob butter'],
    ['Pinch of salt', '1 pinch salt'],
    ['2 x 400g tins chickpeas, rinsed', '2 tins of 400 g chickpeas, rinsed'],
    ['zest and juice of 2 limes', '2 limes, zest and juice'],
    // The name first.
    ['Flour, all-purpose ...... 2 lb', '2 lb flour, all-purpose'],
    ['Sugar: 1 cup', '1 cup sugar'],
    ['Butter – 100 g', '100 g butter'],
    ['Flour - 250g', '250 g flour'],
    // Marks of the page.
    ['• 2 eggs', '2 eggs'],
    ['- 2 eggs*', '2 eggs'],
    ['2 cups Dijon mustard', '2 cup Dijon mustard'],
    ['2 cups Flour #1 [fine]', '2 cup flour no. 1 (fine)'],
  ])('%s', (printed, want) => {
    expect(readIngredient(printed, WORLD)).toEqual(typeof want === 'string' ? [want] : want);
  });

  test.each(['Mix everything until smooth.', 'see page 12', 'for the filling', '1', 'cups', ''])(
    '%j is none',
    (printed) => {
      expect(readIngredient(printed, WORLD)).toBeUndefined();
    },
  );
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
    expect(read.text).toMatch(/^recipe Gran's Shortbread \(the good one\)\n {2}by {6}Ruth\n {2}yield {3}8 portions\n/);
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
      'recipe Pancakes\n  yield   12\n\n  2         eggs\n  300 ml    milk\n  150 g     plain flour\n  1 pinch   salt\n  as needed  butter, for frying\n\n  do Whisk all but the butter.\n  do Fry for 1 min.\n',
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

describe('a recipe pasted from a letter', () => {
  const read = (text: string) => readText(text, WORLD);

  test('its subject, its yield and its times are not the recipe', () => {
    const { text, missed } = read(
      "Fwd: Nan's shortbread\n\nMakes approx 20 fingers\nPrep 15 mins, cook 40 mins\n\n250g plain flour\n125g butter\n\nRub the butter into the flour.\n",
    );
    expect(text).toMatch(/^recipe Nan's shortbread\n {2}yield {3}20 fingers\n {2}note {4}Prep 15 mins, cook 40 mins\n/);
    expect(missed).toEqual([]);
  });

  test('emphasis is not the title, and squares of a yield are no ounces of chocolate', () => {
    const { text } = read(
      '**Brownies**\n\nYield: 16 squares\n\n100g sugar\n100g flour\n\n1. Mix the sugar and the flour.\n',
    );
    expect(text).toMatch(/^recipe Brownies\n {2}yield {3}16 squares\n/);
  });

  test('a yield and a tip below the method stand at the head', () => {
    const { text } = read(
      'Loaf\n\nYou will need\n- 500g flour\n- 300g water\n\nMethod\n1. Mix the flour and the water.\nTip: wet your hands.\n2. Bake 20 to 25 minutes.\nServes 8\n',
    );
    expect(text).toBe(
      'recipe Loaf\n  yield   8 portions\n  note    wet your hands.\n\n  500 g     flour\n  300 g     water\n\n  do Mix the flour and the water.\n  do Bake 20 to 25 minutes.\n',
    );
  });

  test('a short sentence after a blank line begins the method', () => {
    const { text, missed } = read(
      'Puddings (feeds four)\n\n140g plain flour\n4 eggs\n\nHeat oven to 230C/gas 8.\nBeat the eggs into the flour.\n',
    );
    expect(text).toMatch(/^recipe Puddings\n {2}yield {3}4 portions\n/);
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
    'recipe Plum & almond tart\n  by      Ruth\n  yield   8 slices\n  tags    autumn, tart\n\npart main\n  200 g     plain flour\n  1 cup     milk (236 ml)\n  3         eggs\n  # not understood: see the notes on the other page: all of it counts\n\npart base\n  do Mix the flour with the milk.\n\npart bake\n  do Bake at 180 C for 25 minutes.\n  do Cool.\n';

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
    expect(text).toMatch(/500 g = .* bread flour|500 g +bread flour/);
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
