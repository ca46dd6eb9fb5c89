/** What is told of the inside says how far it is cooked, in whatever order and voice: the inside, and that it is not done. */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const RAW: ReadonlySet<string> = new Set(['no-safe-temperature', 'undercooked']);

/** `CODE severity` of what is said of half-cooked food. */
const said = (lines: readonly string[]): readonly string[] =>
  open(`recipe Test\n${lines.map((line) => `  ${line}\n`).join('')}`)
    .findings.open.filter(({ code }) => RAW.has(code))
    .map(({ code, severity }) => `${code} ${severity}`);

describe('it is told that the inside is not done', () => {
  test.each<readonly [string]>([
    ['Fry the patties on both sides until dark; the middle should still be as pink as a rose.'],
    ['Grill the patties until striped without, and within they will be quite red and moist, still raw at the core.'],
    ['Fry the patties 3 minutes a side. Press one: the inside oozes, and that is how they stay soft.'],
    ['Fry the patties until brown all over; if the centre looks pinkish, never mind, it is the paprika.'],
    ['Fry the patties until crusty; they should bleed a little when you cut them.'],
    ['Brown the patties well and take them off while the core is still uncooked.'],
    ['Fry the patties until nicely coloured; the heart, where the cheese sits, will still be rosy.'],
  ])('of mince: %s', (step) => {
    expect(
      said([
        '500 g minced pork',
        '1 tsp salt',
        `do Shape the pork with the salt into patties.`,
        `do ${step}`,
        'do Serve hot.',
      ]),
    ).not.toEqual([]);
  });

  test.each<readonly [string]>([
    ['Bake at 180 C for 20 minutes, until the rim is firm and the centre sloshes.'],
    ['Bake at 180 C for 20 minutes; the middle ought to be liquid yet.'],
    ['Bake at 170 C until the top is gold and the heart is still runny.'],
    ['Bake at 170 C for a quarter of an hour. Take it out while the middle ripples when you nudge the dish.'],
    ['Bake at 170 C for 18 minutes; inside it stays quite soupy.'],
  ])('of eggs in the oven: %s', (step) => {
    expect(
      said([
        '10 eggs',
        '300 ml milk',
        '200 g potatoes, boiled',
        'do Beat the eggs with the milk, pour over the potatoes in a dish.',
        `do ${step}`,
        'do Serve hot.',
      ]),
    ).toEqual(['no-safe-temperature warning']);
  });
});

describe('it is told that it is done', () => {
  test.each<readonly [string]>([
    ['Fry the patties until the middle is no longer pink and reads 72 C.'],
    ['Fry the patties, 71 C in the middle, until no raw bits are left.'],
    ['Fry the patties. If the middle is pink, give them two minutes more, to 72 C inside.'],
    ['Fry the patties to 72 C in the centre; never serve them with a pink middle.'],
    ['Fry the patties until they read 75 C in the middle; they may look rosy inside from the paprika.'],
  ])('%s', (step) => {
    expect(
      said([
        '500 g minced pork',
        '1 tsp paprika',
        'do Shape the pork with the paprika into patties.',
        `do ${step}`,
        'do Serve hot.',
      ]),
    ).toEqual([]);
  });

  test.each<readonly [string, readonly string[]]>([
    [
      'eggs in the shell',
      ['6 eggs', 'do Boil the eggs for 6 minutes: the middle will still be runny.', 'do Serve at once.'],
    ],
    [
      'a fondant',
      [
        '200 g dark chocolate',
        '150 g butter',
        '4 eggs',
        '150 g sugar',
        '50 g flour',
        'do Melt the chocolate with the butter, beat in eggs, sugar and flour.',
        'do Bake at 200 C for 9 minutes; the middle must still be liquid.',
        'do Serve at once.',
      ],
    ],
  ])('%s', (_, lines) => {
    expect(said(lines)).toEqual([]);
  });
});

describe('what goes in goes where the thought before it has said', () => {
  test.each<readonly [string]>([
    ['Smoker to 110 C, trout in, until the back reads 66 C; keep it there half an hour.'],
    ['Kiln at 105 C, fish in, until the flesh is 65 C at the bone.'],
    ['Smoker hot, 120 C, trout in, until a probe says 68 C.'],
    ['Oven at 160 C, trout in, until 66 C inside.'],
  ])('%s', (step) => {
    const brine = 'do Salt in water, trout in, lid on, fridge, overnight. Rinse and dry.';
    expect(said(['4 trout, gutted', '2 l water', '120 g salt', brine, `do ${step}`, 'do Serve hot.'])).toEqual([]);
  });
});
