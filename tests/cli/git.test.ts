/** The command line over a real repository: what changed since a revision, what a file was, and git's own diff in a cook's words. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { main } from '../../server/src/cli/main.ts';
import { nodeGit } from '../../server/src/host/git.ts';
import { nodeIo } from '../../server/src/host/node.ts';

const WET =
  'recipe Crust\n  yield   1 crust\n\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  120 g     water\n\n  do Rub the butter into the flour and bind with the water.\n';

const root = realpathSync(mkdtempSync(join(tmpdir(), 'quern-git-')));
const git = (...args: string[]): string =>
  execFileSync(
    'git',
    ['-c', 'user.name=Bao', '-c', 'user.email=bao@example.org', '-c', 'commit.gpgsign=false', ...args],
    {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' },
    },
  );
const put = (path: string, text: string): void => writeFileSync(join(root, path), text);

async function quern(...args: string[]): Promise<{ exit: unknown; out: string; err: string }> {
  let [out, err] = ['', ''];
  const real = nodeIo();
  const io = {
    ...real,
    cwd: root,
    color: false,
    resolve: (path: string) => (path.startsWith('/') ? path : join(root, path)),
    shown: (path: string) => path.replace(`${root}/`, ''),
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
  };
  const exit = await main(args, io, { lsp: () => {}, mcp: () => {} }, '0.0.0');
  return { exit, out, err };
}

beforeAll(() => {
  git('init', '-q', '-b', 'main');
  mkdirSync(join(root, 'pies'));
  put('pies/a.quern', WET);
  put('b.quern', WET.replace('Crust', 'Other'));
  put('gone.quern', WET.replace('Crust', 'Gone'));
  put('.gitignore', 'secret.quern\n');
  git('add', '-A');
  git('commit', '-qm', 'First');
  git('tag', 'first');
  git('checkout', '-qb', 'work');
  put('pies/a.quern', WET.replace('120 g', '60 g '));
  rmSync(join(root, 'gone.quern'));
  git('commit', '-qam', 'Second');
  put('pies/ñew one.quern', WET.replace('Crust', 'New'));
  put('secret.quern', WET);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

test('the folder that a command runs in is shown as a dot', () => {
  expect(nodeIo().shown(process.cwd())).toBe('.');
});

describe('the host’s git', () => {
  const port = nodeGit();

  test('changed, deleted and new files, from any folder of it', () => {
    const want = ['gone.quern', 'pies/a.quern', 'pies/ñew one.quern'].map((p) => join(root, p));
    expect(port.changedSince(root, 'first')).toEqual({ known: true, value: want });
    expect(port.changedSince(join(root, 'pies'), 'main')).toEqual({ known: true, value: want });
  });

  test('what a file held', () => {
    expect(port.textAt(join(root, 'pies/a.quern'), 'first')).toEqual({ known: true, value: WET });
    expect(port.textAt(join(root, 'no.quern'), 'first')).toMatchObject({ known: false });
  });

  test('an unknown revision, an option in its place, and no repository say so', () => {
    expect(port.changedSince(root, 'nope')).toEqual({ known: false, why: 'git knows no revision `nope`' });
    expect(port.changedSince(root, '--output=/tmp/x')).toMatchObject({ known: false });
    const outside = mkdtempSync(join(tmpdir(), 'quern-none-'));
    expect(port.changedSince(outside, 'HEAD')).toMatchObject({
      known: false,
      why: expect.stringMatching(/not a git repository/),
    });
    rmSync(outside, { recursive: true });
  });

  test('what main did since the branch left it is no change of the branch', () => {
    git('stash', '-qu');
    git('checkout', '-q', 'main');
    put('b.quern', WET.replace('Crust', 'Other').replace('100 g', '90 g '));
    git('commit', '-qam', 'Meanwhile');
    git('checkout', '-q', 'work');
    git('stash', 'pop', '-q');
    const changed = port.changedSince(root, 'main');
    expect(changed.known && changed.value).not.toContain(join(root, 'b.quern'));
  });
});

test('check --since over the repository', async () => {
  const { out } = await quern('check', '--since', 'first', '--format', 'json');
  expect(JSON.parse(out).files.map((f: { path: string }) => f.path)).toEqual(['pies/a.quern', 'pies/ñew one.quern']);
});

describe('diff', () => {
  test('a revision against the file, and two revisions', async () => {
    const file = await quern('diff', 'first:pies/a.quern', 'pies/a.quern');
    expect(file.out).toContain('water down 60 g (120 g to 60 g)');
    const both = await quern('diff', 'first:pies/a.quern', 'HEAD:pies/a.quern', '--format', 'json');
    expect(JSON.parse(both.out).changes[0]).toMatchObject({ kind: 'amount', fromG: 120, toG: 60 });
  });

  test('a revision or a file that is not there is bad usage', async () => {
    expect((await quern('diff', 'first:b.quern', 'no.quern')).exit).toBe(2);
  });

  test.each([
    ['nope:b.quern', 'git knows no revision `nope`'],
    ['first:no.quern', 'there is no such path in `first`'],
    ['first:no/such/folder/b.quern', 'there is no such path in `first`'],
    ['first:../b.quern', 'not a git repository'],
    ['first:pies', 'it is a folder in `first`'],
    ['no.quern', 'there is no file `no.quern`'],
  ])('%s is bad usage, and says why', async (written, why) => {
    const { err, exit } = await quern('diff', written, 'b.quern');
    expect([exit, err]).toEqual([2, expect.stringContaining(why)]);
    expect(err).not.toContain('ENOENT');
  });

  test('what lay in a folder that is gone is still read', async () => {
    mkdirSync(join(root, 'old'));
    put('old/c.quern', WET);
    git('add', 'old/c.quern');
    git('commit', '-qm', 'With a folder');
    git('rm', '-q', 'old/c.quern');
    git('commit', '-qm', 'Without it');
    expect((await quern('diff', 'HEAD~1:old/c.quern', 'b.quern')).exit).toBe(0);
  });

  test('a variant of then is laid over its base of then', async () => {
    put('v.quern', 'recipe Variant\n  from    pies/a.quern\n  yield   2 crusts\n');
    git('add', 'v.quern');
    git('commit', '-qm', 'Third');
    put('pies/a.quern', WET.replace('120 g', '70 g '));
    expect((await quern('diff', 'HEAD:v.quern', 'v.quern')).out).toContain('water up 10 g (60 g to 70 g)');
    expect((await quern('diff', 'v.quern', 'v.quern')).out).toBe('the same text\n');
    put('pies/a.quern', WET.replace('120 g', '60 g '));
  });

  test('a revision without a file is told how one is written', async () => {
    const { err, exit } = await quern('diff', 'HEAD', 'b.quern');
    expect([exit, err]).toEqual([2, expect.stringContaining('write `HEAD:b.quern`')]);
  });

  test('as git calls an external diff, for a changed file and a new one', async () => {
    put('old.tmp', WET);
    put('new.tmp', WET.replace('100 g', '80 g '));
    const ran = await quern(
      'diff',
      'pies/a.quern',
      join(root, 'old.tmp'),
      'abc',
      '100644',
      join(root, 'new.tmp'),
      'def',
      '100644',
    );
    expect([ran.exit, ran.out]).toEqual([0, expect.stringMatching(/^pies\/a\.quern\ncrust:\n {2}butter down 20 g/)]);
    const fresh = await quern('diff', 'x.quern', '/dev/null', '.', '.', join(root, 'new.tmp'), 'def', '100644');
    expect(fresh.out).toContain('new part crust: plain flour, butter, water');
    const gone = await quern('diff', 'x.quern', join(root, 'new.tmp'), 'def', '100644', '/dev/null', '.', '.');
    expect(gone.out).toBe('x.quern\nthe file is no more\n');
  });
});
