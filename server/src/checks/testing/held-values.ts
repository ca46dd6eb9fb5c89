/**
 * Knows what each question of a trial finds: what is written, and what was measured.
 */
import { gramsText } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { Place } from '../check.ts';

export interface Values {
  readonly what: 'time' | 'temperature' | 'amount' | 'weight';
  /** `Bake`, `the centre`, `caster sugar`, `the oven`. */
  readonly of: string;
  readonly written: string;
  readonly measured: string;
  /** `12 min longer`; of a weight it is said with what is usual. */
  readonly differs?: string;
  readonly date: string;
  readonly trialAt: Place;
  /** Of a weight out of the oven: what usually comes out, and what is wrong with that which did. */
  readonly usual?: string;
  readonly beyond?: string;
  /** What to write in the place of the finding. */
  readonly write?: string;
  readonly ingredient?: { readonly part: number; readonly ingredient: Ingredient; readonly grams: number };
}

export function gramsRange({ low, high }: Range): string {
  if (high === Number.POSITIVE_INFINITY) return `${gramsText(low)} g or more`;
  const [least, most] = [gramsText(low), gramsText(high)];
  return least === most ? `${least} g` : `${least} to ${most} g`;
}
