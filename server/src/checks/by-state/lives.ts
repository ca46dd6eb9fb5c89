/**
 * Knows how long what lies in the cold is meant to last where that is said of what is done with it, and not of its keeping: `eat some every
 * day for a fortnight`, `date the lids for twelve days on`.
 * Refuses to know how long is too long.
 */
import type { Act, TemperatureSaid, TimeSaid } from '../../prose/event.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import type { Body, Lying, Stay } from '../../recipe/journey/bodies.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { isCold, isFrozen } from '../../recipe/journey/stays.ts';

/** A time beside these is that of eating, or of what is written on a lid. */
const TELLS: ReadonlySet<Act> = new Set([
  'eat',
  'ready',
  'unknown',
  'put',
  'remove',
  'close',
  'pack',
  'cover',
  'reserve',
  'adjust',
  'cool',
]);
/** Of these a day to come is the last of it. */
const AT_LAST: ReadonlySet<Act> = new Set(['eat', 'ready']);
/** Only days are meant (judgement). */
const DAYS_MIN = 2 * 1440;
const WEEK_MIN = 7 * 1440;

/** A stay for each body that lies in the cold when so long is said. */
export const lives = (steps: readonly FoldedStep[]): readonly Stay[] =>
  steps.flatMap((step) =>
    step.events.flatMap((by): readonly Stay[] => {
      const time = lifeIn(by);
      if (time === undefined) return [];
      const { part, line } = step;
      return step.after.bodies.flatMap((body): readonly Stay[] => {
        const lies = coldOf(body, by, step);
        if (lies === undefined) return [];
        const { minutes } = time;
        return [
          { by, part, line, body, lies, minutes, timed: true, sure: 'inferred', branch: false, warmMin: body.warmMin },
        ];
      });
    }),
  );

function lifeIn({ event: { act, said, times, where } }: BoundEvent): TimeSaid | undefined {
  if (said !== 'yes' || !TELLS.has(act) || where.some(({ is, not }) => is === 'frozen' && !not)) return undefined;
  const isCooled = where.some(({ is, not }) => is === 'cold' && !not);
  return times.find(
    ({ kind, minutes }) =>
      minutes.high >= DAYS_MIN &&
      Number.isFinite(minutes.high) &&
      // `Eat by Monday`: nobody knows how far that is.
      (minutes.low >= WEEK_MIN || (kind !== 'until' && kind !== 'point')) &&
      (kind === 'point' ? AT_LAST.has(act) || isCooled : kind !== 'every'),
  );
}

/** Where it lies, if that is cold: it was put there, or is by the same words. */
function coldOf(
  { lies, waits, band }: Body,
  { event: { where } }: BoundEvent,
  { events }: FoldedStep,
): Lying | undefined {
  if (band === 'frozen') return undefined;
  const place = waits?.lies ?? lies;
  if (isCold(place)) return isFrozen(place) ? undefined : place;
  const said = where.find(({ is, not }) => is === 'cold' && !not);
  if (said !== undefined) return { place: 'cold', celsius: said.celsius ?? COLD, sure: said.sure };
  // `Case at 38 F. Date the lids …`
  const isAtFigure = events.some(({ event }) => event.said === 'yes' && event.temperatures.some(isOfColdPlace));
  return isAtFigure ? { place: 'cold', celsius: COLD, sure: 'inferred' } : undefined;
}

const isOfColdPlace = ({ of, celsius }: TemperatureSaid): boolean => of === 'around' && celsius.high <= COLD.high;

/** Of a fridge (FDA Food Code 2022, 3-501.16). */
const COLD = { low: 0, high: 5 } as const;
