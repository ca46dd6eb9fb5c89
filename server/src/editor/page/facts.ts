/**
 * Knows the facts of the page for a file that is open: a variant written out in full, as it is looked at, with the fixes worth offering.
 * Refuses to know how they are shown, and who asks.
 */
import type { Finding } from '../../checks/finding.ts';
import { SEVERITIES } from '../../checks/severity.ts';
import { type Nothing, type ViewFacts, type ViewSources, viewFacts } from '../../publish/view/facts.ts';
import { readTrials } from '../../recipe/trials/trials.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { ownLineIn, sayLineIn, takenInAt } from '../place.ts';
import { fixesTold, fixesTried } from './fixes.ts';
import { lookedAt } from './looked.ts';
import { turnedOf } from './turned.ts';

export type PageWish = Pick<ViewSources, 'look' | 'line' | 'readOnly' | 'prices'> & {
  /** Recipes of the folder that use the foods of a file of foods. */
  readonly usedBy?: number;
  /** Whether somebody types: fixes are as they were tried last. */
  readonly hasty?: boolean;
};

/** `line` counts from 1. */
export function pageFacts(snapshot: Snapshot, { usedBy, hasty, ...wish }: PageWish = {}): ViewFacts {
  const { whole } = snapshot;
  const takenIn = takenInAt(snapshot);
  const tried = new Set(hasty === true ? [] : mendedFirst(snapshot));
  const looked = lookedAt(whole, wish.look ?? {});
  const nothing = nothingIn(snapshot, usedBy);
  const { looking } = looked;
  // What is looked at is written into this file, or into none.
  const elsewhere = whole === snapshot ? undefined : 'It builds on another file, so it is not written here.';
  return viewFacts(looked.snapshot.recipe, snapshot.findings, {
    ...wish,
    mode: 'live',
    ...(nothing && { nothing }),
    ...(looking && {
      looking: { ...looking, ...(elsewhere && { refused: elsewhere }) },
      asWritten: whole.recipe,
    }),
    missing: snapshot.broken.flatMap(({ kind, name, line }) =>
      kind === 'missing-file' ? [{ name, line: line + 1 }] : [],
    ),
    label: snapshot.house.world.measures === 'us' ? 'us' : 'eu',
    trials: readTrials(snapshot.outline),
    sayLine: sayLineIn(snapshot),
    lineOf: (line) => takenIn(line) + 1,
    ownLine: ownLineIn(snapshot),
    turned: () => (wish.readOnly === undefined ? turnedOf(snapshot, wish.look ?? {}) : undefined),
    fixesOf: (finding) => {
      if (wish.readOnly !== undefined) return [];
      return tried.has(finding) ? fixesTried(finding, snapshot) : fixesTold(finding, snapshot);
    },
  });
}

/** Each fix is tried on the whole text: of a long one with much to mend the gravest have theirs first, the next once those are gone. */
const MOST_LINES = 4000;
const LEAST = 6;

function mendedFirst({ findings: { open }, document: { lines } }: Snapshot): readonly Finding[] {
  const gravest = open.toSorted((a, b) => SEVERITIES.indexOf(b.severity) - SEVERITIES.indexOf(a.severity));
  return gravest.slice(0, Math.max(LEAST, MOST_LINES / lines.length));
}

/** A file in which there is no recipe to show. */
function nothingIn({ outline, recipe }: Snapshot, usedBy: number | undefined): Nothing | undefined {
  const { foods, parts, trials } = outline;
  if (outline.recipe !== undefined || recipe.inherits) return undefined;
  if (
    parts.some(({ source }) => source.lines.some(({ statement: { kind } }) => kind === 'ingredient' || kind === 'step'))
  )
    return undefined;
  if (foods.length === 0) return trials.length === 0 ? { kind: 'empty' } : undefined;
  const priced = foods.filter(({ lines }) => lines.some(({ statement: { kind } }) => kind === 'price')).length;
  return { kind: 'foods', foods: foods.length, priced, ...(usedBy !== undefined && { usedBy }) };
}
