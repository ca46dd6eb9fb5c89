/**
 * Knows what goes into something that goes on cooking, by a time within that of the heat: `simmer for 2 h; after 1 h add the chicken`.
 * Refuses to know heat that begins behind it.
 */
import type { Event } from '../../prose/event.ts';
import type { BoundEvent } from './bind.ts';
import { type Body, isHot, withStates } from './bodies.ts';
import { heated } from './heating.ts';
import { spentIn } from './readings.ts';
import { settleTemperatures } from './temperatures.ts';

/** For less, nobody says that what is thrown in is cooked by it (judgement). */
const LEAST_MIN = 5;

/** The bodies, with what is raw of them heated for the rest of that time. */
export function heatedAlong(bodies: readonly Body[], event: Event): readonly Body[] {
  const at = event.times.find(({ kind }) => kind === 'point')?.minutes;
  const by = at && bodies.find(isHot)?.members.find(({ state }) => state.heatedBy !== undefined)?.state.heatedBy;
  if (at === undefined || by === undefined) return bodies;
  const spent = spentIn(by.event);
  // `After 20 min`, or `for the last 20 min`: the shorter is sure.
  const least = Math.min(at.low, spent.low - at.high);
  const most = Math.max(at.high, spent.high - at.low);
  if (least < LEAST_MIN) return bodies;
  return bodies.map((body) =>
    body.members.every(({ state }) => state.cooked === 'raw') ? along(body, by, least, most) : body,
  );
}

function along(body: Body, by: BoundEvent, low: number, high: number): Body {
  const [time] = by.event.times;
  if (time === undefined) return body;
  const event: Event = { ...by.event, times: [{ ...time, kind: 'spent', minutes: { low, high } }] };
  const rest = { ...by, event };
  const done = heated(body, rest, settleTemperatures(event, body));
  return withStates(done, (state) => ({
    ...state,
    heatedBy: state.heatedBy === rest ? by : state.heatedBy,
    reads: state.reads.map((read) => (read.by === rest ? { ...read, by } : read)),
  }));
}
