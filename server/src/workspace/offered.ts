/**
 * Knows which fixes of a finding are worth offering: those that take it away and bring no other, tried on the file as it is.
 * Refuses to choose among them, and to know who asks.
 */
import type { Fix } from '../checks/check.ts';
import { type Finding, fixesOf } from '../checks/finding.ts';
import { SEVERITIES } from '../checks/severity.ts';
import { keptOn } from '../notation/kept.ts';
import type { Snapshot } from './snapshot.ts';

interface Tried {
  readonly fixes: Map<Finding, readonly Fix[]>;
  count: number;
}

const TRIED = keptOn<Snapshot, Tried>();

/** Lines worked out again for one text by trying fixes, and the fixes tried at the least: who asks about more does not look at each. */
const MOST_LINES = 50_000;
const LEAST_TRIED = 20;

const mostTried = ({ document: { lines } }: Snapshot): number => Math.max(LEAST_TRIED, MOST_LINES / lines.length);

/** The fixes of a finding that leave the file with one finding less. */
export function offeredFixes(finding: Finding, snapshot: Snapshot): readonly Fix[] {
  const tried = TRIED.get(snapshot) ?? { fixes: new Map(), count: 0 };
  TRIED.set(snapshot, tried);
  const known = tried.fixes.get(finding);
  if (known !== undefined) return known;
  const fixes = fixesOf(finding, snapshot).filter(
    (fix) => tried.count++ < mostTried(snapshot) && mends(finding, fix, snapshot),
  );
  tried.fixes.set(finding, fixes);
  return fixes;
}

/**
 * Whether a fix does what it is offered for. What a misread line kept from being seen is not brought by reading it: to leave out the name
 * of a food for the danger it tells of would be to offer the one that tells of none.
 */
function mends({ code, check }: Finding, fix: Fix, snapshot: Snapshot): boolean {
  const countedIn = (of: Snapshot) => countsOf(check.family === 'reading' ? of.misread : of.findings.open);
  const [before, after] = [countedIn(snapshot), countedIn(snapshot.after(fix.edits))];
  if (totalOf(after, code) >= totalOf(before, code)) return false;
  return [...after.values()].every(
    ({ finding, counts }) =>
      isInvitation(finding) || counts.every((count, i) => count <= (before.get(finding.code)?.counts[i] ?? 0)),
  );
}

/** A hint how more would be understood: nothing is wrong. */
const isInvitation = ({ check, severity }: Finding): boolean => check.family === 'reading' && severity === 'hint';

/** Of every code of which there are more findings after a change, or graver ones: the gravest. */
export function broughtBy(before: Snapshot, after: Snapshot): readonly Finding[] {
  const were = countsOf(before.findings.open);
  return [...countsOf(after.findings.open).values()].flatMap(({ finding, counts }) =>
    isInvitation(finding) || counts.every((count, i) => count <= (were.get(finding.code)?.counts[i] ?? 0))
      ? []
      : [finding],
  );
}

/** Of one code: the gravest, and how many there are that are at least so grave as each severity. */
interface Counted {
  finding: Finding;
  readonly counts: number[];
}

function countsOf(findings: readonly Finding[]): ReadonlyMap<string, Counted> {
  const counted = new Map<string, Counted>();
  for (const finding of findings) {
    const here = counted.get(finding.code) ?? { finding, counts: SEVERITIES.map(() => 0) };
    counted.set(finding.code, here);
    const grave = SEVERITIES.indexOf(finding.severity);
    if (grave > SEVERITIES.indexOf(here.finding.severity)) here.finding = finding;
    for (let i = 0; i <= grave; i++) here.counts[i] = (here.counts[i] ?? 0) + 1;
  }
  return counted;
}

const totalOf = (counted: ReadonlyMap<string, Counted>, code: string): number => counted.get(code)?.counts[0] ?? 0;
