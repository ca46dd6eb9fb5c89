/** The results of other runs, on a real disk by the built command: two runs at once, a folder that cannot be written, one that is full, a user without a home. */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { ROOT } from '../support/fake-editor.ts';

const folder = mkdtempSync(join(tmpdir(), 'quern-results-'));
const recipes = join(folder, 'recipes');
mkdirSync(recipes);
for (let i = 0; i < 30; i++)
  writeFileSync(
    join(recipes, `r${i}.quern`),
    `recipe Loaf ${i} as lean bread\n  500 g     bread flour\n  ${300 + i * 20} g     water\n  do Mix the flour with the water.\n`,
  );
afterAll(() => {
  spawnSync('umount', [join(folder, 'full')]);
  rmSync(folder, { recursive: true, force: true });
});

const CLI = `${ROOT}dist/cli.js`;
const env = { ...process.env, XDG_CACHE_HOME: join(folder, 'own') };
const check = (args: readonly string[] = [], others: NodeJS.ProcessEnv = {}) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, 'check', '--format', 'json', ...args], {
    cwd: recipes,
    encoding: 'utf8',
    env: { ...env, ...others },
  });
  return { status, stdout, stderr };
};
const expected = check(['--no-cache']);

describe('results of other runs', () => {
  test('lie in the user’s own cache, for the user alone', () => {
    expect(check()).toEqual(expected);
    expect(check()).toEqual(expected);
    const [name = ''] = readdirSync(join(folder, 'own', 'quern', 'results'));
    expect(readFileSync(join(folder, 'own', 'quern', 'results', name), 'utf8')).toContain('end 30');
    if (process.platform !== 'win32') {
      const mode = execFileSync('stat', ['-c', '%a', join(folder, 'own', 'quern', 'results', name)], {
        encoding: 'utf8',
      });
      expect(mode.trim()).toBe('600');
    }
  });

  test('serve several runs at once', async () => {
    const kept = join(folder, 'shared');
    const one = () =>
      new Promise<string>((resolve) => {
        const child = spawn(process.execPath, [CLI, 'check', '--format', 'json', '--cache', kept], {
          cwd: recipes,
          env,
        });
        let out = '';
        child.stdout.on('data', (data: Buffer) => {
          out += data.toString();
        });
        child.on('close', () => resolve(out));
      });
    for (const out of await Promise.all([one(), one(), one()])) expect(out).toBe(expected.stdout);
    expect(check(['--cache', kept])).toEqual(expected);
    // Nobody left anything half written.
    expect(readdirSync(kept).filter((name) => !/^check-[\w-]+$/.test(name))).toEqual([]);
  });

  test('are not missed where the folder cannot be written', () => {
    const closed = join(folder, 'closed');
    writeFileSync(closed, 'a file where a folder should be');
    const { status, stdout, stderr } = check(['--cache', closed]);
    expect([status, stdout]).toEqual([expected.status, expected.stdout]);
    expect(stderr).toContain('nothing is kept');
    chmodSync(closed, 0o400);
    expect(check([], { XDG_CACHE_HOME: closed })).toEqual(expected);
  });

  test('are not missed by a user without a home', () => {
    expect(check([], { XDG_CACHE_HOME: '', HOME: '/nowhere/at/all' })).toEqual(expected);
  });

  const full = join(folder, 'full');
  mkdirSync(full);
  const isMounted =
    spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=8k', 'tmpfs', full], { stdio: 'ignore' }).status === 0;
  test.skipIf(!isMounted)('are not missed on a full disk, and nothing half written is left there', () => {
    const { status, stdout, stderr } = check(['--cache', full]);
    expect([status, stdout]).toEqual([expected.status, expected.stdout]);
    expect(stderr).toContain('nothing is kept');
    expect(readdirSync(full)).toEqual([]);
  });
});
