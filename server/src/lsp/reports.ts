/**
 * Knows which findings a client that asks was given last of each document, so that the same ones again are said in a word.
 * Refuses to know how they are worked out.
 */
import type { Diagnostic, DocumentDiagnosticReport } from 'vscode-languageserver';
import type { Finding } from '../checks/finding.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Uri } from '../workspace/store.ts';

interface Reported {
  readonly resultId: string;
  readonly snapshot: Snapshot;
}

export class Reports {
  private readonly last = new Map<Uri, Reported>();
  private given = 0;
  private readonly diagnostics: (snapshot: Snapshot) => Diagnostic[];

  constructor(diagnostics: (snapshot: Snapshot) => Diagnostic[]) {
    this.diagnostics = diagnostics;
  }

  /** What is found in a snapshot; `previous` is the answer that the client still has. */
  of(snapshot: Snapshot, previous: string | undefined): DocumentDiagnosticReport {
    const last = this.last.get(snapshot.uri);
    const same = last !== undefined && saysTheSame(last.snapshot, snapshot);
    const resultId = same ? last.resultId : String(++this.given);
    // The newest snapshot shares what it can with the next one.
    this.last.set(snapshot.uri, { resultId, snapshot });
    if (same && resultId === previous) return { kind: 'unchanged', resultId };
    return { kind: 'full', resultId, items: this.diagnostics(snapshot) };
  }

  forget(uri: Uri): void {
    this.last.delete(uri);
  }
}

function saysTheSame(before: Snapshot, now: Snapshot): boolean {
  if (before === now) return true;
  // What is said of foods depends on other files too.
  if (before.outline.foods.length > 0 || now.outline.foods.length > 0) return false;
  const [old, found] = [before.findings.open, now.findings.open];
  return old === found || (old.length === found.length && old.every((finding, i) => isSame(finding, found[i])));
}

function isSame(a: Finding, b: Finding | undefined): boolean {
  if (a === b) return true;
  return (
    b !== undefined &&
    a.code === b.code &&
    a.severity === b.severity &&
    samePlace(a.at, b.at) &&
    a.said.message === b.said.message &&
    a.related.length === b.related.length &&
    a.related.every((r, i) => {
      const other = b.related[i];
      return other !== undefined && samePlace(r.at, other.at) && r.message === other.message && r.file === other.file;
    })
  );
}

const samePlace = (a: Finding['at'], b: Finding['at']): boolean =>
  a.line === b.line && a.start === b.start && a.end === b.end;
