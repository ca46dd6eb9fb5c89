/**
 * Knows how much of a text is worked out: more than any recipe has, and so little that no text takes longer than a moment.
 * Refuses to drop anything in silence: the first line past a limit has a fault, and says what is not worked out.
 */
import { keptOn } from './kept.ts';
import type { Line, SyntaxFault } from './tree.ts';

/** Lines of a file. */
export const MOST_LINES = 20_000;

/** Lines of one part. The longest of 2,000 published recipes has 60. */
export const MOST_IN_PART = 1000;

/** Parts of a file. */
export const MOST_PARTS = 2000;

const said = (n: number): string => n.toLocaleString('en');

/** What is said of the first line of a file that is too many. */
export const pastFile = (line: Line): SyntaxFault =>
  faultOf(
    line,
    `a file holds ${said(MOST_LINES)} lines at most, so this line and all below it are not worked out, weighed or checked; put what is below into files of its own`,
  );

/** What is said of the first part of a file that is too many. */
export const pastParts = (line: Line): SyntaxFault =>
  faultOf(
    line,
    `a file holds ${said(MOST_PARTS)} parts at most, so this one and all below it are not worked out, weighed or checked; put them into files of their own`,
  );

/** What stands in a part for its first line that is too many. */
export function pastPart(line: Line): Line {
  let past = PAST.get(line);
  if (past === undefined) {
    const { text } = line;
    const fault = faultOf(
      line,
      `a part holds ${said(MOST_IN_PART)} lines at most, so this line and the rest of the part are not worked out, weighed or checked; begin a part of its own above it: \`part NAME\``,
    );
    past = {
      text,
      statement: { kind: 'unread', words: { start: fault.start, end: fault.end, text } },
      faults: [fault],
    };
    PAST.set(line, past);
  }
  return past;
}

const PAST = keptOn<Line, Line>();

function faultOf({ text }: Line, detail: string): SyntaxFault {
  const start = text.length - text.trimStart().length;
  return { code: 'too-many-lines', start, end: Math.max(text.trimEnd().length, start + 1), detail };
}

/** The first line from one on, and before another, that says something. */
export function firstSaying(lines: readonly Line[], from: number, to: number): number | undefined {
  for (let at = from; at < to; at++) if (lines[at]?.statement.kind !== 'blank') return at;
  return undefined;
}
