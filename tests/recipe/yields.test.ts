/** Yields as cooks write them: read, said once on the page, scaled to their last word. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import { middle } from '../../server/src/measure/quantity.ts';
import { readLine } from '../../server/src/notation/statements.ts';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { report } from '../../server/src/publish/report.ts';
import { edited, formatted } from '../support/at-cursor.ts';
import { open } from '../support/harness.ts';

const recipe = (line: string) =>
  `recipe Bake\n  ${line}\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  do Mix all and bake at 220 C for 30 min.\n`;

/** Line, how many, what the page says, the line at twice the size. */
const YIELDS: readonly (readonly [string, number, string, string])[] = [
  ['yield 12 squares', 12, '12 squares', 'yield 24 squares'],
  ['yield 1 loaf', 1, '1 loaf', 'yield 2 loaves'],
  ['yield 1 loaf (12 slices)', 1, '1 loaf (12 slices)', 'yield 2 loaves (24 slices)'],
  ['yield 2 loaves (12 slices each)', 2, '2 loaves (12 slices each)', 'yield 4 loaves (12 slices each)'],
  ['yield 5 loaves of 750 g', 5, '5 loaves of 750 g', 'yield 10 loaves of 750 g'],
  ['yield 5 loaves of about 750 g', 5, '5 loaves of about 750 g', 'yield 10 loaves of about 750 g'],
  ['yield 6 buns, about 80 g each', 6, '6 buns, about 80 g each', 'yield 12 buns, about 80 g each'],
  ['yield 2 dozen cookies', 24, '2 dozen cookies', 'yield 4 dozen cookies'],
  ['yield 24 rolls of 60 g', 24, '24 rolls of 60 g', 'yield 48 rolls of 60 g'],
  ['yield one 23 cm tart', 1, 'one 23 cm tart', 'yield two 23 cm tarts'],
  ['yield 1 tart of 23 cm', 1, '1 tart of 23 cm', 'yield 2 tarts of 23 cm'],
  ['yield 6-8 portions', 7, '6-8 portions', 'yield 12-16 portions'],
  ['yield 6 to 8 portions', 7, '6-8 portions', 'yield 12 to 16 portions'],
  ['yield 4 boxes of 6', 4, '4 boxes of 6', 'yield 8 boxes of 6'],
  ['yield 2 tins', 2, '2 tins', 'yield 4 tins'],
  ['yield 3 jars of 350 ml', 3, '3 jars of 350 ml', 'yield 6 jars of 350 ml'],
  ['yield 1 cake (serves 10)', 1, '1 cake (serves 10)', 'yield 2 cakes (serves 20)'],
  ['yield 1 cake, 10-12 slices', 1, '1 cake, 10-12 slices', 'yield 2 cakes, 20-24 slices'],
  ['yield about 30 biscuits', 30, 'about 30 biscuits', 'yield about 60 biscuits'],
  ['yield 8', 8, '8', 'yield 16'],
  ['serves 8', 8, '8 servings', 'serves 16'],
  ['Serves 8', 8, '8 servings', 'Serves 16'],
  ['yield serves 6', 6, '6 servings', 'yield serves 12'],
  ['yield serves 4 to 6', 5, '4-6 servings', 'yield serves 8 to 12'],
  ['yield makes 12 buns', 12, '12 buns', 'yield makes 24 buns'],
  ['Serves 6-8', 7, '6-8 servings', 'Serves 12-16'],
  ['Serves: 4', 4, '4 servings', 'Serves: 8'],
  ['Serves 4 to 6', 5, '4-6 servings', 'Serves 8 to 12'],
  ['serves four', 4, 'four servings', 'serves eight'],
  ['Serves 4 people', 4, '4 people', 'Serves 8 people'],
  [
    'Serves 4 as a main, 6 as a starter',
    4,
    '4 servings as a main, 6 as a starter',
    'Serves 8 as a main, 12 as a starter',
  ],
  ['Feeds 10', 10, '10 servings', 'Feeds 20'],
  ['makes 1 loaf', 1, '1 loaf', 'makes 2 loaves'],
  ['makes two loaves', 2, 'two loaves', 'makes four loaves'],
  ['Makes about 24 cookies', 24, 'about 24 cookies', 'Makes about 48 cookies'],
  ['Makes about two dozen cookies', 24, 'about two dozen cookies', 'Makes about 48 cookies'],
  ['Makes a dozen rolls', 12, 'a dozen rolls', 'Makes 24 rolls'],
  ['Makes 12', 12, '12', 'Makes 24'],
  ['Makes: 12 muffins', 12, '12 muffins', 'Makes: 24 muffins'],
  ['Makes 1 (9-inch) pie', 1, '1 (9-inch) pie', 'Makes 2 (9-inch) pies'],
  ['Makes 1 loaf, about 900 g', 1, '1 loaf, about 900 g', 'Makes 2 loaves, about 900 g'],
  ['Yields 20 dumplings', 20, '20 dumplings', 'Yields 40 dumplings'],
  ['Yield: 16 bars', 16, '16 bars', 'Yield: 32 bars'],
  ['Servings: 6', 6, '6 servings', 'Servings: 12'],
  ['6 servings', 6, '6 servings', '12 servings'],
  ['4-6 portions', 5, '4-6 portions', '8-12 portions'],
  ['yield 900 g', 900, '900 g', 'yield 1800 g'],
];

const plain = (text: string | undefined): string => (text ?? '').replaceAll('–', '-').replace(/\s+/g, ' ');

describe('a yield', () => {
  test.each(YIELDS)('%s', (line, count, page, twice) => {
    const { statement, faults } = readLine(line);
    expect(faults).toEqual([]);
    expect(statement.kind).toBe('yield');
    if (statement.kind !== 'yield' || statement.amount === undefined) throw new Error('no amount');
    expect(middle(statement.amount.quantity)).toBe(count);
    const snapshot = open(recipe(line));
    const shown = readerPage(snapshot.recipe, snapshot.findings, { measures: 'weight-first', label: 'us' });
    expect(plain(shown.makes)).toBe(page);
    expect(plain((JSON.parse(jsonLd(shown)) as { recipeYield?: string }).recipeYield)).toBe(page);
    expect(report(snapshot.recipe, snapshot.findings).yield?.amount).toBe(count);
    const result = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'by', by: 2 });
    if (!result.ok) throw new Error(result.why);
    expect(edited(snapshot, result.scaling.edits).split('\n')[1]?.trim().replace(/\s+/g, ' ')).toBe(twice);
    expect(result.scaling.changes.filter((c) => c.startsWith('yield'))).toHaveLength(1);
  });

  test('is asked for by its own noun, dozens by their number', () => {
    const snapshot = open(recipe('yield 2 dozen cookies'));
    const result = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'yield', words: '36 cookies' });
    expect(result.ok && edited(snapshot, result.scaling.edits)).toContain('yield 3 dozen cookies');
    expect(result.ok && edited(snapshot, result.scaling.edits)).toContain('750 g     bread flour');
  });

  test('tins are never divided', () => {
    const snapshot = open(recipe('yield 2 tins'));
    const result = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'by', by: 1.25 });
    expect(result.ok && edited(snapshot, result.scaling.edits)).toContain('yield 3 tins');
    expect(result.ok && result.scaling.said.join(' ')).toContain('comes to 2.5 tins and is written as 3');
  });

  test.each([
    'Makes a nice change for supper.',
    'Serve warm with cream.',
    'Makes the kitchen smell of bread',
    'Yields to the touch when done',
    '6 servings of rice',
    '12 rolls',
  ])('is not read in `%s`', (line) => {
    expect(readLine(line).statement.kind).not.toBe('yield');
  });

  test('below the first part it is out of place', () => {
    const { outline } = open('recipe A\npart b\n  100 g  butter\n  Serves 8\n');
    expect(outline.misplaced.map((m) => m.fault.code)).toEqual(['misplaced']);
  });

  test('the formatter leaves its words', () => {
    fc.assert(
      fc.property(fc.constantFrom(...YIELDS.map(([line]) => line)), fc.nat(4), (line, blanks) => {
        const [, laidOut = ''] = formatted(`recipe A\n${' '.repeat(blanks)}${line}\n`).split('\n');
        expect(laidOut.trim().replace(/\s+/g, ' ')).toBe(line);
      }),
    );
  });
});
