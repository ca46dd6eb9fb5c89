/**
 * Knows findings as one JSON document, in the shape that scripts hold on to.
 */
import { fixesOf } from '../../checks/run.ts';
import { findingJson } from '../../publish/finding-json.ts';
import type { CheckedFile, Counts } from '../commands/check.ts';

export function json(files: readonly CheckedFile[], counts: Counts): string {
  const document = {
    version: 1,
    files: files.map(({ shown, findings, known, snapshot }) => ({
      path: shown,
      findings: findings.open.map((f) => ({ ...findingJson(f), fixes: fixesOf(f, snapshot).map((fix) => fix.title) })),
      accepted: findings.accepted.map((f) => ({ ...findingJson(f), reason: f.reason })),
      baselined: known.map(findingJson),
    })),
    summary: counts,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** A failure, as JSON like everything else. */
export const errorJson = (message: string): string => `${JSON.stringify({ version: 1, error: message }, null, 2)}\n`;
