/** Knows the places in which food cools, freezes and thaws. Refuses to know what stands in them. */
import text from '../../data/heat/places.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn } from '../measure/table-rows.ts';

export interface ColdPlace {
  readonly name: string;
  /** Of air or water. */
  readonly celsius: number;
  /** W/(m² K). */
  readonly h: number;
  readonly hRange: Range;
  /** W/(m² K), of moving air alone. */
  readonly convective: number;
  /** Pa */
  readonly vapour: number;
}

export const coldPlaces = once(
  (): ReadonlyMap<string, ColdPlace> =>
    new Map(
      rowsIn(text).map(([name = '', celsius, h, low, high, convective, vapour]) => [
        name,
        {
          name,
          celsius: Number(celsius),
          h: Number(h),
          hRange: { low: Number(low), high: Number(high) },
          convective: Number(convective),
          vapour: Number(vapour),
        },
      ]),
    ),
);
