// Knows the acts of a page that are the editor's own to do: a command over the text it shows, which has the keys first.
// It refuses to know what a recipe is; all other acts go to the server.

import * as vscode from 'vscode';

type Command = { readonly command: string; readonly given?: unknown };

/** What an act comes to here; undefined of one that the server does. */
export function commandOf(act: string, arg: unknown): Command | undefined {
  if (act === 'trial') return { command: 'quern.recordTrial' };
  if (act !== 'compare') return undefined;
  const day = typeof arg === 'object' && arg !== null && 'day' in arg ? arg.day : undefined;
  return { command: 'quern.compareWithTrial', ...(typeof day === 'string' && { given: day }) };
}

/** The commands speak of the text that has the keys. */
export async function runOver(
  document: vscode.TextDocument,
  column: vscode.ViewColumn | undefined,
  { command, given }: Command,
): Promise<void> {
  await vscode.window.showTextDocument(document, { viewColumn: column ?? vscode.ViewColumn.One });
  await vscode.commands.executeCommand(command, given);
}
