/**
 * Knows what a feature of the server is: what it declares, and the requests it answers from a snapshot.
 * Refuses to know any one feature.
 */
import type { CancellationToken, ServerCapabilities, WorkspaceEdit } from 'vscode-languageserver';
import type { Kitchen } from '../editor/kitchen.ts';
import type { Shown } from '../editor/shown.ts';
import type { PriceList } from '../publish/cost.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Uri } from '../workspace/store.ts';
import type { Abilities } from './capabilities.ts';
import type { CheckedFile, FolderCheck } from './folder-check.ts';
import type { Reports } from './reports.ts';

/** What a feature may use of the session. */
export interface View {
  readonly abilities: Abilities;
  /** What the editor's settings say is shown in the text. */
  readonly shown: () => Shown;
  readonly snapshot: (uri: Uri) => Snapshot | undefined;
  /** Resolves once what is found in a document is known, or nobody waits for it; messages are read meanwhile. */
  readonly workedOut: (uri: Uri, token: CancellationToken) => Promise<void>;
  /** The index of the folders, and any file as it stands. Reads the folders when asked. */
  readonly kitchen: () => Kitchen;
  /** '2026-09-14', for what a client with a clock of its own does not ask for. */
  readonly today: () => string;
  /** Another text of a file, in the file's house. */
  readonly textAt: (uri: Uri, text: string) => Snapshot;
  /** Findings of a document, of its recipe and of the foods it describes, for a client that asks for them. */
  readonly reports: Reports;
  readonly folder: FolderCheck;
  /** The prices that hold for an open text: its own, and those of its house. */
  readonly prices: (snapshot: Snapshot) => PriceList;
  /** Pushes the findings of a file that is not open, and keeps them true from then on. */
  readonly list: (file: CheckedFile) => void;
  /** Asks the client to make a change, called by its name; resolves with whether it did. */
  readonly applied: (label: string, edit: WorkspaceEdit) => Promise<boolean>;
  readonly progress: (token: string | number, value: unknown) => void;
  /** Where a document lies; undefined for one that lies nowhere. */
  readonly pathOf: (uri: Uri) => string | undefined;
  /** A file's URI as the client spells it. */
  readonly uriAt: (path: string) => Uri;
  /** Resolves when no change waits to be read. */
  readonly quiet: () => Promise<void>;
  readonly report: (feature: string, error: unknown) => void;
  /** What was answered last for a document, for answers that say only what changed. */
  readonly remembered: Map<string, Remembered>;
}

export interface Remembered {
  readonly id: string;
  readonly data: readonly number[];
}

export interface Request {
  readonly method: string;
  /** Answered where the document is not open, or the handler fails. */
  readonly empty: unknown;
  readonly uriOf: (params: unknown) => Uri | undefined;
  readonly handle: (params: unknown, view: View, token: CancellationToken) => unknown;
}

export interface Feature {
  readonly capability?: (abilities: Abilities) => ServerCapabilities;
  readonly requests: readonly Request[];
}

interface OfDocument {
  readonly textDocument: { readonly uri: Uri };
}

/** A request about an open document. */
export function onDocument<P extends OfDocument, R>(
  method: string,
  empty: R,
  handle: (snapshot: Snapshot, params: P, view: View) => R,
): Request {
  return {
    method,
    empty,
    uriOf: (params) => (params as P).textDocument.uri,
    handle: (params, view) => {
      const snapshot = view.snapshot((params as P).textDocument.uri);
      return snapshot === undefined ? empty : handle(snapshot, params as P, view);
    },
  };
}

/** Any other request. */
export function onRequest<P, R>(
  method: string,
  empty: R,
  handle: (params: P, view: View, token: CancellationToken) => R | Promise<R>,
  uriOf: (params: P) => Uri | undefined = () => undefined,
): Request {
  return {
    method,
    empty,
    uriOf: (params) => uriOf(params as P),
    handle: (params, view, token) => handle(params as P, view, token),
  };
}
