/**
 * Knows the fixes that stand on the page: those worth offering, each with what its measure comes to. To try them takes long, so while
 * somebody types they are as they were tried last, for as long as the same is said of the same line.
 */
import type { Finding } from '../../checks/finding.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Line } from '../../notation/tree.ts';
import type { ViewFix } from '../../publish/view/finding.ts';
import { offeredFixes } from '../../workspace/offered.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { measureAfter } from './turned.ts';

interface Tried {
  /** A line outlives the texts that it stands in. */
  readonly in: WeakRef<Snapshot>;
  readonly fixes: readonly ViewFix[];
}

/** By what is said of a line, which is the same object until it is touched. */
const TRIED = keptOn<Line, Map<string, Tried>>();

/** As they were tried last; none where they never were. */
export const fixesTold = (finding: Finding, snapshot: Snapshot): readonly ViewFix[] =>
  triedOn(finding, snapshot)?.get(keyOf(finding))?.fixes ?? [];

/** Tried in the text as it stands. */
export function fixesTried(finding: Finding, snapshot: Snapshot): readonly ViewFix[] {
  const tried = triedOn(finding, snapshot);
  const before = tried?.get(keyOf(finding));
  if (before?.in.deref() === snapshot) return before.fixes;
  const fixes = offeredFixes(finding, snapshot).map((fix) => {
    const after = measureAfter(snapshot, finding, fix);
    return { title: fix.title, after: () => after };
  });
  // Of what was said otherwise before, nothing is asked again.
  for (const [key, { in: older }] of tried ?? []) if (older.deref() !== snapshot) tried?.delete(key);
  tried?.set(keyOf(finding), { in: new WeakRef(snapshot), fixes });
  return fixes;
}

/** Undefined for a finding that stands on no line. */
function triedOn({ at }: Finding, { document }: Snapshot): Map<string, Tried> | undefined {
  const line = document.lines[at.line];
  if (line === undefined) return undefined;
  const tried = TRIED.get(line) ?? new Map<string, Tried>();
  TRIED.set(line, tried);
  return tried;
}

const keyOf = ({ code, at, said }: Finding): string => `${code} ${at.start} ${said.message}`;
