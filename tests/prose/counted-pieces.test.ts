/** What numbers of a step count pieces or vessels. Invented sentences, judged as a cook reads them. */
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import { countsIn, ofOneIn } from '../../server/src/prose/counted-pieces.ts';
import { eachSaidIn } from '../../server/src/prose/printed-pieces.ts';

test.each([
  ['Pat out and cut 10 rounds with a cutter', 'piece 10 rounds'],
  ['Scoop into 24 balls', 'piece 24 balls'],
  ['Wash 6 hot jars', 'vessel 6 jars'],
  ['Shape each into 12 balls', ''],
  ['Cut into 3 pieces and plait', ''],
  ['Bake for 12 min', ''],
])('%s: %s', (words, said) => {
  expect(
    countsIn(sentenceIn(words).items)
      .map(({ sort, low, noun }) => `${sort} ${low} ${noun}`)
      .join('; '),
  ).toBe(said);
});

test('what goes into one is read with the words behind it', () => {
  const [one] = ofOneIn(sentenceIn('Pour 60 ml batter for each pancake').items);
  expect(one?.each).toMatchObject({ low: 60, unit: 'ml' });
  expect(one?.words).toContain('pancake');
});

test.each([
  ['Brown it in a heavy 4 l pot', 4, 'pot'],
  ['Tip into a preserving pan of 6 l', 6, 'pan'],
])('%s', (words, low, noun) => {
  expect(eachSaidIn(sentenceIn(words).items)).toMatchObject([{ each: { low, unit: 'l' }, sort: 'vessel', noun }]);
});
