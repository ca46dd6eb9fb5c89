/** Knows the estimates of oven times as facts of a report. Refuses to work them out. */
import { ovenTimes } from '../recipe/baking/oven-time.ts';
import { whyDeclined } from '../recipe/baking/said.ts';
import type { Estimated } from '../recipe/baking/time-in-oven.ts';
import type { Recipe } from '../recipe/model.ts';
import type { ReportEstimate, ReportOvenTime } from './report-shape.ts';
import { round } from './rounded.ts';

/** `lineOf` says which line of the writer's file, from 1, a line of the recipe is. */
export const reportOven = (recipe: Recipe, lineOf: (line: number) => number): readonly ReportOvenTime[] =>
  ovenTimes(recipe).map((time) => {
    const { part, line, said } = time.bake;
    return {
      part: part.head.name,
      line: lineOf((recipe.partsAt[part.index] ?? 0) + line),
      said_min: said === undefined ? null : [round(said.low, 1), round(said.high, 1)],
      estimate: time.is === 'estimated' ? estimateOf(time) : null,
      not_estimated: time.is === 'declined' ? whyDeclined(time.why) : null,
    };
  });

const estimateOf = ({ estimate, load, startAssumed, targetAssumed, trials, oven }: Estimated): ReportEstimate => ({
  likely_min: round(estimate.likely, 0),
  low_min: round(estimate.low, 0),
  high_min: round(estimate.high, 0),
  kind: load.kind.name,
  mass_g: round(load.massKg * 1000, 0),
  depth_cm: round(estimate.depth * 100, 1),
  shape: load.form.is,
  coefficient_w_per_m2k: round(estimate.coefficient, 1),
  oven_c: load.oven.stages.map(({ celsius }) => round(celsius, 0)),
  fan: load.oven.fan,
  oven: oven?.name ?? null,
  pan_of: load.pan?.word ?? null,
  covered: load.covered,
  start_c: round(load.startC, 0),
  start_assumed: startAssumed,
  target_c: round(load.targetC, 0),
  target_assumed: targetAssumed,
  rise_k: round(estimate.rise, 0),
  spread: estimate.spread,
  trials,
});
