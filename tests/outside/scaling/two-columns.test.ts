/** Scaling held against recipes printed for two yields side by side; the table names them. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { scaleRecipe } from '../../../server/src/edits/scale.ts';
import { applyEdits } from '../../../server/src/edits/text-edit.ts';
import { totalOf } from '../../../server/src/measure/total.ts';
import { parseDocument, printDocument } from '../../../server/src/notation/document.ts';
import { open } from '../../support/harness.ts';

const ROWS = readFileSync(resolve('tests/outside/scaling/two-columns.tsv'), 'utf8')
  .split('\n')
  .filter((l) => l !== '' && !l.startsWith('#'))
  .slice(1)
  .map((l) => {
    const [recipe = '', yields = '', larger = '', food = '', amount = '', more = ''] = l.split('\t');
    return { recipe, yields, larger, food, amount, more };
  });

const RECIPES = [...new Set(ROWS.map((r) => r.recipe))].map((name) => ({
  name,
  rows: ROWS.filter((r) => r.recipe === name),
}));

/** Base units of the amount and of what stands after `=` on an ingredient's line: ml or g. */
function sizes(line: string): (number | undefined)[] {
  const { statement } = parseDocument(line).lines[0] ?? {};
  if (statement?.kind !== 'ingredient') return [];
  return [statement.amount, statement.beside?.[0]?.amount].map((node) =>
    node?.kind === 'measured' ? totalOf(node.quantity, 'us')?.low : undefined,
  );
}

describe.each(RECIPES)('$name', ({ name, rows }) => {
  const [first] = rows;
  const text = (column: 'amount' | 'more', yields: string) =>
    `recipe ${name}\n  yield   ${yields}\n\n${rows.map((r) => `  ${r[column]}  ${r.food}\n`).join('')}`;
  const small = text('amount', first?.yields ?? '');
  const large = text('more', first?.larger ?? '');

  const scaledTo = (from: string, to: string): readonly string[] => {
    const { document, recipe } = open(from);
    const result = scaleRecipe(document, recipe, { kind: 'yield', words: to });
    if (!result.ok) throw new Error(result.why);
    return printDocument(applyEdits(document, result.scaling.edits)).split('\n');
  };

  test.each([
    ['up', small, first?.larger ?? '', large],
    ['down', large, first?.yields ?? '', small],
  ])('scaled %s, every amount is the printed one within 1 %', (_, from, to, printed) => {
    const ours = scaledTo(from, to);
    printed.split('\n').forEach((line, i) => {
      sizes(line).forEach((size, k) => {
        const mine = sizes(ours[i] ?? '')[k];
        if (size === undefined) expect(mine).toBeUndefined();
        else expect(Math.abs((mine ?? 0) / size - 1), `${ours[i]} against ${line}`).toBeLessThan(0.01);
      });
    });
    expect(ours[1]).toBe(printed.split('\n')[1]);
  });
});

test('the cornbread’s one half-sheet pan becomes the two that the larger column names', () => {
  const { document, recipe } = open(
    'recipe Cornbread\n  yield   50 pieces\n  pan     rectangle 18 x 13 x 1 in\n\n  454 g  cornmeal\n',
  );
  const result = scaleRecipe(document, recipe, { kind: 'yield', words: '100 pieces' });
  if (!result.ok) throw new Error(result.why);
  expect(printDocument(applyEdits(document, result.scaling.edits))).toContain('pan     2 x rectangle 18 x 13 x 1 in');
});
