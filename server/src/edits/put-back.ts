/**
 * Knows how a line is put back to what a trial tested, where the trial's own lines say what that was and its mark agrees.
 * Refuses to guess: a mark alone does not say what it was made of.
 */
import type { Document } from '../notation/document.ts';
import { outline } from '../notation/outline.ts';
import type { AmountNode, Span } from '../notation/tree.ts';
import type { Recipe } from '../recipe/model.ts';
import { bindRecipe } from '../recipe/recipe.ts';
import { changedSince, factsOf, type Trial } from '../recipe/trials/trials.ts';
import { wordsOf } from '../recipe/words.ts';
import { applyEdits, replaceSpan, type TextEdit } from './text-edit.ts';

export interface PutBack {
  /** What is written again: `50 min`. */
  readonly written: string;
  readonly edits: readonly TextEdit[];
}

/** More of what a trial says than this is not tried. */
const MOST_TRIES = 40;
const MOST_SETS = 200;

/** The line, counted in the document, as the trial tested it; undefined where the trial does not say. */
export function putBack(document: Document, recipe: Recipe, trial: Trial, line: number): PutBack | undefined {
  const { tested } = trial;
  if (tested === undefined) return undefined;
  const before = changedSince(factsOf(recipe), tested).length;
  for (const edits of candidates(document, recipe, trial, line).slice(0, MOST_TRIES)) {
    const after = bindRecipe(outline(applyEdits(document, edits), recipe.outline), recipe.world, recipe);
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
  const listed = part.head.ingredients.filter((i) => i.line === inPart);
  if (listed.length > 0) {
    const amounts = [...new Set(listed.flatMap((i) => i.node.amount ?? []))];
    const namesOf = (amount: AmountNode) => listed.filter((i) => i.node.amount === amount).map((i) => i.name);
    return together(
      amounts.map((amount) =>
        usedOf(namesOf(amount), trial).map((u) => replaceSpan(line, amount, textIn(u.at, u.amount))),
      ),
    );
  }
  const items = part.steps.find((s) => s.line === inPart)?.sentence.items ?? [];
  return together(
    items.map((item) => {
      const said =
        item.kind === 'duration'
          ? trial.took.map((t) => textIn(t.at, t.duration))
          : item.kind === 'temperature'
            ? trial.reached.map((r) => textIn(r.at, r.temperature))
            : [];
      return said.map((text) => replaceSpan(line, item, text));
    }),
  );
}

/** What the trial used of an ingredient of the line, which of several it is told by its name. */
function usedOf(names: readonly string[], trial: Trial): Trial['used'] {
  const called = names.map((name) => ` ${wordsOf(name).join(' ')}`);
  return trial.used.filter(({ name }) => called.some((n) => n.endsWith(` ${wordsOf(name.text).join(' ')}`)));
}

/** One or several of the figures changed, each in one of its ways; the fewest first. */
function together(figures: readonly (readonly TextEdit[])[]): TextEdit[][] {
  let sets: TextEdit[][] = [[]];
  for (const ways of figures)
    sets = sets.flatMap((set) => [set, ...ways.map((edit) => [...set, edit])]).slice(0, MOST_SETS);
  return sets.filter((set) => set.length > 0).sort((a, b) => a.length - b.length);
}
