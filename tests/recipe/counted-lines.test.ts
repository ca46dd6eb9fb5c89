/** Lines whose count is a length, a likeness or a part of the name, and cans that are drained. Figures: `lengths.tsv`, `likeness.tsv`, `drained.tsv`. */
import { expect, test } from 'vitest';
import { open } from '../support/harness.ts';

test.each<[string, string, number, number]>([
  ['1 inch piece of ginger', 'fresh ginger', 4, 20],
  ['2.5 cm piece ginger', 'fresh ginger', 4, 20],
  ['5 cm piece of cucumber', 'cucumber', 35, 90],
  ['a piece of butter the size of a walnut', 'butter', 13, 33],
  ['1 (15 oz) can black beans, rinsed and drained', 'canned black bean', 220, 300],
  ['1 (15 oz) can black beans, not drained', 'canned black bean', 425, 426],
  ['1 (15 oz) can black beans', 'canned black bean', 425, 426],
  ['2 cube steaks', 'silverside', 0, 0],
  ['1 rack of lamb', 'lamb chop', 400, 1100],
  ['1 stick cinnamon', 'cinnamon', 1, 7],
  ['2 cups cooked spinach', 'cooked spinach', 300, 420],
  ['1 cup cooked cabbage', 'cabbage', 130, 170],
  ['2 cups diced cooked lamb', 'cooked lamb', 240, 310],
  ['2 cups cooked, chopped chicken', 'cooked chicken', 250, 310],
])('%s is %s', (line, name, low, high) => {
  const [found] = open(`recipe Trial\npart p\n  ${line}\n`).recipe.parts.flatMap((part) => part.head.ingredients);
  expect(found?.food?.name).toBe(name);
  if (high === 0) return expect(found?.weighed.known).toBe(false);
  const grams = found?.weighed.known ? found.weighed.grams : { low: 0, high: 0 };
  expect(grams.low).toBeGreaterThanOrEqual(low);
  expect(grams.high).toBeLessThanOrEqual(high);
});
