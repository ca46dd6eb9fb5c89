/**
 * Knows the fixes that stand on the page: those worth offering, each with what its measure comes to. To try them takes long, so while
 * somebody types they are as they were tried last, for as long as the same was found.
 */
import type { Finding } from '../../checks/finding.ts';
import { keptOn } from '../../notation/kept.ts';
import type { ViewFix } from '../../publish/view/finding.ts';
import { offeredFixes } from '../../workspace/offered.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { measureAfter } from './turned.ts';

interface Tried {
  readonly in: Snapshot;
  readonly fixes: readonly ViewFix[];
}

/** By what was found. */
const TRIED = keptOn<object, Tried>();

/** As they were tried last; none where they never were. */
export const fixesTold = ({ found }: Finding): readonly ViewFix[] => TRIED.get(found)?.fixes ?? [];

/** Tried in the text as it stands. */
export function fixesTried(finding: Finding, snapshot: Snapshot): readonly ViewFix[] {
  const before = TRIED.get(finding.found);
  if (before?.in === snapshot) return before.fixes;
  const fixes = offeredFixes(finding, snapshot).map((fix) => {
    const after = measureAfter(snapshot, finding, fix);
    return { title: fix.title, after: () => after };
  });
  TRIED.set(finding.found, { in: snapshot, fixes });
  return fixes;
}
