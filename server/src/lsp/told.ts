/**
 * Knows what a client was told last of recipes, houses and problems, and tells it only what is new.
 * Refuses to know when.
 */
import { status } from '../editor/status.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Store, Uri } from '../workspace/store.ts';
import { uriOfPath } from './convert.ts';
import { houseDiagnostics } from './house-faults.ts';
import { messageVersion, type StatusParams, statusNotification } from './messages.ts';
import type { Wire } from './wire.ts';

export class Told {
  private readonly statuses = new Map<Uri, string>();
  private readonly houses = new Map<string, string>();
  private readonly problems = new Set<string>();
  private readonly store: () => Store;
  private readonly wire: Wire;

  constructor(store: () => Store, wire: Wire) {
    this.store = store;
    this.wire = wire;
  }

  forget(uri: Uri): void {
    this.statuses.delete(uri);
  }

  /** Says once what of a house could not be used. */
  tellProblems(uris: readonly Uri[]): void {
    for (const problem of uris.flatMap((uri) => this.store().problems(uri))) {
      if (this.problems.has(problem)) continue;
      this.problems.add(problem);
      this.wire.warn(problem);
    }
  }

  /** Says what the recipe comes to, where that is new. */
  tellStatus(uri: Uri): void {
    const snapshot = this.store().snapshot(uri);
    if (snapshot === undefined) return;
    const now = status(snapshot);
    const key = JSON.stringify(now);
    if (this.statuses.get(uri) === key) return;
    this.statuses.set(uri, key);
    this.wire.send(statusNotification.method, statusParams(snapshot, now));
  }

  /** Mistakes of each `quern.json`, where they are others than were told. No client asks for them: it is no recipe. */
  tellHouses(): void {
    const faults = this.store().houseFaults();
    for (const path of this.houses.keys()) {
      if (faults.has(path)) continue;
      this.houses.delete(path);
      this.wire.publish(uriOfPath(path), undefined, []);
    }
    for (const [path, found] of faults) {
      const key = JSON.stringify(found);
      if ((this.houses.get(path) ?? '[]') === key) continue;
      this.houses.set(path, key);
      this.wire.publish(uriOfPath(path), undefined, houseDiagnostics(found));
    }
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
