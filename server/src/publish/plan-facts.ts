/**
 * Knows the plan of a day as facts, with the clock: what text, page, calendar and data are made of.
 * Refuses to know how any of them is laid out, and to plan.
 */
import { ovenTimes } from '../recipe/baking/oven-time.ts';
import { ovenTimeText } from '../recipe/baking/said.ts';
import type { Recipe, World } from '../recipe/model.ts';
import type { Plan, PlannedTask } from '../recipe/plan/plan.ts';
import type { MinutesFrom } from '../recipe/plan/plan-task.ts';
import type { WayOut } from '../recipe/plan/ways-out.ts';
import { capital } from '../recipe/words.ts';
import { clauseText } from './step-text.ts';

/** A point of the clock, and how many days before that of the serving. */
export interface PlanClock {
  readonly at: string;
  readonly days_before: number;
  /** Minutes before it is eaten, negative. */
  readonly min: number;
}

export interface PlanStep {
  /** Index in `recipes`. */
  readonly recipe: number;
  readonly part: string;
  /** Where its writer finds it: `line 7`. */
  readonly where: string;
  readonly text: string;
  readonly from: PlanClock;
  readonly to: PlanClock;
  readonly minutes: number;
  readonly minutes_from: MinutesFrom;
  /** As the steps say it; null where they say no end, or nothing. */
  readonly said_min: readonly [number, number | null] | null;
  readonly spent: 'work' | 'cooking' | 'waiting';
  readonly hands: boolean;
  /** Index in `ovens`. */
  readonly oven: number | null;
  readonly oven_turns: readonly (PlanOvenTurn & PlanClock)[];
  /** Until the next step begins, and how long it may. */
  readonly waits_min: number;
  /** Null where nothing bounds it. */
  readonly may_wait_min: number | null;
  readonly critical: boolean;
}

interface PlanOvenTurn {
  readonly celsius: number;
  readonly fan: boolean;
}

export interface PlanPreheat extends PlanOvenTurn {
  readonly oven: number;
  readonly from: PlanClock;
  readonly to: PlanClock;
}

export interface PlanClash {
  /** Indexes in `steps`; no other where it is the night. */
  readonly step: number;
  readonly other: number | null;
  readonly over: 'hands' | 'oven' | 'night';
  readonly earlier_min: number;
  readonly too_long_min: number;
}

export interface PlanAsked {
  /** Index in `steps`. */
  readonly step: number;
  readonly where: string;
  /** What is reckoned of a bake: `likely 75 min (60 to 95), …`. */
  readonly estimate: string | null;
}

export interface PlanFacts {
  readonly version: 1;
  readonly serve: string;
  /** The day on which it is eaten; null where none is said. */
  readonly date: string | null;
  readonly start: PlanClock;
  readonly hands_min: number;
  /** Some steps have no minutes, and none are reckoned for them. */
  readonly at_least: boolean;
  /** Every order was tried, or could be no better. */
  readonly best: boolean;
  readonly recipes: readonly string[];
  readonly ovens: readonly string[];
  readonly preheats: readonly PlanPreheat[];
  readonly steps: readonly PlanStep[];
  readonly clashes: readonly PlanClash[];
  readonly ways_out: readonly {
    readonly way: WayOut['way'];
    readonly start: PlanClock;
    readonly too_long_min: number;
  }[];
  /** What may be done on a day before: in that recipe, all up to that step. */
  readonly ahead: readonly { readonly recipe: number; readonly step: number; readonly days: number }[];
  readonly asked: readonly PlanAsked[];
  readonly note: string;
}

export interface PlanSource {
  readonly recipe: Recipe;
  /** What it is called where it has no name. */
  readonly file: string;
  /** Says where a line of it is, from 0. */
  readonly sayLine: (line: number) => string;
}

export interface PlanSetting {
  /** A minute of the day. */
  readonly serve: number;
  readonly date: string | null;
  readonly ovens: readonly string[];
}

/** More are never at hand at a time. */
export const MOST_OVENS = 20;

/** The ovens that are planned with: so many, or those that the house names, or one. */
export function ovenNames({ ovens }: World, count: number | undefined): readonly string[] {
  const named = Object.keys(ovens ?? {}).slice(0, MOST_OVENS);
  return Array.from({ length: count ?? Math.max(1, named.length) }, (_, i) => named[i] ?? `oven ${i + 1}`);
}

export const THERMOMETER =
  'The times are those that the recipes give, and no promise: a thermometer decides when food is done, and when it is cold.';

export function planFacts(plan: Plan, sources: readonly PlanSource[], { serve, date, ovens }: PlanSetting): PlanFacts {
  const clock = (min: number) => clockAt(serve, min);
  return {
    version: 1,
    serve: clock(0).at,
    date,
    start: clock(plan.start),
    hands_min: plan.handsMin,
    at_least: plan.atLeast,
    best: plan.isBest,
    recipes: sources.map(({ recipe, file }) => (recipe.name === '' ? file : recipe.name)),
    ovens,
    preheats: plan.preheats.map(({ start, end, oven, celsius, fan }) => ({
      oven,
      celsius: Math.round(celsius),
      fan,
      from: clock(start),
      to: clock(end),
    })),
    steps: plan.tasks.map((task) => stepOf(task, sources[task.recipe] as PlanSource, clock)),
    clashes: plan.clashes.map(({ task, other, over, earlier, tooLong }) => ({
      step: task,
      other: other ?? null,
      over,
      earlier_min: earlier,
      too_long_min: tooLong,
    })),
    ways_out: plan.waysOut.map(({ way, start, tooLong }) => ({ way, start: clock(start), too_long_min: tooLong })),
    ahead: plan.ahead.map(({ recipe, task, days }) => ({ recipe, step: task, days })),
    asked: plan.tasks.flatMap((task, step) => {
      const source = sources[task.recipe];
      if (task.task.from !== 'unsaid' || source === undefined) return [];
      return [{ step, where: whereOf(task, source), estimate: estimateOf(task, source) }];
    }),
    note: THERMOMETER,
  };
}

function stepOf(planned: PlannedTask, source: PlanSource, clock: (min: number) => PlanClock): PlanStep {
  const { task, start, end, wanted, oven, critical, recipe } = planned;
  return {
    recipe,
    part: source.recipe.parts[task.part]?.head.name ?? '',
    where: whereOf(planned, source),
    text: textOf(planned, source),
    from: clock(start),
    to: clock(end),
    minutes: task.minutes,
    minutes_from: task.from,
    said_min: task.said === undefined ? null : [task.said.low, Number.isFinite(task.said.high) ? task.said.high : null],
    spent: task.spent,
    hands: task.hands,
    oven: oven ?? null,
    oven_turns: task.stages.map(({ atMin, celsius, fan }) => ({
      ...clock(start + atMin),
      celsius: Math.round(celsius),
      fan,
    })),
    waits_min: wanted - end,
    may_wait_min: Number.isFinite(task.mayWait) ? task.mayWait : null,
    critical,
  };
}

/** The words of all its steps. */
function textOf({ task }: PlannedTask, { recipe }: PlanSource): string {
  if (task.start === task.end) return 'It lies until the next day';
  const part = recipe.parts[task.part];
  const texts = [task, ...task.also].flatMap(({ line, ...span }) => {
    const step = part?.steps.find((each) => each.line === line);
    const text = part?.head.source.lines[line]?.text;
    return step === undefined || text === undefined ? [] : [clauseText(step, text, span)];
  });
  return capital(texts.join('; '));
}

const lineOf = ({ task }: PlannedTask, { recipe }: PlanSource): number => (recipe.partsAt[task.part] ?? 0) + task.line;

const whereOf = (task: PlannedTask, source: PlanSource): string => source.sayLine(lineOf(task, source));

/** Of what stands in the oven, as long as its recipe does not say it. */
function estimateOf({ task }: PlannedTask, { recipe }: PlanSource): string | null {
  if (task.stages.length === 0) return null;
  const time = ovenTimes(recipe).find(({ bake }) => bake.part.index === task.part && bake.line === task.line);
  return time?.is === 'estimated' ? ovenTimeText(time) : null;
}

const DAY_MIN = 1440;

function clockAt(serve: number, min: number): PlanClock {
  const at = serve + min;
  const days = Math.floor(at / DAY_MIN);
  const ofDay = at - days * DAY_MIN;
  const two = (n: number) => String(n).padStart(2, '0');
  return { at: `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`, days_before: Math.max(0, -days), min };
}
