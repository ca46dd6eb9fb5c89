/**
 * Published recipes that work must be left in peace. Each file names its source in its `source` line;
 * tests/outside/recipes/README.md lists them.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { between } from '../../server/tools/documents.ts';
import { gravest, KINDS_COVERED, RECIPES } from './faults/corpus.ts';
import { kindsTable, README, recipesTable, sourceOf } from './faults/readme.ts';

/** Beyond these a sound recipe is accused wrongly too often. */
const MOST_WARNINGS = 3;

describe('published recipes', () => {
  test('there are at least 62, over at least 25 kinds', () => {
    expect(RECIPES.length).toBeGreaterThanOrEqual(62);
    expect(KINDS_COVERED.length).toBeGreaterThanOrEqual(25);
  });

  test('no two are one', () => {
    const bodies = RECIPES.map((r) => r.text.replace(/^\s*(?:recipe|note|source|by)\b.*$/gm, ''));
    expect(RECIPES.filter((_, i) => bodies.indexOf(bodies[i] ?? '') !== i).map((r) => r.file)).toEqual([]);
  });

  test('they raise no error and at most three warnings in all', () => {
    const raised = RECIPES.flatMap(({ file, snapshot }) =>
      gravest(snapshot).map((f) => ({ severity: f.severity, words: `${file}: ${f.code}: ${f.said.message}` })),
    );
    expect(raised.filter((f) => f.severity === 'error').map((f) => f.words)).toEqual([]);
    expect(raised.length, raised.map((f) => f.words).join('\n')).toBeLessThanOrEqual(MOST_WARNINGS);
    // Each warning is discussed by its recipe and code.
    const discussed = readFileSync(README, 'utf8');
    expect(raised.filter((f) => !discussed.includes(f.words.split(': ').slice(0, 2).join(': ')))).toEqual([]);
  });

  test.each(RECIPES)('$file names its source, and can be read', ({ text, snapshot }) => {
    expect(sourceOf(text)).not.toBe('');
    expect(snapshot.findings.open.filter((f) => f.code === 'syntax')).toEqual([]);
  });

  test.each(RECIPES)('$file is worked out: all its weighed lines but one have grams', ({ snapshot }) => {
    const unknown = snapshot.recipe.parts.flatMap((p) =>
      p.head.ingredients.filter((i) => !i.weighed.known && !i.free).map((i) => i.name),
    );
    expect(unknown.length, unknown.join(', ')).toBeLessThanOrEqual(1);
  });

  test('nothing is accepted but raw egg, and that with its reason', () => {
    const accepted = RECIPES.flatMap(({ file, snapshot }) =>
      snapshot.document.lines.flatMap(({ text }) => (/^\s*allow\b/.test(text) ? `${file}: ${text.trim()}` : [])),
    );
    expect(accepted.filter((line) => !/: allow raw-egg because \S/.test(line))).toEqual([]);
  });
});

test('the README lists them all', () => {
  const before = readFileSync(README, 'utf8');
  const after = between(between(before, 'recipes', recipesTable()), 'kinds', kindsTable());
  if (before !== after) writeFileSync(README, after);
  expect(before, 'the tables were stale, and are written anew').toBe(after);
});
