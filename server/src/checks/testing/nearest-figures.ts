/**
 * Knows which time or temperature of the steps a line of a trial is nearest to, where that is too far away.
 * Refuses to know what is said of it.
 */
import type { Range } from '../../measure/quantity.ts';
import type { DurationNode, Span, TemperatureNode, TextNode } from '../../notation/tree.ts';
import type { TimeSaid } from '../../prose/event.ts';
import { type NamedVerb, verbNamed } from '../../prose/verb-named.ts';
import { durationOf, heatsOf, isOfCooling, timesOf } from '../../recipe/journey/figures.ts';
import type { Part, Recipe, Step } from '../../recipe/recipe.ts';
import type { Trial } from '../../recipe/trials.ts';
import { onceFor } from '../once.ts';
import { changedBetween, type Given, overParts } from '../over-parts.ts';

export const TIME_SLACK = 0.15;
const TEMPERATURE_SLACK_C = 3;

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

type TimesIn = (recipe: Recipe) => readonly Given<readonly TimeAt[]>[];

/** By verb; there are only as many as there are verbs of the kitchen. */
const TIMES = new Map<string | undefined, TimesIn>();

/** The times of a verb in the steps; those that no verb has where none is given. */
function timesOfVerb(verb: string | undefined): TimesIn {
  let times = TIMES.get(verb);
  if (times === undefined) {
    times = overParts((part) => timesIn(part, verb));
    TIMES.set(verb, times);
  }
  return times;
}

function timesIn(part: Part, of: string | undefined): readonly TimeAt[] | undefined {
  let times: TimeAt[] | undefined;
  for (const step of part.steps)
    for (const { said, event } of timesOf(step)) {
      const verb = event.verb && verbNamed(textAt(part, step.line, event.verb));
      const node = durationOf(step, said);
      if (verb?.key !== of || node === undefined || said.kind !== 'spent') continue;
      times ??= [];
      times.push({ part, step, said, node, verb });
    }
  return times;
}

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

/** What a line took is held against: the times of a verb, of none where it names none, and undefined where it names no verb of the kitchen. */
export const heldAgainst = onceFor(({ verb }: Took): TimesIn | undefined => {
  const named = namedIn(verb);
  return verb !== undefined && named === undefined ? undefined : timesOfVerb(named);
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

/** The nearest now: while the last one stands, only what is new has to be held against it. */
function nearestAgain<T>(given: Nearest<T>['given'], far: (reading: T) => number, last: Nearest<T>): Nearest<T> {
  if (given === last.given) return last;
  const changed = changedBetween(last.given, given);
  const stands = last.at >= 0 && changed.every(({ from, oldTo }) => last.at < from || last.at >= oldTo);
  const isBelow = changed.some(({ from }) => from <= last.at);
  const moved = isBelow ? given.length - last.given.length : 0;
  let nearest: Nearest<T> = stands ? { ...last, given, at: last.at + moved } : { ...nothingNear, given };
  for (const { from, to } of stands ? changed : [{ from: 0, to: given.length }])
    for (let at = from; at < to; at++)
      for (const reading of given[at]?.value ?? []) {
        const away = far(reading);
        if (nearest.at < 0 || away < nearest.away || (away === nearest.away && at < nearest.at))
          nearest = { given, at, reading, away };
      }
  return nearest;
}

const lastTime = onceFor((_: Took): { nearest: Nearest<TimeAt> } => ({ nearest: nothingNear }));

/** The nearest time of the steps, where that is too far. */
export function farTime(line: Took, given: Nearest<TimeAt>['given']): TimeAt | undefined {
  const last = lastTime(line);
  const far = ({ said: { minutes } }: TimeAt) => distanceOf(line.duration.lowMin, minutes.low, minutes.high);
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
