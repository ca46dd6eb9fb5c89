import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { packedForms, unpackedForms } from '../../server/src/host/packed-forms.ts';

const TABLE = readFileSync(`${import.meta.dirname}/../../server/data/prose/forms.tsv`, 'utf8');
const rowsOf = (table: string): string => table.slice(table.indexOf('\n') + 1);

test('the table of forms is the same again, and smaller meanwhile', () => {
  const packed = packedForms(TABLE);
  expect(rowsOf(unpackedForms(packed))).toBe(rowsOf(TABLE));
  expect(unpackedForms(TABLE)).toBe(TABLE);
  expect(deflateRawSync(packed).length).toBeLessThan(deflateRawSync(TABLE).length * 0.85);
});

test('any sorted forms are the same again', () => {
  const form = fc.stringMatching(/^[a-zé' -]{1,60}$/);
  fc.assert(
    fc.property(fc.uniqueArray(form), (forms) => {
      const table = `# remark\n${forms
        .sort()
        .map((each, i) => `${each}\tv${i}\th\n`)
        .join('')}`;
      expect(rowsOf(unpackedForms(packedForms(table)))).toBe(rowsOf(table));
    }),
  );
});
