import { describe, expect, test } from 'vitest';
import { Houses } from '../../server/src/workspace/houses.ts';
import { MOST_LOADS } from '../../server/src/workspace/limits.ts';
import type { Files } from '../../server/src/workspace/ports.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { Store } from '../../server/src/workspace/store.ts';
import { memoryFiles } from '../support/in-process.ts';

/** Files below `/k`, which is a house, with how often the disk was asked for each and which folders were walked. */
function kitchen(texts: Readonly<Record<string, string>>, house = true) {
  const all = new Map(Object.entries(texts).map(([name, text]) => [`/k/${name}`, text]));
  if (house) all.set('/k/quern.json', '{}');
  const reads = { count: 0 };
  const walked: string[] = [];
  const memory = memoryFiles(all);
  const files: Files = {
    ...memory,
    read: (path) => {
      reads.count++;
      return memory.read(path);
    },
    recipesBelow: (folder) => {
      walked.push(folder);
      return memory.recipesBelow(folder);
    },
  };
  return { files, reads, walked, texts: all };
}

function opened(files: Files, name: string, text: string): Snapshot {
  const houses = new Houses(files);
  return Snapshot.open(`/k/${name}`, 1, text, houses.of(`/k/${name}`).house, houses.bases);
}

const found = (snapshot: Snapshot): string[] => snapshot.findings.open.map((f) => `${f.code}: ${f.said.message}`);

/** Layers of two files, each of which takes a part of both below: 2 ** depth ways lead to the last. */
function diamond(depth: number, last: string): Record<string, string> {
  const files: Record<string, string> = {};
  for (let i = 0; i < depth; i++)
    for (const side of ['a', 'b'])
      files[`${side}${i}.quern`] =
        `recipe R\npart one from a${i + 1}.quern : one\n  do Stir the flour.\npart two from b${i + 1}.quern : one\n  do Stir the flour.\n`;
  files[`a${depth}.quern`] = last;
  files[`b${depth}.quern`] = last;
  return files;
}

const LAST = 'recipe R\npart one\n  10 g plain flour\n  do Stir the flour.\n';

describe('a diamond of bases', () => {
  test.each([
    ['that is whole', LAST, 0],
    ['whose last file is not there', `recipe R\npart one from none.quern : one\n`, 1],
  ])('%s is read along its files, and not along its ways', (_what, last, missing) => {
    const files = diamond(16, last);
    const { files: disk, reads } = kitchen(files);
    const snapshot = opened(disk, 'a0.quern', files['a0.quern'] ?? '');
    const codes = found(snapshot).map((f) => f.split(':')[0]);
    expect(codes.filter((code) => code === 'missing-file')).toHaveLength(2 * missing);
    expect(snapshot.written?.files).toHaveLength(32);
    expect(reads.count).toBeLessThan(2000);
  });
});

test('a recipe that builds on too many files says so, and reads no more of them', () => {
  const bases = Array.from({ length: MOST_LOADS + 5 }, (_, i) => `base${i}.quern`);
  const { files, reads } = kitchen(Object.fromEntries(bases.map((name) => [name, LAST])));
  const snapshot = opened(files, 'v.quern', `recipe V\n${bases.map((b) => `part one from ${b} : one\n`).join('')}`);
  expect(found(snapshot).filter((f) => f.startsWith('missing-file'))).toEqual(
    Array.from({ length: 5 }, () => expect.stringContaining('builds on more files than are read for one')),
  );
  expect(snapshot.isWhole).toBe(false);
  expect(reads.count).toBeLessThan(5 * MOST_LOADS);
});

test('files that all build on each other are read a limited number of times', () => {
  const names = Array.from({ length: 8 }, (_, i) => `r${i}.quern`);
  const text = `recipe R\n${names.map((name) => `part p${name.slice(0, 2)} from ${name} : one\n`).join('')}`;
  const { files, reads } = kitchen(Object.fromEntries(names.map((name) => [name, text])));
  expect(found(opened(files, 'r0.quern', text)).some((f) => /^missing-file.*so/.test(f))).toBe(true);
  expect(reads.count).toBeLessThan(20 * MOST_LOADS);
});

describe('names that are near one which is not there', () => {
  test.each(['/nothing.quern', '../nothing.quern', '/usr/../none.quern', 'nothing.quern'])(
    'nothing above the open folder is walked for `%s`',
    (name) => {
      const { files, walked } = kitchen({ 'a.quern': 'recipe A\n' }, false);
      const store = new Store(
        files,
        (uri) => uri.slice('file://'.length),
        (path) => `file://${path}`,
      );
      store.rooted(['/k']);
      const typed = [name, `${name}x`, `${name}xy`];
      for (const [i, each] of typed.entries()) {
        store.opened('file:///k/v.quern', i, `recipe V\n  from    ${each}\n`);
        void store.snapshot('file:///k/v.quern')?.findings;
      }
      expect(walked.filter((folder) => folder !== '/k')).toEqual([]);
      // Not at every key.
      expect(walked.length).toBeLessThan(2);
    },
  );

  test('they are offered out of the index', () => {
    const { files } = kitchen({ 'base.quern': LAST });
    expect(found(opened(files, 'v.quern', 'recipe V\n  from    bade.quern\n'))).toEqual([
      expect.stringContaining('perhaps `base.quern`'),
    ]);
  });
});

test('where there is no house, what is open around the file is built on, and nothing else', () => {
  const { files } = kitchen({ 'pastry/base.quern': LAST }, false);
  const texts = 'recipe V\n  from    ../pastry/base.quern\n';
  const codes = (roots: readonly string[]) => {
    const houses = new Houses(files, undefined, { roots: () => roots });
    const path = '/k/tarts/v.quern';
    return found(Snapshot.open(path, 1, texts, houses.of(path).house, houses.bases)).map((f) => f.split(':')[0]);
  };
  expect(codes(['/k'])).toEqual([]);
  expect(codes(['/k/tarts'])).toEqual(['missing-file']);
  expect(codes([])).toEqual(['missing-file']);
});
