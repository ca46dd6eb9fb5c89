/**
 * Knows findings as one JSON document, in the shape that scripts hold on to.
 */
import { findingJson } from '../../publish/finding-json.ts';
import type { CheckedFile, CheckedFinding } from '../checked-file.ts';
import type { Counts } from './pretty.ts';
import { relatedPlaces, type Shown } from './related.ts';
import type { CheckJson, ErrorJson } from './shapes.ts';

export function json(files: readonly CheckedFile[], counts: Counts, shownAs: Shown): string {
  const related = (finding: CheckedFinding, own: string) =>
    relatedPlaces(finding, own, shownAs).map(({ path, at, message }) => ({
      path,
      range: { start: { line: at.line, character: at.start }, end: { line: at.line, character: at.end } },
      message,
    }));
  const document: CheckJson = {
    version: 1,
    files: files.map(({ shown, state, open, accepted, known }) => ({
      path: shown,
      state,
      findings: open.map((f) => ({
        ...findingJson(f),
        fixes: f.fixTitles,
        related: related(f, shown),
      })),
      accepted: accepted.map((f) => ({ ...findingJson(f), reason: f.reason })),
      baselined: known.map((f) => findingJson(f)),
    })),
    summary: counts,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** A failure, as JSON like everything else. */
export function errorJson(message: string): string {
  const document: ErrorJson = { version: 1, error: message };
  return `${JSON.stringify(document, null, 2)}\n`;
}
