/**
 * Knows which minutes are put for a step that says none: what is worked out of its oven or its wait, and a round figure for work.
 * Refuses to put any for what cooks or waits without an estimate: that is not known.
 */
import type { Range } from '../../measure/quantity.ts';
import { ovenTimes } from '../baking/oven-time.ts';
import { roundMinutes } from '../baking/said.ts';
import type { OvenTime } from '../baking/time-in-oven.ts';
import { journeyOf } from '../journey/fold.ts';
import type { Recipe } from '../model.ts';
import { risingOf } from '../waiting/rising.ts';
import { settingOf } from '../waiting/setting.ts';
import { thawingOf } from '../waiting/thawing.ts';
import type { Drafted, PlanTask } from './plan-task.ts';

/** For each order of work that says no minutes: a lesson of nine such steps takes some 45 min (judgement). */
const WORK_MIN = 5;

/** The task with minutes, where there are any to put. */
export function reckoned(recipe: Recipe, task: Drafted): Drafted {
  if (task.from !== 'unsaid' || task.minutes > 0) return task;
  if (task.spent === 'work') return { ...task, minutes: WORK_MIN, from: 'put' };
  const estimate = task.stages.length > 0 ? inOven(recipe, task) : inWait(recipe, task);
  return estimate === undefined
    ? task
    : {
        ...task,
        minutes: Math.max(1, roundMinutes(estimate.likely)),
        from: 'estimate',
        estimate: { low: roundMinutes(estimate.low), high: roundMinutes(estimate.high) },
      };
}

/** What is known of the bake that a task is; undefined where it is none. */
export const bakeOf = (recipe: Recipe, { part, line }: Pick<PlanTask, 'part' | 'line'>): OvenTime | undefined =>
  ovenTimes(recipe).find(({ bake }) => bake.part.index === part && bake.line === line);

interface Likely extends Range {
  readonly likely: number;
}

function inOven(recipe: Recipe, task: Drafted): Likely | undefined {
  const time = bakeOf(recipe, task);
  return time?.is === 'estimated' ? time.estimate : undefined;
}

/** Of a stay that says no time of its own. */
function inWait(recipe: Recipe, { part, line, event }: Drafted): Likely | undefined {
  const stay = journeyOf(recipe).stays.find(
    (each) => each.part === part && each.line === line && each.by.event === event && !each.timed,
  );
  if (stay === undefined) return undefined;
  const found = settingOf(recipe, stay) ?? risingOf(recipe, stay);
  if (found !== undefined) return { likely: found.likely, ...found.minutes };
  const thawing = thawingOf(recipe, stay)?.minutes;
  return thawing && { likely: (thawing.low + thawing.high) / 2, ...thawing };
}
