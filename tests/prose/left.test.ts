/** What is left of what boils down, each sentence against its plain sense: a share of it, least and most, or an amount with its unit. */
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import { leftIn } from '../../server/src/prose/left.ts';

const left = (words: string): string => {
  const found = leftIn(sentenceIn(words).items);
  if (found === undefined) return 'nothing said';
  if (found.share !== undefined) return `${found.share.low.toFixed(2)} to ${found.share.high.toFixed(2)}`;
  const { quantity, unit } = found.amount;
  return `${quantity.low}${quantity.high === quantity.low ? '' : ` to ${quantity.high}`} ${unit?.symbol}`;
};

// A cook's eye is out by a fifth: half is 0.4 to 0.6.
test.each([
  ['Simmer until reduced by half.', '0.40 to 0.60'],
  ['Reduce the stock by half.', '0.40 to 0.60'],
  ['Boil until reduced by 50 %.', '0.40 to 0.60'],
  ['Reduce the strained liquid by two thirds over a high heat.', '0.27 to 0.40'],
  ['Boil hard until reduced to about a third of its volume.', '0.27 to 0.40'],
  ['Cook down by a quarter.', '0.60 to 0.90'],
  ['Boil the wine down to 1/4.', '0.20 to 0.30'],
  ['Boil until only a quarter is left.', '0.20 to 0.30'],
  ['Boil it down to a glaze.', '0.04 to 0.35'],
  ['Reduce to 300 ml.', '300 ml'],
  ['Simmer, uncovered, until reduced to 250 to 300 ml.', '250 to 300 ml'],
  ['Boil until only about 1 1/2 cups of liquid remain.', '1.5 cup'],
  ['Simmer until 300 ml is left.', '300 ml'],
  ['Reduce the wine by half, add the stock and reduce to 500 ml.', '500 ml'],
])('%s leaves %s', (words, want) => expect(left(words)).toBe(want));

test.each([
  'Reduce the heat to low.',
  'Reduce the oven to 160 C.',
  'Simmer for 30 min until reduced.',
  'Add 300 ml of the stock and boil.',
  'Boil the pasta, leaving 100 ml of its water in the pan.',
  'Boil for 10 min, then add the cream to half the sauce.',
  'Divide by half and shape.',
  'Chill until 2 h before dinner.',
])('%s says nothing of it', (words) => expect(left(words)).toBe('nothing said'));
