/** Whether what raw flesh lay in is eaten: USDA FSIS, marinades (for consumers; from memory). The recipes are invented. */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

function isFound(...steps: readonly string[]): boolean {
  const list = ['800 g chicken thighs', '100 ml soy sauce', '50 g honey', '20 g ginger'];
  const text = [...list.map((line) => `  ${line}`), ...steps.map((step) => `  do ${step}`)].join('\n');
  const { findings } = open(`recipe Test\n${text}\n`);
  return findings.open.some(({ code, severity }) => code === 'raw-contact' && severity !== 'info');
}

const SOAK = 'Whisk the soy, honey and ginger in a bowl. Thighs in, overnight in the fridge.';
const GRILL = 'Lift the thighs out and grill to 75 C inside.';

describe('a marinade again', () => {
  test.each([
    ['the rest of it', [SOAK, GRILL, 'Pour what is left in the dish over the top.']],
    ['from the bowl', [SOAK, GRILL, 'Spoon it over everything, straight from the bowl.']],
    [
      'not to be thrown away',
      [SOAK, GRILL, "Don't you dare throw away the basin! The juice is poured over the thighs."],
    ],
    [
      'of all but the meat',
      [
        'Mix everything but the thighs, sink the thighs in it and refrigerate overnight.',
        GRILL,
        'Pour the rest over and serve.',
      ],
    ],
    ['by its name', [SOAK, GRILL, 'Pour the soy sauce over the thighs.']],
  ])('%s', (_, steps) => {
    expect(isFound(...steps)).toBe(true);
  });
  test.each([
    ['boiled', [SOAK, GRILL, 'Boil what is left in the dish for 3 minutes and pour it over.']],
    [
      'kept at a boil',
      [SOAK, GRILL, 'Tip what is left into a pot, keep it at a full rolling boil for 5 minutes, and pour it over.'],
    ],
    ['thrown away', [SOAK, 'Throw the marinade away.', GRILL, 'Spoon the honey from the jar over.']],
    [
      'some kept apart',
      [
        'Whisk the soy, honey and ginger. Set half aside. Thighs in the other half, overnight in the fridge.',
        GRILL,
        'Pour the half set aside over.',
      ],
    ],
    ['roasted with it', [SOAK, 'Roast the thighs in the marinade at 200 C to 75 C inside and spoon it over.']],
  ])('but not what is %s', (_, steps) => {
    expect(isFound(...steps)).toBe(false);
  });
});

describe('a brine that is made in two goes, and has the meat on its list', () => {
  const found = (last: string): boolean =>
    open(
      `recipe Test\npart brine as brine\n  1 l water\n  60 g fine salt\n  4 pork chops\n  do Warm a quarter of the water with the salt until dissolved, add the rest of the water and chill to 4 C.\n  do Lay the chops in the brine and keep at 4 C for 4 h.\n  do Lift out, throw the brine away and dry the chops.\npart grilling\n  do Grill the chops for 12 min, until the centre reads 63 C.\n  do ${last}\n`,
    ).findings.open.some(({ code }) => code === 'raw-contact');
  test('poured over', () => {
    expect(found('Spoon some of the used brine over the chops.')).toBe(true);
  });
  test('gone', () => {
    expect(found('Rest for 5 min and serve.')).toBe(false);
  });
});

describe('a plate that raw patties lay on', () => {
  const found = (last: string): boolean =>
    open(
      `recipe Test\n  600 g ground beef\n  4 burger buns\n  do Shape the beef in four patties.\n  do Grill for 8 min, until the centers read 160 F.\n  do ${last}\n`,
    ).findings.open.some(({ code }) => code === 'raw-contact');
  test('again', () => {
    expect(found('Fill the buns and bring them out on the plate that held the raw patties.')).toBe(true);
    expect(found('Fill the buns and serve them on the tray which carried the raw meat.')).toBe(true);
  });
  test('washed, or another', () => {
    expect(found('Fill the buns. Wash the plate that held the raw patties before you use it again.')).toBe(false);
    expect(found('Fill the buns and serve them on a clean plate.')).toBe(false);
  });
});
