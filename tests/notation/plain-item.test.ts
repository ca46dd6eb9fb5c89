/** A plain line is read in one pass as the reader of all forms reads it. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Cursor } from '../../server/src/notation/cursor.ts';
import { ItemReader } from '../../server/src/notation/ingredient.ts';
import { label } from '../../server/src/notation/label.ts';
import { plainItem } from '../../server/src/notation/plain-item.ts';
import { scan } from '../../server/src/notation/scan.ts';
import type { IngredientNode, SyntaxFault } from '../../server/src/notation/tree.ts';

const LINES = ['printed.tsv', 'forms.tsv'].flatMap((file) =>
  readFileSync(resolve('tests/outside/lines', file), 'utf8')
    .split('\n')
    .slice(1)
    .map((row) => row.split('\t')[0] ?? '')
    .filter((line) => line !== ''),
);
const WORDS = [...new Set(LINES.join(' ').match(/\p{L}+(?:-\p{L}+)*/gu))];
/** Words that say something behind an amount, though none of them is a unit or a number. */
const SAYING = ['optional', 'if desired', 'some', 'a little', 'few', 'plenty', 'enough', 'more', 'additional', 'extra'];

interface Read {
  readonly item: IngredientNode | undefined;
  readonly faults: readonly SyntaxFault[];
}

/** The two readings; undefined where the line is not plain. */
function readings(
  line: string,
): { readonly plain: Read; readonly whole: Read & { readonly ends: boolean } } | undefined {
  const tokens = scan(line, 'without blanks');
  label(line, tokens);
  const plainFaults: SyntaxFault[] = [];
  const plain = plainItem(line, tokens, plainFaults);
  if (plain === undefined) return undefined;
  const cursor = new Cursor(tokens, 0);
  const faults: SyntaxFault[] = [];
  const item = new ItemReader(line, cursor, faults).item();
  return { plain: { item: plain, faults: plainFaults }, whole: { item, faults, ends: cursor.token === undefined } };
}

test.each([
  '150 g plain flour',
  '1 1/2 tsp fine salt, sifted',
  '3 eggs, beaten,',
  '2 large eggs',
  '2 cloves garlic',
  '40-45 g butter (see 2 below)',
])('%s is plain', (line) => expect(readings(line)).toBeDefined());

test.each(['2 cups of flour', '1 lb 4 oz flour', '1/2 cup flour (2 oz)', '100 g butter, or margarine', '1,5 kg flour'])(
  '%s is not',
  (line) => expect(readings(line)).toBeUndefined(),
);

test('printed lines are read the same both ways', () => {
  const plain = LINES.flatMap((line) => readings(line) ?? []);
  expect(plain.length).toBeGreaterThan(100);
  for (const { plain: read, whole } of plain) expect({ ...read, ends: true }).toStrictEqual(whole);
});

test('lines of any words are read the same both ways', () => {
  const number = fc.constantFrom(
    '3',
    '1/2',
    '½',
    '1 1/2',
    '1½',
    '0.5',
    '11/2',
    '1.000',
    '303',
    '9999999999',
    '2-3',
    '2 to 3',
    '3-2',
    '2 - 3',
    '2-1/2',
  );
  const measure = fc.constantFrom(
    '',
    'g',
    'cups',
    'tbsp',
    'C',
    'min',
    'large',
    'small cloves',
    'cloves',
    'extra large',
    'tins',
  );
  const word = fc.oneof(
    { arbitrary: fc.constantFrom(...WORDS), weight: 6 },
    { arbitrary: fc.constantFrom(...SAYING), weight: 1 },
    { arbitrary: fc.constant(','), weight: 2 },
    { arbitrary: fc.constantFrom('(', ')', '2'), weight: 1 },
  );
  fc.assert(
    fc.property(number, measure, fc.array(word, { minLength: 1, maxLength: 7 }), (amount, unit, words) => {
      const line = [amount, unit, ...words].join(' ');
      const read = readings(line);
      if (read !== undefined) expect({ ...read.plain, ends: true }, line).toStrictEqual(read.whole);
    }),
    { numRuns: 5000 },
  );
});
