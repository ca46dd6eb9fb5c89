/**
 * Knows the plan of a day for one or several recipes: when each step begins, what clashes and what would help, what may be done on a day
 * before, and which way through it is the longest. Refuses to know how it is told.
 */

import type { Recipe } from '../model.ts';
import { keptWithin } from './ahead-of-day.ts';
import { type GivenMinutes, tasksOf } from './from-recipe.ts';
import type { PlanTask } from './plan-task.ts';
import { beginningOf, type Preheat, preheatsOf } from './preheats.ts';
import { MOST_PLACED_BESIDE, type Schedule, schedule } from './search.ts';
import type { DayKitchen, Placed } from './task.ts';
import { type WayOut, waysOut } from './ways-out.ts';

export interface PlannedRecipe {
  readonly recipe: Recipe;
  readonly given: GivenMinutes;
  /** Minutes are put where no step says any; else nothing is reckoned for it. */
  readonly puts?: boolean;
}

export interface PlannedTask extends Placed {
  readonly task: PlanTask;
  /** Index of its recipe. */
  readonly recipe: number;
  /** On the longest way, on which every minute later is a minute later at the table. */
  readonly critical: boolean;
  /** Minutes by which it waits longer than it may. */
  readonly tooLong: number;
}

/** Something is done earlier than it need be, as another has what it needs. */
export interface Clash {
  /** Indexes of planned tasks. */
  readonly task: number;
  /** None where it is the night. */
  readonly other: number | undefined;
  readonly over: 'hands' | 'oven' | 'night';
  /** Minutes by which it is done earlier for that. */
  readonly earlier: number;
  /** Minutes by which what comes of it waits longer than it may; 0 where it may. */
  readonly tooLong: number;
}

/** What may be done on a day before, and how late the day itself begins then. */
export interface Ahead {
  readonly recipe: number;
  /** The last task of those; all that it waits for is done by then too. */
  readonly task: number;
  readonly days: number;
}

export interface Plan {
  /** In the order of their beginnings. */
  readonly tasks: readonly PlannedTask[];
  readonly preheats: readonly Preheat[];
  /** Minutes of the first beginning, an oven's among them; negative. */
  readonly start: number;
  /** The same if all takes its longest. */
  readonly startAtMost: number;
  readonly handsMin: number;
  /** Steps have no minutes, and none are reckoned for them. */
  readonly atLeast: boolean;
  readonly isBest: boolean;
  readonly clashes: readonly Clash[];
  readonly waysOut: readonly WayOut[];
  readonly ahead: readonly Ahead[];
}

export function planOf(recipes: readonly PlannedRecipe[], kitchen: DayKitchen): Plan {
  const all: PlanTask[] = [];
  const of: number[] = [];
  for (const [index, { recipe, given, puts = false }] of recipes.entries()) {
    const from = all.length;
    for (const task of tasksOf(recipe, given, puts)) {
      all.push({ ...task, after: task.after.map((before) => before + from) });
      of.push(index);
    }
  }
  const found = schedule(all, kitchen);
  const critical = longestWay(found.placed);
  const order = found.placed.map((_, i) => i).sort((a, b) => inTime(found.placed, a, b));
  const placeOf = new Map(order.map((task, place) => [task, place]));
  const tasks = order.flatMap((i): PlannedTask[] => {
    const [task, placed] = [all[i], found.placed[i]];
    if (task === undefined || placed === undefined) return [];
    return [{ ...placed, task, recipe: of[i] ?? 0, critical: critical.has(i), tooLong: tooLongOf(task, placed) }];
  });
  const clashes = clashesOf(all, found.placed, critical);
  const ahead = keptWithin(all, of);
  return {
    tasks,
    preheats: preheatsOf(all, found.placed),
    start: beginningOf(all, found.placed),
    startAtMost: startAtMost(all, kitchen, found),
    handsMin: all.reduce((sum, { hands, minutes }) => sum + (hands ? minutes : 0), 0),
    atLeast: all.some(({ from }) => from === 'unsaid'),
    isBest: found.isBest,
    clashes: clashes.map((clash) => ({
      ...clash,
      task: placeOf.get(clash.task) ?? 0,
      other: clash.other === undefined ? undefined : placeOf.get(clash.other),
    })),
    waysOut: waysOut(all, kitchen, found, clashes, ahead),
    ahead: ahead.map((each) => ({ ...each, task: placeOf.get(each.task) ?? 0 })),
  };
}

function startAtMost(all: readonly PlanTask[], kitchen: DayKitchen, { placed }: Schedule): number {
  const likely = beginningOf(all, placed);
  if (all.every(({ most, minutes }) => most <= minutes)) return likely;
  const longest = all.map((task) => ({ ...task, minutes: task.most }));
  return Math.min(likely, beginningOf(longest, schedule(longest, kitchen, MOST_PLACED_BESIDE).placed));
}

const inTime = (placed: readonly Placed[], a: number, b: number): number =>
  (placed[a]?.start ?? 0) - (placed[b]?.start ?? 0) || (placed[a]?.end ?? 0) - (placed[b]?.end ?? 0) || a - b;

const tooLongOf = ({ mayWait }: PlanTask, { wanted, end }: Placed): number => Math.max(0, wanted - end - mayWait);

/** From what begins first, always on to what it may end no later for. */
function longestWay(placed: Schedule['placed']): ReadonlySet<number> {
  const way = new Set<number>();
  let at = placed.reduce<number | undefined>(
    (first, { start }, i) => (first === undefined || start < (placed[first]?.start ?? 0) ? i : first),
    undefined,
  );
  while (at !== undefined && !way.has(at)) {
    way.add(at);
    const bound: Placed['bound'] | undefined = placed[at]?.bound;
    at = bound !== undefined && 'task' in bound ? bound.task : undefined;
  }
  return way;
}

/**
 * Of the oven all; that two hands do one thing after the other only where it makes the day longer, or something wait too long; of the night
 * only that.
 */
function clashesOf(
  tasks: readonly PlanTask[],
  placed: Schedule['placed'],
  critical: ReadonlySet<number>,
): readonly Clash[] {
  return placed.flatMap((own, i): Clash[] => {
    const { bound, wanted, end } = own;
    const task = tasks[i];
    if (task === undefined || bound.is === 'serving' || bound.is === 'next') return [];
    const tooLong = tooLongOf(task, own);
    if (tooLong === 0 && (bound.is === 'night' || (bound.is === 'hands' && !critical.has(i)))) return [];
    const other = 'task' in bound ? bound.task : undefined;
    return [{ task: i, other, over: bound.is, earlier: wanted - end, tooLong }];
  });
}
