/** Knows how the events of a sentence are written in one line each, for tables of tests. */
import type { Range } from '../../server/src/measure/quantity.ts';
import type { Event } from '../../server/src/prose/event.ts';
import { eventsOf } from '../outside/sentences/score.ts';

const span = ({ low, high }: Range): string => {
  const text = (n: number): string => (Number.isFinite(n) ? String(Math.round(n * 100) / 100) : '…');
  return low === high ? text(low) : `${text(low)}-${text(high)}`;
};
const celsius = ({ low, high }: Range): string => span({ low: Math.round(low), high: Math.round(high) });

/** `heat through ordered: @oven 163 °C oven, 20-25 min, until colour`. */
export function shown(event: Event): string {
  const {
    act,
    cooks,
    as,
    said,
    either,
    where,
    vessel,
    medium,
    temperatures,
    times,
    until,
    fate,
    meanwhile,
    batches,
    elsewhere,
  } = event;
  const head = [act, cooks, as === 'ordered' ? undefined : as, said === 'yes' ? undefined : said]
    .filter(Boolean)
    .join(' ');
  const told = [
    ...where.map(
      (w) => `${w.not ? 'not ' : ''}${w.way === 'at' ? '@' : `${w.way} `}${w.sure === 'inferred' ? '~' : ''}${w.is}`,
    ),
    ...(vessel === undefined ? [] : [`in ${vessel.is}`]),
    ...(medium === undefined ? [] : [`by ${medium.is}`]),
    ...temperatures.map(
      (t) => `${t.bound === 'is' ? '' : `${t.bound} `}${celsius(t.celsius)} C of ${t.sure === 'unread' ? '?' : t.of}`,
    ),
    ...times.map(
      (t) =>
        `${t.kind === 'spent' ? '' : `${t.kind} `}${span(t.minutes)} min${t.per ? ` a ${t.per}` : ''}${t.choice > 0 ? ` (${t.choice})` : ''}`,
    ),
    ...until.map((s) => `${s.from} ${s.is ?? '?'}`),
    ...(fate === undefined ? [] : [fate]),
    ...(meanwhile ? ['meanwhile'] : []),
    ...(batches === undefined ? [] : [`${span(batches)} times over`]),
    ...(either > 0 ? [`either ${either}`] : []),
    ...(elsewhere ? ['elsewhere'] : []),
  ];
  return told.length === 0 ? head : `${head}: ${told.join(', ')}`;
}

export const shownOf = (text: string): readonly string[] => eventsOf(text).map(shown);
