/**
 * Knows one client: what it can do, which texts it has open, what it was told last. Walks the list of features and registers each behind the fence.
 * Refuses to know any feature by name.
 */
import type {
  CancellationToken,
  Connection,
  ConnectionOptions,
  Diagnostic,
  DidChangeTextDocumentParams,
  DidChangeWatchedFilesParams,
  DidChangeWorkspaceFoldersParams,
  DidCloseTextDocumentParams,
  DidOpenTextDocumentParams,
  DidSaveTextDocumentParams,
  InitializeParams,
  InitializeResult,
  ServerCapabilities,
} from 'vscode-languageserver';
import { SHOWN_BY_DEFAULT, type Shown, shownIn } from '../editor/shown.ts';
import { pricesOf } from '../publish/cost.ts';
import { visible } from '../publish/visible.ts';
import { isPicture } from '../workspace/picture-files.ts';
import type { Files, HandedIn } from '../workspace/ports.ts';
import type { Settings } from '../workspace/settings.ts';
import type { Change, Snapshot } from '../workspace/snapshot.ts';
import { Store, type Uri } from '../workspace/store.ts';
import { answer } from './answer.ts';
import { type Abilities, readAbilities, record, registrationsOf, watchedFolders } from './capabilities.ts';
import { diagnosticsOf, pathOfUri, readRange, uriOfPath } from './convert.ts';
import { settingsIn } from './editor-settings.ts';
import type { Feature, Remembered, Request, View } from './feature.ts';
import { FEATURES } from './features/index.ts';
import { type Fence, fenced, logFailure } from './fence.ts';
import { FolderCheck } from './folder-check.ts';
import { Gate } from './gate.ts';
import { handedAtStart, handedIn } from './handed.ts';
import { foodDiagnostics } from './house-faults.ts';
import { Listed } from './listed.ts';
import { type HandedParams, handedNotification } from './messages.ts';
import { Reports } from './reports.ts';
import { type Pauses, Schedule, type Turn } from './schedule.ts';
import { inSlices, isLong } from './slices.ts';
import { Told } from './told.ts';
import { Wire } from './wire.ts';

export interface Host {
  readonly files: Files;
  /** Takes in files that the client hands in, and gives the paths of those that changed. */
  readonly handed: (files: HandedIn) => readonly string[];
  readonly turn: Turn;
  readonly pauses: Pauses;
  /** What the process can do for its machine while nobody types. */
  readonly tidy: (hasReadMany: boolean) => void;
  /** A client said who it is: the number of its process, where it told it. */
  readonly served: (client: number | null) => void;
  /** Milliseconds, from whenever. */
  readonly now: () => number;
  /** The day where the server runs: '2026-09-14'. */
  readonly today: () => string;
  /** The `file:` URI of a code's page, for clients without a place of their own for it. */
  readonly pageFile: (code: string) => string | undefined;
  readonly version: string;
  /** In tests a handler's error is thrown again. */
  readonly rethrow: boolean;
}

/** Serves a client over the connection that is made, which is not yet listening. */
export function serve(
  connect: (options: ConnectionOptions) => Connection,
  host: Host,
  features: readonly Feature[] = FEATURES,
): Served {
  const gate = new Gate();
  const connection = connect(gate.options);
  gate.guard(connection);
  const session = new Session(connection, host);
  connection.onInitialize((params) => session.initialize(params, features));
  for (const { requests } of features)
    for (const request of requests)
      connection.onRequest(request.method, (params: unknown, token: CancellationToken) =>
        session.answer(request, params, token),
      );
  session.listen();
  return { connection, isShut: () => gate.isShut };
}

export interface Served {
  readonly connection: Connection;
  /** Whether the client has said that it will go. */
  readonly isShut: () => boolean;
}

/** A file that says something; anything else that goes may be a folder. */
const isOfKitchen = (path: string): boolean =>
  path.endsWith('.quern') || path.endsWith('quern.json') || isPicture(path);

/** Of a created or deleted file, and of a renamed one. */
interface FileOperation {
  readonly uri?: Uri;
  readonly oldUri?: Uri;
  readonly newUri?: Uri;
}

/** Whose texts are worth to be taken out of memory at once. */
const MANY_FILES = 200;

class Session {
  private readonly connection: Connection;
  private readonly host: Host;
  private readonly fence: Fence;
  private readonly schedule: Schedule;
  private readonly wire: Wire;
  private readonly told: Told;
  private readonly folder: FolderCheck;
  private readonly listed: Listed;
  private readonly remembered = new Map<string, Remembered>();
  private shown: Shown = SHOWN_BY_DEFAULT;
  private readonly reports = new Reports((snapshot) => this.diagnostics(snapshot));
  private abilities: Abilities = readAbilities(
    { capabilities: {}, processId: null, rootUri: null, workspaceFolders: null },
    () => undefined,
  );
  private roots = new Set<Uri>();
  /** Files that were typed in, on which what is listed may rest. */
  private readonly typed = new Set<string>();
  private watchedFolders: readonly string[] = [];
  private indexed = 0;
  private store: Store;
  private view: View;

  constructor(connection: Connection, host: Host) {
    this.connection = connection;
    this.host = host;
    this.fence = { log: (message) => connection.console.error(visible(message)), rethrow: host.rethrow };
    this.schedule = new Schedule(host.turn, host.pauses, {
      soon: (uri) => this.onceWorkedOut('findings', uri, () => this.push(uri)),
      later: (uri) => {
        if (this.abilities.showsStatus) this.onceWorkedOut('status', uri, () => this.told.tellStatus(uri));
      },
      last: () => {
        this.relistTyped();
        this.guarded('watchers', undefined, () => this.watchFolders());
        host.tidy(this.hasReadMany());
      },
      still: (uri) => this.guarded('findings', uri, () => (this.store.rested(uri) ? this.dirty([uri]) : undefined)),
    });
    this.wire = new Wire(connection, this.fence);
    this.store = new Store(host.files, pathOfUri, uriOfPath);
    const store = () => this.store;
    this.told = new Told(store, this.wire);
    this.folder = new FolderCheck(store, (snapshot) => this.diagnostics(snapshot), host.turn, host.now);
    this.listed = new Listed(store, this.folder, host.files, this.wire, this.fence);
    this.view = this.newView();
  }

  initialize(params: InitializeParams, features: readonly Feature[]): InitializeResult {
    this.host.served(params.processId);
    this.abilities = readAbilities(params, this.host.pageFile);
    this.store = new Store(this.host.files, pathOfUri, uriOfPath, this.settings(params.initializationOptions));
    this.shown = shownIn(params.initializationOptions);
    const handed = handedAtStart(record(params.initializationOptions).handed);
    if (handed !== undefined) this.host.handed(handed);
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
    this.wire.on('textDocument/didOpen', ({ textDocument: { uri, version, text } }: DidOpenTextDocumentParams) => {
      this.dirty(this.store.opened(uri, version, text), uri);
      this.noteTyped(uri);
      this.warn([uri]);
      // From here on its findings are told as it is typed.
      if (this.abilities.pullsDiagnostics && !this.showsPushedApart() && this.listed.has(pathOfUri(uri) ?? ''))
        this.wire.publish(uri, undefined, []);
    });
    this.wire.on(
      'textDocument/didChange',
      ({ textDocument: { uri, version }, contentChanges }: DidChangeTextDocumentParams) => {
        const changes = contentChanges.map(
          (c): Change => ('range' in c ? { range: readRange(c.range), text: c.text } : { text: c.text }),
        );
        this.dirty(this.store.changed(uri, version, changes), uri);
        this.noteTyped(uri);
      },
    );
    this.wire.on('textDocument/didClose', ({ textDocument: { uri } }: DidCloseTextDocumentParams) => {
      const others = this.store.closed(uri);
      this.schedule.forget(uri);
      this.told.forget(uri);
      this.remembered.delete(uri);
      this.reports.forget(uri);
      if (!this.abilities.pullsDiagnostics) this.wire.publish(uri, undefined, []);
      this.dirty(others, uri);
      this.told.tellHouses();
      this.relist([pathOfUri(uri)].filter((path) => path !== undefined));
    });
    this.wire.on('textDocument/didSave', ({ textDocument: { uri } }: DidSaveTextDocumentParams) => {
      this.relist([pathOfUri(uri)].filter((path) => path !== undefined));
      // A client that watches nothing may have saved anything.
      if (this.abilities.registersWatchers) return;
      this.dirty(this.store.diskChanged(), uri);
      this.told.tellHouses();
    });
    this.wire.on('workspace/didChangeWatchedFiles', ({ changes }: DidChangeWatchedFilesParams) => {
      // A folder that goes takes along all that lies in it, and no more is told.
      const paths = changes.flatMap((c) => {
        const path = pathOfUri(c.uri);
        return path === undefined ? [] : isOfKitchen(path) ? [path] : this.store.knownIn(path);
      });
      this.changed(paths);
    });
    this.wire.on(handedNotification.method, (params: HandedParams) => this.changed(this.host.handed(handedIn(params))));
    for (const method of ['workspace/didCreateFiles', 'workspace/didRenameFiles', 'workspace/didDeleteFiles'])
      this.wire.on(method, ({ files }: { files: readonly FileOperation[] }) => {
        const uris = files.flatMap(({ uri, oldUri, newUri }) => [uri, oldUri, newUri]);
        const paths = uris.flatMap((of) => (of === undefined ? [] : (pathOfUri(of) ?? [])));
        // A folder takes along all that lies in it.
        const known = paths.every((path) => path.endsWith('.quern') || isPicture(path));
        this.dirty(known ? this.store.filesChanged(paths) : this.store.diskChanged());
        this.told.tellHouses();
        this.relist(known ? paths : 'all');
      });
    this.wire.on('workspace/didChangeConfiguration', ({ settings }: { settings: unknown }) => {
      if (this.abilities.configuration) this.askSettings();
      else this.configured(record(settings).quern ?? settings);
    });
  }

  /** Files came, changed or went. */
  private changed(paths: readonly string[]): void {
    if (paths.length === 0) return;
    this.dirty(this.store.filesChanged(paths));
    this.told.tellHouses();
    this.relist(paths);
  }

  answer(request: Request, params: unknown, token: CancellationToken): Promise<unknown> {
    return answer(request, params, token, this.view, this.fence).finally(() => this.schedule.worked());
  }

  private started(): void {
    // The protocol's library hears these itself once a client that sends them is known: the last to ask is told.
    this.wire.on('workspace/didChangeWorkspaceFolders', ({ event }: DidChangeWorkspaceFoldersParams) => {
      for (const { uri } of event.removed) this.roots.delete(uri);
      for (const { uri } of event.added) this.roots.add(uri);
      this.rooted();
      this.told.tellHouses();
      this.listed.unlist(
        event.removed.flatMap(({ uri }) => pathOfUri(uri) ?? []),
        this.folders(),
      );
    });
    this.told.tellHouses();
    const registrations = registrationsOf(this.abilities);
    if (registrations.length > 0) this.wire.ask('client/registerCapability', { registrations }, () => undefined);
    if (this.abilities.configuration) this.askSettings();
  }

  /** A folder that goes is told of by its own name alone. */
  private watchFolders(): void {
    if (!this.abilities.registersWatchers) return;
    const names = this.store.folderNames();
    const before = this.watchedFolders;
    if (names.length === before.length && names.every((name, i) => name === before[i])) return;
    this.watchedFolders = names;
    const made = watchedFolders(names);
    const gone = { unregisterations: [{ id: made.id, method: made.method }] };
    if (before.length > 0) this.wire.ask('client/unregisterCapability', gone, () => undefined);
    if (names.length > 0) this.wire.ask('client/registerCapability', { registrations: [made] }, () => undefined);
  }

  private askSettings(): void {
    this.wire.ask('workspace/configuration', { items: [{ section: 'quern' }] }, (answer) => {
      const [settings] = Array.isArray(answer) ? answer : [];
      this.configured(settings);
    });
  }

  private configured(settings: unknown): void {
    this.show(shownIn(settings));
    this.dirty(this.store.configured(this.settings(settings)));
    this.relist('all');
  }

  /** What stands in the text is asked for again where other of it is shown. */
  private show(shown: Shown): void {
    const isSame = JSON.stringify(shown) === JSON.stringify(this.shown);
    this.shown = shown;
    if (!isSame) this.refresh();
  }

  private refresh(): void {
    if (this.abilities.refreshesHints) this.wire.ask('workspace/inlayHint/refresh', undefined, () => undefined);
    if (this.abilities.refreshesLenses) this.wire.ask('workspace/codeLens/refresh', undefined, () => undefined);
  }

  /** Findings of these are worked out in the next quiet turn; `cause` is the document whose text changed. */
  private dirty(uris: readonly Uri[], cause?: Uri): void {
    this.schedule.mark(uris);
    if (cause === undefined || uris.length > 1) this.warn(uris);
    if (!uris.some((uri) => uri !== cause)) return;
    if (this.abilities.pullsDiagnostics && this.abilities.refreshesDiagnostics)
      this.wire.ask('workspace/diagnostic/refresh', undefined, () => undefined);
    if (this.abilities.refreshesTokens) this.wire.ask('workspace/semanticTokens/refresh', undefined, () => undefined);
    this.refresh();
  }

  /** Says once what of a house could not be used. */
  private warn(uris: readonly Uri[]): void {
    this.told.tellHouses();
    this.told.tellProblems(uris);
  }

  /** Works out the newest text for a client that does not ask. */
  private push(uri: Uri): void {
    const pushes =
      !this.abilities.pullsDiagnostics || (this.showsPushedApart() && this.listed.has(pathOfUri(uri) ?? ''));
    const snapshot = pushes ? this.store.snapshot(uri) : undefined;
    if (snapshot !== undefined) this.wire.publish(uri, snapshot.version, this.diagnostics(snapshot));
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

  /** At once, or, of a long text, when it has been worked out; of one that is changed meanwhile, when that is. */
  private onceWorkedOut(feature: string, uri: Uri, run: () => void): void {
    const snapshot = this.store.snapshot(uri);
    if (snapshot === undefined || !isLong(snapshot)) this.guarded(feature, uri, run);
    else
      this.workOut(uri).then(
        () => this.guarded(feature, uri, run),
        (error: unknown) => logFailure(this.fence, feature, snapshot.version, error),
      );
  }

  /** Works out what is found in an open text as it stands then, while messages are read, until nobody waits for it. */
  private async workOut(uri: Uri, token?: CancellationToken): Promise<void> {
    const isTakenBack = () => token?.isCancellationRequested === true;
    for (;;) {
      const snapshot = this.store.snapshot(uri);
      if (snapshot === undefined || !isLong(snapshot)) return;
      const isWanted = () => !isTakenBack() && this.store.snapshot(uri) === snapshot;
      if ((await inSlices(snapshot.workingOut(), this.host, isWanted)) || isTakenBack()) return;
    }
  }

  private guarded(feature: string, uri: Uri | undefined, run: () => void): void {
    const version = () => (uri === undefined ? undefined : this.store.snapshot(uri)?.version);
    fenced(this.fence, feature, version, run, undefined);
  }

  private folders(): readonly string[] {
    return [...this.roots].flatMap((uri) => pathOfUri(uri) ?? []);
  }

  private rooted(): void {
    this.store.rooted(this.folders());
  }

  private noteTyped(uri: Uri): void {
    const path = pathOfUri(uri);
    if (path === undefined) return;
    this.folder.typed(path);
    this.typed.add(path);
  }

  private relistTyped(): void {
    const paths = [...this.typed];
    this.typed.clear();
    if (paths.length > 0 && !this.listed.isEmpty) this.guarded('relist', undefined, () => this.relist(paths));
  }

  private relist(paths: readonly string[] | 'all'): void {
    this.listed.relist(paths, this.showsPushedApart());
  }

  /** Whether many files were read for the index since this was asked last. */
  private hasReadMany(): boolean {
    const before = this.indexed;
    this.indexed = this.store.indexed;
    return this.indexed - before >= MANY_FILES;
  }

  private settings(value: unknown): Settings {
    return settingsIn(value, (problem) => this.wire.warn(`settings: ${problem}`));
  }

  private newView(): View {
    return {
      abilities: this.abilities,
      shown: () => this.shown,
      snapshot: (uri) => this.store.snapshot(uri),
      workedOut: (uri, token) => this.workOut(uri, token),
      kitchen: () => {
        // Whoever asks may have many files read, and changes nothing by it.
        this.schedule.rests();
        return { index: this.store.index(), snapshotAt: (path) => this.store.snapshotAt(path) };
      },
      textAt: (uri, text) => this.store.textAt(uri, text),
      reports: this.reports,
      folder: this.folder,
      applied: (label, edit) =>
        new Promise((resolve) => {
          const heard = (answer: unknown) => resolve(record(answer).applied === true);
          this.wire.ask('workspace/applyEdit', { label, edit }, heard, () => resolve(false));
        }),
      prices: (snapshot) => {
        const { book, measures } = snapshot.house.world;
        return pricesOf([...this.store.foodOutlines(snapshot.uri), snapshot.outline], book, measures);
      },
      list: (file) => this.listed.list(file, this.showsPushedApart()),
      progress: (token, value) => this.wire.send('$/progress', { token, value }),
      pathOf: pathOfUri,
      today: this.host.today,
      uriAt: (path) => this.store.uriAt(path),
      quiet: () => this.schedule.quiet(),
      report: (feature, error) => logFailure(this.fence, feature, undefined, error),
      remembered: this.remembered,
    };
  }
}
