/** A repository whose own settings run programs, and a folder with a `git` in it: asked for changes and texts, none of them is run. */
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { nodeGit } from '../../server/src/host/git.ts';

const top = realpathSync(mkdtempSync(join(tmpdir(), 'quern-hostile-')));
const root = join(top, 'kitchen');
const marker = join(top, 'was-run');
const env = { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' };
const as = ['-c', 'user.name=Bao', '-c', 'user.email=bao@example.org', '-c', 'commit.gpgsign=false'];
const git = (folder: string, ...args: string[]): string =>
  execFileSync('git', [...as, '-c', 'protocol.file.allow=always', ...args], {
    cwd: folder,
    encoding: 'utf8',
    env,
    stdio: 'pipe',
  });
const put = (path: string, text: string): void => writeFileSync(join(root, path), text);

/** A program that tells that it was run. */
function program(path: string, rest = 'cat'): string {
  mkdirSync(join(path, '..'), { recursive: true });
  writeFileSync(path, `#!/bin/sh\necho "$0" >> '${marker}'\n${rest}\n`);
  chmodSync(path, 0o755);
  return path;
}
const run = (): string => (existsSync(marker) ? readFileSync(marker, 'utf8') : '');

beforeAll(() => {
  mkdirSync(root);
  git(root, 'init', '-q', '-b', 'main');
  const inner = join(top, 'inner');
  mkdirSync(inner);
  git(inner, 'init', '-q', '-b', 'main');
  writeFileSync(join(inner, 'x.quern'), 'recipe X\n');
  git(inner, 'add', '-A');
  git(inner, 'commit', '-qm', 'Inner');
  put('a.quern', 'recipe A\n');
  put('b.quern', 'recipe B\n');
  put('c.quern', 'recipe C\n');
  put('é.quern', 'recipe É\n');
  writeFileSync(join(root, 'old.quern'), Buffer.from('recipe Crème\n', 'latin1'));
  git(root, 'submodule', 'add', '-q', inner, 'sub');
  git(root, 'add', '-A');
  git(root, 'commit', '-qm', 'First');
  git(root, 'tag', 'first');
  put('b.quern', 'recipe B, other\n');
  git(root, 'commit', '-qam', 'Second');

  // From here on the repository is an enemy's.
  const evil = program(join(root, 'evil.sh'));
  const config: [string, string][] = [
    ['core.fsmonitor', evil],
    ['core.hooksPath', join(root, 'hooks')],
    ['core.pager', evil],
    ['core.sshCommand', evil],
    ['core.editor', evil],
    ['core.askPass', evil],
    ['core.attributesFile', join(root, 'attributes')],
    ['diff.external', evil],
    ['diff.bad.command', evil],
    ['diff.bad.textconv', evil],
    ['filter.bad.clean', evil],
    ['filter.bad.smudge', evil],
    ['filter.bad.required', 'true'],
    ['filter.worse.process', evil],
    ['filter.a=b.clean', evil],
    ['filter.a=b.required', 'true'],
    ['alias.diff', `!${evil}`],
    ['alias.rev-parse', `!${evil}`],
    ['remote.origin.url', `ext::${evil}`],
    ['remote.origin.promisor', 'true'],
    ['protocol.ext.allow', 'always'],
    ['submodule.recurse', 'true'],
    ['diff.submodule', 'log'],
    ['status.submoduleSummary', 'true'],
  ];
  for (const [key, value] of config) git(root, 'config', key, value);
  git(root, 'config', 'extensions.partialClone', 'origin');
  git(root, 'config', 'core.repositoryFormatVersion', '1');
  for (const hook of ['post-index-change', 'fsmonitor-watchman', 'reference-transaction', 'post-checkout'])
    program(join(root, 'hooks', hook));
  const sub = join(root, 'sub');
  writeFileSync(join(sub, 'x.quern'), 'recipe X, other\n');
  execFileSync('git', ['config', 'core.fsmonitor', evil], { cwd: sub, env });
  mkdirSync(join(root, '.git/info'), { recursive: true });
  const attributes = 'a.quern filter=bad diff=bad\nb.quern filter=worse diff=bad\nc.quern filter=a=b\n';
  put('attributes', attributes);
  writeFileSync(join(root, '.git/info/attributes'), attributes);
  put('.gitattributes', attributes);
  put('a.quern', 'recipe A, other\n');
  // Looks changed, and is the same.
  utimesSync(join(root, 'c.quern'), new Date(2001, 1), new Date(2001, 1));
  rmSync(marker, { force: true });
});
afterAll(() => rmSync(top, { recursive: true, force: true }));
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(marker, { force: true });
});

const names = (paths: readonly string[]): string[] => paths.map((path) => path.slice(root.length + 1));

describe('the settings of the repository', () => {
  test('run nothing when changes are asked for, and the index stays as it is', () => {
    const before = readFileSync(join(root, '.git/index'));
    const answer = nodeGit().changedSince(root, 'first');
    expect(run()).toBe('');
    expect(answer.known && names(answer.value)).toEqual(
      expect.arrayContaining(['.gitattributes', 'a.quern', 'attributes', 'b.quern', 'evil.sh']),
    );
    // Nothing of these was changed, whatever filter they have.
    for (const same of ['é.quern', 'c.quern']) expect(answer.known && names(answer.value)).not.toContain(same);
    expect(readFileSync(join(root, '.git/index')).equals(before)).toBe(true);
  });

  test('run nothing when a text is asked for', () => {
    expect(nodeGit().textAt(join(root, 'a.quern'), 'first')).toEqual({ known: true, value: 'recipe A\n' });
    expect(nodeGit().textAt(join(root, 'b.quern'), 'HEAD')).toEqual({ known: true, value: 'recipe B, other\n' });
    expect(run()).toBe('');
  });

  test('fetch nothing that is missing', () => {
    const blob = git(root, '-c', 'core.fsmonitor=false', 'rev-parse', 'first:é.quern').trim();
    rmSync(join(root, '.git/objects', blob.slice(0, 2), blob.slice(2)));
    rmSync(marker, { force: true });
    expect(nodeGit().textAt(join(root, 'é.quern'), 'first')).toMatchObject({ known: false });
    expect(run()).toBe('');
  });
});

describe('a `git` that lies in the folder', () => {
  const real = realpathSync(execFileSync('which', ['git'], { encoding: 'utf8' }).trim());
  const bin = (name: string): string => join(root, name);
  beforeAll(() => {
    program(bin('git'), 'exit 0');
    program(bin('node_modules/.bin/git'), 'exit 0');
    program(join(root, 'pies/git'), 'exit 0');
    symlinkSync(bin('node_modules/.bin'), join(top, 'looks-elsewhere'));
  });

  test.each<[string, (usual: string) => string]>([
    ['by a dot', (usual) => `.${delimiter}${usual}`],
    ['by an empty entry', (usual) => `${delimiter}${usual}`],
    ['by a relative path', (usual) => `node_modules/.bin${delimiter}${usual}`],
    ['by its whole path', (usual) => `${bin('node_modules/.bin')}${delimiter}${usual}`],
    ['through a link', (usual) => `${join(top, 'looks-elsewhere')}${delimiter}${usual}`],
    ['above the folder that is asked about', (usual) => `${root}${delimiter}${usual}`],
  ])('is never run: %s', (_, path) => {
    vi.stubEnv('PATH', path(process.env.PATH ?? ''));
    mkdirSync(join(root, 'pies'), { recursive: true });
    const git = nodeGit();
    for (const folder of [root, join(root, 'pies')])
      expect(git.changedSince(folder, 'first')).toMatchObject({ known: true });
    expect(git.textAt(join(root, 'a.quern'), 'first')).toMatchObject({ value: 'recipe A\n' });
    expect(run()).toBe('');
  });

  test('is no git where there is no other', () => {
    vi.stubEnv('PATH', `.${delimiter}${root}${delimiter}${join(top, 'no-such-folder')}`);
    expect(nodeGit().changedSince(root, 'first')).toEqual({ known: false, why: 'git is not on the PATH' });
    vi.stubEnv('PATH', undefined);
    expect(nodeGit().textAt(join(root, 'a.quern'), 'first')).toEqual({ known: false, why: 'git is not on the PATH' });
    expect(run()).toBe('');
    expect(real).not.toContain(root);
  });
});

test('a text that is not UTF-8 is none', () => {
  expect(nodeGit().textAt(join(root, 'old.quern'), 'first')).toEqual({
    known: false,
    why: expect.stringContaining('it is not UTF-8'),
  });
});
