/** What the built command writes is whole, in one go, and never over what somebody else wrote: by faults put into the disk. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { NODE, ROOT } from '../support/fake-editor.ts';

const CLI = `${ROOT}dist/cli.js`;
const FAULTS = `${ROOT}tests/support/disk-faults.ts`;

const OLD =
  'recipe Oat slab\n  yield   8 bars\n\n  200 g rolled oats\n  80 g butter\n\n  do Rub the butter into the oats.\n';
const NEW = OLD.replace('200 g rolled', '200 g     rolled').replace('80 g butter', '80 g      butter');

const kitchen = mkdtempSync(join(tmpdir(), 'quern-writing-'));
const at = (name: string): string => join(kitchen, name);
afterAll(() => rmSync(kitchen, { recursive: true }));
beforeEach(() => {
  rmSync(kitchen, { recursive: true });
  mkdirSync(kitchen);
  writeFileSync(at('a.quern'), OLD);
  writeFileSync(at('b.quern'), OLD);
});

interface Fault {
  readonly how: string;
  readonly at: number;
  readonly file?: string;
}

interface Ran {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
  /** The fault came about: the run had so many calls. */
  readonly struck: boolean;
}

function quern(args: readonly string[], fault?: Fault, options: { uid?: number; input?: string } = {}): Ran {
  const { status, stdout, stderr } = spawnSync(
    NODE,
    [
      ...(fault === undefined ? [] : ['--disable-warning=MODULE_TYPELESS_PACKAGE_JSON', '--import', FAULTS]),
      CLI,
      ...args,
    ],
    {
      cwd: kitchen,
      encoding: 'utf8',
      env: {
        ...process.env,
        NODE_DISABLE_COMPILE_CACHE: '1',
        FAULT_BELOW: kitchen,
        ...(fault && { FAULT: fault.how, FAULT_AT: String(fault.at), FAULT_FILE: fault.file ?? '' }),
      },
      ...options,
    },
  );
  return { exit: status, out: stdout, err: stderr, struck: stderr.includes('fault at ') };
}

const text = (name: string): string => readFileSync(at(name), 'utf8');
const names = (): string[] => readdirSync(kitchen).sort();

describe('format --write over two files', () => {
  test('killed at any call, each file is the old one or the new one', () => {
    for (let call = 1; ; call++) {
      for (const name of ['a.quern', 'b.quern']) writeFileSync(at(name), OLD);
      const { struck } = quern(['format', '--write', '.'], { how: 'kill', at: call });
      const now = [text('a.quern'), text('b.quern')];
      if (!struck) {
        expect(now).toEqual([NEW, NEW]);
        expect(call).toBeGreaterThan(2);
        return;
      }
      for (const each of now) expect([OLD, NEW], `call ${call}`).toContain(each);
    }
  });

  test.each([
    ['EACCES', 'you may not write it, or not in its folder'],
    ['EPERM', 'you may not write it, or not in its folder'],
    ['ENOSPC', 'there is no room left on its disk'],
    ['EROFS', 'its disk is read-only'],
    ['EIO', 'EIO'],
  ])('%s leaves all files old, and is said in words', (code, words) => {
    const { exit, err } = quern(['format', '--write', '.'], { how: code, at: 2 });
    expect([text('a.quern'), text('b.quern')]).toEqual([OLD, OLD]);
    expect(exit).toBe(2);
    expect(err).toMatch(/quern format: `[ab]\.quern` cannot be written: /);
    expect(err).toContain(words);
    expect(err).not.toContain('    at ');
    expect(names()).toEqual(['a.quern', 'b.quern']);
  });

  test('changed by another program since it was read, nothing is written', () => {
    const { exit, err, struck } = quern(['format', '--write', '.'], {
      how: 'other writes',
      at: 1,
      file: at('b.quern'),
    });
    expect(struck).toBe(true);
    expect(text('b.quern')).toBe('recipe Of another\n');
    expect(text('a.quern')).toBe(OLD);
    expect(exit).toBe(2);
    expect(err).toContain('`b.quern` cannot be written: it was changed since it was read');
    expect(names()).toEqual(['a.quern', 'b.quern']);
  });
});

test.each<[string, string[]]>([
  ['scale', ['scale', 'a.quern', '--by', '2', '--write']],
  ['convert', ['convert', 'a.quern', '--to', 'us', '--write']],
  ['trial', ['trial', 'a.quern', '--write', '--date', '2026-09-14']],
  ['check --fix', ['check', 'a.quern', '--fix']],
  ['--update-baseline', ['check', '.', '--baseline', 'base.json', '--update-baseline']],
])('%s leaves the old file or the new one, whole, when killed', (_, args) => {
  const file = args.includes('base.json') ? 'base.json' : 'a.quern';
  const before = OLD.replace('  do Rub', '  allow dough-too-wet because it is a batter\n  do Rub');
  const set = () => {
    writeFileSync(at('a.quern'), before);
    writeFileSync(at('base.json'), '{"version": 1, "findings": []}\n');
  };
  set();
  const old = text(file);
  quern(args);
  const whole = text(file);
  expect(whole).not.toBe(old);
  for (const call of [1, 2]) {
    set();
    quern(args, { how: 'kill', at: call });
    expect([old, whole], `call ${call}`).toContain(text(file));
  }
});

test('findings that are mended and the baseline are written together or not at all', () => {
  const before = OLD.replace('  do Rub', '  allow dough-too-wet because it is a batter\n  do Rub');
  writeFileSync(at('a.quern'), before);
  mkdirSync(at('base.json'));
  const { exit, err } = quern(['check', '--fix', '.', '--baseline', 'base.json', '--update-baseline']);
  expect(exit).toBe(2);
  expect(err).toContain('base.json');
  expect(text('a.quern')).toBe(before);
});

test('mode, owner and links stay', () => {
  chmodSync(at('a.quern'), 0o640);
  if (process.getuid?.() === 0) chownSync(at('a.quern'), 1234, 2345);
  const { uid, gid } = statSync(at('a.quern'));
  writeFileSync(at('kept elsewhere'), OLD);
  symlinkSync('kept elsewhere', at('link.quern'));
  expect(quern(['format', '--write', 'a.quern', 'link.quern']).exit).toBe(0);
  expect(text('a.quern')).toBe(NEW);
  expect(statSync(at('a.quern'))).toMatchObject({ mode: 0o100640, uid, gid });
  expect(lstatSync(at('link.quern')).isSymbolicLink()).toBe(true);
  expect(text('kept elsewhere')).toBe(NEW);
});

test('a file of two names is not parted from its other name', () => {
  linkSync(at('a.quern'), at('same.quern'));
  const { exit, err } = quern(['format', '--write', 'a.quern', 'b.quern']);
  expect(text('same.quern')).toBe(text('a.quern'));
  expect(exit).toBe(2);
  expect(err).toContain('`a.quern` cannot be written: it has 2 names');
  expect(text('b.quern')).toBe(OLD);
});

describe.runIf(process.getuid?.() === 0)('as a user who may not', () => {
  const uid = 54321;
  beforeEach(() => chmodSync(kitchen, 0o777));
  test('write the file: it stays, and nothing beside it is written', () => {
    chmodSync(at('a.quern'), 0o666);
    chmodSync(at('b.quern'), 0o444);
    const { exit, err } = quern(['format', '--write', '.'], undefined, { uid });
    expect([text('a.quern'), text('b.quern')]).toEqual([OLD, OLD]);
    expect(exit).toBe(2);
    expect(err).toContain('`b.quern` cannot be written: you may not write it, or not in its folder');
    expect(names()).toEqual(['a.quern', 'b.quern']);
  });
  test('write in the folder: the file stays', () => {
    chmodSync(at('a.quern'), 0o666);
    chmodSync(kitchen, 0o555);
    const { exit, err } = quern(['format', '--write', 'a.quern'], undefined, { uid });
    expect(text('a.quern')).toBe(OLD);
    expect(exit).toBe(2);
    expect(err).toContain('`a.quern` cannot be written: you may not write it, or not in its folder');
  });
});

test.each<string[]>([
  ['format', '--write'],
  ['scale', '--by', '2', '--write'],
  ['convert', '--to', 'us', '--write'],
  ['trial', '--write'],
  ['check', '--fix'],
])('%s of standard input writes no file: it is bad usage', (...args) => {
  const { exit, out, err } = quern([...args, '--stdin', '--stdin-name', 'a.quern'], undefined, { input: OLD });
  expect(exit).toBe(2);
  expect(out).toBe('');
  expect(err).toContain('--stdin');
  expect(text('a.quern')).toBe(OLD);
});
