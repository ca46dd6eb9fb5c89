/**
 * Knows findings as one JSON document, in the shape that scripts hold on to.
 */
import type { CheckedFile } from '../checked-file.ts';
import type { Counts } from './pretty.ts';

export function json(files: readonly CheckedFile[], counts: Counts): string {
  const document = {
    version: 1,
    files: files.map(({ shown, state, open, accepted, known }) => ({
      path: shown,
      state,
      findings: open.map((f) => ({ ...f.json, fixes: f.fixes.map((fix) => fix.title) })),
      accepted: accepted.map((f) => ({ ...f.json, reason: f.reason })),
      baselined: known.map((f) => f.json),
    })),
    summary: counts,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** A failure, as JSON like everything else. */
export const errorJson = (message: string): string => `${JSON.stringify({ version: 1, error: message }, null, 2)}\n`;
