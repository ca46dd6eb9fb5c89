// Knows what runs a language server: a process of its own, or a worker of the browser.

import type * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';

export type ServerRun = {
  /** Where the files of a folder lie that the server reads by itself. */
  readonly reads: (folder: vscode.Uri) => boolean;
  /** 'quern' is also the section of the settings in which the client looks for trace.server. */
  readonly client: (options: LanguageClientOptions) => ServedClient;
};

export type ServedClient = {
  readonly client: BaseLanguageClient;
  /** A server at a breakpoint does not hang. */
  readonly isInDebugMode: () => boolean;
  /** Ends a server that says nothing any more, so that the client sees it end. */
  readonly kill: () => void;
};

export const clientId = 'quern';
export const clientName = 'Quern';
