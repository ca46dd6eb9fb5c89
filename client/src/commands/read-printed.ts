// Knows how a recipe that was copied from a page or a message is offered as notation: beside the plain paste into a file
// that holds nothing yet, and by a command. It refuses to read it: the server says what it is in the notation.

import * as vscode from 'vscode';
import { messageVersion, readRequest } from '../../../server/src/lsp/messages.ts';
import { isBlank } from '../blank.ts';
import type { Connection } from '../connection.ts';
import { inform, warn } from '../say.ts';

const plainText = 'text/plain';
const kind = vscode.DocumentDropOrPasteEditKind.Empty.append('quern', 'recipe');

export function registerReadPrinted(connection: Connection): vscode.Disposable {
  const provider: vscode.DocumentPasteEditProvider = {
    provideDocumentPasteEdits: async (document, [range, ...more], data, _context, token) => {
      const copied = await data.get(plainText)?.asString();
      if (range === undefined || more.length > 0 || !copied?.includes('\n') || !isBlank(document.getText())) return;
      // Behind the mark of a comment, the first line would be lost.
      if (document.lineAt(range.start.line).text.slice(0, range.start.character).trim() !== '') return;
      try {
        const answer = await connection.ask(readRequest, asked(connection.uriOf(document), copied), token);
        if (answer === null) return;
        const edit = new vscode.DocumentPasteEdit(answer.text, 'Paste as a recipe', kind);
        // Nothing is read by itself: the plain paste comes first.
        edit.yieldTo = [vscode.DocumentDropOrPasteEditKind.Text];
        return [edit];
      } catch (error) {
        if (!token.isCancellationRequested) connection.log.error('Reading what is pasted failed.', error);
        return;
      }
    },
  };

  return vscode.Disposable.from(
    vscode.languages.registerDocumentPasteEditProvider({ language: 'quern' }, provider, {
      providedPasteEditKinds: [kind],
      pasteMimeTypes: [plainText],
    }),
    vscode.commands.registerCommand('quern.readClipboard', () => readClipboard(connection)),
  );
}

/** Into the file in front where it holds nothing yet, or else into a new one. */
async function readClipboard(connection: Connection): Promise<void> {
  const inFront = vscode.window.activeTextEditor?.document;
  try {
    const copied = await vscode.env.clipboard.readText();
    const uri = inFront?.languageId === 'quern' ? connection.uriOf(inFront) : 'untitled:Untitled';
    const answer = await connection.ask(readRequest, asked(uri, copied));
    if (answer === null)
      return void inform(
        'The clipboard holds no recipe that Quern can read: it looks for a list of ingredients, an amount a line.',
      );
    const blank = inFront?.languageId === 'quern' && isBlank(inFront.getText()) ? inFront : undefined;
    if (blank === undefined || !(await append(blank, answer.text)))
      await vscode.window.showTextDocument(
        await vscode.workspace.openTextDocument({ language: 'quern', content: answer.text }),
      );
    if (answer.missed > 0)
      void inform(
        `${answer.missed === 1 ? 'One line was' : `${answer.missed} lines were`} not understood, and stand as comments.`,
      );
  } catch (error) {
    connection.log.error('Reading the clipboard failed.', error);
    void warn('Quern could not read the clipboard. Its log says why.');
  }
}

const asked = (uri: string, text: string) => ({ version: messageVersion, uri, text });

async function append(document: vscode.TextDocument, text: string): Promise<boolean> {
  const { end } = document.lineAt(document.lineCount - 1).range;
  const edit = new vscode.WorkspaceEdit();
  edit.insert(document.uri, end, end.character === 0 ? text : `\n${text}`);
  return vscode.workspace.applyEdit(edit);
}
