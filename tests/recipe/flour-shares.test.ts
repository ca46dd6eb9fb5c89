/** What share of its flour a line is, and where flour is the 100 % of a list. */
import { describe, expect, test } from 'vitest';
import { flourSharesOf, isByFlour } from '../../server/src/recipe/measures/flour-shares.ts';
import { open } from '../support/harness.ts';

const headOf = (text: string) => {
  const head = open(text).recipe.parts.at(-1)?.head;
  if (head === undefined) throw new Error('no part');
  return head;
};

const shares = (text: string, name: string) => {
  const head = headOf(text);
  const line = head.ingredients.find((i) => i.name === name);
  if (line === undefined) throw new Error(`no ${name}`);
  return flourSharesOf(head, line);
};

describe('a share of the flour', () => {
  test('of itself is 100 %, however wide the cup is', () => {
    const of = shares('recipe Scones as scone\n  2 cups  plain flour\n  1/2 cup  milk\n', 'plain flour');
    expect(of?.listed).toEqual({ likely: 1, range: { low: 1, high: 1 } });
  });

  test('of two flours adds up by what they likely weigh', () => {
    const text = 'recipe Bread as lean bread\n  1 cup  plain flour\n  1 cup  wholemeal flour\n  150 g  water\n';
    const sum =
      (shares(text, 'plain flour')?.listed.likely ?? 0) + (shares(text, 'wholemeal flour')?.listed.likely ?? 0);
    expect(sum).toBeCloseTo(1, 9);
  });

  test('beside a starter is of what is listed, and of all', () => {
    // 300 g of water on 450 g, and on 450 g and half of 100 g of starter that is as much water as flour.
    const text =
      'recipe Loaf as lean bread\n  450 g  bread flour\n  300 g  water\n  100 g  sourdough starter\n  9 g  salt\n';
    const of = shares(text, 'water');
    expect(of?.listed.likely).toBeCloseTo(300 / 450, 3);
    expect(of?.all?.likely).toBeGreaterThan(300 / 510);
    expect(of?.all?.likely).toBeLessThan(300 / 495);
    expect(shares(text.replace(/.*starter\n/, ''), 'water')?.all).toBeUndefined();
  });
});

describe('flour is the 100 %', () => {
  test.each([
    [
      'of a kind that is measured by it',
      'recipe R as choux\n  100 g  plain flour\n  400 g  eggs\n  300 g  water\n',
      true,
    ],
    ['of no kind, where it is a good part', 'recipe R\n  200 g  plain flour\n  100 g  butter\n', true],
    [
      'not of a cheese filling',
      'recipe R as cheese filling\n  900 g  cream cheese\n  25 g  plain flour\n  3  eggs\n',
      false,
    ],
    ['not of a sauce that it binds', 'recipe R as roux sauce\n  50 g  plain flour\n  300 g  milk\n', false],
    ['not of no kind where it only binds', 'recipe R\n  25 g  plain flour\n  500 g  milk\n', false],
  ])('%s', (_, text, is) => expect(isByFlour(headOf(text))).toBe(is));
});
