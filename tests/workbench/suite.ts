// Knows what a cook does in the editor: opens a recipe, reads what is found, mends, scales, formats, goes back.
// It refuses to know how: it uses what the editor offers to everyone, on a copy of the example kitchen.

import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  allTabs,
  askHost,
  closeOthers,
  codeOf,
  codes,
  findingsOf,
  hoverText,
  insertLine,
  open,
  pause,
  placeOf,
  replaceText,
  replaceWords,
  serverProcesses,
  takeScreenshot,
  undoOnceTo,
} from './hands.ts';
import { inTextTests } from './in-text-tests.ts';
import { kitchenTests } from './kitchen-tests.ts';
import { pageTests } from './page-tests.ts';
import { type EditorTest, runAll, say, waitFor } from './runner.ts';
import { storeTests } from './store-tests.ts';

/** Called by the extension host. */
export async function run(): Promise<void> {
  await runAll([...tests, ...kitchenTests, ...pageTests, ...inTextTests, ...storeTests], 60_000);
}

const draft = 'first-draft.quern';
const clean = 'bakes/scones.quern';

/** Four questions without an answer, one every 5 s, and the first. */
const hangsAfterMs = 40_000;

const THEMES = [
  ['Light Modern', 'printed-light'],
  ['Dark Modern', 'printed-dark'],
  ['Default High Contrast', 'printed-high-contrast'],
] as const;

const PRINTED = `recipe Bean pot
  yield   6 portions

part beans
  2 1/2 C. dried beans
  1 (3- to 4-lb) chicken
  1 lb 4 oz ground beef
  2-1/2 cups (300 g) flour, plus more for dusting
  1 heaping T brown sugar
  One and one-half cups stock plus 2 tbsp
  2 eggs plus 1 yolk
  juice of 1/2 lemon (about 2 tbsp)
  100 g butter or margarine
  2 x 400 g tins beans
  411 g can diced tomatoes
  3 onions, 4 oz. each, chopped
  Butter, 4 oz
  salt and pepper
  oil for frying

  do Fry the onions in the oil with the salt and the pepper.
  do Add the diced tomatoes, the beans and the lemon juice.
`;

const CARD = `Shortbread

Makes 20 fingers
PREP 20 MINS • COOK 50 MINS

250g plain flour
125g butter

Rub the butter into the flour.
`;

const tests: readonly EditorTest[] = [
  {
    name: 'a recipe opens as Quern and starts the extension',
    run: async () => {
      const { document } = await open(draft);
      assert.equal(document.languageId, 'quern');
      await waitFor(
        'the extension to start',
        () => vscode.extensions.getExtension('quern.quern')?.isActive || undefined,
      );
    },
  },
  {
    name: 'the draft shows its findings, each linked to a place and a code',
    run: async () => {
      const { document } = await open(draft);
      const found = await findingsOf(document, (findings) => codes(findings).size >= 12);
      assert.ok(codes(found).has('dough-too-wet'), `found: ${[...codes(found)].join(', ')}`);
      for (const finding of found) {
        assert.ok(
          document.validateRange(finding.range).isEqual(finding.range),
          `${codeOf(finding)} is out of the text`,
        );
        assert.notEqual(finding.message, '');
      }
      // The colours of the sentences come after the findings.
      await pause(1200);
      await takeScreenshot('findings');
    },
  },
  {
    name: 'hovering over an amount says what it is in grams, and over an oven what it is in F',
    run: async () => {
      const { document } = await open(draft);
      assert.match(await hoverText(document, placeOf(document, 'ice water')), /150\s*g/);
      assert.match(await hoverText(document, placeOf(document, '375 C')), /700\s*°?\s*F/);
      const place = placeOf(document, 'ice water');
      const editor = await open(draft);
      editor.selection = new vscode.Selection(place, place);
      await vscode.commands.executeCommand('editor.action.showHover');
      await pause(1200);
      await takeScreenshot('hover');
      await vscode.commands.executeCommand('editor.action.hideHover');
    },
  },
  {
    name: 'a list as cooks print it is coloured in every theme, and a hover says what was understood',
    run: async () => {
      const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
      assert.ok(folder, 'no folder is open');
      const uri = vscode.Uri.joinPath(folder, 'printed.quern');
      await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(PRINTED));
      const { document } = await open('printed.quern');
      const place = placeOf(document, 'diced tomatoes');
      await waitFor('the hover', async () => /1 can of 411 g/.test(await hoverText(document, place)) || undefined);
      const theme = vscode.workspace.getConfiguration('workbench');
      const before = theme.get('colorTheme');
      for (const [name, shot] of THEMES) {
        await theme.update('colorTheme', name, vscode.ConfigurationTarget.Global);
        const editor = await open('printed.quern');
        editor.selection = new vscode.Selection(place, place);
        await pause(1500);
        await takeScreenshot(shot);
      }
      await vscode.commands.executeCommand('editor.action.showHover');
      await pause(1200);
      await takeScreenshot('printed-hover');
      await vscode.commands.executeCommand('editor.action.hideHover');
      await theme.update('colorTheme', before, vscode.ConfigurationTarget.Global);
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
      await vscode.workspace.fs.delete(uri);
    },
  },
  {
    name: 'a printed recipe that is pasted is offered in the notation, and read by a command',
    run: async () => {
      const document = await vscode.workspace.openTextDocument({ language: 'quern', content: '' });
      await vscode.window.showTextDocument(document);
      const read = /^recipe Shortbread\n[\s\S]*\n {2}125 ?g +butter\n[\s\S]*\n {2}do Rub the butter into the flour\.\n/;
      await vscode.env.clipboard.writeText(CARD);
      // A browser pastes by its own keys alone.
      if (askHost(`paste ${JSON.stringify(CARD)}`)) {
        await waitFor('the plain paste', () => document.getText() !== '' || undefined);
        assert.equal(document.getText(), CARD, 'nothing is read by itself');
        await pause(1500);
        askHost('press Control+.');
        await pause(1500);
        await takeScreenshot('pasted');
        askHost('press ArrowDown');
        await pause(300);
        askHost('press Enter');
      } else await vscode.commands.executeCommand('editor.action.pasteAs', { kind: 'quern.recipe' });
      await waitFor('the recipe', () => read.test(document.getText()) || undefined);
      await takeScreenshot('pasted-as-recipe');
      await replaceText(document, '');
      await vscode.commands.executeCommand('quern.readClipboard');
      await waitFor('the recipe', () => read.test(document.getText()) || undefined);
      await undoOnceTo(document, '');
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    },
  },
  {
    name: 'a fix takes its finding away and is undone in one step',
    run: async () => {
      const { document } = await open(draft);
      const before = document.getText();
      const found = await findingsOf(document, (findings) => codes(findings).has('dough-too-wet'));
      const finding = found.find((one) => codeOf(one) === 'dough-too-wet');
      assert.ok(finding);
      const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        document.uri,
        finding.range,
        vscode.CodeActionKind.QuickFix.value,
        20,
      );
      const fix = actions.find((action) => action.isPreferred && action.edit) ?? actions.find((action) => action.edit);
      assert.ok(fix?.edit, `offered: ${actions.map((action) => action.title).join('; ')}`);
      assert.ok(await vscode.workspace.applyEdit(fix.edit));
      await findingsOf(document, (findings) => !codes(findings).has('dough-too-wet'));
      await vscode.commands.executeCommand('undo');
      assert.equal(document.getText(), before);
      await findingsOf(document, (findings) => codes(findings).has('dough-too-wet'));
    },
  },
  {
    name: 'a clean recipe shows nothing, and a slip while it is typed, before anything is saved',
    run: async () => {
      const { document } = await open(clean);
      await insertLine(document, '  2 blobs   olive oil', '  do ');
      await findingsOf(document, (findings) => codes(findings).has('unknown-unit'));
      await vscode.commands.executeCommand('undo');
      await findingsOf(document, (findings) => findings.length === 0);
    },
  },
  {
    name: 'scaling doubles the list and is undone in one step',
    run: async () => {
      const { document } = await open(clean);
      const before = document.getText();
      await vscode.commands.executeCommand('quern.scale', { to: 'by 2', apply: true });
      await waitFor('the scaled text', () => document.getText() !== before || undefined);
      assert.equal(firstGrams(document.getText()), 2 * firstGrams(before));
      await undoOnceTo(document, before);
    },
  },
  {
    name: 'scaling is shown before it is made',
    run: async () => {
      const { document } = await open(clean);
      const before = document.getText();
      void vscode.commands.executeCommand('quern.scale', { to: 'double' });
      await pause(1200);
      await takeScreenshot('scale');
      assert.equal(document.getText(), before, 'nothing changes before it is accepted');
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      await waitFor('the scaled text', () => document.getText() !== before || undefined);
      await undoOnceTo(document, before);
    },
  },
  {
    name: 'scaling is compared side by side, then made or left',
    run: async () => {
      const { document } = await open(clean);
      const before = document.getText();
      for (const [command, changes] of [
        ['quern.leaveChanges', false],
        ['quern.writeChanges', true],
      ] as const) {
        await open(clean);
        void vscode.commands.executeCommand('quern.scale', { to: 'half' });
        await pause(800);
        await vscode.commands.executeCommand('workbench.action.quickOpenNavigateNext');
        await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
        await waitFor('the comparison', () => diffInFront() || undefined);
        await pause(800);
        await takeScreenshot('compare');
        await vscode.commands.executeCommand(command);
        await waitFor('the comparison to close', () => !diffInFront() || undefined);
        assert.equal(document.getText() !== before, changes);
      }
      await vscode.window.showTextDocument(document);
      await undoOnceTo(document, before);
    },
  },
  {
    name: 'formatting lines the list up again and is undone in one step',
    run: async () => {
      const { document } = await open(clean);
      const before = document.getText();
      const uneven = before.replace(/^ {2}(?=\S)/gm, '      ');
      await replaceText(document, uneven);
      await vscode.commands.executeCommand('editor.action.formatDocument');
      await waitFor('the formatted text', () => document.getText() !== uneven || undefined);
      assert.equal(document.getText(), before);
      await vscode.commands.executeCommand('undo');
      assert.equal(document.getText(), uneven);
      await vscode.commands.executeCommand('undo');
      assert.equal(document.getText(), before);
    },
  },
  {
    name: 'Enter at the end of a step starts the next one',
    run: async () => {
      const editor = await open(clean);
      const { document } = editor;
      const before = document.getText();
      const line = document
        .getText()
        .split('\n')
        .findIndex((text) => text.startsWith('  do '));
      const end = document.lineAt(line).range.end;
      await waitFor('the next step', async () => {
        editor.selection = new vscode.Selection(end, end);
        await vscode.commands.executeCommand('type', { text: '\n' });
        if (document.lineAt(line + 1).text === '  do ') return true;
        // The workbench keeps the indentation alone while it has not coloured the lines above.
        await undoOnceTo(document, before);
        return undefined;
      });
      await undoOnceTo(document, before);
    },
  },
  {
    name: 'a code is explained on a page beside the recipe',
    run: async () => {
      await open(draft);
      await vscode.commands.executeCommand('quern.explain', 'dough-too-wet');
      await waitFor('the page', () => allTabs().find((tab) => tab.label.includes('dough-too-wet')));
      await pause(1500);
      await takeScreenshot('explain');
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    },
  },
  {
    name: "a finding's code is a link to its page, shown as a page",
    run: async () => {
      const { document } = await open(draft);
      const [finding] = await findingsOf(document, (findings) => findings.length > 0);
      assert.ok(typeof finding?.code === 'object', 'the code is no link');
      // What the editor does when the link is clicked.
      await vscode.commands.executeCommand('vscode.open', finding.code.target);
      const page = await waitFor('the page', () =>
        allTabs().find(({ input }) => input instanceof vscode.TabInputCustom),
      );
      await vscode.window.tabGroups.close(page);
    },
  },
  {
    name: 'a trial is recorded today, a change after it is found, and put back it is mended',
    run: async () => {
      const editor = await open(clean);
      const { document } = editor;
      await vscode.commands.executeCommand('quern.recordTrial');
      const today = new Date();
      const day = `${today.getFullYear()}-${pad(today.getMonth() + 1)}-${pad(today.getDate())}`;
      await waitFor('the trial', () => document.getText().includes(`\ntrial ${day}\n`) || undefined);
      await waitFor('the caret on its first blank', () => {
        const active = vscode.window.activeTextEditor;
        return active?.document.getText(active.selection) === '…' || undefined;
      });
      await findingsOf(document, (findings) => findings.length === 0);
      await pause(800);
      await takeScreenshot('trial');
      await replaceWords(document, '90 g ', '100 g');
      const found = await findingsOf(document, (findings) => codes(findings).has('untested-change'));
      const line = placeOf(document, '100 g     unsalted butter').line;
      assert.ok(found.some((one) => codeOf(one) === 'untested-change' && one.range.start.line === line));
      await takeScreenshot('untested');
      await replaceWords(document, '100 g', '90 g ');
      await findingsOf(document, (findings) => findings.length === 0);
      await vscode.commands.executeCommand('workbench.action.files.revert');
    },
  },
  {
    name: 'a recipe is compared with its last commit in words',
    run: async () => {
      const { document } = await open(clean);
      await replaceWords(document, '90 g ', '120 g');
      await vscode.commands.executeCommand('quern.compareWithCommit');
      const page = await waitFor('the comparison', () =>
        vscode.workspace.textDocuments.find(({ uri }) => uri.scheme === 'quern-compared'),
      );
      assert.match(page.getText(), /^scones\.quern since the last commit \([0-9a-f]{7}\)$/m);
      assert.match(page.getText(), /^unsalted butter up 30 g \(90 g to 120 g\)$/m);
      await pause(800);
      await takeScreenshot('since-commit');
      await vscode.window.showTextDocument(document, { viewColumn: vscode.ViewColumn.One });
      await vscode.commands.executeCommand('workbench.action.files.revert');
      await closeOthers(document);
    },
  },
  {
    name: "a recipe is compared with the commit that holds what a trial tested, through the file's earlier name",
    run: async () => {
      const { document } = await open('compared/oat-slab.quern');
      // The last commit of the trial's day is another one.
      await vscode.commands.executeCommand('quern.compareWithTrial', '2026-09-14');
      const page = await waitFor('the comparison', () =>
        vscode.workspace.textDocuments.find(
          ({ uri }) => uri.scheme === 'quern-compared' && uri.path.includes('oat-slab'),
        ),
      );
      assert.match(page.getText(), /^oat-slab\.quern since the trial of 2026-09-14 \([0-9a-f]{7}\)$/m);
      assert.match(page.getText(), /^butter up 30 g \(90 g to 120 g\)$/m);
      await pause(800);
      await takeScreenshot('since-trial');
      await closeOthers(document);
    },
  },
  {
    name: 'a base that is renamed is followed by the recipes that build on it',
    run: async () => {
      const variant = 'bakes/wholemeal-scones.quern';
      const { document } = await open(variant);
      const before = document.getText();
      await findingsOf(document, (findings) => !codes(findings).has('missing-file'));
      const [found] = await vscode.commands.executeCommand<vscode.Location[]>(
        'vscode.executeDefinitionProvider',
        document.uri,
        placeOf(document, 'scones.quern'),
      );
      assert.ok(found, 'it leads nowhere');
      assert.ok(found.uri.path.endsWith('/bakes/scones.quern'), `it leads to ${found.uri.path}`);
      const base = found.uri;
      const renamed = base.with({ path: base.path.replace('scones.quern', 'plain-scones.quern') });
      const move = async (from: vscode.Uri, to: vscode.Uri) => {
        const edit = new vscode.WorkspaceEdit();
        edit.renameFile(from, to);
        assert.ok(await vscode.workspace.applyEdit(edit));
      };
      await move(base, renamed);
      await waitFor('the line to follow', () => document.getText().includes('plain-scones.quern') || undefined);
      await findingsOf(document, (findings) => !codes(findings).has('missing-file'));
      await pause(800);
      await takeScreenshot('renamed-base');
      await move(renamed, base);
      await waitFor('the line to lead back', () => document.getText() === before || undefined);
      await vscode.commands.executeCommand('workbench.action.files.saveAll');
    },
  },
  {
    name: 'the folder is checked on request, and what is listed of closed files goes when it is mended',
    run: async () => {
      const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
      assert.ok(folder);
      const [slip, house] = ['slip.quern', 'quern.json'].map((name) => vscode.Uri.joinPath(folder, name));
      assert.ok(slip && house);
      const write = (file: vscode.Uri, text: string) => vscode.workspace.fs.writeFile(file, Buffer.from(text));
      const listed = (file: vscode.Uri) => vscode.languages.getDiagnostics(file).filter((d) => d.source === 'quern');
      await write(slip, 'recipe Slip\n  2 blobs   olive oil\n  do Warm the oil.\n');
      await vscode.commands.executeCommand('quern.checkFolder');
      await waitFor('the finding', () => listed(slip).some((d) => codeOf(d) === 'unknown-unit') || undefined);
      assert.ok(
        listed(vscode.Uri.joinPath(folder, draft)).length >= 12,
        'the draft is in no tab, and listed all the same',
      );
      await vscode.commands.executeCommand('workbench.actions.view.problems');
      await vscode.commands.executeCommand('notifications.showList');
      await pause(1000);
      await takeScreenshot('folder');
      await vscode.commands.executeCommand('workbench.action.closePanel');
      await vscode.commands.executeCommand('notifications.clearAll');
      await vscode.workspace.fs.delete(slip);
      await waitFor('its going', () => listed(slip).length === 0 || undefined);
      const before = Buffer.from(await vscode.workspace.fs.readFile(house)).toString();
      await write(house, '{\n  "measures": "buckets"\n}\n');
      const [fault] = await waitFor('the mistake of the house', () =>
        listed(house).length > 0 ? listed(house) : undefined,
      );
      assert.deepEqual([fault?.range.start.line, fault?.range.start.character], [1, 14]);
      await write(house, before);
      await waitFor('its mending', () => listed(house).length === 0 || undefined);
    },
  },
  {
    name: 'a restarted server finds the same again',
    run: async () => {
      const { document } = await open(draft);
      const before = await findingsOf(document, (findings) => findings.length > 0);
      await vscode.commands.executeCommand('quern.restartServer');
      await findingsOf(document, (findings) => findings.length === before.length);
    },
  },
  {
    name: 'a server that crashes is started again and finds the same',
    run: async () => {
      const { document } = await open(draft);
      const before = await findingsOf(document, (findings) => findings.length > 0);
      const [crashing] = serverProcesses();
      // Where the system does not show its processes in /proc, there is nothing to crash.
      if (crashing === undefined) return say('        (skipped: no /proc)');
      process.kill(crashing, 'SIGKILL');
      await waitFor('another server', () => serverProcesses().find((pid) => pid !== crashing));
      await findingsOf(document, (findings) => findings.length === before.length);
    },
  },
  {
    name: 'a server that hangs is stopped, and started again',
    run: async () => {
      const { document } = await open(draft);
      const before = await findingsOf(document, (findings) => findings.length > 0);
      const [hanging] = serverProcesses();
      if (hanging === undefined) return say('        (skipped: no /proc)');
      process.kill(hanging, 'SIGSTOP');
      await waitFor('another server', () => serverProcesses().find((pid) => pid !== hanging), hangsAfterMs);
      await findingsOf(document, (findings) => findings.length === before.length);
    },
  },
];

function firstGrams(text: string): number {
  const amount = /^ {2}(\d+) g /m.exec(text)?.[1];
  assert.ok(amount, 'no line in grams');
  return Number(amount);
}

function diffInFront(): boolean {
  return vscode.window.tabGroups.activeTabGroup.activeTab?.input instanceof vscode.TabInputTextDiff;
}

const pad = (n: number): string => String(n).padStart(2, '0');
