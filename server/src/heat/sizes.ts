/** Knows how long a dough, batter or custard of some size bakes at least and at most, from `data/heat/sizes.tsv`. Refuses to know recipes. */
import text from '../../data/heat/sizes.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn } from '../measure/table-rows.ts';

export type SizedAs = 'tin' | 'cup' | 'piece' | 'rolled piece' | 'wet piece' | 'whole';

const FIGURES = once(
  (): ReadonlyMap<string, Range> =>
    new Map(rowsIn(text).map(([of = '', least, most]) => [of, { low: Number(least), high: Number(most) }])),
);

/** At so much the figures hold for a minute, from that on heat counts, °C. */
const PER = 100;
const FROM_C = 60;
/** Cooler, rye breads stand for a night, and hard biscuits dry. */
const LEAST_LONG_C = 145;
const LEAST_C = 90;

/** Minutes; undefined in what is hardly an oven. */
export function minutesBySize(as: SizedAs, size: number, celsius: number): Range | undefined {
  const figure = FIGURES().get(as);
  if (figure === undefined || celsius < LEAST_C) return undefined;
  const times = (Math.sqrt(size) * PER) / (celsius - FROM_C);
  return {
    low: figure.low * times,
    high: celsius < LEAST_LONG_C ? Number.POSITIVE_INFINITY : figure.high * times,
  };
}
