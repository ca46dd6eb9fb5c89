// Knows how the edits of a message become the editor's own.

import * as vscode from 'vscode';
import type { MessageEdit, MessageRange } from '../../server/src/lsp/messages.ts';

export function editorRange({ start, end }: MessageRange): vscode.Range {
  return new vscode.Range(start.line, start.character, end.line, end.character);
}

export function editorEdit({ range, newText }: MessageEdit): vscode.TextEdit {
  return new vscode.TextEdit(editorRange(range), newText);
}
