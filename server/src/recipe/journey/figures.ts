/**
 * Knows the figures of a step with what they are of: each heat once, on all the scales that it is written in, and each time, with its event.
 * Refuses to know foods, and what is enough.
 */
import type { Range } from '../../measure/quantity.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Span, TemperatureNode } from '../../notation/tree.ts';
import type { Event, HeatOf, TemperatureSaid, TimeSaid } from '../../prose/event.ts';
import type { Step } from '../recipe.ts';
import { type BoundEvent, boundEvents } from './bind.ts';

/** A heat that a step says. Its span holds every scale that it is written in, with a bracket around the last. */
export interface HeatFigure extends Span {
  /** One at least; the first is as `celsius` has it. */
  readonly written: readonly TemperatureNode[];
  /** °C; of a change by so much the difference. */
  readonly celsius: Range;
  readonly of: HeatOf;
  readonly inside: boolean;
  readonly bound: TemperatureSaid['bound'];
  /** What is done at it; undefined where no event says it. */
  readonly event?: Event;
}

export interface TimeFigure {
  readonly said: TimeSaid;
  readonly event: Event;
}

const HEATS = keptOn<readonly BoundEvent[], readonly HeatFigure[]>();
const TIMES = keptOn<readonly BoundEvent[], readonly TimeFigure[]>();
const NO_HEATS: readonly HeatFigure[] = [];
const NO_TIMES: readonly TimeFigure[] = [];

/** The heats that a step says, in order: all its temperatures, and the numbers that are one (`bake at 350`). */
export function heatsOf(step: Step): readonly HeatFigure[] {
  const events = boundEvents(step);
  let heats = HEATS.get(events);
  if (heats === undefined) {
    heats = heatsIn(step, events);
    HEATS.set(events, heats);
  }
  return heats;
}

function heatsIn({ sentence }: Step, events: readonly BoundEvent[]): readonly HeatFigure[] {
  const heats: HeatFigure[] = [];
  for (const { event } of events)
    for (const { start, end, written, celsius, of, inside, bound } of event.temperatures)
      if (!heats.some((each) => each.start === start))
        heats.push({ start, end, written, celsius, of, inside, bound, event });
  for (const item of sentence.items) {
    if (item.kind !== 'temperature' || heats.some(({ start, end }) => start <= item.start && item.end <= end)) continue;
    const { start, end } = item;
    heats.push({ start, end, written: [item], celsius: celsiusOf(item), of: 'nothing', inside: false, bound: 'is' });
  }
  return heats.length === 0 ? NO_HEATS : heats.sort((a, b) => a.start - b.start);
}

/** The times that a step says, in order. */
export function timesOf(step: Step): readonly TimeFigure[] {
  const events = boundEvents(step);
  let times = TIMES.get(events);
  if (times === undefined) {
    const all = events.flatMap(({ event }) => event.times.map((said): TimeFigure => ({ said, event })));
    times = all.length === 0 ? NO_TIMES : all.sort((a, b) => a.said.start - b.said.start);
    TIMES.set(events, times);
  }
  return times;
}
