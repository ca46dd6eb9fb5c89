/**
 * Knows all that the steps of a journey do, one after the other, each with what the words around it speak of.
 * Refuses to know what any of it means.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Span } from '../../notation/tree.ts';
import type { Spoken } from '../../prose/things.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { sentenceAround, thingsAt, within } from '../../recipe/things-said.ts';
import { onceFor } from '../once.ts';

export interface Done {
  readonly by: BoundEvent;
  readonly part: number;
  /** The line in its part, from 0. */
  readonly line: number;
  /** All that its step speaks of. */
  readonly things: readonly Spoken[];
  /** The sentence that it stands in. */
  readonly sentence: Span;
}

export const doneIn = onceFor((journey: Journey): readonly Done[] =>
  journey.steps.flatMap((step) => {
    let done = BY_STEP.get(step);
    if (done === undefined) {
      done = doneBy(step, journey.parts);
      BY_STEP.set(step, done);
    }
    return done;
  }),
);

const BY_STEP = keptOn<FoldedStep, readonly Done[]>();

function doneBy(step: FoldedStep, parts: Journey['parts']): readonly Done[] {
  const things = thingsAt(parts, step);
  return step.events.map((by) => {
    const sentence = sentenceAround(parts, step, by.event.start);
    return { by, part: step.part, line: step.line, things, sentence };
  });
}

/** What the words between the event before and the one behind it speak of. */
export function spokenAround(done: readonly Done[], at: number): readonly Spoken[] {
  const { by, part, line, things } = done[at] as Done;
  const isHere = (other: Done | undefined): boolean => other?.part === part && other.line === line;
  const [before, behind] = [done[at - 1], done[at + 1]];
  const start = isHere(before) ? Math.min(by.event.start, before?.by.event.end ?? 0) : 0;
  const end = isHere(behind) ? Math.max(by.event.end, behind?.by.event.start ?? 0) : Number.POSITIVE_INFINITY;
  return within(things, { start, end });
}

/** The same, of its own sentence alone. */
export const spokenInSentence = (done: readonly Done[], at: number): readonly Spoken[] =>
  within(spokenAround(done, at), (done[at] as Done).sentence);
