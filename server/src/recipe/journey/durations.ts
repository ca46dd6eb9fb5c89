/**
 * Knows how long a recipe takes: at work, cooking, waiting, and in all, from what its steps say and from what its head does.
 * Refuses to guess what neither says, and to judge where they differ.
 */
import { addRanges, middle, type Range } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { TimeRole } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import { isOf } from '../list/families.ts';
import { foodOf } from '../list/stand-in.ts';
import type { Part, Recipe, Step } from '../model.ts';
import { type BoundEvent, boundEvents, clocksOf } from './bind.ts';
import { type Lasting, lastingOf } from './lasting.ts';

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

/**
 * What the steps give, in minutes: at least the part that takes longest, for parts may be made beside each other, and at most all one
 * after the other. Work is one cook's, and adds up; what is done meanwhile is in no total.
 */
export function stepTimes({ parts }: Recipe): Readonly<Record<TimeRole, Range>> {
  const times = noTimes();
  for (const part of parts) {
    const { work, cooking, waiting, total } = rangesOf(part);
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

const RANGES = keptOn<Part, Readonly<Record<TimeRole, Range>>>();

function rangesOf(part: Part): Readonly<Record<TimeRole, Range>> {
  let ranges = RANGES.get(part);
  if (ranges === undefined) {
    const times = noTimes();
    for (const { minutes, spent, meanwhile } of lastingIn(part)) {
      times[spent] = addRanges(times[spent], minutes);
      times.total = addRanges(times.total, meanwhile ? { low: 0, high: minutes.high } : minutes);
    }
    ranges = times;
    RANGES.set(part, ranges);
  }
  return ranges;
}

export interface Planned extends Lasting {
  /** The line of its step in the part, from 0. */
  readonly line: number;
  /** What lasts so long; a night that only lies between is none. */
  readonly event?: Event;
  /** All that is said is that a night lies between. */
  readonly isNight?: true;
}

const LASTING = keptOn<Part, readonly Planned[]>();

/** What lasts in a part, in order. */
export function lastingIn(part: Part): readonly Planned[] {
  let lasting = LASTING.get(part);
  if (lasting === undefined) {
    lasting = used(
      part,
      part.steps.flatMap((step) => inStep(part, step)),
    );
    LASTING.set(part, lasting);
  }
  return lasting;
}

/** What was cooked and is put away at the end takes none of the time to make it; what cures does. */
function used(part: Part, lasting: readonly Planned[]): readonly Planned[] {
  const acts = part.steps.flatMap((step) => boundEvents(step).map(({ event }) => event.act));
  const heats = acts.lastIndexOf('heat');
  const stays = acts.lastIndexOf('stay');
  let last = lasting.length;
  if (heats >= 0 && heats < stays) while (last > 0 && lasting[last - 1]?.isKept) last--;
  return last === lasting.length ? lasting : lasting.slice(0, last);
}

function inStep(part: Part, step: Step): readonly Planned[] {
  const found: Planned[] = [];
  const chosen = new Set<number>();
  const clocks = clocksOf(step);
  let told = 0;
  for (const bound of boundEvents(step)) {
    const { event } = bound;
    // Of a choice the first is planned with.
    const isOther = event.either > 0 && chosen.has(event.either);
    if (event.either > 0) chosen.add(event.either);
    // `The next morning, …`: so long it lay, where the step before does not say it itself.
    for (; clocks[told] !== undefined && (clocks[told]?.start ?? 0) < event.end; told++) {
      const since = clocks[told]?.since;
      if (since !== undefined && event.said === 'yes' && event.as === 'ordered' && since.low >= NIGHT_MIN)
        found.push({ line: step.line, minutes: since, likely: since.low, ...NIGHT });
    }
    const lasts = lastingOf(event, event.times.some(({ per }) => per === 'kg') ? kgOf(part, bound) : undefined);
    if (lasts === undefined) continue;
    const planned = { ...lasts, line: step.line, event };
    found.push(isOther ? { ...planned, minutes: { ...lasts.minutes, low: 0 }, likely: 0 } : planned);
  }
  return found;
}

/** As long as a night. */
const NIGHT_MIN = 300;
const NIGHT = { spent: 'waiting', attended: false, meanwhile: false, isKept: false, isNight: true } as const;

/** What the food weighs that a time by weight is for: what the event names, else the flesh of the part. */
function kgOf({ index, head }: Part, { names }: BoundEvent): Range | undefined {
  const named = names.flatMap(({ mention, role }) =>
    role === 'what' ? mention.ingredients.filter((ref) => ref.part === index) : [],
  );
  const list =
    named.length > 0
      ? named.flatMap(({ ingredient }) => head.ingredients[ingredient] ?? [])
      : head.ingredients.filter((each) => isOf(foodOf(each), 'flesh'));
  let grams: Range = NONE;
  for (const { weighed } of list) {
    if (!weighed.known) return undefined;
    grams = addRanges(grams, weighed.grams);
  }
  return grams.high > 0 ? { low: grams.low / 1000, high: grams.high / 1000 } : undefined;
}

/** Minutes, as a cook plans with them; null where nothing says them. */
export interface PlannedTimes {
  readonly total: number | null;
  /** Somebody is at it. */
  readonly handsOn: number | null;
  /** The rest of the total. */
  readonly waiting: number | null;
  /** In the oven or on the stove: no more than the total. */
  readonly cooking: number | null;
  /** The total is by the head; else as far as the steps say. */
  readonly stated: boolean;
}

const PLANNED = keptOn<Recipe, PlannedTimes>();

/** What reports, pages and their data say: what the head states, and the steps for what it leaves out. */
export function plannedTimes(recipe: Recipe): PlannedTimes {
  let planned = PLANNED.get(recipe);
  if (planned === undefined) {
    planned = withHead(statedTimes(recipe), fromSteps(recipe));
    PLANNED.set(recipe, planned);
  }
  return planned;
}

/** What the steps give, as a cook plans with it. */
interface Sums extends Omit<PlannedTimes, 'stated'> {
  /** Of the waiting what no heat is on by. */
  readonly resting: number;
}

function withHead(stated: TimesByRole, { resting, ...steps }: Sums): PlannedTimes {
  const said = (range: Range | undefined) => (range === undefined ? undefined : Math.round(middle(range)));
  const [work, cooking, waiting] = [said(stated.work), said(stated.cooking), said(stated.waiting)];
  const isSum = work !== undefined && (cooking ?? waiting) !== undefined;
  const sum = isSum ? work + (cooking ?? steps.cooking ?? 0) + (waiting ?? resting) : undefined;
  const total = said(stated.total) ?? sum ?? withSome(work, cooking, steps);
  if (total === null) return { ...steps, handsOn: work ?? null, cooking: cooking ?? null, stated: false };
  const handsOn = atMost(work ?? steps.handsOn, total);
  return {
    total,
    handsOn,
    waiting: handsOn === null ? null : total - handsOn,
    cooking: atMost(cooking ?? steps.cooking, total),
    stated: stated.total !== undefined || isSum,
  };
}

/** All of it where the head states the work or the cooking alone. */
function withSome(work: number | undefined, cooking: number | undefined, steps: Omit<Sums, 'resting'>): number | null {
  if (steps.total === null) return null;
  if (work !== undefined) return work + (steps.waiting ?? 0);
  return cooking === undefined ? steps.total : steps.total - (steps.cooking ?? 0) + cooking;
}

const atMost = (value: number | null, most: number): number | null => (value === null ? null : Math.min(value, most));

/** One step after the other; what is done meanwhile is done within what goes on by itself, as far as that lasts. */
function fromSteps({ parts }: Recipe): Sums {
  let [total, handsOn, cooking, resting] = [0, 0, 0, 0];
  /** What goes on by itself, and how much of it is left. */
  let waits: Planned | undefined;
  let left = 0;
  let any = false;
  for (const lasting of parts.flatMap(lastingIn)) {
    const { likely, spent, attended, meanwhile, isNight } = lasting;
    // A night that the step before has said is no second one.
    if (isNight && waits !== undefined && waits.likely >= NIGHT_MIN / 2) continue;
    any = true;
    const beside = meanwhile ? Math.min(left, likely) : 0;
    const more = likely - beside;
    total += more;
    if (attended) handsOn += likely;
    if (spent === 'cooking') cooking += waits?.spent === 'cooking' ? more : likely;
    if (spent === 'waiting') resting += more;
    if (meanwhile) left -= beside;
    else {
      waits = attended ? undefined : lasting;
      left = attended ? 0 : likely;
    }
  }
  if (!any) return { total: null, handsOn: null, waiting: null, cooking: null, resting: 0 };
  const all = Math.round(total);
  const hands = Math.min(Math.round(handsOn), all);
  return {
    total: all,
    handsOn: hands,
    waiting: all - hands,
    cooking: cooking > 0 ? Math.min(Math.round(cooking), all) : null,
    resting: Math.round(resting),
  };
}
