import { describe, expect, test } from 'vitest';
import { roundsOf } from '../../server/src/prose/rounds.ts';
import { open } from '../support/harness.ts';

/** How many times over the first amount of the sentence with a unit, or else the first number, is taken: `4`, `2-` where nobody says how many. */
function rounds(sentence: string): string {
  const { recipe } = open(`recipe X\n  1 kg  salt\n  do ${sentence}\n`);
  const items = recipe.parts[0]?.steps[0]?.sentence.items ?? [];
  const unit = items.findIndex((item) => item.kind === 'measured' && item.unit !== undefined);
  const at = unit >= 0 ? unit : items.findIndex((item) => item.kind === 'measured');
  const { low, high } = roundsOf(items, at);
  return low === high ? `${low}` : `${low}-${Number.isFinite(high) ? high : ''}`;
}

describe('how many times over an amount is taken', () => {
  // The sense of each was written before it was tried.
  test.each<[string, string]>([
    ['Put 20 g of the salt in each of 4 jars.', '4'],
    ['Put 20 g of the salt in each of the four warm jars.', '4'],
    ['Drop 5 g of the salt into every hole of a twelve-hole tin.', '12'],
    ['Measure 40 ml of the spirit into all 5 bottles.', '5'],
    ['Fill six ramekins, with 30 g of the cheese in the middle of every ramekin.', '6'],
    ['Take 4 jars, 60 g of the jam each.', '4'],
    ['Spoon 2 tbsp of the sauce over each portion.', '2-'],
    ['Add 5 g of the salt per jar.', '2-'],
    ['Fry in two batches, with 80 ml of the oil to a batch.', '2'],
    ['Knead in 100 g of the flour and repeat twice.', '3'],
    ['Spread with 30 g of the jam. Repeat thirteen times more.', '14'],
    ['Spread with 30 g of the jam and cover; do this twice more.', '3'],
    ['Ladle 80 ml of the batter into the pan and fry. Do the same four more times.', '1'],
    ['Spread with 30 g of the jam. Do it 3 times.', '4'],
    ['Spread with 30 g of the jam. Do this with a knife.', '1'],
    ['Feed it 75 g of the flour each day for four days.', '4'],
    ['Top up with brine of 25 g salt to the litre.', '0-'],
    ['Use 20 g of the salt per kg of meat.', '0-'],
    ['Fry in 20 g of the butter for 3 minutes on each side.', '1'],
    ['Add 50 g of the butter, beating well after each addition.', '1'],
    ['Divide 200 g of the filling between the six glasses.', '1'],
    ['Stir 50 g of the salt into the water. Repeat with the rest.', '1'],
    ['Add 100 g of the sugar to the bowl.', '1'],
    ['Mix 40 g of the oats with all the honey.', '1'],
  ])('%s', (sentence, times) => {
    expect(rounds(sentence)).toBe(times);
  });
});
