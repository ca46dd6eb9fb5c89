/**
 * Knows how a client talks to a session in the same process, over streams, with files from memory.
 * Refuses to know the built server: that is `fake-editor.ts`.
 */
import { type PlatformPath, posix } from 'node:path';
import { PassThrough } from 'node:stream';
import {
  type CancellationToken,
  CancellationTokenSource,
  type ClientCapabilities,
  createConnection,
  createMessageConnection,
  type InitializeResult,
  type MessageConnection,
  ProposedFeatures,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import type { Feature } from '../../server/src/lsp/feature.ts';
import { serve } from '../../server/src/lsp/session.ts';
import type { Files } from '../../server/src/workspace/ports.ts';
import { OWN_CLIENT } from './fake-editor.ts';

/** Files by path, as a machine writes paths. */
export function memoryFiles(texts: Map<string, string>, { join, resolve, dirname, sep }: PlatformPath = posix): Files {
  const files = {
    read: (path: string) => texts.get(path),
    recipesBelow: (folder: string) =>
      [...texts.keys()].filter((p) => p.startsWith(folder + sep) && p.endsWith('.quern')).sort(),
    houseAbove: (path: string) => {
      const parts = path.split(sep);
      const folders = parts.map((_, n) => parts.slice(0, parts.length - n).join(sep));
      const holding = (file: string) => folders.find((folder) => texts.has(`${folder}${sep}${file}`));
      return holding('quern.json') ?? holding('foods.quern');
    },
    namesIn: (folder: string) => {
      const below = [...texts.keys()].filter((p) => p.startsWith(folder + sep)).map((p) => p.slice(folder.length + 1));
      return [...new Set(below.map((p) => p.replace(/[\\/].*$/, '/')))].sort();
    },
    join,
    beside: (path: string, name: string) => resolve(dirname(path), name),
  };
  return files;
}

export interface ClientOptions {
  readonly capabilities?: ClientCapabilities;
  readonly files?: Map<string, string>;
  /** How the machine of the files writes paths. */
  readonly paths?: PlatformPath;
  readonly initializationOptions?: unknown;
  readonly settings?: unknown;
  readonly features?: readonly Feature[];
  /** Is called when nobody types. */
  readonly tidy?: (hasReadMany: boolean) => void;
  /** False to see what a client sees of a failure. */
  readonly rethrow?: boolean;
}

export class Client {
  readonly initialized: InitializeResult;
  readonly published: PublishDiagnosticsParams[] = [];
  readonly heard: { method: string; params: unknown }[] = [];
  readonly asked: { method: string; params: unknown }[] = [];
  settings: unknown;
  private readonly connection: MessageConnection;
  private readonly pause: Readonly<Record<'idle' | 'still', () => void>>;
  private constructor(
    connection: MessageConnection,
    initialized: InitializeResult,
    settings: unknown,
    pause: Client['pause'],
  ) {
    this.connection = connection;
    this.pause = pause;
    this.initialized = initialized;
    this.settings = settings;
  }

  static async connect(options: ClientOptions = {}): Promise<Client> {
    const [up, down] = [new PassThrough(), new PassThrough()];
    let waiting: (() => void) | undefined;
    let moving: (() => void) | undefined;
    const { connection: server } = serve(
      (given) =>
        createConnection(ProposedFeatures.all, new StreamMessageReader(up), new StreamMessageWriter(down), given),
      {
        files: memoryFiles(options.files ?? new Map(), options.paths),
        handed: () => [],
        turn: setImmediate,
        pauses: {
          whenIdle: (run) => {
            waiting = run;
          },
          whenStill: (run) => {
            moving = run;
          },
        },
        tidy: options.tidy ?? (() => undefined),
        served: () => undefined,
        now: () => performance.now(),
        today: () => '2026-11-25',
        pageFile: (code) => `file:///pages/${code}.md`,
        version: 'test',
        rethrow: options.rethrow ?? true,
      },
      options.features,
    );
    server.listen();
    const connection = createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
    const early: ((client: Client) => void)[] = [];
    let client: Client | undefined;
    const tell = (say: (client: Client) => void): void => {
      if (client === undefined) early.push(say);
      else say(client);
    };
    connection.onNotification((method, params) => {
      tell((c) => {
        c.heard.push({ method, params });
        if (method === 'textDocument/publishDiagnostics')
          c.published.push(params as unknown as PublishDiagnosticsParams);
      });
    });
    connection.onUnhandledProgress((params) => tell((c) => c.heard.push({ method: '$/progress', params })));
    connection.onRequest((method, params) => {
      tell((c) => c.asked.push({ method, params }));
      return method === 'workspace/configuration' ? [client === undefined ? options.settings : client.settings] : null;
    });
    connection.listen();
    const initialized = await connection.sendRequest<InitializeResult>('initialize', {
      processId: null,
      rootUri: null,
      workspaceFolders: null,
      capabilities: options.capabilities ?? {},
      initializationOptions: options.initializationOptions ?? OWN_CLIENT,
    });
    client = new Client(connection, initialized, options.settings, {
      idle: () => {
        const run = waiting;
        waiting = undefined;
        run?.();
      },
      still: () => {
        const run = moving;
        moving = undefined;
        run?.();
      },
    });
    for (const say of early) say(client);
    await connection.sendNotification('initialized', {});
    return client;
  }

  async open(uri: string, text: string, version = 1): Promise<void> {
    await this.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'quern', version, text } });
  }

  async replace(uri: string, version: number, text: string): Promise<void> {
    await this.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges: [{ text }] });
  }

  request<R>(method: string, params: unknown, token?: CancellationToken): Promise<R> {
    return token === undefined
      ? this.connection.sendRequest<R>(method, params)
      : this.connection.sendRequest<R>(method, params, token);
  }

  /** A token for a request, and how its sender takes it back. */
  cancellable(): { readonly token: CancellationToken; readonly cancel: () => void } {
    const source = new CancellationTokenSource();
    return { token: source.token, cancel: () => source.cancel() };
  }

  notify(method: string, params: unknown): Promise<void> {
    return this.connection.sendNotification(method, params);
  }

  /** Waits until everything sent so far was read and worked out, and what can wait was done: a pull waits for a quiet turn. */
  async settled(): Promise<void> {
    await this.request('textDocument/diagnostic', { textDocument: { uri: 'nowhere:settled' } });
    await new Promise((resolve) => setImmediate(resolve));
    this.pause.idle();
    await this.request('textDocument/diagnostic', { textDocument: { uri: 'nowhere:settled' } });
  }

  /** The same, and so long that nobody is about to type on. */
  async still(): Promise<void> {
    await this.settled();
    this.pause.still();
    await this.settled();
  }

  /** Codes last pushed for a document. */
  codes(uri: string): string[] | undefined {
    return this.published.findLast((p) => p.uri === uri)?.diagnostics.map((d) => String(d.code));
  }

  close(): void {
    this.connection.dispose();
  }
}
