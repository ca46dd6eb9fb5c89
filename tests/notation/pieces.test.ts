/** Every character of an ingredient line belongs to what was understood, or a fault lies on the line. */

import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { piecesOf } from '../../server/src/notation/pieces.ts';
import { readLine } from '../../server/src/notation/statements.ts';
import { FORMS } from '../outside/lines/generated-lines.ts';
import { anyText, brokenLine } from '../support/arbitrary.ts';

const PRINTED = readFileSync(resolve('tests/outside/lines/printed.tsv'), 'utf8')
  .split('\n')
  .slice(1)
  .map((row) => row.split('\t')[0] ?? '')
  .filter((line) => line !== '');

/** What belongs to nothing on a line that has no fault, with the line. */
function untold(text: string): string[] {
  const line = readLine(text);
  const pieces = piecesOf(line);
  if (pieces === undefined) return [];
  expect(pieces.map((p) => text.slice(p.start, p.end)).join(''), text).toBe(text);
  if (line.faults.length > 0) return [];
  return pieces.filter((p) => p.role === 'nothing').map((p) => `${text.slice(p.start, p.end)} in ${text}`);
}

test('printed lines', () => {
  expect(PRINTED.flatMap(untold)).toEqual([]);
});

test.each(Object.entries(FORMS))('%s', (_, lines) => {
  fc.assert(
    fc.property(lines, ({ printed }) => {
      expect(untold(printed)).toEqual([]);
    }),
  );
});

test('any text', () => {
  fc.assert(
    fc.property(fc.oneof(anyText, brokenLine), (text) => {
      expect(text.split(/\r?\n|\r/).flatMap(untold)).toEqual([]);
    }),
    { numRuns: 500 },
  );
});
