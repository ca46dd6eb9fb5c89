/** What a client hands in is found as on a disk, beside what lies on one. */
import { describe, expect, test } from 'vitest';
import { Handed, handedBeside } from '../../server/src/host/handed.ts';
import { pathOfUri, uriOfPath } from '../../server/src/lsp/convert.ts';
import { handedAtStart } from '../../server/src/lsp/handed.ts';
import type { Files } from '../../server/src/workspace/ports.ts';

const ROOT = 'vscode-vfs://github/ann/kitchen';

function handedIn(...names: readonly string[]): Handed {
  const handed = new Handed();
  handed.take({
    files: names.map((name) => ({ path: `${ROOT}/${name}`, text: `# ${name}\n` })),
    gone: [],
    larger: [],
  });
  return handed;
}

describe('a folder of a client', () => {
  const { files } = handedIn(
    'quern.json',
    'pie.quern',
    'cakes/foods.quern',
    'cakes/plain/sponge.quern',
    'cakes/sponge.jpg',
  );

  test('is read, and has names', () => {
    expect(files.read(`${ROOT}/pie.quern`)).toBe('# pie.quern\n');
    expect(files.read(`${ROOT}/tart.quern`)).toBeUndefined();
    expect(files.namesIn?.(ROOT)).toEqual(['cakes/', 'pie.quern', 'quern.json']);
    expect(files.namesIn?.(`${ROOT}/cakes/`)).toEqual(['foods.quern', 'plain/', 'sponge.jpg']);
    // Nobody can look there, so nothing is said to be missing.
    expect(files.namesIn?.('vscode-vfs://github/ann/garden')).toBeUndefined();
  });

  test('has its recipes, the house above each, and what lies beside it', () => {
    expect(files.recipesBelow(`${ROOT}/cakes`)).toEqual([
      `${ROOT}/cakes/foods.quern`,
      `${ROOT}/cakes/plain/sponge.quern`,
    ]);
    expect(files.houseAbove(`${ROOT}/cakes/plain/sponge.quern`)).toBe(ROOT);
    expect(files.outermostHouse?.(`${ROOT}/pie.quern`)).toBe(ROOT);
    expect(files.houseAbove('vscode-vfs://github/ann/garden/a.quern')).toBeUndefined();
    expect(files.beside(`${ROOT}/cakes/plain/sponge.quern`, '../../pie.quern')).toBe(`${ROOT}/pie.quern`);
    // Whoever has the files is not left.
    expect(files.beside(`${ROOT}/pie.quern`, '../../../../../etc/passwd')).toBe('vscode-vfs://github/etc/passwd');
    expect(files.join(ROOT, 'quern.json')).toBe(`${ROOT}/quern.json`);
  });

  test('without settings, its nearest foods begin a house', () => {
    const bare = handedIn('foods.quern', 'cakes/foods.quern', 'cakes/plain/sponge.quern').files;
    expect(bare.houseAbove(`${ROOT}/cakes/plain/sponge.quern`)).toBe(`${ROOT}/cakes`);
    expect(bare.outermostHouse?.(`${ROOT}/cakes/plain/sponge.quern`)).toBeUndefined();
  });
});

test('a folder that goes takes along what lies in it, and a name that begins alike stays', () => {
  const handed = handedIn('pies/apple.quern', 'pies/sweet/plum.quern', 'pies-old/pear.quern');
  const lost = handed.take({ files: [], gone: [`${ROOT}/pies`], larger: [] });
  expect([...lost].sort()).toEqual([`${ROOT}/pies/apple.quern`, `${ROOT}/pies/sweet/plum.quern`]);
  expect(handed.files.recipesBelow(ROOT)).toEqual([`${ROOT}/pies-old/pear.quern`]);
  expect(handed.files.namesIn?.(ROOT)).toEqual(['pies-old/']);
});

test('a file of a disk is asked of the disk', () => {
  const nothing = (): undefined => undefined;
  const disk: Files = {
    read: (path) => `disk ${path}`,
    recipesBelow: () => [],
    houseAbove: nothing,
    join: (folder, name) => `${folder}+${name}`,
    beside: (path, name) => `${path}+${name}`,
  };
  const both = handedBeside(disk, handedIn('pie.quern').files);
  expect(both.read('/kitchen/pie.quern')).toBe('disk /kitchen/pie.quern');
  expect(both.read('c:\\kitchen\\pie.quern')).toBe('disk c:\\kitchen\\pie.quern');
  expect(both.read(`${ROOT}/pie.quern`)).toBe('# pie.quern\n');
});

test.each([
  ['memfs:/kitchen/cr%C3%A8me%20pie.quern', 'memfs:/kitchen/crème pie.quern'],
  ['vscode-remote://ssh-remote%2Bstove/home/ann/pie.quern', 'vscode-remote://ssh-remote%2Bstove/home/ann/pie.quern'],
  ['vscode-test-web://mount/pie%231.quern', 'vscode-test-web://mount/pie#1.quern'],
])('%s has a path, and goes there and back', (uri, path) => {
  expect(pathOfUri(uri)).toBe(path);
  expect(uriOfPath(path)).toBe(uri);
});

test('what a client says at the start is taken in where it is as it should be, and else left', () => {
  const files = [
    { uri: 'memfs:/k/a.quern', text: 'recipe A\n' },
    { uri: 'memfs:/k/b.quern', fault: { encoding: true } },
    { uri: 'memfs:/k/c.quern', fault: { why: 'it is larger than 4 MB' } },
  ];
  expect(handedAtStart({ files, gone: [], larger: ['memfs:/k'] })).toEqual({
    files: [
      { path: 'memfs:/k/a.quern', text: 'recipe A\n' },
      { path: 'memfs:/k/b.quern', fault: { kind: 'encoding', encoding: { isRead: false } } },
      { path: 'memfs:/k/c.quern', fault: { kind: 'refused', why: 'it is larger than 4 MB' } },
    ],
    gone: [],
    larger: ['memfs:/k'],
  });
  for (const other of [undefined, null, 'all', [], { files: 'none' }, { files: [{ uri: 3 }], gone: [], larger: [] }])
    expect(handedAtStart(other)).toBeUndefined();
});
