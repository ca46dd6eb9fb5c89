// Runs the tests of the extension in an editor that is nothing but a page: the workbench without a server behind it, the extension in its
// worker. It refuses to know what is tested: that is web-suite.ts.

import { mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { testMark } from './runner.ts';
import { browserMissing, browserSwitches, findBrowser, startWorkbench } from './workbench.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const longestRunMs = 4 * 60 * 1000;

async function main(): Promise<number> {
  const executablePath = findBrowser();
  if (executablePath === undefined) {
    console.error(browserMissing);
    return 2;
  }
  const scratch = await mkdtemp(join(tmpdir(), 'quern-web-'));
  const files = await serve();
  const workbench = await startWorkbench({ stateFolder: scratch, extension: here('../..'), environment: process.env });
  const browser = await chromium.launch({ executablePath, args: [...browserSwitches, ...ON_ONE_MACHINE] });
  try {
    const context = await browser.newContext({ viewport: { width: 1280, height: 860 }, bypassCSP: true });
    await withoutServer(context, files.address);
    const page = await context.newPage();
    const ended = listen(page);
    await page.goto(`${workbench.address}/?folder=memfs:/kitchen`);
    return await Promise.race([ended, giveUp(page)]);
  } finally {
    await browser.close();
    workbench.stop();
    files.server.close();
    await rm(scratch, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

/** What the page asks for besides the workbench: the extension, the folder as another one, the tests. */
async function serve(): Promise<{ readonly server: Server; readonly address: string }> {
  const made = new Map<string, string>([
    ['/folder/package.json', JSON.stringify(FOLDER)],
    ['/folder/files.json', JSON.stringify(await kitchen())],
    ['/folder/folder.js', await bundle('web-folder.ts')],
    ['/folder/suite.js', await bundle('web-suite.ts')],
  ]);
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const given = made.get(path);
    const content =
      given === undefined ? readFile(here(`../..${path.replace(/^\/quern/, '')}`)) : Promise.resolve(given);
    content.then(
      (body) =>
        response
          .writeHead(200, { 'access-control-allow-origin': '*', 'content-type': TYPES[extname(path)] ?? 'text/plain' })
          .end(body),
      () => response.writeHead(404, { 'access-control-allow-origin': '*' }).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const place = server.address();
  if (typeof place !== 'object' || place === null) throw new Error('no port is free');
  return { server, address: `127.0.0.1:${place.port}` };
}

/** The page and what it asks for have different ports. */
const ON_ONE_MACHINE = ['--disable-features=LocalNetworkAccessChecks'];

const TYPES: Readonly<Record<string, string>> = { '.js': 'text/javascript', '.json': 'application/json' };

const FOLDER = {
  name: 'memory-folder',
  publisher: 'quern',
  version: '1.0.0',
  engines: { vscode: '^1.101.0' },
  browser: './folder.js',
  activationEvents: ['onFileSystem:memfs'],
};

/** The example kitchen, by the path of each file. */
async function kitchen(): Promise<Readonly<Record<string, string>>> {
  const root = here('../../examples');
  const names = await readdir(root, { recursive: true });
  const wanted = names.filter((name) => /\.quern$|quern\.json$/.test(name)).map((name) => name.replaceAll('\\', '/'));
  return Object.fromEntries(
    await Promise.all(wanted.map(async (name) => [name, await readFile(join(root, name), 'utf8')])),
  );
}

async function bundle(file: string): Promise<string> {
  const { outputFiles } = await esbuild.build({
    entryPoints: [here(file)],
    bundle: true,
    write: false,
    platform: 'browser',
    format: 'cjs',
    external: ['vscode'],
    define: { 'process.env': JSON.stringify({ QUERN_MARKED: '1', QUERN_ONLY: process.argv[2] }) },
  });
  return outputFiles[0]?.text ?? '';
}

/** The workbench takes whoever serves it for a machine that it works on; here it is told of none, and of the extensions of the browser. */
async function withoutServer(context: BrowserContext, files: string): Promise<void> {
  const at = (path: string) => ({ scheme: 'http', authority: files, path });
  await context.route(/\/\?folder=/, async (route) => {
    const response = await route.fetch();
    const html = (await response.text()).replace(
      /(workbench-web-configuration" data-settings=")([^"]*)/,
      (_, before, given) => {
        const settings = JSON.parse(given.replaceAll('&quot;', '"'));
        delete settings.remoteAuthority;
        settings.configurationDefaults = QUIET;
        settings.developmentOptions = {
          ...settings.developmentOptions,
          extensions: [at('/quern'), at('/folder')],
          extensionTestsPath: at('/folder/suite.js'),
        };
        return before + JSON.stringify(settings).replaceAll('&', '&amp;').replaceAll('"', '&quot;');
      },
    );
    await route.fulfill({ response, body: html });
  });
  await context.route(/\/browser\/workbench\/workbench\.js$/, async (route) => {
    const response = await route.fetch();
    const script = await response.text();
    const remote = 'remoteAuthority:location.host';
    if (!script.includes(remote)) throw new Error('the workbench is started in another way than it was');
    await route.fulfill({ response, body: script.replace(remote, 'remoteAuthority:void 0') });
  });
}

const QUIET = {
  'workbench.startupEditor': 'none',
  'workbench.colorTheme': 'Light Modern',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.disableAIFeatures': true,
  'files.autoSave': 'off',
};

/** Passes on what the tests say, and takes pictures as they ask; resolves with their exit code. */
async function listen(page: Page): Promise<number> {
  const log: string[] = [];
  let end: (code: number) => void = () => undefined;
  const ended = new Promise<number>((resolve) => {
    end = resolve;
  });
  await mkdir(here('shots'), { recursive: true });
  const hear = (text: string): void => {
    const at = text.indexOf(testMark);
    if (at < 0) {
      log.push(text);
      return;
    }
    const said = text.slice(at + testMark.length);
    const shot = /^screenshot (\S+)/.exec(said)?.[1];
    if (shot === undefined) process.stdout.write(`${said}\n`);
    else void page.screenshot({ path: here(`shots/${shot}.png`) });
  };
  await page.exposeFunction('codeAutomationLog', (_: string, args: readonly unknown[]) =>
    hear(args.map(String).join(' ')),
  );
  await page.exposeFunction('codeAutomationExit', (code: number) => end(code));
  page.on('pageerror', (error) => log.push(`page ${error.stack ?? error.message}`));
  const code = await ended;
  if (code !== 0) process.stderr.write(`\nWhat else the editor said:\n${log.join('\n')}\n`);
  return code;
}

async function giveUp(page: Page): Promise<number> {
  await new Promise((resolve) => setTimeout(resolve, longestRunMs).unref());
  await page.screenshot({ path: here('shots/web-given-up.png') });
  process.stderr.write('The tests did not end. What the editor shows: tests/workbench/shots/web-given-up.png\n');
  return 1;
}

process.exitCode = await main();
