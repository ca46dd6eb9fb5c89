/** A disk that fails at any one call, or that has no room from there on, leaves all files as they were. */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { writeWhole } from '../../server/src/host/writing.ts';

const real = { ...fs };
const folder = fs.mkdtempSync(join(tmpdir(), 'quern-host-writing-'));
const at = (name: string): string => join(folder, name);
const NAMES = ['a.quern', 'b.quern', 'c.quern'];
const changes = NAMES.map((name) => ({ path: at(name), before: `old ${name}`, text: `new ${name}` }));
const texts = (): string[] => NAMES.map((name) => real.readFileSync(at(name), 'utf8'));

beforeEach(() => {
  for (const name of NAMES) real.writeFileSync(at(name), `old ${name}`);
});
afterEach(restore);
afterAll(() => real.rmSync(folder, { recursive: true }));

function restore(): void {
  for (const call of CALLS) Object.assign(fs, { [call]: real[call] });
  syncBuiltinESMExports();
}

const CALLS = [
  'realpathSync',
  'statSync',
  'accessSync',
  'readFileSync',
  'openSync',
  'writeFileSync',
  'fchmodSync',
  'fchownSync',
  'fsyncSync',
  'closeSync',
  'copyFileSync',
  'renameSync',
  'unlinkSync',
] as const;
/** What a full disk still does. */
const TAKES_NO_ROOM: ReadonlySet<string> = new Set(CALLS.filter((call) => !/^(?:open|write|copy)/.test(call)));

/** The n-th call fails, and where `onward` says so those after it as well; answers whether there was one. */
function failAt(n: number, code: string, onward: (call: string) => boolean): () => string | undefined {
  let calls = 0;
  let struck: string | undefined;
  for (const name of CALLS) {
    const call = real[name] as (...args: unknown[]) => unknown;
    Object.assign(fs, {
      [name]: (...args: unknown[]) => {
        calls++;
        if (calls < n || (calls > n && !onward(name))) return call(...args);
        struck ??= name;
        throw Object.assign(new Error(`${code}: injected`), { code });
      },
    });
  }
  syncBuiltinESMExports();
  return () => struck;
}

test.each<[string, string, (call: string) => boolean]>([
  ['EIO', 'fails once', () => false],
  ['EACCES', 'fails once', () => false],
  ['ENOSPC', 'has no room from there on', (call) => !TAKES_NO_ROOM.has(call)],
])('a disk that answers %s at any call and %s', (code, _, onward) => {
  const outcomes = new Map<string, number>();
  for (let n = 1; ; n++) {
    for (const name of NAMES) real.writeFileSync(at(name), `old ${name}`);
    const struck = failAt(n, code, onward);
    const failed = writeWhole(changes);
    restore();
    const call = struck();
    if (call === undefined) break;
    const where = `call ${n}, ${call}`;
    const outcome = failed === undefined ? 'new' : 'old';
    expect(texts(), where).toEqual(NAMES.map((name) => `${outcome} ${name}`));
    if (failed !== undefined) expect(NAMES.map(at), where).toContain(failed.path);
    outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    const left = real.readdirSync(folder).filter((name) => !NAMES.includes(name));
    // One that could not be deleted stays.
    expect(left.length, where).toBeLessThanOrEqual(call === 'unlinkSync' ? 1 : 0);
    for (const name of left) real.unlinkSync(at(name));
  }
  expect(texts()).toEqual(NAMES.map((name) => `new ${name}`));
  expect(outcomes.get('old')).toBeGreaterThan(20);
});

test('where a name cannot be given back, it is said which file is new', () => {
  let renames = 0;
  Object.assign(fs, {
    renameSync: (from: string, to: string) => {
      renames++;
      if (renames >= 2) throw Object.assign(new Error('EIO: injected'), { code: 'EIO' });
      real.renameSync(from, to);
    },
  });
  syncBuiltinESMExports();
  const failed = writeWhole(changes);
  restore();
  expect(failed).toMatchObject({ path: at('b.quern'), why: expect.stringContaining(`\`${at('a.quern')}\``) });
  expect(texts()).toEqual(['new a.quern', 'old b.quern', 'old c.quern']);
});

test('a file whose name cannot be taken brings the others back, with their rights', () => {
  real.chmodSync(at('a.quern'), 0o600);
  Object.assign(fs, {
    renameSync: (from: string, to: string) => {
      if (to === at('c.quern')) throw Object.assign(new Error('EIO: injected'), { code: 'EIO' });
      real.renameSync(from, to);
    },
  });
  syncBuiltinESMExports();
  expect(writeWhole(changes)).toMatchObject({ path: at('c.quern') });
  restore();
  expect(texts()).toEqual(NAMES.map((name) => `old ${name}`));
  expect(real.readdirSync(folder).sort()).toEqual(NAMES);
  expect(real.statSync(at('a.quern')).mode & 0o777).toBe(0o600);
});

test('a file that is made anew, and is there by then, is left alone', () => {
  const made = { path: at('d.json'), before: undefined, text: 'new' };
  real.writeFileSync(made.path, 'of another');
  expect(writeWhole([...changes, made])).toMatchObject({ path: made.path });
  expect(real.readFileSync(made.path, 'utf8')).toBe('of another');
  expect(texts()).toEqual(NAMES.map((name) => `old ${name}`));
  real.unlinkSync(made.path);
  expect(writeWhole([made])).toBeUndefined();
  expect(real.readFileSync(made.path, 'utf8')).toBe('new');
  real.unlinkSync(made.path);
});
