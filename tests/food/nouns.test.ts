/** The table of nouns is looked up as it stands. */
import { expect, test } from 'vitest';
import { keyOf } from '../../server/src/food/names.ts';
import { nounWords } from '../../server/src/food/nouns.ts';

test('every word stands as names are compared: in the singular, in the one spelling', () => {
  const words = nounWords();
  expect(words.length).toBeGreaterThan(600);
  expect(words.filter((word) => keyOf(word) !== word)).toEqual([]);
});
