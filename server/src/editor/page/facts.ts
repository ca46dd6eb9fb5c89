/**
 * Knows the facts of the page for a file that is open: a variant written out in full, as it is looked at, with the fixes worth offering.
 * Refuses to know how they are shown, and who asks.
 */
import type { Finding } from '../../checks/finding.ts';
import { type Nothing, type ViewFacts, type ViewSources, viewFacts } from '../../publish/view/facts.ts';
import type { ViewFix } from '../../publish/view/finding.ts';
import { readTrials } from '../../recipe/trials/trials.ts';
import { offeredFixes } from '../../workspace/offered.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { ownLineIn, sayLineIn, takenInAt } from '../place.ts';
import { lookedAt } from './looked.ts';
import { measureAfter, turnedOf } from './turned.ts';

export type PageWish = Pick<ViewSources, 'look' | 'line' | 'readOnly' | 'prices'> & {
  /** Recipes of the folder that use the foods of a file of foods. */
  readonly usedBy?: number;
};

/** `line` counts from 1. */
export function pageFacts(snapshot: Snapshot, { usedBy, ...wish }: PageWish = {}): ViewFacts {
  const { whole } = snapshot;
  const takenIn = takenInAt(snapshot);
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
    fixesOf: (finding) => (wish.readOnly === undefined ? fixesOf(finding, snapshot) : []),
  });
}

function fixesOf(finding: Finding, snapshot: Snapshot): ViewFix[] {
  return offeredFixes(finding, snapshot).map((fix) => ({
    title: fix.title,
    after: () => measureAfter(snapshot, finding, fix),
  }));
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
