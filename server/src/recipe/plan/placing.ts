/**
 * Knows how late a task can be put, with others in their places: it ends before whatever needs it begins, and no hand or oven does two things.
 * Refuses to know in which order tasks are put (`search.ts`).
 */
import { isSameHeat, minutesBetween } from './oven-use.ts';
import { type Bound, type DayKitchen, needsSomething, type Placed, type Task } from './task.ts';

const DAY_MIN = 1440;

/**
 * The places that a task may be put: the latest that is left, and, where it may wait for a day, the evening before, so that what it waits for
 * need not be done at night. What needs it must have its own already.
 */
export function placesFor(
  task: number,
  tasks: readonly Task[],
  followers: readonly number[],
  placed: readonly (Placed | undefined)[],
  kitchen: DayKitchen,
): readonly Placed[] {
  const latest = placeLatest(task, tasks, followers, placed, kitchen);
  const { awake, serve } = kitchen;
  const own = tasks[task];
  if (awake === undefined || own === undefined || !mayBeEvening(own)) return [latest];
  const midnight = Math.floor((serve + latest.start) / DAY_MIN) * DAY_MIN;
  const start = midnight - DAY_MIN + awake.to - serve;
  return [latest, { ...latest, start, end: start + own.minutes, bound: { is: 'night' } }];
}

/** It goes on by itself, and what comes of it keeps. */
export const mayBeEvening = (task: Task): boolean =>
  !needsSomething(task) && task.minutes > 0 && Number.isFinite(task.mayWait) && task.mayWait >= DAY_MIN;

function placeLatest(
  task: number,
  tasks: readonly Task[],
  followers: readonly number[],
  placed: readonly (Placed | undefined)[],
  kitchen: DayKitchen,
): Placed {
  const own = tasks[task] as Task;
  const [wanted, bound] = wantedAt(followers, placed);
  if (!needsSomething(own)) {
    // Whoever sets it down, or takes a moment for it, is up by then.
    const end = awakeUntil(own.minutes, own.watched === true ? watchedFor(own) : 0, wanted, kitchen);
    return { start: end - own.minutes, end, bound: end < wanted ? { is: 'night' } : bound, wanted };
  }
  let best: Placed | undefined;
  for (const oven of own.oven === undefined ? [undefined] : upTo(kitchen.ovens))
    for (const pair of own.hands ? upTo(kitchen.pairsOfHands) : [undefined]) {
      const [end, by] = latestIn(own, { oven, pair }, wanted, bound, tasks, placed, kitchen);
      if (best !== undefined && end <= best.end) continue;
      best = {
        start: end - own.minutes,
        end,
        bound: by,
        wanted,
        ...(oven !== undefined && { oven }),
        ...(pair !== undefined && { pair }),
      };
    }
  return best as Placed;
}

const upTo = (count: number): readonly number[] => Array.from({ length: Math.max(1, count) }, (_, i) => i);

/** When the first of what needs it begins. */
export function wantedAt(
  followers: readonly number[],
  placed: readonly (Placed | undefined)[],
): readonly [number, Bound] {
  let wanted = 0;
  let bound: Bound = { is: 'serving' };
  for (const follower of followers) {
    const start = placed[follower]?.start;
    if (start === undefined || (start >= wanted && bound.is !== 'serving')) continue;
    wanted = start;
    bound = { is: 'next', task: follower };
  }
  return [wanted, bound];
}

interface Lane {
  readonly oven: number | undefined;
  readonly pair: number | undefined;
}

function latestIn(
  own: Task,
  lane: Lane,
  wanted: number,
  from: Bound,
  tasks: readonly Task[],
  placed: readonly (Placed | undefined)[],
  kitchen: DayKitchen,
): readonly [number, Bound] {
  let end = wanted;
  let bound = from;
  // Each turn moves it before something that stands in its way, of which there are so many.
  for (let moved = true; moved; ) {
    moved = false;
    const evening = awakeUntil(own.minutes, own.hands ? own.minutes : watchedFor(own), end, kitchen);
    if (evening < end) {
      [end, bound, moved] = [evening, { is: 'night' }, true];
      continue;
    }
    for (const [other, there] of placed.entries()) {
      if (there === undefined) continue;
      const latest = beforeOther(own, lane, end, tasks[other] as Task, there, kitchen);
      if (latest === undefined) continue;
      [end, moved] = [latest.end, true];
      bound = { is: latest.by, task: other };
    }
  }
  return [end, bound];
}

/** How late it must end to be done before the other; undefined where that is in nobody's way. */
function beforeOther(
  own: Task,
  { oven, pair }: Lane,
  end: number,
  other: Task,
  there: Placed,
  { sharesOven }: DayKitchen,
): { readonly end: number; readonly by: 'hands' | 'oven' } | undefined {
  const start = end - own.minutes;
  if (pair !== undefined && there.pair === pair && start < there.end && end > there.start)
    return { end: there.start, by: 'hands' };
  if (own.oven === undefined || other.oven === undefined || there.oven !== oven) return undefined;
  if (sharesOven && isSameHeat(own.oven, other.oven)) return undefined;
  const before = there.start - minutesBetween(own.oven, other.oven);
  const behind = there.end + minutesBetween(other.oven, own.oven);
  return end > before && start < behind ? { end: before, by: 'oven' } : undefined;
}

/** What is hot for longer than this goes on at night, by itself (judgement). */
const MOST_WATCHED_MIN = 300;
const watchedFor = ({ minutes }: Task): number => (minutes > MOST_WATCHED_MIN ? 0 : minutes);

/** The same end, or an earlier one by which nobody who sleeps is wanted in the first minutes of it. */
function awakeUntil(minutes: number, wanted: number, end: number, { awake, serve }: DayKitchen): number {
  // What takes longer than a day at work goes on at night.
  if (awake === undefined || wanted > awake.to - awake.from) return end;
  const at = serve + end - minutes + wanted;
  // An end at the stroke of midnight is of the day before.
  const midnight = (Math.ceil(at / DAY_MIN) - 1) * DAY_MIN;
  const inTheDay = Math.min(at, midnight + awake.to);
  const isEarlyEnough = inTheDay - wanted >= midnight + awake.from;
  return (isEarlyEnough ? inTheDay : midnight - DAY_MIN + awake.to) - wanted + minutes - serve;
}
