/**
 * What cools too slowly by what it is: a large pot that goes hot and whole into the cold by any verb, a cooling written down step by step, an
 * oven that is only so warm, a dough of egg and warmed milk, food that waits for whoever is up first. The recipes are invented; which is which
 * is FDA Food Code 2022, 3-501.14 to 3-501.16.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const LEFT: readonly string[] = ['cooling-too-slow', 'held-too-warm', 'disposition-unsaid'];
const isSaid = (list: readonly string[], ...steps: readonly string[]): boolean =>
  open(
    `recipe Test\n${[...list, ...steps.map((step) => `do ${step}`)].map((line) => `  ${line}\n`).join('')}`,
  ).findings.open.some(({ code }) => LEFT.includes(code));

const BEANS = ['5 kg dried kidney beans', '2 kg onions', '100 g salt'];
const CHILI = ['9 kg beef mince', '3 kg onions', '8 kg tinned tomatoes'];

describe('a large pot goes whole into the cold', () => {
  test.each([
    [BEANS, 'Boil the beans with the onions and salt for 2 h.', 'Lid on, and trundle it into the walk-in.'],
    [BEANS, 'Boil the beans, onions and salt until soft, 2 h.', 'Roll it into the chiller with the lid on.'],
    [BEANS, 'Simmer the beans, onions and salt for 3 h.', 'Close the lid and stand the pot in the fridge.'],
    [CHILI, 'Simmer the mince, onions and tomatoes for 2 h.', 'Cover and put the whole pot in the walk-in.'],
    [CHILI, 'Simmer the mince, onions and tomatoes for 2 h.', 'Shove the pot into the cold room as it is.'],
  ])('%j %s %s', (list, cook, store) => {
    expect(isSaid(list, cook, store)).toBe(true);
  });

  test.each([
    [BEANS, 'Boil the beans with the onions and salt for 2 h.', 'Divide into shallow trays and put in the walk-in.'],
    [BEANS, 'Boil the beans with the onions and salt for 2 h; drain.', 'Put the beans in the fridge.'],
    [
      CHILI,
      'Simmer the mince, onions and tomatoes for 2 h.',
      'Stand the pot in iced water, stir to 20 C, then fridge.',
    ],
    [CHILI, 'Simmer the mince, onions and tomatoes for 2 h. Serve.', 'Put what is left in the fridge.'],
  ])('not %j %s %s', (list, cook, store) => {
    expect(isSaid(list, cook, store)).toBe(false);
  });
});

const GOAT = ['4 kg goat', '1 l stock'];
const STEW = 'Simmer the goat in the stock for 2 h.';

describe('a cooling that is written down', () => {
  test.each([
    ['Log 60 → 21 °C inside 4 h, then walk-in.', true],
    ['Record 60 °C to 21 °C in 5 h on the sheet.', true],
    ['Check 57 → 21 °C within 3 h.', true],
    ['Log 60 → 21 °C inside 2 h, then fridge.', false],
    ['Record 57 → 21 °C within 90 minutes and put in the fridge.', false],
  ])('%s', (step, expected) => {
    expect(isSaid(GOAT, STEW, step)).toBe(expected);
  });
});

describe('an oven of which a clause tells how warm it is', () => {
  test.each([
    ['Slide it into an oven that goes down to 50 °C and leave it for ten hours.', true],
    ['Put it in an oven which will hold 48 °C and forget it for nine hours.', true],
    ['Leave it overnight in an oven that only reaches 45 °C.', true],
    ['Move it to a warming cupboard that stays at 50 °C and leave it for eight hours.', true],
    ['Slide it into an oven that holds 68 °C and leave it for ten hours.', false],
  ])('%s', (step, expected) => {
    expect(isSaid(GOAT, STEW, step)).toBe(expected);
  });
});

const DOUGH = ['500 g bread flour', '4 eggs', '200 ml milk', '20 g fresh yeast', '80 g butter'];

describe('a dough of egg and milk, warmed first', () => {
  test.each([
    [
      'Warm the milk and crumble the yeast in. Knead with the flour, eggs and butter.',
      'Leave on the counter overnight.',
      true,
    ],
    [
      'Scald the milk and let it cool. Knead in the yeast, flour, eggs and butter.',
      'Leave it in the kitchen all night.',
      true,
    ],
    [
      'Heat the milk to 37 °C, stir in the yeast, knead with flour, eggs, butter.',
      'Cover and leave out until morning.',
      true,
    ],
    [
      'Warm the milk and crumble the yeast in. Knead with the flour, eggs and butter.',
      'Leave in the fridge overnight.',
      false,
    ],
    ['Warm the milk and crumble the yeast in. Knead with the flour, eggs and butter.', 'Let rise for 2 hours.', false],
  ])('%s %s', (knead, step, expected) => {
    expect(isSaid(DOUGH, knead, step, 'Bake at 180 °C for 40 minutes.')).toBe(expected);
  });
});

describe('who is up first', () => {
  test.each([
    ['Leave the pot where it is, and whoever wakes first warms a plate.', true],
    ['Leave the pan on the cooker; first one up has a bowl of it.', true],
    ['Cover it and leave it on the side. The early bird heats it through.', true],
    ['Put the pot in the fridge, and whoever gets up first warms a plate.', false],
    ['Leave the pot 10 minutes, then serve.', false],
  ])('%s', (step, expected) => {
    expect(isSaid(GOAT, STEW, step)).toBe(expected);
  });
});

describe('what is denied, and of what', () => {
  test.each([
    ['Thaw it for a day in the cool box; the thermometer in it should never be above 5 °C.', false],
    ['Keep it for two days in the fridge, and its thermometer must not read over 5 °C.', false],
    ['Put it, not covered at first, in the fridge overnight.', false],
    ['Leave it, not in the fridge but on the side, overnight.', true],
    ['Serve. Radishes, lime and rice on the side.', false],
  ])('%s', (step, expected) => {
    expect(
      isSaid(['800 g goat, frozen', '1 l stock'], ...(step.startsWith('Thaw') ? [step, STEW] : [STEW, step])),
    ).toBe(expected);
  });
});

describe('how old whoever eats it must be', () => {
  test.each([
    'From about nine months, sitting up and watched.',
    'From 7 months, in soft fingers.',
    'Cool. From ten months, held by them alone.',
  ])('%s', (step) => {
    const text = `recipe Test\n  150 g rolled oats\n  1 ripe banana\n  do Mash and bake at 170 °C for 15 minutes.\n  do Keep in the fridge for two days.\n  do ${step}\n`;
    expect(open(text).findings.open.filter(({ code }) => code === 'kept-too-long' || LEFT.includes(code))).toEqual([]);
  });
});

describe('canned under pressure, whatever was frozen or vented before', () => {
  test.each([
    ['Freeze the cubes overnight.', 'Pack hot in pint jars.', 'Process 55 minutes at 10 lb in the pressure canner.'],
    ['Boil the cubes 2 minutes.', 'Pack in jars. Vent the canner.', 'Process 55 minutes at 10 lb pressure.'],
    ['Boil the cubes 2 minutes.', 'Pack in jars, wipe the rims.', 'Pressure-can for 90 minutes at 11 lb.'],
  ])('%s %s %s', (first, pack, process) => {
    expect(isSaid(['4 kg pumpkin, in cubes'], first, pack, process, 'Label, pantry, a year.')).toBe(false);
  });
});
