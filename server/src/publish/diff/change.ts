/**
 * Knows what can differ between two recipes, as data.
 * Refuses to know how a difference is found, and how it is said (`words.ts`).
 */
import type { Range } from '../../measure/quantity.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';

export interface RecipeDiff {
  /** How many times the first recipe's batch the second is, by most of the amounts; 1 where it is the same. */
  readonly batch: number;
  /** The yield went with the batch, so that it is no change of its own. */
  readonly yield?: { readonly from: string; readonly to: string };
  readonly changes: readonly Change[];
}

/** Grams are null where they are not known; `expected` is the first amount at the second's batch. */
export type Change =
  | { readonly kind: 'field'; readonly field: string; readonly from: string | null; readonly to: string | null }
  | {
      readonly kind: 'yield';
      readonly from: string | null;
      readonly to: string | null;
      readonly eachFromG: number | null;
      readonly eachToG: number | null;
    }
  | { readonly kind: 'part-added' | 'part-dropped'; readonly part: string; readonly of: readonly string[] }
  | { readonly kind: 'part-renamed' | 'part-kind'; readonly part: string; readonly from: string; readonly to: string }
  | { readonly kind: 'part-pan'; readonly part: string; readonly from: string | null; readonly to: string | null }
  | { readonly kind: 'part-moved'; readonly part: string; readonly from: number; readonly to: number }
  | {
      readonly kind: 'amount';
      readonly part: string;
      readonly name: string;
      readonly from: string;
      readonly to: string;
      readonly fromG: number | null;
      readonly toG: number | null;
      readonly expectedG: number | null;
    }
  | {
      readonly kind: 'measured';
      readonly part: string;
      readonly name: string;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: 'ingredient-added' | 'ingredient-dropped';
      readonly part: string;
      readonly name: string;
      readonly amount: string;
    }
  | {
      readonly kind: 'ingredient-swapped';
      readonly part: string;
      readonly from: string;
      readonly to: string;
      readonly fromAmount: string;
      readonly toAmount: string;
    }
  | { readonly kind: 'ingredient-moved'; readonly name: string; readonly from: string; readonly to: string }
  | {
      readonly kind: 'preparation';
      readonly part: string;
      readonly name: string;
      readonly from: string | null;
      readonly to: string | null;
    }
  | { readonly kind: 'optional'; readonly part: string; readonly name: string; readonly optional: boolean }
  | {
      readonly kind: 'measure';
      readonly part: string;
      readonly name: MeasureName;
      readonly from: Range;
      readonly to: Range;
    }
  | {
      readonly kind: 'time';
      readonly part: string;
      readonly step: number;
      readonly verb: string | null;
      readonly fromMin: Range;
      readonly toMin: Range;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: 'temperature';
      readonly part: string;
      readonly step: number;
      readonly verb: string | null;
      /** What the temperature is of. */
      readonly role: 'oven' | 'food' | 'surroundings' | 'liquid' | 'unknown';
      readonly fromC: Range;
      readonly toC: Range;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: 'portion';
      readonly part: string;
      readonly step: number;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: 'step-added' | 'step-dropped';
      readonly part: string;
      readonly step: number;
      readonly text: string;
    }
  | {
      readonly kind: 'step-moved';
      readonly part: string;
      readonly toPart: string;
      readonly from: number;
      readonly to: number;
      readonly text: string;
    }
  | {
      readonly kind: 'step-reworded';
      readonly part: string;
      readonly step: number;
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: 'total-time'; readonly fromMin: number; readonly toMin: number }
  | { readonly kind: 'trial-added' | 'trial-dropped'; readonly trial: string }
  | { readonly kind: 'accepts' | 'accepts-no-more'; readonly code: string; readonly reason: string }
  | { readonly kind: 'food-added' | 'food-dropped'; readonly food: string }
  | { readonly kind: 'food'; readonly food: string; readonly from: string | null; readonly to: string | null };
