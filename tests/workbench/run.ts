// Runs the editor tests: in the browser workbench, or with QUERN_VSCODE set in VS Code itself ('download' for the
// newest, or the path of one): all, or those whose names have the words that follow the command, `npm run test:editor -- the page`.
// It refuses to know what is tested: that is suite.ts.

import { execFileSync } from 'node:child_process';
import { cp, mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTests, TestRunFailedError } from '@vscode/test-electron';
import * as esbuild from 'esbuild';
import { browserMissing, findBrowser, installWorkbench, isWorkbenchInstalled } from './workbench.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

process.exitCode = await main();

async function main(): Promise<number> {
  const given = process.env.QUERN_VSCODE;
  if (given === undefined && findBrowser() === undefined) {
    console.error(browserMissing);
    return 2;
  }
  if (given === undefined && !isWorkbenchInstalled()) await installWorkbench();
  const scratch = await mkdtemp(join(tmpdir(), 'quern-editor-'));
  try {
    await runIn(scratch, given);
    return 0;
  } catch (error) {
    if (!(error instanceof TestRunFailedError)) console.error(error);
    return 1;
  } finally {
    await rm(scratch, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

async function runIn(scratch: string, given: string | undefined): Promise<void> {
  const tests = join(scratch, 'suite.js');
  // The tests write, so they get their own copy of the kitchen.
  const kitchen = join(scratch, 'kitchen');
  const shots = here('shots');
  const only = process.argv.slice(2).join(' ');
  await mkdir(shots, { recursive: true });
  await cp(here('../../examples'), kitchen, { recursive: true });
  commitAll(kitchen);
  await commitOats(kitchen);
  await esbuild.build({
    entryPoints: [here('suite.ts')],
    outfile: tests,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node22',
    external: ['vscode'],
    sourcemap: 'inline',
  });
  await runTests({
    ...(given === 'download' ? {} : { vscodeExecutablePath: given ?? here('browser-host.ts') }),
    extensionDevelopmentPath: here('../..'),
    extensionTestsPath: tests,
    // Only the browser workbench is asked for pictures.
    extensionTestsEnv: {
      ...(given === undefined && { QUERN_SHOTS: shots }),
      ...(only !== '' && { QUERN_ONLY: only }),
    },
    launchArgs: [
      kitchen,
      `--user-data-dir=${join(scratch, 'state')}`,
      `--extensions-dir=${join(scratch, 'extensions')}`,
    ],
  });
}

/** The kitchen is a repository, whatever this machine's git is set up to do. */
function commitAll(folder: string): void {
  git(folder, undefined, 'init', '--quiet', '--initial-branch=main');
  commit(folder, undefined, 'Write down the kitchen');
}

/** `day`, as 2026-09-14, is when it was committed; today where it is undefined. */
function commit(folder: string, day: string | undefined, message: string): void {
  git(folder, day, 'add', '--all');
  git(folder, day, '-c', 'commit.gpgsign=false', 'commit', '--quiet', '--no-verify', '--message', message);
}

function git(folder: string, day: string | undefined, ...args: string[]): void {
  const date = day === undefined ? {} : { GIT_AUTHOR_DATE: `${day}T12:00:00Z`, GIT_COMMITTER_DATE: `${day}T12:00:00Z` };
  execFileSync('git', ['-c', 'user.name=Ines', '-c', 'user.email=ines@harbour-lane.example', ...args], {
    cwd: folder,
    stdio: 'ignore',
    env: { ...process.env, ...date },
  });
}

/** A recipe that was cooked with 90 g of butter, but committed so only days later, and has another name and weight since. */
async function commitOats(folder: string): Promise<void> {
  const trial = '\ntrial 2026-09-14\n  took    25 min to bake\n  tested  xmtdsa8r2\n  verdict keep\n';
  const slab = (butterG: number) =>
    `recipe Oat slab\n  yield   12 squares\n\n  200 g     rolled oats\n  ${butterG} g      butter\n\n  do Melt the butter and stir in the oats.\n  do Bake at 170 C for 25 min until golden.\n`;
  const [old, now] = [join(folder, 'oats.quern'), join(folder, 'compared', 'oat-slab.quern')];
  await writeFile(old, slab(80));
  commit(folder, '2026-09-10', 'Write down the oats');
  await writeFile(old, slab(90) + trial);
  commit(folder, '2026-09-20', 'Cook the oats');
  await mkdir(join(folder, 'compared'));
  await rename(old, now);
  await writeFile(now, slab(100) + trial);
  commit(folder, '2026-10-01', 'Name the slab');
  await writeFile(now, slab(120) + trial);
  commit(folder, '2026-10-02', 'More butter');
}
