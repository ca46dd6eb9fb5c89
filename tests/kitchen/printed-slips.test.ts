/** Recipes of `works/` with one printed figure, or what it stands on, changed as a slip changes it: the figure is found, and by its code. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { rowsIn } from '../../server/src/measure/table-rows.ts';
import { open } from '../support/harness.ts';
import { readMarks } from '../support/marks.ts';

const rows = rowsIn(readFileSync('tests/kitchen/printed-slips.tsv', 'utf8')).map((row) =>
  row.map((cell) => cell.replaceAll('\\n', '\n')),
);

test.each(rows)('%s: %s becomes %s', (recipe = '', find = '', replace = '', code = '') => {
  const { text } = readMarks(readFileSync(`tests/kitchen/works/printed-${recipe}.quern`, 'utf8'));
  expect(text.split(find)).toHaveLength(2);
  const found = open(text.replace(find, replace)).findings.open;
  expect(found.filter(({ severity }) => severity === 'warning').map((each) => each.code)).toContain(code);
});
