/**
 * Knows the shape of a report: every field that `report --format json` has. What is not known is null.
 */
import type { Component } from '../food/composition.ts';
import type { Band, MeasureName } from '../recipe/measures/kind.ts';
import type { Verdict } from '../recipe/measures/kinds.ts';
import type { RecipeState } from '../recipe/trials/state.ts';
import type { Cost } from './cost.ts';
import type { Label } from './declared.ts';
import type { FindingJson } from './finding-json.ts';
import type { ContentField } from './nutrition.ts';
import type { ReportPicture } from './pictures.ts';
import type { ReportStep } from './step-events.ts';

export interface ReportPan {
  /** Empty for the recipe's own. */
  readonly part: string;
  readonly line: number;
  readonly holds_ml: readonly [number, number];
  readonly in_ml: readonly [number, number];
  readonly grown_ml: readonly [number, number];
}

/** The shape of `report --format json`; grams unless the name says otherwise. */
export interface Report {
  readonly version: 1;
  readonly recipe: string | null;
  readonly yield: { readonly amount: number; readonly unit: string | null; readonly each_g: number | null } | null;
  readonly mass_g: number | null;
  /** What usually comes out of the oven; null where nothing is baked, or a weight is not known. `high` is null where there is no most. */
  readonly out_of_oven_g: { readonly low: number; readonly high: number | null } | null;
  /** How full each pan is that is written, of those of which it can be told: ml to the brim, as it goes in, and at its highest; each least and most. */
  readonly pans: readonly ReportPan[];
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
    /** Each allergen once, with the ingredients that bring it; null where that side's law does not name it. */
    readonly brought: readonly ReportAllergen[];
    readonly may_be_brought: readonly ReportAllergen[];
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
  /** Oldest first. */
  readonly trials: readonly ReportTrial[];
  /** Each thing that a trial measured, with what all of them found of it. */
  readonly measured: readonly ReportMeasured[];
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
  /** How long what is in the oven is likely to take, bake by bake: estimates, and a thermometer decides. */
  readonly oven: readonly ReportOvenTime[];
  /** What each part that lists something, and the whole, are made of; the whole is null where parts are written in percentages of their own. */
  readonly made_of: { readonly parts: readonly ReportMadeOf[]; readonly whole: ReportMadeOf | null };
  /** Of the dish, of its steps and of its trials. */
  readonly pictures: readonly ReportPicture[];
  readonly findings: readonly FindingJson[];
  readonly accepted: readonly (FindingJson & { readonly reason: string })[];
}

export interface ReportAllergen {
  readonly us: string | null;
  readonly eu: string | null;
  readonly by: readonly string[];
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

/** One bake: an estimate with all that it rests on, or why there is none. */
export interface ReportOvenTime {
  readonly part: string;
  /** From 1, in the file. */
  readonly line: number;
  /** As the steps say; null where they do not, or not as one time. */
  readonly said_min: readonly [number, number] | null;
  readonly estimate: ReportEstimate | null;
  /** In a cook's words; null where it is estimated. */
  readonly not_estimated: string | null;
}

export interface ReportEstimate {
  readonly likely_min: number;
  /** Eight of ten lie within. */
  readonly low_min: number;
  readonly high_min: number;
  readonly kind: string;
  readonly mass_g: number;
  /** From the coldest place to the surface; of a pan, how deep it is filled. */
  readonly depth_cm: number;
  readonly shape: 'pan' | 'body';
  readonly coefficient_w_per_m2k: number;
  readonly oven_c: readonly number[];
  readonly fan: boolean;
  /** Of the house, where a trial says which; its offset is in `oven_c`. */
  readonly oven: string | null;
  /** Glass, ceramic or dark metal, where the pan is of that. */
  readonly pan_of: string | null;
  readonly covered: boolean;
  readonly start_c: number;
  readonly start_assumed: boolean;
  readonly target_c: number;
  readonly target_assumed: boolean;
  /** By which the middle rises out of the oven. */
  readonly rise_k: number;
  /** 1 sd of the logarithm of the time. */
  readonly spread: number;
  readonly trials: number;
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
  /** The same figures before any label rounds them, of 100 g; null where the weight is not known. */
  readonly per_100g: Readonly<Record<ServingField, number | null>> | null;
  /** For each figure that is null: the ingredients for which it is not known. */
  readonly not_known_for: Readonly<Partial<Record<LabelField, readonly string[]>>>;
  /** Ingredients that no figure counts: no weight, or a food that is not known. */
  readonly not_counted: readonly string[];
  /** Sentences: what the figures take for granted beside what the tables have. */
  readonly assumes: readonly string[];
}

export interface ReportTrial {
  /** From 1, in the recipe's own file. */
  readonly line: number;
  /** `2026-10-03`. */
  readonly date: string;
  readonly by: string | null;
  /** Whether the text is what it tested, by its mark; null where it carries none. */
  readonly as_it_stands: boolean | null;
  readonly saw: readonly string[];
  readonly verdict: string | null;
  /** What is other in the text of the next trial, or after the last one in the text as it is; null where nothing is, or nobody knows. */
  readonly changed_after: ReportTextChange | null;
}

export interface ReportTextChange {
  readonly places: number;
  /** The lines among them that still stand as they were written then. */
  readonly now: readonly { readonly line: number; readonly words: string }[];
}

/** Minutes, degrees Celsius or grams. */
export interface ReportMeasured {
  readonly what: 'took' | 'reached' | 'weighed' | 'used';
  /** `to bake`, `in the centre`, `out of the oven`, `water`. */
  readonly said: string;
  readonly unit: 'min' | 'C' | 'g';
  /** As the text says it now, and on which line. */
  readonly written: { readonly low: number; readonly high: number; readonly line: number } | null;
  /** What usually comes out, where nothing is written. */
  readonly usual: { readonly low: number; readonly high: number } | null;
  readonly estimate: {
    readonly likely: number;
    readonly low: number;
    readonly high: number;
    readonly trials: number;
  } | null;
  readonly values: readonly ReportMeasuredValue[];
}

export interface ReportMeasuredValue {
  /** Which of `trials`, from 0. */
  readonly trial: number;
  readonly low: number;
  readonly high: number;
  /** Of what is written now, or usual. */
  readonly outside: boolean;
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
  /** Written in percentages alone: its grams say nothing but how much of one there is to another. */
  readonly relative: boolean;
  /** Null where something in the part is not weighed. */
  readonly composition_g: Readonly<Record<CompositionField, number | null>>;
  /** What is known of it then; null where all is. */
  readonly composition_at_least_g: Readonly<Record<CompositionField, number>> | null;
  /** Lines of its list that are in no sum, as written, and where: `line 7`. */
  readonly not_understood: readonly { readonly where: string; readonly line: number; readonly text: string }[];
  readonly ingredients: readonly ReportIngredient[];
  /** What was understood of its steps. */
  readonly steps: readonly ReportStep[];
  readonly measures: readonly ReportMeasure[];
}

export interface ReportIngredient {
  /** From 1, in the file. */
  readonly line: number;
  readonly name: string;
  readonly food: string | null;
  readonly written: string;
  readonly grams: number | null;
  readonly grams_low: number | null;
  readonly grams_high: number | null;
  readonly grams_from: string | null;
  readonly grams_why: string;
  /** Per cent of the flour that the part lists; null where flour is no 100 % of it. */
  readonly bakers_percent: number | null;
  /** Per cent of the flour of all parts that are reckoned by it, that of starters counted in; null where there is none, or a part has grams of its own only by percent. */
  readonly flour_percent: number | null;
  readonly share_percent: number | null;
  readonly optional: boolean;
  /** As much as is wanted: it has no weight, and is in no sum. */
  readonly to_taste: boolean;
  /** Grams of each; null where its weight, or its food, is not known. */
  readonly holds_g: ReportHolds | null;
}

export type ReportHolds = Readonly<Record<Substance, number | null>>;

/** What a part, or the whole, is made of before it is cooked. */
export interface ReportMadeOf {
  /** Null of the whole. */
  readonly part: string | null;
  /** What is weighed of it. */
  readonly weighed_g: number;
  /** Written in percentages alone: its grams say nothing but how much of one there is to another. */
  readonly relative: boolean;
  /** Lines that are in no sum. */
  readonly not_weighed: readonly string[];
  readonly holds: Readonly<
    Record<
      Substance,
      {
        /** Of the foods that say; the least where some do not. */
        readonly grams: number;
        /** Of the food that does not say; 0 where that is too little to matter. */
        readonly lacking_g: number;
      }
    >
  >;
}

export interface ReportMeasure {
  readonly name: MeasureName;
  readonly value: number | null;
  readonly value_low: number | null;
  readonly value_high: number | null;
  readonly unit: '1' | 'C';
  readonly band: Band;
  /** Why its value is null. */
  readonly why: string | null;
  /** Null where it is not known, or usual by only some of what the lines it hangs on could be. */
  readonly verdict: Verdict | null;
  /** Lines of a food that could be several, or that nobody knows. */
  readonly hangs_on: readonly string[];
  readonly source: string;
}

export const COMPOSITION = {
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
export type CompositionField = keyof typeof COMPOSITION;

/** The substances that say how a thing behaves. */
export const SUBSTANCES = [
  'water',
  'fat',
  'protein',
  'sugar',
  'starch',
  'salt',
  'alcohol',
] as const satisfies readonly CompositionField[];
export type Substance = (typeof SUBSTANCES)[number];
/** The rows of a label. */
export type LabelField =
  | Exclude<ContentField, 'alcohol'>
  | 'energy'
  | 'trans_fat'
  | 'cholesterol'
  | 'added_sugars'
  | 'vitamin_d'
  | 'calcium'
  | 'iron'
  | 'potassium';
export type ServingField =
  | 'energy_kcal'
  | 'fat_g'
  | 'saturates_g'
  | 'carbohydrate_g'
  | 'sugars_g'
  | 'fibre_g'
  | 'protein_g'
  | 'salt_g'
  | 'sodium_mg';
