// Starts the extension in a browser, whose engine has no way to unpack what is packed: the client in the editor's extension host, and, run
// there once more, the server in a worker.

import { decompress } from 'brotli/decompress';
import type * as vscode from 'vscode';
import { unpackedTables } from '../../../server/src/host/packed-tables.ts';
import type { Program } from '../../../server/src/host/program.ts';
import { words } from './words.ts';

declare const QUERN_CLIENT: Program;
declare const QUERN_SERVER: Program;

/** The files that this lies beside. */
type Files = { readonly pack: Uint8Array; readonly words: Uint8Array };

type Main = (
  exports: object,
  require: unknown,
  module: object,
  name: string,
  compiled: object,
  tables: readonly string[],
) => void;

type WebWorker = { postMessage(message: unknown): void; terminate(): void };
declare const Worker: new (url: string) => WebWorker;
/** What a module is given by the extension host, and a worker is not; under names that the bundler leaves alone. */
declare const QUERN_MODULE: { exports: object } | undefined;
declare const QUERN_REQUIRE: ((name: 'vscode') => typeof vscode) | undefined;
declare const self: { onmessage: ((event: { readonly data: Files }) => void) | null };

/** Ends what is unpacked behind any part of it: the last block, with nothing in it. */
const LAST_BLOCK = 3;

if (QUERN_MODULE !== undefined && QUERN_REQUIRE !== undefined)
  startClient(QUERN_MODULE, QUERN_REQUIRE('vscode'), QUERN_REQUIRE);
else
  self.onmessage = ({ data }) => {
    self.onmessage = null;
    const server = run(QUERN_SERVER, data, undefined) as { start: (port: typeof self) => void };
    server.start(self);
  };

function startClient(own: { exports: object }, { Uri, workspace }: typeof vscode, load: unknown): void {
  let client: { activate: (...given: unknown[]) => void; deactivate: () => Promise<void> } | undefined;
  own.exports = {
    activate: async (context: vscode.ExtensionContext) => {
      const read = (name: string) => workspace.fs.readFile(Uri.joinPath(context.extensionUri, 'dist', name));
      const [pack, known, text] = await Promise.all([read(QUERN_CLIENT.file), read('words.bin'), read('web.js')]);
      const files = { pack, words: known };
      client = run(QUERN_CLIENT, files, load) as typeof client;
      const script = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
      client?.activate(context, async () => {
        const worker = new Worker(script);
        worker.postMessage(files);
        return worker;
      });
    },
    deactivate: () => client?.deactivate(),
  };
}

/** Runs a program, and gives what it exports. */
function run(program: Program, files: Files, load: unknown): object {
  const { packedBytes, unpackedBytes, head, text, tables } = program;
  words.set(files.words);
  const packed = new Uint8Array(packedBytes + 1);
  packed.set(files.pack.subarray(0, packedBytes));
  packed[packedBytes] = LAST_BLOCK;
  const bytes = decompress(packed, unpackedBytes);
  const textAt = (from: number, to: number): string => new TextDecoder().decode(bytes.subarray(from, to));
  if (textAt(0, head.length) !== head) throw new Error(`${program.file} is not of the same build as what starts it`);
  const whole = text.map((part) => (typeof part === 'string' ? part : textAt(...part))).join('');
  // The program's own text, which nothing else can run in a worker that has no file of it.
  // biome-ignore lint/security/noGlobalEval: it is the text that this file was built with, checked by its sum.
  const main = globalThis.eval(whole) as Main;
  const exports = {};
  main(exports, load, { exports }, '', {}, tables === undefined ? [] : unpackedTables(textAt(...tables)));
  return exports;
}
