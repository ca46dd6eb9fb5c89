/** What is kept of the foods of a line is what is worked out for it, whatever its amount. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { builtInBook } from '../../server/src/food/book.ts';
import { readLine } from '../../server/src/notation/statements.ts';
import type { IngredientNode } from '../../server/src/notation/tree.ts';
import { namedOn, namesOn } from '../../server/src/recipe/line-names.ts';

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
