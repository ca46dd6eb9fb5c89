/**
 * Knows a finding as the page shows it: its level, its first sentence where it stands, what follows, and what would mend it.
 * Refuses to choose among fixes, and to know what they write.
 */
import type { AcceptedFinding, Finding, Findings } from '../../checks/finding.ts';
import { bandValuesIn } from '../../checks/formula/arithmetic.ts';
import type { Severity } from '../../checks/severity.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { capital } from '../../recipe/words.ts';
import { plainFinding } from '../finding-json.ts';

/** The three shapes in which a finding is drawn. */
export type Level = 'error' | 'warning' | 'note';

export interface ViewFinding {
  /** The same for as long as no finding of its code is mended before it. */
  readonly key: string;
  readonly code: string;
  readonly severity: Severity;
  readonly level: Level;
  /** From 1, in the writer's file. */
  readonly line: number;
  /** UTF-16 units of that line. */
  readonly start: number;
  readonly end: number;
  /** The first sentence of its message without the part it speaks of, and what follows it. Words in backticks are names of the text. */
  readonly first: string;
  readonly rest: string;
  readonly source: string;
  readonly fixes: readonly ViewFix[];
  /** The measure that lies outside its band, of the part of that name. */
  readonly measure?: { readonly part: string; readonly name: MeasureName };
  /** The reason it was accepted for. */
  readonly accepted?: string;
}

export interface ViewFix {
  /** What it writes, as an order: `Write 75 g water`. */
  readonly title: string;
  /** What the finding's measure then is, by its middle: a ratio, or degrees Celsius. Worked out when asked for. */
  readonly after?: () => number | undefined;
}

/** All findings of a file by their place; `fixesOf` gives the fixes worth offering of one that is open. */
export function viewFindings(
  { open, accepted }: Findings,
  fixesOf: (finding: Finding) => readonly ViewFix[],
): readonly ViewFinding[] {
  const placed = [
    ...open.map((finding) => viewFinding(finding, fixesOf(finding))),
    ...accepted.map((finding) => viewFinding(finding, [])),
  ].sort((a, b) => a.line - b.line || a.start - b.start);
  const seen = new Map<string, number>();
  return placed.map((finding) => {
    const count = (seen.get(finding.code) ?? 0) + 1;
    seen.set(finding.code, count);
    return { ...finding, key: `${finding.code}-${count}` };
  });
}

const LEVELS: Readonly<Record<Severity, Level>> = { error: 'error', warning: 'warning', info: 'note', hint: 'note' };

function viewFinding(finding: Finding | AcceptedFinding, fixes: readonly ViewFix[]): Omit<ViewFinding, 'key'> {
  const { code, severity, message, at, source } = plainFinding(finding);
  const band = bandValuesIn(finding.found.values);
  const { about } = finding.said;
  const own = about !== undefined && message.startsWith(about) ? message.slice(about.length).trimStart() : message;
  const { first, rest } = sentencesOf(own);
  return {
    code,
    severity,
    level: LEVELS[severity],
    line: at.line + 1,
    start: at.start,
    end: at.end,
    first: capital(first),
    rest,
    source,
    fixes,
    ...(band && { measure: { part: band.partName, name: band.measure.measure } }),
    ...('reason' in finding && { accepted: finding.reason }),
  };
}

/** A message of a check as its first sentence and what follows it. */
function sentencesOf(message: string): { readonly first: string; readonly rest: string } {
  const end = /[.?] (?=\p{Lu})/u.exec(message);
  return end === null
    ? { first: message, rest: '' }
    : { first: message.slice(0, end.index + 1), rest: message.slice(end.index + 2) };
}
