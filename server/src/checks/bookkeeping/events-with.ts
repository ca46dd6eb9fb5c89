/**
 * Knows which events name what a use takes.
 */
import type { Event } from '../../prose/event.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import type { Part, TakenUse } from '../../recipe/model.ts';

/** Of this part's steps. */
export const eventsWith = ({ mention, line }: TakenUse, part: Part): readonly Event[] =>
  part.steps.flatMap((step) =>
    step.line === line
      ? boundEvents(step).flatMap(({ event, names }) => (names.some((name) => name.mention === mention) ? [event] : []))
      : [],
  );
