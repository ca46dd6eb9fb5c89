// Knows the text that a page is of: its document, the editor it is seen in, and how a line of it is gone to.

import * as vscode from 'vscode';

export const isOf = (uri: vscode.Uri, document: vscode.TextDocument): boolean =>
  document.uri.toString() === uri.toString();

export const documentOf = (uri: vscode.Uri): vscode.TextDocument | undefined =>
  vscode.workspace.textDocuments.find((document) => isOf(uri, document));

export const editorOf = (uri: vscode.Uri): vscode.TextEditor | undefined =>
  vscode.window.visibleTextEditors.find(({ document }) => isOf(uri, document));

/** Puts the keys into the text, where it is seen or, if it is not, beside the page in its column. */
export async function focusText(
  uri: vscode.Uri,
  page: vscode.ViewColumn | undefined,
  preserveFocus = false,
): Promise<vscode.TextEditor> {
  const free = page === vscode.ViewColumn.One ? vscode.ViewColumn.Beside : vscode.ViewColumn.One;
  return vscode.window.showTextDocument(uri, { viewColumn: editorOf(uri)?.viewColumn ?? free, preserveFocus });
}

/** Puts the caret on a line, from 1; the keys stay where they are unless `focus` says otherwise. */
export async function goToLine(
  uri: vscode.Uri,
  page: vscode.ViewColumn | undefined,
  line: number,
  focus: boolean,
): Promise<void> {
  const seen = editorOf(uri);
  const editor = seen === undefined || focus ? await focusText(uri, page, !focus) : seen;
  const { document } = editor;
  const at = document.lineAt(Math.min(line, document.lineCount) - 1);
  const place = new vscode.Position(at.lineNumber, at.firstNonWhitespaceCharacterIndex);
  editor.selection = new vscode.Selection(place, place);
  editor.revealRange(at.range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}
