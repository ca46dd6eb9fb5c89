/**
 * Knows the shape of every JSON document that the command line prints; the schemas in `server/schemas` are made of these.
 * What is not known is null. Lines and characters count from 0, characters in UTF-16 units, where the name says `range`.
 */
import type { RecipeDiff } from '../../publish/diff/change.ts';
import type { FindingJson, RangeJson } from '../../publish/finding-json.ts';
import type { LabelDraft } from '../../publish/label/draft.ts';
import type { PlanFacts } from '../../publish/plan-facts.ts';
import type { Report } from '../../publish/report-shape.ts';
import type { RecipeState } from '../../recipe/trials/state.ts';
import type { Counts } from './printing.ts';

/** `check --format json` */
export interface CheckJson {
  readonly version: 1;
  readonly files: readonly CheckedFileJson[];
  readonly summary: Counts;
}

export interface CheckedFileJson {
  readonly path: string;
  readonly state: RecipeState | null;
  readonly findings: readonly OpenFindingJson[];
  /** With the reason that the recipe gives. */
  readonly accepted: readonly (FindingJson & { readonly reason: string })[];
  /** Known to the baseline. */
  readonly baselined: readonly FindingJson[];
}

export interface OpenFindingJson extends FindingJson {
  /** What can be done about it, as it is offered. */
  readonly fixes: readonly string[];
  readonly related: readonly { readonly path: string; readonly range: RangeJson; readonly message: string }[];
}

/** `report FILE --format json` */
export type ReportJson = Report;

/** `label --format json` */
export interface LabelJson extends LabelDraft {
  readonly version: 1;
  readonly recipe: string | null;
}

/** `report FOLDER --format json` */
export interface RecipesJson {
  readonly version: 1;
  readonly recipes: readonly RecipeRowJson[];
}

export interface RecipeRowJson {
  readonly path: string;
  readonly recipe: string;
  readonly state: RecipeState;
  /** The date of the latest trial. */
  readonly trial: string | null;
  readonly verdict: string | null;
  readonly findings: number;
}

/** `scale --format json` */
export interface ScaledJson {
  readonly version: 1;
  /** Every amount times so many. */
  readonly by: number;
  /** Amounts that were rounded by more than little, in words. */
  readonly changes: readonly string[];
  /** What to mind. */
  readonly said: readonly string[];
  /** The file as it would be written. */
  readonly text: string;
}

/** `convert --format json` */
export interface ConvertedJson extends Omit<ScaledJson, 'by'> {}

/** `weigh --format json` */
export interface WeighedJson {
  readonly version: 1;
  readonly written: string;
  /** Of the food book. */
  readonly food: string | null;
  readonly grams: number | null;
  readonly grams_low: number | null;
  readonly grams_high: number | null;
  readonly grams_from: string | null;
  /** The reason for the grams, or why they are not known. */
  readonly why: string;
  readonly source: string | null;
}

/** `diff --format json` */
export interface DiffJson {
  readonly version: 1;
  readonly from: string;
  readonly to: string;
  /** How many times the first recipe's batch the second is. */
  readonly batch: number;
  readonly yield: RecipeDiff['yield'] | null;
  readonly changes: readonly (RecipeDiff['changes'][number] & { readonly text: string })[];
}

/** `plan --format json` */
export type PlanJson = PlanFacts;

/** `config --format json` */
export interface ConfigJson {
  readonly version: 1;
  readonly file: string;
  /** The house's folder; null for a file that belongs to none. */
  readonly house: string | null;
  readonly settings: Readonly<Record<string, SettingJson>>;
  /** What the house measures with, in ml. */
  readonly holds_ml: Readonly<Record<string, number>>;
  readonly foods: readonly { readonly name: string; readonly from: string }[];
  readonly ignored: boolean;
  readonly problems: readonly string[];
}

/** One setting in force, and where it comes from. */
export interface SettingJson {
  readonly value: unknown;
  readonly from: string;
}

/** What any command prints with `--format json` where it cannot do what is asked. */
export interface ErrorJson {
  readonly version: 1;
  readonly error: string;
}
