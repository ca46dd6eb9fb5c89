// Knows what is said where the page cannot follow its text, or may not write into it.

import * as vscode from 'vscode';
import { isWritten } from '../written.ts';
import type { Trouble } from './messages.ts';

export const stopped = (at: Date): Trouble => ({
  heading: 'Quern has stopped',
  words: `The page shows what was true at ${two(at.getHours())}:${two(at.getMinutes())} and follows nothing until it is started again.`,
  remedies: [
    { does: 'restart', label: 'Start it again' },
    { does: 'log', label: 'Show the log' },
  ],
});

export const closed: Trouble = {
  heading: 'The recipe is closed',
  words: 'The page shows it as it was last, and follows nothing until it is open again.',
  remedies: [{ does: 'reopen', label: 'Open it' }],
};

export const gone: Trouble = {
  heading: 'The recipe is not there',
  words: 'The file was moved or deleted, or cannot be read.',
  remedies: [],
};

/** In one sentence; undefined where it may be written. */
export async function whyReadOnly(uri: vscode.Uri): Promise<string | undefined> {
  if (!vscode.workspace.isTrusted) return 'This folder is not trusted: the page shows the recipe and writes nothing.';
  if (!isWritten(uri)) return 'This is an older text or a preview: the page shows it and writes nothing.';
  if (uri.scheme === 'untitled') return undefined;
  try {
    const { permissions = 0 } = await vscode.workspace.fs.stat(uri);
    return (permissions & vscode.FilePermission.Readonly) === 0
      ? undefined
      : 'This file is read-only: the page shows it and writes nothing.';
  } catch {
    // A file that is not saved yet may be written all the same.
    return undefined;
  }
}

const two = (n: number): string => String(n).padStart(2, '0');
