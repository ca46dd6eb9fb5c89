import * as vscode from 'vscode';
import type { Connection } from '../connection.ts';

export function registerShowLog(connection: Connection): vscode.Disposable {
  return vscode.commands.registerCommand('quern.showLog', () => connection.log.show());
}
