/** What is worked out of a wait; the figures themselves are held to published ones in tests/outside/heat. */
import { describe, expect, test } from 'vitest';
import type { Stay } from '../../server/src/recipe/journey/bodies.ts';
import { journeyOf } from '../../server/src/recipe/journey/fold.ts';
import type { Recipe } from '../../server/src/recipe/model.ts';
import { coolingOf } from '../../server/src/recipe/waiting/cooling.ts';
import { risingOf } from '../../server/src/recipe/waiting/rising.ts';
import { settingOf } from '../../server/src/recipe/waiting/setting.ts';
import { thawingOf } from '../../server/src/recipe/waiting/thawing.ts';
import { hoverAt } from '../support/at-cursor.ts';
import { open } from '../support/harness.ts';

/** Of each stay of the recipe, what can be worked out. */
function each<T>(text: string, ask: (recipe: Recipe, stay: Stay) => T | undefined): T[] {
  const { recipe } = open(text);
  return journeyOf(recipe).stays.flatMap((stay) => ask(recipe, stay) ?? []);
}

const STEW = `recipe Stew
  2 kg      beef chuck, diced
  2 l       beef stock
  1 kg      potato, diced
  do Simmer the beef in the stock with the potato for 2 h until tender.
`;
const hours = (minutes = Number.NaN) => minutes / 60;

describe('what stands hot in the cold', () => {
  test('as one pot by its mass, until its middle passes 21 and 5 °C', () => {
    const [pot] = each(`${STEW}  do Put the pot in the refrigerator overnight.\n`, coolingOf);
    expect(pot).toMatchObject({ by: 'pot', fromC: 57 });
    expect(pot?.depth).toBeCloseTo(0.18, 2);
    expect(pot?.passes.map(({ celsius }) => celsius)).toEqual([21, 5]);
    // 6.6 l, 93 to 5 °C: 17 h mixed and 29 h by conduction alone.
    expect(hours(pot?.passes[1]?.cooled.likely)).toBeGreaterThan(12);
    expect(hours(pot?.passes[1]?.cooled.likely)).toBeLessThan(26);
  });

  // Stew in an open pan 5.1 cm deep in a domestic refrigerator: 3.5 h to 21, 10 h to 5 °C, take 35 %.
  test('as deep as is said', () => {
    const [pan] = each(`${STEW}  do Pour into trays 5 cm deep and chill for 6 h.\n`, coolingOf);
    expect(pan).toMatchObject({ by: 'said', depth: 0.05 });
    expect(hours(pan?.passes[0]?.cooled.likely)).toBeCloseTo(3.5, 0);
    expect(hours(pan?.passes[1]?.cooled.likely)).toBeGreaterThan(8);
    expect(hours(pan?.passes[1]?.cooled.likely)).toBeLessThan(12);
  });

  test('as deep as it fills its tin, and ice is quicker', () => {
    const pie =
      'recipe Pie\n  pan     rectangle 30 x 20 x 6 cm\n  2 kg      minced beef\n  500 g     water\n  do Mix the beef with the water, put in the dish and bake at 180 C for 60 min.\n';
    const [tin] = each(`${pie}  do Refrigerate for 4 hours.\n`, coolingOf);
    expect(tin).toMatchObject({ by: 'tin' });
    expect(tin?.depth).toBeGreaterThan(0.035);
    expect(tin?.depth).toBeLessThan(0.045);
  });

  test.each([
    ['nobody says where', `${STEW}  do Leave for 2 h.\n`],
    [
      'it is in jars, of a size that nobody says',
      `${STEW}  do Ladle into jars and put in the refrigerator overnight.\n`,
    ],
    ['it is cold already', 'recipe Slaw\n  2 kg      cabbage\n  1 l       water\n  do Mix and chill for 1 h.\n'],
    [
      'a weight is not known',
      'recipe Stock\n  2 fantods\n  2 l       water\n  do Simmer the fantods in the water for 2 h.\n  do Put the pot in the refrigerator.\n',
    ],
    [
      'it is solid, and in no tin',
      'recipe Roast\n  2 kg      beef topside\n  do Roast the beef at 180 C for 2 h.\n  do Chill for 4 h.\n',
    ],
  ])('nothing where %s', (_, text) => {
    expect(each(text, coolingOf)).toEqual([]);
  });
});

describe('what sets in the cold', () => {
  const jelly = (moulds: number, grams: number) =>
    `recipe Jelly as jelly\n  yield   ${moulds} jellies\n  ${grams} g     water\n  150 g     sugar\n  15 g      gelatine\n  do Heat the water with the sugar and dissolve the gelatine in it.\n  do Pour into ${moulds} moulds and chill for 1 h.\n`;

  // Jelly from 25 to 10 °C at the centre at 4 °C: cups of 150 ml, 4.4 cm deep, 2.2 h; then an hour to half its firmness.
  test('a jelly of six cups', () => {
    const [setting] = each(jelly(6, 780), settingOf);
    expect(setting).toMatchObject({ sort: 'jelly', more: 60 });
    expect(setting?.depth).toBeCloseTo(0.044, 2);
    expect(hours(setting?.likely)).toBeGreaterThan(2.7);
    expect(hours(setting?.likely)).toBeLessThan(3.5);
  });

  test('larger moulds take longer to be cold', () => {
    const coldIn = (moulds: number) => (each(jelly(moulds, 780), settingOf)[0]?.likely ?? 0) - 60;
    expect(coldIn(2)).toBeGreaterThan(coldIn(6) * 1.5);
  });

  // A disc of 2.5 cm, 15 cm across, from 22 °C in a refrigerator at 4: to 10 °C 64 to 96 min, to 14 sooner.
  test('a disc of pastry', () => {
    const [setting] = each(
      'recipe Case\npart case as shortcrust\n  250 g     plain flour\n  125 g     butter\n  50 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Chill at 4 C for 1 h and roll out.\n',
      settingOf,
    );
    expect(setting?.likely).toBeGreaterThan(30);
    expect(setting?.likely).toBeLessThan(64);
  });

  // 1 l with a third of air, from -6 to -12 °C at the centre at -18: a block of 11 x 11 x 8 cm 3.2 to 4.4 h.
  test('a block of ice cream', () => {
    const [setting] = each(
      'recipe Ice as ice cream\n  380 g     whole milk\n  190 g     double cream\n  115 g     sugar\n  70 g      egg yolk\n  do Heat the milk, cream, sugar and yolks to 82 C, chill at 4 C for 6 h and churn.\n  do Freeze for 4 h.\n',
      settingOf,
    );
    expect(setting?.sort).toBe('ice cream');
    expect(hours(setting?.likely)).toBeGreaterThan(3);
    expect(hours(setting?.likely)).toBeLessThan(5);
  });

  test('nothing of a jelly in nobody knows how many moulds', () => {
    expect(each(jelly(6, 780).replace('6 moulds', 'moulds').replace('  yield   6 jellies\n', ''), settingOf)).toEqual(
      [],
    );
  });
});

describe('what thaws', () => {
  const bird = (kg: number, how: string) =>
    `recipe Bird\n  ${kg} kg      whole turkey, frozen\n  do Thaw the turkey ${how}.\n`;

  // USDA FSIS: 24 h for each 4 to 5 lb in the refrigerator, 30 min a lb in cold water.
  test.each([
    [5, 'in the refrigerator for 3 days', 24, 72],
    [8, 'in the refrigerator for 4 days', 72, 120],
    [5, 'in cold water for 6 h', 4, 12],
  ])('%d kg %s overlaps %d to %d h', (kg, how, low, high) => {
    const [thawing] = each(bird(kg, how), thawingOf);
    expect(hours(thawing?.minutes.low)).toBeLessThan(high);
    expect(hours(thawing?.minutes.high)).toBeGreaterThan(low);
  });

  test.each([
    [
      'small pieces',
      'recipe Wings\n  600 g     chicken wings, frozen\n  do Thaw the wings in the refrigerator overnight.\n',
    ],
    ['what is no flesh', 'recipe Peas\n  2 kg      frozen peas\n  do Thaw the peas in the refrigerator overnight.\n'],
    ['what lies nobody knows where', bird(5, 'for 2 days')],
  ])('nothing of %s', (_, text) => {
    expect(each(text, thawingOf)).toEqual([]);
  });
});

describe('what rises', () => {
  const dough = (yeast: string, how: string) =>
    `recipe Bread as lean bread\n  500 g     bread flour\n  340 g     water\n  10 g      salt\n  ${yeast}\n  do Mix and knead the flour, water, salt and yeast.\n  do Prove ${how}.\n`;
  const likely = (yeast: string, how: string) => each(dough(yeast, how), risingOf)[0]?.likely ?? Number.NaN;

  test('doubles in 60 to 90 min at 25 °C with 1 %, and sooner where it is warmer or has more', () => {
    const plain = likely('5 g       instant yeast', 'at 25 C for 1 h');
    expect(plain).toBeGreaterThan(60);
    expect(plain).toBeLessThan(90);
    expect(likely('5 g       instant yeast', 'at 30 C for 1 h')).toBeLessThan(plain / 1.2);
    expect(likely('10 g      instant yeast', 'at 25 C for 1 h')).toBeLessThan(plain / 1.6);
    expect(likely('14 g      fresh yeast', 'at 25 C for 1 h')).toBeCloseTo(plain, -1);
  });

  // 8 to 16 h at 4 °C against 60 to 90 min at 24 to 27: 6 to 16 times as long.
  test('in the cold takes 6 to 16 times as long', () => {
    const ratio =
      likely('5 g       instant yeast', 'at 4 C for 12 h') / likely('5 g       instant yeast', 'at 25 C for 1 h');
    expect(ratio).toBeGreaterThan(6);
    expect(ratio).toBeLessThan(16);
  });

  test('nothing where nobody says how warm it stands, or nothing raises it', () => {
    expect(each(dough('5 g       instant yeast', 'for 1 h'), risingOf)).toEqual([]);
    expect(each(dough('5 g       honey', 'at 25 C for 1 h').replace('yeast.', 'honey.'), risingOf)).toEqual([]);
  });
});

test('a hover on the place, the verb or the time says it, as an estimate', () => {
  const at = `${STEW}  do Put the pot in the refrigera$0tor overnight.\n`;
  expect(hoverAt(at)).toMatch(
    /^Cools: in the middle from 57 °C to 21 °C in about .* h \(.*\), to 5 °C in about .* h \(.*\), from 5 kg, 18 cm deep as one pot, in a refrigerator at 3 °C; an estimate: a thermometer decides$/m,
  );
  expect(hoverAt(at.replace('refrigera$0tor', 'refrigerator').replace('overnight', 'over$0night'))).toMatch(
    /^Cools: /m,
  );
  expect(hoverAt(at.replace('refrigera$0tor', 'refrigerator').replace('Simmer', 'Sim$0mer'))).not.toMatch(/Cools/);
});
