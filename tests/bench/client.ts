/**
 * Knows one server's process over stdio and one file open in it: how to edit it and what to ask. Refuses to wait for ever:
 * every question has a time limit, and every process that was started is killed at the latest when this one ends.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import {
  type ClientCapabilities,
  createMessageConnection,
  type DocumentDiagnosticReport,
  type InitializeResult,
  type MessageConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type WorkspaceDiagnosticReport,
} from 'vscode-languageserver-protocol/node';
import type { Edit, Place } from './cases.ts';
import { mainThreadMs, privateMb, residentMb, threadsMs } from './memory.ts';
import type { ServerUnderTest } from './servers.ts';

/** A server that was asked and did not answer in time, refused, or is gone. */
export class NoAnswer extends Error {}

const CAPABILITIES: ClientCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  workspace: { workspaceEdit: { documentChanges: true }, diagnostics: { refreshSupport: false } },
  textDocument: {
    synchronization: { didSave: true },
    diagnostic: { relatedDocumentSupport: false },
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown', 'plaintext'] } },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    formatting: {},
  },
};

/** One that only takes findings as they are pushed. */
const PUSHED: ClientCapabilities = {
  ...CAPABILITIES,
  textDocument: { publishDiagnostics: { relatedInformation: true, versionSupport: true } },
};

const running = new Set<ChildProcess>();
process.on('exit', () => {
  for (const child of running) child.kill('SIGKILL');
});

export class Client {
  /** Whether findings are asked for; else they are waited for. */
  readonly pulls: boolean;
  private readonly server: ServerUnderTest;
  private readonly child: ChildProcess;
  private readonly connection: MessageConnection;
  private readonly gone: Promise<never>;
  private readonly published: ((findings: number) => void)[] = [];
  private readonly limitMs: number;
  private version = 1;
  /** By document, what its findings were told under last. */
  private readonly resultIds = new Map<string, string>();
  private found = 0;

  private constructor(server: ServerUnderTest, limitMs: number, pulls: boolean) {
    this.server = server;
    this.limitMs = limitMs;
    this.pulls = pulls;
    const child = spawn(process.execPath, [...server.args], {
      stdio: ['pipe', 'pipe', 'ignore'],
      ...(server.env && { env: { ...process.env, ...server.env } }),
    });
    const { stdin, stdout } = child;
    if (stdin === null || stdout === null) throw new Error('a child without pipes');
    this.child = child;
    running.add(child);
    this.gone = new Promise((_, reject) => {
      child.once('error', (error) => reject(new NoAnswer(error.message)));
      child.once('exit', (code, signal) => {
        running.delete(child);
        reject(new NoAnswer(`the server ended with ${code ?? signal ?? 'nothing'}`));
      });
    });
    this.gone.catch(() => undefined);
    stdin.on('error', () => undefined);
    this.connection = createMessageConnection(new StreamMessageReader(stdout), new StreamMessageWriter(stdin));
    this.connection.onError(() => undefined);
    this.connection.onRequest((_method: string, params: unknown) =>
      isItems(params) ? params.items.map(() => null) : null,
    );
    this.connection.onNotification(
      'textDocument/publishDiagnostics',
      ({ version, diagnostics }: PublishDiagnosticsParams) => {
        if (version !== undefined && version !== this.version) return;
        for (const resolve of this.published.splice(0)) resolve(diagnostics.length);
      },
    );
    this.connection.listen();
  }

  /** A server that is initialised. Findings are pulled unless it cannot, or `pulls` says not to. */
  static async start(server: ServerUnderTest, limitMs: number, pulls = true): Promise<Client> {
    const client = new Client(server, limitMs, pulls);
    try {
      const { capabilities } = await client.ask<InitializeResult>('initialize', {
        processId: process.pid,
        rootUri: server.rootUri ?? null,
        workspaceFolders: server.rootUri === undefined ? null : [{ uri: server.rootUri, name: 'bench' }],
        capabilities: pulls ? CAPABILITIES : PUSHED,
        ...(server.initializationOptions !== undefined && { initializationOptions: server.initializationOptions }),
      });
      if (!pulls || capabilities.diagnosticProvider !== undefined) {
        client.tell('initialized', {});
        if (server.settings !== undefined)
          client.tell('workspace/didChangeConfiguration', { settings: server.settings });
        return client;
      }
    } catch (error) {
      await client.stop();
      throw error;
    }
    await client.stop();
    return Client.start(server, limitMs, false);
  }

  /** Opens the text and resolves with the number of findings. */
  open(text: string): Promise<number> {
    const { languageId, uri } = this.server;
    this.tell('textDocument/didOpen', { textDocument: { uri, languageId, version: this.version, text } });
    return this.findings();
  }

  edit({ line, character, length, text }: Edit): void {
    this.version++;
    const range = { start: { line, character }, end: { line, character: character + length } };
    this.tell('textDocument/didChange', {
      textDocument: { uri: this.server.uri, version: this.version },
      contentChanges: [{ range, text }],
    });
  }

  /** The number of findings in the newest text. */
  async findings(): Promise<number> {
    if (!this.pulls) return this.within(new Promise((resolve) => this.published.push(resolve)));
    const report = await this.pull(this.server.uri);
    if (report.kind === 'full') this.found = report.items.length;
    return this.found;
  }

  /** Opens another file beside the one that is edited; its findings are not waited for. */
  /** Another file was saved, as an editor that looks on tells it. */
  changed(uri: string): void {
    this.tell('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });
  }

  openBeside(uri: string, text: string): void {
    this.tell('textDocument/didOpen', { textDocument: { uri, languageId: this.server.languageId, version: 1, text } });
  }

  /** Pulls the findings of several open files, all asked for at once; resolves with how many are others than before. */
  async findingsOf(uris: readonly string[]): Promise<number> {
    const reports = await Promise.all(uris.map((uri) => this.pull(uri)));
    return reports.filter(({ kind }) => kind === 'full').length;
  }

  /** The same for every file of the folder, open or not. */
  async findingsOfFolder(): Promise<number> {
    const previousResultIds = [...this.resultIds].map(([uri, value]) => ({ uri, value }));
    const { items } = await this.ask<WorkspaceDiagnosticReport>('workspace/diagnostic', { previousResultIds });
    for (const { uri, resultId } of items) if (resultId !== undefined) this.resultIds.set(uri, resultId);
    return items.filter(({ kind }) => kind === 'full').length;
  }

  /** The number of names in the folder that hold the words. */
  async namesLike(query: string): Promise<number> {
    return ((await this.ask<readonly unknown[] | null>('workspace/symbol', { query })) ?? []).length;
  }

  /** These three resolve with whether there was something in the answer: an empty one may be a quick one. */
  async symbols(): Promise<boolean> {
    return holdsItems(await this.ask<unknown>('textDocument/documentSymbol', this.document));
  }

  async hover(position: Place): Promise<boolean> {
    return (await this.ask<unknown>('textDocument/hover', { ...this.document, position })) !== null;
  }

  async completion(position: Place): Promise<boolean> {
    const answer = await this.ask<unknown>('textDocument/completion', { ...this.document, position });
    return holdsItems(isItems(answer) ? answer.items : answer);
  }

  /** A file that is laid out already is answered with no edits. */
  async format(): Promise<boolean> {
    const options = { tabSize: 2, insertSpaces: true };
    return Array.isArray(await this.ask<unknown>('textDocument/formatting', { ...this.document, options }));
  }

  /** Milliseconds that its main thread has worked so far: no other process that wants the processor lengthens them. */
  workedMs(): number {
    return (this.child.pid === undefined ? undefined : mainThreadMs(this.child.pid)) ?? performance.now();
  }

  /** The memory of the process that is resident now, once it has been left alone for a moment. */
  async memoryMb(): Promise<number> {
    await new Promise((resolve) => setTimeout(resolve, 300));
    const mb = this.child.pid === undefined ? undefined : residentMb(this.child.pid);
    if (mb === undefined) throw new NoAnswer('its memory cannot be read here');
    return mb;
  }

  /** Milliseconds that all its threads have worked so far. */
  cpuMs(): number {
    const ms = this.child.pid === undefined ? undefined : threadsMs(this.child.pid);
    if (ms === undefined) throw new NoAnswer('its work cannot be read here');
    return ms;
  }

  /** Memory that is its own alone: without the pages of programs that others have in common, once it has been left alone for a moment. */
  async privateMb(): Promise<number> {
    await new Promise((resolve) => setTimeout(resolve, 1000));
    const mb = this.child.pid === undefined ? undefined : privateMb(this.child.pid);
    if (mb === undefined) throw new NoAnswer('its memory cannot be read here');
    return mb;
  }

  async stop(): Promise<void> {
    this.connection.dispose();
    this.child.kill('SIGKILL');
    await this.gone.catch(() => undefined);
  }

  private get document() {
    return { textDocument: { uri: this.server.uri } };
  }

  private async pull(uri: string): Promise<DocumentDiagnosticReport> {
    const previousResultId = this.resultIds.get(uri);
    const report = await this.ask<DocumentDiagnosticReport>('textDocument/diagnostic', {
      textDocument: { uri },
      ...(previousResultId !== undefined && { previousResultId }),
    });
    if (report.resultId !== undefined) this.resultIds.set(uri, report.resultId);
    return report;
  }

  ask<T>(method: string, params: unknown): Promise<T> {
    return this.within(this.connection.sendRequest<T>(method, params));
  }

  tell(method: string, params: unknown): void {
    this.connection.sendNotification(method, params).catch(() => undefined);
  }

  private async within<T>(answer: Promise<T>): Promise<T> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new NoAnswer(`nothing within ${this.limitMs} ms`)), this.limitMs);
    });
    try {
      return await Promise.race([answer, late, this.gone]);
    } catch (error) {
      throw error instanceof NoAnswer ? error : new NoAnswer(error instanceof Error ? error.message : String(error));
    } finally {
      clearTimeout(timer);
    }
  }
}

function isItems(value: unknown): value is { readonly items: readonly unknown[] } {
  return typeof value === 'object' && value !== null && 'items' in value && Array.isArray(value.items);
}

const holdsItems = (answer: unknown): boolean => Array.isArray(answer) && answer.length > 0;
