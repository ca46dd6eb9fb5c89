/**
 * Knows the recipe worked out, as the facts a report shows: grams, percentages, composition, measures, times, servings, allergens.
 * Refuses to know how they are laid out. What is not known is null.
 */
import type { Findings } from '../checks/finding.ts';
import { panFills } from '../checks/method/pan-fill.ts';
import { middle } from '../measure/quantity.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { Stay } from '../recipe/journey/bodies.ts';
import { plannedTimes } from '../recipe/journey/durations.ts';
import { journeyOf } from '../recipe/journey/fold.ts';
import { understoodOf } from '../recipe/journey/understood.ts';
import { isUnderstood, linesNotUnderstood } from '../recipe/list/not-understood.ts';
import type { Recipe } from '../recipe/model.ts';
import { outOfOven } from '../recipe/trials/out-of-oven.ts';
import { recipeRecord } from '../recipe/trials/state.ts';
import { readTrials, type Trial } from '../recipe/trials/trials.ts';
import { yieldNoun } from '../recipe/yield.ts';
import { costOf, type PriceList } from './cost.ts';
import { findingJson, plainFinding } from './finding-json.ts';
import { mixOf } from './nutrition.ts';
import { picturesIn } from './pictures.ts';
import { allergensOf } from './report-allergens.ts';
import { madeOf } from './report-made-of.ts';
import { measuredIn } from './report-measured.ts';
import { perServing, perServingCooked, reportNutrition } from './report-nutrition.ts';
import { reportOven } from './report-oven.ts';
import { flourOf, reportPart } from './report-part.ts';
import type { Report, ReportSpread, ReportStay } from './report-shape.ts';
import { reportTrials } from './report-trials.ts';
import { round, sum } from './rounded.ts';

export interface ReportSources {
  /** Of the recipe's own file: what a base was cooked as proves nothing of a variant. */
  readonly trials?: readonly Trial[];
  /** Of the house; without them nothing has a cost. */
  readonly prices?: PriceList;
  /** Takes away of its nutrition what cooking does, by the public tables. */
  readonly cooked?: boolean;
  /** Where the writer finds a line of the recipe. */
  readonly sayLine?: (line: number) => string;
  /** The line of the writer's file, from 1, by that of the recipe, from 0. */
  readonly lineOf?: (line: number) => number;
}

export function report(recipe: Recipe, findings: Findings, sources: ReportSources = {}): Report {
  const { trials = readTrials(recipe.outline), prices = NO_PRICES, sayLine = sayOwnLine, lineOf = ownLine } = sources;
  const unread = linesNotUnderstood(recipe);
  const oven = reportOven(recipe, lineOf);
  const among = { unread, sayLine, flourG: flourOf(recipe.parts) };
  const parts = recipe.parts.map((part) =>
    reportPart(part, (line) => lineOf((recipe.partsAt[part.index] ?? 0) + line), among),
  );
  const all = recipe.parts.flatMap((p) => p.head.ingredients);
  // What another file brings is not known here, unless the recipe was written out in full.
  const known =
    !recipe.inherits && recipe.parts.every((p) => p.head.massG.complete && !p.head.nominal) && all.length > 0;
  const massG = known ? sum(recipe.parts.map((p) => mixOf(p.head.ingredients).massG)) : null;
  const made = recipe.yield?.node.amount;
  const pieces = made !== undefined && made.unit === undefined ? middle(made.quantity) : undefined;
  return {
    version: 1,
    recipe: recipe.name === '' ? null : recipe.name,
    yield:
      made === undefined
        ? null
        : {
            amount: round(middle(made.quantity), 3),
            unit: (recipe.yield && yieldNoun(recipe.yield.node)) || null,
            each_g: massG === null || pieces === undefined || pieces <= 0 ? null : round(massG / pieces, 1),
          },
    mass_g: massG === null ? null : round(massG, 1),
    out_of_oven_g: leftInOven(recipe),
    pans: reportPans(recipe, lineOf),
    parts,
    times_min: reportTimes(recipe),
    per_serving: !isUnderstood(recipe)
      ? null
      : sources.cooked
        ? perServingCooked(recipe, trials)
        : perServing(all, pieces),
    allergens: allergensOf(recipe),
    state: recipeRecord(recipe, trials).state,
    spread: spreadOf(trials),
    trials: reportTrials(recipe, trials, lineOf),
    measured: measuredIn(recipe, trials, oven),
    nutrition: reportNutrition(recipe, trials, sources.cooked),
    cost: costOf(recipe, prices, lineOf),
    read: readOf(recipe, unread.length),
    stays: journeyOf(recipe).stays.map((stay) => reportStay(recipe, stay, lineOf)),
    oven,
    made_of: madeOf(recipe),
    pictures: picturesIn(recipe.outline, lineOf),
    findings: findings.open.map((f) => findingJson(plainFinding(f))),
    accepted: findings.accepted.map((f) => ({ ...findingJson(plainFinding(f)), reason: f.reason })),
  };
}

const reportPans = (recipe: Recipe, lineOf: (line: number) => number): Report['pans'] =>
  panFills(recipe)
    .filter(({ batches, pieces }) => !batches && !pieces)
    .map(({ at: { part, line }, panRange, rawMl, risenMl }) => ({
      part: part === undefined ? '' : (recipe.parts[part]?.head.name ?? ''),
      line: lineOf((part === undefined ? 0 : (recipe.partsAt[part] ?? 0)) + line),
      holds_ml: whole([panRange.low, panRange.high]),
      in_ml: whole(rawMl),
      grown_ml: whole(risenMl),
    }));

const whole = ([low, high]: readonly [number, number]): readonly [number, number] => [round(low, 0), round(high, 0)];

function reportTimes(recipe: Recipe): Report['times_min'] {
  const { handsOn, waiting, cooking, total, stated } = plannedTimes(recipe);
  return { hands_on: handsOn, waiting, cooking, total, by: stated ? 'head' : 'steps' };
}

function readOf(recipe: Recipe, unreadLines: number): Report['read'] {
  const { sentences, understood, figures, figuresUnderstood } = understoodOf(recipe);
  return { sentences, understood, figures, figures_understood: figuresUnderstood, lines_not_understood: unreadLines };
}

function reportStay(
  recipe: Recipe,
  { part, line, body, lies, minutes, sure }: Stay,
  lineOf: (line: number) => number,
): ReportStay {
  const least = COOKED.find((cooked) => body.members.some(({ state }) => state.cooked === cooked));
  return {
    part: recipe.parts[part]?.head.name ?? '',
    line: lineOf((recipe.partsAt[part] ?? 0) + line),
    foods: body.members.flatMap(({ of }) => recipe.parts[of.part]?.head.ingredients[of.ingredient]?.name ?? []),
    place: lies.place ?? null,
    celsius: [lies.celsius.low, lies.celsius.high],
    minutes: [round(minutes.low, 1), Number.isFinite(minutes.high) ? round(minutes.high, 1) : null],
    shut: body.shut,
    cooked: least ?? 'raw',
    sure,
  };
}

const COOKED = ['raw', 'outside', 'unsaid', 'through'] as const;

function leftInOven(recipe: Recipe): Report['out_of_oven_g'] {
  const usual = outOfOven(recipe);
  if (usual === undefined) return null;
  const { low, high } = usual.left;
  return { low: round(low, 0), high: Number.isFinite(high) ? round(high, 0) : null };
}

const ownLine = (line: number): number => line + 1;

/** Of a recipe that builds on no other file. */
export const sayOwnLine = (line: number): string => `line ${line + 1}`;

const NO_PRICES: PriceList = new Map();

/** What trials measured of one thing, where several did. */
export function spreadOf(trials: readonly Trial[]): ReportSpread[] {
  const measured = new Map<string, { unit: ReportSpread['unit']; values: number[] }>();
  const add = (what: string, unit: ReportSpread['unit'], value: number) => {
    const entry = measured.get(`${what} ${unit}`) ?? { unit, values: [] };
    entry.values.push(value);
    measured.set(`${what} ${unit}`, entry);
  };
  for (const { took, reached, weighed, used } of trials) {
    for (const { duration, verb } of took) add(verb?.text ?? 'in all', 'min', (duration.lowMin + duration.highMin) / 2);
    for (const { celsius, place } of reached) add(place?.text ?? 'reached', 'C', middle(celsius));
    for (const { amount, name, part } of used) {
      const base =
        amount.kind === 'measured' && amount.unit !== undefined ? baseOf(amount.unit.symbol, 'us') : undefined;
      if (amount.kind === 'measured' && base !== undefined && dimensionOf(amount.unit?.symbol ?? 'g') === 'mass')
        add(part === undefined ? name.text : `${name.text} in ${part.text}`, 'g', middle(amount.quantity) * base);
    }
    for (const { amount, outOf } of weighed) {
      const base = amount.unit === undefined ? undefined : baseOf(amount.unit.symbol, 'us');
      if (base !== undefined) add(`out of ${outOf?.text ?? 'the end'}`, 'g', middle(amount.quantity) * base);
    }
  }
  return [...measured].flatMap(([key, { unit, values }]) =>
    values.length < 2
      ? []
      : [
          {
            what: key.slice(0, -unit.length - 1),
            unit,
            trials: values.length,
            low: round(Math.min(...values), 1),
            high: round(Math.max(...values), 1),
            mean: round(sum(values) / values.length, 1),
          },
        ],
  );
}
