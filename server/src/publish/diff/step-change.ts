/**
 * Knows what differs between two steps that stand for each other: times, temperatures, portions, wording.
 * Refuses to know how they were paired (`steps.ts`).
 */

import { numberSaid } from '../../prose/counts.ts';
import type { Event } from '../../prose/event.ts';
import { verbNamed } from '../../prose/verb-named.ts';
import { durationOf, heatsOf, type TimeFigure, timesOf } from '../../recipe/journey/figures.ts';
import { collapse } from '../../recipe/words.ts';
import { near, sameAmount } from './batch.ts';
import type { Change } from './change.ts';
import type { PlacedStep } from './placed-step.ts';

export function stepChange(was: PlacedStep, is: PlacedStep, batch: number): Change[] {
  const changes: Change[] = [];
  const part = is.part.head.name;
  const step = is.number;
  const times = pairReadings(timesIn(was), timesIn(is));
  const heats = pairReadings(heatsIn(was), heatsIn(is));
  for (const [a, b] of times ?? []) {
    const [fromMin, toMin] = [a.said.minutes, b.said.minutes];
    if (fromMin.low === toMin.low && fromMin.high === toMin.high) continue;
    const verb = verbOf(is, b.event) ?? verbOf(was, a.event) ?? null;
    const [from, to] = [
      spanText(was, durationOf(was.step, a.said) ?? a.said),
      spanText(is, durationOf(is.step, b.said) ?? b.said),
    ];
    changes.push({ kind: 'time', part, step, verb, fromMin, toMin, from, to });
  }
  for (const [a, b] of heats ?? []) {
    if (near0(a.celsius.low, b.celsius.low) && near0(a.celsius.high, b.celsius.high) && a.node.fan === b.node.fan)
      continue;
    const verb = verbOf(is, b.event) ?? verbOf(was, a.event) ?? null;
    const [from, to] = [spanText(was, a.node), spanText(is, b.node)];
    changes.push({
      kind: 'temperature',
      part,
      step,
      verb,
      role: ROLES[b.of],
      fromC: a.celsius,
      toC: b.celsius,
      from,
      to,
    });
  }
  const portions = pairReadings(amountsOf(was), amountsOf(is));
  for (const [a, b] of portions ?? [])
    if (!sameAmount(a, b, 1) && !sameAmount(a, b, batch))
      changes.push({ kind: 'portion', part, step, from: spanText(was, a), to: spanText(is, b) });
  const figures = times === undefined || heats === undefined || portions === undefined;
  if (figures || was.words.join(' ') !== is.words.join(' ') || countsDiffer(was, is, batch))
    changes.push({ kind: 'step-reworded', part, step, from: was.text, to: is.text });
  return changes;
}

/** Numbers in words, as in `divide in two`, that do not go with the batch. */
function countsDiffer(was: PlacedStep, is: PlacedStep, batch: number): boolean {
  const counts = ({ step }: PlacedStep) => step.sentence.items.flatMap((item) => numberSaid(item) ?? []);
  const [a, b] = [counts(was), counts(is)];
  return a.length !== b.length || a.some((n, i) => b[i] !== n && !near(b[i] ?? 0, n * batch));
}

const ROLES = { oven: 'oven', food: 'food', around: 'surroundings', medium: 'liquid', nothing: 'unknown' } as const;

/** Times with an end, in figures or words. */
const timesIn = ({ step }: PlacedStep): readonly TimeFigure[] =>
  timesOf(step).filter(({ said: { minutes } }) => Number.isFinite(minutes.high));

const heatsIn = ({ step }: PlacedStep) =>
  heatsOf(step).flatMap((figure) => {
    const [node] = figure.written;
    return node === undefined ? [] : [{ ...figure, node }];
  });

/** What is done, as an order. */
const verbOf = ({ part, step }: PlacedStep, event: Event | undefined): string | undefined =>
  event?.verb &&
  verbNamed((part.head.source.lines[step.line]?.text ?? '').slice(event.verb.start, event.verb.end))?.base;

const near0 = (a: number, b: number): boolean => Math.abs(a - b) < 0.5;

const amountsOf = ({ step }: PlacedStep) =>
  step.sentence.items.flatMap((item) =>
    item.kind === 'measured' ? [item] : item.kind === 'length' ? [item.measured] : [],
  );

/** Readings one to one, in order; undefined where one side has more. */
function pairReadings<T>(a: readonly T[], b: readonly T[]): (readonly [T, T])[] | undefined {
  if (a.length !== b.length) return undefined;
  return a.flatMap((x, i) => {
    const y = b[i];
    return y === undefined ? [] : [[x, y] as const];
  });
}

function spanText({ part, step }: PlacedStep, span: { readonly start: number; readonly end: number }): string {
  return collapse((part.head.source.lines[step.line]?.text ?? '').slice(span.start, span.end));
}
