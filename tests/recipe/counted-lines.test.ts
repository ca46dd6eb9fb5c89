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
  // Small sorts, by practice; a small cauliflower weighs 265 g (USDA SR26, NDB 11135), and how much less a baby one, nobody says.
  ['18 button onions, peeled', 'pearl onion', 80, 460],
  ['2 Thai chiles', 'birds eye chilli', 1, 12],
  ['3 Persian cucumbers', 'persian cucumber', 150, 450],
  ['2 baby cauliflowers', 'cauliflower', 0, 0],
  // USDA SR26: strawberries, puréed, 232 a cup (NDB 09316); whole mustard seed 11.2 a tablespoon (SR21, NDB 02024, from memory).
  ['4 cups crushed blueberries', 'blueberry', 750, 1060],
  ['¼ cup mustard seed', 'mustard seed', 36, 51],
  ['1 quart dry milk, reconstituted', 'skimmed milk', 950, 1010],
  ['2 cups cooked, chopped chicken', 'cooked chicken', 250, 310],
])('%s is %s', (line, name, low, high) => {
  const [found] = open(`recipe Trial\npart p\n  ${line}\n`).recipe.parts.flatMap((part) => part.head.ingredients);
  expect(found?.food?.name).toBe(name);
  if (high === 0) return expect(found?.weighed.known).toBe(false);
  const grams = found?.weighed.known ? found.weighed.grams : { low: 0, high: 0 };
  expect(grams.low).toBeGreaterThanOrEqual(low);
  expect(grams.high).toBeLessThanOrEqual(high);
});
