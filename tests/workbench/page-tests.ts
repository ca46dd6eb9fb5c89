// Knows what a cook does with the page beside a recipe: opens it, types, sees it follow, clicks, mends, goes back.
// What only the browser can see is asked of it; in an editor without one, the page is opened and no more.

import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  allTabs,
  askHost,
  askPage,
  findingsOf,
  open,
  pause,
  placeOf,
  replaceWords,
  serverProcesses,
  takeScreenshot,
  undoOnceTo,
} from './hands.ts';
import { type EditorTest, say, waitFor } from './runner.ts';

const draft = 'first-draft.quern';
const tart = 'pastry/lemon-tart.quern';
const scones = 'bakes/scones.quern';

const VIEWS = ['recipe', 'formula', 'made-of', 'day', 'label', 'trials'] as const;
const THEMES = [
  ['Light Modern', 'light'],
  ['Dark Modern', 'dark'],
  ['Default High Contrast', 'high-contrast'],
  ['Default High Contrast Light', 'high-contrast-light'],
] as const;

export const pageTests: readonly EditorTest[] = [
  {
    name: 'the page opens by keys beside the text and follows what is typed and where the caret is',
    run: async () => {
      const editor = await open(draft);
      await findingsOf(editor.document, (findings) => findings.length > 0);
      await openByKeys();
      if (!(await openPage())) return;
      assert.equal(await onPage('document.querySelector("h1").textContent'), 'Chicken and leek tart');
      await takeScreenshot('page');
      await replaceWords(editor.document, 'Chicken and leek tart', 'Leek tart');
      await sees('the new name', 'document.querySelector("h1").textContent', 'Leek tart');
      await vscode.commands.executeCommand('undo');
      await sees('the name as it was', 'document.querySelector("h1").textContent', 'Chicken and leek tart');
      const at = placeOf(editor.document, 'rye flour');
      editor.selection = new vscode.Selection(at, at);
      await sees('the line of the caret', hereLine, at.line + 1);
      const below = placeOf(editor.document, 'parsley');
      editor.selection = new vscode.Selection(below, below);
      await sees('a line out of sight', `${isInSight}(document.querySelector("main .here"))`, true);
    },
  },
  {
    name: 'the page leads to the line that is clicked and keeps the keys, or gives them to the text',
    run: async () => {
      const editor = await open(draft);
      if (!(await openPage())) return;
      const line = placeOf(editor.document, 'unsalted butter').line;
      await askPage({ click: `li a[data-line="${line + 1}"]` });
      await waitFor('the caret at the line', () => editor.selection.active.line === line || undefined);
      assert.equal(await onPage('document.hasFocus()'), true, 'the keys stay in the page');
      const other = placeOf(editor.document, 'fine salt').line;
      await askPage({ click: `li a[data-line="${other + 1}"]`, holding: 'Control' });
      await sees('the keys in the text', 'document.hasFocus()', false);
      assert.equal(vscode.window.activeTextEditor?.selection.active.line, other);
    },
  },
  {
    name: 'a fix is pressed by keys on the page, leads on to the next finding, and is undone in one step',
    run: async () => {
      const editor = await open(draft);
      const before = editor.document.getText();
      if (!(await openPage())) return;
      // A second time, the keys go there.
      await vscode.commands.executeCommand('quern.showPage');
      await sees('the keys in the page', 'document.hasFocus()', true);
      const fixes = 'main .finding button[data-do="fix"]';
      const findings = 'document.querySelectorAll("main .finding:not(.accepted)").length';
      const count = Number(await onPage(findings));
      await pressUntil('F8', `document.activeElement.querySelector('button[data-do="fix"]') !== null`, 30);
      await pressUntil('Tab', `document.activeElement.matches('${fixes}')`, 5);
      askHost('press Enter');
      await waitFor('the text with the fix', () => editor.document.getText() !== before || undefined);
      await sees('one finding less', `${findings} < ${count}`, true);
      await sees('the next finding with the keys', 'document.activeElement.matches(".finding")', true);
      askHost('press Control+z');
      await waitFor('the text as it was', () => editor.document.getText() === before || undefined);
      await sees('all findings', findings, count);
    },
  },
  {
    name: 'the page is asked where the fat comes from, and compares the text with what a trial tested',
    run: async () => {
      const { document } = await open('compared/oat-slab.quern');
      // Earlier texts of the same name are open, too.
      if (!(await openPage(false))) return;
      await sees('the recipe', 'document.querySelector("h1").textContent', 'Oat slab');
      await showView('made-of');
      await onPage(`(() => {
        const field = document.querySelector('select[data-key="made-of-substance"]');
        field.value = 'fat';
        field.dispatchEvent(new Event('change', { bubbles: true }));
      })()`);
      await sees('the fat', 'document.querySelector(".from caption").textContent', 'Fat of the whole by ingredient');
      await sees('the butter first', 'document.querySelector(".from tbody th").textContent', 'butter');
      await takeScreenshot('page-made-of');
      await showView('trials');
      await takeScreenshot('page-trials');
      await askPage({ click: 'button[data-do="compare"]' });
      const compared = await waitFor('the comparison', () =>
        vscode.workspace.textDocuments.find(
          ({ uri, isClosed }) => !isClosed && uri.scheme === 'quern-compared' && uri.path.includes('oat-slab'),
        ),
      );
      assert.match(compared.getText(), /^butter up 30 g \(90 g to 120 g\)$/m);
      for (const tab of allTabs()) if (tab.label.includes(' since ')) await vscode.window.tabGroups.close(tab);
      await vscode.window.showTextDocument(document, { viewColumn: vscode.ViewColumn.One, preview: false });
      await vscode.commands.executeCommand('quern.showPage');
      await sees('the trials again', 'document.querySelector("main > section#trials") !== null', true);
      await pause(500);
      await showView('recipe');
    },
  },
  {
    name: 'a measure is turned on the page by keys, and written and taken back in one step',
    run: async () => {
      const editor = await open(draft);
      const before = editor.document.getText();
      if (!(await openPage())) return;
      await vscode.commands.executeCommand('quern.showPage');
      await askPage({ click: 'nav [data-view="formula"]' });
      await sees('the formula', 'document.querySelector("section")?.id', 'formula');
      const slider = 'document.querySelector("input[type=range]")';
      // Narrow and wide have each their own buttons.
      const turn = { click: 'button[aria-label^="Turn it: water per flour"]:visible' };
      await askPage(turn);
      await sees('a slider with the keys', `document.activeElement === ${slider} && ${slider} !== null`, true);
      // Usual for shortcrust: 18 to 53 %.
      askHost('press End');
      await sees('the upper end of what is usual', `${slider}.value`, '53');
      askHost('press PageDown');
      await sees('five less', `${slider}.value`, '48');
      askHost('press ArrowLeft');
      await sees('and one', `${slider}.value`, '47');
      await sees('the grams', 'document.querySelector(".measures .looked")?.textContent.endsWith(" g")', true);
      assert.equal(editor.document.getText(), before, 'nothing is written by looking');
      await takeScreenshot('page-turned');
      askHost('press Escape');
      await sees('it left', `${slider}`, null);
      await askPage(turn);
      await sees('a slider again', `${slider} !== null`, true);
      askHost('press Home');
      await sees('the lower end', `${slider}.value`, '18');
      await askPage({ click: 'button[data-do="adjust"]:visible' });
      await waitFor('the text with it', () => editor.document.getText() !== before || undefined);
      await sees('it turned no more', `${slider}`, null);
      await sees(
        'the measure',
        `document.querySelector('[data-key="measure-crust-hydration"] td.n')?.textContent`,
        '18',
      );
      await vscode.window.showTextDocument(editor.document, vscode.ViewColumn.One);
      await vscode.commands.executeCommand('undo');
      assert.equal(editor.document.getText(), before, 'one step back');
      await askPage({ click: 'nav [data-view="recipe"]' });
      await sees('the recipe', 'document.querySelector("section")?.id', 'recipe');
    },
  },
  {
    name: 'what a reader of the page is at stays while the text changes',
    run: async () => {
      const { document } = await open(draft);
      if (!(await openPage())) return;
      await vscode.commands.executeCommand('quern.showPage');
      await sees('a finding', 'document.querySelector("main .finding details") !== null', true);
      await askPage({ click: 'main .finding summary' });
      await sees('the rest of it', 'document.querySelector("main .finding details").open', true);
      await askPage({ click: 'dl input' });
      askHost('press End');
      askHost('press 7');
      await sees('half a number', 'document.querySelector("dl input").value', '87');
      await onPage('window.scrollTo(0, 40)');
      // As long as before: what stands above the reader's place is as high.
      await replaceWords(document, 'Chicken and leek tart', 'Chicken and leek flan');
      await sees('the new name', 'document.querySelector("h1").textContent', 'Chicken and leek flan');
      assert.deepEqual(
        await onPage(`[
          document.querySelector('main .finding details').open,
          document.querySelector('dl input').value,
          document.activeElement === document.querySelector('dl input'),
          Math.round(scrollY),
        ]`),
        [true, '87', true, 40],
      );
      await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
      await vscode.commands.executeCommand('undo');
      await vscode.window.tabGroups.close(allTabs().filter(isPage));
    },
  },
  {
    name: 'the day is counted back from another hour on the page, and the minutes that it puts are written in one step',
    run: async () => {
      const { document } = await open('bread/country-loaf.quern');
      const before = document.getText();
      if (!(await openPage())) return;
      await showView('day');
      await onPage(`(() => {
        const field = document.querySelector('input[data-do="serve-at"]');
        field.value = '12.30';
        field.dispatchEvent(new Event('change', { bubbles: true }));
      })()`);
      await sees('the other hour', 'document.querySelector(\'[data-key="served"] b\').textContent', '12:30');
      assert.equal(document.getText(), before, 'looking writes nothing');
      await takeScreenshot('page-day');
      await askPage({ click: 'input[data-do="order-of-steps"][value="part"]' });
      await sees(
        'the steps by part',
        'document.querySelector("table.day caption").textContent.includes("by part")',
        true,
      );
      const toWrite = await onPage('document.querySelector("button[data-do=write-minutes]").textContent');
      await askPage({ click: 'button[data-do="write-minutes"]' });
      await waitFor(
        'the minutes in the text',
        () => /shape, about 5 min, and prove/.test(document.getText()) || undefined,
      );
      // Some steps take no minutes where they would not be read back.
      await sees(
        'less left to write',
        `document.querySelector("button[data-do=write-minutes]")?.textContent !== ${JSON.stringify(toWrite)}`,
        true,
      );
      await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
      await undoOnceTo(document, before);
      await showView('recipe');
    },
  },
  {
    name: 'another size is looked at on the page, written in one step and undone in one',
    run: async () => {
      const { document } = await open(scones);
      const before = document.getText();
      if (!(await openPage())) return;
      await askPage({ click: 'button[aria-label="one more"]' });
      await sees('the bar over the list', 'document.querySelector(".looking b")?.textContent', 'Looking at 11 scones.');
      assert.equal(document.getText(), before, 'looking writes nothing');
      await replaceWords(document, 'plain flour', 'strong flour');
      await sees('the line typed', '/strong flour/.test(document.querySelector("main").textContent)', true);
      assert.equal(await onPage('document.querySelector(".looking b")?.textContent'), 'Looking at 11 scones.');
      await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
      await undoOnceTo(document, before);
      await askPage({ click: 'button[data-do="look-write"]' });
      await waitFor('the text at that size', () => /yield +11 scones/.test(document.getText()) || undefined);
      await sees('no bar', 'document.querySelector(".looking")', null);
      await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
      await undoOnceTo(document, before);
    },
  },
  {
    name: 'the page of an empty file offers a beginning',
    run: async () => {
      const document = await vscode.workspace.openTextDocument({ language: 'quern', content: '' });
      await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
      if (!(await openPage(false))) return;
      await sees('that nothing is written', 'document.querySelector("h1").textContent', 'Nothing is written yet');
      await askPage({ click: 'button[data-do="write-skeleton"]' });
      await waitFor('the skeleton', () => document.getText().startsWith('recipe ') || undefined);
      await sees('its page', 'document.querySelector("h1").textContent', 'Name');
      await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    },
  },
  {
    name: 'the page of a text that nobody may write has no button that writes, and says why',
    run: async () => {
      const { document } = await open(draft);
      const frozen = vscode.workspace.registerFileSystemProvider('frozen', readOnlyFiles(document.getText()), {
        isReadonly: true,
      });
      await vscode.window.showTextDocument(vscode.Uri.parse('frozen:/draft.quern'), {
        viewColumn: vscode.ViewColumn.One,
      });
      await vscode.commands.executeCommand('quern.showPage');
      if (await isSeen()) {
        await sees('why', '/writes nothing/.test(document.querySelector("header").textContent)', true);
        await sees('no fix', `document.querySelectorAll('button[data-do="fix"]').length`, 0);
      }
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
      frozen.dispose();
    },
  },
  {
    name: 'the page asks for nothing while it is hidden, and is true again when it is seen',
    run: async () => {
      const editor = await open(draft);
      if (!(await openPage())) return;
      const page = vscode.window.tabGroups.all.flatMap((group) => group.tabs).find(isPage);
      assert.ok(page);
      const readme = vscode.Uri.joinPath(editor.document.uri, '..', 'README.md');
      await vscode.window.showTextDocument(readme, { viewColumn: page.group.viewColumn, preview: false });
      await replaceWords(editor.document, 'Chicken and leek tart', 'Hidden tart');
      await pause(500);
      assert.equal(page.label, 'Chicken and leek tart');
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
      await isSeen();
      await sees('the new name', 'document.querySelector("h1").textContent', 'Hidden tart');
      await vscode.window.showTextDocument(editor.document, { viewColumn: vscode.ViewColumn.One });
      await vscode.commands.executeCommand('undo');
    },
  },
  {
    name: 'every view of the page can be read by whoever does not see it',
    run: async () => {
      for (const file of [draft, tart]) {
        await open(file);
        if (!(await openPage())) return;
        for (const view of VIEWS) {
          await showView(view);
          const broken = await askPage({ axe: true });
          assert.ok(Array.isArray(broken), `no answer of axe-core: ${JSON.stringify(broken)}`);
          assert.deepEqual(broken, [], `${file}, ${view}`);
        }
        await showView('recipe');
      }
    },
  },
  {
    name: 'pictures of every view of the page are taken in every theme, where they are wanted',
    run: async () => {
      const folder = process.env.QUERN_PICTURES;
      if (folder === undefined) return say('        (skipped: no QUERN_PICTURES)');
      const workbench = vscode.workspace.getConfiguration('workbench');
      const before = workbench.get('colorTheme');
      for (const file of [draft, tart]) {
        await open(file);
        if (!(await openPage())) return;
        for (const [theme, short] of THEMES) {
          await workbench.update('colorTheme', theme, vscode.ConfigurationTarget.Global);
          await pause(1000);
          for (const view of VIEWS) {
            await showView(view);
            await takeScreenshot(`${file.split('/').at(-1)?.replace('.quern', '')}-${view}-${short}`, folder);
          }
        }
        await showView('recipe');
      }
      await workbench.update('colorTheme', before, vscode.ConfigurationTarget.Global);
    },
  },
  {
    name: 'how soon the page is there and follows a key is measured, where it is wanted',
    run: async () => {
      if (process.env.QUERN_MEASURE === undefined) return say('        (skipped: no QUERN_MEASURE)');
      const document = await vscode.workspace.openTextDocument({ language: 'quern', content: sixtyLines() });
      const editor = await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
      await findingsOf(document, () => true);
      await pause(1500);
      const opened: string[] = [];
      for (let n = 0; n < 5; n++) {
        await vscode.window.tabGroups.close(allTabs().filter(isPage));
        await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
        await pause(500);
        const at = Date.now();
        await vscode.commands.executeCommand('quern.showPage');
        await isSeen();
        await pause(600);
        const [made, painted] = (await onPage(paintedAt)) as readonly number[];
        opened.push(`${Number(painted) - at} (of which ${Number(made) - at} the editor's)`);
      }
      const followed: number[] = [];
      for (let n = 0; n < 9; n++) {
        await onPage(watchForChange);
        let typedAt = 0;
        const listening = vscode.workspace.onDidChangeTextDocument(() => {
          typedAt ||= Date.now();
        });
        editor.selection = new vscode.Selection(3, 2, 3, 2);
        await vscode.commands.executeCommand('type', { text: String((n % 9) + 1) });
        await pause(700);
        listening.dispose();
        followed.push(Number(await onPage('window.quernChangedAt')) - typedAt);
      }
      say(`        (painted ${opened.join(', ')} ms after the command, changed ${sorted(followed)} ms after a key)`);
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    },
  },
  {
    name: 'the page says that the server has stopped, and follows again once it is started',
    run: async () => {
      const editor = await open(draft);
      if (!(await openPage())) return;
      // After the fifth crash within some minutes it is left alone.
      // Those of the tests before count too, where they were lately.
      for (let crashes = 0; crashes < 8; crashes++) {
        const running = await waitFor('a server, or the word that there is none', serverOrNone);
        if (running === 'none') break;
        process.kill(running, 'SIGKILL');
        await waitFor('its end', () => !serverProcesses().includes(running) || undefined);
      }
      await sees('that it has stopped', 'document.querySelector("#trouble h2")?.textContent', 'Quern has stopped');
      assert.equal(await onPage('document.querySelector("h1").textContent'), 'Chicken and leek tart', 'the page stays');
      assert.deepEqual(await askPage({ axe: true }), []);
      await takeScreenshot('page-stopped');
      // What the editor says of the crashes may lie over it.
      await vscode.commands.executeCommand('notifications.clearAll');
      await onPage('document.querySelector("#trouble button.first").click()');
      await sees('no trouble', 'document.querySelector("#trouble").childElementCount', 0);
      await replaceWords(editor.document, 'Chicken and leek tart', 'Restarted tart');
      await sees('the new name', 'document.querySelector("h1").textContent', 'Restarted tart');
      await vscode.window.showTextDocument(editor.document, vscode.ViewColumn.One);
      await vscode.commands.executeCommand('undo');
      await vscode.commands.executeCommand('notifications.clearAll');
      await vscode.window.tabGroups.close(allTabs().filter(isPage));
    },
  },
];

const hereLine =
  'Number(document.querySelector("main [aria-current=true]")?.querySelector("[data-line]")?.dataset.line)';
const isInSight =
  '((e) => e !== null && e.getBoundingClientRect().top >= 0 && e.getBoundingClientRect().bottom <= innerHeight)';

/** The page of the text in front, whose recipe has a name; false where nobody can look into it. */
/** The process of the server; between two of them the page says for a moment that there is none. */
async function serverOrNone(): Promise<number | 'none' | undefined> {
  const isStopped = async () => serverProcesses().length === 0 && (await onPage(IS_STOPPED)) === true;
  if (!(await isStopped())) return serverProcesses()[0];
  await new Promise((resolve) => setTimeout(resolve, 1500));
  return (await isStopped()) ? 'none' : serverProcesses()[0];
}

const IS_STOPPED = 'document.querySelector("#trouble h2") !== null';

async function openPage(named = true): Promise<boolean> {
  if (!allTabs().some(isPage)) await vscode.commands.executeCommand('quern.showPage');
  await waitFor('the panel', () => allTabs().some(isPage) || undefined);
  const { document } = vscode.window.activeTextEditor ?? {};
  const isThere = await isSeen();
  if (isThere && named && document !== undefined)
    await waitFor('the page of the text', async () => (await shows(document)) || undefined);
  return isThere;
}

function readOnlyFiles(text: string): vscode.FileSystemProvider {
  const refuse = (): never => {
    throw vscode.FileSystemError.NoPermissions();
  };
  return {
    onDidChangeFile: new vscode.EventEmitter<vscode.FileChangeEvent[]>().event,
    watch: () => ({ dispose: () => undefined }),
    stat: () => ({ type: vscode.FileType.File, ctime: 0, mtime: 0, size: text.length }),
    readDirectory: () => [],
    readFile: () => new TextEncoder().encode(text),
    createDirectory: refuse,
    writeFile: refuse,
    delete: refuse,
    rename: refuse,
  };
}

/** Whether the page has the name that the text gives its recipe. */
async function shows(document: vscode.TextDocument): Promise<boolean> {
  const name = await onPage('document.querySelector("h1").textContent');
  return new RegExp(`^recipe ${name}\\b`, 'm').test(document.getText());
}

/** When the editor had made a place for the page, and when it was painted there: by the clock of the machine, in ms. */
const paintedAt = `[
  performance.timeOrigin,
  performance.timeOrigin + (performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN),
].map(Math.round)`;
const watchForChange = `(() => {
  window.quernChangedAt = undefined;
  new MutationObserver((_, observer) => {
    window.quernChangedAt = Date.now();
    observer.disconnect();
  }).observe(document.querySelector('#page'), { subtree: true, childList: true, characterData: true });
})()`;

const sorted = (all: readonly number[]): string => all.toSorted((a, b) => a - b).join(', ');

/** A recipe of 60 lines without a slip. */
function sixtyLines(): string {
  const parts = [1, 2, 3, 4].flatMap((n) => [
    `part layer ${n}`,
    ...['200 g     plain flour', '100 g     butter', '50 g      sugar', '1 g       salt', '20 g      milk'].map(
      (l) => `  ${l}`,
    ),
    '',
    `  do Rub the butter of layer ${n} into the flour, the sugar and the salt, and bind it with the milk.`,
    '  do Chill for 30 min.',
    '  do Roll out 5 mm thick.',
    '  do Bake at 180 C for 20 min until golden.',
    '',
    '',
    '',
  ]);
  return ['recipe Layers', '  yield   12 slices', '', ...parts].join('\n');
}

/** The keys that the editor has for previews; one that is still starting hears none. */
async function openByKeys(): Promise<void> {
  for (let tries = 0; tries < 5 && !allTabs().some(isPage); tries++) {
    askHost('press Control+k');
    await pause(300);
    askHost('press v');
    await waitFor('the panel', () => allTabs().some(isPage) || undefined, 4000).catch(() => undefined);
  }
}

const isPage = ({ input }: vscode.Tab): boolean =>
  input instanceof vscode.TabInputWebview && input.viewType.endsWith('quern.page');

async function isSeen(): Promise<boolean> {
  if (process.env.QUERN_SHOTS === undefined) return false;
  await waitFor('the page', async () => (await askPage({})) === true || undefined);
  return true;
}

async function showView(view: (typeof VIEWS)[number]): Promise<void> {
  await askPage({ click: `nav a[data-view="${view}"]` });
  await sees(`the view ${view}`, `document.querySelector("main > section#${view}") !== null`, true);
}

const onPage = (expression: string): Promise<unknown> => askPage({ evaluate: expression });

function sees(what: string, expression: string, expected: unknown): Promise<true> {
  let last: unknown;
  return waitFor(
    what,
    async () => {
      last = await onPage(expression);
      return last === expected ? (true as const) : undefined;
    },
    5000,
  ).catch((error: unknown) => {
    throw new Error(`${error instanceof Error ? error.message : error} It was ${JSON.stringify(last)}.`);
  });
}

async function pressUntil(key: string, expression: string, most: number): Promise<void> {
  for (let n = 0; n < most; n++) {
    askHost(`press ${key}`);
    await pause(60);
    if ((await onPage(expression)) === true) return;
  }
  throw new Error(`${key} did not lead there in ${most} times.`);
}
