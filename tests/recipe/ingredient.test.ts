import { expect, test } from 'vitest';
import { open } from '../support/harness.ts';

test.each([
  ['1 can of 400 g  cannellini beans', 'canned-white-bean'],
  ['1 tin     chickpeas, drained', 'canned-chickpea'],
  ['1 bunch   coriander', 'coriander-leaf'],
  ['2 handfuls  coriander', 'coriander-leaf'],
  ['2 tsp     coriander', undefined],
  ['200 g     chickpeas', undefined],
  ['2 slices  cheese', undefined],
])('%s is %s', (line, id) => {
  expect(open(`recipe X\n  ${line}\n`).recipe.parts[0]?.head.ingredients[0]?.food?.id).toBe(id);
});

test('a name that stands in columns is said with one blank', () => {
  const [ingredient] = open('recipe X\n  1 whole     chicken\n').recipe.parts[0]?.head.ingredients ?? [];
  expect([ingredient?.name, ingredient?.nameNode.text]).toEqual(['whole chicken', 'whole     chicken']);
});
