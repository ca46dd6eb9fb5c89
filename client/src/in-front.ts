// Knows which recipe a command is about: the one in front, or the one whose page is.

import * as vscode from 'vscode';

/** The recipe that is written in; where none is, because a page or a list has the focus, the one that is seen beside it. */
export function recipeInFront(): vscode.TextDocument | undefined {
  const { activeTextEditor, visibleTextEditors } = vscode.window;
  const editor = activeTextEditor ?? visibleTextEditors.find(({ document }) => document.languageId === 'quern');
  return editor?.document.languageId === 'quern' ? editor.document : undefined;
}
