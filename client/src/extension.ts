// Knows the extension as an editor runs it in Node: the server is a process.

import type * as vscode from 'vscode';
import type { Connection } from './connection.ts';
import { serverProcess } from './node/server-process.ts';
import { offerTools } from './node/tools-offered.ts';
import { register } from './registered.ts';

/** In a bundle, keeps what was compiled so far for the next start (`server/src/host/launch.ts`); it does so at the end too, where there is time. */
declare const QUERN_COMPILED: { readonly keep?: () => void } | undefined;
/** When every part has run that a start needs, and nobody waits for the next. */
const keptAfterMs = 20_000;

let connection: Connection | undefined;

export function activate(context: vscode.ExtensionContext): void {
  connection = register(context, serverProcess(context));
  const keeping = setTimeout(() => {
    if (typeof QUERN_COMPILED !== 'undefined') QUERN_COMPILED.keep?.();
  }, keptAfterMs);
  context.subscriptions.push(offerTools(context), { dispose: () => clearTimeout(keeping) });
}

export async function deactivate(): Promise<void> {
  await connection?.stop();
}
