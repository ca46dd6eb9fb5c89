/**
 * Knows what a feature of the server is: what it declares, and the requests it answers from a snapshot.
 * Refuses to know any one feature.
 */
import type { CancellationToken, ServerCapabilities } from 'vscode-languageserver';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Store, Uri } from '../workspace/store.ts';
import type { Abilities } from './capabilities.ts';

/** What a feature may use of the session. */
export interface View {
  readonly abilities: Abilities;
  readonly snapshot: (uri: Uri) => Snapshot | undefined;
  /** The files of a document's house that hold `food` blocks. Reads the folder. */
  readonly foodFiles: Store['foodFiles'];
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
