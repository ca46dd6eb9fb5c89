// Runs the editor tests: in the browser workbench, or with QUERN_VSCODE set in VS Code itself ('download' for the
// newest, or the path of one). It refuses to know what is tested: that is suite.ts.

import { execFileSync } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm } from 'node:fs/promises';
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
  await mkdir(shots, { recursive: true });
  await cp(here('../../examples'), kitchen, { recursive: true });
  commitAll(kitchen);
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
    extensionTestsEnv: given === undefined ? { QUERN_SHOTS: shots } : {},
    launchArgs: [
      kitchen,
      `--user-data-dir=${join(scratch, 'state')}`,
      `--extensions-dir=${join(scratch, 'extensions')}`,
    ],
  });
}

/** The kitchen is a repository with one commit, whatever this machine's git is set up to do. */
function commitAll(folder: string): void {
  const git = (...args: string[]) =>
    execFileSync('git', ['-c', 'user.name=Ines', '-c', 'user.email=ines@harbour-lane.example', ...args], {
      cwd: folder,
      stdio: 'ignore',
    });
  git('init', '--quiet', '--initial-branch=main');
  git('add', '--all');
  git('-c', 'commit.gpgsign=false', 'commit', '--quiet', '--no-verify', '--message', 'Write down the kitchen');
}
