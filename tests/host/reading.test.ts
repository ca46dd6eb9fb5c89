import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { nodeFiles } from '../../server/src/host/files.ts';
import { MOST_BYTES } from '../../server/src/host/reading.ts';
import { Houses } from '../../server/src/workspace/houses.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'quern-reading-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const at = (name: string) => join(folder, name);
const BASE = 'recipe Base\n  200 g     plain flour\n  do Sift the flour.\n';

function said(path: string, text: string): string[] {
  const houses = new Houses(nodeFiles());
  const snapshot = Snapshot.open(path, 1, text, houses.of(path).house, houses.bases);
  return snapshot.findings.open.filter(({ code }) => code === 'missing-file').map((f) => f.said.message);
}

describe.skipIf(process.platform === 'win32')('what is no ordinary file is not read', () => {
  const fifo = (name: string) => execFileSync('mkfifo', [at(name)]);

  test.each<[string, (name: string) => void, RegExp]>([
    ['a pipe', fifo, /no ordinary file/],
    ['a link to a device', (name) => symlinkSync('/dev/zero', at(name)), /no ordinary file/],
    ['a folder', (name) => mkdirSync(at(name)), /a folder/],
    [
      'a file that is too large',
      (name) => writeFileSync(at(name), Buffer.alloc(MOST_BYTES + 1, 32)),
      /larger than 4 MB/,
    ],
  ])('%s', (_what, make, why) => {
    for (const name of ['base.quern', 'quern.json', '.gitignore']) {
      make(name);
      const files = nodeFiles();
      expect(files.read(at(name))).toBeUndefined();
      expect(files.faultOf?.(at(name))).toMatchObject({ kind: 'refused', why: expect.stringMatching(why) });
    }
    // A house that cannot be read is one all the same, and says so.
    expect(new Houses(nodeFiles()).of(at('v.quern')).problems).toEqual([
      expect.stringMatching(/quern\.json.*cannot be read/),
    ]);
    expect(nodeFiles().recipesBelow(folder)).toEqual(_what.includes('large') ? [at('base.quern')] : []);
    rmSync(at('quern.json'), { recursive: true });
    // A link to a device leads out of the folder before it leads to one.
    const [message = ''] = said(at('v.quern'), 'recipe V\n  from    base.quern\n');
    expect(message).toMatch(_what.includes('link') ? /outside the house/ : why);
  });
});

test('folders are walked so far down, and what lies deeper is said', () => {
  mkdirSync(at('d/'.repeat(80)), { recursive: true });
  writeFileSync(at('quern.json'), '{}');
  for (const deep of [0, 60, 70]) writeFileSync(at(`${'d/'.repeat(deep)}r.quern`), BASE);
  const files = nodeFiles();
  const leftOut: string[] = [];
  const found = files.recipesBelow(folder, undefined, (path, why) => leftOut.push(`${path.length} ${why}`));
  expect(found).toHaveLength(2);
  expect(leftOut).toEqual([expect.stringContaining('more than 64 folders deep')]);
  expect(new Houses(files).of(at('r.quern')).problems).toEqual([expect.stringContaining('holds more files')]);
});

test('of a folder that holds too much, so much is looked at, and that is said', () => {
  for (let i = 0; i < 20; i++) writeFileSync(at(`r${i}.quern`), BASE);
  const files = nodeFiles();
  expect(files.recipesBelow(folder, 5)).toHaveLength(5);
  expect(files.holdsMore?.(folder)).toBe(true);
  expect(files.recipesBelow(folder)).toHaveLength(20);
  expect(files.holdsMore?.(folder)).toBe(false);
});

describe('what lies outside the house is not built on', () => {
  beforeEach(() => {
    mkdirSync(at('house'));
    mkdirSync(at('house/pastry'));
    mkdirSync(at('other'));
    writeFileSync(at('house/quern.json'), '{}');
    writeFileSync(at('house/base.quern'), BASE);
    writeFileSync(at('other/secret.quern'), BASE);
  });

  test.each([
    ['by an absolute path', () => at('other/secret.quern')],
    ['by a relative path', () => '../../other/secret.quern'],
  ])('%s', (_how, name) => {
    expect(said(at('house/pastry/v.quern'), `recipe V\n  from    ${name()}\n`)).toEqual([
      expect.stringMatching(/lies outside.*copy/),
    ]);
    expect(said(at('house/pastry/v.quern'), `recipe V\npart x from ${name()} : x\n`)).toEqual([
      expect.stringMatching(/lies outside/),
    ]);
  });

  test('whether it is there or not is not said', () => {
    expect(said(at('house/v.quern'), 'recipe V\n  from    ../other/none.quern\n')).toEqual([
      expect.stringMatching(/lies outside/),
    ]);
  });

  test.skipIf(process.platform === 'win32')('through a link', () => {
    symlinkSync(at('other/secret.quern'), at('house/linked.quern'));
    symlinkSync(at('other'), at('house/folder'));
    for (const name of ['linked.quern', 'folder/secret.quern'])
      expect(said(at('house/v.quern'), `recipe V\n  from    ${name}\n`)).toEqual([
        expect.stringMatching(/lies outside/),
      ]);
  });

  test.skipIf(process.platform === 'win32')('a house that is reached through a link is a house', () => {
    symlinkSync(at('house'), at('kitchen'));
    expect(said(at('kitchen/pastry/v.quern'), 'recipe V\n  from    ../base.quern\n')).toEqual([]);
  });

  test('what lies within it is built on', () => {
    expect(said(at('house/pastry/v.quern'), 'recipe V\n  from    ../base.quern\n')).toEqual([]);
    writeFileSync(at('house/pastry/quern.json'), '{}');
    expect(said(at('house/pastry/v.quern'), 'recipe V\n  from    ../base.quern\n')).toEqual([]);
  });
});
