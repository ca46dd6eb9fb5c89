/** What the protocol asks of a server beside its features: when it answers, what it refuses, and what it says to whom. */
import { PassThrough } from 'node:stream';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CodeAction,
  createConnection,
  createMessageConnection,
  type Diagnostic,
  type Hover,
  type MessageConnection,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
  type WorkspaceDiagnosticReport,
} from 'vscode-languageserver/node';
import { FEATURES } from '../../server/src/lsp/features/index.ts';
import { serve } from '../../server/src/lsp/session.ts';
import { SHAPES, type Shape } from '../../server/src/lsp/shapes.ts';
import { POOR, PULLING, RICH } from '../support/fake-editor.ts';
import { Client, memoryFiles } from '../support/in-process.ts';

const URI = 'file:///k/slab.quern';
const WET = `recipe Slab
part base as shortcrust
  200 g     plain flour
  100 g     butter
  150 g     water
  do Rub the butter into the flour and bring together with the water.
`;

/** A server to which nothing has been said, and what it logged. */
function newServer(): { readonly connection: MessageConnection; readonly logged: string[] } {
  const [up, down] = [new PassThrough(), new PassThrough()];
  serve(
    (given) =>
      createConnection(ProposedFeatures.all, new StreamMessageReader(up), new StreamMessageWriter(down), given),
    {
      files: memoryFiles(new Map()),
      handed: () => [],
      turn: setImmediate,
      pauses: { whenIdle: () => undefined, whenStill: () => undefined },
      tidy: () => undefined,
      served: () => undefined,
      now: () => performance.now(),
      today: () => '2026-11-25',
      pageFile: () => undefined,
      version: 'test',
      rethrow: false,
    },
  ).connection.listen();
  const connection = createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const logged: string[] = [];
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
    logged.push(message);
  });
  connection.listen();
  return { connection, logged };
}

const HELLO = { processId: null, rootUri: null, workspaceFolders: null, capabilities: {} };
const AT = { textDocument: { uri: URI }, position: { line: 0, character: 0 } };

/** The code of the error that a request is answered with. */
const codeOf = (connection: MessageConnection, method: string, params?: unknown): Promise<unknown> =>
  connection.sendRequest(method, params).then(
    () => 'answered',
    (error: { readonly code: number }) => error.code,
  );

// The codes of JSON-RPC 2.0 and of the Language Server Protocol 3.17.
const [NOT_INITIALIZED, INVALID_REQUEST, NO_METHOD, INVALID_PARAMS] = [-32002, -32600, -32601, -32602];

describe('the life of a server', () => {
  it('begins with initialize: what is asked before is refused, what is told is dropped', async () => {
    const { connection, logged } = newServer();
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: URI, languageId: 'quern', version: 1, text: WET },
    });
    for (const method of ['textDocument/hover', 'shutdown', 'no/such/method'])
      expect([method, await codeOf(connection, method, AT)]).toEqual([method, NOT_INITIALIZED]);
    await connection.sendRequest('initialize', HELLO);
    expect(await connection.sendRequest('textDocument/documentSymbol', AT)).toEqual([]);
    expect(await codeOf(connection, 'no/such/method', AT)).toBe(NO_METHOD);
    expect(logged).toEqual([]);
  });

  it('has one initialize; one with wrong parameters is none', async () => {
    const { connection } = newServer();
    for (const wrong of [
      {},
      { capabilities: null },
      { ...HELLO, capabilities: { textDocument: { hover: { contentFormat: 3 } } } },
      { ...HELLO, workspaceFolders: [{ name: 'k' }] },
    ])
      expect(await codeOf(connection, 'initialize', wrong)).toBe(INVALID_PARAMS);
    expect(await codeOf(connection, 'initialize', HELLO)).toBe('answered');
    expect(await codeOf(connection, 'initialize', HELLO)).toBe(INVALID_REQUEST);
    expect(await codeOf(connection, 'textDocument/hover', AT)).toBe('answered');
  });

  it('ends with shutdown: what is asked after is refused', async () => {
    const { connection } = newServer();
    await connection.sendRequest('initialize', HELLO);
    expect(await codeOf(connection, 'shutdown')).toBe('answered');
    for (const method of ['textDocument/hover', 'initialize', 'shutdown', 'no/such/method'])
      expect([method, await codeOf(connection, method, AT)]).toEqual([method, INVALID_REQUEST]);
  });
});

describe('wrong parameters', () => {
  it('of every request are an error of theirs, and in the log', async () => {
    const client = await Client.connect({ capabilities: RICH, rethrow: false });
    await client.open(URI, WET);
    const methods = FEATURES.flatMap(({ requests }) => requests.map(({ method }) => method));
    expect(methods.filter((method) => !Object.hasOwn(SHAPES, method))).toEqual([]);
    for (const method of methods)
      for (const wrong of [null, [], 3, ...(Object.keys(SHAPES[method] ?? {}).length > 0 ? [{}] : [])]) {
        const code = await client.request(method, wrong).then(
          () => 'answered',
          (error: { readonly code: number }) => error.code,
        );
        expect([method, wrong, code]).toEqual([method, wrong, INVALID_PARAMS]);
      }
    const log = client.heard.filter((h) => h.method === 'window/logMessage');
    for (const method of methods) expect(JSON.stringify(log)).toContain(`${method} has wrong parameters: `);
    expect(JSON.stringify(log)).not.toContain('failed');
  });

  it.each([
    ['textDocument/hover', { ...AT, position: { line: '0', character: 0 } }, 'position.line is not a number'],
    ['textDocument/hover', { ...AT, textDocument: {} }, 'textDocument.uri is not a string'],
    ['textDocument/rename', AT, 'newName is not a string'],
    ['textDocument/references', AT, 'context is not an object'],
    [
      'textDocument/codeAction',
      { textDocument: { uri: URI }, range: { start: AT.position, end: AT.position }, context: { diagnostics: 3 } },
      'context.diagnostics is not a list',
    ],
    ['workspace/willRenameFiles', { files: [{ oldUri: URI }] }, 'files[0].newUri is not a string'],
  ])('of %s are said where they are wrong', async (method, params, words) => {
    const client = await Client.connect({ capabilities: RICH, rethrow: false });
    await client.open(URI, WET);
    await expect(client.request(method, params)).rejects.toThrow(`wrong parameters: ${words}`);
  });

  it('of a notification are logged, and nothing is made of them', async () => {
    const client = await Client.connect({ capabilities: RICH, rethrow: false });
    await client.open(URI, WET);
    await client.settled();
    const before = client.published.length;
    for (const [method, params] of [
      ['textDocument/didChange', { textDocument: { uri: URI, version: 2 }, contentChanges: [{ text: 3 }] }],
      ['textDocument/didChange', { textDocument: { uri: URI, version: 2 }, contentChanges: null }],
      ['textDocument/didOpen', { textDocument: { uri: 3, version: 1, text: '' } }],
      ['textDocument/didClose', {}],
      ['workspace/didChangeWatchedFiles', { changes: [{}] }],
      ['workspace/didChangeWorkspaceFolders', { event: {} }],
      ['workspace/didRenameFiles', { files: [null] }],
    ] as const) {
      await client.notify(method, params);
      await client.settled();
      const log = client.heard.findLast((h) => h.method === 'window/logMessage');
      expect(JSON.stringify(log)).toContain(`${method} has wrong parameters: `);
    }
    expect(client.published).toHaveLength(before);
    expect(client.codes(URI)).toEqual(['dough-too-wet']);
  });
});

/** Parameters that hold what a shape asks for, with any piece of them put out of shape. */
function paramsFor(shape: Shape): fc.Arbitrary<unknown> {
  const right =
    shape === 'string'
      ? fc.oneof(fc.constantFrom(URI, 'by 2', '2026-09-14', 'quickfix', 'unused-ingredient', WET), fc.string())
      : shape === 'number'
        ? fc.oneof(fc.nat(8), fc.constantFrom(-1, 0.5, 1e9, Number.MAX_SAFE_INTEGER))
        : shape === 'boolean'
          ? fc.boolean()
          : 'each' in shape
            ? fc.array(paramsFor(shape.each as Shape), { maxLength: 3 })
            : fc.record(
                Object.fromEntries(
                  Object.entries(shape).map(([key, inner]) => [key.replace(/\?$/, ''), paramsFor(inner as Shape)]),
                ),
                { requiredKeys: [] },
              );
  return fc.oneof({ weight: 30, arbitrary: right }, { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 2 }) });
}

describe('whatever is sent', () => {
  it('is answered or refused, and nothing fails of it', async () => {
    const client = await Client.connect({ capabilities: RICH, rethrow: false });
    const methods = Object.keys(SHAPES).filter((method) => method !== 'initialize');
    const message = fc
      .constantFrom(...methods)
      .chain((method) => fc.tuple(fc.constant(method), paramsFor(SHAPES[method] ?? {})));
    const asked = new Set(FEATURES.flatMap(({ requests }) => requests.map(({ method }) => method)));
    await client.open(URI, WET);
    await fc.assert(
      fc.asyncProperty(message, async ([method, params]) => {
        if (!asked.has(method)) await client.notify(method, params);
        else {
          const code = await client.request(method, params).then(
            () => 0,
            (error: { readonly code: number }) => error.code,
          );
          // Answered, wrong parameters, refused with a reason.
          expect([0, INVALID_PARAMS, -32803]).toContain(code);
        }
        await client.settled();
        const log = client.heard.filter((h) => h.method === 'window/logMessage');
        expect(JSON.stringify(log)).not.toMatch(/failed|bug/);
        client.heard.length = 0;
      }),
      { numRuns: 600 },
    );
  });
});

describe('what is Quern’s own', () => {
  const told = async (initializationOptions: unknown) => {
    const client = await Client.connect({ capabilities: RICH, initializationOptions });
    await client.open(URI, WET.replace('  150 g', '  allow dough-too-wet because it is spooned\n  150 g'));
    await client.open('file:///k/b.quern', WET);
    await client.settled();
    const [wet] = client.published.findLast((p) => p.uri === 'file:///k/b.quern')?.diagnostics ?? [];
    const hover = await client.request<Hover>('textDocument/hover', {
      textDocument: { uri: URI },
      position: { line: 4, character: 10 },
    });
    return {
      statuses: client.heard.filter((h) => h.method === 'quern/status').length,
      href: wet?.codeDescription?.href,
      hover: (hover.contents as { readonly value: string }).value,
    };
  };

  it('is told to a client that wants it', async () => {
    const { statuses, href, hover } = await told({ status: true, pageScheme: 'quern-page' });
    expect(statuses).toBe(2);
    expect(href).toBe('quern-page:/dough-too-wet.md');
    expect(hover).toContain('(quern-page:/dough-too-wet.md)');
  });

  it.each([[{}], [null], [{ status: 'yes', pageScheme: 3 }]])(
    'is not told to another: pages are files',
    async (options) => {
      const { statuses, href, hover } = await told(options ?? {});
      expect(statuses).toBe(0);
      expect(href).toBe('file:///pages/dough-too-wet.md');
      expect(hover).toContain('(file:///pages/dough-too-wet.md)');
    },
  );
});

describe('what is done to a whole file', () => {
  it('is offered only to whoever asks for it', async () => {
    const client = await Client.connect({ capabilities: RICH });
    await client.open(
      URI,
      'recipe Paste\npart paste\n  200 g     plain flour\n  100 g     butter\n  5 g       honey\n  do Melt the butter.\n  do Stir in the plain flour.\n',
    );
    const kinds = async (only?: readonly string[]) => {
      const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
        textDocument: { uri: URI },
        range: { start: { line: 1, character: 0 }, end: { line: 5, character: 0 } },
        context: { diagnostics: [] as Diagnostic[], ...(only && { only }) },
      });
      return actions.map((a) => String(a.kind));
    };
    const isSource = (kind: string) => kind.startsWith('source.');
    expect((await kinds()).length).toBeGreaterThan(0);
    expect((await kinds()).filter(isSource)).toEqual([]);
    expect((await kinds([''])).filter(isSource)).toEqual([]);
    expect((await kinds(['quickfix', 'refactor'])).filter(isSource)).toEqual([]);
    const asked = await kinds(['source']);
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.every(isSource)).toBe(true);
  });
});

describe('a pull of the whole folder', () => {
  const folder = { event: { added: [{ uri: 'file:///k', name: 'k' }], removed: [] } };
  const files = () => new Map(Array.from({ length: 200 }, (_, n) => [`/k/${n}.quern`, WET.replace('200', `${n}`)]));

  it('says how far it is, from its beginning to its end', async () => {
    const client = await Client.connect({ capabilities: PULLING, files: files() });
    expect(client.initialized.capabilities.diagnosticProvider).toMatchObject({ workDoneProgress: true });
    await client.notify('workspace/didChangeWorkspaceFolders', folder);
    await client.request<WorkspaceDiagnosticReport>('workspace/diagnostic', {
      previousResultIds: [],
      workDoneToken: 'bar',
    });
    const told = client.heard.flatMap((h) => (h.method === '$/progress' ? [h.params] : [])) as {
      readonly token: string;
      readonly value: { readonly kind: string; readonly percentage?: number };
    }[];
    expect(told.every(({ token }) => token === 'bar')).toBe(true);
    const values = told.map(({ value }) => value);
    expect([values[0]?.kind, values.at(-1)?.kind]).toEqual(['begin', 'end']);
    const done = values.slice(1, -1).map(({ percentage }) => percentage ?? -1);
    expect(done.at(-1)).toBe(100);
    expect(done).toEqual([...new Set(done)].sort((a, b) => a - b));
  });

  it('ends when it is cancelled, and is silent where nobody asked', async () => {
    const client = await Client.connect({ capabilities: PULLING, files: files() });
    await client.notify('workspace/didChangeWorkspaceFolders', folder);
    const { token, cancel } = client.cancellable();
    const asked = client
      .request('workspace/diagnostic', { previousResultIds: [], workDoneToken: 'bar' }, token)
      .catch(() => undefined);
    while (!client.heard.some((h) => h.method === '$/progress')) await new Promise((resolve) => setImmediate(resolve));
    cancel();
    await asked;
    await client.settled();
    const kinds = () =>
      client.heard.flatMap((h) =>
        h.method === '$/progress' ? [(h.params as { readonly value: { readonly kind: string } }).value.kind] : [],
      );
    expect(kinds().at(-1)).toBe('end');
    const before = kinds().length;
    await client.request('workspace/diagnostic', { previousResultIds: [] });
    expect(kinds()).toHaveLength(before);
  });
});

describe('what a client is to watch', () => {
  const globs = (client: Client) =>
    client.asked.flatMap(({ method, params }) =>
      method !== 'client/registerCapability'
        ? []
        : (
            params as {
              readonly registrations: readonly {
                readonly id: string;
                readonly registerOptions: { readonly watchers?: readonly { readonly globPattern: string }[] };
              }[];
            }
          ).registrations.map(({ id, registerOptions }) => [
            id,
            (registerOptions.watchers ?? []).map(({ globPattern }) => globPattern),
          ]),
    );

  it('is recipes, houses, and the folders in which recipes are known, by name', async () => {
    const files = new Map([
      ['/k/a.quern', WET],
      ['/k/pastry/[old] tarts/b.quern', WET],
    ]);
    const client = await Client.connect({ capabilities: RICH, files });
    await client.settled();
    expect(globs(client)).toContainEqual([
      'quern-files',
      ['**/*.quern', '**/quern.json', '**/*.{jpg,JPG,jpeg,JPEG,png,PNG,webp,WEBP,avif,AVIF}'],
    ]);
    await client.notify('workspace/didChangeWorkspaceFolders', {
      event: { added: [{ uri: 'file:///k', name: 'k' }], removed: [] },
    });
    await client.request('workspace/symbol', { query: '' });
    await client.open('file:///k/a.quern', WET);
    await client.settled();
    expect(globs(client).at(-1)).toEqual(['quern-folders', ['**/?old? tarts', '**/pastry']]);
    // Nothing is registered again while they are the same.
    const before = client.asked.length;
    await client.replace('file:///k/a.quern', 2, WET);
    await client.settled();
    expect(client.asked).toHaveLength(before);
    files.delete('/k/pastry/[old] tarts/b.quern');
    await client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: 'file:///k/pastry', type: 3 }] });
    await client.request('workspace/symbol', { query: '' });
    await client.replace('file:///k/a.quern', 3, WET);
    await client.settled();
    expect(client.asked.at(-1)).toMatchObject({
      method: 'client/unregisterCapability',
      params: { unregisterations: [{ id: 'quern-folders' }] },
    });
  });

  it('is nothing where it watches nothing', async () => {
    const client = await Client.connect({ capabilities: POOR, files: new Map([['/k/sub/a.quern', WET]]) });
    await client.open('file:///k/sub/a.quern', WET);
    await client.settled();
    expect(client.asked).toEqual([]);
  });
});

describe('memory', () => {
  it('is given back once many files were read for a question that changed nothing', async () => {
    const files = new Map([['/k/quern.json', '{}']]);
    for (let i = 0; i < 300; i++) files.set(`/k/r${i}.quern`, `recipe Cake ${i}\n`);
    const tidied: boolean[] = [];
    const client = await Client.connect({ files, tidy: (hasReadMany) => tidied.push(hasReadMany) });
    await client.open('file:///k/r1.quern', 'recipe Cake\n');
    await client.still();
    await client.request('workspace/symbol', { query: 'cake' });
    await client.still();
    await client.request('workspace/symbol', { query: 'cake' });
    await client.still();
    expect(tidied.slice(-2)).toEqual([true, false]);
  });
});
