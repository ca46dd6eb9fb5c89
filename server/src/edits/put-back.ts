/**
 * Knows how a line is put back to what a trial tested, where the trial's own lines say what that was and its mark agrees.
 * Refuses to guess: a mark alone does not say what it was made of.
 */
import type { Document } from '../notation/document.ts';
import { outline } from '../notation/outline.ts';
import type { Span } from '../notation/tree.ts';
import { bindRecipe, type Recipe } from '../recipe/recipe.ts';
import { changedSince, factsOf, type Trial } from '../recipe/trials.ts';
import { wordsOf } from '../recipe/words.ts';
import { applyEdits, replaceSpan, type TextEdit } from './text-edit.ts';

export interface PutBack {
  /** What is written again: `50 min`. */
  readonly written: string;
  readonly edits: readonly TextEdit[];
}

/** More of what a trial says than this is not tried. */
const MOST_TRIES = 40;

/** The line, counted in the document, as the trial tested it; undefined where the trial does not say. */
export function putBack(document: Document, recipe: Recipe, trial: Trial, line: number): PutBack | undefined {
  const { tested } = trial;
  if (tested === undefined) return undefined;
  const before = changedSince(factsOf(recipe), tested).length;
  for (const edits of candidates(document, recipe, trial, line).slice(0, MOST_TRIES)) {
    const after = bindRecipe(outline(applyEdits(document, edits)), recipe.world);
    if (changedSince(factsOf(after), tested).length < before)
      return { written: edits.map((e) => e.text).join(', '), edits };
  }
  return undefined;
}

/** The line with one or several of its figures as the trial has them. */
function candidates(document: Document, recipe: Recipe, trial: Trial, line: number): TextEdit[][] {
  const part = recipe.parts.findLast((p) => (recipe.partsAt[p.index] ?? 0) <= line);
  if (part === undefined) return [];
  const inPart = line - (recipe.partsAt[part.index] ?? 0);
  const textIn = (at: number, span: Span) => document.lines[at]?.text.slice(span.start, span.end) ?? '';
  const ingredient = part.head.ingredients.find((i) => i.line === inPart);
  const { amount } = ingredient?.node ?? {};
  if (ingredient !== undefined && amount !== undefined) {
    const name = ` ${wordsOf(ingredient.name).join(' ')}`;
    return trial.used
      .filter((u) => name.endsWith(` ${wordsOf(u.name.text).join(' ')}`))
      .map((u) => [replaceSpan(line, amount, textIn(u.at, u.amount))]);
  }
  const items = part.steps.find((s) => s.line === inPart)?.sentence.items ?? [];
  let sets: TextEdit[][] = [[]];
  for (const item of items) {
    const said =
      item.kind === 'duration'
        ? trial.took.map((t) => textIn(t.at, t.duration))
        : item.kind === 'temperature'
          ? trial.reached.map((r) => textIn(r.at, r.temperature))
          : [];
    sets = sets.flatMap((set) => [set, ...said.map((text) => [...set, replaceSpan(line, item, text)])]).slice(0, 200);
  }
  return sets.filter((set) => set.length > 0).sort((a, b) => a.length - b.length);
}
