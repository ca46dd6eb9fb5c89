#!/usr/bin/env -S node --disable-warning=MODULE_TYPELESS_PACKAGE_JSON
// Stands in for VS Code's own program where that cannot be downloaded: it takes the same arguments, runs the tests in
// the extension host of the browser workbench, and ends with their exit code. It refuses to know what they test.

import { existsSync } from 'node:fs';
import { rename, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import axeCore from 'axe-core';
import { chromium, type Frame, type Page } from 'playwright-core';
import { testMark } from './runner.ts';
import { browserMissing, browserSwitches, findBrowser, pageOf, startWorkbench } from './workbench.ts';

const { values, positionals } = parseArgs({
  args: process.argv.slice(2),
  // VS Code takes many switches more; what is not used here is passed over.
  strict: false,
  allowPositionals: true,
  options: {
    extensionDevelopmentPath: { type: 'string' },
    extensionTestsPath: { type: 'string' },
    'user-data-dir': { type: 'string' },
  },
});
const longestRunMs = 10 * 60 * 1000;
/** Of a picture for the store's page. */
const smallScale = 0.6;
const smallQuality = 18;

process.exitCode = await runTests();

async function runTests(): Promise<number> {
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error(browserMissing);
  const workbench = await startWorkbench({
    stateFolder: resolve(argument('user-data-dir')),
    extension: argument('extensionDevelopmentPath'),
    environment: { ...process.env, QUERN_MARKED: '1' },
  });
  const browser = await chromium.launch({ executablePath, args: browserSwitches }).catch((error: unknown) => {
    workbench.stop();
    throw error;
  });
  try {
    const page = await browser.newPage({
      viewport: { width: 1280, height: 860 },
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    const ended = listen(page);
    await page.goto(
      pageOf(workbench, {
        folder: positionals[0] ?? '.',
        tests: argument('extensionTestsPath'),
      }),
    );
    return await Promise.race([ended, giveUp(page)]);
  } finally {
    await browser.close();
    workbench.stop();
  }
}

/** Passes on what the tests say, and takes pictures, presses keys and pastes as they ask, until they end; resolves with their exit code. */
async function listen(page: Page): Promise<number> {
  // The editor has much to say that is no concern of the tests, unless they fail.
  const log: string[] = [];
  let end: (code: number) => void = () => undefined;
  const ended = new Promise<number>((resolve) => {
    end = resolve;
  });
  await page.exposeFunction('codeAutomationLog', (kind: string, args: readonly unknown[]) => {
    const text = args.map(String).join(' ');
    if (text.startsWith(testMark)) hear(text.slice(testMark.length));
    else if (!isAboutMissingParts(text)) log.push(`${kind} ${text}\n`);
  });
  await page.exposeFunction('codeAutomationExit', (code: number) => end(code));
  page.on('pageerror', (error) => log.push(`page ${error.stack ?? error.message}\n`));
  const code = await ended;
  if (code !== 0) process.stderr.write(`\nWhat else the editor said:\n${log.join('')}\n`);
  return code;

  function hear(said: string): void {
    const shot = /^screenshot (.+)$/.exec(said)?.[1];
    const small = /^picture (.+)$/.exec(said)?.[1];
    const keys = /^press (.+)$/.exec(said)?.[1];
    const pasted = /^paste (.+)$/.exec(said)?.[1];
    const typed = /^type (.+)$/.exec(said)?.[1];
    const asked = /^ask (.+)$/.exec(said)?.[1];
    if (shot !== undefined) void takeScreenshot(page, shot);
    else if (small !== undefined) void takeSmall(page, JSON.parse(small));
    else if (keys !== undefined) void page.keyboard.press(keys);
    else if (pasted !== undefined) void paste(page, JSON.parse(pasted));
    else if (typed !== undefined) void page.keyboard.type(JSON.parse(typed));
    else if (asked !== undefined)
      void answerOf(page, JSON.parse(asked)).catch((error: unknown) => log.push(`${error}\n`));
    else process.stdout.write(`${said}\n`);
  }
}

/** The workbench is installed without its compiled parts, and says at length that it goes without two of them. */
function isAboutMissingParts(text: string): boolean {
  return /^(?:Error: )?(?:Could not locate the bindings file.*spdlog|Cannot find module '.\/build\/Release\/watchdog')/s.test(
    text,
  );
}

/** The tests ask for a picture by printing where it goes, and wait until it is there. */
async function takeScreenshot(page: Page, file: string): Promise<void> {
  await page.screenshot({ path: file });
}

/** Left, top, width and height. */
type Part = readonly [number, number, number, number];

/** Half as large as it is seen, for a page that carries it: some KB. */
async function takeSmall(page: Page, { file, of }: { readonly file: string; readonly of: Part }): Promise<void> {
  const [x, y, width, height] = of;
  const session = await page.context().newCDPSession(page);
  const { data } = await session.send('Page.captureScreenshot', {
    format: 'webp',
    quality: smallQuality,
    clip: { x, y, width, height, scale: smallScale },
  });
  await session.detach();
  await writeFile(file, Buffer.from(data, 'base64'));
}

/** What the browser does for a cook's own keys: no script may, and one without a screen has no clipboard to do it from. */
async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate(`{
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', ${JSON.stringify(text)});
    const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
    document.activeElement.dispatchEvent(event);
  }`);
}

/** What is asked of the page in the panel, and the file that the answer goes to. */
type Question = {
  readonly file: string;
  /** An expression in the page. */
  readonly evaluate?: string;
  /** An expression in the editor around it. */
  readonly workbench?: string;
  /** What to click in it, and with which key held. */
  readonly click?: string;
  readonly holding?: 'Control' | 'Shift';
  /** Which rules of accessibility it breaks. */
  readonly axe?: boolean;
};

async function answerOf(page: Page, question: Question): Promise<void> {
  const { file, evaluate, workbench, click, holding, axe } = question;
  const inPanel = workbench === undefined ? await frameInPanel(page) : undefined;
  const answer = async (): Promise<unknown> => {
    if (workbench !== undefined) return page.evaluate(workbench);
    if (inPanel === undefined) return null;
    if (click !== undefined) await inPanel.click(click, holding === undefined ? {} : { modifiers: [holding] });
    if (axe === true) return brokenRules(inPanel);
    return evaluate === undefined ? true : inPanel.evaluate(evaluate);
  };
  const given = await answer().catch((error: unknown) => ({ error: String(error) }));
  await writeFile(`${file}.part`, JSON.stringify(given ?? null));
  await rename(`${file}.part`, file);
}

/** The page that a recipe is shown as, within the editor's frames; undefined where there is none. */
async function frameInPanel(page: Page): Promise<Frame | undefined> {
  for (const frame of page.frames()) {
    // A frame that is being made does not answer.
    const soon = new Promise<false>((resolve) => setTimeout(() => resolve(false), 1000).unref());
    const asked = frame.evaluate("document.getElementById('page')?.querySelector('main') != null").catch(() => false);
    const isPage = await Promise.race([asked, soon]);
    if (isPage === true) return frame;
  }
  return undefined;
}

/** What axe-core says is wrong with the page, by WCAG 2.2 A and AA and by its own good practice: each rule with how grave it is and where. */
async function brokenRules(frame: Frame): Promise<unknown> {
  await frame.evaluate(axeCore.source);
  return frame.evaluate(`axe
    .run(document, { resultTypes: ['violations'] })
    .then(({ violations }) => violations.map(({ id, impact, nodes }) => ({
      id, impact, at: nodes.map(({ html, failureSummary }) => html.slice(0, 200) + ' ' + failureSummary),
    })))`);
}

async function giveUp(page: Page): Promise<number> {
  await new Promise((resolve) => setTimeout(resolve, longestRunMs).unref());
  const file = join(process.env.QUERN_SHOTS ?? '.', 'given-up.png');
  await takeScreenshot(page, file);
  process.stderr.write(`The tests did not end. What the editor shows: ${existsSync(file) ? file : 'nothing'}\n`);
  return 1;
}

function argument(name: keyof typeof values): string {
  const value = values[name];
  if (typeof value !== 'string') throw new Error(`--${name} is missing.`);
  return value;
}
