/** Knows what of a recipe may be done on a day before: all up to its last rest in the cold. Refuses to know the clock. */
import type { PlanTask } from './plan-task.ts';
import type { Task } from './task.ts';

/** For each recipe the tasks after which it may lie for days, none of which another of them needs. */
export function keptWithin(
  tasks: readonly PlanTask[],
  of: readonly number[],
): readonly { readonly recipe: number; readonly task: number; readonly days: number }[] {
  const rests = tasks.flatMap(({ days }, i) => (days > 0 ? [i] : []));
  return rests.flatMap((task) => {
    const isEarlier = rests.some((other) => other !== task && before(tasks, other).has(task));
    return isEarlier ? [] : [{ recipe: of[task] ?? 0, task, days: tasks[task]?.days ?? 0 }];
  });
}

/** All that a task waits for, and itself. */
export function before(tasks: readonly Task[], task: number): ReadonlySet<number> {
  const found = new Set<number>([task]);
  for (const each of found) for (const other of tasks[each]?.after ?? []) found.add(other);
  return found;
}
