/**
 * Knows whether what was found stands in the margin beside its line, or beneath it: many in a margin drift away from their lines.
 * Refuses to measure: it reckons how high lines and findings are. A script that can measure may say otherwise.
 */
import type { ViewFacts } from './facts.ts';
import type { ViewFinding } from './finding.ts';

/** Nothing was found; in the margin where the page is wide; beneath its line. */
export type Layout = 'plain' | 'noted' | 'beneath';

/** Lines by which a finding may stand lower than its own. */
const MOST_DRIFT = 5;
/** Heights in lines of the list (27 px): a heading, a row, a finding's sentence by its letters, and its buttons. */
const HEADING = 2.2;
const LETTERS_A_LINE = 44;
const SENTENCE = 0.7;
const BUTTONS = 1.1;
const GAP = 0.5;

export function layoutOf(facts: ViewFacts): Layout {
  const { findings, looking, mode, page } = facts;
  if (mode === 'read' || findings.length === 0 || looking !== undefined) return 'plain';
  const rows = [
    ...page.sections.flatMap(({ ingredients }) => [undefined, ...ingredients.map(({ line }) => line)]),
    ...page.sections.flatMap(({ method }) => [undefined, ...method.map(({ line }) => line)]),
  ];
  const told = new Set<number>();
  let [at, margin] = [0, 0];
  for (const line of rows) {
    if (line !== undefined && !told.has(line))
      for (const finding of findings.filter((f) => f.line === line)) {
        if (margin - at > MOST_DRIFT) return 'beneath';
        margin = Math.max(margin, at) + heightOf(finding);
      }
    if (line !== undefined) told.add(line);
    at += line === undefined ? HEADING : 1;
  }
  // What belongs to no row is told by itself, in no margin.
  return findings.some(({ line }) => told.has(line)) ? 'noted' : 'beneath';
}

const heightOf = ({ first, fixes }: ViewFinding): number =>
  Math.ceil(first.length / LETTERS_A_LINE) * SENTENCE + (1 + Math.min(fixes.length, 2)) * BUTTONS + GAP;
