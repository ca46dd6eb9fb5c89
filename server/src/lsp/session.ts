/**
 * Knows one client: what it can do, which texts it has open, what it was told last. Walks the list of features and registers each behind the fence.
 * Refuses to know any feature by name.
 */
import {
  type CancellationToken,
  type Connection,
  type Diagnostic,
  type DidChangeTextDocumentParams,
  type DidChangeWatchedFilesParams,
  type DidChangeWorkspaceFoldersParams,
  type DidCloseTextDocumentParams,
  type DidOpenTextDocumentParams,
  type DidSaveTextDocumentParams,
  type InitializeParams,
  type InitializeResult,
  ResponseError,
  type ServerCapabilities,
} from 'vscode-languageserver';
import { status } from '../editor/status.ts';
import { liesIn } from '../workspace/folders.ts';
import type { Files } from '../workspace/ports.ts';
import { DEFAULTS, readSettings, type Settings } from '../workspace/settings.ts';
import type { Change, Snapshot } from '../workspace/snapshot.ts';
import { Store, type Uri } from '../workspace/store.ts';
import { type Abilities, readAbilities, record } from './capabilities.ts';
import { diagnosticsOf, pathOfUri, readRange, uriOfPath } from './convert.ts';
import type { Feature, Remembered, Request, View } from './feature.ts';
import { FEATURES } from './features/index.ts';
import { type Fence, fenced, logFailure } from './fence.ts';
import { type CheckedFile, FolderCheck } from './folder-check.ts';
import { foodDiagnostics, houseDiagnostics } from './house-faults.ts';
import { messageVersion, type StatusParams, statusNotification } from './messages.ts';
import { Reports } from './reports.ts';
import { Schedule, type Turn, type WhenIdle } from './schedule.ts';

export interface Host {
  readonly files: Files;
  readonly turn: Turn;
  readonly whenIdle: WhenIdle;
  /** What the process can do for its machine while nobody types. */
  readonly tidy: () => void;
  /** Milliseconds, from whenever. */
  readonly now: () => number;
  /** The day where the server runs: '2026-09-14'. */
  readonly today: () => string;
  readonly version: string;
  /** In tests a handler's error is thrown again. */
  readonly rethrow: boolean;
}

/** Serves a client over a connection that is not yet listening. */
export function serve(connection: Connection, host: Host, features: readonly Feature[] = FEATURES): void {
  const session = new Session(connection, host);
  connection.onInitialize((params) => session.initialize(params, features));
  for (const { requests } of features)
    for (const request of requests)
      connection.onRequest(request.method, (params: unknown, token: CancellationToken) =>
        session.answer(request, params, token),
      );
  session.listen();
}

/** The protocol's kind of watching that tells of what goes alone. */
const DELETED = 4;

/** A file that says something; anything else that goes may be a folder. */
const isOfKitchen = (path: string): boolean => path.endsWith('.quern') || path.endsWith('quern.json');

/** The protocol's code for a request that its sender took back. */
const REQUEST_CANCELLED = -32800;
const cancelled = (): ResponseError<void> => new ResponseError(REQUEST_CANCELLED, 'cancelled');

/** Of a created or deleted file, and of a renamed one. */
interface FileOperation {
  readonly uri?: Uri;
  readonly oldUri?: Uri;
  readonly newUri?: Uri;
}

class Session {
  private readonly connection: Connection;
  private readonly host: Host;
  private readonly fence: Fence;
  private readonly schedule: Schedule;
  private readonly told = new Map<Uri, string>();
  private readonly folder: FolderCheck;
  /** Files whose findings were pushed while they were not open. */
  private readonly listed = new Set<string>();
  private readonly toldHouses = new Map<string, string>();
  private readonly warned = new Set<string>();
  private readonly remembered = new Map<string, Remembered>();
  private readonly reports = new Reports((snapshot) => this.diagnostics(snapshot));
  private abilities: Abilities = readAbilities({
    capabilities: {},
    processId: null,
    rootUri: null,
    workspaceFolders: null,
  });
  private roots = new Set<Uri>();
  private store: Store;
  private view: View;

  constructor(connection: Connection, host: Host) {
    this.connection = connection;
    this.host = host;
    this.fence = { log: (message) => connection.console.error(message), rethrow: host.rethrow };
    this.schedule = new Schedule(host.turn, host.whenIdle, {
      soon: (uri) => this.guarded('findings', uri, () => this.push(uri)),
      later: (uri) => this.guarded('status', uri, () => this.tell(uri)),
      last: host.tidy,
    });
    this.store = new Store(host.files, pathOfUri, uriOfPath);
    this.folder = new FolderCheck(
      () => this.store,
      (snapshot) => this.diagnostics(snapshot),
      host.turn,
      host.now,
    );
    this.view = this.newView();
  }

  initialize(params: InitializeParams, features: readonly Feature[]): InitializeResult {
    this.abilities = readAbilities(params);
    this.store = new Store(this.host.files, pathOfUri, uriOfPath, this.settingsIn(params.initializationOptions));
    const folders = params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri == null ? [] : [params.rootUri]);
    this.roots = new Set(folders);
    this.rooted();
    this.view = this.newView();
    const sync: ServerCapabilities = {
      positionEncoding: 'utf-16',
      textDocumentSync: { openClose: true, change: 2, save: { includeText: false } },
      workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
    };
    const declared = features.map((f) => f.capability?.(this.abilities) ?? {});
    const workspace = Object.assign({}, sync.workspace, ...declared.map((d) => d.workspace));
    return {
      capabilities: Object.assign(sync, ...declared, { workspace }),
      serverInfo: { name: 'quern', version: this.host.version },
    };
  }

  listen(): void {
    const { connection } = this;
    connection.onInitialized(() => this.started());
    this.on('textDocument/didOpen', ({ textDocument: { uri, version, text } }: DidOpenTextDocumentParams) => {
      this.dirty(this.store.opened(uri, version, text), uri);
      this.warn([uri]);
      // From here on its findings are told as it is typed.
      if (this.abilities.pullsDiagnostics && !this.showsPushedApart() && this.listed.has(pathOfUri(uri) ?? ''))
        this.publish(uri, undefined, []);
    });
    this.on(
      'textDocument/didChange',
      ({ textDocument: { uri, version }, contentChanges }: DidChangeTextDocumentParams) => {
        const changes = contentChanges.map(
          (c): Change => ('range' in c ? { range: readRange(c.range), text: c.text } : { text: c.text }),
        );
        this.dirty(this.store.changed(uri, version, changes), uri);
        this.folder.typed(pathOfUri(uri) ?? '');
      },
    );
    this.on('textDocument/didClose', ({ textDocument: { uri } }: DidCloseTextDocumentParams) => {
      const others = this.store.closed(uri);
      this.schedule.forget(uri);
      this.told.delete(uri);
      this.remembered.delete(uri);
      this.reports.forget(uri);
      if (!this.abilities.pullsDiagnostics) this.publish(uri, undefined, []);
      this.dirty(others, uri);
      this.tellHouses();
      this.relist([pathOfUri(uri)].filter((path) => path !== undefined));
    });
    this.on('textDocument/didSave', ({ textDocument: { uri } }: DidSaveTextDocumentParams) => {
      this.relist([pathOfUri(uri)].filter((path) => path !== undefined));
      // A client that watches nothing may have saved anything.
      if (this.abilities.registersWatchers) return;
      this.dirty(this.store.diskChanged(), uri);
      this.tellHouses();
    });
    this.on('workspace/didChangeWatchedFiles', ({ changes }: DidChangeWatchedFilesParams) => {
      // A folder that goes takes along all that lies in it, and no more is told.
      const paths = changes.flatMap((c) => {
        const path = pathOfUri(c.uri);
        return path === undefined ? [] : isOfKitchen(path) ? [path] : this.store.knownIn(path);
      });
      if (paths.length === 0) return;
      this.dirty(this.store.filesChanged(paths));
      this.tellHouses();
      this.relist(paths);
    });
    for (const method of ['workspace/didCreateFiles', 'workspace/didRenameFiles', 'workspace/didDeleteFiles'])
      this.on(method, ({ files }: { files: readonly FileOperation[] }) => {
        const uris = files.flatMap(({ uri, oldUri, newUri }) => [uri, oldUri, newUri]);
        const paths = uris.flatMap((of) => (of === undefined ? [] : (pathOfUri(of) ?? [])));
        // A folder takes along all that lies in it.
        const known = paths.every((path) => path.endsWith('.quern'));
        this.dirty(known ? this.store.filesChanged(paths) : this.store.diskChanged());
        this.tellHouses();
        this.relist(known ? paths : 'all');
      });
    this.on('workspace/didChangeConfiguration', ({ settings }: { settings: unknown }) => {
      if (this.abilities.configuration) this.askSettings();
      else {
        this.dirty(this.store.configured(this.settingsIn(record(settings).quern ?? settings)));
        this.relist('all');
      }
    });
  }

  async answer(request: Request, params: unknown, token: CancellationToken): Promise<unknown> {
    if (token.isCancellationRequested) return cancelled();
    const uri = request.uriOf(params);
    const version = uri === undefined ? undefined : this.store.snapshot(uri)?.version;
    try {
      const answer = await request.handle(params, this.view, token);
      return token.isCancellationRequested ? cancelled() : answer;
    } catch (error) {
      if (isRefusal(error)) throw error;
      logFailure(this.fence, request.method, version, error);
      if (this.fence.rethrow) throw error;
      return request.empty;
    }
  }

  private started(): void {
    // The protocol's library hears these itself once a client that sends them is known: the last to ask is told.
    this.on('workspace/didChangeWorkspaceFolders', ({ event }: DidChangeWorkspaceFoldersParams) => {
      for (const { uri } of event.removed) this.roots.delete(uri);
      for (const { uri } of event.added) this.roots.add(uri);
      this.rooted();
      this.tellHouses();
      this.unlist(event.removed.flatMap(({ uri }) => pathOfUri(uri) ?? []));
    });
    this.tellHouses();
    const registrations = [];
    if (this.abilities.registersWatchers)
      registrations.push({
        id: 'quern-files',
        method: 'workspace/didChangeWatchedFiles',
        registerOptions: {
          watchers: [
            { globPattern: '**/*.quern' },
            { globPattern: '**/quern.json' },
            { globPattern: '**', kind: DELETED },
          ],
        },
      });
    if (this.abilities.registersConfiguration)
      registrations.push({
        id: 'quern-settings',
        method: 'workspace/didChangeConfiguration',
        registerOptions: { section: 'quern' },
      });
    if (registrations.length > 0) this.ask('client/registerCapability', { registrations }, () => undefined);
    if (this.abilities.configuration) this.askSettings();
  }

  private askSettings(): void {
    this.ask('workspace/configuration', { items: [{ section: 'quern' }] }, (answer) => {
      const [settings] = Array.isArray(answer) ? answer : [];
      this.dirty(this.store.configured(this.settingsIn(settings)));
      this.relist('all');
    });
  }

  /** Settings of the editor; what cannot be used is logged and left out. */
  private settingsIn(value: unknown): Settings {
    const known = Object.fromEntries(
      Object.entries(record(value)).filter(
        ([key, v]) => ['measures', 'language', 'foodSafety', 'severities'].includes(key) && v !== null,
      ),
    );
    const { settings, problems } = readSettings(known, DEFAULTS);
    for (const problem of problems) this.connection.console.warn(`settings: ${problem}`);
    return settings;
  }

  /** Findings of these are worked out in the next quiet turn; `cause` is the document whose text changed. */
  private dirty(uris: readonly Uri[], cause?: Uri): void {
    this.schedule.mark(uris);
    if (cause === undefined || uris.length > 1) this.warn(uris);
    if (!uris.some((uri) => uri !== cause)) return;
    if (this.abilities.pullsDiagnostics && this.abilities.refreshesDiagnostics)
      this.ask('workspace/diagnostic/refresh', undefined, () => undefined);
    if (this.abilities.refreshesTokens) this.ask('workspace/semanticTokens/refresh', undefined, () => undefined);
  }

  /** Says once what of a house could not be used. */
  private warn(uris: readonly Uri[]): void {
    this.tellHouses();
    for (const problem of uris.flatMap((uri) => this.store.problems(uri))) {
      if (this.warned.has(problem)) continue;
      this.warned.add(problem);
      this.connection.console.warn(problem);
    }
  }

  /** Works out the newest text for a client that does not ask. */
  private push(uri: Uri): void {
    const pushes =
      !this.abilities.pullsDiagnostics || (this.showsPushedApart() && this.listed.has(pathOfUri(uri) ?? ''));
    const snapshot = pushes ? this.store.snapshot(uri) : undefined;
    if (snapshot !== undefined) this.publish(uri, snapshot.version, this.diagnostics(snapshot));
  }

  /** Says what the recipe comes to, where that is new. */
  private tell(uri: Uri): void {
    const snapshot = this.store.snapshot(uri);
    if (snapshot === undefined) return;
    const now = status(snapshot);
    const key = JSON.stringify(now);
    if (this.told.get(uri) === key) return;
    this.told.set(uri, key);
    this.send(statusNotification.method, statusParams(snapshot, now));
  }

  private diagnostics(snapshot: Snapshot): Diagnostic[] {
    for (const { check, error } of snapshot.bugs) logFailure(this.fence, `check ${check}`, snapshot.version, error);
    const foods = snapshot.outline.foods.length === 0 ? [] : this.store.foodFaults(snapshot.uri);
    return [...diagnosticsOf(snapshot, this.abilities), ...foodDiagnostics(foods)];
  }

  /** A client that pulls what it shows, and shows what is pushed of other files alone, open or not. */
  private showsPushedApart(): boolean {
    return this.abilities.pullsDiagnostics && this.abilities.checksFolderItself;
  }

  private list({ path, uri, diagnostics }: CheckedFile): void {
    const before = this.listed.has(path);
    this.listed.add(path);
    // An open file has its findings told as it is typed.
    if (this.store.snapshot(uri) !== undefined && !this.showsPushedApart()) return;
    if (diagnostics.length > 0 || before) this.publish(uri, undefined, [...diagnostics]);
  }

  /** What rests on these is worked out anew, and listed anew where it was. */
  private relist(paths: readonly string[] | 'all'): void {
    const dropped = paths === 'all' ? this.folder.forgetAll() : this.folder.changed(paths);
    const again = dropped.filter((path) => this.listed.has(path));
    if (again.length === 0) return;
    for (const path of again) {
      if (this.host.files.read(path) !== undefined) continue;
      this.listed.delete(path);
      this.publish(this.store.uriAt(path), undefined, []);
    }
    const token = { isCancellationRequested: false, onCancellationRequested: () => ({ dispose: () => undefined }) };
    this.folder
      .each(again, token, (file) => this.list(file))
      .catch((error: unknown) => logFailure(this.fence, 'relist', undefined, error));
  }

  /** Of folders that were closed, nothing is shown any more. */
  private unlist(folders: readonly string[]): void {
    const open = [...this.roots].flatMap((uri) => pathOfUri(uri) ?? []);
    for (const path of this.listed) {
      if (!folders.some((f) => liesIn(path, f)) || open.some((f) => liesIn(path, f))) continue;
      this.listed.delete(path);
      this.publish(this.store.uriAt(path), undefined, []);
    }
  }

  /** Mistakes of each `quern.json`, where they are others than were told. No client asks for them: it is no recipe. */
  private tellHouses(): void {
    const faults = this.store.houseFaults();
    for (const path of this.toldHouses.keys()) {
      if (faults.has(path)) continue;
      this.toldHouses.delete(path);
      this.publish(uriOfPath(path), undefined, []);
    }
    for (const [path, found] of faults) {
      const key = JSON.stringify(found);
      if ((this.toldHouses.get(path) ?? '[]') === key) continue;
      this.toldHouses.set(path, key);
      this.publish(uriOfPath(path), undefined, houseDiagnostics(found));
    }
  }

  private publish(uri: Uri, version: number | undefined, diagnostics: unknown[]): void {
    this.send('textDocument/publishDiagnostics', { uri, ...(version !== undefined && { version }), diagnostics });
  }

  private on<P>(method: string, handle: (params: P) => void): void {
    this.connection.onNotification(method, (params: P) => {
      this.guarded(method, undefined, () => handle(params));
    });
  }

  private guarded(feature: string, uri: Uri | undefined, run: () => void): void {
    const version = () => (uri === undefined ? undefined : this.store.snapshot(uri)?.version);
    fenced(this.fence, feature, version, run, undefined);
  }

  private send(method: string, params: unknown): void {
    this.connection.sendNotification(method, params).catch(() => undefined);
  }

  /** A client may refuse or go away; nothing depends on its answer. */
  private ask(method: string, params: unknown, then: (answer: unknown) => void): void {
    this.connection.sendRequest(method, params).then(then, (error: unknown) => {
      this.connection.console.warn(`the client did not answer ${method}: ${String(error)}`);
    });
  }

  private rooted(): void {
    this.store.rooted([...this.roots].flatMap((uri) => pathOfUri(uri) ?? []));
  }

  private newView(): View {
    return {
      abilities: this.abilities,
      snapshot: (uri) => this.store.snapshot(uri),
      kitchen: () => ({ index: this.store.index(), snapshotAt: (path) => this.store.snapshotAt(path) }),
      textAt: (uri, text) => this.store.textAt(uri, text),
      reports: this.reports,
      folder: this.folder,
      list: (file) => this.list(file),
      progress: (token, value) => this.send('$/progress', { token, value }),
      pathOf: pathOfUri,
      today: this.host.today,
      uriAt: (path) => this.store.uriAt(path),
      quiet: () => this.schedule.quiet(),
      report: (feature, error) => logFailure(this.fence, feature, undefined, error),
      remembered: this.remembered,
    };
  }
}

function statusParams(snapshot: Snapshot, now: ReturnType<typeof status>): StatusParams {
  return {
    version: messageVersion,
    uri: snapshot.uri,
    documentVersion: snapshot.version,
    findings: now.findings,
    massG: now.massG ?? null,
    yield: now.yield ?? null,
    record: now.record === undefined ? null : { ...now.record, latest: now.record.latest ?? null },
  };
}

/** An answer that says no with a reason, rather than a failure. */
function isRefusal(error: unknown): boolean {
  return error instanceof Error && 'code' in error && typeof error.code === 'number';
}
