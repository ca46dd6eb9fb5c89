/**
 * Every kind says within what it is heated, or that it is not. That recipes which work lie within is held where they are kept quiet.
 */
import { describe, expect, test } from 'vitest';
import dishesText from '../../server/data/dishes.tsv';
import text from '../../server/data/heat/spans.tsv';
import { spansOf } from '../../server/src/heat/spans.ts';
import { rowsIn, wordsIn } from '../../server/src/measure/table-rows.ts';
import { FAMILIES } from '../../server/src/recipe/list/families.ts';
import { KINDS } from '../../server/src/recipe/measures/kinds.ts';

const rows = rowsIn(text);

test.each(KINDS.map(({ name }) => name))('%s has a row', (name) => {
  expect(rows.some(([of]) => wordsIn(of).includes(name))).toBe(true);
});

describe.each(rows)('%s, %s, %s', (of, way, needs, coldest, hottest, least, most, source) => {
  test('its ends are in order, and it has a source', () => {
    expect(wordsIn(of)).not.toEqual([]);
    expect(['oven', 'stove', 'fat', 'rise', 'live', 'inside', 'shelf', 'cold', 'none']).toContain(way);
    if (needs !== '') expect(FAMILIES).toContain(needs);
    if (coldest !== '' && hottest !== '') expect(Number(coldest)).toBeLessThan(Number(hottest));
    if (least !== '' && most !== '') expect(Number(least)).toBeLessThan(Number(most));
    expect(source).not.toBe('');
  });
});

const dishes = rowsIn(dishesText).map(
  ([words = '', , , , , needs = '', of = '', source = '']) => [words, needs, of, source] as const,
);

describe.each(dishes)('%s, with %s', (words, needs, of, source) => {
  test('is held against rows that there are, where families lie that there are', () => {
    expect(wordsIn(words)).not.toEqual([]);
    expect(wordsIn(of).filter((each) => !rows.some(([names]) => wordsIn(names).includes(each)))).toEqual([]);
    const families = wordsIn(needs).flatMap((row) => row.split('/').map((each) => each.replace(/^(?:no|only) /, '')));
    expect(families.filter((each) => !FAMILIES.some((family) => family === each))).toEqual([]);
    expect(source).not.toBe('');
  });
});

test('what a row is of is a kind, a dish, or what lies there', () => {
  const heated = dishes.flatMap(([, , of]) => wordsIn(of));
  const known = new Set<string>([...KINDS.map(({ name }) => name), ...heated]);
  expect(rows.flatMap(([of]) => wordsIn(of)).filter((each) => !known.has(each) && !/^any\b/.test(each))).toEqual([]);
});

test('a row of several kinds is one of each', () => {
  expect(spansOf('sweet paste', 'oven')).toEqual(spansOf('shortcrust', 'oven'));
});
