/**
 * Knows what is asked of a step by everything that may burn or burst in it.
 * Refuses to know what that is.
 */
import type { Spoken } from '../../prose/things.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';

/** A step with all that is asked of it. */
export interface At {
  readonly journey: Journey;
  readonly step: FoldedStep;
  /** Its place among the steps of the journey. */
  readonly place: number;
  readonly things: readonly Spoken[];
}
