/**
 * Knows the trials of a recipe as facts of a report: what each tested and measured, and where the text was changed between two of them.
 * Refuses to know what an earlier text said: a trial carries marks of it, and no words.
 */

import { boundEvents } from '../recipe/journey/bind.ts';
import type { Recipe } from '../recipe/model.ts';
import { changedSince, type Fact, factsOf, isAsTested, type Trial } from '../recipe/trials/trials.ts';
import { collapse } from '../recipe/words.ts';
import type { ReportTextChange, ReportTrial } from './report-shape.ts';

/** Oldest first; `trials` are those of the recipe's own file, and `lineOf` says which line of it, from 1, a line of the recipe is. */
export function reportTrials(
  recipe: Recipe,
  trials: readonly Trial[],
  lineOf: (line: number) => number,
): readonly ReportTrial[] {
  const facts = factsOf(recipe);
  return trials.map((trial, i) => ({
    line: trial.at + 1,
    date: trial.date,
    by: trial.by ?? null,
    as_it_stands: trial.tested === undefined ? null : isAsTested(facts, trial.tested),
    saw: trial.saw,
    verdict: trial.verdict ?? null,
    changed_after: changedBetween(
      lineOf,
      recipe,
      facts,
      trial.tested,
      i + 1 < trials.length ? (trials[i + 1]?.tested ?? null) : undefined,
    ),
  }));
}

/** `next` is undefined for the text as it is now, null for one that nobody knows. */
function changedBetween(
  lineOf: (line: number) => number,
  recipe: Recipe,
  facts: readonly Fact[],
  tested: readonly string[] | undefined,
  next: readonly string[] | null | undefined,
): ReportTextChange | null {
  if (tested === undefined || next === null) return null;
  const then = next === undefined ? facts : factsMarked(facts, next);
  const added = changedSince(then, tested);
  // Marks of the older text that the later one has no more.
  const gone = tested.length - (then.length - added.length);
  if (added.length === 0 && gone === 0) return null;
  const stillThere = added.filter(({ line }) => line >= 0);
  return { places: Math.max(added.length, gone), now: stillThere.map((fact) => factIn(recipe, fact, lineOf)) };
}

/** What a text of these marks tested: facts as they are now, where they are still there. */
function factsMarked(facts: readonly Fact[], marks: readonly string[]): readonly Fact[] {
  const left = new Map<string, Fact[]>();
  for (const fact of facts) {
    const alike = left.get(fact.mark);
    if (alike === undefined) left.set(fact.mark, [fact]);
    else alike.push(fact);
  }
  return marks.map((mark) => left.get(mark)?.pop() ?? { part: 0, line: -1, mark });
}

/** A line of the list whole; of a step what it does at a heat, for a time or with an amount. */
function factIn(
  recipe: Recipe,
  { part: at, line }: Fact,
  lineOf: (line: number) => number,
): ReportTextChange['now'][number] {
  const part = recipe.parts[at];
  const text = part?.head.source.lines[line]?.text ?? '';
  const step = part?.steps.find((each) => each.line === line);
  const telling =
    step &&
    boundEvents(step).find(
      ({ event }) => event.temperatures.length > 0 || event.times.some(({ kind }) => kind === 'spent'),
    );
  const words = telling === undefined ? (text.split('#')[0] ?? '') : text.slice(telling.event.start, telling.event.end);
  return { line: lineOf((recipe.partsAt[at] ?? 0) + line), words: collapse(words).replace(/^do |[\s,;.]+$/g, '') };
}
