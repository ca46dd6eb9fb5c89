/**
 * The first run: builds, prints what is found in the example kitchen, and opens that folder with the extension loaded:
 * in VS Code where `code` is on the path, else in the browser workbench. `--no-open` stops after the findings.
 */
import { spawn, spawnSync } from 'node:child_process';
import { homedir, platform } from 'node:os';
import { join } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { installWorkbench, isWorkbenchInstalled, pageOf, startWorkbench } from '../../tests/workbench/workbench.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const kitchen = join(root, 'examples');

process.exitCode = await start();

async function start(): Promise<number> {
  heading('Building');
  const built = run(process.execPath, [...process.execArgv, join(root, 'server/tools/build.ts')]);
  if (built !== 0) return built;

  heading('What Quern finds in the example kitchen');
  const checked = run(process.execPath, [join(root, 'dist/cli.js'), 'check', kitchen]);
  // 1 says that there are findings, and first-draft.quern is there to show some.
  if (checked > 1) return checked;
  if (argv.includes('--no-open')) return 0;

  const code = platform() === 'win32' ? 'code.cmd' : 'code';
  if (hasVsCode(code)) {
    heading('Opening the example kitchen in VS Code');
    return run(code, [`--extensionDevelopmentPath=${root}`, kitchen, join(kitchen, 'first-draft.quern')]);
  }
  return openWorkbench();
}

async function openWorkbench(): Promise<number> {
  if (!isWorkbenchInstalled()) {
    heading('Installing the browser workbench, once (600 MB), as `code` is not on the path');
    await installWorkbench();
  }
  heading('Starting the browser workbench');
  const workbench = await startWorkbench({
    // Kept between runs, so that a window left open finds its settings again.
    stateFolder: join(homedir(), '.cache/quern-workbench'),
    extension: root,
    environment: process.env,
  });
  const page = pageOf(workbench, { folder: kitchen, file: join(kitchen, 'first-draft.quern') });
  process.stdout.write(`\nOpen this page; Ctrl+C ends it:\n\n  ${page}\n\n`);
  showPage(page);
  process.once('SIGINT', workbench.stop);
  process.once('SIGTERM', workbench.stop);
  await workbench.ended;
  return 0;
}

function run(command: string, args: readonly string[]): number {
  const { status, error } = spawnSync(command, args, { stdio: 'inherit', cwd: root, shell: command.endsWith('.cmd') });
  if (error !== undefined) process.stderr.write(`${error.message}\n`);
  return status ?? 2;
}

function hasVsCode(code: string): boolean {
  return spawnSync(code, ['--version'], { stdio: 'ignore', shell: code.endsWith('.cmd') }).status === 0;
}

/** Where there is a desktop to show it on; the address is printed in any case. */
function showPage(page: string): void {
  const opener = { darwin: 'open', win32: 'explorer', linux: 'xdg-open' }[String(platform())];
  if (opener === undefined || (platform() === 'linux' && process.env.DISPLAY === undefined)) return;
  const child = spawn(opener, [page], { stdio: 'ignore', detached: true });
  child.once('error', () => undefined);
  child.unref();
}

function heading(text: string): void {
  process.stdout.write(`\n${text}\n`);
}
