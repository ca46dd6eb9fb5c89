import { relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { nodeFiles } from '../../server/src/host/files.ts';
import { parseDocument } from '../../server/src/notation/document.ts';
import { outline } from '../../server/src/notation/outline.ts';
import { Folder } from '../../server/src/workspace/folder.ts';

const kitchen = new Folder(nodeFiles(), resolve('examples'));
const shown = (path: string) => relative('examples', path);

test('every file of the kitchen is in the index, with what it holds', () => {
  const byPath = new Map(kitchen.entries().map((e) => [shown(e.path), e]));
  expect(byPath.get('foods.quern')?.foods.map((f) => f.name)).toEqual([
    'quayside flour',
    'cultured butter',
    'pasteurised egg yolk',
  ]);
  expect(byPath.get('pastry/leek-quiche.quern')?.parts.map((p) => p.name)).toEqual([
    'crust',
    'vegetables',
    'filling',
    'assembly',
  ]);
  expect(byPath.get('bread/country-loaf.quern')?.trials.map((t) => t.name)).toEqual(['2026-10-03']);
  expect(byPath.get('soups/carrot-soup.quern')?.recipe?.name).toMatch(/[Cc]arrot/);
});

test('who builds on whom is known', () => {
  const users = (file: string) =>
    kitchen
      .usersOf(resolve('examples', file))
      .map(({ entry, link }) => `${shown(entry.path)}:${link.at + 1} ${link.part ?? ''}`.trim());
  expect(users('bakes/scones.quern')).toEqual([
    'bakes/cheese-scones.quern:4',
    'bakes/spiced-scones.quern:4',
    'bakes/wholemeal-scones.quern:4',
  ]);
  expect(users('pastry/sweet-paste.quern')).toEqual(['pastry/lemon-tart.quern:8 sweet paste']);
  expect(users('soups/carrot-soup.quern')).toEqual([]);
});

test('a changed file is read again', () => {
  const texts = new Map([
    ['/k/a.quern', 'recipe A\n  from    b.quern\n'],
    ['/k/b.quern', 'recipe B\n'],
  ]);
  const files = { ...nodeFiles(), read: (path: string) => texts.get(path), recipesBelow: () => [...texts.keys()] };
  const folder = new Folder(files, '/k');
  expect(folder.usersOf('/k/b.quern')).toHaveLength(1);
  texts.set('/k/a.quern', 'recipe A\n');
  folder.forget('/k/a.quern');
  expect(folder.usersOf('/k/b.quern')).toHaveLength(0);
  texts.delete('/k/b.quern');
  folder.forget('/k/b.quern');
  expect(folder.entries().map((e) => e.path)).toEqual(['/k/a.quern']);
});

test('the index says the same as reading every line would', () => {
  for (const { path, recipe, parts, foods, trials, links } of kitchen.entries()) {
    const of = outline(parseDocument(nodeFiles().read(path) ?? ''));
    const fromLines = of.head.filter((h) => h.line.statement.kind === 'from').map((h) => h.at);
    const partLines = of.parts.flatMap(({ at, source }) => (source.named ? [at] : []));
    const partLinks = of.parts.flatMap(({ at, source: { lines } }) => {
      const header = lines[0]?.statement;
      return header?.kind === 'part' && header.file !== undefined ? [at] : [];
    });
    expect(recipe?.at, path).toBe(of.recipe?.at);
    expect(parts.map((p) => p.at)).toEqual(partLines);
    expect(foods.map((f) => f.at)).toEqual(of.foods.map((b) => b.at));
    expect(trials.map((t) => t.at)).toEqual(of.trials.map((b) => b.at));
    expect(links.map((l) => l.at)).toEqual([...fromLines, ...partLinks]);
  }
});

test('a line that only begins like one that counts, and one out of its place, are passed over', () => {
  const texts = new Map([
    [
      '/k/a.quern',
      'recipe A # from x.quern\r\n  partly  cooked\r\n  200 g flour\r\n  do Mix.\r\n  from    b.quern\r\n# food ghost\r\n',
    ],
  ]);
  const files = { ...nodeFiles(), read: (path: string) => texts.get(path), recipesBelow: () => [...texts.keys()] };
  expect(new Folder(files, '/k').entries()).toEqual([
    {
      path: '/k/a.quern',
      recipe: { name: 'A', at: 0, span: expect.objectContaining({ start: 7, end: 8 }) },
      parts: [],
      foods: [],
      trials: [],
      tags: [],
      links: [],
      pictures: [],
    },
  ]);
});
