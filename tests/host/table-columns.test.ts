/** A table that is packed column by column is given back as it was. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { byColumns, byRows } from '../../server/src/host/table-columns.ts';

const DATA = 'server/data';
const tables = readdirSync(DATA, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.tsv'));

test.each(tables)('%s', (name) => {
  const table = readFileSync(`${DATA}/${name}`, 'utf8').replace(/^#.*/, '#');
  expect(byRows(byColumns(table))).toBe(table);
});

test('most tables are turned', () => {
  const turned = byColumns('#\nid\tgrams\tsource\negg\t50\npea\t\tpractice\n');
  expect(turned).toBe('|id\negg\npea\u0001grams\n50\n\u0001source\n\u0002\npractice');
});

test('any text comes back', () => {
  const cell = fc.stringMatching(/^[ a-z|#\u0001\u0002]{0,4}$/);
  const rows = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }).map((cells) => cells.join('\t')));
  fc.assert(
    fc.property(rows, fc.boolean(), (lines, ends) => {
      const table = `#\n${lines.join('\n')}${ends ? '\n' : ''}`;
      expect(byRows(byColumns(table))).toBe(table);
    }),
  );
});
