// Knows the pictures of the page that the store shows, taken anew by every run, so that none shows what is no more.
// It refuses to judge them: look at server/docs/store/.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import * as vscode from 'vscode';
import { askPage, closeOthers, codes, findingsOf, open, pause, placeOf, takeForStore } from './hands.ts';
import { type EditorTest, waitFor } from './runner.ts';

const draft = 'first-draft.quern';
const tart = 'pastry/lemon-tart.quern';

export const storeTests: readonly EditorTest[] = [
  {
    name: 'store: a finding with its sum, the page, and a formula, in light',
    run: () => takeAll('Light Modern', 'light'),
  },
  {
    name: 'store: a finding with its sum, the page, and a formula, in dark',
    run: () => takeAll('Dark Modern', 'dark'),
  },
];

async function takeAll(theme: string, shot: string): Promise<void> {
  const shots = process.env.QUERN_SHOTS;
  // Only the browser workbench takes pictures.
  if (shots === undefined) return;
  const folder = join(shots, '../../../server/docs/store');
  mkdirSync(folder, { recursive: true });
  const colours = vscode.workspace.getConfiguration('workbench');
  const text = vscode.workspace.getConfiguration('editor');
  await text.update('minimap.enabled', false, vscode.ConfigurationTarget.Global);
  await colours.update('colorTheme', theme, vscode.ConfigurationTarget.Global);
  await vscode.commands.executeCommand('workbench.action.closeSidebar');
  try {
    const { document } = await open(draft);
    await closeOthers(document);
    await hoverOverFinding();
    await takeForStore(join(folder, `finding-${shot}.webp`), [96, 66, 880, 330]);
    const shown = await open(tart);
    await closeOthers(shown.document);
    await vscode.commands.executeCommand('quern.showPage');
    await sees('document.querySelector("main > section#recipe li") !== null');
    await pause(1000);
    await takeForStore(join(folder, `page-${shot}.webp`), [662, 66, 614, 480]);
    await askPage({ click: 'nav a[href="#formula"]' });
    await sees('document.querySelector("main > section#formula svg") !== null');
    await pause(1000);
    await takeForStore(join(folder, `formula-${shot}.webp`), [662, 330, 614, 370]);
    await closeOthers(shown.document);
  } finally {
    await colours.update('colorTheme', undefined, vscode.ConfigurationTarget.Global);
    await text.update('minimap.enabled', undefined, vscode.ConfigurationTarget.Global);
    await vscode.commands.executeCommand('workbench.view.explorer');
  }
}

/** What is found and what the line is, both; an editor that is only just there shows none of it at the first try. */
async function hoverOverFinding(): Promise<void> {
  const editor = await open(draft);
  await findingsOf(editor.document, (findings) => codes(findings).has('dough-too-wet'));
  const at = placeOf(editor.document, 'ice water');
  const hover = async (): Promise<true | undefined> => {
    await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
    editor.selection = new vscode.Selection(at, at);
    await vscode.commands.executeCommand('editor.action.showHover');
    await pause(2000);
    const said = String(await askPage({ workbench: hovers }));
    return (said.includes('Weight: 150 g') && said.includes('dough-too-wet')) || undefined;
  };
  await waitFor('all of the hover', hover, 40_000);
}

const hovers = '[...document.querySelectorAll(".monaco-hover")].map((hover) => hover.textContent).join(" ")';

const sees = (evaluate: string): Promise<true> =>
  waitFor('the page', async () => ((await askPage({ evaluate })) === true ? (true as const) : undefined));
