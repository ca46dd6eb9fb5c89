/**
 * Knows the marks of a fixture: comments under a line that say which findings it must have, and where.
 * Refuses to know the checks: it only compares what was expected with what was found.
 */
import type { Severity } from '../../server/src/checks/severity.ts';

export interface Mark {
  /** The line marked, in the text without marks. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly code: string;
  readonly severity?: Severity;
  readonly fix: boolean;
  /** Must occur in the message. */
  readonly words?: string;
  /** About the whole recipe: its place is not compared. */
  readonly anywhere: boolean;
}

export interface Marked {
  /** The text without its marks. */
  readonly text: string;
  readonly marks: readonly Mark[];
}

const MARK =
  /^(#\s*)(\^+|"(?:[^"\\]|\\.)*"|recipe)\s+([a-z]+(?:-[a-z]+)*)(?:\s+(error|warning|info|hint))?(\s+\*)?(?::\s*(.*))?$/;

/** Reads and removes the marks of a fixture. A mark that does not fit its line throws: the fixture is wrong. */
export function readMarks(fixture: string): Marked {
  const kept: string[] = [];
  const marks: Mark[] = [];
  for (const line of fixture.split('\n')) {
    const found = MARK.exec(line);
    if (found === null) kept.push(line);
    else marks.push(readMark(found, kept));
  }
  return { text: kept.join('\n'), marks };
}

function readMark(found: RegExpExecArray, kept: readonly string[]): Mark {
  const [all, lead = '', place = '', code = '', severity, star, words] = found;
  const line = kept.length - 1;
  const above = kept[line];
  if (above === undefined) throw new Error(`a mark with no line above it: ${all}`);
  return {
    line,
    ...spanOf(place, lead.length, above, all),
    code,
    ...(severity !== undefined && { severity: severity as Severity }),
    fix: star !== undefined,
    ...(words !== undefined && { words }),
    anywhere: place === 'recipe',
  };
}

function spanOf(place: string, lead: number, above: string, mark: string): { start: number; end: number } {
  if (place === 'recipe') return { start: 0, end: 0 };
  if (place.startsWith('^')) return { start: lead, end: lead + place.length };
  const quoted = place.slice(1, -1);
  const start = above.indexOf(quoted);
  if (start < 0 || above.indexOf(quoted, start + 1) >= 0)
    throw new Error(`the quoted text must stand once in the line above: ${mark}`);
  return { start, end: start + quoted.length };
}

/** What a finding is to a mark. */
export interface MarkedFinding {
  readonly code: string;
  readonly severity: Severity;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly message: string;
  readonly fixes: readonly string[];
  /** The severity the check has by itself. */
  readonly usual: Severity;
}

/** What is wrong between marks and findings, one line each; empty when they pair one to one. */
export function compareMarks(marks: readonly Mark[], findings: readonly MarkedFinding[]): string[] {
  const left = [...findings];
  const problems: string[] = [];
  for (const mark of marks) {
    const at = left.findIndex(
      (f) =>
        f.code === mark.code &&
        (mark.anywhere || (f.line === mark.line && f.start === mark.start && f.end === mark.end)),
    );
    if (at < 0) {
      const near = left.find((f) => f.code === mark.code);
      problems.push(
        near === undefined
          ? `missed: ${mark.code} at ${placeText(mark)}`
          : `misplaced: ${mark.code} at ${placeText(near)}, marked at ${placeText(mark)}`,
      );
      if (near !== undefined) left.splice(left.indexOf(near), 1);
      continue;
    }
    const [finding] = left.splice(at, 1);
    if (finding === undefined) continue;
    const severity = mark.severity ?? finding.usual;
    if (finding.severity !== severity) problems.push(`${mark.code} is ${finding.severity}, marked ${severity}`);
    if (mark.words !== undefined && !finding.message.includes(mark.words))
      problems.push(`${mark.code} does not say \`${mark.words}\`: ${finding.message}`);
    if (mark.fix !== finding.fixes.length > 0)
      problems.push(
        `${mark.code} ${mark.fix ? 'is marked to have a fix and has none' : `has fixes that are not marked: ${finding.fixes.join(', ')}`}`,
      );
  }
  for (const f of left) problems.push(`unexpected: ${f.code} at ${placeText(f)}: ${f.message}`);
  return problems;
}

const placeText = ({ line, start, end }: { line: number; start: number; end: number }): string =>
  `${line + 1}:${start}-${end}`;
