/**
 * Where and for how long the dish is kept, by steps and notes that say it in other words each time: what is dangerous by FDA Food Code 2022,
 * 3-501.16 and 3-501.17, USDA FSIS on the danger zone, and USDA Complete Guide to Home Canning (2015), and what looks like it and is usual. The
 * recipes are invented.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const KEPT: ReadonlySet<string> = new Set([
  'cooling-too-slow',
  'held-too-warm',
  'kept-too-long',
  'low-acid-preserve',
  'raw-contact',
]);

interface Dish {
  readonly head?: string;
  readonly list: readonly string[];
  readonly steps: readonly string[];
}

/** What is found of keeping, with one more step, or a note. */
function found({ head, list, steps }: Dish, ...more: readonly string[]): readonly string[] {
  const notes = more.filter((line) => line.startsWith('note '));
  const orders = more.filter((line) => !line.startsWith('note '));
  const text = [
    head ?? 'recipe Test',
    ...notes.map((note) => `  ${note}`),
    '',
    ...list.map((line) => `  ${line}`),
    '',
    ...[...steps, ...orders].map((step) => `  do ${step}`),
    '',
  ].join('\n');
  return open(text)
    .findings.open.filter(({ code, severity }) => KEPT.has(code) && severity !== 'info')
    .map(({ code }) => code);
}

const MAYO: Dish = {
  list: [
    '2 large egg yolks',
    '1 tsp mustard',
    '1 tbsp lemon juice',
    '2 tsp white wine vinegar',
    '300 ml sunflower oil',
  ],
  steps: ['Whisk the yolks with the mustard and vinegar.', 'Whisk in the oil in a thin thread, then the lemon juice.'],
};
const RANCH: Dish = {
  list: ['120 g mayonnaise', '120 g sour cream', '120 ml buttermilk', '1 tbsp lemon juice', '10 g chives'],
  steps: ['Whisk the mayonnaise, sour cream, buttermilk, lemon juice and chives until smooth.'],
};
const YOGHURT: Dish = {
  list: ['1 l whole milk', '60 g live natural yoghurt'],
  steps: [
    'Heat the milk to 85 C, cool it to 43 C and stir in the yoghurt.',
    'Pour into jars, cover and keep at 42 C for 8 h, until set.',
  ],
};
const ECLAIRS: Dish = {
  list: ['100 g plain flour', '350 ml whole milk', '4 large egg yolks', '75 g caster sugar', '25 g cornflour'],
  steps: [
    'Beat the yolks with the sugar and cornflour, whisk in the milk, and boil for 1 min, whisking.',
    'Press film on top and chill for 4 h.',
  ],
};
const PORK: Dish = {
  list: ['2.5 kg boneless pork shoulder', '3 tbsp brown sugar', '1 tbsp paprika', '1 tbsp salt'],
  steps: ['Stir the sugar, paprika and salt together.'],
};
const ROAST = 'Roast at 150 C for 5 h, until the middle reads 93 C.';
const PICKLE: Dish = {
  list: ['450 g red onions', '250 ml cider vinegar, 5 % acidity', '150 ml water', '40 g sugar', '9 g salt'],
  steps: [
    'Pack the onions into a clean jar.',
    'Boil the vinegar, water, sugar and salt, pour over the onions and leave until cool.',
  ],
};
const SALSA: Dish = {
  list: [
    '1.2 kg tomatoes, chopped',
    '600 g onions, diced',
    '300 g green peppers, diced',
    '360 ml lime juice',
    '15 g salt',
  ],
  steps: [
    'Simmer the tomatoes, onions, peppers, lime juice and salt for 5 min.',
    'Ladle hot into clean jars and put on the lids.',
  ],
};
const CHICKEN: Dish = {
  list: ['1 kg chicken thighs', '200 g yogurt', '2 tbsp lemon juice', '10 g salt'],
  steps: ['Mix the yogurt, lemon juice and salt, add the chicken and marinate in the fridge for 4 h.'],
};
const GRILL = 'Grill the chicken for 25 min, until it reads 75 C.';
const BRITTLE: Dish = {
  list: ['200 g sugar', '160 g corn syrup', '60 ml water', '180 g roasted peanuts', '30 g butter'],
  steps: ['Boil the sugar, syrup and water to 150 C, stir in the peanuts and butter and spread on a tray.'],
};
const CAKE: Dish = {
  list: ['200 g plain flour', '200 g butter', '200 g caster sugar', '4 large eggs', '2 tsp baking powder'],
  steps: [
    'Cream the butter and sugar, beat in the eggs, fold in the flour and baking powder.',
    'Bake at 180 C for 45 min.',
  ],
};
const SYRUP: Dish = {
  list: ['250 g fresh ginger, sliced', '400 g sugar', '500 ml water', '30 ml lemon juice'],
  steps: ['Simmer the ginger, sugar and water for 40 min, add the lemon juice, strain and bottle.'],
};
const GIN: Dish = {
  list: ['450 g sloes', '225 g sugar', '700 ml gin'],
  steps: ['Put the sloes, sugar and gin in a jar, close it and leave for 3 months, then strain into bottles.'],
};

describe('is too long or too warm', () => {
  test.each<[string, Dish, ...string[]]>([
    ['mayonnaise in a cupboard', MAYO, 'Scrape into a clean jar, cover, and keep in the cupboard for up to 4 weeks.'],
    ['and on the counter', MAYO, 'Store on the counter for up to 5 days.'],
    ['and at room temperature', MAYO, 'It keeps at room temperature for a week.'],
    ['by a note', MAYO, 'note Keeps in the larder for up to 2 weeks.'],
    ['a dressing', RANCH, 'Keep on the counter and eat within 5 days.'],
    ['stored', RANCH, 'Store at room temperature for up to 10 days.'],
    ['that lasts', RANCH, 'It lasts a fortnight in the pantry.'],
    ['of a note', RANCH, 'note Store at room temperature and use within 4 days.'],
    ['yoghurt in a pantry', YOGHURT, 'Keep in the pantry and eat within 10 weeks.'],
    ['and on a shelf', YOGHURT, 'It will keep on the shelf for a month.'],
    ['pastry cream, by a note', ECLAIRS, 'note They may wait on the kitchen counter for up to 3 days.'],
    ['by another', ECLAIRS, 'note Can be kept at room temperature for 2 days.'],
    ['and another', ECLAIRS, 'note Keep in a tin in the cupboard for up to a week.'],
    ['in the cold, by a note', ECLAIRS, 'note Keeps in the fridge for up to 3 weeks.'],
    [
      'raw pork',
      PORK,
      'Pat the pork dry and rub the sugar mix all over. Leave it, covered, on the counter overnight.',
      ROAST,
    ],
    [
      'rubbed',
      PORK,
      'Pat the pork dry and rub the paprika, sugar and salt all over. Leave out on the worktop for 8 h.',
      ROAST,
    ],
    ['a pickle for years', PICKLE, 'Cover. It keeps for 3 years in a warm cupboard.'],
    ['by a note', PICKLE, 'note Keeps on the shelf for 5 years.'],
    [
      'salsa that no step heats in its jars',
      SALSA,
      'Screw down the lids; there is no need to process the jars.',
      'Store in a cool, dark place for up to 1 year.',
    ],
    ['in other words', SALSA, 'Seal and leave to cool. Keep in the pantry for 9 months.'],
    [
      'a marinade kept',
      CHICKEN,
      'Lift the chicken out and keep whatever marinade is left in the bowl, to serve cold as a dip.',
      GRILL,
    ],
    ['reserved', CHICKEN, 'Lift the chicken out and reserve the marinade for serving.', GRILL],
    ['saved', CHICKEN, 'Lay the chicken on a tray. Save the used marinade to drizzle over at the table.', GRILL],
  ])('%s', (_, dish, ...more) => {
    expect(found(dish, ...more)).not.toEqual([]);
  });
});

describe('is usual', () => {
  test.each<[string, Dish, ...string[]]>([
    ['mayonnaise in the fridge', MAYO, 'Scrape into a jar, cover and keep in the fridge for up to 4 days.'],
    ['at room temperature for an hour', MAYO, 'Let it stand at room temperature for 1 h before serving.'],
    ['by a note', MAYO, 'note Keeps in the fridge for 4 days.'],
    ['with oil kept elsewhere', MAYO, 'note The oil keeps in the cupboard for a year.'],
    ['a dressing', RANCH, 'Cover and keep refrigerated; eat within 5 days.'],
    ['yoghurt', YOGHURT, 'Put in the fridge for 4 h. Keep chilled and eat within 10 days.'],
    ['in the making', YOGHURT, 'Leave on the counter for another 4 h if it is not set.'],
    ['pastry cream', ECLAIRS, 'note They may wait in the fridge for up to 1 day.'],
    ['frozen', ECLAIRS, 'note Freezes well for up to 3 months.'],
    ['not to be kept', ECLAIRS, 'note Do not keep them at room temperature for more than 2 hours.'],
    [
      'pork',
      PORK,
      'Pat the pork dry and rub the sugar mix all over. Leave it, covered, in the fridge overnight.',
      ROAST,
    ],
    ['to take the chill off', PORK, 'Rub the pork with the sugar mix and leave on the counter for 1 h.', ROAST],
    ['a pickle', PICKLE, 'Cover and put in the fridge. It keeps for 3 weeks.'],
    ['on a shelf', PICKLE, 'Seal and store in a cool, dark cupboard for up to a year.'],
    ['salsa', SALSA, 'Process in a boiling-water canner for 15 min.', 'Store in a cool, dark place for up to 1 year.'],
    ['a marinade', CHICKEN, 'Lift the chicken out and throw away the marinade.', GRILL],
    [
      'boiled',
      CHICKEN,
      'Lift the chicken out and keep the marinade.',
      GRILL,
      'Boil the marinade for 5 min and serve it as a sauce.',
    ],
    [
      'basted with',
      CHICKEN,
      'Lift the chicken out and keep the marinade.',
      'Grill the chicken for 25 min, until it reads 75 C, basting with the marinade for the first 10 min.',
    ],
    ['sweets', BRITTLE, 'Keep in an airtight tin at room temperature for up to 2 weeks.'],
    ['by a note', BRITTLE, 'note Keeps in a tin on the counter for a month.'],
    ['cake', CAKE, 'note Keeps in a tin at room temperature for 5 days.'],
    ['a syrup', SYRUP, 'Cool, seal and keep in the fridge for up to 3 weeks.'],
    ['spirits', GIN, 'It keeps in a cool cupboard for 3 years.'],
  ])('%s', (_, dish, ...more) => {
    expect(found(dish, ...more)).toEqual([]);
  });
});

/** Raw food in the cold: FoodSafety.gov, cold food storage chart; salt, acid, yeast and air keep some of it for longer. */
describe('raw, before it is cooked', () => {
  const dish = (list: readonly string[], ...steps: readonly string[]): Dish => ({ list, steps });
  const BURGERS = ['500 g minced beef', '1 onion, chopped', '5 g salt'];
  const BATTER = ['250 g plain flour', '2 large eggs', '400 ml whole milk', '50 g butter, melted'];
  const JERK = ['800 g chicken thighs', '4 spring onions, chopped', '30 ml rapeseed oil', '8 g salt'];
  const POT_ROAST = ['1.5 kg beef brisket', '2 onions, sliced', '500 ml red wine vinegar, 5 % acidity', '500 ml water'];
  const HAM = ['2 kg pork leg', '2 l water', '120 g salt', '6 g pink curing salt'];
  const PANETTONE = [
    '500 g bread flour',
    '4 large eggs',
    '150 g butter',
    '5 g instant yeast',
    '150 g milk',
    '9 g salt',
  ];
  test.each<[string, Dish, number]>([
    [
      'mince',
      dish(BURGERS, 'Mix the beef, onion and salt and keep in the fridge for 9 days.', 'Fry until it reads 72 C.'),
      1,
    ],
    [
      'chicken',
      dish(JERK, 'Rub the chicken with the rest and marinate in the fridge for 8 days.', 'Grill until it reads 75 C.'),
      1,
    ],
    [
      'a batter',
      dish(BATTER, 'Whisk the flour, eggs, milk and butter. Chill for 10 days.', 'Fry in a pan until golden.'),
      1,
    ],
    [
      'mince for a day',
      dish(BURGERS, 'Mix the beef, onion and salt and keep in the fridge for 1 day.', 'Fry until it reads 72 C.'),
      0,
    ],
    [
      'chicken for two',
      dish(JERK, 'Rub the chicken with the rest and marinate in the fridge for 2 days.', 'Grill until it reads 75 C.'),
      0,
    ],
    [
      'a batter for a night',
      dish(BATTER, 'Whisk the flour, eggs, milk and butter. Chill overnight.', 'Fry in a pan until golden.'),
      0,
    ],
    [
      'in vinegar',
      dish(
        POT_ROAST,
        'Cover the brisket and onions with the vinegar and water and chill for 10 days.',
        'Simmer for 3 h.',
      ),
      0,
    ],
    [
      'in brine',
      dish(
        HAM,
        'Dissolve the salts in the water, add the pork and keep in the fridge for 10 days.',
        'Simmer for 3 h until it reads 70 C.',
      ),
      0,
    ],
    [
      'aged',
      dish(
        ['1.5 kg rib of beef'],
        'Leave the beef on a rack in the fridge for 21 days.',
        'Roast at 180 C for 2 h until it reads 63 C.',
      ),
      0,
    ],
    ['a dough', dish(PANETTONE, 'Knead all to a dough and chill for 8 days.', 'Bake at 180 C for 40 min.'), 0],
  ])('%s', (_, each, count) => {
    expect(found(each).filter((code) => code === 'kept-too-long')).toHaveLength(count);
  });
});

describe('sour, with egg in it', () => {
  const CURD: Dish = {
    list: ['4 lemons, zest and juice', '200 g caster sugar', '100 g butter', '3 large eggs'],
    steps: [
      'Stir the lemon juice, sugar, butter and eggs over simmering water until it reads 80 C.',
      'Pour into jars, seal and cool.',
    ],
  };
  test.each([
    ['Keep in the fridge for up to 12 months.', 1],
    ['Chill, and eat within half a year.', 1],
    ['Keep in the fridge for up to 3 weeks.', 0],
    ['Keep in the freezer for up to 12 months.', 0],
  ])('%s', (step, count) => {
    expect(found(CURD, step)).toHaveLength(count);
  });
});

describe('a note of what a part is called, of what goes in, of an oven that is out', () => {
  const CREPES: Dish = {
    head: 'recipe Thin ones as pancake batter',
    list: ['250 g plain flour', '4 large eggs', '500 ml whole milk', '50 g butter, melted'],
    steps: ['Whisk the flour, eggs, milk and butter and rest for 30 min.', 'Fry in a hot pan for 1 min a side.'],
  };
  const PUDDING: Dish = {
    list: ['100 g pudding rice', '50 g sugar', '1 l whole milk'],
    steps: ['Bake the rice, sugar and milk at 150 C for 2 h, until set.', 'Serve hot.'],
  };
  test.each<[Dish, string, number]>([
    [CREPES, 'note The batter keeps for 10 days in the fridge.', 1],
    [CREPES, 'note The pancake batter can be kept in the fridge for 2 weeks.', 1],
    [CREPES, 'note The batter keeps for 24 h in the fridge.', 0],
    [CREPES, 'note The flour keeps for a year in the fridge.', 0],
    [PUDDING, 'note Cool what is left and leave in the oven overnight.', 1],
    [PUDDING, 'note Cool what is left and keep in the fridge overnight.', 0],
    [PUDDING, 'note With the jam in, keep on the counter and eat within 3 days.', 1],
  ])('%#: %s', (dish, note, count) => {
    expect(found(dish, note)).toHaveLength(count);
  });
});

describe('a note that names what the title does, or what is left', () => {
  const roast: Dish = {
    head: 'recipe Roast chicken with lemon',
    list: ['1 whole chicken, 1.6 kg', '1 lemon'],
    steps: ['Roast the chicken with the lemon at 200 C for 80 min until the thigh reads 75 C.'],
  };
  test.each([
    ['note Cold leftovers keep in the fridge for 2 weeks.', 1],
    ['note The cooked chicken keeps in the fridge for 2 weeks.', 1],
    ['note The stock keeps in the fridge for 2 weeks.', 0],
    ['note Leftovers keep in the fridge for 3 days.', 0],
  ])('%s', (note, count) => {
    expect(found(roast, note)).toHaveLength(count);
  });
});
