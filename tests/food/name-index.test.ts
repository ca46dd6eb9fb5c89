/** The keys that a start takes from their table are those of the names. */
import { expect, test } from 'vitest';
import { keyLinesOf, keysIn, keysOf } from '../../server/src/food/name-index.ts';
import { readFoods, readKeys } from '../../server/src/food/tables.ts';

test('each line of the table gives the keys of its food', () => {
  const foods = readFoods();
  const { lines } = readKeys();
  expect(foods.length).toBeGreaterThan(500);
  expect(foods.map((food, at) => keysIn(lines[at] ?? '', food.called))).toEqual(keysOf(foods));
});

test('a name that an earlier food has gives no key, and one that is spelled otherwise its own', () => {
  const row = (name: string, ...names: string[]) => ({
    id: name,
    name,
    names,
    class: 'other' as const,
    read: () => {
      throw new Error('no food is read for its key');
    },
  });
  const foods = [row('Egg', 'eggs', 'hen’s egg'), row('egg', 'Brown Egg')];
  const lines = keyLinesOf(foods);
  expect(lines).toEqual(['\t-\then egg', '-']);
  expect(foods.map(({ name, names }, at) => keysIn(lines[at] ?? '', [name, ...names]))).toEqual(keysOf(foods));
});
