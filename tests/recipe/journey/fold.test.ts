/**
 * What lies together after the steps, in which state, and for how long it lay: recipes in few words. What each must come to is plain reading.
 */
import { describe, expect, test } from 'vitest';
import type { Body, Stay } from '../../../server/src/recipe/journey/bodies.ts';
import { journeyOf } from '../../../server/src/recipe/journey/fold.ts';
import type { Recipe } from '../../../server/src/recipe/model.ts';
import { open } from '../../support/harness.ts';

const recipe = (list: readonly string[], ...steps: readonly string[]): Recipe =>
  open(`recipe Test\n${list.map((line) => `  ${line}\n`).join('')}${steps.map((step) => `  do ${step}\n`).join('')}`)
    .recipe;

const nameIn = ({ parts }: Recipe, of: { part: number; ingredient: number }): string =>
  parts[of.part]?.head.ingredients[of.ingredient]?.name ?? '?';

/** `beef:through, stock:through`: the members of a body in the order of the list. */
const shown = (of: Recipe, { members }: Body): string =>
  members
    .map((m) => ({ at: m.of.part * 100 + m.of.ingredient, text: `${nameIn(of, m.of)}:${m.state.cooked}` }))
    .sort((a, b) => a.at - b.at)
    .map(({ text }) => text)
    .join(', ');

const bodiesOf = (of: Recipe): readonly string[] => journeyOf(of).bodies.map((body) => shown(of, body));

const stayText = ({ lies, minutes, sure, timed }: Stay): string =>
  `${lies.place ?? '?'} ${timed ? `${minutes.low}-${minutes.high}` : 'open'} ${sure}`;

const staysOf = (of: Recipe): readonly string[] => journeyOf(of).stays.map(stayText);

const STEW = ['1 kg beef', '300 g onions', '500 g beef stock'];

describe('what lies together, and how far it is cooked', () => {
  test.each<[string, readonly string[], readonly string[], readonly string[]]>([
    [
      'what is browned is simmered with what is added',
      STEW,
      ['Brown the beef, add the onions and stock and simmer 2 h.'],
      ['beef:through, onions:through, beef stock:through'],
    ],
    [
      'what goes in while it cooks is cooked for the rest of that',
      STEW,
      ['Simmer the beef in the stock for 2 h. After 1 h add the onions.'],
      ['beef:through, onions:through, beef stock:through'],
    ],
    [
      'so it is with the end of a bake, by how much of it is left',
      ['1 kg beef', '1 egg'],
      ['Bake the beef at 200 C for 1 h.', 'Brush with the egg for the last 15 min.'],
      ['beef:unsaid, egg:unsaid'],
    ],
    [
      'what goes in at the end, or off the heat, is as it was',
      STEW,
      ['Simmer the beef in the stock for 2 h, and take off the heat.', 'After 10 min add the onions.'],
      ['beef:through, onions:raw, beef stock:through'],
    ],
    [
      'a minute before the end is no heat',
      STEW,
      ['Simmer the beef in the stock for 2 h. After 119 min add the onions.'],
      ['beef:through, onions:raw, beef stock:through'],
    ],
    [
      'what goes in halfway through goes in',
      STEW,
      ['Simmer the beef for 2 h; halfway through stir in the onions and the stock.'],
      ['beef:through, onions:raw, beef stock:raw'],
    ],
    [
      'empty jars are heated, and not what is listed',
      ['4 lemons', '200 g sugar'],
      ['Wash the jars, put them in an oven at 140 C for 15 min and keep them hot.', 'Slice the lemons.'],
      ['lemons:raw'],
    ],
    [
      'so are they beside what cooks',
      STEW,
      ['Warm the beef in a pan.', 'Wash the bottles and boil them for 10 min.', 'Slice the onions.'],
      ['beef:raw', 'onions:raw'],
    ],
    [
      'jars that are full are boiled with what is in them',
      ['1 kg beef', '500 g beef stock'],
      ['Pack the beef into the jars and pour over the stock.', 'Boil the jars for 10 min.'],
      ['beef:through, beef stock:through'],
    ],
    [
      'a lined tin that is chilled is no food; what is chilled after it was laid in is',
      ['1 egg'],
      ['Line a tin and chill it.', 'Beat the egg, pour it into the tin and bake it at 180 C for 20 min.'],
      ['egg:unsaid'],
    ],
    [
      'what goes into the tin goes not to the meat that was lifted out of it',
      ['1 whole chicken', '2 onions', '20 g plain flour', '400 g chicken stock'],
      [
        'Set the chicken on the onions and roast at 200 C until the thigh reads 54 C.',
        'Lift the chicken onto a board and rest for 15 min.',
        'Spoon all but a spoonful of the fat from the tin, stir the flour into the onions and cook on the hob for 1 min.',
        'Whisk in the stock and simmer for 5 min.',
      ],
      ['whole chicken:unsaid', 'onions:through, plain flour:through, chicken stock:through'],
    ],
    [
      'what is left in the tin is not the meat',
      ['1 whole chicken', '2 onions', '20 g plain flour', '400 g chicken stock'],
      [
        'Set the chicken on the onions and roast at 200 C until the thigh reads 54 C.',
        'Lift the chicken to a board and rest for 15 min.',
        'Stir the flour into what is left, pour in the stock and simmer for 5 min.',
      ],
      ['whole chicken:unsaid', 'onions:through, plain flour:through, chicken stock:through'],
    ],
    [
      'searing cooks the outside alone',
      ['4 beef steaks', '20 g butter'],
      ['Sear the steaks in the butter for 1 min a side.'],
      ['beef steaks:outside, butter:outside'],
    ],
    [
      'what is mixed apart is baked in the end',
      ['100 g butter', '100 g sugar', '2 eggs', '100 g plain flour', '1 tsp baking powder'],
      [
        'Cream the butter with the sugar.',
        'Beat the eggs.',
        'Sift the flour with the baking powder, fold in and bake at 180 C for 20 min.',
      ],
      ['butter:unsaid, sugar:unsaid, eggs:unsaid, plain flour:unsaid, baking powder:unsaid'],
    ],
    [
      'what is not named is what the last step made',
      ['500 g milk', '4 egg yolks'],
      ['Warm the milk.', 'Whisk in the yolks.', 'Do not boil it.'],
      ['milk:raw, egg yolks:raw'],
    ],
    [
      'what no step names lies with what is roasted',
      ['2 kg chicken', '20 g salt'],
      ['Rub with the salt and roast for 90 min.'],
      ['chicken:unsaid, salt:unsaid'],
    ],
    [
      'a sentence that only warns moves nothing',
      ['500 g minced beef'],
      ['Shape the beef.', 'Never boil it.'],
      ['minced beef:raw'],
    ],
    [
      'a place that is hot heats, by whatever verb',
      ['600 g salmon fillet'],
      ['Slide the salmon into the oven for 15 min.'],
      ['salmon fillet:unsaid'],
    ],
  ])('%s', (_, list, steps, want) => {
    expect(bodiesOf(recipe(list, ...steps))).toEqual(want);
  });

  test('a part that is named brings its last body, with its state', () => {
    const { recipe: whole } = open(
      'recipe Pie\npart filling\n  500 g minced beef\n  200 g onions\n  do Simmer the beef with the onions for 1 h.\npart pie\n  300 g puff pastry\n  do Spoon the filling on the pastry and bake for 30 min.\n',
    );
    expect(bodiesOf(whole)).toEqual(['minced beef:through, onions:through, puff pastry:unsaid']);
  });

  test('half of an ingredient lies in each of two bodies', () => {
    const whole = recipe(
      ['200 g sugar', '100 g butter', '300 g strawberries'],
      'Cream the butter with half the sugar.',
      'Meanwhile boil the strawberries with the rest of the sugar.',
    );
    const shares = journeyOf(whole).bodies.map(({ members }) =>
      members.filter(({ of }) => of.ingredient === 0).map(({ share }) => share),
    );
    expect(shares.flat()).toEqual([
      { low: 0.5, high: 0.5 },
      { low: 0.5, high: 0.5 },
    ]);
  });
});

describe('where it lies, and for how long', () => {
  test.each<[string, string, readonly string[]]>([
    ['a room', 'Leave on the counter for 8 h.', ['room 480-480 said']],
    ['no place said', 'Let stand for 20 min.', ['room 20-20 inferred']],
    ['the cold', 'Chill for 2 h.', ['cold 120-120 said']],
    ['the cold, by the place', 'Keep in the fridge for 3 d.', ['cold 4320-4320 said']],
    ['where it was', 'Put in the fridge. Leave for 8 h.', ['cold open inferred', 'cold 480-480 said']],
    ['a range', 'Leave on the counter for 3 to 5 h.', ['room 180-300 said']],
    ['a choice', 'Leave on the counter 4 h or overnight.', ['room 240-960 said']],
    ['what is not done', 'Do not leave on the counter overnight.', []],
    ['what may be', 'If you like, leave on the counter for 1 h.', ['room 60-60 said']],
  ])('%s: %s', (_, step, want) => {
    expect(staysOf(recipe(STEW, 'Simmer the beef with the onions in the stock for 2 h.', step))).toEqual(want);
  });

  test('minutes between cold and hot add up until it is heated through', () => {
    const whole = recipe(
      STEW,
      'Simmer the beef with the onions in the stock for 2 h.',
      'Leave on the counter for 3 h.',
      'Set out on the table for 3 h.',
      'Boil for 5 min.',
      'Leave on the counter for 1 h.',
    );
    expect(journeyOf(whole).stays.map(({ warmMin }) => warmMin.low)).toEqual([180, 360, 60]);
  });

  test('things that are done one by one tell no hour', () => {
    const until = (step: string) =>
      staysOf(recipe(STEW, 'At eight, simmer the beef in the stock.', 'Leave it on the counter.', step)).at(0);
    expect(until('By one, stir in the onions.')).toMatch(/^room \d/);
    expect(until('Stir in the onions one by one.')).toMatch(/^room open/);
  });
});
