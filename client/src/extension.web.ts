// Knows the extension as an editor runs it in a browser: the server is a worker, which is started by who loaded this (`web/launch.ts`).

import * as vscode from 'vscode';
import type { Connection } from './connection.ts';
import { register } from './registered.ts';
import { serverWorker, type WorkerOfBrowser } from './web/server-worker.ts';

let connection: Connection | undefined;

export function activate(context: vscode.ExtensionContext, startServer: () => Promise<WorkerOfBrowser>): void {
  // What needs a program of the machine stays out of the palette.
  void vscode.commands.executeCommand('setContext', 'quern.inBrowser', true);
  connection = register(context, serverWorker(startServer));
}

export async function deactivate(): Promise<void> {
  await connection?.stop();
}
