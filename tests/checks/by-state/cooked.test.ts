/**
 * Whether food is cooked, judged by the state it is in at the end: each line is a recipe in few words, and what must be found in it. The
 * recipes are invented; which is which is FDA Food Code 2022, 3-401.11 to 3-401.14, 3-402.11 and 3-403.11, USDA FSIS Appendix A and, of eggs
 * in their shells, Brackett et al. 2001.
 */
import { describe, expect, test } from 'vitest';
import { cookingFound } from '../../support/cooking.ts';

type Line = readonly [title: string, lines: readonly string[], want: readonly string[]];
const each = (table: readonly Line[]): void => {
  test.each(table)('%s', (_, lines, want) => {
    expect(cookingFound(...lines)).toEqual(want);
  });
};

const FIGURE = ['undercooked error'];
const NOTHING_TELLS = ['no-safe-temperature error'];
const LOOKS = ['no-safe-temperature info'];
const QUIET: readonly string[] = [];

describe('which limit', () => {
  each([
    [
      'mince in a microwave oven',
      ['500 g minced beef', 'Shape in balls and microwave for 8 min until they register 68 C.'],
      FIGURE,
    ],
    [
      'the same, hotter',
      ['500 g minced beef', 'Shape in balls and microwave for 8 min until they register 75 C.'],
      QUIET,
    ],
    [
      'poultry put there',
      ['600 g chicken thighs', 'Cook the thighs in the microwave for 12 min until they read 70 C.'],
      FIGURE,
    ],
    [
      'stuffed pork',
      [
        '1 kg pork loin',
        '100 g breadcrumbs',
        'Stuff the pork with the breadcrumbs.',
        'Roast at 180 C until the centre reads 65 C.',
      ],
      FIGURE,
    ],
    ['plain pork', ['1 kg pork loin', 'Roast the pork at 180 C until the centre reads 65 C.'], QUIET],
    [
      'stuffed fish',
      [
        '1 kg sea bass, whole',
        '200 g breadcrumbs',
        '50 g butter',
        'Mix the breadcrumbs with the butter and stuff the bass.',
        'Bake at 200 C for 30 min until the centre reads 63 C.',
      ],
      FIGURE,
    ],
    [
      'injected pork',
      [
        '1.5 kg pork loin',
        '200 g brine',
        'Inject the pork with the brine.',
        'Roast at 180 C until the centre reads 63 C.',
      ],
      FIGURE,
    ],
    [
      'tenderised by its line',
      ['800 g beef steak, mechanically tenderised', 'Fry the steak until the centre reads 60 C.'],
      FIGURE,
    ],
    ['a ratite', ['800 g ostrich', 'Fry the ostrich until the centre reads 60 C.'], FIGURE],
    [
      'wild boar at the figure of pork',
      ['800 g wild boar loin', 'Roast the boar at 180 C until the centre reads 65 C.'],
      FIGURE,
    ],
    ['wild boar', ['800 g wild boar loin', 'Roast the boar at 180 C until the centre reads 75 C.'], QUIET],
    [
      'game that a step minces',
      ['800 g venison', 'Mince the venison, shape in four and fry for 5 min a side.'],
      NOTHING_TELLS,
    ],
    ['raw gammon', ['1 kg gammon joint', 'Slice the gammon thinly and serve.'], NOTHING_TELLS],
    [
      'raw crab',
      ['300 g raw crab meat', '1 lime', 'Dress the crab meat with the juice of the lime and serve.'],
      NOTHING_TELLS,
    ],
    ['oysters', ['12 oysters, shucked', '1 lemon', 'Squeeze the lemon over the oysters and serve.'], NOTHING_TELLS],
    [
      'mussels that steam',
      ['1 kg mussels', '200 ml white wine', 'Boil the wine, add the mussels and steam for 4 min until they open.'],
      QUIET,
    ],
  ]);
});

describe('for how long', () => {
  each([
    [
      '54.4 °C for 112 min',
      ['1.8 kg beef', 'Roast the beef at 170 C until the centre reads 54.4 C, and hold for 112 min.'],
      QUIET,
    ],
    [
      'for less',
      ['1.8 kg beef', 'Roast the beef at 170 C until the centre reads 54.4 C, and hold for 100 min.'],
      FIGURE,
    ],
    [
      'a rest is no hold',
      ['1.8 kg beef', 'Roast the beef at 170 C until the centre reads 54.4 C, and rest for 112 min.'],
      FIGURE,
    ],
    [
      'poultry at 60 °C',
      ['1.5 kg chicken breast', 'Roast the chicken at 160 C until it reads 60 C and hold at 60 C for 40 min.'],
      QUIET,
    ],
    ['in a bath for hours', ['600 g chicken breast', 'Bag the chicken and cook in a 63 C bath for 2 h.'], QUIET],
    [
      'in a bath for minutes, which thickness decides',
      ['600 g chicken breast', 'Bag the chicken and cook in a 63 C bath for 20 min.'],
      LOOKS,
    ],
    [
      'in a bath that is too cool',
      ['600 g chicken breast', 'Bag the chicken and cook in a 55 C bath for 2 h.'],
      NOTHING_TELLS,
    ],
    [
      'a steak in its bath',
      ['800 g beef steak', 'Lower the steak into a water bath at 58 C for 3 h. Sear for 30 s a side.'],
      QUIET,
    ],
    [
      'in a bath that was said before it goes in',
      ['600 g chicken breast', 'Heat a water bath to 63 C.', 'Salt the chicken and seal it in a bag.', 'Cook for 2 h.'],
      QUIET,
    ],
    [
      'in a bath said with no verb',
      ['600 g chicken breast', 'Seal the chicken in a bag. Bath at 60 C before it goes in. Cook for 2 1/2 h.'],
      QUIET,
    ],
    [
      'in such a bath that is too cool',
      ['600 g chicken breast', 'Heat a water bath to 52 C.', 'Salt the chicken and seal it in a bag.', 'Cook for 2 h.'],
      NOTHING_TELLS,
    ],
    [
      'bear at a figure that is enough for beef',
      ['700 g bear loin', 'Roast the bear at 135 C until it reads 60 C inside.'],
      FIGURE,
    ],
    [
      'egg that a mixer beats on high',
      [
        '4 eggs',
        '100 g sugar',
        '400 g mascarpone',
        'With a mixer beat the eggs and sugar on high for 5 min.',
        'Fold in the mascarpone and chill for 4 h.',
      ],
      ['raw-egg error'],
    ],
    ['scrambled firm', ['4 eggs', 'Scramble the eggs firm and serve.'], QUIET],
    ['a joint in a lukewarm oven', ['2 kg lamb leg', 'Roast the lamb at 60 C for 2 h.'], NOTHING_TELLS],
    ['poultry in a cool oven', ['1 kg chicken thighs', 'Roast the thighs at 80 C for 3 h.'], NOTHING_TELLS],
    [
      'meat in a cool oven',
      ['2 kg pork shoulder', 'Roast the pork at 110 C for 6 h, until the centre reads 88 C.'],
      ['undercooked info'],
    ],
    ['in a smoker', ['2 kg pork shoulder', 'Put the pork in a smoker at 110 C until it reads 92 C.'], QUIET],
    [
      'rising as it rests',
      ['1.5 kg pork loin', 'Roast the pork at 200 C. Take it out at 60 C and let it rise to 64 C as it rests.'],
      QUIET,
    ],
    [
      'rising further than roasts do',
      ['1.5 kg chicken breast', 'Roast the chicken at 200 C. Take it out at 60 C and let it rise to 74 C as it rests.'],
      FIGURE,
    ],
    [
      'eggs in their shells at 57 °C',
      [
        '4 eggs',
        '200 ml oil',
        'Keep the eggs in their shells in a water bath at 57 C for 2 h and cool.',
        'Whisk the eggs with the oil and serve.',
      ],
      QUIET,
    ],
  ]);
});

describe('what is no cooking', () => {
  each([
    [
      'frozen for a week, of fish',
      [
        '600 g salmon fillet',
        '40 g salt',
        'Freeze the salmon at -20 C for 7 d.',
        'Thaw in the fridge, rub with the salt and chill for 1 d. Slice and serve.',
      ],
      QUIET,
    ],
    [
      'frozen for a day',
      [
        '600 g salmon fillet',
        '40 g salt',
        'Freeze the salmon at -20 C for 1 d.',
        'Thaw in the fridge, rub with the salt and chill for 1 d. Slice and serve.',
      ],
      NOTHING_TELLS,
    ],
    [
      'cold smoke',
      [
        '1 kg trout fillets',
        '40 g salt',
        'Rub the trout with the salt and chill for 12 h.',
        'Cold-smoke the trout for 8 h. Slice and serve.',
      ],
      NOTHING_TELLS,
    ],
    [
      'half done and kept',
      [
        '1 kg chicken thighs',
        'Brown the thighs for 3 min a side until half done and chill overnight.',
        'The next day roast the thighs at 200 C until they read 75 C.',
      ],
      ['undercooked warning'],
    ],
    [
      'mince that is seared and kept',
      [
        '600 g minced beef',
        'Shape the beef and sear for 1 min a side. Refrigerate until tomorrow.',
        'Bake at 200 C until the middle reads 72 C.',
      ],
      ['undercooked warning'],
    ],
    [
      'meat that is seared and kept',
      [
        '1 kg pork loin',
        'Sear the pork on all sides and chill overnight.',
        'Roast at 200 C until the middle reads 64 C.',
      ],
      QUIET,
    ],
    [
      'no stove',
      [
        '6 eggs',
        '200 g sugar',
        '500 g mascarpone',
        'Beat the yolks with the sugar and fold in the mascarpone. No stove needed.',
      ],
      ['raw-egg error'],
    ],
    [
      'warmed as new milk, of what was cooked',
      [
        '500 g cold roast turkey, diced',
        '300 ml gravy',
        'Stir the turkey into the gravy over a low flame and stop as soon as it is as warm as new milk.',
      ],
      ['undercooked warning'],
    ],
    [
      'a cure',
      [
        '1 kg pork shoulder, minced',
        '28 g salt',
        '3 g curing salt',
        'Mix the pork with the salts, stuff into casings and hang at 12 C for 6 weeks. Slice and eat.',
      ],
      QUIET,
    ],
  ]);
});

describe('what is seen', () => {
  each([
    [
      'pink at the bone',
      ['1 kg chicken thighs', 'Grill the thighs for 20 min until still pink at the bone.'],
      NOTHING_TELLS,
    ],
    [
      'rosy juices',
      ['1 kg chicken', 'Roast the chicken at 200 C for 50 min until the juices run rosy.'],
      NOTHING_TELLS,
    ],
    ['clear juices', ['1 kg chicken', 'Roast the chicken at 200 C for 50 min until the juices run clear.'], LOOKS],
    [
      'burgers served rare',
      ['600 g minced beef', 'Shape in four and grill for 2 min a side. Serve rare.'],
      NOTHING_TELLS,
    ],
    ['a steak served rare', ['600 g beef steak', 'Grill for 2 min a side. Serve rare.'], QUIET],
    ['no longer pink', ['600 g minced beef', 'Fry the beef until no longer pink.'], LOOKS],
    [
      'the colour of the crust after a minute',
      [
        '600 g pork sausagemeat',
        '150 g breadcrumbs',
        'Shape the sausagemeat, roll in the breadcrumbs and fry at 180 C for 1 min until golden.',
      ],
      ['no-safe-temperature warning'],
    ],
    [
      'only stiff outside',
      ['500 g chicken livers', 'Fry the livers in butter just until they stiffen outside.'],
      NOTHING_TELLS,
    ],
  ]);
});

describe('where the heat is said', () => {
  each([
    [
      'on a griddle',
      ['600 g minced beef', 'Shape the beef in four patties. Get a griddle smoking hot; in they go, 4 min each side.'],
      NOTHING_TELLS,
    ],
    [
      'on a griddle, and read',
      [
        '600 g minced beef',
        'Shape the beef in four. Five minutes a side on a hot griddle, until the middle reads 72 C.',
      ],
      QUIET,
    ],
    [
      'in the stock they poach in',
      [
        '500 g minced pork',
        '1 l stock',
        'Roll the pork in balls. Bring the stock to a simmer, slip in the balls and let them poach for 12 min.',
      ],
      QUIET,
    ],
    [
      'by another part',
      [
        'part case',
        '200 g plain flour',
        '100 g butter',
        '40 g water',
        'Rub the butter into the flour, add the water and roll out. Line a tin with it.',
        'part filling',
        '4 eggs',
        '300 ml cream',
        'Beat the eggs with the cream and pour into the case.',
        'part baking',
        'Bake at 160 C for 40 min until just set.',
      ],
      QUIET,
    ],
    [
      'by a sponge that is warmed first',
      [
        '4 eggs',
        '120 g sugar',
        '120 g plain flour',
        'Whisk the eggs and sugar over hot water to 45 C, then off the heat until thick. Fold in the flour.',
        'Bake at 180 C for 25 min.',
      ],
      QUIET,
    ],
    [
      'of what is scraped into a tin',
      [
        '4 eggs',
        '120 g sugar',
        '120 g plain flour',
        'Whisk the eggs and sugar until thick. Fold in the flour, scrape into a tin and bake for 25 min at 180 C.',
        'Serve cold.',
      ],
      QUIET,
    ],
    [
      'of a roux',
      [
        '40 g butter',
        '40 g plain flour',
        '500 ml milk',
        'Melt the butter, stir in the flour and milk and stir over the heat until thick. Serve.',
      ],
      QUIET,
    ],
    [
      'of yolks that go in hot',
      [
        '4 egg yolks',
        '500 ml milk',
        '60 g sugar',
        'Heat the milk with the sugar to 85 C. Whisk in the yolks while it is above 80 C.',
      ],
      QUIET,
    ],
    [
      'of a custard that coats too soon',
      [
        '4 egg yolks',
        '500 ml milk',
        '60 g sugar',
        'Whisk the yolks with the sugar and milk and stir over a low heat until it coats the spoon at 60 C.',
      ],
      FIGURE,
    ],
    ['of a steak in oil', ['600 g beef steak', '30 ml oil', 'Sear the steak in the oil to 51 C.'], FIGURE],
    [
      'of eggs slipped into water',
      ['2 eggs', 'Slip the eggs into simmering water for 3 min. Lift out and serve.'],
      QUIET,
    ],
    [
      'of eggs slipped into cold water',
      ['2 eggs', '100 ml cream', 'Slip the eggs into cold water for 3 min. Whisk with the cream and serve.'],
      ['raw-egg error'],
    ],
    [
      'of egg trickled into soup',
      ['1 l chicken stock', '2 eggs', 'Boil the stock, take off the heat and trickle in the eggs, stirring.'],
      ['raw-egg info'],
    ],
    [
      'of what is tossed in a hot pan',
      ['400 g pork, diced', '20 ml oil', 'Toss the pork in a hot pan with the oil for 6 min.'],
      QUIET,
    ],
    [
      'of an omelette',
      [
        '3 eggs',
        '20 g butter',
        'Beat the eggs. Melt the butter in a hot pan, pour in the eggs and cook for 2 min until just set.',
      ],
      QUIET,
    ],
    [
      'of a slow cooker',
      ['1 kg chicken thighs', '400 ml stock', 'Put the thighs and stock in the slow cooker and cook on low for 6 h.'],
      QUIET,
    ],
    [
      'of a slow cooker, from frozen',
      [
        '1 kg chicken breast, frozen',
        '500 ml salsa',
        'Put the frozen chicken in the slow cooker with the salsa and cook on low for 6 h.',
      ],
      NOTHING_TELLS,
    ],
    [
      'of what was at 49 °C for two days',
      [
        '3 kg beef short rib',
        '30 g salt',
        'Salt the rib and seal in a bag. Set the circulator to 49 C and leave two days.',
        'Open, pat dry, blowtorch to colour and slice.',
      ],
      NOTHING_TELLS,
    ],
    [
      'of what was cooked, and later to 50 °C',
      [
        '1 kg minced beef',
        '500 g canned tomatoes',
        'Brown the beef, add the tomatoes and simmer for 1 h. Chill overnight.',
        'Heat in the oven at 110 C until the core reads 50 C and serve.',
      ],
      ['undercooked warning'],
    ],
    [
      'of flour that is told of in passing',
      [
        '250 g butter',
        '300 g sugar',
        '350 g plain flour',
        '40 ml milk',
        'Cream the butter and sugar, beat in the milk, then the flour a scoop at a time.',
        'Freeze and chop into nuggets. Serve.',
      ],
      ['raw-flour error'],
    ],
    [
      'of an egg that is coddled for a minute',
      [
        '2 eggs',
        '30 ml lemon juice',
        '100 ml oil',
        'Lower the eggs into boiling water for 1 min. Crack the eggs into a bowl and beat with the lemon juice and the oil.',
      ],
      ['raw-egg warning'],
    ],
    [
      'of flour in the icing of what was baked',
      [
        'part cakes',
        '150 g plain flour',
        '150 g sugar',
        '2 eggs',
        '100 g butter',
        'Beat everything together and bake at 180 C for 20 min. Cool.',
        'part icing',
        '200 g butter',
        '150 g sugar',
        '30 g plain flour',
        '30 ml milk',
        'Cream the butter and sugar, then whisk in the flour and milk.',
        'Spread over the cakes.',
      ],
      ['raw-flour warning'],
    ],
    [
      'of a bird that no step names',
      [
        '5 kg turkey',
        '40 g butter',
        '10 g salt',
        'Leave the cavity empty. Butter, salt and roast at 165 C until breast and thigh read 75 C.',
      ],
      QUIET,
    ],
    [
      'of what is dropped in',
      [
        '600 g raw prawns',
        '150 ml lime juice',
        'Drop the prawns into boiling water and cook until opaque. Drain and chill.',
        'Stir in the prawns with the lime juice and serve cold.',
      ],
      QUIET,
    ],
    ['of hard-boiled eggs', ['6 eggs', 'Hard-boil the eggs and peel.'], QUIET],
    [
      'before anything is named',
      [
        '6 trout, gutted',
        '3 l water',
        '250 g salt',
        'Brine in the fridge for 8 h and rinse.',
        'Smoke until the thickest part shows 68 C. Cool in the fridge. The trout keep for five days there.',
      ],
      QUIET,
    ],
  ]);
});

test('what is seen after two minutes or so is the crust; after ten it may be done', () => {
  const patties = (min: number) =>
    cookingFound('600 g pork sausagemeat', `Shape the sausagemeat and fry for ${min} min until golden.`);
  expect(patties(2)).toEqual(['no-safe-temperature warning']);
  expect(patties(10)).toEqual(LOOKS);
});

describe('heat that stops at a figure where nothing cooks', () => {
  each([
    [
      'a foam of yolks over water',
      [
        '5 egg yolks',
        '60 ml marsala',
        'Whisk the yolks with the marsala over simmering water until thick and it reads 35 C.',
      ],
      FIGURE,
    ],
    [
      'a custard of the stove',
      [
        '5 egg yolks',
        '600 ml milk',
        'Whisk the yolks with the milk, cook over low heat until the custard reads 32 C and chill.',
      ],
      FIGURE,
    ],
    ['a bird', ['1.5 kg chicken', 'Roast the chicken at 200 C until the thigh reads 34 C.'], FIGURE],
    ['fish in water', ['500 g salmon fillet', 'Poach the salmon in water until the middle reads 30 C.'], FIGURE],
    [
      'eggs made lukewarm, and baked',
      [
        '4 eggs',
        '120 g sugar',
        '120 g flour',
        'Whisk the eggs and sugar over simmering water until the mixture reads 37 C. Whip until cold. Fold in the flour.',
        'Bake at 180 C for 25 min until springy.',
      ],
      QUIET,
    ],
    [
      'milk made lukewarm for a batter',
      [
        '300 ml milk',
        '2 eggs',
        '250 g flour',
        'Warm the milk to 35 C. Beat in the eggs and flour.',
        'Fry in a hot pan for 4 min until gold.',
      ],
      QUIET,
    ],
    [
      'a dough as it is mixed',
      ['500 g flour', '4 eggs', 'Knead until the dough reads 26 C. Bake at 180 C for 40 min until deep gold.'],
      QUIET,
    ],
  ]);
});
