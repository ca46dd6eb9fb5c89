/**
 * Knows one connection behind the fence: what is sent, asked and heard, where nothing that fails takes the server down.
 * Refuses to know what is said.
 */
import type { Connection } from 'vscode-languageserver';
import { visible } from '../publish/visible.ts';
import type { Uri } from '../workspace/store.ts';
import { type Fence, fenced } from './fence.ts';

export class Wire {
  private readonly connection: Connection;
  private readonly fence: Fence;

  constructor(connection: Connection, fence: Fence) {
    this.connection = connection;
    this.fence = fence;
  }

  on<P>(method: string, handle: (params: P) => void): void {
    this.connection.onNotification(method, (params: P) => {
      fenced(
        this.fence,
        method,
        () => undefined,
        () => handle(params),
        undefined,
      );
    });
  }

  send(method: string, params: unknown): void {
    this.connection.sendNotification(method, params).catch(() => undefined);
  }

  /** A client may refuse or go away; nothing depends on its answer. */
  ask(method: string, params: unknown, then: (answer: unknown) => void, otherwise: () => void = () => undefined): void {
    this.connection.sendRequest(method, params).then(then, (error: unknown) => {
      this.warn(`the client did not answer ${method}: ${String(error)}`);
      otherwise();
    });
  }

  publish(uri: Uri, version: number | undefined, diagnostics: unknown[]): void {
    this.send('textDocument/publishDiagnostics', { uri, ...(version !== undefined && { version }), diagnostics });
  }

  warn(message: string): void {
    this.connection.console.warn(visible(message));
  }
}
