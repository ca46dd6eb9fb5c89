/** A time: in hours and minutes, and which verb it belongs to. */
import type { VerbClass } from '../../recipe/verbs.ts';
import { figure } from '../facts.ts';
import type { Fact, HoverSource } from '../hover.ts';
import { holds, placeOf } from '../place.ts';
import { sayMinutesRange, textOf } from '../words.ts';
import { understoodFacts } from './event.ts';
import { timeTrials, tookTrials } from './trials.ts';

export const hoverTime: HoverSource = (snapshot, cursor) => {
  const { line, part, inPart, at, character } = cursor;
  const reading = part?.steps.find((s) => s.line === inPart)?.times.find((t) => holds(t.node, character));
  const took = line.statement.kind === 'took' ? line.statement.duration : undefined;
  const node = reading?.node ?? (holds(took, character) ? took : undefined);
  if (node === undefined) return undefined;
  const range = { low: node.lowMin, high: node.highMin };
  const facts: Fact[] = [
    figure('Time', node.overnight ? `${sayMinutesRange(range)}, by habit` : sayMinutesRange(range)),
  ];
  if (reading?.verb !== undefined) facts.push(figure('Belongs to', reading.verb));
  if (reading?.verbClass !== undefined) facts.push(figure('Counts as', COUNTS[reading.verbClass] ?? 'hands-on time'));
  if (reading !== undefined) facts.push(...understoodFacts(snapshot, cursor, node), ...timeTrials(snapshot, reading));
  else if (line.statement.kind === 'took') facts.push(...tookTrials(snapshot, line.statement.to));
  return { at: placeOf(at, node), title: textOf(line, node), facts };
};

const COUNTS: Readonly<Partial<Record<VerbClass, string>>> = {
  oven: 'waiting, at the oven',
  stove: 'hands-on time, at the stove',
  cooling: 'waiting, while it cools',
  resting: 'waiting, while it rests',
};
