// Knows the extension as an editor runs it in Node: the server is a process.

import type * as vscode from 'vscode';
import type { Connection } from './connection.ts';
import { serverProcess } from './node/server-process.ts';
import { offerTools } from './node/tools-offered.ts';
import { register } from './registered.ts';

let connection: Connection | undefined;

export function activate(context: vscode.ExtensionContext): void {
  connection = register(context, serverProcess(context));
  context.subscriptions.push(offerTools(context));
}

export async function deactivate(): Promise<void> {
  await connection?.stop();
}
