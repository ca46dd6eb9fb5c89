/**
 * Knows how warm it is where food lies, by the kind of place, from `data/place-bands.tsv`.
 * Refuses to know how warm is safe.
 */
import text from '../../../data/place-bands.tsv';
import type { Range } from '../../measure/quantity.ts';
import { rowsIn } from '../../measure/table-rows.ts';
import type { PlaceKind } from '../../prose/event.ts';

let bands: ReadonlyMap<string, Range> | undefined;

/** °C of a kind of place. */
export function bandOf(place: PlaceKind): Range {
  bands ??= new Map(rowsIn(text).map(([name = '', low, high]) => [name, { low: Number(low), high: Number(high) }]));
  return bands.get(place) ?? ANYWHERE;
}

/** Where nobody says. */
export const ANYWHERE: Range = { low: 0, high: 100 };
