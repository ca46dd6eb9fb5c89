// Knows how the line of the caret changes places with the one beside it, and that the caret goes along.
// It refuses to know which lines may: the server offers it as an action.

import * as vscode from 'vscode';
import { inform } from '../say.ts';

const titles = { up: 'Move the line up', down: 'Move the line down' } as const;

export function registerMoveLine(): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand('quern.moveLineUp', () => move('up')),
    vscode.commands.registerCommand('quern.moveLineDown', () => move('down')),
  );
}

async function move(way: keyof typeof titles): Promise<void> {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== 'quern') return;
  const { document, selection } = editor;
  const caret = selection.active;
  const line = document.lineAt(caret.line).text;
  const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
    'vscode.executeCodeActionProvider',
    document.uri,
    new vscode.Range(caret, caret),
    'refactor.move',
    2,
  );
  const edit = actions.find(({ title }) => title === titles[way])?.edit;
  const [change] = edit?.get(document.uri) ?? [];
  if (edit === undefined || change === undefined)
    return void inform('There is no line of the same sort beside it in its part.');
  if (!(await vscode.workspace.applyEdit(edit))) return;
  const lines = change.newText.split(/\r?\n/);
  const at = way === 'up' ? lines.indexOf(line) : lines.lastIndexOf(line);
  const there = new vscode.Position(change.range.start.line + Math.max(at, 0), caret.character);
  editor.selection = new vscode.Selection(there, there);
  editor.revealRange(editor.selection);
}
