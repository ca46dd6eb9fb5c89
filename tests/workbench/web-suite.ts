// Knows what a cook does in an editor that is nothing but a page, in a folder that lies on no disk.
// It refuses to know how: it uses what the editor offers to everyone.

import * as vscode from 'vscode';
import { type EditorTest, runAll, say, waitFor } from './runner.ts';

/** Called by the extension host. */
export async function run(): Promise<void> {
  await runAll(tests, 60_000);
}

const kitchen = vscode.Uri.parse('memfs:/kitchen');
const at = (file: string): vscode.Uri => vscode.Uri.joinPath(kitchen, file);

/** A loaf of a flour that only the kitchen's `foods.quern` knows. */
const LOAF = `recipe Quay loaf
  yield   1 loaf

  500 g     quayside flour
  350 g     water
  10 g      salt
  5 g       instant yeast

  do Mix all to a dough and knead for 10 min.
  do Let it rise for 2 h, shape it, and prove for 1 h.
  do Bake at 230 C for 35 min, until it sounds hollow.
`;

const tests: readonly EditorTest[] = [
  {
    name: 'the extension runs in the browser',
    run: async () => {
      holds(vscode.env.uiKind === vscode.UIKind.Web, 'this is no browser');
      holds(vscode.workspace.workspaceFolders?.[0]?.uri.toString() === kitchen.toString(), 'the folder is not open');
      await vscode.window.showTextDocument(at('first-draft.quern'), { preview: false });
      const own = vscode.extensions.getExtension('quern.quern');
      await waitFor('the extension to start', () => own?.isActive || undefined);
      holds(own?.extensionUri.scheme === 'http', `it was loaded from ${own?.extensionUri}`);
    },
  },
  {
    name: 'the draft shows its findings',
    run: async () => {
      const found = await codesOf(at('first-draft.quern'), (codes) => codes.size >= 12);
      holds(found.has('dough-too-wet'), `found: ${[...found].join(', ')}`);
      await picture('web-findings');
    },
  },
  {
    name: 'hovering says what an amount is, and a list is completed',
    run: async () => {
      const { document } = await vscode.window.showTextDocument(at('first-draft.quern'));
      const place = document.positionAt(document.getText().indexOf('ice water') + 1);
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        document.uri,
        place,
      );
      const said = hovers.flatMap(({ contents }) => contents).map((one) => (typeof one === 'string' ? one : one.value));
      holds(/150\s*g/.test(said.join('\n')), `the hover says: ${said.join('\n')}`);
      const offered = await vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        document.uri,
        place,
      );
      holds(offered.items.length > 10, `offered: ${offered.items.length}`);
    },
  },
  {
    name: 'a recipe lives in the house of its folder',
    run: async () => {
      const loaf = at('bread/quay-loaf.quern');
      await vscode.workspace.fs.writeFile(loaf, new TextEncoder().encode(LOAF));
      await vscode.window.showTextDocument(loaf, { preview: false });
      const untitled = await vscode.workspace.openTextDocument({ language: 'quern', content: LOAF });
      await vscode.window.showTextDocument(untitled, { preview: false });
      await codesOf(untitled.uri, (codes) => codes.has('unknown-food'));
      const found = await codesOf(loaf, () => true);
      holds(!found.has('unknown-food'), 'the food of the house is not known');
    },
  },
  {
    name: 'a variant misses its base once that is deleted, and finds it again',
    run: async () => {
      const [variant, base] = [at('bakes/wholemeal-scones.quern'), at('bakes/scones.quern')];
      await vscode.window.showTextDocument(variant, { preview: false });
      await codesOf(variant, (codes) => !codes.has('missing-file'));
      const bytes = await vscode.workspace.fs.readFile(base);
      await vscode.workspace.fs.delete(base);
      await codesOf(variant, (codes) => codes.has('missing-file'));
      await vscode.workspace.fs.writeFile(base, bytes);
      await codesOf(variant, (codes) => !codes.has('missing-file'));
    },
  },
  {
    name: 'a base that is renamed is followed by the recipes that build on it',
    run: async () => {
      const { document } = await vscode.window.showTextDocument(at('bakes/wholemeal-scones.quern'));
      const edit = new vscode.WorkspaceEdit();
      edit.renameFile(at('bakes/scones.quern'), at('bakes/plain-scones.quern'));
      holds(await vscode.workspace.applyEdit(edit), 'the file was not renamed');
      await waitFor('the new name', () => /from\s+plain-scones\.quern/.test(document.getText()) || undefined);
      await codesOf(document.uri, (codes) => !codes.has('missing-file'));
    },
  },
  {
    name: 'a server that is restarted finds the same again',
    run: async () => {
      await vscode.window.showTextDocument(at('first-draft.quern'));
      await vscode.commands.executeCommand('quern.restartServer');
      await codesOf(at('first-draft.quern'), (codes) => codes.has('dough-too-wet'));
    },
  },
  {
    name: 'a recipe is shown as a page beside its text',
    run: async () => {
      await vscode.window.showTextDocument(at('bakes/plain-scones.quern'));
      await vscode.commands.executeCommand('quern.showPage');
      await waitFor('the page', () =>
        vscode.window.tabGroups.all
          .flatMap(({ tabs }) => tabs)
          .find(({ input }) => input instanceof vscode.TabInputWebview),
      );
      await picture('web-page');
    },
  },
];

/** The codes found in a text once they are as awaited. */
async function codesOf(
  uri: vscode.Uri,
  awaited: (codes: ReadonlySet<string>) => boolean,
): Promise<ReadonlySet<string>> {
  let last: ReadonlySet<string> = new Set();
  const found = await waitFor(`the findings of ${uri}`, () => {
    last = new Set(
      vscode.languages.getDiagnostics(uri).map(({ code }) => String(typeof code === 'object' ? code.value : code)),
    );
    return awaited(last) || undefined;
  }).catch((error: unknown) => {
    throw new Error(`${error} They were: ${[...last].join(', ') || 'none'}`);
  });
  holds(found, 'nothing was found');
  return last;
}

/** Asks whoever runs the tests for a picture of the editor, once what was asked for is drawn. */
async function picture(name: string): Promise<void> {
  await pause(1500);
  say(`screenshot ${name}`);
  await pause(1500);
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

function holds(what: boolean, otherwise: string): asserts what {
  if (!what) throw new Error(otherwise);
}
