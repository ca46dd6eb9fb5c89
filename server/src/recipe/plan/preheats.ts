/** Knows when an oven is lit for what stands in it, and so when a day begins. Refuses to know why things stand where they do. */

import { LEFT_ON_MIN, PREHEAT_MIN } from './oven-use.ts';
import type { PlanTask } from './plan-task.ts';
import type { Placed } from './task.ts';

/** An oven that is lit: the first time, and where it was left cold. */
export interface Preheat {
  readonly start: number;
  readonly end: number;
  readonly oven: number;
  readonly celsius: number;
  readonly fan: boolean;
}

/** In the order of time. */
export function preheatsOf(tasks: readonly PlanTask[], placed: readonly Placed[]): readonly Preheat[] {
  const preheats: Preheat[] = [];
  const usedUntil = new Map<number, number>();
  const inOrder = placed.map((own, i) => ({ own, task: tasks[i] })).sort((a, b) => a.own.start - b.own.start);
  for (const { own, task } of inOrder) {
    const turn = task?.stages[0];
    if (own.oven === undefined || turn === undefined) continue;
    const until = usedUntil.get(own.oven);
    if (until === undefined || own.start - until > LEFT_ON_MIN)
      preheats.push({
        start: own.start - PREHEAT_MIN,
        end: own.start,
        oven: own.oven,
        celsius: turn.celsius,
        fan: turn.fan,
      });
    usedUntil.set(own.oven, Math.max(until ?? own.end, own.end));
  }
  return preheats;
}

/** Minutes of the first beginning, an oven's among them; no later than it is eaten. */
export const beginningOf = (tasks: readonly PlanTask[], placed: readonly Placed[]): number =>
  Math.min(0, ...placed.map(({ start }) => start), ...preheatsOf(tasks, placed).map(({ start }) => start));
