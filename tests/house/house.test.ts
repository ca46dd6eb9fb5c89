/** The rules of the house, as tests: what CI knows, `npm test` knows. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { MAY_IMPORT } from './import-rules.ts';

const SRC = resolve('server/src');
const sources = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter(
  (f) => f.endsWith('.ts') && !f.endsWith('.d.ts'),
);

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

test('no circle of imports, of types neither', () => {
  const graph = new Map(
    sources.map((f) => [
      f,
      importsOf(readFileSync(join(SRC, f), 'utf8'))
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

test('what a file exports is used by another', () => {
  const texts = ['server', 'client/src', 'syntaxes', 'tests'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((f) => f.endsWith('.ts') && !f.includes('node_modules'))
      .map((f) => ({ file: join(folder, f), text: readFileSync(join(folder, f), 'utf8') })),
  );
  const users = new Map<string, Set<string>>();
  for (const { file, text } of texts)
    for (const [word] of text.matchAll(/\w+/g)) users.set(word, (users.get(word) ?? new Set()).add(file));
  const alone = texts
    // What the entry of the extension exports, the editor calls.
    .filter(({ file }) => !file.startsWith('tests') && !file.endsWith('extension.ts'))
    .flatMap(({ file, text }) =>
      [...text.matchAll(/^export (?:async )?(?:function\*?|const|class) (\w+)/gm)]
        .map((m) => m[1] ?? '')
        .filter((name) => users.get(name)?.size === 1)
        .map((name) => `${file}: ${name}`),
    );
  expect(alone).toEqual([]);
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

test('where a line of a variant stands in its whole recipe is worked out in one file of the editor and the protocol', () => {
  const asks = sources.filter(
    (file) =>
      /^(?:editor|lsp)\//.test(file) &&
      /\bwrittenFrom\b|\bwritten(?:\?\.|\.)lines\b|\.origin\b/.test(readFileSync(join(SRC, file), 'utf8')),
  );
  expect(asks).toEqual(['editor/place.ts']);
});
