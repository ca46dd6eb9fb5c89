// Knows how the server is run as a process beside the editor's.

import type * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientId, clientName, type ServerRun } from '../server-run.ts';

export function serverProcess(context: vscode.ExtensionContext): ServerRun {
  const module = context.asAbsolutePath('dist/server.js');
  return {
    reads: ({ scheme }) => scheme === 'file',
    client: (options) => {
      const client = new LanguageClient(
        clientId,
        clientName,
        {
          run: { module, transport: TransportKind.ipc },
          debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6009'] } },
        },
        options,
      );
      return {
        client,
        isInDebugMode: () => client.isInDebugMode,
        kill: () => client.serverProcess?.kill('SIGKILL'),
      };
    },
  };
}
