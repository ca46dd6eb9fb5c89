/** Foods by the words of either side of the ocean: the table, and books that speak so. */
import { describe, expect, test } from 'vitest';
import languageText from '../../server/data/foods/language.tsv';
import { bookIn, builtInBook } from '../../server/src/food/book.ts';
import { foodsOf } from '../../server/src/food/food.ts';
import { foodWords, LANGUAGES, meantIn } from '../../server/src/food/language.ts';
import { keyOf } from '../../server/src/food/names.ts';
import { parseSettings } from '../../server/src/workspace/settings.ts';
import { completionsAt, hoverAt } from '../support/at-cursor.ts';

const book = builtInBook();
const called = (words: string, spoken = book): string | undefined => {
  const match = spoken.find(words);
  return match.kind === 'food' ? match.food.name : undefined;
};

describe('the table of words', () => {
  test.each([...foodWords()])('%s has both names in the book', (id, words) => {
    const food = book.byId(id);
    const keys = [food?.name ?? '', ...(food?.names ?? [])].map(keyOf);
    for (const language of LANGUAGES) {
      expect(keys).toContain(keyOf(words[language]));
      expect(book.find(words[language])).toMatchObject({ kind: 'food', food: { id } });
    }
  });

  test('each row has a source, and no food two rows', () => {
    const rows = languageText
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'))
      .slice(1);
    expect(rows.every((row) => row.split('\t').length === 4 && row.split('\t')[3] !== '')).toBe(true);
    expect(foodWords().size).toBe(rows.length);
  });
});

describe('a book in a language', () => {
  test.each([
    ['plain flour', 'plain flour', 'all-purpose flour'],
    ['all purpose flour', 'plain flour', 'all-purpose flour'],
    ['eggplant', 'aubergine', 'eggplant'],
    ['powdered sugar, sifted', 'icing sugar', 'powdered sugar'],
    ['cilantro', 'coriander leaf', 'cilantro'],
    // Has a name of its own that both use.
    ['caster sugar', 'granulated sugar', 'granulated sugar'],
    ['butter', 'butter', 'butter'],
  ])('%s is %s, or %s', (words, british, american) => {
    expect(called(words, bookIn('british'))).toBe(british);
    expect(called(words, bookIn('american'))).toBe(american);
  });

  test.each(LANGUAGES)('every name finds the same food in %s', (language) => {
    const spoken = bookIn(language);
    const ids = (words: string, from = book) => {
      const match = from.find(words);
      return match.kind === 'food' ? [match.food.id] : match.kind === 'ambiguous' ? match.foods.map((f) => f.id) : [];
    };
    for (const { name, names } of book.all())
      for (const words of [name, ...names]) expect(ids(words, spoken), words).toEqual(ids(words));
    expect(spoken.all().map((f) => f.id)).toEqual(book.all().map((f) => f.id));
  });
});

describe('a house in a language', () => {
  const labels = (typed: string, language?: 'british' | 'american') =>
    completionsAt(`recipe x\n  200 g ${typed}$0\n`, false, language && { language });

  test.each<['british' | 'american', string, string, string]>([
    ['british', 'aub', 'aubergine', 'eggplant'],
    ['american', 'egg', 'eggplant', 'aubergine'],
    ['british', 'icing', 'icing sugar', 'powdered sugar'],
    ['american', 'powdered', 'powdered sugar', 'icing sugar'],
  ])('in a %s house `%s` offers %s', (language, typed, own, other) => {
    const offered = labels(typed, language).map(({ label }) => label);
    expect(offered).toContain(own);
    expect(offered).not.toContain(other);
  });

  test('its own word comes first, and what the other side says is still offered', () => {
    const all = (language: 'british' | 'american') => labels('su', language).map(({ label }) => label);
    expect(all('american').indexOf('superfine sugar')).toBeGreaterThanOrEqual(0);
    const [own, other] = ['caster sugar', 'superfine sugar'].map((word) =>
      labels('sugar', 'british').findIndex(({ label }) => label === word),
    );
    expect(own).toBeGreaterThanOrEqual(0);
    expect(other === -1 || (own ?? 0) < (other ?? 0)).toBe(true);
  });

  test('a food says what its largest measure weighs in the house', () => {
    const [flour] = labels('plain flour').filter(({ label }) => label === 'plain flour');
    expect(flour?.detail).toMatch(/^flour, 1 cup = 1[0-9]{2} g$/);
  });

  test('what the book calls a food is said in its words', () => {
    const text = (language: 'british' | 'american') =>
      hoverAt('recipe x\n  200 g AP $0flour\n  do Mix.\n', { language });
    expect(text('british')).toContain('plain flour');
    expect(text('american')).toContain('all-purpose flour');
  });

  test('the setting is read, and another word is refused', () => {
    expect(parseSettings('{ "language": "american" }').settings.language).toBe('american');
    expect(parseSettings('{}').settings.language).toBeUndefined();
    expect(parseSettings('{ "language": "french" }').problems).toEqual([expect.stringContaining('british')]);
  });
});

describe('a word that is two foods', () => {
  const foods = (name: string) => foodsOf(book.find(name));
  test.each([
    ['british', 'tomato purée', true, 'tomato-paste'],
    ['british', 'tomato purée', false, undefined],
    ['american', 'tomato puree', true, 'tomato-puree'],
    ['british', 'corn flour', false, 'cornflour'],
    ['american', 'corn flour', false, 'maize-flour'],
    ['british', 'cream', true, undefined],
  ] as const)('in %s, %s by the spoon: %s, is %s', (language, name, isSpoon, id) => {
    expect(meantIn(language, foods(name), isSpoon)?.id).toBe(id);
  });
});
