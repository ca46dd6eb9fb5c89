/** The server of the browser, as it is packed: unpacked and started in a worker, with the files of a folder that the client hands in. */
import { readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { HandedParams } from '../../server/src/lsp/messages.ts';
import { RICH, ROOT } from '../support/fake-editor.ts';

/** A worker of Node with what one of a browser has, in which the script that starts the server finds itself. */
const AS_IN_BROWSER = `
import { parentPort, workerData } from 'node:worker_threads';
import { runInThisContext } from 'node:vm';
globalThis.self = parentPort;
runInThisContext(workerData);
`;

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
}

class Session {
  private readonly worker = new Worker(new URL(`data:text/javascript,${encodeURIComponent(AS_IN_BROWSER)}`), {
    workerData: readFileSync(`${ROOT}dist/web.js`, 'utf8'),
  });
  private readonly heard: Message[] = [];
  private last = 0;
  private wake: () => void = () => undefined;

  constructor() {
    this.worker.on('message', (message: Message) => {
      this.heard.push(message);
      if (message.id !== undefined && message.method !== undefined)
        this.worker.postMessage({ jsonrpc: '2.0', id: message.id, result: null });
      this.wake();
    });
    const file = (name: string) => new Uint8Array(readFileSync(`${ROOT}dist/${name}`));
    this.worker.postMessage({ pack: file('quern.br'), words: file('words.bin') });
  }

  tell(method: string, params: unknown): void {
    this.worker.postMessage({ jsonrpc: '2.0', method, params });
  }

  async ask<T>(method: string, params: unknown): Promise<T> {
    const id = ++this.last;
    this.worker.postMessage({ jsonrpc: '2.0', id, method, params });
    const answer = await this.until((message) => message.id === id && message.method === undefined);
    return answer.result as T;
  }

  /** The first message that is as asked, heard before or yet to come. */
  async until(is: (message: Message) => boolean): Promise<Message> {
    for (;;) {
      const found = this.heard.find(is);
      if (found !== undefined) return found;
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    }
  }

  async codes(uri: string): Promise<readonly string[]> {
    const { items } = await this.ask<{ items: { code: string }[] }>('textDocument/diagnostic', {
      textDocument: { uri },
    });
    return items.map(({ code }) => code);
  }

  end(): Promise<number> {
    return this.worker.terminate();
  }
}

const FOLDER = 'memfs://kitchen/cakes';
const CAKE = `${FOLDER}/cake.quern`;
const TEXT = `recipe Cake
  200 g     spelt blend
  200 g     butter
  150 g     sugar
  do Beat the butter with the sugar, then fold in the spelt blend.
  do Bake at 180 C for 30 min, until a skewer comes out clean.
`;
const HANDED: HandedParams = {
  files: [
    { uri: `${FOLDER}/quern.json`, text: '{ "measures": "metric" }' },
    { uri: `${FOLDER}/foods.quern`, text: 'food spelt blend\n  like plain flour\n' },
    { uri: `${FOLDER}/base.quern`, text: TEXT },
  ],
  gone: [],
  larger: [],
};

const open = (session: Session, uri: string, text: string): void =>
  session.tell('textDocument/didOpen', { textDocument: { uri, languageId: 'quern', version: 1, text } });

describe('in a worker', () => {
  const session = new Session();
  afterAll(() => session.end());
  beforeAll(async () => {
    const { serverInfo } = await session.ask<{ serverInfo: { name: string } }>('initialize', {
      processId: null,
      rootUri: null,
      workspaceFolders: [{ uri: FOLDER, name: 'cakes' }],
      capabilities: RICH,
      initializationOptions: { handed: HANDED },
    });
    expect(serverInfo.name).toBe('quern');
    session.tell('initialized', {});
  });

  test('a text is checked in the house of its folder, whoever has it', async () => {
    open(session, CAKE, TEXT);
    expect(await session.codes(CAKE)).not.toContain('unknown-food');
    open(session, 'untitled:Untitled-1', TEXT);
    expect(await session.codes('untitled:Untitled-1')).toContain('unknown-food');
  });

  test('what is typed is found, and hovered over in the measures of the house', async () => {
    session.tell('textDocument/didChange', {
      textDocument: { uri: CAKE, version: 2 },
      contentChanges: [{ text: TEXT.replace('150 g     sugar', '1 cup     sugar') }],
    });
    const hover = await session.ask<{ contents: { value: string } }>('textDocument/hover', {
      textDocument: { uri: CAKE },
      position: { line: 3, character: 3 },
    });
    expect(hover.contents.value).toContain('1 metric cup of granulated sugar');
    session.tell('textDocument/didChange', {
      textDocument: { uri: CAKE, version: 3 },
      contentChanges: [{ text: TEXT.replace(', then fold in the spelt blend', '') }],
    });
    expect(await session.codes(CAKE)).toContain('unused-ingredient');
  });

  test('a variant finds its base, and misses it when it is gone', async () => {
    const variant = `${FOLDER}/variant.quern`;
    open(session, variant, 'recipe Plain cake\n  from    base.quern\n\n  swap butter for 200 g margarine\n');
    expect(await session.codes(variant)).not.toContain('missing-file');
    session.tell('quern/handed', { files: [], gone: [`${FOLDER}/base.quern`], larger: [] });
    expect(await session.codes(variant)).toContain('missing-file');
  });
});

test('a worker that is started twice serves each client by itself', async () => {
  const sessions = [new Session(), new Session()];
  for (const session of sessions) {
    await session.ask('initialize', { processId: null, rootUri: null, capabilities: RICH });
    session.tell('initialized', {});
    open(session, 'untitled:a.quern', TEXT);
    expect(await session.codes('untitled:a.quern')).toContain('unknown-food');
    await session.end();
  }
});
