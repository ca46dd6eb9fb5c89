/**
 * Dangers judged by the state of what is cooked: pairs of recipes that differ in one thing said, of which one is dangerous and the other is
 * not. The recipes are invented; which is which is FDA Food Code 2022, 3-401.11, 3-402.11, 3-501.14 and 3-501.16, USDA FSIS Appendix A, the
 * USDA Complete Guide to Home Canning and what CDC says of garlic in oil (the last two from memory).
 */
import { describe, expect, test } from 'vitest';
import { dangersIn } from '../../../server/src/checks/by-state/dangers.ts';
import { makeHouse } from '../../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../../server/src/workspace/settings.ts';
import { open } from '../../support/harness.ts';

const { house } = makeHouse(DEFAULTS);

function verdicts(list: readonly string[], ...steps: readonly string[]): readonly string[] {
  const text = `recipe Test\n${list.map((line) => `  ${line}\n`).join('')}${steps.map((step) => `  do ${step}\n`).join('')}`;
  return dangersIn(open(text).recipe, house).map(({ code, level }) => `${code} ${level}`);
}

const STEW = ['1 kg stewing beef', '500 g beef stock', '300 g onions'];
const SIMMER = 'Simmer the beef with the onions in the stock for 2 h.';
const CHICKEN = ['1.6 kg chicken', '20 g salt'];
const CONFIT = ['200 g garlic', '400 g olive oil'];
const BEANS = ['1 kg green beans', '1 l water', '10 g salt'];
const MAYONNAISE = ['2 egg yolks', '20 g lemon juice', '250 g sunflower oil'];
const DOUGH = ['200 g plain flour', '150 g butter', '150 g brown sugar'];

describe('warm too long', () => {
  test.each<[string, string, string, readonly string[]]>([
    [
      'a night in a room',
      'Leave on the counter overnight.',
      'Leave in the fridge overnight.',
      ['cooling-too-slow error'],
    ],
    [
      'hours in a room',
      'Stand it in the kitchen for 6 h.',
      'Stand it in the kitchen for 2 h.',
      ['cooling-too-slow error'],
    ],
    [
      'what is not done',
      'Leave on the counter overnight.',
      'Never leave it on the counter overnight.',
      ['cooling-too-slow error'],
    ],
    ['no place said', 'Let it stand for 10 h.', 'Let it stand for 30 min.', ['cooling-too-slow warning']],
    [
      'on the stove, which is out',
      'Turn off the heat and leave on the hob for 9 h.',
      'Keep hot on the hob for 2 h.',
      ['cooling-too-slow error'],
    ],
    [
      'till somebody comes, of whom the hour is known',
      'Kill the flame, lid on. Morning crew strains it.',
      'Chill it in the walk-in. Morning crew strains it.',
      ['cooling-too-slow warning'],
    ],
    [
      'till the end of the day',
      'Set it on the stall until the shutters come down.',
      'Keep it at a simmer until the shutters come down.',
      ['cooling-too-slow warning'],
    ],
    [
      'from one day to another',
      'On Saturday night set it on the hearth. Before Sunday lunch skim it.',
      'On Saturday night put it in the fridge. Before Sunday lunch skim it.',
      ['cooling-too-slow error'],
    ],
    [
      'till you come down',
      'Set it down on the flags with the lid on. Skim it when you come down.',
      'Set it in a sink of ice with the lid on. Skim it when you come down.',
      ['cooling-too-slow error'],
    ],
    [
      'read long after',
      'Wheel it into the walk-in. Ten hours later it reads 30 C.',
      'Wheel it into the walk-in. Two hours later it reads 15 C.',
      ['cooling-too-slow error'],
    ],
    [
      'held lukewarm',
      'Keep it lukewarm in the bain-marie until last orders.',
      'Keep it hot in the bain-marie until last orders.',
      ['cooling-too-slow warning'],
    ],
    [
      'set to begin later',
      'Put it in the slow cooker at 9 pm and set the timer to come on at 6 am.',
      'Put it in the slow cooker at 9 pm and set it to high.',
      ['cooling-too-slow error'],
    ],
    ['kept at a figure', 'Keep at 45 C until wanted.', 'Keep at 65 C until wanted.', ['held-too-warm error']],
    [
      'cooled too slowly',
      'Cool to 21 C within 4 h.',
      'Cool to 21 C within 90 min, and to 4 C within 6 h.',
      ['cooling-too-slow error'],
    ],
    [
      'a cellar, which may be cold',
      'Keep in the cellar for 2 d.',
      'Keep in the cellar at 4 C for 2 d.',
      ['cooling-too-slow warning'],
    ],
  ])('%s', (_, dangerous, safe, want) => {
    expect(verdicts(STEW, SIMMER, dangerous)).toEqual(want);
    expect(verdicts(STEW, SIMMER, safe)).toEqual([]);
  });

  test('what may be is a warning', () => {
    expect(verdicts(STEW, SIMMER, 'It is better when it is left at room temperature for 8 h.')).toEqual([
      'cooling-too-slow warning',
    ]);
  });

  test('two stays add up to more than one', () => {
    const steps = ['Leave on the counter for 3 h.', 'Set out on the table for 3 h.'];
    expect(verdicts(STEW, SIMMER, ...steps)).toEqual(['cooling-too-slow error']);
    expect(verdicts(STEW, SIMMER, steps[0] ?? '', 'Boil for 5 min.', steps[1] ?? '')).toEqual([]);
  });

  test.each<[string, readonly string[], string]>([
    [
      'a dough',
      ['500 g bread flour', '325 g water', '5 g instant yeast'],
      'Mix the flour, water and yeast and leave on the counter overnight.',
    ],
    [
      'a syrup',
      ['500 g sugar', '300 g water'],
      'Boil the sugar and water for 5 min and keep at room temperature for a month.',
    ],
    [
      'cabbage in its salt',
      ['2 kg white cabbage', '45 g salt'],
      'Pound the cabbage with the salt and leave in the kitchen for 10 d.',
    ],
  ])('the list keeps %s', (_, list, step) => {
    expect(verdicts(list, step)).toEqual([]);
  });

  test('raw flesh is thawed in the cold', () => {
    const turkey = ['5 kg frozen turkey'];
    const roast = 'Roast at 165 C for 4 h until the thigh reads 75 C.';
    expect(verdicts(turkey, 'Thaw the turkey on the counter for 24 h.', roast)).toEqual(['cooling-too-slow error']);
    expect(verdicts(turkey, 'Thaw the turkey in the fridge for 3 d.', roast)).toEqual([]);
  });

  test('what the list says counts too', () => {
    expect(
      verdicts(['500 g cooked rice (left on the side overnight)', '30 g oil'], 'Fry the rice in the oil.'),
    ).toEqual(['cooling-too-slow error']);
  });
});

describe('undercooked', () => {
  test.each<[string, readonly string[], string, string, readonly string[]]>([
    [
      'poultry by its figure',
      CHICKEN,
      'Roast the chicken until the thigh reads 65 C.',
      'Roast the chicken until the thigh reads 75 C.',
      ['undercooked error'],
    ],
    [
      'poultry with no figure',
      CHICKEN,
      'Roast the chicken at 200 C for 40 min.',
      'Simmer the chicken in water for 90 min.',
      ['no-safe-temperature error'],
    ],
    [
      'mince that is seared',
      ['600 g minced beef'],
      'Shape the beef and sear 1 min a side.',
      'Shape the beef and fry until 70 C inside.',
      ['no-safe-temperature error'],
    ],
    [
      'a bath for too short',
      ['800 g beef steak'],
      'Lower the steak into a water bath at 56 C for 45 min.',
      'Lower the steak into a water bath at 58 C for 3 h.',
      ['no-safe-temperature error'],
    ],
    [
      'fish that is only soured',
      ['600 g sea bass fillet', '200 g lime juice'],
      'Cover the sea bass with the lime juice for 20 min.',
      'Bake the sea bass for 15 min, pour over the lime juice.',
      ['no-safe-temperature error'],
    ],
    [
      'egg',
      MAYONNAISE,
      'Whisk the yolks with the lemon juice, then whisk in the oil.',
      'Whisk the yolks with the lemon juice over simmering water until thick, then whisk in the oil.',
      ['raw-egg error'],
    ],
    [
      'flour',
      DOUGH,
      'Beat the butter with the sugar, stir in the flour, roll in balls and eat.',
      'Beat the butter with the sugar, stir in the flour, roll in balls and bake for 12 min.',
      ['raw-flour error'],
    ],
    [
      'leftovers',
      ['1 kg cooked chicken'],
      'Warm the chicken in the oven until it reads 50 C.',
      'Warm the chicken in the oven until it reads 75 C.',
      ['undercooked error'],
    ],
  ])('%s', (_, list, dangerous, safe, want) => {
    expect(verdicts(list, dangerous)).toEqual(want);
    expect(verdicts(list, safe)).toEqual([]);
  });
});

describe('shut off from air', () => {
  test.each<[string, readonly string[], readonly string[], readonly string[], readonly string[]]>([
    [
      'garlic in oil',
      CONFIT,
      ['Simmer the garlic in the oil for 40 min.', 'Keep on the counter for a week.'],
      ['Simmer the garlic in the oil for 40 min.', 'Keep in the fridge for 3 d.'],
      ['garlic-in-oil error'],
    ],
    [
      'garlic in oil, cold for too long',
      CONFIT,
      ['Simmer the garlic in the oil for 40 min.', 'Keep in the fridge for 3 weeks.'],
      ['Simmer the garlic in the oil for 40 min.', 'Serve at once.'],
      ['garlic-in-oil error'],
    ],
    [
      'beans in jars',
      BEANS,
      ['Pack the beans in jars with the salt and water and seal.', 'Boil the jars for 40 min and store in the pantry.'],
      [
        'Pack the beans in jars with the salt and water and seal.',
        'Process in a pressure canner for 25 min and store in the pantry.',
      ],
      ['low-acid-preserve error'],
    ],
    [
      'beans in jars, kept cold',
      BEANS,
      ['Boil the beans in the water with the salt, fill into jars, seal and keep at room temperature.'],
      ['Boil the beans in the water with the salt, fill into jars and keep in the fridge for 3 d.'],
      ['low-acid-preserve error'],
    ],
  ])('%s', (_, list, dangerous, safe, want) => {
    expect(verdicts(list, ...dangerous)).toEqual(want);
    expect(verdicts(list, ...safe)).toEqual([]);
  });
});

describe('by the clock', () => {
  const CUSTARD = ['600 g whole milk', '5 egg yolks', '60 g caster sugar'];
  const THICKEN = 'Stir the milk, yolks and sugar over the heat until it boils.';
  test.each<[string, readonly string[], readonly string[], readonly string[]]>([
    [
      'from one hour to another',
      ['Stand it on the dresser at eight.', 'Serve at one.'],
      ['Stand it on the dresser at eight.', 'Serve at nine.'],
      ['cooling-too-slow error'],
    ],
    [
      'the next day',
      ['Leave it on the dresser.', 'Next morning spread it on the sponge.'],
      ['Leave it in the fridge.', 'Next morning spread it on the sponge.'],
      ['cooling-too-slow error'],
    ],
    [
      'days of a plan',
      ['DAY 1, 4 pm. Stand it in the passage.', 'DAY 2, 8 am. Spread it on the sponge.'],
      ['DAY 1, 4 pm. Stand it in the fridge.', 'DAY 2, 8 am. Spread it on the sponge.'],
      ['cooling-too-slow error'],
    ],
    [
      'days of the week',
      ['Stand it in the passage on Friday evening.', 'Saturday lunchtime, spread it on the sponge.'],
      ['Chill it on Friday evening.', 'Saturday lunchtime, spread it on the sponge.'],
      ['cooling-too-slow error'],
    ],
    [
      'what was told of in between is not counted twice',
      ['At nine stand it in the fridge for 5 h.', 'Stand it on the counter for 4 h 30 min.', 'Serve at six.'],
      ['At nine stand it in the fridge for 5 h.', 'Stand it on the counter.', 'Serve at three.'],
      ['cooling-too-slow error'],
    ],
  ])('%s', (_, dangerous, safe, found) => {
    expect(verdicts(CUSTARD, THICKEN, ...dangerous)).toEqual(found);
    expect(verdicts(CUSTARD, THICKEN, ...safe)).toEqual([]);
  });

  test('where the flame was turned off', () => {
    const after = 'By noon tomorrow ladle it out.';
    expect(
      verdicts(STEW, 'At 8 pm simmer the beef with the onions in the stock for 2 h.', 'Flame off.', after),
    ).toEqual(['cooling-too-slow warning']);
    expect(
      verdicts(
        STEW,
        'At 8 pm simmer the beef with the onions in the stock for 2 h.',
        'Cool over ice to 4 C in 2 h.',
        after,
      ),
    ).toEqual([]);
  });
});

describe('birds', () => {
  const STUFFING = ['300 g pork sausagemeat', '200 g onions', '1 goose, 5 kg'];
  const FRIED = 'Fry the sausagemeat and onions until cooked through and brown, and it reads 75 C.';
  test('filled warm, and kept', () => {
    const roast = 'Roast at 180 C until the thigh and the middle of the stuffing read 75 C.';
    expect(verdicts(STUFFING, FRIED, 'Spoon it into the goose and refrigerate overnight.', roast)).toEqual([
      'cooling-too-slow error',
    ]);
    expect(verdicts(STUFFING, FRIED, 'Spoon it into the goose.', roast)).toEqual([]);
  });

  test('thawed in a room', () => {
    const bird = ['1 frozen turkey, 5 kg'];
    const roast = 'Roast at 170 C until the thigh reads 75 C.';
    expect(verdicts(bird, 'Stand the turkey on the worktop.', roast)).toEqual(['cooling-too-slow warning']);
    expect(verdicts(bird, 'Unwrap the turkey and stand it on a tray at 22 C for 20 h.', roast)).toEqual([
      'held-too-warm error',
    ]);
    expect(verdicts(bird, 'Thaw the turkey in the fridge for 2 days.', roast)).toEqual([]);
  });
});

test('a part that is called for above where it stands is made first', () => {
  const text = (how: string) =>
    `recipe Rice\n  2  eggs\n  do Scramble the eggs until firm and set, and they read 75 C.\n  do Add the old rice and fry until steaming.\npart Old rice\n  300 g  long-grain rice\n  600 g  water\n  do Boil the rice in the water for 15 min.\n  do ${how}\n`;
  const found = (how: string) => dangersIn(open(text(how)).recipe, house).map(({ code }) => code);
  expect(found('Leave on the hob overnight.')).toEqual(['cooling-too-slow']);
  expect(found('Cool over ice and chill overnight.')).toEqual([]);
});
