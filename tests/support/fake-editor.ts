/**
 * Knows how an editor talks to the built server over stdio: it keeps its own texts, sends what is typed, and applies what is answered.
 * Refuses to know Quern's code; a wait that fails prints the session so far.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import {
  type ClientCapabilities,
  type CodeAction,
  type CompletionItem,
  type CompletionList,
  createMessageConnection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  type Hover,
  type InitializeResult,
  type MessageConnection,
  type Position,
  type PublishDiagnosticsParams,
  type Range,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const SERVER = `${ROOT}dist/server.js`;
export const NODE = process.env.QUERN_NODE ?? `${ROOT}node_modules/.bin/node`;

/** What a full client declares. */
export const RICH: ClientCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  workspace: {
    configuration: true,
    workspaceFolders: true,
    workspaceEdit: { documentChanges: true, snippetEditSupport: true },
    didChangeConfiguration: { dynamicRegistration: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    diagnostics: { refreshSupport: true },
    semanticTokens: { refreshSupport: true },
  },
  textDocument: {
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown', 'plaintext'] } },
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: ['', 'quickfix', 'refactor', 'source'] } },
      isPreferredSupport: true,
      dataSupport: true,
      resolveSupport: { properties: ['edit'] },
    },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    publishDiagnostics: {
      relatedInformation: true,
      versionSupport: true,
      codeDescriptionSupport: true,
      dataSupport: true,
    },
    rename: { prepareSupport: true },
  },
};

/** The same, and it asks for findings itself. */
export const PULLING: ClientCapabilities = {
  ...RICH,
  textDocument: { ...RICH.textDocument, diagnostic: { dynamicRegistration: false, relatedDocumentSupport: false } },
};

/** A client that can next to nothing. */
export const POOR: ClientCapabilities = {};

/** What Quern's own client says that it shows; a test of other clients gives other options. */
export const OWN_CLIENT = { status: true, pageScheme: 'quern-page' };

export interface EditorOptions {
  readonly capabilities?: ClientCapabilities;
  /** The `quern` section, answered when asked for. */
  readonly settings?: unknown;
  readonly initializationOptions?: unknown;
  readonly root?: string;
}

const PATIENCE_MS = 10_000;

export class FakeEditor {
  readonly texts = new Map<string, TextDocument>();
  readonly published: PublishDiagnosticsParams[] = [];
  readonly notified: { method: string; params: unknown }[] = [];
  readonly asked: { method: string; params: unknown }[] = [];
  readonly log: string[] = [];
  settings: unknown;
  private readonly child: ChildProcess;
  private readonly connection: MessageConnection;
  private readonly exited: Promise<number | null>;
  private waiters: (() => void)[] = [];

  private constructor(child: ChildProcess, connection: MessageConnection, settings: unknown) {
    this.child = child;
    this.connection = connection;
    this.settings = settings;
    this.exited = new Promise((resolve) => child.on('exit', resolve));
  }

  static async start(options: EditorOptions = {}): Promise<FakeEditor & { readonly initialized: InitializeResult }> {
    const { capabilities = RICH, settings = null, initializationOptions = OWN_CLIENT, root } = options;
    const child = spawn(NODE, [SERVER, '--stdio'], { env: { ...process.env, QUERN_RETHROW: '1' } });
    if (child.stdout === null || child.stdin === null) throw new Error('the server has no streams');
    const connection = createMessageConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    const editor = new FakeEditor(child, connection, settings);
    child.stderr?.on('data', (data) => editor.note(`stderr: ${data}`));
    connection.onNotification((method, params) => {
      editor.note(`<- ${method} ${JSON.stringify(params).slice(0, 300)}`);
      editor.notified.push({ method, params });
      if (method === 'textDocument/publishDiagnostics')
        editor.published.push(params as unknown as PublishDiagnosticsParams);
      editor.wake();
    });
    connection.onRequest((method, params) => {
      editor.note(`<- ${method} ${JSON.stringify(params)}`);
      editor.asked.push({ method, params });
      editor.wake();
      return method === 'workspace/configuration' ? [editor.settings] : null;
    });
    connection.listen();
    const initialized = await connection.sendRequest<InitializeResult>('initialize', {
      processId: process.pid,
      rootUri: root ?? null,
      capabilities,
      initializationOptions,
      workspaceFolders: root === undefined ? null : [{ uri: root, name: 'kitchen' }],
    });
    await connection.sendNotification('initialized', {});
    return Object.assign(editor, { initialized });
  }

  async open(uri: string, text: string, version = 1): Promise<void> {
    this.texts.set(uri, TextDocument.create(uri, 'quern', version, text));
    await this.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'quern', version, text } });
  }

  /** Replaces the only occurrence of `old` and sends just that. */
  async type(uri: string, old: string, text: string): Promise<void> {
    await this.change(uri, [{ range: this.rangeOf(uri, old), text }]);
  }

  async change(
    uri: string,
    contentChanges: readonly ({ range: Range; text: string } | { text: string })[],
  ): Promise<void> {
    const document = this.document(uri);
    const version = document.version + 1;
    TextDocument.update(document, [...contentChanges], version);
    await this.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges });
  }

  async save(uri: string): Promise<void> {
    await this.notify('textDocument/didSave', { textDocument: { uri } });
  }

  async close(uri: string): Promise<void> {
    this.texts.delete(uri);
    await this.notify('textDocument/didClose', { textDocument: { uri } });
  }

  text(uri: string): string {
    return this.document(uri).getText();
  }

  /** The findings pushed for the newest version. */
  async findings(uri: string): Promise<Diagnostic[]> {
    const { version } = this.document(uri);
    const found = await this.until(`findings of version ${version}`, () =>
      this.published.findLast((p) => p.uri === uri && p.version === version),
    );
    return found.diagnostics;
  }

  async codes(uri: string): Promise<string[]> {
    return (await this.findings(uri)).map((d) => String(d.code));
  }

  pull(uri: string, previousResultId?: string): Promise<DocumentDiagnosticReport> {
    return this.request('textDocument/diagnostic', {
      textDocument: { uri },
      ...(previousResultId && { previousResultId }),
    });
  }

  hover(uri: string, needle: string): Promise<Hover | null> {
    return this.request('textDocument/hover', { textDocument: { uri }, position: this.middleOf(uri, needle) });
  }

  async completion(uri: string, position: Position): Promise<CompletionItem[]> {
    const answer = await this.request<CompletionList | CompletionItem[] | null>('textDocument/completion', {
      textDocument: { uri },
      position,
    });
    return answer === null ? [] : Array.isArray(answer) ? answer : answer.items;
  }

  codeActions(uri: string, range: Range, only?: string[], diagnostics: Diagnostic[] = []): Promise<CodeAction[]> {
    return this.request('textDocument/codeAction', {
      textDocument: { uri },
      range,
      context: { diagnostics, ...(only && { only }) },
    });
  }

  resolve(action: CodeAction): Promise<CodeAction> {
    return this.request('codeAction/resolve', action);
  }

  /** Makes the edit as an editor does, and sends it. Refuses one that was made for another version. */
  async apply(edit: WorkspaceEdit): Promise<void> {
    for (const change of edit.documentChanges ?? []) {
      if (!('edits' in change)) throw new Error('only texts are edited');
      const document = this.document(change.textDocument.uri);
      if (change.textDocument.version !== document.version) throw new Error('the edit is for another version');
      const edits = change.edits.map(
        (e): TextEdit =>
          'snippet' in e
            ? { range: e.range, newText: withoutStops(e.snippet.value) }
            : { range: e.range, newText: e.newText },
      );
      await this.applyEdits(document.uri, edits);
    }
    for (const [uri, edits] of Object.entries(edit.changes ?? {})) await this.applyEdits(uri, edits);
  }

  async applyEdits(uri: string, edits: TextEdit[]): Promise<void> {
    const document = this.document(uri);
    const ordered = edits
      .map((edit, i) => ({ edit, i }))
      .sort((a, b) => document.offsetAt(b.edit.range.start) - document.offsetAt(a.edit.range.start) || b.i - a.i)
      .map(({ edit }) => ({ range: edit.range, text: edit.newText }));
    await this.change(uri, ordered);
  }

  request<R>(method: string, params: unknown): Promise<R> {
    this.note(`-> ${method} ${JSON.stringify(params).slice(0, 300)}`);
    return this.connection.sendRequest<R>(method, params);
  }

  async notify(method: string, params: unknown): Promise<void> {
    this.note(`-> ${method} ${JSON.stringify(params).slice(0, 300)}`);
    await this.connection.sendNotification(method, params);
  }

  rangeOf(uri: string, needle: string): Range {
    const document = this.document(uri);
    const at = document.getText().indexOf(needle);
    if (at < 0 || document.getText().indexOf(needle, at + 1) >= 0) throw new Error(`not found just once: ${needle}`);
    return { start: document.positionAt(at), end: document.positionAt(at + needle.length) };
  }

  middleOf(uri: string, needle: string): Position {
    const document = this.document(uri);
    return document.positionAt(document.offsetAt(this.rangeOf(uri, needle).start) + Math.floor(needle.length / 2));
  }

  /** Waits for what a message of the server makes true. */
  async until<T>(what: string, ready: () => T | undefined): Promise<T> {
    const end = Date.now() + PATIENCE_MS;
    for (;;) {
      const found = ready();
      if (found !== undefined) return found;
      const left = end - Date.now();
      if (left <= 0) throw new Error(`no ${what}; the session was:\n${this.log.join('\n')}`);
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, left);
        this.waiters.push(() => {
          clearTimeout(timer);
          resolve();
        });
      });
    }
  }

  /** Shuts the server down as the protocol says; answers its exit code. */
  async stop(): Promise<number | null> {
    await this.connection.sendRequest('shutdown');
    await this.connection.sendNotification('exit');
    const code = await this.exited;
    this.connection.dispose();
    return code;
  }

  /** Exits without a shutdown, for the end of a test that failed. */
  kill(): void {
    this.child.kill();
  }

  private document(uri: string): TextDocument {
    const document = this.texts.get(uri);
    if (document === undefined) throw new Error(`not open: ${uri}`);
    return document;
  }

  private note(line: string): void {
    this.log.push(line);
  }

  private wake(): void {
    const { waiters } = this;
    this.waiters = [];
    for (const wake of waiters) wake();
  }
}

const withoutStops = (snippet: string): string =>
  snippet
    .replace(/\$\{\d+:([^}]*)\}/g, '$1')
    .replace(/\$\{?\d+\}?/g, '')
    .replace(/\\([$}\\])/g, '$1');
