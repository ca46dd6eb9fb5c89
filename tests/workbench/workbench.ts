// Knows the browser workbench: the same editor as VS Code, from the npm package code-server, served on this machine.
// It refuses to know what is tested or shown in it.

import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cp, mkdir, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { platform } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const packageFolder = fileURLToPath(new URL('.', import.meta.url));
const serverMain = join(packageFolder, 'node_modules/code-server/lib/vscode/out/server-main.js');
// Its own dependencies are installed last: if they are there, the installation ran to its end.
const lastInstalled = join(packageFolder, 'node_modules/code-server/lib/vscode/node_modules/vscode-textmate');

/** What the editor does not ask, offer or fetch when it is opened for Quern. */
const quietSettings = {
  'workbench.startupEditor': 'none',
  'workbench.colorTheme': 'Light Modern',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'editor.minimap.enabled': false,
  'workbench.tips.enabled': false,
  'chat.disableAIFeatures': true,
  'extensions.ignoreRecommendations': true,
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  // A browser's editor saves by itself unless it is told not to.
  'files.autoSave': 'off',
  'git.openRepositoryInParentFolders': 'never',
  'telemetry.telemetryLevel': 'off',
  'security.workspace.trust.enabled': false,
  'update.mode': 'none',
};

/** No extensions are looked for on the network. */
const quietEnvironment = { EXTENSIONS_GALLERY: '{}' };

export type Workbench = {
  /** 'http://127.0.0.1:8123' */
  readonly address: string;
  /** The extension as the workbench loads it. */
  readonly extension: string;
  readonly stop: () => void;
  /** Resolves when the server ends by itself. */
  readonly ended: Promise<void>;
};

export type WorkbenchOptions = {
  /** Where the workbench keeps its state: settings, logs, extensions. */
  readonly stateFolder: string;
  /** The extension's root, built. */
  readonly extension: string;
  readonly environment: NodeJS.ProcessEnv;
};

export function isWorkbenchInstalled(): boolean {
  return existsSync(serverMain) && existsSync(lastInstalled);
}

/** Installs the workbench's own small package, showing npm's progress. Rejects with what to do when that fails. */
export async function installWorkbench(): Promise<void> {
  const npm = platform() === 'win32' ? 'npm.cmd' : 'npm';
  const child = spawn(npm, ['ci', '--no-audit', '--no-fund', '--foreground-scripts'], {
    cwd: packageFolder,
    stdio: 'inherit',
    shell: platform() === 'win32',
    // What `npm start` was told about its own package is not meant for this one.
    env: Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith('npm_'))),
  });
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', resolve);
  });
  if (code !== 0) throw new Error(`The workbench could not be installed. Try: (cd tests/workbench && npm ci)`);
}

/** The workbench's server on a free loopback port, once it answers. */
export async function startWorkbench(options: WorkbenchOptions): Promise<Workbench> {
  const { stateFolder } = options;
  const settingsFolder = join(stateFolder, 'user/User');
  await mkdir(settingsFolder, { recursive: true });
  await writeFile(join(settingsFolder, 'settings.json'), JSON.stringify(quietSettings, undefined, 2));
  const extension = await copyExtension(options.extension, join(stateFolder, 'extension'));
  const port = await findFreePort();
  const log: string[] = [];
  const server = spawn(
    process.execPath,
    [
      serverMain,
      ...['--host', '127.0.0.1', '--port', String(port)],
      ...['--server-data-dir', join(stateFolder, 'server'), '--user-data-dir', join(stateFolder, 'user')],
      ...['--extensions-dir', join(stateFolder, 'extensions')],
      ...['--without-connection-token', '--accept-server-license-terms', '--disable-workspace-trust'],
      ...['--telemetry-level', 'off', '--disable-telemetry', '--disable-update-check'],
      // Without its test driver, a built workbench loads no extension under development.
      '--enable-smoke-test-driver',
    ],
    { env: { ...options.environment, ...quietEnvironment }, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  for (const stream of [server.stdout, server.stderr]) {
    stream.on('data', (data: Buffer) => log.push(data.toString()));
  }
  // Whoever started it may end early; the server must not stay behind.
  process.once('exit', () => server.kill());
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  const address = `http://127.0.0.1:${port}`;
  await waitUntilItAnswers(address, server, log);
  return { address, extension, ended, stop: () => server.kill() };
}

export type Opening = {
  readonly folder: string;
  readonly tests?: string | undefined;
  readonly file?: string | undefined;
};

/** The page that opens a folder with the extension loaded. */
export function pageOf(workbench: Workbench, opening: Opening): string {
  const { host } = new URL(workbench.address);
  const remote = (path: string): string => `vscode-remote://${host}${encodeURI(resolve(path))}`;
  const payload = [
    ['extensionDevelopmentPath', remote(workbench.extension)],
    ['skipWelcome', 'true'],
    ['skipReleaseNotes', 'true'],
    ...(opening.tests === undefined ? [] : [['extensionTestsPath', remote(opening.tests)]]),
    ...(opening.file === undefined ? [] : [['openFile', remote(opening.file)]]),
  ];
  const query = new URLSearchParams({ folder: resolve(opening.folder), payload: JSON.stringify(payload) });
  return `${workbench.address}/?${query}`;
}

const browserPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Without a screen, a sandbox or a network. */
export const browserSwitches = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-dev-shm-usage',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The program the tests drive: `QUERN_BROWSER` where it is set, else the first of the usual places. */
export function findBrowser(): string | undefined {
  const given = process.env.QUERN_BROWSER;
  return (given === undefined ? browserPlaces : [given]).find((place) => existsSync(place));
}

export const browserMissing =
  'No Chromium was found. Install it (Debian: apt-get install chromium), or give its path in QUERN_BROWSER.';

/**
 * A copy of what an installed extension has. The repository itself will not do: the workbench's own files lie in it,
 * and what lies in a folder under development, such as its icons, the workbench does not load as its own.
 * Links will not do either: an extension is told from others by where its files really are.
 */
async function copyExtension(root: string, folder: string): Promise<string> {
  await rm(folder, { recursive: true, force: true });
  for (const name of ['package.json', 'dist', 'syntaxes']) {
    await cp(join(root, name), join(folder, name), { recursive: true });
  }
  return folder;
}

function findFreePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const place = probe.address();
      probe.close(() => resolve(typeof place === 'object' && place !== null ? place.port : 0));
    });
  });
}

async function waitUntilItAnswers(address: string, server: ChildProcess, log: readonly string[]): Promise<void> {
  const giveUpAt = Date.now() + 60_000;
  while (Date.now() < giveUpAt && server.exitCode === null) {
    const answered = await fetch(address).then(
      (response) => response.ok,
      () => false,
    );
    if (answered) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  server.kill();
  throw new Error(`The workbench did not start.\n${log.join('')}`);
}
