/**
 * Knows the findings of every file at hand, worked out when asked for, in slices between which messages are read, and kept until
 * something they rest on changes. Refuses to know who is told: `session.ts` pushes them, a feature answers a pull.
 */
import type { CancellationToken, Diagnostic } from 'vscode-languageserver';
import type { House } from '../checks/house.ts';
import { MISSING } from '../workspace/inherit/load-base.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Store, Uri } from '../workspace/store.ts';
import type { Turn } from './schedule.ts';
import { inSlices, isLong, SLICE_MS } from './slices.ts';

export interface CheckedFile {
  readonly path: string;
  readonly uri: Uri;
  readonly diagnostics: readonly Diagnostic[];
  /** The same as long as the findings are. */
  readonly id: string;
  /** The version of the text, where it is open. */
  readonly version: number | null;
}

interface Kept extends CheckedFile {
  /** The files it builds on. */
  readonly rests: readonly string[];
  /** One of those is not there. */
  readonly misses: boolean;
  readonly house: House;
}

export class FolderCheck {
  private readonly store: () => Store;
  private readonly diagnostics: (snapshot: Snapshot) => Diagnostic[];
  /** The event loop, and the clock. */
  readonly turn: Turn;
  readonly now: () => number;
  /** How often something that findings rest on has changed. */
  private changes = 0;
  private readonly kept = new Map<string, Kept>();
  /** Files whose findings may be others than whoever listed them was given. */
  private readonly doubtful = new Set<string>();

  constructor(store: () => Store, diagnostics: (snapshot: Snapshot) => Diagnostic[], turn: Turn, now: () => number) {
    this.store = store;
    this.diagnostics = diagnostics;
    this.turn = turn;
    this.now = now;
  }

  /** Every file at hand that its house does not leave out. */
  paths(): readonly string[] {
    const store = this.store();
    return store
      .index()
      .paths()
      .filter((path) => !store.leavesOut(path));
  }

  /** Each file in turn; false when it was cancelled before the last. */
  async each(
    paths: readonly string[],
    token: CancellationToken,
    visit: (file: CheckedFile, done: number) => void,
  ): Promise<boolean> {
    let started = this.now();
    for (const [i, path] of paths.entries()) {
      if (this.now() - started >= SLICE_MS) {
        await new Promise<void>((resolve) => this.turn(resolve));
        started = this.now();
      }
      if (token.isCancellationRequested) return false;
      const read = await this.readLong(path, token);
      if (token.isCancellationRequested) return false;
      const file = this.file(path, read);
      if (file !== undefined) visit(file, i + 1);
    }
    return true;
  }

  /** A long file that is to be checked, worked out while messages are read; undefined of any other, and where something changed meanwhile. */
  private async readLong(path: string, token: CancellationToken): Promise<Snapshot | undefined> {
    const store = this.store();
    if (store.snapshot(store.uriAt(path)) !== undefined || this.kept.has(path)) return undefined;
    const snapshot = store.snapshotAt(path);
    if (snapshot === undefined || !isLong(snapshot)) return snapshot;
    const { changes } = this;
    const isWanted = () => !token.isCancellationRequested && this.changes === changes;
    return (await inSlices(snapshot.workingOut(), this, isWanted)) ? snapshot : undefined;
  }

  /** Undefined when the file is not there; `read` is the file as it lies on the disk, where that is known. */
  file(path: string, read?: Snapshot): CheckedFile | undefined {
    const store = this.store();
    const open = store.snapshot(store.uriAt(path));
    const kept = open === undefined ? this.kept.get(path) : undefined;
    if (kept !== undefined) {
      if (kept.house === store.houseAt(path)) return kept;
      this.doubtful.add(path);
    }
    const snapshot = open ?? read ?? store.snapshotAt(path);
    if (snapshot === undefined) return undefined;
    const diagnostics = this.diagnostics(snapshot);
    const file: Kept = {
      path,
      uri: snapshot.uri,
      diagnostics,
      id: `${diagnostics.length}-${hashOf(JSON.stringify(diagnostics))}`,
      version: open === undefined ? null : open.version,
      rests: snapshot.written?.files ?? [],
      misses: snapshot.broken.some(({ kind }) => MISSING.has(kind)),
      house: snapshot.house,
    };
    if (open === undefined) this.kept.set(path, file);
    return file;
  }

  /** Files were typed in, changed, made or deleted. Answers those whose findings may be others now. */
  changed(paths: readonly string[]): readonly string[] {
    this.changes++;
    const store = this.store();
    const dropped = [...this.kept.values()].filter(
      (k) =>
        paths.includes(k.path) ||
        k.rests.some((p) => paths.includes(p)) ||
        // One that missed a file may have found it.
        k.misses ||
        k.house !== store.houseAt(k.path),
    );
    for (const { path } of dropped) this.kept.delete(path);
    const all = new Set([...paths, ...dropped.map(({ path }) => path), ...this.doubtful]);
    this.doubtful.clear();
    return [...all];
  }

  /** A file was opened or typed in: what builds on it, or misses one, is worked out anew when it is next asked for. */
  typed(path: string): void {
    this.changes++;
    for (const file of this.kept.values()) {
      if (!file.misses && !file.rests.includes(path)) continue;
      this.kept.delete(file.path);
      this.doubtful.add(file.path);
    }
  }

  /** Anything may be different. */
  forgetAll(): readonly string[] {
    this.changes++;
    const all = new Set([...this.kept.keys(), ...this.doubtful]);
    this.kept.clear();
    this.doubtful.clear();
    return [...all];
  }
}

/** FNV-1a. */
function hashOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}
