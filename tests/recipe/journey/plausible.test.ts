/**
 * Where the words leave open what is heated, what can only be meant is: plain recipes in other words than those of the tables. What nothing
 * cooks must still be said.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const RAW: ReadonlySet<string> = new Set(['raw-egg', 'raw-flour', 'no-safe-temperature', 'undercooked']);

/** `CODE severity: food` of what is said of raw or half-cooked food. */
const said = (lines: readonly string[]): readonly string[] =>
  open(`recipe Test\n${lines.map((line) => `  ${line}\n`).join('')}`)
    .findings.open.filter(({ code }) => RAW.has(code))
    .map(({ code, severity }) => `${code} ${severity}`);

describe('what can only be meant is heated', () => {
  test.each<[string, readonly string[]]>([
    [
      'a sign names it, and nothing else does',
      [
        'part Meatballs',
        '500 g minced lamb',
        '1 onion, grated',
        'part Supper',
        '1 litre rapeseed oil',
        'do Knead the lamb with the onion and roll walnuts of it.',
        'do Oil to 175 C in the deep pan.',
        'do Six at a time, a minute, until just gold.',
        'do On a tray in a 180 C oven, 15 minutes, until the lamb is 75 C on the probe.',
      ],
    ],
    [
      'a bird put by in the fridge, and seasonings rubbed on later',
      [
        '1 goose, 4 kg',
        '30 g fine salt',
        '1 tsp caraway seeds',
        '2 apples, quartered',
        'do Stand the goose on the bottom shelf of the refrigerator for a night.',
        'do Pat it dry.',
        'do Rub the salt and caraway all over and put the apples in the cavity.',
        'do Roast at 170 C for 3 hours, until it reads 75 C deep in the leg.',
      ],
    ],
    [
      'the pan is named by what lies in it, the meat by the last part alone',
      [
        'part Sheets',
        '300 g plain flour',
        '100 g cold butter',
        '80 g iced water',
        'part Pork',
        '600 g minced pork',
        '1 tsp fennel seeds',
        'part Parcels',
        '1 egg, beaten',
        'do Rub the butter into the flour and bring together with the water.',
        'do Mix the pork with the fennel.',
        'do Roll the sheets out, lay the pork along, fold over.',
        'do Scrub everything, hands and board included.',
        'do Bake at 200 C for 30 minutes, until brown and the middle of the thickest is 76 C.',
      ],
    ],
    [
      'herbs thrown into the pot',
      [
        '2 kg chicken wings',
        '3 l water',
        '2 bay leaves',
        '20 g parsley stalks',
        'do Brown the chicken wings in the pot.',
        'do Pour on the water. Bring up slowly, skim.',
        'do Bay, parsley stalks. 3 h at a bare simmer.',
      ],
    ],
    [
      'a custard in its case, lined into a tin that is called as the dish is',
      [
        'part Crust',
        '180 g plain flour',
        '90 g cold butter',
        '1 egg yolk',
        'do Rub the butter into the flour and bind with the egg yolk.',
        'do Roll out and line a deep flan tin. Bake blind at 190 C for 20 minutes, until dry.',
        'part Custard',
        '4 eggs',
        '300 ml double cream',
        'do Whisk the eggs with the cream.',
        'part Flan',
        '20 g icing sugar',
        'do Set the crust on the shelf, pour in the custard there and bake at 150 C for 30 minutes, until the centre reads 74 C.',
        'do Dust with the icing sugar.',
      ],
    ],
    [
      'a figure for those who have a thermometer',
      [
        '6 eggs',
        '200 ml whole milk',
        '100 g cheddar, grated',
        'do Whisk the eggs with the milk and cheddar.',
        'do Bake at 180 C for 30 minutes, until set in the middle (72 C if you own a thermometer).',
      ],
    ],
    [
      'a part that begins with what was made ready',
      [
        'part Marinade',
        '800 g pork shoulder, diced',
        '40 g soy sauce',
        'do Mix the pork with the soy sauce and chill overnight.',
        'part Fire',
        'do Light the coals. Thread on skewers and grill for 12 minutes, until 72 C in the middle of the largest.',
      ],
    ],
    [
      'meat that only its noun tells of',
      [
        '1 kg bear neck, in pieces',
        '500 ml stock',
        '1 onion, sliced',
        'do Soften the onion in the stock.',
        'do Tip over the meat in a roasting tin, foil tight, 150 C for 5 hours, until it reads 92 C.',
      ],
    ],
    [
      'eggs at the head of their list',
      [
        '6 eggs',
        '60 g mayonnaise',
        'do Boil 12 minutes, cool in iced water and peel.',
        'do Mash the yolks with the mayonnaise.',
      ],
    ],
    [
      'scrambled, with no other order',
      [
        '4 eggs',
        '20 g butter',
        'do Half the butter, then the eggs, scrambling until firm.',
        'do Eat with the rest of the butter.',
      ],
    ],
    [
      'a figure and a time alone',
      [
        '400 g minced lamb',
        '60 g butter',
        '2 egg yolks',
        'do Fry the lamb until every trace of red has gone.',
        'do Butter, yolks, beaten smooth.',
        'do Heap it up. 190 C, half an hour.',
        'do 75 inside, and out.',
      ],
    ],
    [
      'a number beside a probe',
      ['4 chicken breasts', '20 g butter', 'do Fry in the butter. Prod the fattest with a thermometer: 76 or longer.'],
    ],
    [
      'a number in the middle of it',
      ['1 duck, 2 kg', 'do Roast the duck at 190 C for 80 minutes. You want 75 in the thigh and no less.'],
    ],
    [
      'a figure for whoever looks',
      [
        '4 eggs',
        '500 ml whole milk',
        '80 g caster sugar',
        'do Whisk the eggs with the milk and sugar and strain into cups.',
        'do Bain-marie, 150 C oven, 40 minutes: a clean knife, or 81 C if you check.',
      ],
    ],
  ])('%s', (_, lines) => {
    expect(said(lines).filter((each) => !each.endsWith('info'))).toEqual([]);
  });
});

describe('how it looks is a question, and no claim that nothing cooks it', () => {
  test.each<[string, readonly string[]]>([
    [
      'stirred in a pan until the juices are gone',
      ['400 g minced turkey', '20 g soy sauce', 'do Stir in a pan until all is brown and the liquid is gone.'],
    ],
    [
      'a sign in a thought of its own',
      [
        '600 g chicken thighs',
        '20 g oil',
        'do Fry the chicken thighs in the oil for 15 minutes. The juices must run clear.',
      ],
    ],
    [
      'another sign so',
      ['600 g chicken drumsticks', 'do Grill the drumsticks for 25 minutes. The meat should be white all through.'],
    ],
    [
      'hours in an oven, and nobody says how thick it is',
      [
        '6 pheasant legs',
        '400 ml red wine',
        'do Brown the pheasant legs. Wine over, lid on, two hours in a 150 C oven.',
      ],
    ],
  ])('%s', (_, lines) => {
    expect(said(lines)).toEqual(['no-safe-temperature info']);
  });
});

describe('what nothing cooks is said', () => {
  test.each<[string, readonly string[], readonly string[]]>([
    [
      'a sauce in the fridge while the oven heats, and more oil of its kind',
      [
        '2 egg yolks',
        '200 ml sunflower oil',
        '1 tbsp lemon juice',
        '10 g capers',
        '600 g haddock fillet',
        '80 g breadcrumbs',
        'do Whisk the yolks and add the sunflower oil in a thread. Stir in the lemon juice and capers, and into the fridge.',
        'do Oven to 220 C.',
        'do Cut the haddock in fingers and roll in the breadcrumbs.',
        'do Brush with oil and bake for 15 minutes, until the haddock reads 63 C.',
        'do Serve with the sauce.',
      ],
      ['raw-egg error'],
    ],
    [
      'half a minute in a machine',
      [
        '3 egg yolks',
        '300 ml sunflower oil',
        '20 g mustard',
        'do Add the yolks and mustard, run 20 sec, stream in the oil until it stands up.',
        'do Bottle and chill.',
      ],
      ['raw-egg error'],
    ],
    [
      'slid into water that boils no more',
      [
        '1 whole chicken, 1.6 kg',
        '3 l water',
        'do Bring the water to the boil.',
        'do When it boils, slide in the chicken and turn off the gas. It rests 30 minutes without fire.',
        'do Tear the flesh into threads and eat warm.',
      ],
      ['no-safe-temperature error'],
    ],
    [
      'a bird that no step names, and its figure',
      [
        'part Butter',
        '100 g butter, soft',
        '5 g fine salt',
        'part Bird',
        '1 duck, 2 kg',
        'part Sauce',
        '200 ml red wine',
        'do Beat the butter with the salt. Loosen the skin, butter underneath.',
        'do Oven 200 C, 50 min. Probe the leg, clear of the bone: 58 C and out. Rest, carve.',
        'do Reduce the wine by half.',
      ],
      ['undercooked error'],
    ],
    [
      'a name that the brackets explain, dipped',
      [
        '300 g torimune (chicken breast)',
        'do Drop the torimune in boiling water, and when its surface turns white lift it into ice water.',
        'do Slice and eat.',
      ],
      ['no-safe-temperature error'],
    ],
    [
      'told over without a verb',
      [
        'part Cream',
        '4 eggs',
        '100 g caster sugar',
        '400 g mascarpone',
        'part Glasses',
        '12 savoiardi',
        'do Yolks, sugar, beaten pale. Mascarpone. Whites, stiff, in two goes.',
        'do Spoon over the savoiardi. Fridge overnight.',
      ],
      ['raw-egg error'],
    ],
    [
      'a mousse, and a topping that is baked beside it',
      [
        'part Mousse',
        '200 g dark chocolate',
        '4 eggs',
        'do Melt the chocolate. Beat in the yolks and fold in the whites.',
        'do Chill for 4 h.',
        'part Crumble',
        '80 g hazelnuts',
        '40 g caster sugar',
        'do Toast at 170 C for 10 minutes until golden.',
        'do Scatter over the mousse.',
      ],
      ['raw-egg error'],
    ],
  ])('%s', (_, lines, expected) => {
    expect(said(lines)).toEqual(expected);
  });
});
