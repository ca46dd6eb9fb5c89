/** What the trials measured of one time, temperature, weight or amount: each by its date, and the spread of several. */

import { trimmed } from '../../measure/number-text.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import { baseOf } from '../../measure/unit.ts';
import type { DurationNode, MeasuredNode, TemperatureNode, TextNode } from '../../notation/tree.ts';
import { verbNamed } from '../../prose/verb-named.ts';
import { type HeatFigure, heatsOf, isOfCooling, type TimeFigure, timesOf } from '../../recipe/journey/figures.ts';
import type { Part, Step } from '../../recipe/model.ts';
import { isOutOfOven, outOfOven } from '../../recipe/trials/out-of-oven.ts';
import { isOutsideFood, readTrials, type Trial } from '../../recipe/trials/trials.ts';
import { sameName } from '../../recipe/words.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { figure } from '../facts.ts';
import { holds, placeOf } from '../place.ts';
import { sayGrams, sayMinutesRange, span, textOf } from '../words.ts';
import type { Fact, HoverSource } from './fact.ts';

/** What the trials took over a step's time: of several steps with its verb, the one that each came nearest to. */
export function timeTrials(snapshot: Snapshot, reading: TimeFigure): Fact[] {
  const times = snapshot.recipe.parts.flatMap((part) =>
    part.steps.flatMap((step) => timesOf(step).map((time) => ({ time, verb: verbIn(part, step, time) }))),
  );
  const own = times.find(({ time }) => time === reading)?.verb;
  const alike = times.flatMap(({ time, verb }) => (verb === own ? [time] : []));
  const nearest = (minutes: number) => nearestOf(alike, minutes, ({ said }) => said.minutes);
  return sayTrials(
    snapshot,
    ({ took }) =>
      took
        .filter(({ verb }) => verbOf(verb) === own)
        .map(({ at, duration }) => ({ at, node: duration, value: minutesOf(duration) }))
        .filter(({ value }) => nearest(value) === reading),
    sayMinutesRange,
  );
}

const verbIn = ({ head }: Part, { line }: Step, { event: { verb } }: TimeFigure): string | undefined =>
  verb && verbNamed(head.source.lines[line]?.text.slice(verb.start, verb.end) ?? '')?.key;

/** The temperatures that the trials reached where a step promises one in the food. */
export function heatTrials(snapshot: Snapshot, reading: HeatFigure): Fact[] {
  if (reading.of !== 'food' || isOfCooling(reading)) return [];
  const alike = snapshot.recipe.parts.flatMap((p) =>
    p.steps.flatMap((s) => heatsOf(s).filter((h) => h.of === 'food' && !isOfCooling(h))),
  );
  return sayTrials(
    snapshot,
    ({ reached }) =>
      reached
        .filter(({ place }) => !isOutsideFood(place))
        .map(({ at, temperature, celsius }) => ({ at, node: temperature, value: middle(celsius) }))
        .filter(({ value }) => nearestOf(alike, value, ({ celsius }) => celsius) === reading),
    (c) => `${span(c, (n) => trimmed(n, 1))} °C`,
  );
}

/** A line of a trial beside the same line of the others. */
export function tookTrials(snapshot: Snapshot, to: TextNode | undefined): Fact[] {
  return sayTrials(
    snapshot,
    ({ took }) =>
      took
        .filter(({ verb }) => verbOf(verb) === verbOf(to))
        .map(({ at, duration }) => ({ at, node: duration, value: minutesOf(duration) })),
    sayMinutesRange,
  );
}

export function reachedTrials(snapshot: Snapshot, place: TextNode | undefined): Fact[] {
  return sayTrials(
    snapshot,
    ({ reached }) =>
      reached
        .filter((r) => sameText(r.place, place))
        .map(({ at, temperature, celsius }) => ({ at, node: temperature, value: middle(celsius) })),
    (c) => `${span(c, (n) => trimmed(n, 1))} °C`,
  );
}

/** `weighed` and `used`, which nothing else explains. */
export const hoverTrial: HoverSource = (snapshot, { line, at, character }) => {
  const { statement } = line;
  const amount = statement.kind === 'weighed' || statement.kind === 'used' ? statement.amount : undefined;
  if (amount?.kind !== 'measured' || !holds(amount, character)) return undefined;
  const facts =
    statement.kind === 'weighed'
      ? weightTrials(snapshot, ({ weighed }) => weighed.filter((w) => sameText(w.outOf, statement.outOf)))
      : statement.kind === 'used'
        ? weightTrials(snapshot, ({ used }) =>
            used.flatMap((u) =>
              u.amount.kind === 'measured' && sameText(u.name, statement.name) && sameText(u.part, statement.part)
                ? [{ at: u.at, amount: u.amount }]
                : [],
            ),
          )
        : [];
  const usual = statement.kind === 'weighed' && isOutOfOven(statement) ? usualOut(snapshot) : [];
  if (facts.length < 2 && usual.length === 0) return undefined;
  return { at: placeOf(at, amount), title: textOf(line, amount), facts: [...facts, ...usual] };
};

/** What usually comes out of the oven, of what goes in. */
function usualOut({ whole }: Snapshot): Fact[] {
  const usual = outOfOven(whole.recipe);
  if (usual === undefined || !Number.isFinite(usual.left.high)) return [];
  return [figure('Usual', `${sayGrams(usual.left)}, of ${sayGrams(usual.ingredients)} of ingredients`)];
}

function weightTrials(
  snapshot: Snapshot,
  of: (trial: Trial) => readonly { readonly at: number; readonly amount: MeasuredNode }[],
): Fact[] {
  return sayTrials(
    snapshot,
    (trial) =>
      of(trial).flatMap(({ at, amount }) => {
        const base = amount.unit === undefined ? undefined : baseOf(amount.unit.symbol, snapshot.house.world.measures);
        return base === undefined ? [] : [{ at, node: amount, value: middle(amount.quantity) * base }];
      }),
    sayGrams,
  );
}

interface Measured {
  readonly at: number;
  readonly node: DurationNode | TemperatureNode | MeasuredNode;
  readonly value: number;
}

function sayTrials(
  snapshot: Snapshot,
  measuredIn: (trial: Trial) => readonly Measured[],
  say: (range: Range) => string,
): Fact[] {
  const measured = readTrials(snapshot.outline).flatMap((trial) => measuredIn(trial).map((m) => ({ trial, ...m })));
  const facts = measured.map(({ trial, at, node }) => {
    const line = snapshot.document.lines[at];
    return figure(`Trial of ${trial.date}`, line === undefined ? '' : textOf(line, node));
  });
  if (measured.length < 2) return facts;
  const values = measured.map((m) => m.value);
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const said =
    low === high
      ? `${say({ low, high })} each time`
      : `${say({ low, high })}, ${say({ low: mean, high: mean })} on average`;
  return [...facts, figure('Spread', said)];
}

function nearestOf<T>(all: readonly T[], value: number, rangeOf: (of: T) => Range): T | undefined {
  const far = (of: T) => {
    const { low, high } = rangeOf(of);
    return value < low ? low - value : value > high ? value - high : 0;
  };
  return all.reduce<T | undefined>((a, b) => (a === undefined || far(b) < far(a) ? b : a), undefined);
}

const minutesOf = ({ lowMin, highMin }: DurationNode): number => (lowMin + highMin) / 2;

const verbOf = (verb: TextNode | undefined): string | undefined => verb && verbNamed(verb.text)?.key;

const sameText = (a: TextNode | undefined, b: TextNode | undefined): boolean => sameName(a?.text ?? '', b?.text ?? '');
