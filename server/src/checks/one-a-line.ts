/**
 * Knows what is still said where a line is not understood: one finding on the line, nothing of its part's formula, and all of safety.
 * Refuses to know any single check.
 */

import { isUnderstood } from '../recipe/list/not-understood.ts';
import { isIncomplete } from '../recipe/measures/part-measure.ts';
import type { Recipe } from '../recipe/model.ts';
import type { Finding } from './finding.ts';

/** Findings by place, without what follows from a line that is not understood. The same list where all are. */
export function understoodOnly(findings: readonly Finding[], recipe: Recipe): readonly Finding[] {
  if (isUnderstood(recipe)) return findings;
  const { parts, partsAt } = recipe;
  const unread = new Set(
    parts.flatMap(({ head, index }) => head.notUnderstood.map((line) => (partsAt[index] ?? 0) + line)),
  );
  const kept = new Map<number, Finding>();
  for (const finding of findings) {
    const { line } = finding.at;
    if (!unread.has(line) || !isOfReading(finding)) continue;
    const other = kept.get(line);
    if (other === undefined || rank(finding) < rank(other)) kept.set(line, finding);
  }
  const incomplete = new Set(parts.filter(isIncomplete).map(({ index }) => index));
  return findings.filter((finding) => {
    if (finding.check.family === 'formula') return finding.part === undefined || !incomplete.has(finding.part);
    return !isOfReading(finding) || (kept.get(finding.at.line) ?? finding) === finding;
  });
}

const isOfReading = ({ check: { family } }: Finding): boolean => family === 'reading' || family === 'bookkeeping';

/** A fault of the line itself goes before what its words are taken for, and that before what follows from them. */
const rank = ({ check }: Finding): number =>
  check.scope === 'line' && check.asks === 'faulty' ? 0 : check.family === 'reading' ? 1 : 2;
