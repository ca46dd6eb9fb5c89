/**
 * The language server: `--stdio`, `--node-ipc`, `--socket` or `--pipe`. Builds host and session, and listens.
 */
import {
  type Connection,
  type ConnectionOptions,
  createConnection,
  ErrorCodes,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { today } from './host/clock.ts';
import { nodeFiles } from './host/files.ts';
import { watchFrames } from './host/frames.ts';
import { Handed, handedBeside } from './host/handed.ts';
import { tidying, whenIdle } from './host/idle.ts';
import { inOnePiece } from './host/one-piece.ts';
import { pagesBeside } from './host/pages.ts';
import { endWithParent } from './host/parent-watch.ts';
import { PAUSE_MS, STILL_MS } from './lsp/schedule.ts';
import { serve } from './lsp/session.ts';

declare const QUERN_VERSION: string;

/** Over a socket or pipe, a client need not be the one that started the server. */
const isChild = process.argv.some((arg) => arg === '--stdio' || arg === '--node-ipc');

const handed = new Handed();
const { connection, isShut } = serve(
  (options) =>
    process.argv.includes('--stdio') ? overStdio(options) : createConnection(ProposedFeatures.all, options),
  {
    files: handedBeside(nodeFiles(), handed.files),
    handed: (files) => handed.take(files),
    turn: setImmediate,
    pauses: { whenIdle: whenIdle(PAUSE_MS), whenStill: whenIdle(STILL_MS) },
    tidy: tidying(),
    served: isChild ? endWithParent : () => undefined,
    now: () => performance.now(),
    today,
    pageFile: pagesBeside(__filename),
    version: QUERN_VERSION,
    rethrow: process.env.QUERN_RETHROW === '1',
  },
);
connection.listen();

/** Ends with the editor, and where what it sends is no message: what comes after that could be taken for anything. */
function overStdio(options: ConnectionOptions): Connection {
  const reader = new StreamMessageReader(process.stdin);
  const writer = new StreamMessageWriter(inOnePiece(process.stdout));
  const made = createConnection(ProposedFeatures.all, reader, writer, options);
  reader.onError(({ message }) => {
    made.console.error(`a message could not be read: ${message}`);
    const error = { code: ErrorCodes.ParseError, message: 'a message could not be read' };
    writer.write({ jsonrpc: '2.0', id: null, error } as Parameters<typeof writer.write>[0]).catch(() => undefined);
  });
  const end = () => process.exit(isShut() ? 0 : 1);
  process.stdin.on('end', end).on('close', end);
  watchFrames(process.stdin, (why) => {
    const words = `quern stops: what the editor sends is no message of the protocol (${why})`;
    process.stderr.write(`${words}\n`);
    made.console.error(words);
    setImmediate(() => process.exit(1));
  });
  return made;
}
