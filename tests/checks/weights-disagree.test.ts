/** Two amounts on one line: NIST SP 811, appendix B, for ounces and pints; USDA SR26 for what a piece weighs. */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const found = (line: string, settings = {}): string[] =>
  open(`recipe X\n  200 g     plain flour\n  ${line}\n  do Mix all the ingredients.\n`, settings)
    .findings.open.filter((f) => f.code === 'weights-disagree')
    .map((f) => f.said.message);

describe('two amounts on a line', () => {
  test.each([
    '8 oz = 227 g butter',
    '8 oz (225 g) butter',
    '8 oz = 200 g butter',
    '1 lb = 400 g butter',
    '1 lb 4 oz (570 g) butter',
    '225 g/8 oz butter',
    '1 cup = 250 ml milk',
    '4 cups (1 quart) milk',
    '2 (8 oz) steaks',
    '4 (200 g) eggs',
    '2 tins (400 g) chickpeas',
    '3 onions, 1 lb',
    '1 cup (500 g) xyloquartz',
  ])('`%s` agree', (line) => {
    expect(found(line)).toEqual([]);
  });

  test.each([
    ['8 oz = 500 g butter', /8 oz is 227 g, and 500 g beside it is 500 g/],
    ['8 oz (100 g) butter', /mend the one that is wrong/],
    ['1 lb 4 oz (400 g) butter', /is 567 g/],
    ['1 cup (2 fl oz) milk', /mend the one that is wrong/],
    ['1 cup = 284 ml milk', /by the imperial cup/],
    ['1 pint (570 ml) milk', /by the imperial pint/],
    ['2 onions, 2 kg', /usually comes to/],
  ])('`%s` do not', (line, words) => {
    expect(found(line)).toEqual([expect.stringMatching(words)]);
  });

  test('a house with that cup is told of nothing', () => {
    expect(found('1 pint (570 ml) milk', { measures: 'metric' })).toEqual([]);
  });
});
