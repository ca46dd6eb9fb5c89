/**
 * Cooling, holding, freezing and jars against the published rules: FDA Food Code 2022, 3-402.11, 3-501.14, 3-501.16 and 3-501.19 (the
 * cooling and holding rules as state rules that adopt them print them; 3-402.11 from memory); USDA FSIS, danger zone (for
 * consumers, from memory); USDA Complete Guide to Home Canning, 2015 (from memory).
 */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const codes = (text: string, rules: 'us-food-code-2022' | 'usda-fsis-home' = 'us-food-code-2022') =>
  open(text, { foodSafety: rules })
    .findings.open.map((f) => f.code)
    .filter((code) => code === 'cooling-too-slow' || code === 'held-too-warm');

const stew = (step: string) =>
  `recipe Stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do ${step}\n`;

describe('cooling, 3-501.14: 57 to 21 °C in 2 h, to 5 °C in 6 h in all', () => {
  test.each<[string, string[]]>([
    ['Cool to 21 C within 2 h and to 5 C within 6 h in all.', []],
    ['Cool to 70 F within 2 h and to 41 F within 6 h in all.', []],
    ['Cool to 21 C within 3 h.', ['cooling-too-slow']],
    ['Cool to 21 C within 2 h and to 5 C within 8 h in all.', ['cooling-too-slow']],
    ['Cool for 1 h 30 min, then chill at 4 C.', []],
    ['Cool for 2 h, then chill at 4 C.', []],
    ['Cool for 3 h, then chill at 4 C.', ['cooling-too-slow']],
    ['Leave to cool overnight, then chill at 4 C.', ['cooling-too-slow']],
    ['Cool over ice for 3 h.', []],
    ['Chill at 4 C overnight.', []],
    ['Cool in the fridge overnight.', []],
    ['Cool fast, chill at 4 C and use within 4 d.', []],
    ['Leave to cool and serve within 3 d.', []],
    ['Cool for 3 h, then chill at 4 C and use within 4 d.', ['cooling-too-slow']],
  ])('%s', (step, want) => {
    expect(codes(stew(step))).toEqual(want);
  });
});

test('a long time in the room is said as it is written', () => {
  const said = (step: string) => open(stew(step)).findings.open.map((f) => f.said.message.split(' ', 3).join(' '));
  expect(said('Leave to cool overnight.')).toEqual(['Overnight in the']);
  expect(said('Leave to cool for 9 h.')).toEqual(['9 h in']);
});

describe('left out, 3-501.19: 4 h; by the home rule 2 h', () => {
  test.each<[string, number, number]>([
    ['Stand at room temperature for 1 h.', 0, 0],
    ['Stand at room temperature for 3 h.', 0, 1],
    ['Stand at room temperature for 5 h.', 1, 1],
  ])('%s', (step, trade, home) => {
    expect(codes(stew(step))).toHaveLength(trade);
    expect(codes(stew(step), 'usda-fsis-home')).toHaveLength(home);
  });
});

describe('holding, 3-501.16: 57 °C or above, 5 °C or below; home 60 and 4.4', () => {
  test.each<[string, number, number]>([
    ['Hold at 63 C.', 0, 0],
    ['Keep hot at 60 C.', 0, 0],
    ['Hold at 140 F or higher.', 0, 0],
    ['Hold at 135 F.', 0, 1],
    ['Keep warm at 50 C.', 1, 1],
    ['Chill to serve, and keep at 4 C.', 0, 0],
    ['Keep at 41 F.', 0, 0],
    ['Store at 8 C.', 1, 1],
    ['Keep at 50 F.', 1, 1],
    ['Keep warm at 50 C for service, 3 h.', 1, 1],
    ['Hold hot at 55 C for 4 h on the buffet.', 1, 1],
    ['Hold at 60 C for 35 min.', 0, 0],
  ])('%s', (step, trade, home) => {
    // Chicken, for which the roasts' 54 °C does not hold.
    const text = stew(step).replaceAll('stewing beef', 'chicken thighs').replaceAll('the beef in', 'the thighs in');
    expect(codes(text)).toHaveLength(trade);
    expect(codes(text, 'usda-fsis-home')).toHaveLength(home);
  });

  test('a roast may be held at 54 °C', () => {
    const roast = (c: number) =>
      `recipe Roast as roast\n  2 kg      beef\n  do Roast the beef at 180 C until the centre reads 63 C.\n  do Keep at ${c} C.\n`;
    expect(codes(roast(55))).toEqual([]);
    expect(codes(roast(50))).toEqual(['held-too-warm']);
    expect(codes(stew('Keep hot at 55 C.'))).toEqual(['held-too-warm']);
  });
});

describe('what keeps by itself is left in peace', () => {
  test.each([
    'recipe Loaf as lean bread\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  4 g       instant yeast\n  do Mix the flour, water, salt and yeast and prove at 24 C for 3 h.\n  do Bake at 220 C for 35 min until the centre reads 95 C.\n  do Cool on a rack for 4 h.\n',
    'recipe Kraut as lacto-ferment\n  1 kg      white cabbage\n  24 g      fine salt\n  do Rub the cabbage with the salt.\n  do Ferment at 18 C for 18 d, and stand at room temperature for 2 d more.\n',
    'recipe Yoghurt\n  1 l       whole milk\n  50 g      plain yoghurt\n  do Heat the milk to 85 C and cool to 45 C.\n  do Stir in the yoghurt and keep at 43 C for 8 h.\n',
    'recipe Plum jam as jam\n  1 kg      plums\n  800 g     granulated sugar\n  do Boil the plums with the sugar until the jam reads 105 C.\n  do Fill into jars and leave to cool overnight.\n',
    'recipe Beans\n  300 g     dried white beans\n  1 l       water\n  do Soak the beans in the water overnight at room temperature.\n  do Boil for 90 min until soft.\n',
    'recipe Sponge as sponge\n  4 large   eggs\n  120 g     caster sugar\n  120 g     plain flour\n  do Whisk the eggs with the sugar and fold in the flour.\n  do Bake at 180 C for 25 min until it springs back.\n  do Cool on a rack for 3 h.\n',
  ])('%#', (text) => {
    expect(codes(text)).toEqual([]);
  });
});

describe('fish eaten raw, 3-402.11: −20 °C for 7 d, or −35 °C for 15 h', () => {
  const cured = (step: string) =>
    `recipe Cured salmon\n  800 g     salmon\n  40 g      fine salt\n  do ${step}\n  do Rub the salmon with the salt and chill at 4 C for 1 d.\n`;
  const raw = (text: string) => open(text).findings.open.filter((f) => f.code === 'no-safe-temperature').length;

  test.each<[string, number]>([
    ['Freeze the salmon at -20 C for 7 d and thaw at 4 C.', 0],
    ['Freeze the salmon at -35 C for 15 h and thaw at 4 C.', 0],
    ['Freeze the salmon at -20 C for 2 d and thaw at 4 C.', 1],
    ['Freeze the salmon at -18 C for 7 d and thaw at 4 C.', 1],
    ['Skin the salmon.', 1],
  ])('%s', (step, want) => {
    expect(raw(cured(step))).toBe(want);
  });
});

describe('jars (Complete Guide to Home Canning)', () => {
  const jars = (list: string, step: string) =>
    open(`recipe Jars\n${list}  do ${step}\n`).findings.open.filter((f) => f.code === 'low-acid-preserve').length;

  test.each<[string, string, string, number]>([
    [
      'tomatoes with 2 tbsp lemon juice a quart (some 900 g)',
      '  900 g     tomatoes\n  2 tbsp    lemon juice\n',
      'Pack the tomatoes in jars with the lemon juice, seal and boil for 85 min.',
      0,
    ],
    [
      'tomatoes with half a teaspoon of citric acid a quart',
      '  900 g     tomatoes\n  1/2 tsp   citric acid\n',
      'Pack the tomatoes in jars with the citric acid, seal and boil for 85 min.',
      0,
    ],
    ['tomatoes alone', '  900 g     tomatoes\n', 'Pack the tomatoes in jars, seal and boil for 85 min.', 1],
    [
      'pickles, half vinegar of 5 %',
      '  1 kg      cucumbers\n  500 g     white vinegar\n  500 g     water\n  40 g      fine salt\n',
      'Boil the vinegar, water and salt, pour over the cucumbers in jars, seal and process for 10 min.',
      0,
    ],
    [
      'pickles with a cup of vinegar in a gallon of water',
      '  2 kg      cucumbers\n  240 g     white vinegar\n  3.8 kg    water\n  40 g      fine salt\n',
      'Boil the vinegar, water and salt, pour over the cucumbers in jars, seal and process for 10 min.',
      1,
    ],
    [
      'figs with 2 tbsp lemon juice a quart (NCHFP)',
      '  900 g     figs\n  2 tbsp    lemon juice\n  200 g     water\n',
      'Boil the figs in the water, pack in jars with the lemon juice, close and boil the jars for 45 min.',
      0,
    ],
    [
      'figs without',
      '  900 g     figs\n  200 g     water\n',
      'Boil the figs in the water, pack in jars, close and boil the jars for 45 min.',
      1,
    ],
    [
      'a fig jam with its full sugar (2 parts of fruit to 1)',
      '  2 kg      figs\n  1 kg      granulated sugar\n',
      'Boil the figs with the sugar to 105 C, fill into jars and seal.',
      0,
    ],
    [
      'a banana spread with little sugar',
      '  1 kg      bananas, mashed\n  100 g     light brown sugar\n',
      'Simmer the bananas with the sugar, fill into hot jars and process for 10 min.',
      1,
    ],
    [
      'white peaches',
      '  2 kg      white peaches, peeled\n  500 g     water\n',
      'Pack the peaches in jars with the boiling water, seal and process for 25 min.',
      1,
    ],
    [
      'yellow peaches',
      '  2 kg      peaches, peeled\n  500 g     water\n',
      'Pack the peaches in jars with the boiling water, seal and process for 25 min.',
      0,
    ],
    [
      'mangoes in syrup with the juice of two lemons',
      '  900 g     mangoes, sliced\n  2         lemons, juiced\n',
      'Pack the mangoes in jars with the lemons, seal and process for 20 min.',
      0,
    ],
    [
      'a pumpkin butter that is chilled only once opened',
      '  2 kg      pumpkin, cubed\n  300 g     light brown sugar\n',
      'Simmer the pumpkin with the sugar, fill into jars and seal; refrigerate once opened.',
      1,
    ],
    [
      'the same in the other order',
      '  2 kg      pumpkin, cubed\n  300 g     light brown sugar\n',
      'Simmer the pumpkin with the sugar, fill into jars and seal. Once opened, keep in the fridge.',
      1,
    ],
    [
      'the same, kept in the fridge and eaten soon once open',
      '  2 kg      pumpkin, cubed\n  300 g     light brown sugar\n',
      'Simmer the pumpkin with the sugar, fill into jars and seal. Keep in the fridge, and eat within a week once opened.',
      0,
    ],
    [
      'beans pressure-cooked first, and then jarred',
      '  900 g     dried chickpeas\n  2 l       water\n',
      'Cook the chickpeas in the water under pressure for 30 min.\n  do Pack in jars, close the lids and keep in the larder.',
      1,
    ],
    [
      'mushrooms chilled overnight, and then jarred',
      '  1 kg      mushrooms\n  1 l       water\n',
      'Simmer the mushrooms in the water and chill overnight.\n  do Fill into jars, seal and boil the jars for 30 min.',
      1,
    ],
    [
      'the same, kept in the fridge',
      '  1 kg      mushrooms\n  1 l       water\n',
      'Simmer the mushrooms in the water.\n  do Fill into jars, seal and keep in the fridge for 3 d.',
      0,
    ],
    [
      'beans, 20 min at 11 lb of pressure',
      '  900 g     green beans\n',
      'Pack the beans in jars, seal and process at 11 lb pressure for 20 min.',
      0,
    ],
    [
      'beans in boiling water',
      '  900 g     green beans\n',
      'Pack the beans in jars, seal and process in boiling water for 3 h.',
      1,
    ],
  ])('%s', (_name, list, step, want) => {
    expect(jars(list, step)).toBe(want);
  });
});
