/**
 * Knows the recipe worked out, as the facts a report shows: grams, percentages, composition, measures, times, servings, allergens.
 * Refuses to know how they are laid out. What is not known is null.
 */

import type { Findings } from '../checks/finding.ts';
import type { Component, MixComposition } from '../food/composition.ts';
import { likelyGrams } from '../food/weigh.ts';
import { middle } from '../measure/quantity.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import { statedSpan } from '../notation/item-amounts.ts';
import { allergensListed } from '../recipe/allergens.ts';
import { plannedTimes } from '../recipe/durations.ts';
import { type Ingredient, isFlour } from '../recipe/ingredient.ts';
import type { Stay } from '../recipe/journey/bodies.ts';
import { journeyOf } from '../recipe/journey/fold.ts';
import { understoodOf } from '../recipe/journey/understood.ts';
import type { Band, Verdict } from '../recipe/kinds.ts';
import { MEASURES, type MeasureName } from '../recipe/measures.ts';
import { isUnderstood, linesNotUnderstood, type UnreadLine } from '../recipe/not-understood.ts';
import { outOfOven } from '../recipe/out-of-oven.ts';
import { partMeasure, placeIn } from '../recipe/part-measure.ts';
import type { Part, Recipe } from '../recipe/recipe.ts';
import { type RecipeState, recipeRecord } from '../recipe/state.ts';
import { readTrials, type Trial } from '../recipe/trials.ts';
import { yieldNoun } from '../recipe/yield.ts';
import { type Cost, costOf, type PriceList } from './cost.ts';
import { type FindingJson, findingJson, plainFinding } from './finding-json.ts';
import { euLabel, type Label, mixOf, nutritionOf, usLabel, totalG as wholeG } from './nutrition.ts';
import { type ReportStep, reportSteps } from './step-events.ts';

/** The shape of `report --format json`; grams unless the name says otherwise. */
export interface Report {
  readonly version: 1;
  readonly recipe: string | null;
  readonly yield: { readonly amount: number; readonly unit: string | null; readonly each_g: number | null } | null;
  readonly mass_g: number | null;
  /** What usually comes out of the oven; null where nothing is baked, or a weight is not known. `high` is null where there is no most. */
  readonly out_of_oven_g: { readonly low: number; readonly high: number | null } | null;
  readonly parts: readonly ReportPart[];
  /** `hands_on` and `waiting` make the total, as on the page; `cooking` is of both. By the recipe's head, or as far as its steps say. */
  readonly times_min: {
    readonly hands_on: number | null;
    readonly waiting: number | null;
    readonly cooking: number | null;
    readonly total: number | null;
    readonly by: 'head' | 'steps';
  };
  readonly per_serving: Readonly<Record<ServingField, number | null>> | null;
  readonly allergens: {
    readonly us: readonly string[];
    readonly eu: readonly string[];
    /** By what is chosen where the list leaves a choice. */
    readonly may_contain: { readonly us: readonly string[]; readonly eu: readonly string[] };
    /** Some makes of the food have these. */
    readonly check_label: readonly {
      readonly food: string;
      readonly us: readonly string[];
      readonly eu: readonly string[];
    }[];
    readonly not_known: readonly string[];
  };
  /** What the kitchen's record says of it, and what the trials measured of each thing. */
  readonly state: RecipeState;
  readonly spread: readonly ReportSpread[];
  readonly nutrition: ReportNutrition;
  /** Null where the house has no prices. */
  readonly cost: Cost | null;
  /** How far the text was read. */
  readonly read: {
    readonly sentences: number;
    readonly understood: number;
    readonly figures: number;
    readonly figures_understood: number;
    readonly lines_not_understood: number;
  };
  /** Where the food of the steps lies, and for how long, as it was understood. */
  readonly stays: readonly ReportStay[];
  readonly findings: readonly FindingJson[];
  readonly accepted: readonly (FindingJson & { readonly reason: string })[];
}

/** A time that food lies somewhere. */
export interface ReportStay {
  readonly part: string;
  /** From 1, in the file. */
  readonly line: number;
  readonly foods: readonly string[];
  /** Null where nobody knows. */
  readonly place: string | null;
  readonly celsius: readonly [number, number];
  /** The second is null where no end is said. */
  readonly minutes: readonly [number, number | null];
  readonly shut: string;
  /** Of what is cooked least. */
  readonly cooked: string;
  readonly sure: string;
}

/** Figures for a label. */
export interface ReportNutrition {
  /** What trials weighed at the end, on average; null where none did. */
  readonly cooked_g: number | null;
  readonly weighed_trials: number;
  /** A serving, rounded by 21 CFR 101.9(c). */
  readonly us_per_serving: Label | null;
  /** Rounded by the European Union's guidance. */
  readonly eu_per_100g: Label | null;
  /** Ingredients that no figure counts: no weight, or a food that is not known. */
  readonly not_counted: readonly string[];
}

/** One thing that several trials measured: minutes, degrees Celsius or grams. */
export interface ReportSpread {
  readonly what: string;
  readonly unit: 'min' | 'C' | 'g';
  readonly trials: number;
  readonly low: number;
  readonly high: number;
  readonly mean: number;
}

export interface ReportPart {
  readonly name: string;
  readonly kind: string | null;
  readonly mass_g: number | null;
  /** Null where something in the part is not weighed. */
  readonly composition_g: Readonly<Record<CompositionField, number | null>>;
  /** What is known of it then; null where all is. */
  readonly composition_at_least_g: Readonly<Record<CompositionField, number>> | null;
  /** Lines of its list that are in no sum, as written, and where: `line 7`. */
  readonly not_understood: readonly { readonly where: string; readonly text: string }[];
  readonly ingredients: readonly ReportIngredient[];
  /** What was understood of its steps. */
  readonly steps: readonly ReportStep[];
  readonly measures: readonly ReportMeasure[];
}

export interface ReportIngredient {
  readonly name: string;
  readonly food: string | null;
  readonly written: string;
  readonly grams: number | null;
  readonly grams_low: number | null;
  readonly grams_high: number | null;
  readonly grams_from: string | null;
  readonly grams_why: string;
  readonly bakers_percent: number | null;
  readonly share_percent: number | null;
  readonly optional: boolean;
}

export interface ReportMeasure {
  readonly name: MeasureName;
  readonly value: number | null;
  readonly value_low: number | null;
  readonly value_high: number | null;
  readonly unit: '1' | 'C';
  readonly band: Band;
  /** Null where it is not known, or usual by only some of what the lines it hangs on could be. */
  readonly verdict: Verdict | null;
  /** Lines of a food that could be several, or that nobody knows. */
  readonly hangs_on: readonly string[];
  readonly source: string;
}

const COMPOSITION = {
  water: 'water',
  protein: 'protein',
  fat: 'fat',
  carbohydrate: 'carbohydrate',
  sugar: 'sugars',
  starch: 'starch',
  fibre: 'fibre',
  ash: 'ash',
  alcohol: 'alcohol',
  salt: 'salt',
} as const satisfies Record<string, Component>;
type CompositionField = keyof typeof COMPOSITION;
type ServingField =
  | 'energy_kcal'
  | 'fat_g'
  | 'saturates_g'
  | 'carbohydrate_g'
  | 'sugars_g'
  | 'fibre_g'
  | 'protein_g'
  | 'salt_g'
  | 'sodium_mg';

export interface ReportSources {
  /** Of the recipe's own file: what a base was cooked as proves nothing of a variant. */
  readonly trials?: readonly Trial[];
  /** Of the house; without them nothing has a cost. */
  readonly prices?: PriceList;
  /** Where the writer finds a line of the recipe. */
  readonly sayLine?: (line: number) => string;
}

export function report(recipe: Recipe, findings: Findings, sources: ReportSources = {}): Report {
  const { trials = readTrials(recipe.outline), prices = NO_PRICES, sayLine = sayOwnLine } = sources;
  const unread = linesNotUnderstood(recipe);
  const nutrition = nutritionOf(recipe, trials);
  const parts = recipe.parts.map((part) => reportPart(part, recipe.partsAt[part.index] ?? 0, unread, sayLine));
  const all = recipe.parts.flatMap((p) => p.head.ingredients);
  const known = recipe.parts.every((p) => p.head.massG.complete && !p.head.nominal) && all.length > 0;
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
    parts,
    times_min: reportTimes(recipe),
    per_serving: isUnderstood(recipe) ? perServing(all, pieces) : null,
    allergens: allergensOf(recipe),
    state: recipeRecord(recipe, trials).state,
    spread: spreadOf(trials),
    nutrition: {
      cooked_g: nutrition.cookedG === null ? null : round(nutrition.cookedG, 1),
      weighed_trials: nutrition.weighedTrials,
      us_per_serving: usLabel(nutrition),
      eu_per_100g: euLabel(nutrition),
      not_counted: nutrition.notCounted,
    },
    cost: costOf(recipe, prices),
    read: readOf(recipe, unread.length),
    stays: journeyOf(recipe).stays.map((stay) => reportStay(recipe, stay)),
    findings: findings.open.map((f) => findingJson(plainFinding(f))),
    accepted: findings.accepted.map((f) => ({ ...findingJson(plainFinding(f)), reason: f.reason })),
  };
}

function reportTimes(recipe: Recipe): Report['times_min'] {
  const { handsOn, waiting, cooking, total, stated } = plannedTimes(recipe);
  return { hands_on: handsOn, waiting, cooking, total, by: stated ? 'head' : 'steps' };
}

function readOf(recipe: Recipe, unreadLines: number): Report['read'] {
  const { sentences, understood, figures, figuresUnderstood } = understoodOf(recipe);
  return { sentences, understood, figures, figures_understood: figuresUnderstood, lines_not_understood: unreadLines };
}

function reportStay(recipe: Recipe, { part, line, body, lies, minutes, sure }: Stay): ReportStay {
  const least = COOKED.find((cooked) => body.members.some(({ state }) => state.cooked === cooked));
  return {
    part: recipe.parts[part]?.head.name ?? '',
    line: (recipe.partsAt[part] ?? 0) + line + 1,
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

/** Of a recipe that builds on no other file. */
export const sayOwnLine = (line: number): string => `line ${line + 1}`;

function reportPart(
  part: Part,
  firstLine: number,
  unread: readonly UnreadLine[],
  sayLine: (line: number) => string,
): ReportPart {
  const { head } = part;
  const mix = mixOf(head.ingredients);
  const { massG: mass } = mix;
  const flours = head.ingredients.map((i) => (isFlour(i) && i.weighed.known ? likelyGrams(i.weighed) : 0));
  // A line that is not understood may be flour.
  const flour = head.notUnderstood.length === 0 ? sum(flours) : 0;
  return {
    name: head.name,
    kind: head.kind?.name ?? null,
    mass_g: head.massG.complete && !head.nominal && head.ingredients.length > 0 ? round(mass, 1) : null,
    composition_g: compositionOf((component) => (head.massG.complete ? totalG(mix, component) : null)),
    composition_at_least_g: head.massG.complete
      ? null
      : compositionOf((component) => round(mix.totals[component].grams, 2)),
    ingredients: head.ingredients.map((i) => reportIngredient(part, i, flour, head.massG.complete ? mass : undefined)),
    steps: reportSteps(part, firstLine),
    measures: measuresOf(part),
    not_understood: unread.flatMap(({ at, text, part: index }) =>
      index === part.index ? [{ where: sayLine(at), text }] : [],
    ),
  };
}

const compositionOf = <V>(grams: (component: Component) => V): Record<CompositionField, V> =>
  Object.fromEntries(Object.entries(COMPOSITION).map(([field, component]) => [field, grams(component)])) as Record<
    CompositionField,
    V
  >;

function reportIngredient(
  part: Part,
  ingredient: Ingredient,
  flourG: number,
  massG: number | undefined,
): ReportIngredient {
  const { weighed, node } = ingredient;
  const grams = weighed.known ? likelyGrams(weighed) : null;
  const stated = statedSpan(node);
  const line = part.head.source.lines[ingredient.line]?.text ?? '';
  return {
    name: ingredient.name,
    food: ingredient.food?.id ?? null,
    written: stated === undefined ? '' : line.slice(stated.start, stated.end),
    grams: grams === null ? null : round(grams, 2),
    grams_low: weighed.known ? round(weighed.grams.low, 2) : null,
    grams_high: weighed.known ? round(weighed.grams.high, 2) : null,
    grams_from: weighed.known ? weighed.reason.kind : null,
    grams_why: weighed.known ? `${weighed.reason.words} (${weighed.reason.source})` : weighed.why,
    bakers_percent: grams === null || flourG <= 0 ? null : round((grams / flourG) * 100, 1),
    share_percent: grams === null || massG === undefined || massG <= 0 ? null : round((grams / massG) * 100, 1),
    optional: ingredient.optional,
  };
}

/** The measures of a part's kind, worked out. */
export function measuresOf(part: Part): ReportMeasure[] {
  const { kind } = part.head;
  if (kind === undefined || part.head.ingredients.length === 0) return [];
  return kind.measures.map((held) => {
    const worked = partMeasure(part, held.measure);
    const value = worked.known ? worked.value : undefined;
    return {
      name: held.measure,
      value: value === undefined ? null : round(middle(value), 4),
      value_low: value === undefined ? null : round(value.low, 4),
      value_high: value === undefined ? null : round(value.high, 4),
      unit: MEASURES[held.measure].unit === 'celsius' ? 'C' : '1',
      band: held.usual,
      verdict: placeIn(worked, held) ?? null,
      hangs_on: worked.known ? (worked.open ?? []).map(({ name }) => name) : [],
      source: held.source,
    };
  });
}

const NO_PRICES: PriceList = new Map();

/** A total in grams to the hundredth, or null where too much of the mix does not say. */
function totalG(mix: MixComposition, component: Component): number | null {
  const grams = wholeG(mix, component);
  return grams === null ? null : round(grams, 2);
}

function perServing(all: readonly Ingredient[], pieces: number | undefined): Report['per_serving'] {
  if (pieces === undefined || pieces <= 0 || all.length === 0) return null;
  const mix = mixOf(all);
  const complete = all.every((i) => i.weighed.known || i.free || i.optional);
  const share = (component: Component) => {
    const total = complete ? totalG(mix, component) : null;
    return total === null ? null : round(total / pieces, 2);
  };
  const fat = share('fat');
  const protein = share('protein');
  const carbohydrate = share('carbohydrate');
  const alcohol = share('alcohol');
  const salt = share('salt');
  const energy =
    fat === null || protein === null || carbohydrate === null
      ? null
      : 9 * fat + 4 * protein + 4 * carbohydrate + 7 * (alcohol ?? 0);
  return {
    // Atwater factors, 21 CFR 101.9(c)(1)(i)(B).
    energy_kcal: energy === null ? null : round(energy, 0),
    fat_g: fat,
    saturates_g: share('saturates'),
    carbohydrate_g: carbohydrate,
    sugars_g: share('sugars'),
    fibre_g: share('fibre'),
    protein_g: protein,
    salt_g: salt,
    // Salt is sodium × 2.5, Regulation (EU) 1169/2011, annex I.
    sodium_mg: salt === null ? null : round((salt / 2.5) * 1000, 0),
  };
}

/** What the labels of both sides must name; a food that is not known, or that nobody says it of, is named, for a false "none" could hurt someone. */
export function allergensOf(recipe: Recipe): Report['allergens'] {
  const { us, eu, mayContain, labels, notKnown } = allergensListed(recipe.parts.map((p) => p.head));
  // A name on one of these is named with its line.
  const unread = [...new Set(linesNotUnderstood(recipe).flatMap((l) => (l.part === undefined ? [] : l.text)))];
  // What another file brings is not read here, unless the recipe was written out in full.
  const elsewhere = recipe.inherits ? ['what it takes from another file'] : [];
  return {
    us,
    eu,
    may_contain: mayContain,
    check_label: labels.map(({ name, us, eu }) => ({ food: name, us, eu })),
    // What stands on a line that is not understood may be anything.
    not_known: [...elsewhere, ...notKnown.filter((name) => !unread.some((line) => line.includes(name))), ...unread],
  };
}

/** The names of both lists, once each: `fish, crustaceans, crustacean shellfish`. */
export const allergenNames = ({ us, eu }: { readonly us: readonly string[]; readonly eu: readonly string[] }): string =>
  [...new Set([...eu, ...us])].join(', ');

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

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
const round = (value: number, decimals: number): number => Number(value.toFixed(decimals));
