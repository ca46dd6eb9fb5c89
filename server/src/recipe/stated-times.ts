/**
 * Knows the times that a recipe's head states, and the least and most that its steps give for the same.
 * Refuses to judge.
 */
import { addRanges, type Range } from '../measure/quantity.ts';
import { keptOn } from '../notation/kept.ts';
import type { TimeRole } from '../notation/tree.ts';
import type { Part, Recipe } from './recipe.ts';
import { isWaiting } from './verbs.ts';

/** Minutes by role; a role that is not stated is absent. */
export type TimesByRole = Readonly<Partial<Record<TimeRole, Range>>>;

const NONE: Range = { low: 0, high: 0 };

/** What the head says. */
export function statedTimes({ outline }: Recipe): TimesByRole {
  const times: Partial<Record<TimeRole, Range>> = {};
  for (const { line } of outline.head) {
    if (line.statement.kind !== 'time') continue;
    for (const { duration, role } of line.statement.stated)
      times[role] = addRanges(times[role] ?? NONE, { low: duration.lowMin, high: duration.highMin });
  }
  return times;
}

/** All of it by the head: as stated, or the sum of the rest, with the waiting of the steps where the head has none. */
export function statedTotal(recipe: Recipe): Range | undefined {
  const { work, cooking, waiting, total } = statedTimes(recipe);
  if (total !== undefined || work === undefined || (cooking ?? waiting) === undefined) return total;
  const steps = stepTimes(recipe);
  return [work, cooking ?? steps.cooking, waiting ?? steps.waiting].reduce(addRanges);
}

/**
 * What the steps give, in minutes: at least the part that takes longest, for parts may be made beside each other, and at most all one
 * after the other. Work is one cook's, and adds up.
 */
export function stepTimes({ parts }: Recipe): Readonly<Record<TimeRole, Range>> {
  const times = noTimes();
  for (const part of parts) {
    const { work, cooking, waiting, total } = ofPart(part);
    times.work = addRanges(times.work, work);
    times.cooking = besides(times.cooking, cooking);
    times.waiting = besides(times.waiting, waiting);
    times.total = besides(times.total, total);
  }
  return times;
}

const noTimes = (): Record<TimeRole, Range> => ({ work: NONE, cooking: NONE, waiting: NONE, total: NONE });

const besides = (a: Range, b: Range): Range =>
  b.high === 0 ? a : { low: Math.max(a.low, b.low), high: a.high + b.high };

const OF_PART = keptOn<Part, Readonly<Record<TimeRole, Range>>>();

function ofPart(part: Part): Readonly<Record<TimeRole, Range>> {
  let times = OF_PART.get(part);
  if (times === undefined) {
    times = timesIn(part);
    OF_PART.set(part, times);
  }
  return times;
}

function timesIn({ steps }: Part): Readonly<Record<TimeRole, Range>> {
  const times = noTimes();
  for (const { node, verbClass } of steps.flatMap((step) => step.times)) {
    const range = { low: node.lowMin, high: node.highMin };
    const waits = verbClass === undefined ? node.lowMin > 15 : isWaiting(verbClass, node.lowMin);
    const role = verbClass === 'oven' || verbClass === 'stove' ? 'cooking' : waits ? 'waiting' : 'work';
    times[role] = addRanges(times[role], range);
    times.total = addRanges(times.total, range);
  }
  return times;
}
