/**
 * Knows a step with its part, its number and its words: figures taken out, so that steps are alike whatever they count.
 * Refuses to know the other recipe.
 */
import { keyWords } from '../../prose/alike.ts';
import type { Part, Step } from '../../recipe/model.ts';
import { collapse } from '../../recipe/words.ts';

export interface PlacedStep {
  readonly part: Part;
  readonly step: Step;
  /** From 1. */
  readonly number: number;
  readonly text: string;
  readonly words: readonly string[];
}

export function stepsOf(part: Part): PlacedStep[] {
  return part.steps.map((step, i) => {
    const line = part.head.source.lines[step.line]?.text ?? '';
    const text = collapse(line.slice(step.sentence.start, step.sentence.end));
    return { part, step, number: i + 1, text, words: keyWords(step.sentence) };
  });
}
