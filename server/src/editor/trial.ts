/**
 * Knows how a trial is started in the text at hand, and which blank the caret is put on.
 * Refuses to know what day it is.
 */
import { recordTrial } from '../edits/record-trial.ts';
import { applyEdits, type TextEdit } from '../edits/text-edit.ts';
import type { Document } from '../notation/document.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Place } from './place.ts';

export interface StartedTrial {
  readonly edits: readonly TextEdit[];
  /** The first blank to fill in, once the edits are made. */
  readonly first: Place;
}

/** Undefined for a file that is no recipe, or builds on what is not there; `date` is `2026-09-14`. A variant is tested as a cook cooks it. */
export function startTrial(snapshot: Snapshot, date: string, by?: string): StartedTrial | undefined {
  const { recipe } = snapshot.whole;
  const listed = recipe.parts.some((p) => p.head.ingredients.length > 0 || p.steps.length > 0);
  if (snapshot.outline.recipe === undefined || !listed || !snapshot.isWhole) return undefined;
  const { edits, line } = recordTrial(snapshot.document, recipe, date, by);
  return { edits, first: firstBlank(applyEdits(snapshot.document, edits), line) };
}

function firstBlank({ lines }: Document, from: number): Place {
  for (let line = from + 1; line < lines.length; line++) {
    const statement = lines[line]?.statement;
    const blank = statement?.kind === 'took' || statement?.kind === 'reached' ? statement.blank : undefined;
    if (blank !== undefined) return { line, start: blank.start, end: blank.end };
  }
  return { line: from, start: 0, end: 0 };
}
