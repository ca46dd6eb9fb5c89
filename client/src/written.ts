// Knows whether a text is one that somebody writes, rather than an old version or a preview of it.

import * as vscode from 'vscode';

export function isWritten(uri: vscode.Uri): boolean {
  return uri.scheme === 'untitled' || vscode.workspace.fs.isWritableFileSystem(uri.scheme) === true;
}
