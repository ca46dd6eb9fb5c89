/** What is kept of the foods of a line is what is worked out for it, whatever its amount. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { builtInBook } from '../../server/src/food/book.ts';
import { readLine } from '../../server/src/notation/statements.ts';
import type { IngredientNode } from '../../server/src/notation/tree.ts';
import { bindIngredients } from '../../server/src/recipe/list/ingredient.ts';
import { namedOn, namesOn } from '../../server/src/recipe/list/line-names.ts';

const WORLD = { book: builtInBook(), measures: 'us' } as const;

const ITEMS = ['printed.tsv', 'forms.tsv'].flatMap((file) =>
  readFileSync(resolve('tests/outside/lines', file), 'utf8')
    .split('\n')
    .slice(1)
    .flatMap((row) => itemsOf(row.split('\t')[0] ?? '')),
);

function itemsOf(text: string): readonly IngredientNode[] {
  const { statement } = readLine(text);
  return statement.kind === 'ingredient' ? [statement, ...(statement.more ?? [])] : [];
}

/** The same line with another number, which changes no food. */
function withNumber(item: IngredientNode, value: number): IngredientNode {
  const { amount } = item;
  if (amount?.kind !== 'measured') return item;
  return { ...item, amount: { ...amount, quantity: { ...amount.quantity, low: value, high: value } } };
}

test('by whichever amount a line was seen first', () => {
  expect(ITEMS.length).toBeGreaterThan(1000);
  for (const item of ITEMS) namedOn(withNumber(item, 7), WORLD);
  for (const item of ITEMS) expect(namedOn(item, WORLD), item.name?.text).toStrictEqual(namesOn(item, WORLD));
});

test.each([
  ['100 g chocolate', 'ambiguous'],
  ['100 g chocolate, 70 %', 'dark chocolate'],
  ['100 g chocolate, at least 70 % cocoa, chopped', 'dark chocolate'],
  ['200 ml cream, 35 % fat', 'whipping cream'],
  ['500 g beef mince, 20 % fat', 'beef mince'],
  ['1 cup vinegar, 5 % acidity', 'distilled vinegar'],
])('%s is one food, %s', (line, food) => {
  const [first] = itemsOf(line);
  expect(
    first &&
      bindIngredients(first, 0, WORLD).map(({ match }) => (match.kind === 'food' ? match.food.name : match.kind)),
  ).toEqual([food]);
});

test('shares behind flour are foods of their own', () => {
  const [first] = itemsOf('500 g flour, 70 % water, 2 % salt');
  expect(first && bindIngredients(first, 0, WORLD).map(({ name }) => name)).toEqual(['flour', 'water', 'salt']);
});

test('a name over a comma is as it is written', () => {
  const line = '800 g boneless, skinless chicken thighs';
  const [first] = itemsOf(line);
  const [thighs] = first === undefined ? [] : bindIngredients(first, 0, WORLD);
  expect(thighs?.name).toBe('boneless, skinless chicken thighs');
  expect(line.slice(thighs?.nameNode.start, thighs?.nameNode.end)).toBe(thighs?.name);
  expect(thighs?.food?.name).toBe('chicken thigh');
});
