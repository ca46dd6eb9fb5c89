/** Titles of recipes and parts are any text; a kind behind ` as ` and a file behind ` from ` are told from it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLine } from '../../server/src/notation/statements.ts';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { markdownPage, textPage } from '../../server/src/publish/plain-pages.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { titleOf } from '../../server/src/recipe/names/title.ts';
import { formatted, renamedAt, symbolsOf } from '../support/at-cursor.ts';
import { open } from '../support/harness.ts';

describe('a recipe is called what its line says', () => {
  test.each<[string, string, string?]>([
    ['Plum slice', 'Plum slice'],
    ['Beef, ale and mushroom pie', 'Beef, ale and mushroom pie'],
    ['Bread (no knead)', 'Bread (no knead)'],
    ['Bread (no knead) as lean bread', 'Bread (no knead)', 'lean bread'],
    ['Fish as the French do it', 'Fish as the French do it'],
    ['Trifle as custard lovers like it', 'Trifle as custard lovers like it'],
    ['Easy as pie', 'Easy as pie'],
    ['Tin loaf as lean bread', 'Tin loaf', 'lean bread'],
    ['Tin loaf as leen bread', 'Tin loaf', 'leen bread'],
    ['Buns as rich dough as brioche', 'Buns as rich dough', 'brioche'],
    ['As you like it', 'As you like it'],
    ['Soup from the garden', 'Soup from the garden'],
    ['Pie from base.quern', 'Pie from base.quern'],
    ['Rice = peas', 'Rice = peas'],
    ['Chops, 1 in thick (for two)', 'Chops, 1 in thick (for two)'],
    ['Tomato: sauce [large batch]', 'Tomato: sauce [large batch]'],
    ['Salt as needed', 'Salt as needed'],
    ['Beans (soaked', 'Beans (soaked'],
    ['Crème brûlée, à la carte', 'Crème brûlée, à la carte'],
    ['12 x 2 buns', '12 x 2 buns'],
  ])('recipe %s', (written, name, kind) => {
    const line = readLine(`recipe ${written}`);
    expect(line.faults).toEqual([]);
    const title = titleOf(line.statement);
    expect([title.name?.text, title.as?.text]).toEqual([name, kind]);
    expect(open(`recipe ${written}\n  100 g  butter\n`).recipe.name).toBe(name);
  });
});

describe('a part too, and its file', () => {
  test.each<[string, string, { kind?: string; file?: string; part?: string }?]>([
    ['filling (make ahead)', 'filling (make ahead)'],
    ['jam, warm', 'jam, warm'],
    ['jam from the pantry', 'jam from the pantry'],
    ['crust as shortcrust', 'crust', { kind: 'shortcrust' }],
    ['crust as shortcurst', 'crust', { kind: 'shortcurst' }],
    ['crust as rich shortcrust', 'crust', { kind: 'rich shortcrust' }],
    ['sauce as the French do it', 'sauce as the French do it'],
    ['base as whatever', 'base', { kind: 'whatever' }],
    ['base from pastry.quern', 'base', { file: 'pastry.quern' }],
    ['base from my pastry, 2.quern : sweet paste', 'base', { file: 'my pastry, 2.quern', part: 'sweet paste' }],
    ['base from ../a/pastry.quern: case (blind)', 'base', { file: '../a/pastry.quern', part: 'case (blind)' }],
    ['base, chilled as shortcrust from pastry.quern', 'base, chilled', { kind: 'shortcrust', file: 'pastry.quern' }],
    ['jam from the garden from jam.quern', 'jam from the garden', { file: 'jam.quern' }],
  ])('part %s', (written, name, { kind, file, part } = {}) => {
    const { statement, faults } = readLine(`part ${written}`);
    expect(faults).toEqual([]);
    const title = titleOf(statement);
    expect([title.name?.text, title.as?.text]).toEqual([name, kind]);
    expect(statement).toMatchObject({ kind: 'part' });
    if (statement.kind === 'part') expect([statement.file?.text, statement.filePart?.text]).toEqual([file, part]);
  });

  test.each([
    ['recipe', 'missing-name'],
    ['part as shortcrust', 'missing-name'],
    ['part crust as', 'missing-value'],
    ['part crust from', 'missing-value'],
    ['recipe Tart as', 'missing-value'],
  ])('%s lacks something', (line, code) => {
    expect(readLine(line).faults.map((f) => f.code)).toEqual([code]);
  });
});

const PIE = `recipe Beef, ale and mushroom pie (for a crowd)
  yield   6 portions
part filling (make ahead)
  900 g     stewing beef
  330 ml    ale
  do Simmer the beef in the ale for 2 h.
part lid, rolled
  320 g     ready-rolled puff pastry
  do Put the filling in a dish, cover with the pastry and bake at 200 C for 30 min.
`;

describe('such names go everywhere', () => {
  test('the part is called by its name without the brackets', () => {
    const { recipe } = open(PIE);
    expect(recipe.parts[1]?.includes.map((h) => h.name)).toEqual(['filling (make ahead)']);
    expect(recipe.parts[1]?.steps[0]?.mentions.some((m) => m.part === 0)).toBe(true);
  });

  test('a line of a list takes of it', () => {
    const { recipe } = open(
      'recipe Loaf\npart sponge (overnight)\n  100 g  bread flour\n  100 g  water\n  do Stir.\npart dough\n  200 g  sponge\n  300 g  bread flour\n  do Knead all.\n',
    );
    expect(recipe.parts[1]?.includes.map((h) => h.name)).toEqual(['sponge (overnight)']);
  });

  test('outline, page and data', () => {
    const { recipe, findings } = open(PIE);
    const page = readerPage(recipe, findings, { measures: 'weight-first', label: 'us' });
    expect(page.title).toBe('Beef, ale and mushroom pie (for a crowd)');
    expect(symbolsOf(PIE).join('\n')).toContain('filling (make ahead)');
    expect(textPage(page)).toContain('Filling (make ahead):');
    expect(markdownPage(page)).toContain('Beef, ale and mushroom pie (for a crowd)');
    expect(JSON.parse(jsonLd(page))).toMatchObject({
      name: 'Beef, ale and mushroom pie (for a crowd)',
      recipeInstructions: [{ name: 'filling (make ahead)' }, { name: 'lid, rolled' }],
    });
  });

  test('a part takes a name with a comma, and not one that would be read as a kind', () => {
    const text = PIE.replace('part filling (make', 'part fill$0ing (make');
    expect(renamedAt(text, 'filling, cold')).toContain('part filling, cold\n');
    expect(renamedAt(text, 'filling as custard')).not.toContain('part filling as custard');
  });

  test('the formatter leaves any title its words', () => {
    const title = fc
      .array(fc.constantFrom('Beef', ',', '(x)', 'as', 'custard', 'from', 'a.quern', '=', '½', '#1', '[y]', ':', '&'), {
        minLength: 1,
        maxLength: 6,
      })
      .map((words) => words.join(' '));
    fc.assert(
      fc.property(fc.constantFrom('recipe', 'part'), title, (keyword, words) => {
        const line = `${keyword} ${words}`;
        const [first = ''] = formatted(`${line}\n`).split('\n');
        expect(first.replace(/\s/g, '')).toBe(line.replace(/\s/g, ''));
        expect(formatted(first)).toBe(first);
      }),
    );
  });
});
