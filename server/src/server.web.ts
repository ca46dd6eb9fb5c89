/**
 * The language server in a worker of a browser: builds host and session, and listens on the port it is given. All files are handed in.
 */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from 'vscode-languageserver/browser';
import { today } from './host/clock.ts';
import { Handed } from './host/handed.ts';
import { turns, whenIdle } from './host/web.ts';
import { PAUSE_MS, STILL_MS } from './lsp/schedule.ts';
import { serve } from './lsp/session.ts';

declare const QUERN_VERSION: string;

/** Called by who loaded it (`client/src/web/launch.ts`); `port` is the worker itself, or a port of messages. */
export function start(port: ConstructorParameters<typeof BrowserMessageReader>[0]): void {
  const handed = new Handed();
  const { connection } = serve(
    (options) =>
      createConnection(ProposedFeatures.all, new BrowserMessageReader(port), new BrowserMessageWriter(port), options),
    {
      files: handed.files,
      handed: (files) => handed.take(files),
      turn: turns(),
      pauses: { whenIdle: whenIdle(PAUSE_MS), whenStill: whenIdle(STILL_MS) },
      tidy: () => undefined,
      served: () => undefined,
      now: () => performance.now(),
      today,
      pageFile: () => undefined,
      version: QUERN_VERSION,
      rethrow: false,
    },
  );
  connection.listen();
}
