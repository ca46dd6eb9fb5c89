/**
 * Knows the tasks of a recipe: what its steps say takes time, what they leave silent, and what waits for what.
 * Refuses to guess what no step says, and to know when anything is done.
 */
import { middle } from '../../measure/quantity.ts';
import type { Act, Event } from '../../prose/event.ts';
import { isOvenHeat, stagesOf } from '../baking/bakes.ts';
import { boundEvents } from '../journey/bind.ts';
import { isInOven } from '../journey/deeds.ts';
import { lastingIn, type Planned, statedTimes } from '../journey/durations.ts';
import type { Part, Recipe, Step } from '../model.ts';
import { linked } from './links.ts';
import type { Drafted, OvenTurn, PlanTask } from './plan-task.ts';
import { reckoned } from './reckoned.ts';
import type { OvenNeed } from './task.ts';
import { daysAhead, daysSaid, isInTheCold, mayWait } from './waits.ts';

/** Minutes by the line of the recipe, from 0, of what the steps leave silent there. */
export type GivenMinutes = ReadonlyMap<number, number>;

/** `puts`: minutes are put where no step says any, as far as there are some to put. */
export function tasksOf(recipe: Recipe, given: GivenMinutes, puts: boolean): readonly PlanTask[] {
  const drafted = shareWork(
    recipe.parts.map((part) => draft(part, recipe, given)),
    recipe,
  );
  const all = puts ? drafted.map((tasks) => tasks.map((task) => reckoned(recipe, task))) : drafted;
  const { tasks, after } = linked(recipe, all);
  const servedSo = servedAsTheyAre(tasks, after);
  return tasks.map((drafted, i) => {
    const { event, meanwhile: _, ...task } = drafted;
    return {
      ...task,
      after: after[i] ?? [],
      most: mostOf(drafted),
      on: placeOn(drafted),
      mayWait:
        event === undefined
          ? (task.said?.high ?? task.minutes)
          : mayWait({
              event,
              minutes: task.minutes,
              most: task.said?.high ?? task.minutes,
              days: task.days,
              isServedSo: servedSo.has(i),
              isHot: (after[i] ?? []).some((before) => tasks[before]?.spent === 'cooking'),
              isWaiting: task.spent === 'waiting',
            }),
    };
  });
}

/** To the end of its range: of a wait only where something is looked at, as else the cook may end it sooner. */
function mostOf({ minutes, said, estimate, spent, event }: Drafted): number {
  const high = estimate?.high ?? (spent !== 'waiting' || (event?.until.length ?? 0) > 0 ? said?.high : undefined);
  return high !== undefined && Number.isFinite(high) ? Math.max(minutes, Math.round(high)) : minutes;
}

function placeOn({ spent, stages, event }: Drafted): PlanTask['on'] {
  if (event === undefined || stages.length > 0) return undefined;
  if (spent === 'cooking') return event.act === 'smoke' ? 'smoker' : 'hob';
  return spent === 'waiting' && isInTheCold(event) ? 'cold' : undefined;
}

/** So long somebody carves, or strews something over it, and it is still hot (judgement). */
const MOMENTS_MIN = 5;

/** What nothing but a rest, and a moment's work, is done to any more. */
function servedAsTheyAre(tasks: readonly Drafted[], after: readonly (readonly number[])[]): ReadonlySet<number> {
  const served = new Set<number>();
  const isNothing = ({ event, minutes, hands }: Drafted) =>
    (event?.act === 'stay' && !isInTheCold(event)) || (hands && minutes <= MOMENTS_MIN && event?.act !== 'heat');
  // A task stands behind whatever it waits for within its part, and other parts may be written first: as often as something is found.
  for (let found = true; found; ) {
    found = false;
    for (let i = tasks.length - 1; i >= 0; i--) {
      if (served.has(i)) continue;
      const behind = tasks.flatMap((_, j) => (after[j]?.includes(i) ? [j] : []));
      if (!behind.every((j) => served.has(j) && isNothing(tasks[j] as Drafted))) continue;
      served.add(i);
      found = true;
    }
  }
  return served;
}

function draft(part: Part, recipe: Recipe, given: GivenMinutes): readonly Drafted[] {
  const tasks: Drafted[] = [];
  const planned = lastingIn(part);
  const days = daysSaid(part.steps.flatMap((step) => boundEvents(step).map(({ event }) => event)));
  const at = recipe.partsAt[part.index] ?? 0;
  for (const step of part.steps) {
    for (const each of inStep(step, planned)) {
      const keeps: Keeping = { days, isHot: tasks.at(-1)?.spent === 'cooking' };
      const task =
        'likely' in each
          ? lasting(each, part, step, keeps)
          : silent(each, part, step, given.get(at + step.line), keeps);
      const before = tasks.at(-1);
      // `Bake for 15 min. Turn down to 180 C and bake 40 min more`: it stays in there.
      if (before !== undefined && goesOn(before, task)) tasks[tasks.length - 1] = goneOn(before, task);
      else tasks.push(task);
    }
  }
  return tasks;
}

/** Days for which the part says that it keeps in the cold, and whether it comes from the heat. */
interface Keeping {
  readonly days: number;
  readonly isHot: boolean;
}

const HALF_A_NIGHT_MIN = 150;

/** What the steps leave silent, one kind of time in a row. */
interface Silent {
  readonly events: readonly Event[];
  readonly spent: Planned['spent'];
}

/** In the order of the step. */
function inStep(step: Step, all: readonly Planned[]): readonly (Planned | Silent)[] {
  const before = all.findLast(({ line }) => line < step.line);
  const own = all.filter(({ line }) => line === step.line);
  const found: (Planned | { events: Event[]; spent: Planned['spent'] })[] = [];
  // A night that what lies there by then says itself is no second one.
  const isLong = ({ event, attended, likely }: Planned) =>
    event !== undefined && !attended && likely >= HALF_A_NIGHT_MIN;
  for (const night of own)
    if (night.event === undefined && !own.some(isLong) && !(before !== undefined && isLong(before))) found.push(night);
  for (const { event } of boundEvents(step)) {
    const lasts = own.find((each) => each.event === event);
    if (lasts !== undefined) {
      if (lasts.likely > 0) found.push(lasts);
      continue;
    }
    const spent = silentSpent(event);
    if (spent === undefined) continue;
    const before = found.at(-1);
    if (before !== undefined && 'events' in before && before.spent === spent) before.events.push(event);
    else found.push({ events: [event], spent });
  }
  return found;
}

const WORK: ReadonlySet<Act> = new Set<Act>(['combine', 'cut', 'mince', 'pierce', 'stuff', 'shape', 'unknown']);
const COOKING: ReadonlySet<Act> = new Set<Act>(['heat', 'smoke']);
const WAITING: ReadonlySet<Act> = new Set<Act>(['cool', 'freeze', 'thaw', 'rise', 'steep', 'dry']);

/** How time goes that nothing tells; undefined of what is done in a moment. */
function silentSpent({ act, as, said, times, either, inPassing }: Event): Planned['spent'] | undefined {
  if (as !== 'ordered' || said !== 'yes' || inPassing || either > 1) return undefined;
  if (times.some(({ kind }) => kind === 'life')) return undefined;
  if (WORK.has(act)) return 'work';
  if (COOKING.has(act)) return 'cooking';
  return WAITING.has(act) ? 'waiting' : undefined;
}

function lasting(planned: Planned, part: Part, step: Step, keeps: Keeping): Drafted {
  const { event, likely, minutes, spent, attended, meanwhile } = planned;
  return {
    ...placeOf(part, step, event === undefined ? [] : [event]),
    minutes: Math.max(1, Math.round(likely)),
    said: minutes,
    from: 'steps',
    spent,
    hands: attended,
    watched: spent === 'cooking',
    meanwhile,
    event,
    days: event === undefined ? 0 : daysAhead(event, likely, keeps.days, keeps.isHot),
    ...ovenOf(part, step, event),
  };
}

function silent({ events, spent }: Silent, part: Part, step: Step, given: number | undefined, keeps: Keeping): Drafted {
  const last = events.at(-1);
  return {
    ...placeOf(part, step, events),
    minutes: given ?? 0,
    said: undefined,
    from: given === undefined ? 'unsaid' : 'given',
    spent,
    hands: spent === 'work' || (spent === 'cooking' && !events.every(isOvenHeat)),
    watched: spent === 'cooking',
    meanwhile: events.some(({ meanwhile }) => meanwhile),
    event: last,
    days: last === undefined ? 0 : daysAhead(last, given ?? Number.POSITIVE_INFINITY, keeps.days, keeps.isHot),
    ...ovenOf(part, step, events.find(isOvenHeat)),
  };
}

/** The words of the events, their times and signs among them; not what joins them to the words before. */
function placeOf({ index, head }: Part, { line, sentence }: Step, events: readonly Event[]) {
  const all = events.flatMap((event) => [event, ...event.times, ...event.until, ...event.temperatures]);
  const [first] = events;
  const length = head.source.lines[line]?.text.length ?? sentence.end;
  // A night that lies between has no words of its own.
  if (all.length === 0) return { part: index, line, also: [], start: sentence.start, end: sentence.start };
  const opens = first?.verb === undefined ? all : [first.verb, ...first.objects, ...first.times];
  return {
    part: index,
    line,
    also: [],
    start: Math.max(sentence.start, Math.min(...opens.map(({ start }) => start))),
    end: Math.min(length, Math.max(...all.map(({ end }) => end))),
  };
}

/** A fan's air does what a still oven does so much hotter, K (common practice, no source). */
const FAN_K = 20;

function ovenOf(
  part: Part,
  { line }: Step,
  event: Event | undefined,
): { readonly oven?: OvenNeed; readonly stages: readonly OvenTurn[] } {
  if (event === undefined || !isOvenHeat(event)) return { stages: [] };
  const own = event.temperatures.filter(({ of, bound }) => of === 'oven' && bound !== 'change');
  const spent = event.times.filter(({ kind }) => kind === 'spent');
  let passed = 0;
  const stages =
    own.length > 1 && own.length === spent.length
      ? own.map(({ celsius, written }, i): OvenTurn => {
          const atMin = Math.round(passed);
          passed += middle(spent[i]?.minutes ?? { low: 0, high: 0 });
          return { atMin, celsius: middle(celsius), fan: written[0]?.fan === true };
        })
      : stagesOf(part, line, event).map(({ celsius, fan }): OvenTurn => ({ atMin: 0, celsius, fan }));
  const [first, last] = [stages[0], stages.at(-1)];
  return first === undefined || last === undefined
    ? { stages }
    : { oven: { first: asStill(first), last: asStill(last) }, stages };
}

const asStill = ({ celsius, fan }: OvenTurn): number => celsius + (fan ? FAN_K : 0);

/** `Bake 40 min more`, or `Cool in the oven`, which nothing else is put into by then. */
const goesOn = (before: Drafted, { oven, event, meanwhile }: Drafted): boolean =>
  before.oven !== undefined &&
  before.minutes > 0 &&
  !meanwhile &&
  (oven !== undefined || event?.where.some(isInOven) === true);

/** °C of an oven that was turned off (judgement). */
const OFF_C = 50;

function goneOn(before: Drafted, then: Drafted): Drafted {
  const at = before.minutes;
  const turns = then.stages.map((stage) => ({ ...stage, atMin: at + stage.atMin }));
  const isTurned = before.oven?.last !== then.oven?.first;
  const isSameLine = before.line === then.line && before.also.length === 0;
  return {
    ...then,
    line: before.line,
    start: before.start,
    end: isSameLine ? then.end : before.end,
    also: isSameLine ? [] : [...before.also, { line: then.line, start: then.start, end: then.end }],
    minutes: at + then.minutes,
    said: before.said && then.said && { low: before.said.low + then.said.low, high: before.said.high + then.said.high },
    from: then.from === 'unsaid' ? 'unsaid' : before.from,
    oven: { first: before.oven?.first ?? OFF_C, last: then.oven?.last ?? OFF_C },
    stages: isTurned ? [...before.stages, ...turns] : before.stages,
  };
}

/** What the head says of the work, less what the steps say of it, among the work that they leave silent. */
function shareWork(drafted: readonly (readonly Drafted[])[], recipe: Recipe): readonly (readonly Drafted[])[] {
  const { work } = statedTimes(recipe);
  const all = drafted.flat();
  const isOpen = ({ from, spent }: Drafted) => from === 'unsaid' && spent === 'work';
  const open = all.filter(isOpen).length;
  if (work === undefined || open === 0) return drafted;
  const told = all.reduce((sum, task) => sum + (task.hands ? task.minutes : 0), 0);
  const each = Math.floor((middle(work) - told) / open);
  if (each < 1) return drafted;
  return drafted.map((tasks) =>
    tasks.map((task) => (isOpen(task) ? { ...task, minutes: each, from: 'head' as const } : task)),
  );
}
