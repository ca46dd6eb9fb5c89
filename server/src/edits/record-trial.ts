/**
 * Knows how a trial is started in a file: its date, the lines worth measuring in this recipe, and the fingerprint of what is tested.
 * Refuses to know what day it is, or what was measured.
 */

import type { Document } from '../notation/document.ts';
import type { DurationNode } from '../notation/tree.ts';
import { type NamedVerb, verbNamed } from '../prose/verb-named.ts';
import { durationOf, heatsOf, isOfCooling, timesOf } from '../recipe/journey/figures.ts';
import type { Recipe } from '../recipe/model.ts';
import { fingerprint } from '../recipe/trials/trials.ts';
import { collapse } from '../recipe/words.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface TrialStarted {
  readonly edits: readonly TextEdit[];
  /** The line at which the new trial opens, once the edits are made. */
  readonly line: number;
}

/** Adds a trial at the end of the file, with what the recipe says as the values to overwrite. `date` is `2026-09-14`. */
export function recordTrial(document: Document, recipe: Recipe, date: string, by?: string): TrialStarted {
  const last = document.lines.length - 1;
  const end = document.lines[last]?.text.length ?? 0;
  const opening = by === undefined ? `trial ${date}` : `trial ${date} by ${collapse(by)}`;
  const lines = [opening, ...worthMeasuring(recipe), `  tested  ${fingerprint(recipe)}`, VERDICT];
  const open = document.lines[last]?.text.trim() === '';
  const gap = open ? (document.lines[last - 1]?.text.trim() === '' || last === 0 ? '' : '\n') : '\n\n';
  const text = `${gap}${lines.join('\n')}\n`;
  const line = last + (gap.match(/\n/g)?.length ?? 0);
  return { edits: [replaceSpan(last, { start: end, end }, text)], line };
}

/** Nobody has judged it yet: until then it proves nothing to a reader. */
const VERDICT = '  # verdict keep, change or reject: write it once it is tasted';

/** The longest time in the oven or on the stove, and the last temperature promised in the food. */
function worthMeasuring(recipe: Recipe): string[] {
  const steps = recipe.parts.flatMap((part) =>
    part.steps.map((step) => ({ step, text: part.head.source.lines[step.line]?.text ?? '' })),
  );
  const longest = steps
    .flatMap(({ step, text }) =>
      timesOf(step).flatMap(({ said, event }) => {
        const node = event.act === 'heat' ? durationOf(step, said) : undefined;
        const verb = node && event.verb && verbNamed(text.slice(event.verb.start, event.verb.end));
        return node === undefined || verb === undefined ? [] : [{ node, verb, text }];
      }),
    )
    .reduce<{ readonly node: DurationNode; readonly verb: NamedVerb; readonly text: string } | undefined>(
      (a, b) => (a === undefined || b.node.highMin >= a.node.highMin ? b : a),
      undefined,
    );
  const heat = steps
    .flatMap(({ step, text }) =>
      heatsOf(step).flatMap((figure) => (figure.of === 'food' && !isOfCooling(figure) ? [{ figure, text }] : [])),
    )
    .at(-1);
  const rows: string[] = [];
  if (longest !== undefined)
    rows.push(`  took    ${longest.text.slice(longest.node.start, longest.node.end)} to ${longest.verb.base}`);
  const node = heat?.figure.written[0];
  if (heat !== undefined && node !== undefined)
    rows.push(`  reached ${heat.text.slice(node.start, node.end)} in the centre`);
  return rows;
}
