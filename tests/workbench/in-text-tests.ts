// Knows what a cook sees in the text without having typed it: hints, what stands above a recipe, what is left while a step is typed.
// It refuses to know how: it uses what the editor offers to everyone, on a copy of the example kitchen.

import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { askHost, closeOthers, open, pause, placeOf, takeScreenshot } from './hands.ts';
import { type EditorTest, waitFor } from './runner.ts';

const rolls = 'bread/supper-rolls.quern';

const THEMES = [
  ['Light Modern', 'light'],
  ['Dark Modern', 'dark'],
  ['Default High Contrast', 'high-contrast'],
] as const;
const ALL_HINTS = ['grams', 'percent', 'taken', 'scale'] as const;

export const inTextTests: readonly EditorTest[] = [
  {
    name: 'in the text: grams stand where no weight does, and settings show the rest',
    run: async () => {
      const { document } = await open(rolls);
      await closeOthers(document);
      const hints = vscode.workspace.getConfiguration('quern.inlayHints');
      const shown = await waitFor('the hints', async () => {
        const now = await labels(document);
        return now.length > 0 ? now : undefined;
      });
      assert.deepEqual(shown, ['≈ 120 g', '≈ 20 g', '= 15 g']);
      await pause(1500);
      await takeScreenshot('in-text-as-it-comes');
      for (const name of ALL_HINTS) await hints.update(name, true, vscode.ConfigurationTarget.Global);
      await waitFor('all hints', async () => ((await labels(document)).includes('(350 F fan)') ? true : undefined));
      await inEveryTheme('in-text-all');
      for (const name of ALL_HINTS) await hints.update(name, undefined, vscode.ConfigurationTarget.Global);
    },
  },
  {
    name: 'in the text: above a recipe stands what it comes to, and one setting takes it away',
    run: async () => {
      const { document } = await open(rolls);
      const titles = async () => (await lensesOf(document)).flatMap(({ command }) => command?.title ?? []);
      const others = await titles();
      const facts = others.find((title) => title.includes('each uncooked · '));
      assert.match(facts ?? '', /^about \d+ g, about 6\d g each uncooked · .* at work · tried 2026-\d\d-\d\d: keep$/);
      for (const title of ['Scale…', 'Record a trial', 'Show the recipe']) assert.ok(others.includes(title), title);
      const commands = new Set(await vscode.commands.getCommands(true));
      for (const { command } of await lensesOf(document))
        if (command !== undefined && command.command !== '') assert.ok(commands.has(command.command), command.command);
      const settings = vscode.workspace.getConfiguration('quern');
      await settings.update('codeLens', 'off', vscode.ConfigurationTarget.Global);
      await waitFor('the lenses to go', async () => ((await titles()).length === 0 ? true : undefined));
      await settings.update('codeLens', undefined, vscode.ConfigurationTarget.Global);
      await waitFor('the lenses to be back', async () => ((await titles()).length > 0 ? true : undefined));
    },
  },
  {
    name: 'in the text: a step that is typed is told what is left, and a pan what comes next',
    run: async () => {
      const editor = await open(rolls);
      const { document } = editor;
      const before = document.getText();
      const help = (at: vscode.Position) =>
        vscode.commands.executeCommand<vscode.SignatureHelp | undefined>(
          'vscode.executeSignatureHelpProvider',
          document.uri,
          at,
        );
      const inStep = placeOf(document, 'Mix the flour');
      assert.match(
        (await help(inStep))?.signatures[0]?.label ?? '',
        /^left: whole milk 180 g, eggs .* g and unsalted butter 120 g$/,
      );
      const line = document.lineAt(inStep.line).rangeIncludingLineBreak.end;
      editor.selection = new vscode.Selection(line, line);
      if (askHost(`type ${JSON.stringify('  do ')}`)) {
        await waitFor('the line', () => document.getText() !== before || undefined);
        await pause(1500);
        await takeScreenshot('in-text-left');
        await vscode.commands.executeCommand('closeParameterHints');
      }
      await vscode.commands.executeCommand('workbench.action.files.revert');
    },
  },
  {
    name: 'in the text: a line changes places with the one below, and the caret goes along',
    run: async () => {
      const editor = await open(rolls);
      const { document } = editor;
      const before = document.getText();
      const at = placeOf(document, 'caster sugar');
      editor.selection = new vscode.Selection(at, at);
      await vscode.commands.executeCommand('quern.moveLineDown');
      assert.match(document.getText(), /fine salt\n {2}40 g +caster sugar/);
      assert.equal(editor.selection.active.line, at.line + 1);
      await vscode.commands.executeCommand('quern.moveLineUp');
      assert.equal(document.getText(), before);
      assert.equal(editor.selection.active.line, at.line);
      await vscode.commands.executeCommand('workbench.action.files.revert');
    },
  },
];

async function inEveryTheme(shot: string): Promise<void> {
  const theme = vscode.workspace.getConfiguration('workbench');
  const before = theme.get('colorTheme');
  for (const [name, suffix] of THEMES) {
    await theme.update('colorTheme', name, vscode.ConfigurationTarget.Global);
    await pause(1500);
    await takeScreenshot(`${shot}-${suffix}`);
  }
  await theme.update('colorTheme', before, vscode.ConfigurationTarget.Global);
}

async function hintsOf(document: vscode.TextDocument): Promise<readonly vscode.InlayHint[]> {
  const whole = document.validateRange(new vscode.Range(0, 0, document.lineCount, 0));
  return vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, whole);
}

const labels = async (document: vscode.TextDocument): Promise<string[]> => (await hintsOf(document)).map(labelOf);

const labelOf = ({ label }: vscode.InlayHint): string =>
  typeof label === 'string' ? label : label.map(({ value }) => value).join('');

const MOST_RESOLVED = 20;
const lensesOf = (document: vscode.TextDocument): Thenable<vscode.CodeLens[]> =>
  vscode.commands.executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, MOST_RESOLVED);
