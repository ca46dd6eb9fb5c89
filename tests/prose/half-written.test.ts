/** What a half-written sentence makes likely next; its plain sense, written before it was tried. */
import { describe, expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import { keyWords } from '../../server/src/prose/alike.ts';
import { amountOfOne, divisionsIn, isOfOne } from '../../server/src/prose/counts.ts';
import { figureBehind, mayBeginName } from '../../server/src/prose/expected.ts';
import { placeNamed } from '../../server/src/prose/place-named.ts';
import { opensWithOrder, verbNamed } from '../../server/src/prose/verb-named.ts';

test.each([
  ['bake for', 'time'],
  ['rest for about', 'time'],
  ['eat within', 'time'],
  ['turn every', 'time'],
  ['bake at', 'temperature'],
  ['heat the milk to', 'temperature'],
  ['until it reads', 'temperature'],
  ['add', 'amount'],
  ['stir in', 'amount'],
  ['divide in', 'amount'],
] as const)('behind `%s` a number is likely of a %s', (text, is) => {
  expect(figureBehind(text)).toBe(is);
});

test.each([
  ['pour the', true],
  ['half of', true],
  ['both', true],
  ['add', false],
  ['with', false],
])('a name may begin behind `%s`: %s', (text, may) => {
  expect(mayBeginName(text)).toBe(may);
});

test.each([
  ['bake', 'bake', 'bake'],
  ['to bake', undefined, undefined],
  ['baking', 'bake', 'bake'],
  ['Rested', 'rest', 'rest'],
  ['broiled', 'grill', 'broil'],
  ['flour', 'dredge', 'flour'],
  ['quietly', undefined, undefined],
])('the verb that `%s` opens with', (text, key, base) => {
  expect(verbNamed(text)?.key).toBe(key);
  expect(verbNamed(text)?.base).toBe(base);
});

test.each([
  ['out of the oven', 'oven'],
  ['the oven', 'oven'],
  ['the walk-in', 'cold'],
  ['the deep freeze', 'frozen'],
  ['the kitchen', 'room'],
  ['the centre', undefined],
  ['the thickest part', undefined],
  ['the pan', undefined],
])('the place that `%s` names', (text, is) => {
  expect(placeNamed(text)).toBe(is);
});

test.each([
  ['Sift the flour', true],
  ['Heat oven to 350', true],
  ['Flour, sifted', false],
  ['cup butter', false],
])('`%s` orders something: %s', (text, orders) => {
  expect(opensWithOrder(text)).toBe(orders);
});

describe('pieces of a batch', () => {
  test.each([
    ['Divide in 24 of 60 g', [24], 60],
    ['Shape into twelve balls', ['twelve'], undefined],
    ['Slice into 8', [8], undefined],
    ['Divide into 8, 95 g each', [8], 95],
    ['Fold in 3 eggs', [], undefined],
    ['Score in 4', [], undefined],
  ])('%s', (text, numbers, grams) => {
    const { items } = sentenceIn(text);
    expect(
      divisionsIn(items).map(({ number }) => {
        const item = items[number];
        return item?.kind === 'measured' ? item.low.value : item?.kind === 'word' ? item.word : undefined;
      }),
    ).toEqual(numbers);
    const bare = items.findIndex((item) => item.kind === 'measured' && item.unit === undefined);
    expect(bare < 0 ? undefined : amountOfOne(items, bare)?.low.value).toBe(grams);
  });

  test('an amount of one piece', () => {
    const { items } = sentenceIn('weigh balls of 60 g and add 200 g flour');
    const amounts = items.flatMap((item, at) => (item.kind === 'measured' ? [isOfOne(items, at)] : []));
    expect(amounts).toEqual([true, false]);
  });
});

test('sentences are held against each other without their figures', () => {
  const [a, b] = ['Bake for 40 min at 230 C.', 'Bake for 35 min at 210 C.'].map((text) => keyWords(sentenceIn(text)));
  expect(a).toEqual(b);
  expect(a).toEqual(['bake', 'for', 'duration', 'at', 'temperature']);
});
