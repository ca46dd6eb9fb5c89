/**
 * Knows what the page is made of: the recipe as a reader sees it, the report, what was found with its fixes, and what is looked at.
 * Refuses to know a view, and to work out anything that a report or a page for readers does not.
 */
import type { AcceptedFinding, Finding, Findings } from '../../checks/finding.ts';
import { bandValuesIn } from '../../checks/formula/arithmetic.ts';
import type { Severity } from '../../checks/severity.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import type { Recipe } from '../../recipe/model.ts';
import { readTrials, type Trial } from '../../recipe/trials/trials.ts';
import { capital } from '../../recipe/words.ts';
import { plainFinding } from '../finding-json.ts';
import { recipeDay } from '../plan-day.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { type PlacedFinding, placedIn } from '../proof.ts';
import { type ReaderPage, readerPage } from '../reader-page.ts';
import { type ReportSources, report } from '../report.ts';
import type { Report } from '../report-shape.ts';
import type { Look } from './look.ts';

/** `live`: in the editor, with buttons that write. `read`: nothing can be pressed. `print`: all views after one another, fields as figures. */
export type ViewMode = 'live' | 'read' | 'print';

export interface ViewFacts {
  readonly mode: ViewMode;
  /** Why nothing may be written, in one sentence; absent where it may. */
  readonly readOnly?: string;
  readonly look: Look;
  /** The line of the caret, from 1. */
  readonly line?: number;
  /** The recipe as it is shown: of another size while one is looked at. */
  readonly page: ReaderPage;
  readonly report: Report;
  /** Of a line of the report, from 1, that in the writer's own file; undefined where another file says it, or no text is at hand. */
  readonly ownLine: (line: number) => number | undefined;
  /** As they stand in the text, by line, then by place. */
  readonly findings: readonly ViewFinding[];
  /** What turning the measure that is looked at comes to; undefined where none is. */
  readonly turned: () => Turned | undefined;
  /** The day counted back from the hour that is looked at. It takes long, and is worked out when it is asked for. */
  readonly plan: () => PlanFacts;
}

/** The three shapes in which a finding is drawn. */
export type Level = 'error' | 'warning' | 'note';

export interface ViewFinding {
  /** The same after lines around it moved. */
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
  /** What the finding's measure then is, by its middle; worked out when asked for. */
  readonly after?: () => number | undefined;
}

/** A measure of a part brought to a value: what moves, or why it cannot be had. */
export interface Turned {
  readonly part: string;
  readonly measure: MeasureName;
  /** A ratio, or degrees Celsius. */
  readonly to: number;
  readonly moved: readonly { readonly name: string; readonly before: string; readonly after: string }[];
  /** Sentences: what moves and why, what stays, what else it does. */
  readonly said: readonly string[];
  readonly refused?: string;
}

export interface ViewSources extends ReportSources {
  readonly mode: ViewMode;
  readonly look?: Look;
  readonly line?: number;
  readonly readOnly?: string;
  /** Whose rounding the nutrition figures follow. */
  readonly label?: 'us' | 'eu';
  readonly placed?: readonly PlacedFinding[];
  /** What turning the measure that is looked at comes to. */
  readonly turned?: () => Turned | undefined;
  /** The line of the writer's own file, from 0; undefined where another file says it. */
  readonly ownLine?: (line: number) => number | undefined;
  /** The fixes worth offering; none where nothing can be written. */
  readonly fixesOf?: (finding: Finding) => readonly ViewFix[];
}

/** All that the views show of a recipe; `findings` are those of the writer's own file. */
export function viewFacts(recipe: Recipe, findings: Findings, sources: ViewSources): ViewFacts {
  const { mode, look = {}, line, readOnly, label = 'eu', placed = placedIn(findings) } = sources;
  const trials: readonly Trial[] = sources.trials ?? readTrials(recipe.outline);
  const measures = look.measures ?? 'weight-first';
  const fixes = sources.fixesOf ?? (() => []);
  return {
    mode,
    ...(readOnly !== undefined && { readOnly }),
    look,
    ...(line !== undefined && { line }),
    turned: sources.turned ?? (() => undefined),
    page: readerPage(recipe, findings, { measures, label }, trials, placed, sources.sayLine),
    report: report(recipe, findings, { ...sources, trials }),
    ownLine: (line) => {
      const own = mode !== 'live' ? undefined : sources.ownLine === undefined ? line - 1 : sources.ownLine(line - 1);
      return own === undefined ? undefined : own + 1;
    },
    findings: [
      ...findings.open.map((finding) => viewFinding(finding, fixes(finding))),
      ...findings.accepted.map((finding) => viewFinding(finding, [])),
    ].sort((a, b) => a.line - b.line || a.start - b.start),
    plan: () =>
      recipeDay(recipe, {
        serve: look.serve,
        ...(sources.sayLine && { sayLine: sources.sayLine }),
        ...(sources.ownLine && { ownLine: sources.ownLine }),
      }),
  };
}

const LEVELS: Readonly<Record<Severity, Level>> = { error: 'error', warning: 'warning', info: 'note', hint: 'note' };

function viewFinding(finding: Finding | AcceptedFinding, fixes: readonly ViewFix[]): ViewFinding {
  const { code, severity, message, at, source } = plainFinding(finding);
  const { first, rest } = sentencesOf(message);
  const band = bandValuesIn(finding.found.values);
  return {
    key: `${code}-${at.line + 1}-${at.start}`,
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
