// Knows the pictures of the page that the store shows, taken anew by every run, so that none shows what is no more.
// It refuses to judge them: look at server/docs/store/.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import * as vscode from 'vscode';
import { askHost, askPage, closeOthers, findingsOf, open, pause, placeOf, takeForStore } from './hands.ts';
import { type EditorTest, waitFor } from './runner.ts';

const THEMES = [
  ['Light Modern', 'light'],
  ['Dark Modern', 'dark'],
] as const;

const draft = 'first-draft.quern';
const tart = 'pastry/lemon-tart.quern';

export const storeTests: readonly EditorTest[] = [
  {
    name: 'store: a finding with its sum, the page beside the text, and a formula, in light and dark',
    run: async () => {
      // Beside the shots, in the folder of the tests: from there to the pages.
      const shots = process.env.QUERN_SHOTS;
      if (shots === undefined) return;
      const folder = join(shots, '../../../server/docs/store');
      mkdirSync(folder, { recursive: true });
      const theme = vscode.workspace.getConfiguration('workbench');
      const text = vscode.workspace.getConfiguration('editor');
      await text.update('minimap.enabled', false, vscode.ConfigurationTarget.Global);
      await vscode.commands.executeCommand('workbench.action.closeSidebar');
      for (const [name, shot] of THEMES) {
        await theme.update('colorTheme', name, vscode.ConfigurationTarget.Global);
        const editor = await open(draft);
        await closeOthers(editor.document);
        await findingsOf(editor.document, (findings) => findings.length > 0);
        const at = placeOf(editor.document, 'ice water');
        editor.selection = new vscode.Selection(at, at);
        await waitFor('all of the hover', async () => {
          // An editor that is only just there shows none at the first try.
          await vscode.commands.executeCommand('editor.action.showHover');
          await pause(1000);
          const said = await askPage({
            workbench: '[...document.querySelectorAll(".monaco-hover")].map((hover) => hover.textContent).join(" ")',
          });
          return /Weight: 150 g/.test(String(said)) || undefined;
        });
        await pause(800);
        await takeForStore(join(folder, `finding-${shot}.webp`), [96, 66, 880, 330]);
        await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
        const shown = await open(tart);
        await closeOthers(shown.document);
        await vscode.commands.executeCommand('quern.showPage');
        await waitFor('the page', async () =>
          (await onPage('document.querySelector("h1") !== null')) === false ? undefined : true,
        );
        await pause(1500);
        await takeForStore(join(folder, `page-${shot}.webp`), [662, 66, 614, 480]);
        await onPage('location.hash = "#formula"; document.querySelector(\'a[href="#formula"]\')?.click(); true');
        await pause(1500);
        await takeForStore(join(folder, `formula-${shot}.webp`), [662, 330, 614, 370]);
        await closeOthers(shown.document);
      }
      await theme.update('colorTheme', undefined, vscode.ConfigurationTarget.Global);
      await text.update('minimap.enabled', undefined, vscode.ConfigurationTarget.Global);
      await vscode.commands.executeCommand('workbench.view.explorer');
    },
  },
];

const onPage = async (evaluate: string): Promise<unknown> => (askHost('') ? askPage({ evaluate }) : null);
