/** A folder of recipes is begun in a real repository: what is written works there, and what was there stays. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { main } from '../../server/src/cli/main.ts';
import { nodeIo } from '../../server/src/host/node.ts';
import { parseSettings } from '../../server/src/workspace/settings.ts';

const SOUND = 'recipe Toast\n  yield   2 slices\n  100 g     bread\n  do Toast the bread for 3 min until golden.\n';
const BAD =
  'recipe Toast\n  yield   2 slices\n  100 g     bread\n  2 blobs   butter\n  do Toast the bread for 3 min until golden.\n';

let root: string;
let bin: string;
beforeEach(() => {
  root = realpathSync(mkdtempSync(join(tmpdir(), 'quern-init-')));
  bin = realpathSync(mkdtempSync(join(tmpdir(), 'quern-bin-')));
});
afterEach(() => {
  for (const folder of [root, bin]) rmSync(folder, { recursive: true, force: true });
});

const env = () => ({
  ...process.env,
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_SYSTEM: '/dev/null',
  PATH: `${bin}${delimiter}${process.env.PATH}`,
  // Nothing that a hook runs may fetch anything.
  npm_config_offline: 'true',
});
const git = (...args: string[]) => {
  const as = ['-c', 'user.name=Bao', '-c', 'user.email=bao@example.org', '-c', 'commit.gpgsign=false'];
  const { status, stdout, stderr } = spawnSync('git', [...as, ...args], { cwd: root, encoding: 'utf8', env: env() });
  return { status, said: stdout + stderr };
};
const put = (path: string, text: string): void => {
  mkdirSync(join(root, path, '..'), { recursive: true });
  writeFileSync(join(root, path), text);
};
const read = (path: string): string => readFileSync(join(root, path), 'utf8');

async function init(...args: string[]): Promise<{ exit: unknown; out: string; err: string }> {
  let [out, err] = ['', ''];
  const io = {
    ...nodeIo(),
    cwd: root,
    color: false,
    resolve: (path: string) => resolve(root, path),
    shown: (path: string) => path.replace(`${root}/`, ''),
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
  };
  const exit = await main(['init', ...args], io, { lsp: () => {}, mcp: () => {} }, '0.0.0');
  return { exit, out, err };
}

/** Stands for an installed Quern: the command as it is built, found in the folder by npx. */
function install(folder = '.'): void {
  const at = join(root, folder, 'node_modules', '.bin');
  mkdirSync(at, { recursive: true });
  const program = join(at, 'quern');
  writeFileSync(program, `#!/bin/sh\nexec '${process.execPath}' '${resolve('dist/cli.js')}' "$@"\n`);
  chmodSync(program, 0o755);
  put(join(folder, 'package.json'), '{ "private": true }\n');
  put('.gitignore', 'node_modules\n');
}

describe('in a repository', () => {
  test('the settings, the attributes, the hook and the workflow are written', async () => {
    git('init', '-q', '-b', 'main');
    const { exit, out } = await init('--measures', 'metric');
    expect([exit, out]).toEqual([
      0,
      'wrote: quern.json\nwrote: .gitattributes\nwrote: .git/hooks/pre-commit\nwrote: .github/workflows/recipes.yml\n',
    ]);
    const { settings, problems } = parseSettings(read('quern.json'));
    expect([settings.measures, problems]).toEqual(['metric', []]);
    expect(statSync(join(root, '.git/hooks/pre-commit')).mode & 0o111).not.toBe(0);
    expect(git('check-attr', 'diff', 'text', '--', 'a b.quern').said).toBe(
      'a b.quern: diff: quern\na b.quern: text: set\n',
    );
  });

  test('what is there stays, and it is said what it lacks', async () => {
    git('init', '-q', '-b', 'main');
    put('.gitattributes', '*.png binary\n');
    put('quern.json', '{}\n');
    put('.git/hooks/pre-commit', '#!/bin/sh\nnpx quern check\n');
    const { exit, out } = await init();
    expect(exit).toBe(0);
    expect(out.split('\n')).toEqual([
      'left as it is: quern.json',
      'left as it is: .gitattributes; add the line `*.quern text diff=quern`',
      'left as it is: .git/hooks/pre-commit',
      'wrote: .github/workflows/recipes.yml',
      '',
    ]);
    expect(read('.gitattributes')).toBe('*.png binary\n');
    const again = await init();
    expect(again.out).not.toContain('wrote');
    expect(again.exit).toBe(0);
  });

  test('a bad recipe is not committed, a sound one is, and no more than git is asked to', async () => {
    git('init', '-q', '-b', 'main');
    install();
    await init();
    put('toast.quern', BAD);
    git('add', '--all');
    const refused = git('commit', '-m', 'Write down the toast');
    expect(refused.said).toContain('unknown-unit');
    expect(refused.status).not.toBe(0);
    expect(git('rev-parse', '--verify', 'HEAD').status).not.toBe(0);
    put('toast.quern', SOUND);
    git('add', '--all');
    expect(git('commit', '-m', 'Write down the toast')).toMatchObject({ status: 0 });
    // Now there is a commit to be held against.
    put('toast.quern', BAD);
    expect(git('commit', '-a', '-m', 'Butter the toast').status).not.toBe(0);
    expect(git('commit', '-a', '--no-verify', '-m', 'Butter the toast').status).toBe(0);
  }, 60_000);

  test('without Quern a commit is refused with the reason', async () => {
    git('init', '-q', '-b', 'main');
    await init();
    put('toast.quern', SOUND);
    git('add', '--all');
    // A machine may have it for all.
    const { status, said } = git('commit', '-m', 'Write down the toast');
    if (status !== 0) expect(said).toContain('quern is not installed, so no recipe was checked');
  }, 60_000);

  test('recipes in a folder of it are checked there, and git keeps them from its root', async () => {
    git('init', '-q', '-b', 'main');
    mkdirSync(join(root, "Ida's kitchen"));
    install("Ida's kitchen");
    const { out } = await init("Ida's kitchen");
    expect(out).toContain("wrote: Ida's kitchen/quern.json\nwrote: .gitattributes\n");
    put("Ida's kitchen/toast.quern", BAD);
    git('add', '--all');
    expect(git('commit', '-m', 'Write down the toast').said).toContain('unknown-unit');
    const workflow = read('.github/workflows/recipes.yml');
    expect(workflow).toContain('working-directory: "Ida\'s kitchen"');
  }, 60_000);

  test('the workflow checks by the line that it has', async () => {
    git('init', '-q', '-b', 'main');
    install();
    await init();
    put('toast.quern', BAD);
    const line = /run: (npx .*)$/m.exec(read('.github/workflows/recipes.yml'))?.[1] ?? '';
    const ran = spawnSync('sh', ['-c', line], { cwd: root, encoding: 'utf8', env: env() });
    expect(ran.status).toBe(1);
    expect(ran.stdout).toContain('::error file=toast.quern');
  }, 60_000);

  test('hooks that git looks for elsewhere are written there, or not at all', async () => {
    git('init', '-q', '-b', 'main');
    git('config', 'core.hooksPath', '.hooks');
    expect((await init()).out).toContain('wrote: .hooks/pre-commit');
    git('config', 'core.hooksPath', bin);
    rmSync(join(root, '.hooks'), { recursive: true });
    expect((await init()).out).toContain('not written: pre-commit, as git is set to look for hooks outside');
    expect(existsSync(join(bin, 'pre-commit'))).toBe(false);
  });
});

test('without a repository only the settings are written', async () => {
  const { exit, out } = await init();
  expect(exit).toBe(0);
  expect(out).toMatch(/^wrote: quern.json\nnot written: .gitattributes, as no git repository is there/);
  expect(existsSync(join(root, '.github'))).toBe(false);
});

test('what would be written can be seen first, and a folder must be there', async () => {
  execFileSync('git', ['init', '-q'], { cwd: root, env: env() });
  expect((await init('--dry-run')).out).toContain('would write: quern.json\n');
  expect(existsSync(join(root, 'quern.json'))).toBe(false);
  expect(await init('nowhere')).toMatchObject({ exit: 2, err: 'quern init: there is no folder `nowhere`\n' });
});
