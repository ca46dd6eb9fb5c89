/**
 * Knows how lines of a part become a part of their own, above it, and how the part then takes that in.
 * Refuses a selection that would leave nothing, or take a step without what it uses.
 */
import type { Document } from '../notation/document.ts';
import type { Line } from '../notation/tree.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import { titleOf } from '../recipe/names/title.ts';
import { singular, wordsOf } from '../recipe/words.ts';
import { indentOf } from './set-amount.ts';
import type { TextEdit } from './text-edit.ts';

export interface ExtractedPart {
  readonly name: string;
  readonly edits: readonly TextEdit[];
}

/** The ingredients, and the steps that take them, on the lines from `first` to `last` of the document as a new part. */
export function extractPart(
  document: Document,
  recipe: Recipe,
  part: Part,
  first: number,
  last: number,
): ExtractedPart | undefined {
  const base = recipe.partsAt[part.index] ?? 0;
  const { lines } = part.head.source;
  const chosen = chosenLines(lines, first - base, last - base);
  const listed = part.head.ingredients.filter((i) => chosen.has(i.line));
  const steps = part.steps.filter((s) => chosen.has(s.line));
  const restOfList = part.head.ingredients.length - listed.length;
  const restOfSteps = part.steps.length - steps.length;
  if (listed.length === 0 || steps.length === 0 || restOfList + restOfSteps === 0) return undefined;
  if (!standsAlone(part, chosen)) return undefined;
  const name = freeName(recipe, listed.length === 1 ? `${headOf(listed[0]?.name ?? '')} mix` : 'mix');
  const indent = indentOf(document, base + (listed[0]?.line ?? 0));
  const nameless = !part.head.source.named;
  const at = base;
  const moved = [...chosen].sort((a, b) => a - b);
  const texts = blocks(lines, moved);
  const head = [`part ${name}`, ...texts, ''];
  const edits: TextEdit[] = [];
  if (nameless) {
    head.push(`part ${freeName(recipe, 'rest')}${kindOf(recipe)}`);
    edits.push(...withoutKind(recipe));
  }
  edits.push({ start: { line: at, character: 0 }, end: { line: at, character: 0 }, text: `${head.join('\n')}\n` });
  const takesIn = `${indent}do Add the ${name}.`;
  const firstStep = steps[0] === undefined ? undefined : base + steps[0].line;
  for (const run of runs(moved.map((l) => l + base))) {
    const withStep = firstStep !== undefined && run[0] <= firstStep && firstStep <= run[1];
    edits.push(replaceLines(document, run, withStep ? takesIn : undefined));
  }
  return { name, edits };
}

/** Ingredients and steps in the range, with the comments and accepted findings right above one of them. */
function chosenLines(lines: readonly Line[], first: number, last: number): Set<number> {
  const chosen = new Set<number>();
  lines.forEach((line, i) => {
    const { kind } = line.statement;
    if (i < first || i > last || (kind !== 'ingredient' && kind !== 'step')) return;
    chosen.add(i);
    for (let k = i - 1; k >= 0; k--) {
      const above = lines[k];
      const goes =
        above?.statement.kind === 'allow' || (above?.statement.kind === 'blank' && above.comment !== undefined);
      if (!goes || (above?.statement.kind === 'blank' && k < first)) break;
      chosen.add(k);
    }
  });
  return chosen;
}

/** No step that moves takes what stays: the new part stands above, where only earlier lists are seen. */
function standsAlone(part: Part, chosen: ReadonlySet<number>): boolean {
  return part.steps
    .filter((s) => chosen.has(s.line))
    .every((s) =>
      s.mentions.every((m) =>
        m.ingredients.every(
          (r) => r.part !== part.index || chosen.has(part.head.ingredients[r.ingredient]?.line ?? -1),
        ),
      ),
    );
}

/** The lines that move, in order; a blank line parts the list from the steps. */
function blocks(lines: readonly Line[], moved: readonly number[]): string[] {
  const texts: string[] = [];
  let listing = true;
  for (const i of moved) {
    const line = lines[i];
    if (line === undefined) continue;
    if (listing && line.statement.kind === 'step') {
      listing = false;
      texts.push('');
    }
    texts.push(line.text);
  }
  return texts;
}

function runs(sorted: readonly number[]): (readonly [number, number])[] {
  const found: [number, number][] = [];
  for (const line of sorted) {
    const last = found.at(-1);
    if (last !== undefined && last[1] === line - 1) last[1] = line;
    else found.push([line, line]);
  }
  return found;
}

function replaceLines(document: Document, [from, to]: readonly [number, number], text: string | undefined): TextEdit {
  const end = document.lines[to]?.text.length ?? 0;
  if (text !== undefined) return { start: { line: from, character: 0 }, end: { line: to, character: end }, text };
  if (to + 1 < document.lines.length)
    return { start: { line: from, character: 0 }, end: { line: to + 1, character: 0 }, text: '' };
  const before = document.lines[from - 1]?.text.length ?? 0;
  return { start: { line: from - 1, character: before }, end: { line: to, character: end }, text: '' };
}

const headOf = (name: string): string => wordsOf(name).map(singular).at(-1) ?? 'new';

/** A name that no part and no ingredient ends in. */
function freeName(recipe: Recipe, wanted: string): string {
  const taken = new Set(
    recipe.parts.flatMap((p) =>
      [p.head.name, ...p.head.ingredients.map((i) => i.name)].map((n) => wordsOf(n).join(' ')),
    ),
  );
  let name = wanted;
  for (let i = 2; taken.has(name); i++) name = `${wanted} ${i}`;
  return name;
}

function kindOf({ outline }: Recipe): string {
  const { as } = titleOf(outline.recipe?.line.statement);
  return as === undefined ? '' : ` as ${as.text}`;
}

/** `recipe NAME as KIND` is for a recipe without parts: the kind goes to the part. */
function withoutKind({ outline }: Recipe): TextEdit[] {
  const { recipe } = outline;
  const { name, as } = titleOf(recipe?.line.statement);
  if (recipe === undefined || as === undefined || name === undefined) return [];
  return [
    {
      start: { line: recipe.at, character: name.end },
      end: { line: recipe.at, character: as.end },
      text: '',
    },
  ];
}
