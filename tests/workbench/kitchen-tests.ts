// Knows what a cook does with a folder of recipes: lists them, checks them, begins a file, converts, publishes, sees what is in front.
// It refuses to know how: what only the browser sees is asked of it.

import assert from 'node:assert/strict';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import * as vscode from 'vscode';
import {
  askHost,
  askPage,
  closeOthers,
  codes,
  findingsOf,
  hoverText,
  open,
  pause,
  placeOf,
  replaceText,
  takeScreenshot,
  undoOnceTo,
} from './hands.ts';
import { type EditorTest, waitFor } from './runner.ts';

const clean = 'bakes/scones.quern';
const draft = 'first-draft.quern';

const THEMES = [
  ['Light Modern', 'light'],
  ['Dark Modern', 'dark'],
  ['Default High Contrast', 'high-contrast'],
] as const;

export const kitchenTests: readonly EditorTest[] = [
  {
    name: 'kitchen: the bar says what the recipe in front comes to, and nothing for another file',
    run: async () => {
      const { document } = await open(draft);
      await findingsOf(document, (findings) => findings.length > 0);
      const bar = await shownInBar(/\d g.*(?:error|warning)/);
      if (bar === undefined) return;
      assert.match(bar, /^○ /, 'never cooked is an empty circle');
      assert.doesNotMatch(bar, /[✓✔]/);
      await vscode.window.showTextDocument(await vscode.workspace.openTextDocument({ content: 'plain' }));
      await waitFor('the bar to be quiet', async () => ((await textOfBar()) === '' ? true : undefined));
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    },
  },
  {
    name: 'kitchen: recipes are listed by state, by tag, by part and by folder, and open from there',
    run: async () => {
      const { document } = await open(clean);
      await closeOthers(document);
      await vscode.commands.executeCommand('quern.kitchenByState');
      await vscode.commands.executeCommand('quern.kitchen.focus');
      const rows = await rowsOfTree(/Cooked as written/);
      if (rows === undefined) return;
      for (const [command, awaited] of [
        ['quern.kitchenByTag', /bread\d/],
        ['quern.kitchenByPart', /Buttermilk scones\d/],
        ['quern.kitchenByFolder', /bakes\d/],
        ['quern.kitchenByState', /Cooked as written\d/],
      ] as const) {
        await vscode.commands.executeCommand(command);
        await rowsOfTree(awaited);
        await pause(300);
        await takeScreenshot(`tree-${command.slice('quern.kitchenBy'.length).toLowerCase()}`);
      }
      await vscode.commands.executeCommand('quern.kitchen.focus');
      for (const key of ['Home', 'ArrowDown', 'Enter']) {
        await pause(200);
        askHost(`press ${key}`);
      }
      await waitFor('another recipe in front', () => {
        const front = vscode.window.activeTextEditor?.document;
        return (front?.languageId === 'quern' && front.uri.path !== document.uri.path) || undefined;
      });
    },
  },
  {
    name: 'kitchen: list and bar in light, dark and high contrast',
    run: async () => {
      const theme = vscode.workspace.getConfiguration('workbench');
      await open(draft);
      await vscode.commands.executeCommand('quern.kitchen.focus');
      for (const [name, shot] of THEMES) {
        await theme.update('colorTheme', name, vscode.ConfigurationTarget.Global);
        await pause(1500);
        await takeScreenshot(`kitchen-${shot}`);
      }
      await theme.update('colorTheme', undefined, vscode.ConfigurationTarget.Global);
      await vscode.commands.executeCommand('workbench.view.explorer');
    },
  },
  {
    name: 'kitchen: the walkthrough shows its five steps',
    run: async () => {
      const { document } = await open(clean);
      const theme = vscode.workspace.getConfiguration('workbench');
      await vscode.commands.executeCommand('workbench.action.closeSidebar');
      await vscode.commands.executeCommand('workbench.action.openWalkthrough', 'quern.quern#begin', false);
      await pause(2500);
      for (const [name, shot] of THEMES) {
        await theme.update('colorTheme', name, vscode.ConfigurationTarget.Global);
        await pause(1500);
        await takeScreenshot(`walkthrough-${shot}`);
      }
      await theme.update('colorTheme', undefined, vscode.ConfigurationTarget.Global);
      const steps = await onWorkbench(
        'document.querySelectorAll(".gettingStartedContainer .step-list-container .getting-started-step").length',
      );
      if (typeof steps === 'number') assert.equal(steps, 5);
      await vscode.commands.executeCommand('workbench.view.explorer');
      await closeOthers(document);
    },
  },
  {
    name: 'kitchen: checking the folder opens the list of what was found',
    run: async () => {
      const { document } = await open(draft);
      await vscode.commands.executeCommand('workbench.action.closePanel');
      await vscode.commands.executeCommand('quern.checkFolder');
      await findingsOf(document, (findings) => findings.length > 0);
      const shown = await waitFor('the list of findings', async () => {
        const panel = await onWorkbench('document.querySelector(".markers-panel") !== null');
        return panel === false ? undefined : { panel };
      });
      assert.notEqual(shown.panel, false);
      await vscode.commands.executeCommand('notifications.clearAll');
      await vscode.commands.executeCommand('workbench.action.closePanel');
    },
  },
  {
    name: 'kitchen: a recipe is converted, and undone in one step',
    run: async () => {
      const { document } = await open(clean);
      const before = document.getText();
      await vscode.commands.executeCommand('quern.convert', { to: 'fahrenheit', apply: true });
      await waitFor('the converted text', () => document.getText() !== before || undefined);
      assert.match(document.getText(), /\d F\b/);
      await undoOnceTo(document, before);
    },
  },
  {
    name: 'kitchen: a variant is scaled as a recipe of its own, and its file stays',
    run: async () => {
      const { document } = await open('bakes/cheese-scones.quern');
      const before = document.getText();
      void vscode.commands.executeCommand('quern.scale', { to: 'double', apply: true });
      const whole = await waitFor('the recipe written out', () => {
        const front = vscode.window.activeTextEditor?.document;
        return front?.isUntitled && front.languageId === 'quern' ? front : undefined;
      });
      assert.match(whole.getText(), /900 g +plain flour/, 'twice the 450 g of its base');
      assert.doesNotMatch(whole.getText(), /^ *from /m);
      assert.equal(document.getText(), before);
      await vscode.commands.executeCommand('notifications.clearAll');
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    },
  },
  {
    name: 'kitchen: a measure is brought to another value, and undone in one step',
    run: async () => {
      const { document } = await open('pastry/sweet-paste.quern');
      const before = document.getText();
      const wish = { part: 'sweet paste', measure: 'sugar', value: '30 %', apply: true };
      await vscode.commands.executeCommand('quern.adjust', wish);
      await waitFor('the adjusted text', () => document.getText() !== before || undefined);
      await undoOnceTo(document, before);
    },
  },
  {
    name: 'kitchen: two recipes are told apart beside the text',
    run: async () => {
      const { document } = await open(clean);
      const other = vscode.Uri.joinPath(document.uri, '../wholemeal-scones.quern');
      await vscode.commands.executeCommand('quern.compareWithFile', other);
      const page = await waitFor('the page of what differs', () =>
        vscode.workspace.textDocuments.find(
          // Others may stand beside it, of what was compared before.
          (each) => each.uri.scheme === 'quern-compared' && each.getText().includes('against wholemeal-scones.quern'),
        ),
      );
      assert.match(page.getText(), /wholemeal/);
      await closeOthers(document);
    },
  },
  {
    name: 'kitchen: a page is published beside its recipe, and a report of it',
    run: async () => {
      const { document } = await open(clean);
      for (const [command, format, ending, awaited] of [
        ['quern.publish', 'html', 'html', /<html/],
        ['quern.report', 'json', 'json', /"recipe"/],
      ] as const) {
        const to = vscode.Uri.file(document.uri.fsPath.replace(/\.quern$/, `.${ending}`));
        void vscode.commands.executeCommand(command, { format, to });
        await waitFor(`the ${ending}`, () => existsSync(to.fsPath) || undefined);
        await pause(200);
        assert.match(readFileSync(to.fsPath, 'utf8'), awaited);
        rmSync(to.fsPath);
      }
      await vscode.commands.executeCommand('notifications.clearAll');
    },
  },
  {
    name: 'kitchen: an amount is weighed while it is typed',
    run: async () => {
      await open(clean);
      await vscode.commands.executeCommand('quern.weigh', '1 cup plain flour');
      const shown = await waitFor('the grams', async () => {
        const text = await onWorkbench('document.querySelector(".quick-input-list")?.textContent ?? ""');
        return text === null || /132 g/.test(String(text)) ? { text } : undefined;
      });
      assert.ok(shown);
      await takeScreenshot('weigh');
      await vscode.commands.executeCommand('workbench.action.closeQuickOpen');
    },
  },
  {
    name: 'kitchen: a file is begun with places to fill in',
    run: async () => {
      await open(clean);
      await vscode.commands.executeCommand('quern.new', 'Recipe');
      const front = await waitFor('the new file', () => {
        const document = vscode.window.activeTextEditor?.document;
        return document?.isUntitled && document.getText().startsWith('recipe ') ? document : undefined;
      });
      assert.equal(front.languageId, 'quern');
      await findingsOf(front, (findings) => !codes(findings).has('syntax'));
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    },
  },
  {
    name: 'kitchen: what a folder begins with is written where it is missing',
    run: async () => {
      const { document } = await open(clean);
      const folder = vscode.workspace.getWorkspaceFolder(document.uri);
      assert.ok(folder);
      const at = (name: string): string => vscode.Uri.joinPath(folder.uri, name).fsPath;
      const house = readFileSync(at('quern.json'), 'utf8');
      const had = existsSync(at('.gitattributes'));
      await vscode.commands.executeCommand('quern.initFolder');
      assert.match(readFileSync(at('.gitattributes'), 'utf8'), /^\*\.quern /m);
      assert.equal(readFileSync(at('quern.json'), 'utf8'), house, 'what is there stays');
      if (!had) rmSync(at('.gitattributes'));
      await vscode.commands.executeCommand('notifications.clearAll');
    },
  },
  {
    name: 'kitchen: a picture that is put there is found, and seen where it is pointed at',
    run: async () => {
      const { document } = await open(clean);
      const before = document.getText();
      const file = vscode.Uri.joinPath(document.uri, '../risen.png');
      await replaceText(document, before.replace(/\n/, '\n  picture risen.png, Risen twice as high\n'));
      await findingsOf(document, (findings) => codes(findings).has('picture-missing'));
      await vscode.workspace.fs.copy(vscode.Uri.joinPath(document.uri, '../../editor.png'), file);
      await findingsOf(document, (findings) => !codes(findings).has('picture-missing'));
      const at = placeOf(document, 'risen.png');
      assert.match(await hoverText(document, at), /!\[Risen twice as high\]\(file:.*risen\.png\|width=400\)/);
      const editor = await vscode.window.showTextDocument(document);
      editor.selection = new vscode.Selection(at, at);
      await vscode.commands.executeCommand('editor.action.showHover');
      await pause(1200);
      await takeScreenshot('picture');
      await vscode.commands.executeCommand('quern.showPage');
      await waitFor('the picture on the page', async () => {
        const width = await askPageFor('document.querySelector("img.picture")?.naturalWidth ?? 0');
        return width === null || Number(width) > 0 ? true : undefined;
      });
      await pause(600);
      await takeScreenshot('picture-on-page');
      await closeOthers(document);
      await vscode.workspace.fs.delete(file);
      await findingsOf(document, (findings) => codes(findings).has('picture-missing'));
      await undoOnceTo(document, before);
    },
  },
];

/** What the browser says of the editor itself; null in an editor without one. */
const onWorkbench = async (expression: string): Promise<unknown> =>
  askHost('') ? askPage({ workbench: expression }) : null;

const askPageFor = async (evaluate: string): Promise<unknown> => (askHost('') ? askPage({ evaluate }) : null);

const textOfBar = (): Promise<unknown> =>
  onWorkbench('document.getElementById("quern.quern.quern.recipe")?.textContent ?? ""');

async function shownInBar(awaited: RegExp): Promise<string | undefined> {
  const bar = await waitFor('the bar', async () => {
    const text = await textOfBar();
    return text === null || awaited.test(String(text)) ? { text } : undefined;
  });
  return bar.text === null ? undefined : String(bar.text);
}

async function rowsOfTree(awaited: RegExp): Promise<string | undefined> {
  const tree = await waitFor('the list of recipes', async () => {
    const text = await onWorkbench(
      '[...document.querySelectorAll(".pane .monaco-list-row")].map((row) => row.textContent).join("\\n")',
    );
    return text === null || awaited.test(String(text)) ? { text } : undefined;
  });
  return tree.text === null ? undefined : String(tree.text);
}
