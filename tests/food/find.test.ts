import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import modifiersText from '../../server/data/foods/modifiers.tsv';
import { builtInBook } from '../../server/src/food/book.ts';
import type { FoodMatch } from '../../server/src/food/food.ts';
import { keyOf } from '../../server/src/food/names.ts';
import aroundText from './around-nouns.tsv';
import phrasesText from './phrases.tsv';

const book = builtInBook();

const PHRASES = phrasesText
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [phrase = '', found = '', form = '', not = ''] = line.split('\t');
    return { phrase, found, form, not: not === '' ? [] : not.split(';') };
  });

function foundBy(match: FoodMatch): string {
  if (match.kind === 'food') return match.food.id;
  return match.kind === 'ambiguous' ? 'either' : 'none';
}

function idsOf(match: FoodMatch): readonly string[] {
  if (match.kind === 'food') return [match.food.id];
  return match.kind === 'ambiguous' ? match.foods.map((food) => food.id) : [];
}

describe('what cooks write', () => {
  test('the table is as long as it should be', () => {
    expect(PHRASES.length).toBeGreaterThanOrEqual(400);
    expect(PHRASES.filter((row) => row.not.length > 0).length * 3).toBeGreaterThanOrEqual(PHRASES.length);
  });

  test.each(PHRASES)('$phrase is $found', ({ phrase, found, form, not }) => {
    const match = book.find(phrase);
    expect(foundBy(match)).toBe(found);
    expect(match.kind === 'food' ? (match.form ?? '') : '').toBe(form);
    for (const id of not) {
      expect(book.byId(id), `${id} is a food`).toBeDefined();
      expect(idsOf(match)).not.toContain(id);
    }
  });

  test('case, plural, hyphen, apostrophe and accent change nothing', () => {
    const variants = [
      ['Plain Flour', 'PLAIN FLOUR', 'plain-flour', ' plain  flour '],
      ['confectioners sugar', "confectioner's sugar", 'confectioners’ sugar', "CONFECTIONERS' SUGAR"],
      ['tomato', 'tomatoes', 'Tomatoes'],
      ['creme fraiche', 'crème fraîche', 'Crème-fraîche'],
      ['cherries', 'cherry'],
      ['bay leaf', 'bay leaves', 'bay-leaves'],
    ];
    for (const same of variants) {
      const ids = same.map((words) => foundBy(book.find(words)));
      expect(new Set(ids).size, same.join(' / ')).toBe(1);
      expect(ids[0]).not.toBe('none');
    }
  });

  test('every name of every food finds that food, alone and in the plural', () => {
    for (const food of book.all()) {
      for (const name of [food.name, ...food.names]) expect(foundBy(book.find(name)), name).toBe(food.id);
    }
  });
});

describe('words around a noun', () => {
  test.each(
    aroundText
      .trim()
      .split('\n')
      .slice(2)
      .map((row) => row.split('\t')),
  )('%s is %s', (phrase = '', found = '', unread = '') => {
    const match = book.find(phrase);
    expect(foundBy(match)).toBe(found);
    expect(match.kind === 'food' ? (match.unread ?? []).join(' ') : '').toBe(unread);
  });

  test('each stands in its table as names are kept, in classes that there are', () => {
    const classes = new Set<string>(['plants', 'flesh', ...book.all().map((food) => food.class)]);
    for (const row of modifiersText.trim().split('\n').slice(2)) {
      const [says = '', kinds = '', words = '', source = ''] = row.split('\t');
      expect(source, says).not.toBe('');
      if (kinds !== 'any')
        for (const kind of kinds.replace('any but ', '').split(';')) expect(classes, says).toContain(kind);
      for (const word of words.split(' ')) expect(keyOf(word), says).toBe(word);
    }
  });

  test('what is made with less of something is the same food, and how much is left is not known', () => {
    const chickpeas = book.find('canned low-sodium chickpeas');
    const plain = book.find('canned chickpeas');
    if (chickpeas.kind !== 'food' || plain.kind !== 'food') throw new Error('no food');
    expect(plain.food.per100.sodium).toBeGreaterThan(0);
    expect(chickpeas.food.per100).not.toHaveProperty('sodium');
    expect(chickpeas.food.per100.protein).toBe(plain.food.per100.protein);
    const feta = book.find('fat-free feta');
    expect(feta.kind === 'food' && [feta.food.per100.fat, feta.food.allergens.eu]).toEqual([undefined, ['milk']]);
  });
});

describe('flesh that is cooked already', () => {
  test.each(['cooked crayfish tails', 'grilled swordfish', 'roast goose'])(
    '%s is not raw, and what cooking made of it is not known',
    (words) => {
      const match = book.find(words);
      if (match.kind !== 'food') throw new Error(match.kind);
      expect(match.food.roles).not.toContain('raw risk');
      expect(match.food.per100).toEqual({});
      expect(match.food.allergens).toEqual(book.byId(match.food.id)?.allergens);
    },
  );

  test.each([
    'half-cooked prawns',
    'partially cooked shrimp',
    'seared swordfish',
    'goose to be roasted',
    'roasting chicken',
    'pre-soaked mussels',
  ])('%s may be raw', (words) => {
    const match = book.find(words);
    expect(match.kind === 'food' ? match.food.roles.includes('raw risk') : match.kind === 'unknown').toBe(true);
  });
});

describe('a near miss', () => {
  test.each([
    ['buter', 'butter'],
    ['unslated butter', 'unsalted-butter'],
    ['choclate chips', 'chocolate-chip'],
    ['parmasan', 'parmesan'],
    ['worcester sause', 'worcestershire-sauce'],
    ['cinamon', 'cinnamon'],
    ['zuchini', 'courgette'],
    ['gluten-free crumpets', 'crumpet'],
    ['papaya jam', 'jam'],
    ['smoked halibut', 'halibut'],
    ['smoked roquefort', 'roquefort'],
  ])('%s offers %s', (words, id) => {
    const match = book.find(words);
    expect(match.kind).toBe('unknown');
    if (match.kind !== 'unknown') return;
    expect(match.near.map((food) => food.id)).toContain(id);
    expect(match.near.length).toBeLessThanOrEqual(3);
  });

  test('nothing like a food offers nothing', () => {
    for (const words of ['xqzzv', '12345', 'widget gadget thing']) {
      const match = book.find(words);
      expect(match.kind === 'unknown' ? match.near : ['found']).toEqual([]);
    }
  });
});

describe('a name that the book does not have', () => {
  test.each([
    ['cockerel fillet', 'poultry', true],
    ['yak, minced', 'meat', true],
    ['ground elk', 'ground meat', true],
    ['iberico pork presa', 'meat', true],
    ['breaded chicken', 'poultry', true],
    ['fillet of horse', 'meat', true],
    ['smoked zander', 'fish', false],
    ['Jersey milk', 'milk', false],
    ['pecan milk', 'milk', false],
    ['cauliflower steak', 'vegetable', false],
    ['chestnut lettuce', 'vegetable', false],
    ['prawn mushrooms', 'mushroom', false],
    ['fish masala', 'spice', false],
    ['nettle stock', 'stock', false],
    ['scotch eggs', 'egg', false],
    ['chicken nuggets', undefined, false],
    ['vegan mince', undefined, false],
    ['mock goose', undefined, false],
    ['plant-based chicken', undefined, false],
    ['chicken of the woods', undefined, false],
    ['xyloquartz', undefined, false],
  ] as const)('%s is %s by its noun', (words, kind, raw) => {
    const match = book.find(words);
    if (match.kind !== 'unknown') throw new Error(`${words} is ${foundBy(match)}`);
    expect(match.class).toBe(kind);
    expect(match.raw === true).toBe(raw);
    expect(new Set(match.range?.map((food) => food.class) ?? [kind])).toEqual(new Set([kind]));
  });

  test.each([
    ['xyloquartz cheese', ['salt']],
    ['xyloquartz starter', ['yeast']],
    ['vegetarian gelatine', ['gelling']],
    ['xyloquartz', []],
  ])('%s may bring much of %j', (words, brings) => {
    const match = book.find(words);
    expect(match.kind === 'unknown' ? match.brings : match.kind).toEqual(brings);
  });

  test('a word that says which is told', () => {
    expect(book.find('bintje potatoes')).toMatchObject({ kind: 'food', unread: ['bintje'] });
  });

  test('what is a whole name is known', () => {
    for (const name of ['half and half', 'Stem Ginger', 'chicken thighs']) expect(book.knows(name), name).toBe(true);
    for (const name of ['salt and pepper', 'stem', '', 'flour '.repeat(1000)])
      expect(book.knows(name), name).toBe(false);
  });
});

describe('any text', () => {
  test('is answered without a throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' })), (text) => {
        const match = book.find(text);
        if (match.kind === 'unknown') expect(match.near.length).toBeLessThanOrEqual(3);
      }),
      { numRuns: 300 },
    );
  });

  test('of a megabyte is answered', () => {
    const long = [
      ' butter'.repeat(150_000),
      'a'.repeat(1 << 20),
      ','.repeat(1 << 20),
      '\u0301'.repeat(1 << 20),
      'or '.repeat(400_000),
      '('.repeat(1 << 20),
    ];
    for (const text of long) expect(['food', 'unknown', 'ambiguous']).toContain(book.find(text).kind);
  });

  test.each([
    '',
    ' ',
    ',',
    '()',
    '%',
    '½',
    '\0',
    '\ud800',
    'constructor',
    '__proto__',
    'toString',
    'of',
    'chopped',
    '🍅',
  ])('%j is no food', (words) => {
    expect(book.find(words).kind).toBe('unknown');
  });
});
