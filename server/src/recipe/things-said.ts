/**
 * Knows which things a step speaks of, and whether it denies them.
 * Refuses to know what they are asked for.
 */
import { keptOn } from '../notation/kept.ts';
import type { Span } from '../notation/tree.ts';
import { type Spoken, sentenceAt, spokenOf, type Thing } from '../prose/things.ts';
import type { Part, Step } from './model.ts';

const KEPT = keptOn<Step['sentence'], readonly Spoken[]>();

/** What a step speaks of, from left to right, without what it denies. */
export function thingsOf({ sentence }: Step): readonly Spoken[] {
  let kept = KEPT.get(sentence);
  if (kept === undefined) {
    kept = spokenOf(sentence.items);
    KEPT.set(sentence, kept);
  }
  return kept;
}

interface StepAt {
  readonly part: number;
  readonly line: number;
}

const stepAt = (parts: readonly Part[], { part, line }: StepAt): Step | undefined =>
  parts[part]?.steps.find((each) => each.line === line);

/** The same of the step at a line of a part. */
export function thingsAt(parts: readonly Part[], at: StepAt): readonly Spoken[] {
  const step = stepAt(parts, at);
  return step === undefined ? NONE : thingsOf(step);
}

/** The sentence of a step that a place in its line is in. */
export const sentenceAround = (parts: readonly Part[], at: StepAt, place: number): Span =>
  sentenceAt(stepAt(parts, at)?.sentence.items ?? [], place);

const NONE: readonly Spoken[] = [];

export const speaks = (things: readonly Spoken[], ...of: readonly Thing[]): boolean =>
  things.some(({ is }) => of.includes(is));

/** Those within a clause. */
export const within = (things: readonly Spoken[], { start, end }: Span): readonly Spoken[] =>
  things.filter((thing) => thing.start >= start && thing.end <= end);
