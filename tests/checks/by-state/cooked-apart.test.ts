/**
 * Whether what is told beside the cooking counts for the food: a pan rinsed with wine that the meat is out of, flesh left rosy, cooks' short
 * hand without verbs. Each line is a recipe in few words, invented; which is which is FDA Food Code 2022, 3-401.11, and 3-401.14.
 */
import { describe, expect, test } from 'vitest';
import { cookingFound } from '../../support/cooking.ts';

type Line = readonly [title: string, lines: readonly string[]];

/** Each of these must be found, an error or a warning; each of the others nothing but, at most, information. */
const dangers = (table: readonly Line[]): void => {
  test.each(table)('%s', (_, lines) => {
    expect(cookingFound(...lines).filter((found) => !found.endsWith(' info'))).not.toEqual([]);
  });
};
const safe = (table: readonly Line[]): void => {
  test.each(table)('%s', (_, lines) => {
    expect(cookingFound(...lines).filter((found) => !found.endsWith(' info'))).toEqual([]);
  });
};

const DUCK = ['4 duck breasts', '150 ml red wine'];

const MINCE = ['500 g minced pork', '40 g breadcrumbs', '8 g fine salt'];

describe('a piece that is fried to taste it', () => {
  dangers([
    [
      'the rest is served',
      [
        ...MINCE,
        'Mix the pork, breadcrumbs and salt. Fry a small piece through and taste. Shape into balls and serve.',
      ],
    ],
    [
      'the rest is warmed',
      [
        ...MINCE,
        'Mix the pork, breadcrumbs and salt. Fry one patty, taste it and correct. Spread the rest on toast and serve.',
      ],
    ],
  ]);
  safe([
    [
      'the rest is cooked',
      [
        ...MINCE,
        'Mix the pork, breadcrumbs and salt. Fry a small piece and taste it. Shape and fry until 72 C inside.',
      ],
    ],
    [
      'all are fried, and one is tasted',
      [
        ...MINCE,
        'Mix the pork, breadcrumbs and salt. Shape into patties, fry the patties until 72 C inside, taste and serve.',
      ],
    ],
  ]);
});

describe('a pan that the meat is out of', () => {
  dangers([
    [
      'rinsed out',
      [
        ...DUCK,
        'Fry the duck until the probe says 55 C. Lift onto a board, rinse the pan with the wine, boil it down and pour over.',
      ],
    ],
    [
      'deglazed',
      [
        ...DUCK,
        'Roast the duck to 57 C in the middle and move it to a warm plate.',
        'Deglaze the pan with the wine and simmer until syrupy. Spoon over the duck.',
      ],
    ],
    [
      'added to',
      [
        ...DUCK,
        'Sear the duck until it reads 54 C, then rest it on a rack.',
        'Add the wine to the skillet and boil for 3 minutes.',
        'Pour over the duck and serve.',
      ],
    ],
    [
      'boiled to a glaze',
      [
        ...DUCK,
        'Pan-fry the duck to 56 C. Rest for 5 minutes under foil.',
        'Boil the wine in the frying pan to a glaze and serve with the duck.',
      ],
    ],
    [
      'swilled',
      [
        ...DUCK,
        'Brown the duck, finish it in the oven to 58 C and set it on a board.',
        'Swill the pan with the wine, bubble it away by half, strain over the duck.',
      ],
    ],
  ]);
  safe([
    [
      'that reads enough',
      [
        ...DUCK,
        'Fry the duck until the probe says 75 C. Lift onto a board, rinse the pan with the wine, boil it down and pour over.',
      ],
    ],
    [
      'to which it goes back',
      [
        ...DUCK,
        'Brown the duck on both sides and lift onto a plate.',
        'Deglaze the pan with the wine, return the duck and simmer, covered, for 25 minutes.',
      ],
    ],
    ['it stays in', [...DUCK, 'Brown the duck. Add the wine to the pan and braise for 40 minutes.']],
    [
      'before it cooks on',
      [
        ...DUCK,
        'Sear the duck and set on a rack. Rinse the pan with the wine and keep that.',
        'Roast the duck at 200 C until it reads 74 C and pour the wine over.',
      ],
    ],
    [
      'poured over and baked to a figure',
      [...DUCK, 'Brown the duck and move to a dish. Boil the wine in the pan, pour over, and bake at 180 C to 76 C.'],
    ],
  ]);
});

describe('left less than done', () => {
  const HENS = ['8 chicken thighs', '20 g butter'];
  dangers([
    [
      'by what should be seen',
      [
        ...HENS,
        'Simmer the thighs for 5 minutes. The meat should still be pink by the bone.',
        'Crisp the skin in the butter.',
      ],
    ],
    ['told in passing', [...HENS, 'Fry the thighs in the butter, 4 minutes a side, so that they keep a rosy heart.']],
    ['as it runs', [...HENS, 'Roast the thighs at 230 C for 15 minutes. The juices will run rosy, and so they ought.']],
    ['as it is left', [...HENS, 'Grill the thighs over hot coals for 6 minutes and leave the centre pink.']],
    ['as they want to be', [...HENS, 'Steam the thighs; they want to be red inside.', 'Serve with the butter.']],
  ]);
  safe([
    ['what must not be', [...HENS, 'Simmer the thighs for 30 minutes. The meat must not be pink by the bone.']],
    ['no longer', [...HENS, 'Stew the thighs in the butter for 40 minutes; no pink should be left.']],
    [
      'with a figure all the same',
      [...HENS, 'Roast the thighs at 200 C until they read 78 C. The bone may still be pink.'],
    ],
    [
      'of onions beside it',
      [...HENS, '1 red onion', 'Poach the thighs for 30 minutes and serve with the onion, which should be raw.'],
    ],
    [
      'before it goes on',
      [...HENS, 'Brown the thighs in the butter; they will be raw in the middle yet. Cover and braise for 45 minutes.'],
    ],
  ]);
});

describe('cooks that write no verb', () => {
  dangers([
    [
      'flour in',
      [
        '200 g butter',
        '200 g sugar',
        '250 g plain flour',
        '50 ml milk',
        'Cream the butter and sugar. Flour in, milk in, mix.',
        'Roll in balls and serve.',
      ],
    ],
    [
      'whisked where it stands',
      ['3 eggs', '200 ml oil', '10 ml vinegar', 'Eggs, vinegar in the jug, oil in a thread. Serve cold.'],
    ],
    [
      'yolks in at the end',
      [
        '4 egg yolks',
        '200 ml cream',
        '80 g sugar',
        'Whip the cream with the sugar. Yolks in at the last minute. Chill in glasses.',
      ],
    ],
    [
      'mince over',
      ['400 g minced beef', '40 g onion', 'Mince, onion in a bowl, shape it in rounds.', 'Fry for a minute each side.'],
    ],
    ['a time and a figure', ['1.5 kg chicken', '10 g salt', '5 g thyme', 'Salt, thyme, roast 180 C to core 62 C.']],
  ]);
  safe([
    [
      'flour in, and baked',
      [
        '200 g butter',
        '200 g sugar',
        '250 g plain flour',
        '50 ml milk',
        'Cream the butter and sugar. Flour in, milk in, mix.',
        'Bake at 180 C for 15 minutes.',
      ],
    ],
    [
      'bones and a simmer',
      ['10 kg chicken backs', '12 l water', 'Cover bones, bring up, skim, 4 hours at a bare simmer.', 'Strain.'],
    ],
    ['a time at the boil', ['2 kg chicken legs', '3 l water', 'Legs in, water in, 40 minutes at a gentle boil.']],
    [
      'a figure at the core',
      ['3 kg pork loin', '30 g salt', '10 g fennel seed', 'Salt, fennel, roast 180 C to core 75 C.'],
    ],
    [
      'what it has stayed at',
      [
        '500 g chicken livers',
        '4 eggs',
        '400 g butter',
        'Blend it all, fill a terrine, and bake at 120 C until the core reads 72 C and has stayed there 2 minutes.',
      ],
    ],
  ]);
});

describe('half done, put away, and done later', () => {
  const WINGS = ['2 kg chicken wings', '20 g salt'];
  dangers([
    [
      'some minutes at a figure',
      [
        ...WINGS,
        'Salt the wings and give them 12 minutes at 180 C. Cool and put in the fridge.',
        'On Saturday grill over coals to 75 C at the bone.',
      ],
    ],
    [
      'told to be raw yet',
      [
        ...WINGS,
        'Drop the wings just till the skin tightens. The bones will still be raw.',
        'Cool, wrap, into the walk-in.',
        'Fry to order, to 75 C at the bone.',
      ],
    ],
    [
      'boiled for minutes',
      [
        ...WINGS,
        'Parboil the wings for 6 minutes, drain, and keep in the fridge overnight.',
        'Grill until they read 76 C.',
      ],
    ],
    [
      'browned',
      [
        '1 kg minced lamb',
        '30 g oil',
        'Shape the lamb in patties and brown in the oil.',
        'Refrigerate till the party, then bake to 72 C.',
      ],
    ],
    [
      'left pink',
      [
        '1 kg minced pork',
        'Shape the pork in balls and fry for 5 minutes; they should be pink inside.',
        'Chill overnight.',
        'Simmer in tomato sauce to order until the centre reads 74 C.',
      ],
    ],
  ]);
  safe([
    ['done at once', [...WINGS, 'Salt the wings and give them 12 minutes at 180 C, then grill to 75 C at the bone.']],
    [
      'to a figure first',
      [
        ...WINGS,
        'Bake the wings at 180 C to 75 C. Cool and put in the fridge.',
        'On Saturday grill over coals to 75 C at the bone.',
      ],
    ],
    [
      'scalded',
      [
        '1 duck',
        '20 g salt',
        'Scald the duck in boiling water for 1 minute, dry, and keep in the fridge overnight.',
        'Roast at 180 C until the thigh reads 76 C.',
      ],
    ],
    [
      'a joint of beef',
      [
        '1.5 kg beef fillet',
        '500 g puff pastry',
        'Sear the fillet all over and chill.',
        'Wrap in the pastry and bake at 200 C to 63 C in the middle.',
      ],
    ],
    [
      'chilled raw',
      [...WINGS, 'Salt the wings and put in the fridge.', 'On Saturday grill over coals to 75 C at the bone.'],
    ],
  ]);
});

describe('whole beef, rare on purpose', () => {
  const of = (food: string, step: string) => cookingFound(food, step);
  const ASKED = ['undercooked info'];
  test.each(['13 minutes per 500 g at 170 C for medium-rare, 52 C', 'Roast at 170 C to a rosy 54 C for medium-rare'])(
    '%s',
    (how) => {
      expect(of('2 kg beef', how.startsWith('Roast') ? how : `Roast for ${how}.`)).toEqual(ASKED);
    },
  );
  test.each(['Grill the steak rare, to 49 C in the middle.', 'Grill over high heat for medium-rare, 130 F.'])(
    '%s',
    (how) => {
      expect(of('600 g flank steak', how)).toEqual(ASKED);
    },
  );
  test.each([
    ['600 g minced beef', 'Shape in patties and grill for medium-rare, 130 F.'],
    ['1 kg wild boar', 'Roast the boar rare, to 52 C in the middle.'],
    ['800 g duck breasts', 'Fry the duck for medium-rare, 54 C.'],
    ['800 g pork loin', 'Roast the pork to 57 C.'],
    ['800 g beef fillet, needled', 'Roast the fillet for medium-rare, 54 C.'],
    ['2 kg beef', 'Roast the beef to 52 C.'],
  ])('but not of %s', (food, how) => {
    expect(['undercooked error', 'undercooked warning']).toContain(of(food, how)[0]);
  });
  test('what was never needled is whole', () => {
    expect(of('800 g beef fillet, never needled or tenderised', 'Roast the fillet to 63 C in the middle.')).toEqual([]);
  });
});

describe('a later part with no meat of its own', () => {
  dangers([
    [
      'cooks what was made ready, too little',
      [
        '800 g chicken thighs',
        '100 ml yoghurt',
        'Marinate the thighs in the yoghurt in the fridge.',
        'part Fire',
        '1 lemon',
        'Grill until 62 C inside.',
        'Squeeze the lemon over.',
      ],
    ],
  ]);
  safe([
    [
      'cooks what was made ready',
      [
        '800 g chicken thighs',
        '100 ml yoghurt',
        'Marinate the thighs in the yoghurt in the fridge.',
        'part Fire',
        '1 lemon',
        'Grill until 75 C inside.',
        'Squeeze the lemon over.',
      ],
    ],
  ]);
});

test('what is seen in the pan as it is broken up is a sign', () => {
  expect(cookingFound('400 g minced pork', 'Put the pork in a hot wok and break it up until no red is left.')).toEqual([
    'no-safe-temperature info',
  ]);
});

describe('mince tasted before it is cooked', () => {
  const PORK = ['1 kg minced pork', '18 g salt', '5 g pepper'];
  const FRY = 'Shape and fry until the middle reads 72 C.';
  dangers([
    ['off the spoon', [...PORK, 'Work the salt and pepper into the pork. Taste a little off the spoon.', FRY]],
    ['to see', [...PORK, 'Mix it all by hand, taste, and put in more pepper.', FRY]],
    ['by the children', [...PORK, 'Mix it all and let the children each have a lick from the bowl.', FRY]],
    [
      'in a sausage',
      [
        ...PORK,
        'Knead the pork with the salt and pepper till it is sticky; taste it now, before it is stuffed.',
        'Poach until it reads 72 C.',
      ],
    ],
    ['it', [...PORK, 'Stir the salt and pepper through the pork, then taste it for salt.', FRY]],
  ]);
  safe([
    ['fried first', [...PORK, 'Work in the salt and pepper. Fry a teaspoonful and taste that.', FRY]],
    ['a fried spoonful', [...PORK, 'Work in the salt and pepper and taste a fried spoonful.', FRY]],
    ['never', [...PORK, 'Work in the salt and pepper. Do not taste it raw.', FRY]],
    ['a sauce', [...PORK, '200 ml passata', 'Season the pork. Taste the sauce.', FRY]],
    ['at the end', [...PORK, 'Work in the salt and pepper.', FRY, 'Taste and serve.']],
    [
      'once it has simmered',
      [
        '500 g minced beef',
        '400 g tinned tomatoes',
        'Simmer the beef in the tomatoes for 40 minutes, taste, and add salt.',
      ],
    ],
  ]);
});

describe('what was cooked, only warmed', () => {
  const CURRY = '600 g leftover roast chicken';
  dangers([
    [
      'to blood heat',
      ['200 g leftover roast chicken', 'Warm the chicken to blood heat in a cup of hot water and feed.'],
    ],
    ['till it is tepid', [CURRY, 'Reheat the chicken until tepid and serve.']],
    ['not to be blown on', [CURRY, 'Warm the chicken till it can be eaten without blowing.']],
    ['to a figure', [CURRY, 'Heat the chicken to 50 C.']],
  ]);
  safe([
    ['to a boil', [CURRY, 'Bring the chicken to a boil and simmer for 5 minutes.']],
    ['to a figure', [CURRY, 'Heat the chicken to 75 C.']],
    ['milk', ['500 ml milk', '10 g yeast', 'Warm the milk to blood heat and stir in the yeast.']],
    ['piping hot', [CURRY, 'Reheat the chicken until piping hot.']],
  ]);
});

describe('a filling that is read by itself', () => {
  const BIRD = ['5 kg turkey', '500 g sausage meat', 'Pack the sausage meat into the turkey.'];
  dangers([
    ['beside the bird', [...BIRD, 'Roast at 180 C until the thigh reaches 76 C, while the sausage meat reads 58 C.']],
    ['after it', [...BIRD, 'Roast at 180 C until the thigh reaches 76 C.', 'The sausage meat should read 60 C.']],
  ]);
  safe([
    ['as hot', [...BIRD, 'Roast at 180 C until the thigh reaches 76 C, and the sausage meat reads 75 C.']],
    ['both', [...BIRD, 'Roast at 180 C until both the thigh and the sausage meat read 75 C.']],
  ]);
});

test('a meringue that dries in the oven is heated', () => {
  expect(
    cookingFound(
      '4 egg whites',
      '220 g sugar',
      'Beat the whites stiff with the sugar and dry out in the oven at 90 C for two hours.',
    ),
  ).toEqual([]);
});

describe('heat that no verb of cooking says', () => {
  dangers([
    [
      'fish in a brine that is cold again',
      [
        '800 g raw prawns',
        '500 ml soy sauce',
        'Boil the soy sauce and leave until quite cold.',
        'Put the prawns in and keep in the fridge for 2 days.',
      ],
    ],
    [
      'legs kept lukewarm in fat',
      ['4 duck legs', '1 kg duck fat', 'Sink the legs in the fat and keep at 50 C for five hours.'],
    ],
    [
      'a crust too cool',
      [
        '4 turkey escalopes',
        '2 eggs',
        '100 g breadcrumbs',
        'Egg, crumb, and fry at 170 C, four minutes a side, to 60 C in the middle.',
      ],
    ],
  ]);
  safe([
    [
      'fish slid into a simmering sauce',
      [
        '600 g cod fillet',
        '500 ml passata',
        'Simmer the passata, slide in the cod, and ten minutes later it flakes. Serve.',
      ],
    ],
    [
      'legs kept hot in fat',
      [
        '4 duck legs',
        '1 kg duck fat',
        'Sink the legs in the fat and keep at 90 C for five hours, until a skewer slides through.',
      ],
    ],
    [
      'what is crumbed, and fried to a figure',
      [
        '4 turkey escalopes',
        '2 eggs',
        '100 g breadcrumbs',
        'Egg, crumb, and fry at 170 C, four minutes a side, to 75 C in the middle.',
      ],
    ],
    [
      'eggs scrambled firm, with more to come',
      ['300 g cooked rice', '3 eggs', 'Scramble the eggs firm, rice in, toss till smoking.'],
    ],
  ]);
});

describe('a figure of what is made hot before food goes in', () => {
  const BREASTS = ['4 chicken breasts, at most 3 cm thick', '5 g salt', 'Season and bag in one layer.'];
  safe([
    ['a bath', [...BREASTS, 'Water bath at a full 60 C before they go in. 2 1/2 hours.']],
    ['with the hours behind', [...BREASTS, 'Water bath at 62 C before the bags go in. Two hours.']],
  ]);
  dangers([
    ['too short', [...BREASTS, 'Water bath at a full 60 C before they go in. 20 minutes.']],
    ['too cold', [...BREASTS, 'Water bath at 50 C before they go in. 2 hours.']],
  ]);
});

describe('what is dipped, with no verb, before the board is washed', () => {
  const NUGGETS = ['600 g chicken breast, in chunks', '100 g flour', '2 eggs', '150 g breadcrumbs'];
  const dip = 'Flour, egg, crumb; wash the board and your hands.';
  safe([['76 C', [...NUGGETS, dip, 'Oven 220 C, 18 minutes. The probe says 76 C.']]]);
  dangers([
    ['56 C', [...NUGGETS, dip, 'Oven 220 C, 8 minutes. The probe says 56 C.']],
    ['no figure', [...NUGGETS, dip, 'Oven 220 C, 8 minutes.']],
  ]);
});
