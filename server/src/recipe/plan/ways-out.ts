/** Knows what would make a day shorter or mend what waits too long, each tried out. Refuses to advise what does not help. */
import { before } from './ahead-of-day.ts';
import { isSameHeat } from './oven-use.ts';
import type { PlanTask } from './plan-task.ts';
import { beginningOf } from './preheats.ts';
import { MOST_PLACED_BESIDE, type Schedule, schedule } from './search.ts';
import type { DayKitchen } from './task.ts';

/** What is done otherwise, and what comes of it. */
export interface WayOut {
  readonly way: 'share the oven' | 'another oven' | 'another cook' | 'days before' | 'at night';
  /** Minutes of the first beginning on the day; negative. */
  readonly start: number;
  /** Minutes by which things wait longer than they may, still. */
  readonly tooLong: number;
}

interface Reason {
  readonly over: 'hands' | 'oven' | 'night';
}

export function waysOut(
  tasks: readonly PlanTask[],
  kitchen: DayKitchen,
  now: Schedule,
  clashes: readonly Reason[],
  ahead: readonly { readonly task: number }[],
): readonly WayOut[] {
  const isOver = (over: Reason['over']) => clashes.some((clash) => clash.over === over);
  const found: WayOut[] = [];
  const began = beginningOf(tasks, now.placed);
  const attempt = (way: WayOut['way'], of: readonly PlanTask[], otherwise: Partial<DayKitchen>): void => {
    const { placed, tooLong } = schedule(of, { ...kitchen, ...otherwise }, MOST_PLACED_BESIDE);
    const start = beginningOf(of, placed);
    if (tooLong < now.tooLong || (tooLong === now.tooLong && start > began)) found.push({ way, start, tooLong });
  };
  if (isOver('oven') && !kitchen.sharesOven && heatsMeet(tasks)) attempt('share the oven', tasks, { sharesOven: true });
  if (isOver('oven')) attempt('another oven', tasks, { ovens: kitchen.ovens + 1 });
  if (isOver('hands')) attempt('another cook', tasks, { pairsOfHands: kitchen.pairsOfHands + 1 });
  if (isOver('night') && kitchen.awake !== undefined) attempt('at night', tasks, { awake: { from: 0, to: 1440 } });
  if (ahead.length > 0) attempt('days before', without(tasks, ahead), {});
  return found;
}

const heatsMeet = (tasks: readonly PlanTask[]): boolean =>
  tasks.some(({ oven }, i) =>
    tasks.some((other, j) => j > i && oven !== undefined && other.oven !== undefined && isSameHeat(oven, other.oven)),
  );

/** What is left for the day itself. */
function without(tasks: readonly PlanTask[], ahead: readonly { readonly task: number }[]): readonly PlanTask[] {
  const done = new Set(ahead.flatMap(({ task }) => [...before(tasks, task)]));
  const left = tasks.flatMap((_, i) => (done.has(i) ? [] : [i]));
  const placeOf = new Map(left.map((task, place) => [task, place]));
  return left.flatMap((i) => {
    const task = tasks[i];
    return task === undefined ? [] : [{ ...task, after: task.after.flatMap((each) => placeOf.get(each) ?? []) }];
  });
}
