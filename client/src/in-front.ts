// Knows which recipe a command is about: the one that is written in, or looked at beside its page.

import * as vscode from 'vscode';

/** The recipe in front. */
export function recipeInFront(): vscode.TextDocument | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === 'quern' ? document : undefined;
}
