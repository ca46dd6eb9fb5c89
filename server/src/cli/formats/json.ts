/**
 * Knows findings as one JSON document, in the shape that scripts hold on to.
 */
import { findingJson } from '../../publish/finding-json.ts';
import type { CheckedFinding } from '../checked-file.ts';
import { jsonItem, jsonWith, type Printing } from './printing.ts';
import { relatedPlaces, type Shown } from './related.ts';
import type { CheckedFileJson, CheckJson, ErrorJson } from './shapes.ts';

export function json(shownAs: Shown): Printing {
  const files: string[] = [];
  const related = (finding: CheckedFinding, own: string) =>
    relatedPlaces(finding, own, shownAs).map(({ path, at, message }) => ({
      path,
      range: { start: { line: at.line, character: at.start }, end: { line: at.line, character: at.end } },
      message,
    }));
  return {
    add({ shown, state, open, accepted, known }) {
      const file: CheckedFileJson = {
        path: shown,
        state,
        findings: open.map((f) => ({
          ...findingJson(f),
          fixes: f.fixTitles,
          related: related(f, shown),
        })),
        accepted: accepted.map((f) => ({ ...findingJson(f), reason: f.reason })),
        baselined: known.map((f) => findingJson(f)),
      };
      files.push(jsonItem(file, DEPTH));
    },
    text: (summary) => {
      const document: CheckJson = { version: 1, files: [], summary };
      return jsonWith(document, 'files', files, DEPTH);
    },
  };
}

/** A file stands in the list of the document. */
const DEPTH = 2;

/** A failure, as JSON like everything else. */
export function errorJson(message: string): string {
  const document: ErrorJson = { version: 1, error: message };
  return `${JSON.stringify(document, null, 2)}\n`;
}
