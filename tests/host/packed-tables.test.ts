/** All tables come back as they were, the forms of words with them. */
import { readdirSync, readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { packedEndings, unpackedEndings } from '../../server/src/host/packed-endings.ts';
import { asPacked, packedTables, unpackedTables } from '../../server/src/host/packed-tables.ts';
import { BETWEEN_TABLES } from '../../server/src/host/program.ts';
import { packedSaid, unpackedSaid } from '../../server/src/host/said-forms.ts';
import { byColumns } from '../../server/src/host/table-columns.ts';

const DATA = 'server/data';
const tables = readdirSync(DATA, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.tsv'))
  .sort()
  .map((path) => ({ path, text: readFileSync(`${DATA}/${path}`, 'utf8') }));
const packed = packedTables(tables);

test('the same again, but for their remarks', () => {
  expect(unpackedTables(packed)).toEqual(tables.map(asPacked));
});

test('smaller together than each by itself', () => {
  const bytes = (text: string): number => deflateRawSync(text).length;
  const apart = tables.map(({ text }) => byColumns(text.replace(/^#.*/, '#'))).join(BETWEEN_TABLES);
  expect(bytes(packed)).toBeLessThan(bytes(apart) * 0.85);
});

test('of the forms only what the other tables do not make stands there', () => {
  const forms = '#\nice box\tt1\nice boxes\tt1\nlarder\tt1\th\n';
  const said = '#\nplace\talso\nfridge\tice box;larder\n';
  const text = packedSaid(forms, [said]);
  expect(text).toBe('larder\tt1\th\nfridge\nfridges\nlarders');
  expect(unpackedSaid(text, [said])).toBe(forms);
});

test('any sorted forms are the same again', () => {
  const word = fc.stringMatching(/^[a-cé' -]{1,3}$/);
  fc.assert(
    fc.property(fc.uniqueArray(word, { minLength: 1 }), fc.array(word), (forms, said) => {
      const table = `#\n${forms
        .sort()
        .map((form, at) => `${form}\tv${at}\th\n`)
        .join('')}`;
      const others = [`#\n${said.join(';')}\n`];
      expect(unpackedSaid(packedSaid(table, others), others)).toBe(table);
    }),
  );
});

test('of what names end with only what the other tables do not make stands there', () => {
  const foods = '#\nid\tname\talso\tclass\nleek\tleek\tbaby leeks;Cassis\tvegetable\n';
  const endings = '#\ncassis\nleek\n';
  const text = packedEndings(endings, [foods, '#\nid\tunit\nleek\tcup\n']);
  expect(text).toBe('cassis\n-cassi');
  expect(unpackedEndings(text, [foods])).toBe(endings);
});
