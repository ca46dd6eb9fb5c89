/**
 * Knows which time or temperature of the steps a line of a trial is nearest to, where that is too far away.
 * Refuses to know what is said of it.
 */
import type { Range } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { DurationNode, Span, TemperatureNode, TextNode } from '../../notation/tree.ts';
import type { TimeSaid } from '../../prose/event.ts';
import { type NamedVerb, verbNamed } from '../../prose/verb-named.ts';
import { durationOf, heatsOf, isOfCooling, type TimeFigure, timesOf } from '../../recipe/journey/figures.ts';
import type { Part, Step } from '../../recipe/model.ts';
import type { Trial } from '../../recipe/trials/trials.ts';
import { onceFor } from '../once.ts';
import { changedBetween, type Given, overParts } from '../over-parts.ts';

export const TIME_SLACK = 0.15;
export const TEMPERATURE_SLACK_C = 3;

export type Took = Trial['took'][number];
export type Reached = Trial['reached'][number];

export interface TimeAt {
  readonly part: Part;
  readonly step: Step;
  readonly said: TimeSaid;
  /** As it is written in figures. */
  readonly node: DurationNode;
  readonly verb: NamedVerb | undefined;
}

export interface HeatAt {
  readonly part: Part;
  readonly step: Step;
  readonly celsius: Range;
  readonly node: TemperatureNode;
}

/** The times in figures that the steps spend. */
export const timesIn = overParts((part): readonly TimeAt[] | undefined => {
  let times: TimeAt[] | undefined;
  for (const step of part.steps)
    for (const spent of spentIn(step, part)) {
      times ??= [];
      times.push({ part, step, ...spent });
    }
  return times;
});

type Spent = Pick<TimeAt, 'said' | 'node' | 'verb'>;

const SPENT = keptOn<readonly TimeFigure[], readonly Spent[]>();

/** The times in figures that a step spends, each with its verb. */
function spentIn(step: Step, part: Part): readonly Spent[] {
  const times = timesOf(step);
  if (times.length === 0) return NOTHING_SPENT;
  let spent = SPENT.get(times);
  if (spent === undefined) {
    spent = times.flatMap(({ said, event }): readonly Spent[] => {
      const node = said.kind === 'spent' ? durationOf(step, said) : undefined;
      const verb = event.verb && verbNamed(textAt(part, step.line, event.verb));
      return node === undefined ? NOTHING_SPENT : [{ said, node, verb }];
    });
    SPENT.set(times, spent);
  }
  return spent;
}

const NOTHING_SPENT: readonly Spent[] = [];

/** Temperatures promised in the food. */
export const heatIn = overParts((part): readonly HeatAt[] | undefined => {
  let heat: HeatAt[] | undefined;
  for (const step of part.steps)
    for (const figure of heatsOf(step)) {
      const [node] = figure.written;
      if (figure.of !== 'food' || isOfCooling(figure) || node === undefined) continue;
      heat ??= [];
      heat.push({ part, step, celsius: figure.celsius, node });
    }
  return heat;
});

export const namedIn = (verb: TextNode | undefined): string | undefined => verb && verbNamed(verb.text)?.key;

/** The first of those nearest to what a trial measured, among what parts gave. */
interface Nearest<T> {
  readonly given: readonly Given<readonly T[]>[];
  /** Its place among those, -1 while there is none. */
  readonly at: number;
  readonly reading?: T;
  readonly away: number;
}

const nothingNear = { given: [], at: -1, away: Number.POSITIVE_INFINITY };

/**
 * The nearest now: while the last one stands, only what is new has to be held against it. `far` is undefined of what it is not held against.
 */
function nearestAgain<T>(
  given: Nearest<T>['given'],
  far: (reading: T) => number | undefined,
  last: Nearest<T>,
): Nearest<T> {
  if (given === last.given) return last;
  const changed = changedBetween(last.given, given);
  const stands = changed.every(({ from, oldTo }) => last.at < from || last.at >= oldTo);
  const isBelow = changed.some(({ from }) => from <= last.at);
  const moved = isBelow ? given.length - last.given.length : 0;
  let nearest: Nearest<T> = stands ? { ...last, given, at: last.at + moved } : { ...nothingNear, given };
  for (const { from, to } of stands ? changed : [{ from: 0, to: given.length }])
    for (let at = from; at < to; at++)
      for (const reading of given[at]?.value ?? []) {
        const away = far(reading);
        if (away === undefined) continue;
        if (nearest.at < 0 || away < nearest.away || (away === nearest.away && at < nearest.at))
          nearest = { given, at, reading, away };
      }
  return nearest;
}

const lastTime = onceFor(
  ({ verb }: Took): { readonly verb: string | undefined; readonly isHeld: boolean; nearest: Nearest<TimeAt> } => {
    const named = namedIn(verb);
    return { verb: named, isHeld: verb === undefined || named !== undefined, nearest: nothingNear };
  },
);

/** The nearest time of the steps of the verb that the line names, of none where it names none; where that is too far. */
export function farTime(line: Took, given: Nearest<TimeAt>['given']): TimeAt | undefined {
  const last = lastTime(line);
  // It names no verb of the kitchen.
  if (!last.isHeld) return undefined;
  const far = ({ verb, said: { minutes } }: TimeAt) =>
    verb?.key === last.verb ? distanceOf(line.duration.lowMin, minutes.low, minutes.high) : undefined;
  last.nearest = nearestAgain(given, far, last.nearest);
  const { reading, away } = last.nearest;
  return reading === undefined || away <= TIME_SLACK * reading.said.minutes.high ? undefined : reading;
}

const lastHeat = onceFor((_: Reached): { nearest: Nearest<HeatAt> } => ({ nearest: nothingNear }));

/** The nearest temperature of the steps, where that is too far. */
export function farHeat(line: Reached, given: Nearest<HeatAt>['given']): HeatAt | undefined {
  const last = lastHeat(line);
  const far = ({ celsius }: HeatAt) => distanceOf(line.celsius.low, celsius.low, celsius.high);
  last.nearest = nearestAgain(given, far, last.nearest);
  const { reading, away } = last.nearest;
  return away <= TEMPERATURE_SLACK_C ? undefined : reading;
}

export const distanceOf = (value: number, low: number, high: number): number =>
  value < low ? low - value : value > high ? value - high : 0;

export const textAt = ({ head }: Part, line: number, { start, end }: Span): string =>
  head.source.lines[line]?.text.slice(start, end) ?? '';
