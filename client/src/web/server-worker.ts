// Knows how the server is run in a worker of the browser, which ends with its client.

import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from 'vscode-languageclient/browser';
import { clientId, clientName, type ServerRun } from '../server-run.ts';

/** As much of a worker as is used here. */
export type WorkerOfBrowser = ConstructorParameters<typeof BrowserMessageReader>[0] & {
  readonly terminate: () => void;
};

/** A worker that is ended has no way to say so. */
class Reader extends BrowserMessageReader {
  end(): void {
    this.fireClose();
  }
}

/** A worker does not end by itself when it was told to. */
class Writer extends BrowserMessageWriter {
  private readonly worker: WorkerOfBrowser;

  constructor(worker: WorkerOfBrowser) {
    super(worker);
    this.worker = worker;
  }

  override end(): void {
    this.worker.terminate();
  }
}

/** `start` makes a worker that serves whoever writes to it. */
export function serverWorker(start: () => Promise<WorkerOfBrowser>): ServerRun {
  return {
    reads: () => false,
    client: (options) => {
      let kill = (): void => undefined;
      const connect = async (): Promise<MessageTransports> => {
        const worker = await start();
        const reader = new Reader(worker);
        kill = () => {
          worker.terminate();
          reader.end();
        };
        return { reader, writer: new Writer(worker) };
      };
      const client = new LanguageClient(clientId, clientName, connect, options);
      return { client, isInDebugMode: () => false, kill: () => kill() };
    },
  };
}
