/**
 * Food that is preserved: pickled, canned, fermented, cured, dried, laid in oil. Each pair differs in what makes it dangerous, and in little
 * else. The recipes are invented; which is which is the USDA Complete Guide to Home Canning, 9 CFR 424.21 and what CDC and extension services
 * say of garlic in oil (from memory).
 */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

interface Half {
  readonly list: readonly string[];
  readonly steps: readonly string[];
}

const half = (list: readonly string[], ...steps: readonly string[]): Half => ({ list, steps });

const SAFETY = new Set(['safety', 'formula']);

const loud = ({ list, steps }: Half): string[] =>
  open(
    `recipe Test\n${list.map((line) => `  ${line}\n`).join('')}${steps.map((step) => `  do ${step}\n`).join('')}`,
  ).findings.open.flatMap(({ code, severity, check }) =>
    SAFETY.has(check.family) && (severity === 'error' || severity === 'warning') ? [code] : [],
  );

const VEG = ['1 kg carrots, in sticks', '300 g onions, sliced'];
const thin = (vinegar: number, water: number): string[] => [
  ...VEG,
  `${vinegar} ml white wine vinegar`,
  `${water} ml water`,
  '20 g salt',
];

const pairs = (code: string, rows: readonly (readonly [string, Half, Half])[]): void => {
  test.each(rows)('%s', (_, danger, safe) => {
    expect(loud(danger)).toContain(code);
    expect(loud(safe)).toEqual([]);
  });
};

describe('what is filled over what lies in the jars is in them too', () => {
  const into = (steps: readonly string[]): readonly [Half, Half] => [
    half(thin(150, 900), ...steps),
    half(thin(600, 600), ...steps),
  ];
  pairs('low-acid-preserve', [
    [
      'fill the jars',
      ...into([
        'Pack the carrots and onions into hot jars.',
        'Boil the vinegar, water and salt.',
        'Fill the jars, screw on the lids and keep on a shelf for 2 months.',
      ]),
    ],
    [
      'pour it over',
      ...into([
        'Share the carrots and onions out among six clean jars.',
        'Bring the vinegar, water and salt to the boil and pour it over.',
        'Seal, and store in the larder till the spring.',
      ]),
    ],
    [
      'divided among jars',
      ...into([
        'Divide the carrots and onions between the jars.',
        'Boil the vinegar with the water and salt and pour it over, to within 1 cm of the rim.',
        'Process 10 minutes in a boiling-water canner, and store in the cellar for up to a year.',
      ]),
    ],
    [
      'a towel dries the outside alone',
      ...into([
        'Dry the carrots and onions on a tea towel, and fill them into jars.',
        'Boil the vinegar, water and salt, pour over the carrots and close tightly.',
        'Leave in a cupboard for 8 weeks.',
      ]),
    ],
    [
      'washed and dried',
      ...into([
        'Wash and dry the carrots, and pack them in jars with the onions.',
        'Boil the vinegar, water and salt, pour over and cap.',
        'Keep in the pantry for 6 weeks before you open one.',
      ]),
    ],
  ]);
});

describe('vegetables that turn sour', () => {
  const KRAUT = ['2 kg white cabbage, shredded', '1 tbsp caraway seed'];
  const SALTED = [...KRAUT, '45 g salt'];
  const ferments = (...steps: readonly string[]): readonly [Half, Half] => [
    half(KRAUT, ...steps),
    half(SALTED, ...steps.map((step) => step.replace('caraway', 'caraway and salt'))),
  ];
  pairs('weak-brine', [
    [
      'in its own time',
      ...ferments(
        'Pound the cabbage with the caraway and press it into a crock.',
        'Leave in the scullery to ferment in its own time.',
      ),
    ],
    [
      'until it is sour',
      ...ferments(
        'Pack the cabbage and caraway in a jar, weigh down, and ferment at room temperature until sour enough.',
      ),
    ],
    [
      'for weeks',
      ...ferments('Knead the cabbage with the caraway, fill a crock and let it ferment in the kitchen for 3 weeks.'),
    ],
  ]);
});

describe('oil that shuts the air out', () => {
  const OIL = ['1 head garlic, peeled', '4 hot peppers, slit', '500 ml vegetable oil'];
  const fills = 'Push the garlic and peppers into a bottle and fill it with the oil.';
  pairs('garlic-in-oil', [
    [
      'let it live',
      half(OIL, fills, 'Let it live beside the stove, and top up the oil as it goes down.'),
      half(OIL, fills, 'Let it live in the fridge for three days, and throw out what is left.'),
    ],
    [
      'it dwells',
      half(OIL, fills, 'It dwells on the windowsill, where everybody can reach it.'),
      half(OIL, fills, 'It dwells in the fridge, and is gone in 2 days.'),
    ],
    [
      'keep it by the cooker',
      half(OIL, fills, 'Keep it on the counter by the cooker.'),
      half(OIL, fills, 'Keep it in the refrigerator and use within 3 days.'),
    ],
  ]);
});

describe('meat under fat', () => {
  const POTTED = ['1 kg stewing beef', '150 g butter', '100 g clarified butter', '10 g salt'];
  const cooks = [
    'Simmer the beef with the salt in a little water for 3 h, and pound it smooth with the butter.',
    'Press into little jars, pour the clarified butter over and close.',
  ];
  pairs('low-acid-preserve', [
    [
      'cut since',
      half(POTTED, ...cooks, 'Put by in the dresser. I have cut a pot after three months and found it very good.'),
      half(POTTED, ...cooks, 'Put by in the fridge. I have cut a pot after three days and found it very good.'),
    ],
  ]);
});

describe('curing salt', () => {
  const cured = (grams: string): string[] => [
    '1 kg pork leg, minced',
    '25 g salt',
    grams,
    '1 sachet fermented-sausage starter culture',
    'hog casings',
  ];
  const steps = ['Knead all until sticky and fill the casings.', 'Steam to 72 C in the centre and chill at once.'];
  pairs('curing-salt-dose', [
    ['beside a culture', half(cured('20 g curing salt'), ...steps), half(cured('2.4 g curing salt'), ...steps)],
    [
      'a level teaspoon to five pounds',
      half(
        ['5 lb pork, minced', '1 tbsp curing salt no. 1', '2 tbsp salt'],
        'Mix all, and smoke until the centre reads 160 F.',
      ),
      half(
        ['5 lb pork, minced', '1 level tsp curing salt no. 1', '2 tbsp salt'],
        'Mix all, and smoke until the centre reads 160 F.',
      ),
    ],
  ]);
});

describe('eggs in vinegar', () => {
  const EGGS = ['12 eggs', '600 ml malt vinegar', '10 g salt', '1 tbsp pickling spice'];
  const cooks = [
    'Boil the eggs for 12 minutes and peel.',
    'Simmer the vinegar with the salt and spice, and pour over the eggs in a jar.',
  ];
  pairs('low-acid-preserve', [
    [
      'on the bar',
      half(EGGS, ...cooks, 'Put on the lid and keep the jar on the bar for a month.'),
      half(EGGS, ...cooks, 'Put on the lid and keep the jar in the fridge for a month.'),
    ],
    [
      'there they stay',
      half(EGGS, ...cooks, 'Close it. On the shelf it goes, and there it stays till the last is eaten.'),
      half(EGGS, ...cooks, 'Close it. Into the fridge it goes, and there it stays till the last is eaten.'),
    ],
    [
      'ready in weeks',
      half(EGGS, ...cooks, 'Seal, and stand in the larder: ready in two weeks.'),
      half(EGGS, ...cooks, 'Seal, and stand in the refrigerator: ready in two weeks.'),
    ],
  ]);
});

describe('cake in a jar', () => {
  const CAKE = ['300 g flour', '300 g sugar', '4 eggs', '400 g mashed banana', '120 g butter'];
  const bakes = 'Beat all together, half fill the jars, and bake at 160 C for 45 min until a skewer is clean.';
  pairs('low-acid-preserve', [
    [
      'a year on the shelf',
      half(CAKE, bakes, 'Screw the lids on hot, and keep on the pantry shelf for a year.'),
      half(CAKE, bakes, 'Cool, screw the lids on and keep in the freezer for three months.'),
    ],
    [
      'sits warm',
      half(CAKE, bakes, 'Screw down the lids at once. They sit in the airing cupboard for 2 months.'),
      half(CAKE, bakes, 'Turn out and eat the same day.'),
    ],
  ]);
});

describe('milk as it comes', () => {
  const makes = ['Stir in the rennet and leave until it sets, 1 h.', 'Cut, and drain in the fridge overnight.'];
  const cheese = (milk: string, ...steps: readonly string[]): Half => half([milk, '2 g rennet'], ...steps, ...makes);
  const warm = 'Warm the milk to 32 C.';
  pairs('raw-milk', [
    ['from the farm', cheese('4 l goat milk straight from the farm', warm), cheese('4 l goat milk', warm)],
    ['not pasteurised', cheese('4 l milk, not pasteurised', warm), cheese('4 l milk, pasteurised', warm)],
    [
      'a pail of it',
      cheese('1 pail of milk', 'Set the milk down with the warmth of the cow still in it.'),
      cheese('4 l milk', 'Set the milk down until it is at 32 C.'),
    ],
    [
      'the heat of the animal',
      cheese('4 l milk', 'Use the milk with the heat of the animal still in it.'),
      cheese('4 l milk', 'The milk comes from the cow: boil it for 5 min and cool it to 32 C.'),
    ],
  ]);
});

describe('flesh that is cured, smoked and hung', () => {
  const SAUSAGE = ['3 kg pork shoulder', '500 g back fat', '90 g salt', '30 g paprika', '2 m hog casings'];
  const fills = 'Mince the pork and fat, knead with the salt and paprika, and fill the casings.';
  const hangs = 'Hang them on the rail over the stove until they are hard enough to knock with, about 3 weeks.';
  const MACKEREL = ['6 mackerel fillets', '80 g salt', '1 l water'];
  const soaks = 'Stir the salt into the water, soak the fillets for 20 minutes and pat dry.';
  pairs('no-safe-temperature', [
    [
      'a sausage with salt alone',
      half(SAUSAGE, fills, hangs, 'Slice thin and eat.'),
      half(
        [...SAUSAGE, '8.5 g curing salt no. 2'],
        'Mince the pork and fat, knead with the salts and paprika, and fill the casings.',
        'Hang at 12 C for 6 weeks until they have lost a third of their weight.',
        'Slice thin and eat.',
      ),
    ],
    [
      'mackerel in cool smoke',
      half(MACKEREL, soaks, 'Hang them in the smoker and hold the smoke at 38 C for 2 hours.', 'Flake and eat.'),
      half(
        MACKEREL,
        soaks,
        'Hang them in the smoker and hold the smoke at 90 C for 2 hours, until the thickest reads 63 C.',
        'Flake and eat.',
      ),
    ],
  ]);
  const TROUT = ['1 kg trout fillets, frozen', '150 g salt', '75 g brown sugar'];
  const cures = [
    'Bury the fillets in the salt and sugar in the fridge overnight.',
    'Rinse, dry, and cold-smoke for 6 h at 20 C.',
  ];
  pairs('cooling-too-slow', [
    [
      'salt that is rinsed off',
      half(TROUT, ...cures, 'Slice into pouches, vacuum-seal and leave them on a shelf for a week.'),
      half(TROUT, ...cures, 'Slice into pouches, vacuum-seal and keep in the fridge for a week.'),
    ],
  ]);
});

describe('canned, and what stands then', () => {
  const BEANS = ['3 kg runner beans, sliced', '100 g salt', '3 l water'];
  const packs = 'Ram the beans into Kilner jars with a spoon of salt apiece.';
  pairs('low-acid-preserve', [
    [
      'with a spoon of salt',
      half(BEANS, packs, 'Top with the boiling water, close the jars and boil them for an hour.', 'Label and shelve.'),
      half(
        BEANS,
        packs,
        'Top with the boiling water, close the jars and process 20 minutes at 11 pounds pressure.',
        'Label and shelve.',
      ),
    ],
    [
      'open one later',
      half(
        ['2 kg figs', '1 l water'],
        'Simmer the figs in the water, pack in jars, seal and boil them half an hour.',
        'Open one in January.',
      ),
      half(
        ['2 kg figs', '1 l water', '120 ml bottled lemon juice'],
        'Simmer the figs in the water and lemon juice, pack in jars, seal and boil them half an hour.',
        'Open one in January.',
      ),
    ],
    [
      'a place that is a verb as often',
      half(
        thin(100, 900),
        'Stand the carrots and onions in jars.',
        'Boil the vinegar, water and salt, fill up and close.',
        'They will wait in the press till wanted.',
      ),
      half(
        thin(900, 100),
        'Stand the carrots and onions in jars.',
        'Boil the vinegar, water and salt, fill up and close.',
        'They will wait in the press till wanted.',
      ),
    ],
  ]);
  pairs('cooling-too-slow', [
    [
      'set by',
      half(
        ['400 g cheddar', '400 ml milk', '30 g flour'],
        'Boil the milk with the flour and melt in the cheese.',
        'Bottle it hot in jars, seal and set by in the pantry.',
      ),
      half(
        ['400 g cheddar', '400 ml milk', '30 g flour'],
        'Boil the milk with the flour and melt in the cheese.',
        'Bottle it hot in jars, seal and set by in the fridge.',
      ),
    ],
  ]);
  pairs('garlic-in-oil', [
    [
      'for as long as they last',
      half(
        ['2 kg tomatoes', '4 cloves garlic', '500 ml olive oil'],
        'Halve the tomatoes and bake at 120 C for an hour.',
        'Layer with the garlic in a jar, cover with the oil, and stand by the bread bin for as long as they last.',
      ),
      half(
        ['2 kg tomatoes', '500 ml olive oil'],
        'Halve the tomatoes and dry at 60 C for 24 hours until leathery.',
        'Layer in a jar, cover with the oil, and stand by the bread bin for as long as they last.',
      ),
    ],
  ]);
});

describe('how it is put up', () => {
  pairs('low-acid-preserve', [
    [
      'lids tight',
      half(
        ['1 kg cauliflower', '2 l water', '60 g salt'],
        'Blanch the cauliflower, cool it, and jar it in the boiled salted water, lids tight.',
        'Stand the jars with the tins.',
      ),
      half(
        ['1 kg cauliflower', '800 ml water', '1.2 l white vinegar', '60 g salt'],
        'Blanch the cauliflower, cool it, and jar it in the boiled water, vinegar and salt, lids tight.',
        'Stand the jars with the tins.',
      ),
    ],
    [
      'scalding into jars',
      half(
        ['3 kg pumpkin', '300 g brown sugar'],
        'Cook the pumpkin with the sugar for an hour.',
        'Spoon it scalding into jars, lids on, ten minutes in the kettle.',
      ),
      half(
        ['3 kg pumpkin', '300 g brown sugar'],
        'Cook the pumpkin with the sugar for an hour.',
        'Spoon it cold into tubs and freeze.',
      ),
    ],
    [
      'eggs that are boiled and peeled in one breath',
      half(
        ['24 eggs', '1 l white wine vinegar'],
        'Hard-boil and peel the eggs.',
        'Heat the vinegar, pour over the eggs in the big jar, and leave it in the vestry for whoever comes in hungry until Advent.',
      ),
      half(
        ['24 eggs', '1 l white wine vinegar'],
        'Hard-boil and peel the eggs.',
        'Heat the vinegar, pour over the eggs in the big jar, and leave it in the fridge for whoever comes in hungry until Advent.',
      ),
    ],
  ]);
  pairs('curing-salt-dose', [
    [
      'fat is of the weight of a sausage',
      half(
        ['4 kg venison, minced', '1 kg pork back fat', '20 g curing salt no. 1', '110 g salt'],
        'Mix all, and smoke until the centre reads 72 C.',
      ),
      half(
        ['4 kg venison, minced', '1 kg pork back fat', '12 g curing salt no. 1', '110 g salt'],
        'Mix all, and smoke until the centre reads 72 C.',
      ),
    ],
  ]);
  pairs('garlic-in-oil', [
    [
      'down the sink',
      half(
        ['60 g garlic', '200 ml olive oil'],
        'Warm the oil with the garlic, and keep it in a bottle on the shelf for a month.',
      ),
      half(
        ['60 g garlic', '200 ml olive oil'],
        'Warm the oil with the garlic and serve at once; whatever is over goes down the sink.',
      ),
    ],
  ]);
});

describe('in few words', () => {
  pairs('low-acid-preserve', [
    [
      'everything in the pot',
      half(
        ['3 kg tomatoes, peeled', '600 g onions', '20 g salt'],
        'Everything in the pot, boil for 10 min.',
        'Hot jars, boiling-water bath 15 min.',
      ),
      half(
        ['3 kg tomatoes, peeled', '600 g onions', '500 ml bottled lime juice', '20 g salt'],
        'Everything in the pot, boil for 10 min.',
        'Hot jars, boiling-water bath 15 min.',
      ),
    ],
    [
      'hot jars',
      half(
        ['2 kg courgettes', '400 g sugar', '200 ml cider vinegar'],
        'Simmer the courgettes in the vinegar with the sugar.',
        'Hot jars, hot lids; the heat pulls them down.',
      ),
      half(
        ['2 kg courgettes', '600 g sugar', '1.2 l cider vinegar'],
        'Simmer the courgettes in the vinegar with the sugar.',
        'Hot jars, hot lids; the heat pulls them down.',
      ),
    ],
    [
      'a kettle or a canner',
      half(
        ['2 kg sweet corn', '30 g salt', '2 l water'],
        'Pack the corn in jars with the salt and the boiling water.',
        'Lids on. Three hours in boiling water. Basement shelf. Good for two years.',
      ),
      half(
        ['2 kg sweet corn', '30 g salt', '2 l water'],
        'Pack the corn in jars with the salt and the boiling water.',
        'Lids on. 55 minutes in the pressure canner. Basement shelf. Good for two years.',
      ),
    ],
    [
      'a week turns them',
      half(
        ['12 eggs', '900 ml cider vinegar'],
        'Boil the eggs hard, shell them, and cover with the vinegar in a jar.',
        'A week on the sideboard turns them sour.',
      ),
      half(
        ['12 eggs', '900 ml cider vinegar'],
        'Boil the eggs hard, shell them, and cover with the vinegar in a jar.',
        'A week in the fridge turns them sour.',
      ),
    ],
    [
      'flesh in oil, and in a closed jar',
      half(
        ['2 kg fresh tuna', '1 l olive oil'],
        'Poach the tuna for an hour, drain, and break it into jars.',
        'Fill with the oil, shut them, boil forty minutes, and lay them by.',
      ),
      half(
        ['2 kg fresh tuna', '1 l olive oil'],
        'Poach the tuna for an hour, drain, and break it into jars.',
        'Fill with the oil, shut them, and keep in the fridge for three days.',
      ),
    ],
  ]);
  pairs('garlic-in-oil', [
    [
      'the hour in which it goes to the fridge is no fifth day',
      half(
        ['4 heads garlic, peeled', '300 ml olive oil'],
        'Cook the garlic under the oil for 1 h.',
        'Cool in ice water, fridge within the hour, gone in six days.',
      ),
      half(
        ['4 heads garlic, peeled', '300 ml olive oil'],
        'Cook the garlic under the oil for 1 h.',
        'Cool in ice water, fridge within the hour, gone in four days.',
      ),
    ],
    [
      'it chills on the counter',
      half(
        ['4 heads garlic', '400 ml olive oil'],
        'Cook the garlic in the oil for 40 min and fill a jar.',
        'It just chills on the counter.',
      ),
      half(
        ['4 heads garlic', '400 ml olive oil'],
        'Cook the garlic in the oil for 40 min and fill a jar.',
        'It just chills in the fridge for two days.',
      ),
    ],
    [
      'oil that is poured over',
      half(
        ['1 kg green chillies, slit', '500 ml mustard oil'],
        'Cram the chillies in a jar; heat the oil, let it cool, and pour it over.',
        'It lives by the stove all year.',
      ),
      half(
        ['1 kg green chillies, slit', '500 ml mustard oil'],
        'Cram the chillies in a jar; heat the oil, let it cool, and pour it over.',
        'It lives in the fridge for three days.',
      ),
    ],
  ]);
});

describe('nothing is said of', () => {
  test.each<[string, Half]>([
    [
      'jars that cool where they were under pressure',
      half(
        ['4 kg pork shoulder, cubed', '20 g salt', '1 l water'],
        'Pack the pork into hot jars with the salt, cover with the boiling water and lid.',
        'Process for 75 minutes at 11 pounds of pressure.',
        'Cool the jars overnight on a towel, and check the seals.',
      ),
    ],
    [
      'rice that is packed and sold on the day',
      half(
        ['3 kg rice', '450 ml rice vinegar', '200 g sugar', '60 g salt'],
        'Boil the rice, and stir in the vinegar, sugar and salt.',
        'Cool to room temperature. Pack at 10, sell by 2, bin the rest.',
      ),
    ],
    [
      'what is kept in the cold from one day to another',
      half(
        ['500 g brown shrimps, cooked', '250 g butter'],
        'Melt the butter, stir in the shrimps and fill ramekins.',
        'Seal with more butter. Granny kept hers in the fridge from one Sunday to the Wednesday.',
      ),
    ],
    [
      'juice that is kept in the cold and thrown away after days',
      half(
        ['1 kg beetroot', '100 g fresh ginger'],
        'Juice the beetroot with the ginger.',
        'Bottle, keep in the fridge, and pour away what is left after three days.',
      ),
    ],
    [
      'what is frozen, with talk behind it',
      half(
        ['300 g basil', '4 cloves garlic', '500 ml olive oil'],
        'Blend all, fill jars and close them.',
        'Stack in the freezer. Ours sees us from August to the next August.',
      ),
    ],
    [
      'flesh that was under pressure',
      half(
        ['2 kg chicken, boned', '20 g salt', '1 l water'],
        'Pack the chicken raw in jars with the salt and water to cover.',
        'Screw down and give them 75 minutes in the pressure canner at 11 pounds.',
        'Wipe and put away in the cellar.',
      ),
    ],
    [
      'curing salt that is on the list',
      half(
        ['3 kg pork shoulder, minced', '75 g salt', '7.5 g curing salt no. 2', '10 g dextrose'],
        'Mix the pork with salt, cure, dextrose.',
        'Hang at 12 C for 6 weeks until it has lost a third of its weight. Slice thin.',
      ),
    ],
  ])('%s', (_, safe) => {
    expect(loud(safe)).toEqual([]);
  });
});

describe('lines of strangers', () => {
  const codes = (line: string): string[] =>
    open(`recipe Test\n  1 kg beef\n  ${line}\n  do Boil all.\n`).findings.open.flatMap(({ code }) =>
      code === 'syntax' || code === 'missing-amount' || code === 'unread-amount' ? [code] : [],
    );

  test.each([
    'beech sawdust',
    'oak dust for the smoker',
    'hickory chips, soaked',
    'muslin and string',
    'canning jars',
    "butcher's twine",
    'wooden skewers',
    '2 drops rennet in 2 tbsp water',
    '1 tsp fresh yeast in 50 ml warm water',
    'a good fistful of kitchen salt',
  ])('%s', (line) => {
    expect(codes(line)).toEqual([]);
  });

  test.each([
    ['hog casings', 'missing-amount'],
    ['fibrous casings, soaked', 'missing-amount'],
    ['potato chips', 'missing-amount'],
    ['Toast the oats in a dry pan.', 'syntax'],
    ['1 tin tuna in 2 pieces', 'unread-amount'],
  ])('%s', (line, code) => {
    expect(codes(line)).toEqual([code]);
  });
});

const dish = (list: readonly string[], ...steps: readonly string[]): string =>
  `recipe Test\n${[...list, ...steps.map((step) => `do ${step}`)].map((line) => `  ${line}\n`).join('')}`;

/** Fruit in light syrup in closed jars is boiled in them for 10 to 30 min (USDA Complete Guide to Home Canning 2015, guide 2; from memory). */
describe('fruit in jars', () => {
  const PEARS = ['2 kg pears, quartered', '300 g caster sugar', '1 l water'];
  const FILL = [
    'Boil the sugar and water, add the pears and simmer for 5 min.',
    'Pack into hot jars, cover with the syrup and screw on the lids.',
  ];
  test.each<[string, string, boolean]>([
    ['never boiled', dish(PEARS, ...FILL, 'Store in a cool cupboard for a year.'), true],
    [
      'for minutes',
      dish(PEARS, ...FILL, 'Process in a boiling-water canner for 4 min.', 'Store in a cool cupboard for a year.'),
      true,
    ],
    [
      'with a word of jars that do not seal',
      dish(PEARS, ...FILL, 'Cool on a towel for 12 h. Refrigerate any jar that did not seal.'),
      true,
    ],
    ['in the fridge', dish(PEARS, ...FILL, 'Keep in the fridge for 2 weeks.'), false],
    [
      'processed',
      dish(PEARS, ...FILL, 'Process in a boiling-water canner for 25 min.', 'Store in a cool cupboard for a year.'),
      false,
    ],
    ['boiled', dish(PEARS, ...FILL, 'Boil the jars for 25 min.', 'Store in a cool cupboard for a year.'), false],
    [
      'in spirit',
      dish(['1 kg cherries', '300 g caster sugar', '700 ml brandy'], 'Put all in a jar, seal and keep for 6 months.'),
      false,
    ],
    [
      'as jam',
      dish(
        ['1 kg strawberries', '850 g sugar', '50 ml lemon juice'],
        'Boil all to 104.5 C.',
        'Fill hot jars, seal and keep in a cool cupboard for a year.',
      ),
      false,
    ],
  ])('%s', (_, text, found) => {
    const codes = open(text)
      .findings.open.filter(({ severity }) => severity !== 'info')
      .map(({ code }) => code);
    expect(codes.includes('low-acid-preserve')).toBe(found);
  });
});

/** Acidified tomatoes are boiled in their jars for 35 to 85 min (USDA Complete Guide to Home Canning 2015, guide 3; from memory). */
describe('tomatoes in jars', () => {
  const TOMATOES = ['10 kg tomatoes', '200 ml bottled lemon juice', '40 g salt'];
  const told = (list: readonly string[], ...steps: readonly string[]): boolean =>
    open(dish(list, ...steps)).findings.open.some(
      ({ code, said }) => code === 'low-acid-preserve' && said.message.includes('35 to 85 min'),
    );
  const FILL = [
    'Crush the tomatoes and boil them for 5 min. Put the lemon juice and salt in the hot jars.',
    'Fill with the tomatoes and close the lids.',
  ];
  test.each([
    [45, false],
    [35, false],
    [4, true],
    [15, true],
  ])('boiled for %i min: %s', (min, found) => {
    const process = `Process in a boiling-water canner for ${min} min. Store in a cool place for a year.`;
    expect(told(TOMATOES, ...FILL, process)).toBe(found);
  });
  test('a chutney is sourer', () =>
    expect(
      told(
        ['2 kg tomatoes', '400 g onions', '500 ml malt vinegar', '400 g sugar'],
        'Simmer all for 2 h until thick.',
        'Fill hot jars, seal and keep in a cool cupboard for a year.',
      ),
    ).toBe(false));
});
