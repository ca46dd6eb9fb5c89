// Knows how a trial of today is started: the lines come from the server, the date from the cook's own clock.
// It refuses to know what is worth measuring.

import * as vscode from 'vscode';
import { messageVersion, recordTrialRequest } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { dayOf } from '../day.ts';
import { editorEdit, editorRange } from '../edits.ts';
import { warn } from '../say.ts';

export function registerRecordTrial(connection: Connection): vscode.Disposable {
  return vscode.commands.registerCommand('quern.recordTrial', async () => {
    const editor = vscode.window.activeTextEditor;
    if (editor?.document.languageId !== 'quern') return;
    const { document } = editor;
    const { version } = document;
    try {
      const uri = connection.uriOf(document);
      const answer = await connection.ask(recordTrialRequest, {
        version: messageVersion,
        uri,
        date: dayOf(new Date()),
      });
      if (!answer.ok) return void warn(answer.why);
      if (document.isClosed || document.version !== version) return;
      const edit = new vscode.WorkspaceEdit();
      edit.set(document.uri, answer.edits.map(editorEdit));
      if (!(await vscode.workspace.applyEdit(edit)))
        return void warn('This recipe cannot be changed here: it is read-only.');
      const shown = await vscode.window.showTextDocument(document);
      const first = editorRange(answer.first);
      shown.selection = new vscode.Selection(first.start, first.end);
      shown.revealRange(first, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
    } catch (error) {
      connection.log.error('Recording a trial failed.', error);
      void warn('Quern could not start a trial. Its log says why.');
    }
  });
}
