/**
 * Knows which pictures a recipe has, what each shows, and in which words that is said to who does not see it.
 * Refuses to know whether the files are there.
 */
import { keptOn } from '../notation/kept.ts';
import type { Outline, PartSource } from '../notation/outline.ts';
import type { Line, TextNode } from '../notation/tree.ts';
import { titleOf } from './names/title.ts';

/** What a picture shows: the dish, or the step or trial that stands on a line of the document. */
export type Shown =
  | { readonly kind: 'dish' }
  | { readonly kind: 'step'; readonly line: number }
  | { readonly kind: 'trial'; readonly line: number; readonly date: string };

export interface Picture {
  /** The line of the document. */
  readonly at: number;
  readonly line: Line;
  /** As it is written: from the recipe's folder on. */
  readonly file: TextNode;
  readonly of: Shown;
  /** What is to be seen: the line's own words, else those of the step, the name of the recipe, or the day of the trial. */
  readonly alt: string;
}

/** All pictures: those of the dish, of the steps, of the trials. */
export function picturesOf({ recipe, head, parts, trials }: Outline): readonly Picture[] {
  const found: Picture[] = [];
  for (const { at, line } of head) {
    const shown = pictured(line);
    if (shown === undefined) continue;
    const name = titleOf(recipe?.line.statement).name?.text ?? '';
    found.push({ at, line, file: shown.file, of: { kind: 'dish' }, alt: shown.words ?? name });
  }
  for (const { at, source } of parts)
    for (const { offset, line, file, step, alt } of inPart(source))
      found.push({ at: at + offset, line, file, of: { kind: 'step', line: at + step }, alt });
  for (const { at, lines } of trials)
    lines.forEach((line, i) => {
      const shown = pictured(line);
      if (shown === undefined) return;
      const opening = lines[0]?.statement;
      const date = (opening?.kind === 'trial' ? opening.date?.text : undefined) ?? '';
      const of = { kind: 'trial', line: at, date } as const;
      found.push({ at: at + i, line, file: shown.file, of, alt: shown.words ?? `Trial of ${date}` });
    });
  return found;
}

/** A picture of a step, its own line and the step's counted from the first of the part. */
interface OfStep {
  readonly offset: number;
  readonly line: Line;
  readonly file: TextNode;
  readonly step: number;
  readonly alt: string;
}

/** A part that no edit touched is looked through once. */
const IN_PART = keptOn<PartSource, readonly OfStep[]>();

function inPart(source: PartSource): readonly OfStep[] {
  let found = IN_PART.get(source);
  if (found === undefined) {
    found = stepPictures(source.lines);
    IN_PART.set(source, found);
  }
  return found;
}

function stepPictures(lines: readonly Line[]): readonly OfStep[] {
  const found: OfStep[] = [];
  let step: { readonly at: number; readonly words: string } | undefined;
  for (let offset = 0; offset < lines.length; offset++) {
    const line = lines[offset] as Line;
    const { statement } = line;
    if (statement.kind === 'step') {
      const { start, end } = statement.sentence;
      step = { at: offset, words: line.text.slice(start, end).trim() };
    }
    const shown = pictured(line);
    if (step === undefined || shown === undefined) continue;
    found.push({ offset, line, file: shown.file, step: step.at, alt: shown.words ?? step.words });
  }
  return found;
}

function pictured({ statement }: Line): { readonly file: TextNode; readonly words?: string } | undefined {
  if (statement.kind !== 'picture' || statement.file === undefined) return undefined;
  return { file: statement.file, ...(statement.words && { words: statement.words.text }) };
}
