/**
 * Tested recipes for jars are no errors as they are printed, and their figures are those of the table; with half of what is sour they are errors,
 * but for those of which even half is the usual.
 */
import { describe, expect, test } from 'vitest';
import tested from '../../../server/data/tested-preserves.json' with { type: 'json' };
import { open } from '../../support/harness.ts';
import { TESTED, textOf } from './tested-preserves.ts';

const found = (text: string) => open(text).findings.open.filter(({ code }) => code === 'low-acid-preserve');
const shown = (text: string): string[] => found(text).map(({ severity }) => severity);

/** Twice as sour as half vinegar of 5 %, or mostly of tomatoes, which want 0.1 %. */
const STRONG: ReadonlySet<string> = new Set([
  'Pickled carrots',
  'Pickled sweet green tomatoes',
  'Piccalilli',
  'Pickled pepper-onion relish',
  'Tomato salsa using paste tomatoes',
]);

describe('a tested recipe', () => {
  test.each(TESTED.map((each) => [each.name, each] as const))('%s', (name, each) => {
    expect(shown(textOf(each))).not.toContain('error');
    expect(shown(textOf(each, 0.5))).toEqual(STRONG.has(name) ? [] : ['error']);
  });

  test.each(tested.recipes.map((row) => [row.name, row] as const))('%s holds what the table says', (name, row) => {
    const printed = TESTED.find((each) => each.name.toLowerCase() === name.toLowerCase());
    if (printed === undefined) throw new Error(`${name} is not among those printed`);
    expect(printed.page).toBe(row.page);
    // Thinned until it is found, what is said is what it holds.
    const [thin] = found(textOf(printed, 0.7));
    expect(((thin?.said.value ?? 0) / 0.7) * 100).toBeGreaterThan(row.acid * 0.99);
    expect(thin?.severity).toBe('error');
    expect(thin?.said.message).toContain(`page ${row.page}`);
  });
});

describe('between the tested recipe and the usual', () => {
  test.each([
    'Pickled asparagus',
    'Marinated whole mushrooms',
    'Pickled bell peppers',
    'Chile salsa',
    'Chile salsa II',
  ])('a warning names it: %s', (name) => {
    const printed = TESTED.find((each) => each.name === name);
    const [only, ...more] = found(printed === undefined ? '' : textOf(printed));
    expect([only?.severity, more.length]).toEqual(['warning', 0]);
    expect(only?.said.message).toContain(`${name.toLowerCase().replace(/ ii$/, ' II')} (USDA Complete Guide, page`);
  });
});

describe('within a fifth of the usual', () => {
  test.each(['Bread-and-butter pickles', 'Quick sweet pickles', 'Pickled beets'])('it is pointed to: %s', (name) => {
    const printed = TESTED.find((each) => each.name === name);
    const [only, ...more] = found(printed === undefined ? '' : textOf(printed));
    expect([only?.severity, more.length]).toEqual(['info', 0]);
    expect(only?.said.message).toContain(`${name.toLowerCase()} (USDA Complete Guide, page`);
  });
});

const jar = (list: readonly string[], ...steps: readonly string[]): string =>
  `recipe Jar\n${list.map((line) => `  ${line}\n`).join('')}${steps.map((step) => `  do ${step}\n`).join('')}  do Seal the jars, boil them for 10 min and keep in the pantry for a year.\n`;

const PACKS = 'Pack everything into jars and pour the boiling liquor over.';

describe('what no tested recipe has keeps the usual', () => {
  // At the share of the bell peppers, 0.77 %: 30 g of acid in 3,900 g.
  test.each([
    ['green beans', ['3 kg green beans']],
    ['carrots', ['3 kg carrots']],
    ['hot peppers', ['3 kg jalapeños']],
    ['garlic', ['3 kg garlic']],
    ['bell peppers half of which are carrots', ['1.5 kg bell peppers', '1.5 kg carrots']],
    ['more onions than cucumbers', ['1 kg pickling cucumbers', '2 kg onions']],
    ['a three-bean salad of kidney beans alone', ['3 kg canned kidney beans']],
    ['mushrooms without the oil', ['3 kg mushrooms']],
  ])('%s', (_, vegetables) => {
    const text = jar([...vegetables, '600 g white vinegar (5 %)', '300 g water'], 'Boil the vinegar and water.', PACKS);
    const [only] = found(text);
    expect(only?.severity).toBe('error');
    expect(only?.said.band).toEqual([0.011, null]);
  });
});

describe('the strength of the vinegar counts', () => {
  const bells = (vinegar: string): string =>
    jar(['3 kg bell peppers', `600 g ${vinegar}`, '300 g water'], 'Boil the vinegar and water.', PACKS);
  test.each([
    ['white vinegar (5 %)', ['warning']],
    ['white vinegar, 5 % acidity', ['warning']],
    ['white vinegar (4 %)', ['error']],
    ['white vinegar (4 percent)', ['error']],
    ['white vinegar (10 %)', []],
  ])('%s', (vinegar, severities) => {
    expect(shown(bells(vinegar))).toEqual(severities);
  });
});

describe('water that a step drains off is in no jar', () => {
  const LIST = ['3.6 kg pickling cucumbers', '1.4 l white vinegar (5 %)', '325 g canning salt'];
  const DILLS = [...LIST, '9.5 l water'];
  const fills = 'Pack the cucumbers into jars and cover with the boiling solution.';
  const safe: readonly (readonly [string, readonly string[], readonly string[]])[] = [
    [
      'by amounts of one line',
      DILLS,
      [
        'Dissolve 225 g of the salt in 7.6 l of the water, pour over the cucumbers and leave for 12 h. Drain.',
        'Boil the vinegar with the rest of the salt and the rest of the water.',
        fills,
      ],
    ],
    [
      'by two lines of one name',
      [...LIST, '7.6 l water', '1.9 l water'],
      [
        'Dissolve 225 g of the salt in 7.6 l water, pour over the cucumbers and leave for 12 h. Drain.',
        'Boil the vinegar with 100 g of the salt and 1.9 l water.',
        fills,
      ],
    ],
    [
      'rinsed then',
      DILLS,
      ['Soak the cucumbers in the water with the salt overnight. Drain and rinse.', 'Boil the vinegar.', fills],
    ],
  ];
  test.each(safe)('%s', (_, list, steps) => {
    expect(shown(jar(list, ...steps))).not.toContain('error');
  });

  const danger: readonly (readonly [string, readonly string[], readonly string[]])[] = [
    ['it goes in', DILLS, ['Boil the vinegar, water and salt.', fills]],
    [
      'it is kept',
      DILLS,
      [
        'Soak the cucumbers in the water with the salt overnight. Drain, reserving the brine.',
        'Boil the brine with the vinegar.',
        fills,
      ],
    ],
    [
      'it is drained into a pan',
      DILLS,
      [
        'Soak the cucumbers in the water with the salt overnight. Drain into a pan.',
        'Add the vinegar to the pan and boil.',
        fills,
      ],
    ],
    [
      'it was drained with the vinegar',
      DILLS,
      ['Simmer the cucumbers in the vinegar, water and salt for 2 min. Drain.', 'Boil the liquor again.', fills],
    ],
  ];
  test.each(danger)('but not where %s', (_, list, steps) => {
    expect(shown(jar(list, ...steps))).toContain('error');
  });
});
