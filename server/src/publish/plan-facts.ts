/**
 * Knows the plan of a day as facts, with the clock: what text, page, calendar and data are made of.
 * Refuses to know how any of them is laid out, and to plan.
 */
import { whyDeclined } from '../recipe/baking/said.ts';
import type { Recipe, World } from '../recipe/model.ts';
import type { Plan, PlannedTask } from '../recipe/plan/plan.ts';
import type { MinutesFrom, PlanTask } from '../recipe/plan/plan-task.ts';
import { bakeOf } from '../recipe/plan/reckoned.ts';
import type { WayOut } from '../recipe/plan/ways-out.ts';
import { capital } from '../recipe/words.ts';
import { clockOf } from './clock.ts';
import { clauseText, type Scales } from './step-text.ts';

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
  /** The same from 1, in the file that is looked at; null where another says it. */
  readonly line: number | null;
  readonly text: string;
  readonly from: PlanClock;
  readonly to: PlanClock;
  readonly minutes: number;
  readonly minutes_from: MinutesFrom;
  /** As the steps say it; null where they say no end, or nothing. */
  readonly said_min: readonly [number, number | null] | null;
  /** Of an estimate the least and the most that is likely; null where none was needed, or there is none. */
  readonly estimate_min: readonly [number, number] | null;
  /** Why a bake that says no minutes has no estimate. */
  readonly not_estimated: string | null;
  readonly spent: 'work' | 'cooking' | 'waiting';
  readonly hands: boolean;
  /** Whose, where there are several pairs: from 0. */
  readonly pair: number | null;
  readonly on: 'hob' | 'smoker' | 'cold' | null;
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
  /** What is put for it meanwhile; null where nothing is. */
  readonly put_min: number | null;
}

export interface PlanFacts {
  readonly version: 1;
  readonly serve: string;
  /** The day on which it is eaten; null where none is said. */
  readonly date: string | null;
  readonly start: PlanClock;
  /** If all takes its longest. */
  readonly start_at_most: PlanClock;
  readonly hands_min: number;
  /** Some steps cook or wait without minutes, and none are reckoned for them. */
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
  /** The line of its file, from 0; undefined where another file says it. */
  readonly ownLine?: (line: number) => number | undefined;
  /** Heats on the scales that the text has; else on both. */
  readonly scales?: Scales;
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
    start_at_most: clock(plan.startAtMost),
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
      const { from, minutes } = task.task;
      if ((from !== 'unsaid' && from !== 'put') || source === undefined) return [];
      return [{ step, where: whereOf(task, source), put_min: from === 'put' ? minutes : null }];
    }),
    note: THERMOMETER,
  };
}

function stepOf(planned: PlannedTask, source: PlanSource, clock: (min: number) => PlanClock): PlanStep {
  const { task, start, end, wanted, oven, pair, critical, recipe } = planned;
  const ownLine = source.ownLine?.(lineOf(planned, source));
  return {
    recipe,
    part: source.recipe.parts[task.part]?.head.name ?? '',
    where: whereOf(planned, source),
    line: ownLine === undefined ? null : ownLine + 1,
    text: textOf(planned, source),
    from: clock(start),
    to: clock(end),
    minutes: task.minutes,
    minutes_from: task.from,
    said_min: task.said === undefined ? null : [task.said.low, Number.isFinite(task.said.high) ? task.said.high : null],
    estimate_min: task.estimate === undefined ? null : [task.estimate.low, task.estimate.high],
    not_estimated: notEstimated(task, source),
    spent: task.spent,
    hands: task.hands,
    pair: pair ?? null,
    on: task.on ?? null,
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
function textOf({ task }: PlannedTask, { recipe, scales = 'both' }: PlanSource): string {
  if (task.start === task.end) return 'It lies until the next day';
  const part = recipe.parts[task.part];
  const texts = [task, ...task.also].flatMap(({ line, ...span }) => {
    const step = part?.steps.find((each) => each.line === line);
    const text = part?.head.source.lines[line]?.text;
    return step === undefined || text === undefined ? [] : [clauseText(step, text, span, scales)];
  });
  return capital(texts.join('; '));
}

const lineOf = ({ task }: PlannedTask, { recipe }: PlanSource): number => (recipe.partsAt[task.part] ?? 0) + task.line;

const whereOf = (task: PlannedTask, source: PlanSource): string => source.sayLine(lineOf(task, source));

/** Of what stands in the oven, and says no minutes. */
function notEstimated(task: PlanTask, { recipe }: PlanSource): string | null {
  if (task.from !== 'unsaid' || task.stages.length === 0) return null;
  const time = bakeOf(recipe, task);
  return time?.is === 'declined' ? whyDeclined(time.why) : null;
}

const DAY_MIN = 1440;

function clockAt(serve: number, min: number): PlanClock {
  const at = serve + min;
  const days = Math.floor(at / DAY_MIN);
  return { at: clockOf(at), days_before: Math.max(0, -days), min };
}
