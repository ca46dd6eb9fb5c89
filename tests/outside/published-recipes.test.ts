/**
 * Published recipes that work must be left in peace. Each file names its source in its `source` line;
 * tests/outside/recipes/README.md lists them.
 */
import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { nodeFiles } from '../../server/src/host/node.ts';
import { Houses } from '../../server/src/workspace/houses.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';

const files = nodeFiles();
const houses = new Houses(files);
const recipes = (folder: string) =>
  files.recipesBelow(resolve('tests/outside/recipes', folder)).map((path) => {
    const text = readFileSync(path, 'utf8');
    return {
      name: relative('tests/outside/recipes', path),
      text,
      snapshot: Snapshot.open(path, 1, text, houses.of(path).house),
    };
  });

const worst = (snapshot: Snapshot) =>
  snapshot.findings.open
    .filter((f) => f.severity === 'error' || f.severity === 'warning')
    .map((f) => `${f.code}: ${f.said.message}`);

describe('common home formulas', () => {
  const home = recipes('home');

  test('there are at least sixteen', () => expect(home.length).toBeGreaterThanOrEqual(16));

  test.each(home)('$name names its source and raises no error and no warning', ({ text, snapshot }) => {
    expect(text).toMatch(/^\s+source\s+\S/m);
    expect(worst(snapshot)).toEqual([]);
  });

  test.each(home)('$name is worked out: every weighed line has grams', ({ snapshot }) => {
    const unknown = snapshot.recipe.parts.flatMap((p) =>
      p.head.ingredients.filter((i) => !i.weighed.known && !i.free).map((i) => i.name),
    );
    expect(unknown.length).toBeLessThanOrEqual(1);
  });
});

describe('recipes of government and historical books', () => {
  test.each(recipes('published'))('$name raises no error and no warning', ({ snapshot }) => {
    expect(worst(snapshot)).toEqual([]);
  });
});
