/** The rules of the house, as tests: what CI knows, `npm test` knows. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checksIndex } from '../../server/tools/generate.ts';

const SRC = resolve('server/src');
const sources = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter(
  (f) => f.endsWith('.ts') && !f.endsWith('.d.ts'),
);

/** Who may import whom, by folder; packages by name. DEVELOPERS.md prints this table. */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  measure: [],
  notation: ['measure', 'chevrotain'],
  food: ['measure', 'data', 'fastest-levenshtein'],
  recipe: ['notation', 'measure', 'food', 'data'],
  edits: ['recipe', 'notation', 'measure', 'food'],
  checks: ['edits', 'recipe', 'notation', 'measure', 'food', 'data', 'fastest-levenshtein'],
  workspace: ['checks', 'edits', 'recipe', 'notation', 'measure', 'food'],
  publish: ['checks', 'recipe', 'notation', 'measure', 'food'],
  editor: ['publish', 'workspace', 'checks', 'edits', 'recipe', 'notation', 'measure', 'food'],
  lsp: ['editor', 'publish', 'workspace', 'checks', 'edits', 'notation', 'measure', 'recipe', 'vscode-languageserver'],
  cli: ['publish', 'workspace', 'checks', 'edits', 'recipe', 'notation', 'measure', 'food', 'ignore', 'diff'],
  host: ['workspace', 'cli', 'node', 'ignore'],
};

const importsOf = (text: string): string[] =>
  [...text.matchAll(/^(?:import|export)\b[^;]*?from '([^']+)'/gm), ...text.matchAll(/^import '([^']+)'/gm)].map(
    (m) => m[1] ?? '',
  );

function folderOf(target: string, from: string): string {
  if (target.startsWith('node:')) return 'node';
  if (!target.startsWith('.')) return target.split('/')[0] ?? target;
  const path = relative(SRC, resolve(SRC, dirname(from), target));
  if (path.startsWith('../data')) return 'data';
  return path.split('/')[0] ?? '';
}

test.each(sources.filter((f) => f.includes('/')))('%s imports only what its folder may', (file) => {
  const folder = file.split('/')[0] ?? '';
  const allowed = new Set([folder, ...(MAY_IMPORT[folder] ?? [])]);
  const others = importsOf(readFileSync(join(SRC, file), 'utf8'))
    .map((t) => folderOf(t, file))
    .filter((t) => !allowed.has(t));
  expect(others).toEqual([]);
});

test('no circle of imports', () => {
  const graph = new Map(
    sources.map((f) => [
      f,
      importsOf(readFileSync(join(SRC, f), 'utf8').replace(/^import type[^;]*;/gm, ''))
        .filter((t) => t.startsWith('.'))
        .map((t) => relative(SRC, resolve(SRC, dirname(f), t))),
    ]),
  );
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (file: string, path: readonly string[]) => {
    if (path.includes(file)) circles.push([...path.slice(path.indexOf(file)), file].join(' → '));
    else if (!done.has(file)) {
      for (const next of graph.get(file) ?? []) visit(next, [...path, file]);
      done.add(file);
    }
  };
  for (const file of graph.keys()) visit(file, []);
  expect(circles).toEqual([]);
});

describe('generated files', () => {
  test('the list of checks is fresh', () => {
    const path = 'server/src/checks/index.ts';
    const fresh = checksIndex();
    const stale = readFileSync(path, 'utf8') !== fresh;
    if (stale) writeFileSync(path, fresh);
    expect(stale, `${path} was stale and has been written anew: commit it`).toBe(false);
  });
});

test('nothing reads outside the project', () => {
  const tracked = ['server', 'client', 'tests', 'examples', 'syntaxes'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((f) => /\.(?:ts|mts|json|md|quern|tsv)$/.test(f) && !f.includes('node_modules'))
      .map((f) => join(folder, f)),
  );
  const needle = ['..', 'shared'].join('/');
  expect(tracked.filter((f) => readFileSync(f, 'utf8').includes(needle))).toEqual([]);
});
