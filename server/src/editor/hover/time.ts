/** A time: in hours and minutes, whose it is, and what it counts as. */

import { ovenTimes } from '../../recipe/baking/oven-time.ts';
import { ovenTimeText } from '../../recipe/baking/said.ts';
import { type TimeFigure, timesOf } from '../../recipe/journey/figures.ts';
import { lastingOf } from '../../recipe/journey/lasting.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { figure } from '../facts.ts';
import { holds, placeOf } from '../place.ts';
import { sayMinutesRange, textOf } from '../words.ts';
import { understoodFacts } from './event.ts';
import type { Fact, HoverSource } from './fact.ts';
import { timeTrials, tookTrials } from './trials.ts';

export const hoverTime: HoverSource = (snapshot, cursor) => {
  const { line, part, inPart, at, character } = cursor;
  const { statement } = line;
  const step = part?.steps.find((s) => s.line === inPart);
  const time = step && timesOf(step).find(({ said }) => holds(said, character));
  const item = step?.sentence.items.find((each) => each.kind === 'duration' && holds(each, character));
  const node = item?.kind === 'duration' ? item : statement.kind === 'took' ? statement.duration : undefined;
  if (time !== undefined) {
    const { event, said } = time;
    const facts = [figure('Time', `${timeText(said)}${node?.overnight ? ', by habit' : ''}`)];
    if (event.verb !== undefined) facts.push(figure('Belongs to', textOf(line, event.verb)));
    facts.push(
      ...countsAs(time),
      ...estimated(snapshot, event),
      ...understoodFacts(snapshot, cursor, said),
      ...timeTrials(snapshot, time),
    );
    return { at: placeOf(at, node ?? said), title: textOf(line, node ?? said), facts };
  }
  if (node === undefined || !holds(node, character)) return undefined;
  const range = { low: node.lowMin, high: node.highMin };
  const facts = [figure('Time', node.overnight ? `${sayMinutesRange(range)}, by habit` : sayMinutesRange(range))];
  if (statement.kind === 'took') facts.push(...tookTrials(snapshot, statement.to));
  return { at: placeOf(at, node), title: textOf(line, node), facts };
};

/** How long it is likely to take in the oven. */
function estimated({ recipe }: Snapshot, event: TimeFigure['event']): Fact[] {
  const time = recipe && ovenTimes(recipe).find(({ bake }) => bake.event === event);
  return time === undefined ? [] : [figure('In the oven', ovenTimeText(time))];
}

function timeText({ minutes: { low, high }, per }: TimeFigure['said']): string {
  const text = Number.isFinite(high)
    ? sayMinutesRange({ low, high })
    : `${sayMinutesRange({ low, high: low })} or longer`;
  return per === undefined ? text : `${text} a ${per}`;
}

function countsAs({ event, said }: TimeFigure): Fact[] {
  if (said.kind === 'point' || said.kind === 'every' || said.kind === 'life')
    return [figure('Counts as', KINDS[said.kind])];
  const lasts = lastingOf(event, undefined);
  if (lasts === undefined) return [];
  const by = lasts.attended ? 'hands-on time' : 'waiting';
  const beside = lasts.meanwhile ? ', beside what goes on by itself' : '';
  return [figure('Counts as', `${by}${SPENT[lasts.spent]}${beside}`)];
}

const KINDS = { point: 'a point in time', every: 'how often', life: 'how long it is good' } as const;
const SPENT = { work: '', cooking: ', by the heat', waiting: '' } as const;
