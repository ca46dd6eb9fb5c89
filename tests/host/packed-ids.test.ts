/** Tables that share what they name come back as they were. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { packedIds, unpackedIds } from '../../server/src/host/packed-ids.ts';
import { byColumns } from '../../server/src/host/table-columns.ts';

test('a name that is the words of its id is left out, and an id is a step', () => {
  const foods = byColumns('#\nid\tname\noat-bran\toat bran\nfeta\tfeta cheese\npea\tpea\n');
  const grams = byColumns('#\nid\tunit\noat-bran\tcup\noat-bran\ttsp\nfeta\tcup\noat-bran\ttbsp\n');
  const other = byColumns('#\nid\tunit\nsoap\tcup\n');
  expect(packedIds([grams, foods, other])).toEqual([
    '~id\n0\n0\n\n-1\u0001unit\ncup\ntsp\ncup\ntbsp',
    '^id\noat-bran\nfeta\npea\u0001name\n\nfeta cheese\n',
    other,
  ]);
});

test('any tables come back', () => {
  const word = fc.stringMatching(/^[a-c -]{0,2}$/);
  const table = (second: string) =>
    fc
      .array(fc.array(word, { minLength: 1, maxLength: 3 }))
      .map((rows) => byColumns(`#\nid\t${second}\talso\n${rows.map((row) => `${row.join('\t')}\n`).join('')}`));
  fc.assert(
    fc.property(fc.array(fc.oneof(table('name'), table('unit'))), (tables) => {
      expect(unpackedIds(packedIds(tables))).toEqual(tables);
    }),
  );
});
