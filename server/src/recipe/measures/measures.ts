/**
 * Knows how a measure of a formula is worked out over a list: an interval, and what it hangs on.
 * Refuses to judge it: the bands are in `kinds.ts`. What stands above the line and below is in `definitions.ts`.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Ingredient } from '../model.ts';
import { MEASURES } from './definitions.ts';
import type { MeasureName } from './kind.ts';
import { type MeasureValue, ratio } from './worked-ratio.ts';

const WORKED = keptOn<readonly Ingredient[], Map<MeasureName, MeasureValue>>();

/** A measure over ingredients; the range carries every range of the amounts. Kept with the list. */
export function measure(name: MeasureName, ingredients: readonly Ingredient[]): MeasureValue {
  let byName = WORKED.get(ingredients);
  if (byName === undefined) {
    byName = new Map();
    WORKED.set(ingredients, byName);
  }
  let value = byName.get(name);
  if (value === undefined) {
    value = workOut(name, ingredients);
    byName.set(name, value);
  }
  return value;
}

/** The same for a list that nobody will ask about again. */
export function workOut(name: MeasureName, ingredients: readonly Ingredient[]): MeasureValue {
  const definition = MEASURES[name];
  return 'compute' in definition ? definition.compute(ingredients) : ratio(definition, ingredients);
}
