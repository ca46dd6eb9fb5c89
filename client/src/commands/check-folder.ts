// Knows how the findings of all recipes at hand are asked for, with a bar that says how far it is and can be cancelled.
// It refuses to list them: the server pushes them, and the editor's own list shows them.

import * as vscode from 'vscode';
import { type CheckFolderAnswer, checkFolderRequest, messageVersion } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { inform, warn } from '../say.ts';
import { sayFindings } from '../status-words.ts';

export function registerCheckFolder(connection: Connection): vscode.Disposable {
  let runs = 0;

  const check = async (): Promise<void> => {
    try {
      const answer = await vscode.window.withProgress(
        { location: vscode.ProgressLocation.Notification, title: 'Checking the folder', cancellable: true },
        async (progress, token) => {
          const workDoneToken = `quern-folder-${++runs}`;
          let last = 0;
          const listening = connection.onProgress(workDoneToken, ({ percentage = last, message }) => {
            progress.report({ increment: percentage - last, ...(message !== undefined && { message }) });
            last = percentage;
          });
          try {
            return await connection.ask(checkFolderRequest, { version: messageVersion, workDoneToken }, token);
          } catch (error) {
            if (token.isCancellationRequested) return undefined;
            throw error;
          } finally {
            listening.dispose();
          }
        },
      );
      if (answer?.finished === true) void say(answer);
    } catch (error) {
      connection.log.error('Checking the folder failed.', error);
      void warn('Quern could not check the folder. Its log says why.');
    }
  };

  return vscode.commands.registerCommand('quern.checkFolder', check);
}

/** What was found is shown where the editor lists it. */
async function say({ files, withFindings, findings }: CheckFolderAnswer): Promise<void> {
  const of = `${files} ${files === 1 ? 'file' : 'files'}`;
  if (withFindings === 0) return void inform(`No findings in ${of}.`);
  await vscode.commands.executeCommand('workbench.actions.view.problems');
  void inform(`${sayFindings(findings)} in ${withFindings} of ${of}.`);
}
