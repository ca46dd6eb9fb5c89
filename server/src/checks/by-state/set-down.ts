/**
 * Knows what becomes of food that was set down, with no word of for how long: eaten, heated or chilled right then, or drawn on for days.
 * Refuses to know whether it spoils.
 */
import type { Act } from '../../prose/event.ts';
import type { Stay } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';

/** `Set it on the table and eat at once`, `at the back of the range, it simmers there`. */
export function isTakenUp({ steps }: Journey, { part, line, by }: Stay): boolean {
  const events = steps.find((step) => step.part === part && step.line === line)?.events ?? [];
  const next = events[events.findIndex(({ event }) => event.start === by.event.start) + 1]?.event;
  return (
    (next?.act === 'eat' && next.fate === 'now') ||
    (next?.act === 'heat' && next.as === 'told') ||
    // `On the side until it stops steaming, then refrigerate`
    (by.horizon !== true && next?.said === 'yes' && next.where.some(({ is, not }) => !not && is === 'cold'))
  );
}

/** `Take from it daily`: so it stands there for days. */
export const isDrawnOn = ({ steps }: Journey, { part, line }: Stay): boolean =>
  steps.some(
    (step) =>
      step.part === part &&
      step.line > line &&
      step.events.some(
        ({ event }) =>
          DRAWS.has(event.act) && event.times.some(({ kind, minutes }) => kind === 'every' && minutes.high >= DAY_MIN),
      ),
  );
const DRAWS: ReadonlySet<Act> = new Set<Act>(['remove', 'combine', 'eat', 'divide']);
const DAY_MIN = 1440;
