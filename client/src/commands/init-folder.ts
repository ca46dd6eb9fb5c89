// Knows how the files that a folder of recipes begins with are written into an open folder; what is there stays as it is.
// It refuses to know what stands in them: the server says it. A hook of git is the terminal's to write.

import * as vscode from 'vscode';
import { beginRequest, messageVersion } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { inform, warn } from '../say.ts';

export function registerInitFolder(connection: Connection): vscode.Disposable {
  return vscode.commands.registerCommand('quern.initFolder', async () => {
    const folder = await chooseFolder();
    if (folder === undefined) return;
    try {
      const { files } = await connection.ask(beginRequest, { version: messageVersion });
      const wrote: string[] = [];
      const left: string[] = [];
      for (const { name, text } of files) {
        const to = vscode.Uri.joinPath(folder.uri, name);
        if (await isThere(to)) {
          left.push(name);
          continue;
        }
        await vscode.workspace.fs.writeFile(to, new TextEncoder().encode(text));
        wrote.push(name);
      }
      void inform(
        [
          wrote.length === 0 ? 'Nothing was written.' : `Written: ${wrote.join(', ')}.`,
          ...(left.length === 0 ? [] : [`Left as it is: ${left.join(', ')}.`]),
          'In the terminal, quern init writes the hook of git too.',
        ].join(' '),
      );
    } catch (error) {
      connection.log.error('Setting up the folder failed.', error);
      void warn('Quern could not set up this folder. Its log says why.');
    }
  });
}

async function chooseFolder(): Promise<vscode.WorkspaceFolder | undefined> {
  const [only, ...others] = vscode.workspace.workspaceFolders ?? [];
  if (only === undefined) void inform('No folder is open: open the one that the recipes are in.');
  return others.length === 0 ? only : vscode.window.showWorkspaceFolderPick({ placeHolder: 'Which folder?' });
}

async function isThere(file: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(file);
    return true;
  } catch {
    return false;
  }
}
