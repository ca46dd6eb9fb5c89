/**
 * Knows what the page is made of: the recipe as a reader sees it, the report, what was found with its fixes, and what is looked at.
 * Refuses to know a view, and to work out anything that a report or a page for readers does not.
 */
import type { Finding, Findings } from '../../checks/finding.ts';
import { panFills } from '../../checks/method/pan-fill.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import type { Recipe } from '../../recipe/model.ts';
import { readTrials } from '../../recipe/trials/trials.ts';
import { yieldNoun } from '../../recipe/yield.ts';
import { type LabelDraft, labelDraft } from '../label/draft.ts';
import { recipeDay } from '../plan-day.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { type PlacedFinding, placedIn } from '../proof.ts';
import { type PageOptions, type ReaderPage, readerPage } from '../reader-page.ts';
import { type ReportSources, report } from '../report.ts';
import type { Report } from '../report-shape.ts';
import { type Differences, differencesOf } from './differences.ts';
import { type ViewFinding, type ViewFix, viewFindings } from './finding.ts';
import type { Look, Looking, ViewName } from './look.ts';
import { madeOf, ownDegrees, ownMeasures } from './own.ts';
import { type ViewState, viewState } from './state.ts';

/** `live`: in the editor, with buttons that write. `read`: nothing can be pressed. `print`: all views after one another, fields as figures. */
export type ViewMode = 'live' | 'read' | 'print';

export interface ViewFacts {
  readonly mode: ViewMode;
  /** Why nothing may be written, in one sentence; absent where it may. */
  readonly readOnly?: string;
  readonly look: Look;
  /** How what is looked at is said; absent where all is as the text says. */
  readonly looking?: Looking;
  /** The line of the caret, from 1. */
  readonly line?: number;
  /** Nothing is written yet, or foods alone; absent where there is a recipe to show. */
  readonly nothing?: Nothing;
  /** Files that it builds on and that are not there. */
  readonly missing: readonly MissingBase[];
  readonly state: ViewState;
  /** The recipe as it is shown: of another size while one is looked at. */
  readonly page: ReaderPage;
  /** What of it is other than the text. */
  readonly differs: Differences;
  /** What it makes, where that is one number and can be looked at in another; `text` is what the text says. */
  readonly makes?: { readonly amount: number; readonly noun: string; readonly text: number; readonly counted: boolean };
  /** How full the recipe's pan is, in ml, as it goes in and to the brim. */
  readonly fill?: { readonly low: number; readonly high: number; readonly panMl: number };
  readonly report: Report;
  /** A line of the report, from 1, where there is a text to go to. */
  readonly ownLine: (line: number) => number | undefined;
  /** As they stand in the text, by line, then by place. */
  readonly findings: readonly ViewFinding[];
  /** What turning the measure that is looked at comes to; undefined where none is. */
  readonly turned: () => Turned | undefined;
  /** Where a view is, and the steps of the day in an order: the page is looked at in a browser, which asks for another. */
  readonly hrefOf?: HrefOf;
  /** The draft of a label, as cooked where that is looked at; worked out when it is asked for. */
  readonly label: () => LabelDraft;
  /** The day counted back from the hour that is looked at. It takes long, and is worked out when it is asked for. */
  readonly plan: () => PlanFacts;
}

export type HrefOf = (view: ViewName, order?: 'clock' | 'part') => string;

/** What a page for readers has of it too. */
export type Reading = Pick<
  ViewFacts,
  'mode' | 'readOnly' | 'look' | 'looking' | 'line' | 'page' | 'differs' | 'findings' | 'missing'
> & {
  readonly report: Pick<Report, 'pictures'>;
};

export type Nothing =
  | { readonly kind: 'empty' }
  /** `usedBy` is how many recipes of the folder use them, where that is known. */
  | { readonly kind: 'foods'; readonly foods: number; readonly priced: number; readonly usedBy?: number };

export interface MissingBase {
  readonly name: string;
  /** From 1, in the writer's file. */
  readonly line: number;
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
  readonly looking?: Looking;
  /** The recipe of the text, where another size or other measures are looked at. */
  readonly asWritten?: Recipe;
  readonly line?: number;
  readonly readOnly?: string;
  readonly nothing?: Nothing;
  readonly missing?: readonly MissingBase[];
  /** Whose rounding the nutrition figures follow. */
  readonly label?: 'us' | 'eu';
  readonly placed?: readonly PlacedFinding[];
  /** What turning the measure that is looked at comes to. */
  readonly turned?: () => Turned | undefined;
  /** The line of the writer's own file, from 0; undefined where another file says it. */
  readonly ownLine?: (line: number) => number | undefined;
  readonly hrefOf?: HrefOf;
  /** The fixes worth offering; none where nothing can be written. */
  readonly fixesOf?: (finding: Finding) => readonly ViewFix[];
}

/** All that the views show of a recipe; `findings` are those of the writer's own file. */
export function viewFacts(recipe: Recipe, findings: Findings, sources: ViewSources): ViewFacts {
  const { mode, look = {}, looking, line, readOnly, nothing, label = 'eu', asWritten = recipe } = sources;
  const { placed = placedIn(findings), fixesOf = () => [], trials = readTrials(recipe.outline) } = sources;
  const { lineOf } = sources;
  const text = ownMeasures(asWritten);
  const found = viewFindings(findings, fixesOf);
  const cutsOn = (line: number): readonly number[] => {
    const at = lineOf === undefined ? line + 1 : lineOf(line);
    return found.flatMap((finding) => (finding.line === at ? [finding.start, finding.end] : []));
  };
  const pageOf = (of: Recipe, measures: PageOptions['measures']): ReaderPage =>
    readerPage(
      of,
      findings,
      { measures, label, cutsOn, ...(mode !== 'read' && { scales: 'written' }), ...(lineOf && { lineOf }) },
      trials,
      placed,
      sources.sayLine,
    );
  const page = pageOf(recipe, look.measures ?? text);
  const written = asWritten === recipe ? page : pageOf(asWritten, text);
  const makes = makesOf(recipe, asWritten);
  const fill = fillOf(recipe);
  return {
    mode,
    ...(readOnly !== undefined && { readOnly }),
    look: { ...look, measures: look.measures ?? text, degrees: look.degrees ?? ownDegrees(asWritten) },
    ...(looking && { looking }),
    ...(line !== undefined && { line }),
    turned: sources.turned ?? (() => undefined),
    ...(nothing && { nothing }),
    missing: sources.missing ?? [],
    state: viewState(asWritten, written.proof, trials),
    page,
    differs: differencesOf(page, written),
    ...(makes && { makes }),
    ...(fill && { fill }),
    report: report(recipe, findings, { ...sources, trials }),
    ownLine: (line) => (mode === 'live' ? line : undefined),
    findings: found,
    ...(sources.hrefOf && { hrefOf: sources.hrefOf }),
    label: () => labelDraft(recipe, trials, { cooked: look.cooked === true }),
    plan: () =>
      recipeDay(recipe, {
        serve: look.serve,
        ...(sources.sayLine && { sayLine: sources.sayLine }),
        // On paper there is no text to go to.
        ...(mode !== 'live' ? { ownLine: () => undefined } : sources.ownLine && { ownLine: sources.ownLine }),
      }),
  };
}

function makesOf(recipe: Recipe, asWritten: Recipe): ViewFacts['makes'] {
  const amount = madeOf(recipe);
  const text = madeOf(asWritten);
  const noun = recipe.yield && yieldNoun(recipe.yield.node);
  return amount === undefined || text === undefined || noun === undefined || noun === ''
    ? undefined
    : { amount, noun, text, counted: recipe.yield?.node.amount?.unit === undefined };
}

function fillOf(recipe: Recipe): ViewFacts['fill'] {
  const fill = panFills(recipe).find(({ pan }) => pan === recipe.pan?.node);
  return fill === undefined || fill.batches || fill.pieces
    ? undefined
    : { low: fill.rawMl[0], high: fill.rawMl[1], panMl: fill.panMl };
}
