/**
 * Knows the files whose findings were pushed while they were not open, and keeps what was pushed true.
 * Refuses to know which client wants that.
 */
import { liesIn } from '../workspace/folders.ts';
import type { Files } from '../workspace/ports.ts';
import type { Store } from '../workspace/store.ts';
import { type Fence, logFailure } from './fence.ts';
import type { CheckedFile, FolderCheck } from './folder-check.ts';
import type { Wire } from './wire.ts';

export class Listed {
  private readonly paths = new Set<string>();
  private readonly store: () => Store;
  private readonly folder: FolderCheck;
  private readonly files: Files;
  private readonly wire: Wire;
  private readonly fence: Fence;

  constructor(store: () => Store, folder: FolderCheck, files: Files, wire: Wire, fence: Fence) {
    this.store = store;
    this.folder = folder;
    this.files = files;
    this.wire = wire;
    this.fence = fence;
  }

  get isEmpty(): boolean {
    return this.paths.size === 0;
  }

  has(path: string): boolean {
    return this.paths.has(path);
  }

  /** Pushes the findings of a file; `apart` is a client that shows what is pushed of an open one too. */
  list({ path, uri, diagnostics }: CheckedFile, apart: boolean): void {
    const before = this.paths.has(path);
    this.paths.add(path);
    // An open file has its findings told as it is typed.
    if (this.store().snapshot(uri) !== undefined && !apart) return;
    if (diagnostics.length > 0 || before) this.wire.publish(uri, undefined, [...diagnostics]);
  }

  /** What rests on these is worked out anew, and listed anew where it was. */
  relist(paths: readonly string[] | 'all', apart: boolean): void {
    const dropped = paths === 'all' ? this.folder.forgetAll() : this.folder.changed(paths);
    const again = dropped.filter((path) => this.paths.has(path));
    if (again.length === 0) return;
    for (const path of again) {
      const store = this.store();
      const uri = store.uriAt(path);
      // One that is open is there, whatever lies on disk.
      if (store.snapshot(uri) !== undefined) continue;
      if (this.files.read(path) !== undefined && !store.leavesOut(path)) continue;
      this.paths.delete(path);
      this.wire.publish(uri, undefined, []);
    }
    const still = again.filter((path) => this.paths.has(path));
    const token = { isCancellationRequested: false, onCancellationRequested: () => ({ dispose: () => undefined }) };
    this.folder
      .each(still, token, (file) => this.list(file, apart))
      .catch((error: unknown) => logFailure(this.fence, 'relist', undefined, error));
  }

  /** Of folders that were closed, nothing is shown any more. */
  unlist(folders: readonly string[], open: readonly string[]): void {
    for (const path of this.paths) {
      if (!folders.some((f) => liesIn(path, f)) || open.some((f) => liesIn(path, f))) continue;
      this.paths.delete(path);
      this.wire.publish(this.store().uriAt(path), undefined, []);
    }
  }
}
