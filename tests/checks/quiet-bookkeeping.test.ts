/** Sentences of ordinary recipes that keep their books in order, each in other words, and slips that are found all the same. The texts are invented. */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const BOOKS = [
  'overdrawn-amount',
  'leftover-amount',
  'unused-ingredient',
  'unlisted-ingredient',
  'unread-amount',
  'syntax',
];

/** What the book-keeping says at warning or above of a list, a method, and perhaps a part before and after. */
function said(list: readonly string[], ...steps: readonly string[]): string[] {
  const lines = [...list, ...steps].map((line) => (/^[A-Z]/.test(line) ? `do ${line}` : line));
  return open(`recipe Dish\n  ${lines.join('\n  ')}\n`)
    .findings.open.filter(
      ({ code, severity }) => BOOKS.includes(code) && (severity === 'error' || severity === 'warning'),
    )
    .map(({ code }) => code);
}

const quiet = (rule: string, rows: readonly (readonly [readonly string[], ...string[]])[]) =>
  describe(rule, () => {
    test.each(rows.map((row) => [row.flat().slice(-3).join(' '), row] as const))('%s', (_, [list, ...steps]) => {
      expect(said(list, ...steps)).toEqual([]);
    });
  });
const found = (rule: string, rows: readonly (readonly [string, readonly string[], ...string[]])[]) =>
  describe(rule, () => {
    test.each(rows.map((row) => [row.slice(2).join(' '), row] as const))('%s', (_, [code, list, ...steps]) => {
      expect(said(list, ...steps)).toContain(code);
    });
  });

quiet('what is left of a coating is thrown away', [
  [['500 g chicken breast', '200 g plain flour'], 'Turn the chicken in the flour.', 'Throw away the leftover flour.'],
  [
    ['4 cod fillets', '100 g breadcrumbs'],
    'Roll the cod in the breadcrumbs and bake for 20 min.',
    'Discard the remaining breadcrumbs.',
  ],
  [
    ['70 g butter', '2 onions'],
    'Melt 50 g of the butter and fry the onions.',
    'Brush the tin with 20 g of the butter.',
  ],
  [
    ['60 g butter', '200 g plain flour'],
    'Melt the butter.',
    'Rub 40 g of the butter into the flour and brush with the rest.',
  ],
]);

found('more fat is taken than went in before and is left', [
  [
    'overdrawn-amount',
    ['70 g butter', '250 g mushrooms', '2 onions'],
    'Fry the mushrooms in 20 g of the butter.',
    'Soften the onions in 60 g of the butter.',
  ],
  [
    'overdrawn-amount',
    ['100 ml olive oil', '2 aubergines', '3 courgettes'],
    'Fry the aubergines in half of the oil.',
    'Fry the courgettes in three quarters of the oil.',
  ],
  [
    'overdrawn-amount',
    ['40 g lard', '2 leeks', '1 kg potatoes'],
    'Soften the leeks in a quarter of the lard.',
    'Brown the potatoes in 35 g of the lard.',
  ],
]);

quiet('an amount said again names the thing', [
  [
    ['2 eggs', '300 ml water', '1 tsp salt'],
    'Cover the eggs with water and boil for 10 min.',
    'Bring the 300 ml water to the boil with the salt.',
  ],
  [['200 g lentils', '1 l water'], 'Rinse the lentils in water.', 'Simmer them in the 1 l water for 25 min.'],
  [
    ['1 kg potatoes', '500 ml water', '50 g butter'],
    'Wash the potatoes in plenty of water and slice them.',
    'Put them in a pan with those 500 ml of water and the butter and simmer for 20 min.',
  ],
  [['4 pears', '400 ml red wine'], 'Peel the pears.', 'Simmer the 4 pears in the 400 ml red wine for 30 min.'],
]);

found('more than is listed is still too much', [
  [
    'overdrawn-amount',
    ['200 g oats', '80 g butter'],
    'Rub the butter into the oats.',
    'Brush with 20 g of the butter.',
  ],
  ['overdrawn-amount', ['4 pears', '400 ml red wine'], 'Mix half the wine with the pears.', 'Add 300 ml of the wine.'],
  [
    'overdrawn-amount',
    ['200 g flour', '80 g butter'],
    'Rub the butter into the flour.',
    'Spread with the rest of the butter.',
  ],
]);

quiet('what is left over of the dish is kept', [
  [
    ['300 g basmati rice', '450 ml hot water'],
    'Simmer the rice in the water for 12 min.',
    'Cool any leftover rice within 1 h, keep it in the fridge and eat it within 1 day.',
  ],
  [
    ['500 g dried beans', '2 l water'],
    'Boil the beans in the water for 1 h until soft.',
    'Freeze the leftover beans for up to 3 months.',
  ],
]);
quiet('to rest is to lie', [
  [
    ['1 duck', '1 tsp salt'],
    'Salt the duck and roast at 180 C for 2 h until the thigh reads 75 C.',
    'Lift out and rest the duck under foil for 20 min.',
  ],
  [
    ['800 g beef fillet', '20 g oil'],
    'Sear the beef in the oil and roast at 200 C until the centre reads 63 C.',
    'Rest the beef for 15 min, then slice it.',
  ],
  [
    ['500 g flour', '320 g water', '5 g yeast'],
    'Knead the flour, the water and the yeast.',
    'Rest dough for 1 h.',
    'Bake at 230 C for 40 min until brown.',
  ],
]);

quiet('of what was warmed with others some may be taken out', [
  [
    ['300 ml milk', '200 ml double cream', '5 egg yolks', '80 g sugar'],
    'Heat the milk, the cream and the sugar to 80 C.',
    'Whisk 100 ml of the hot milk into the yolks, then stir them back and cook to 82 C.',
  ],
  [
    ['500 ml chicken stock', '20 g butter', '30 g flour'],
    'Simmer the stock with the butter for 5 min.',
    'Beat a ladle of the stock and 60 ml of the stock into the flour.',
  ],
  [
    ['1.5 kg pork belly', '200 g lard', '2 tsp salt'],
    'Rub the pork with the salt and add the lard.',
    'Bake at 150 C for 3 h until it reads 92 C.',
    'Fry the pieces in 30 g of the fat.',
  ],
]);

quiet('what took a little in keeps its name', [
  [
    ['1 kg sausage meat', '1 onion, chopped', '1 kg puff pastry'],
    'Mix the sausage meat with the onion.',
    'Roll out the pastry, cut it into four strips and lay a quarter of the meat down each strip.',
    'Bake at 200 C for 30 min until the centre reads 75 C.',
  ],
  [
    ['1 l milk', '30 g milk powder', '40 g yoghurt'],
    'Whisk the milk powder into the milk and warm to 85 C.',
    'Cool to 43 C, and whisk the yoghurt with 200 ml of the milk.',
  ],
  [
    ['600 g tomatoes', '1 tsp salt', '400 g mozzarella'],
    'Season the tomatoes with the salt.',
    'Lay out half the tomatoes and the mozzarella, then the rest of the tomatoes.',
  ],
  [
    ['12 lasagne sheets', '600 g tomato sauce', '200 g ricotta'],
    'Lay a quarter of the sheets in a dish with the sauce and the ricotta; do this three times.',
    'Bake at 180 C for 40 min until 75 C in the centre.',
  ],
]);

found('what took a little in is used up all the same', [
  [
    'overdrawn-amount',
    ['1 l milk', '30 g milk powder', '40 g yoghurt'],
    'Stir the milk into the milk powder.',
    'Whisk the yoghurt with 200 ml of the milk.',
  ],
  [
    'overdrawn-amount',
    ['600 g tomatoes', '1 tsp salt', '400 g mozzarella'],
    'Season the tomatoes with the salt.',
    'Lay out half the tomatoes and the mozzarella, then 400 g of the tomatoes.',
  ],
]);

quiet('a line that tells its pieces apart', [
  [
    ['3 onions, 2 chopped and 1 sliced', '20 g oil', '300 g rice'],
    'Fry the chopped onions in the oil with the rice.',
    'Scatter over half the sliced onion.',
    'Serve with the rest of the onions.',
  ],
  [
    ['4 eggs, 3 beaten, 1 left whole', '200 g flour'],
    'Mix the beaten eggs into the flour.',
    'Brush with a third of the egg and bake at 180 C for 20 min until golden.',
    'Brush with the rest of the eggs and bake for 10 min.',
  ],
]);

quiet('a pinch, a shower, a veil of it, and then the last', [
  [
    ['200 g Gruyère, grated', '1 kg potatoes, sliced', '500 ml cream'],
    'Layer the potatoes with the cream, with a veil of Gruyère on each layer.',
    'Bake at 170 C for 1 h under the rest of the Gruyère until tender.',
  ],
  [
    ['100 g icing sugar', '300 g shortcrust pastry'],
    'Roll out the pastry on a cloud of icing sugar and bake at 180 C for 20 min until golden.',
    'Dust with the remaining icing sugar.',
  ],
]);

quiet('pieces are counted by what they were made into', [
  [
    ['30 dumpling wrappers', '300 g pork mince', '10 g oil'],
    'Put a spoonful of the pork on each of the wrappers and pleat.',
    'Fry 15 dumplings in the oil until the centre reads 75 C, then the others.',
  ],
  [
    ['16 wonton wrappers', '200 g prawns', '1 l chicken stock'],
    'Wrap the prawns in the wrappers.',
    'Boil 8 wontons at a time in the stock for 5 min.',
  ],
]);

quiet('repeat with the rest', [
  [
    ['12 slices bread', '60 g butter', '6 eggs'],
    'Melt half the butter in a pan, dip 6 slices of the bread in the eggs and fry for 4 min until set.',
    'Repeat with the rest.',
  ],
  [
    ['400 g flour', '700 ml milk', '4 eggs', '40 g butter'],
    'Whisk the flour, the milk and the eggs.',
    'Melt 10 g of the butter, fry a ladle of batter until brown, and repeat with the remaining batter.',
  ],
]);

quiet('what is saved, poured off or returned is brought from nowhere', [
  [
    ['250 g black beans', '1 onion', '2 bay leaves'],
    'Boil the beans, the onion and the bay in water for 1 h.',
    'Drain, keeping back 1 cup of broth.',
  ],
  [
    ['300 g spaghetti', '100 g bacon'],
    'Boil the spaghetti for 10 min and fry the bacon until crisp.',
    'Reserve 150 ml stock before you drain it.',
  ],
  [
    ['2 kg chicken wings', '1 carrot'],
    'Roast the wings with the carrot at 200 C until they read 80 C.',
    'Pour off 100 ml of the fat.',
  ],
]);

found('what is brought in and not listed', [
  [
    'unlisted-ingredient',
    ['250 g flour', '120 g butter'],
    'Rub the butter into the flour.',
    'Bind with 50 ml of milk.',
  ],
  [
    'unlisted-ingredient',
    ['500 g carrots', '1 onion'],
    'Simmer the carrots and the onion in 1 l chicken stock for 30 min.',
  ],
]);

quiet('what stands on one line goes in together', [
  [
    ['2 eggs and 3 yolks, beaten', '100 g sugar', '200 ml milk'],
    'Warm the milk with the sugar.',
    'Stir in the eggs and cook to 82 C.',
  ],
  [['1 leek and 1 carrot, sliced', '1 l water'], 'Simmer the leek in the water for 30 min.'],
]);

quiet('a part that only serves takes what it lists', [
  [
    [
      'part Stew',
      '1 kg stewing beef',
      '500 ml water',
      'Simmer the beef in the water for 3 h until it reads 90 C.',
      'part To serve',
      '1 baguette',
      '1 bunch watercress',
      'Spoon the stew into bowls.',
    ] as string[],
  ],
  [
    [
      'part Kebabs',
      '600 g lamb, diced',
      '1 tsp cumin',
      'Grill the lamb with the cumin until it reads 74 C.',
      'part At table',
      '6 pitta breads',
      '150 g yogurt',
      '1 lemon',
      'Take the Kebabs. Let everybody help themselves.',
    ] as string[],
  ],
]);

found('a part that cooks does not', [
  ['unused-ingredient', ['200 g oats', '20 g butter', '30 g walnuts'], 'Toast the oats.', 'Stir in the butter.'],
  [
    'unused-ingredient',
    ['1 kg beef', '2 carrots', '1 leek'],
    'Brown the beef and put in the carrots.',
    'Simmer for 3 h.',
  ],
]);

quiet('bones boil for hours with all that is listed', [
  [['3 kg beef bones', '2 onions', '3 carrots', '6 l water'], 'Rinse the bones.', 'Simmer for 8 h, then strain.'],
  [['2 kg chicken carcasses', '1 leek', '1 bunch parsley'], 'Blanch, and skim.', 'Boil gently for 3 h.'],
]);

quiet('a dressing dresses', [
  [
    ['1 kg potatoes, boiled', '4 hard-boiled eggs', '150 g mayonnaise', '20 ml vinegar'],
    'Dress the potatoes and the eggs and chill.',
  ],
  [['300 g salad leaves', '40 ml olive oil', '10 ml lemon juice'], 'Dress the leaves just before you eat.'],
]);

quiet('the name nearest by is meant', [
  [
    [
      'part Rub',
      '10 g ground cinnamon',
      '1 kg pork',
      'Rub the pork with the cinnamon and roast at 180 C until it reads 74 C.',
      'part Fruit',
      '500 g plums',
      '1 cinnamon stick',
      'Stew the plums with the cinnamon for 20 min.',
    ] as string[],
  ],
]);

describe('a figure that says what a food is, or how warm', () => {
  test.each([
    ['300 g water at 32 C', 300],
    ['300 g water at 90°F', 300],
    ['500 g T45 flour', 500],
    ['500 g T80 flour', 500],
    ['500 g W260 flour', 500],
    ['2 # butter', 907],
    ['1.5 # carrots', 680],
    ['1/2 # butter', 227],
    ['4-rib rack of lamb, 900 g', 900],
  ])('%s', (line, grams) => {
    const { recipe, findings } = open(`recipe Dish\n  ${line}\n  100 g rice\n`);
    const weighed = recipe.parts[0]?.head.ingredients[0]?.weighed;
    expect(weighed?.known === true && Math.round((weighed.grams.low + weighed.grams.high) / 2)).toBe(grams);
    expect(findings.open.map(({ code }) => code)).not.toContain('unread-amount');
    expect(findings.open.map(({ code }) => code)).not.toContain('syntax');
  });

  test.each(['2 # how many?', '100 g rice # the long one', '3 #', '# 3 onions'])('a comment stays one: %s', (line) => {
    expect(open(`recipe Dish\n  ${line}\n  50 g salt\n`).document.lines[1]?.comment === undefined).toBe(
      line === '2 # how many?',
    );
  });
});

found('a layer is no word for everything', [
  [
    'unused-ingredient',
    ['225 g butter', '4 eggs', '225 g flour', '50 g almonds'],
    'Line the tin with a double layer of baking paper.',
    'Cream the butter, beat in the eggs and fold in the flour. Bake at 160 C for 1 h until gold.',
  ],
  [
    'unused-ingredient',
    ['400 g potatoes', '200 ml cream', '50 g gruyere'],
    'Lay the potatoes in the dish in a thin layer and pour the cream over.',
    'Bake at 180 C for 1 h until gold.',
  ],
]);
quiet('an order to mix in a vessel takes all', [
  [['200 g flour', '150 g sugar', '100 g chocolate chips'], 'Layer in a jar. Close and keep cool.'],
  [['200 g flour', '150 g sugar', '100 g butter'], 'Mix in a bowl. Bake at 180 C for 20 min until gold.'],
]);
quiet('zest and juice of one fruit', [
  [
    ['2 lemons, zest and juice', '225 g butter', '100 g icing sugar'],
    'Cream the butter with the lemon zest.',
    'Beat in 2 tbsp of the lemon juice.',
    'Stir the icing sugar with the rest of the lemon juice.',
  ],
]);
found('more than a fruit gives', [
  [
    'overdrawn-amount',
    ['2 lemons, zest and juice', '225 g butter'],
    'Cream the butter with the lemon zest.',
    'Beat in 2 cups of the lemon juice.',
  ],
]);
quiet('what is taken once for each, or from what was fried in', [
  [
    ['6 tsp demerara sugar', '500 ml cream'],
    'Divide the cream between pots.',
    'Sprinkle each with 1 tsp of the sugar.',
  ],
  [
    ['3 tbsp oil', '1 1/2 cups water', '40 wrappers'],
    'Cook the wrappers in three batches. Heat 1 tbsp of the oil and fry them.',
    'Pour in 1/2 cup of the water and steam for 6 min.',
  ],
  [
    ['7 tsp salt', '9 kg tomatoes'],
    'Crush the tomatoes.',
    'Put 1 tsp of the salt in each hot quart jar and fill them.',
  ],
  [
    ['250 ml olive oil', '500 g potatoes', '6 eggs'],
    'Heat the oil, add the potatoes and cook for 20 min. Drain, and keep the oil.',
    'Return 2 tbsp of the oil to the pan and pour in the eggs.',
  ],
]);

found('some of it stays behind', [
  ['leftover-amount', ['6 tsp sugar', '500 ml cream'], 'Warm the cream.', 'Sprinkle it with 1 tsp of the sugar.'],
  ['leftover-amount', ['200 g butter', '500 g flour'], 'Rub half the butter into the flour.'],
]);
