/**
 * Knows the figures of a step with what they are of: each heat once, on all the scales that it is written in, and each time, with its event.
 * Refuses to know foods, and what is enough.
 */
import type { Range } from '../../measure/quantity.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import { keptOn } from '../../notation/kept.ts';
import type { DurationNode, Span, TemperatureNode } from '../../notation/tree.ts';
import type { Event, HeatOf, TemperatureSaid, TimeSaid } from '../../prose/event.ts';
import type { Step } from '../model.ts';
import { type BoundEvent, boundEvents } from './bind.ts';

/** A heat that a step says. Its span holds every scale that it is written in, with a bracket around the last. */
export interface HeatFigure extends Span {
  /** One at least; the first is as `celsius` has it. Of degrees without a scale the one that can be, where only one can. */
  readonly written: readonly TemperatureNode[];
  /** Its other end has no scale of its own: `between 60 and 65 C`. */
  readonly isHalf: boolean;
  /** °C; of a change by so much the difference. */
  readonly celsius: Range;
  readonly of: HeatOf;
  readonly inside: boolean;
  readonly bound: TemperatureSaid['bound'];
  /** The scale that must be meant: what is written cannot be. */
  readonly meant?: TemperatureSaid['meant'];
  /** What is written cannot be, on either scale. */
  readonly cannot?: boolean;
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
  const nodes = sentence.items.filter((item) => item.kind === 'temperature');
  for (const { event } of events)
    for (const said of event.temperatures) {
      if (heats.some(({ start }) => start === said.start)) continue;
      // `from 180 C to 190 C` is two on the line.
      const ends = nodes.filter((node) => said.start <= node.start && node.end <= said.end);
      if (ends.length > said.written.length)
        for (const node of ends) heats.push({ ...figureOf(said, event), ...alone(node) });
      else heats.push(figureOf(said, event));
    }
  for (const node of nodes)
    if (!heats.some(({ start, end }) => start <= node.start && node.end <= end))
      heats.push({ ...alone(node), of: 'nothing', inside: false, bound: 'is' });
  return heats.length === 0 ? NO_HEATS : heats.sort((a, b) => a.start - b.start);
}

const alone = (node: TemperatureNode): Pick<HeatFigure, 'start' | 'end' | 'written' | 'celsius' | 'isHalf'> => ({
  start: node.start,
  end: node.end,
  written: [node],
  isHalf: false,
  celsius: celsiusOf(node),
});

function figureOf(said: TemperatureSaid, event: Event): HeatFigure {
  const { start, end, written, celsius, of, inside, bound, meant, cannot = false } = said;
  const [first, ...more] = written as readonly [TemperatureNode, ...TemperatureNode[]];
  const isHalf = first.high === undefined && first.lowDegrees !== first.highDegrees;
  return {
    start,
    end,
    written: [withScale(first, celsius), ...more],
    isHalf,
    celsius,
    of,
    inside,
    bound,
    meant,
    cannot,
    event,
  };
}

/** Degrees of which the scale is not said, with that on which they were understood. */
function withScale(node: TemperatureNode, celsius: Range): TemperatureNode {
  if (node.unit !== 'unsaid') return node;
  const scale = (['C', 'F'] as const).find((unit) => {
    const { low, high } = celsiusOf({ ...node, unit });
    return low === celsius.low && high === celsius.high;
  });
  return scale === undefined ? node : { ...node, unit: scale };
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

/** A time of a step as it is written in figures; undefined for one in other words. */
export const durationOf = ({ sentence }: Step, said: Span): DurationNode | undefined =>
  sentence.items.find(
    (item): item is DurationNode => item.kind === 'duration' && item.start >= said.start && item.end <= said.end,
  );

/** Whether it is told of what cools, or is to be kept: no promise of what the food reaches as it cooks. */
export const isOfCooling = ({ event }: Pick<HeatFigure, 'event'>): boolean =>
  event?.act === 'cool' || event?.act === 'freeze';
