// Knows how words with a recipe's in them are shown as the words that they are: a notification and a status make links and
// commands of `[words](command:…)`, a list makes icons of `$(name)`.

import * as vscode from 'vscode';
import { plainWords } from './plain-words.ts';

export const inform = (words: string, ...buttons: readonly string[]): Thenable<string | undefined> =>
  vscode.window.showInformationMessage(plainWords(words), ...buttons);

export const warn = (words: string, ...buttons: readonly string[]): Thenable<string | undefined> =>
  vscode.window.showWarningMessage(plainWords(words), ...buttons);

export const fail = (words: string, ...buttons: readonly string[]): Thenable<string | undefined> =>
  vscode.window.showErrorMessage(plainWords(words), ...buttons);
