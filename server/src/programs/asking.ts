/**
 * Knows what a program may ask of recipes, and in which words the command line is asked for it.
 * Refuses to know where the recipes lie.
 */
import type {
  CheckJson,
  ConvertedJson,
  DiffJson,
  PlanJson,
  ReportJson,
  ScaledJson,
  WeighedJson,
} from '../cli/formats/shapes.ts';
import type { ConvertTo } from '../edits/conversion.ts';
import type { Measures } from '../measure/systems.ts';

/** A recipe on the disk, or its text with the texts that it builds on: bases, `quern.json`, `foods.quern`, by path. */
export type Recipe =
  | { readonly path: string }
  | {
      readonly text: string;
      /** As it lies beside `files`: `tart.quern`, `pastry/tart.quern`. */
      readonly name?: string;
      readonly files?: Readonly<Record<string, string>>;
    };

export interface Scale {
  /** How many times as much. */
  readonly by?: number;
  /** `12 slices`, `24 rolls of 60 g` */
  readonly to?: string;
  /** `900 g` */
  readonly toMass?: string;
  /** `round 28 x 3 cm` */
  readonly toPan?: string;
  /** What there is: `230 g plums` */
  readonly have?: string;
  readonly wholeEggs?: boolean;
  /** Of this part alone. */
  readonly part?: string;
}

export interface Plan {
  /** When it is eaten: `19:30`. */
  readonly serve: string;
  /** `2026-12-25` */
  readonly date?: string;
  readonly ovens?: number;
  readonly cooks?: number;
}

/** Every question gives a promise; it is broken with an `Error` whose message says what to write instead. */
export interface Asking {
  /** Findings, with what can be done about each. */
  check(recipe: Recipe): Promise<CheckJson>;
  /** The recipe worked out. */
  report(recipe: Recipe): Promise<ReportJson>;
  /** Its text at another size. */
  scale(recipe: Recipe, wish: Scale): Promise<ScaledJson>;
  /** Its text in other measures. */
  convert(recipe: Recipe, to: ConvertTo): Promise<ConvertedJson>;
  /** The grams of an amount: `1 1/2 cup plain flour`. */
  weigh(words: string, measures?: Measures): Promise<WeighedJson>;
  /** What changed from one text to another. */
  diff(before: string, after: string): Promise<DiffJson>;
  /** The day counted back from serving. */
  plan(recipe: Recipe, wish: Plan): Promise<PlanJson>;
  /** Its text laid out. */
  format(text: string): Promise<string>;
  /** The page for readers. */
  publish(recipe: Recipe, format: 'html' | 'markdown' | 'text' | 'json-ld'): Promise<string>;
  /** A finding's page in Markdown; without a code, the list of all. */
  explain(code?: string): Promise<string>;
}
