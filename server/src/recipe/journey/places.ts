/**
 * Knows how warm it is where food lies, by the kind of place, from `data/place-bands.tsv`.
 * Refuses to know how warm is safe.
 */

import text from '../../../data/place-bands.tsv';
import { once } from '../../measure/once.ts';
import type { Range } from '../../measure/quantity.ts';
import { rowsIn } from '../../measure/table-rows.ts';
import type { PlaceKind } from '../../prose/event.ts';

const BANDS = once(
  (): ReadonlyMap<string, Range> =>
    new Map(rowsIn(text).map(([name = '', low, high]) => [name, { low: Number(low), high: Number(high) }])),
);

/** °C of a kind of place. */
export const bandOf = (place: PlaceKind): Range => BANDS().get(place) ?? ANYWHERE;

/** Where nobody says. */
export const ANYWHERE: Range = { low: 0, high: 100 };
