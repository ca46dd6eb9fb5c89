/**
 * The language server: `--stdio`, `--node-ipc`, `--socket` or `--pipe`. Builds host and session, and listens.
 */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { today } from './host/clock.ts';
import { nodeFiles } from './host/files.ts';
import { tidying, whenIdle } from './host/idle.ts';
import { inOnePiece } from './host/one-piece.ts';
import { serve } from './lsp/session.ts';

declare const QUERN_VERSION: string;

/** Longer than between two keys, shorter than a look at the status bar. */
const PAUSE_MS = 150;
/** Longer than it takes to think of the next word. */
const STILL_MS = 1500;

const connection = process.argv.includes('--stdio')
  ? createConnection(ProposedFeatures.all, process.stdin, inOnePiece(process.stdout))
  : createConnection(ProposedFeatures.all);
serve(connection, {
  files: nodeFiles(),
  turn: setImmediate,
  pauses: { whenIdle: whenIdle(PAUSE_MS), whenStill: whenIdle(STILL_MS) },
  tidy: tidying(),
  now: () => performance.now(),
  today,
  version: QUERN_VERSION,
  rethrow: process.env.QUERN_RETHROW === '1',
});
connection.listen();
