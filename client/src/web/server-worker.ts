// Knows how the server is run in a worker of the browser, which ends with its client.

import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
  State,
} from 'vscode-languageclient/browser';
import { clientId, clientName, type ServerRun } from '../server-run.ts';

/** As much of a worker as is used here. */
export type WorkerOfBrowser = ConstructorParameters<typeof BrowserMessageReader>[0] & {
  readonly terminate: () => void;
};

/** A worker that is ended has no way to say so. */
class EndedReader extends BrowserMessageReader {
  end(): void {
    this.fireClose();
  }
}

/** `start` makes a worker that serves whoever writes to it. */
export function serverWorker(start: () => Promise<WorkerOfBrowser>): ServerRun {
  return {
    reads: () => false,
    client: (options) => {
      let end: ((isKilled: boolean) => void) | undefined;
      const connect = async (): Promise<MessageTransports> => {
        end?.(false);
        const worker = await start();
        const reader = new EndedReader(worker);
        end = (isKilled) => {
          end = undefined;
          worker.terminate();
          if (isKilled) reader.end();
        };
        return { reader, writer: new BrowserMessageWriter(worker) };
      };
      const client = new LanguageClient(clientId, clientName, connect, options);
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Stopped) end?.(false);
      });
      return { client, isInDebugMode: () => false, kill: () => end?.(true) };
    },
  };
}
