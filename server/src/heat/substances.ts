/** Knows how each of the things that food is made of conducts, weighs and stores heat. Refuses to know foods. */
import text from '../../data/heat/substances.tsv';
import { once } from '../measure/once.ts';
import { rowsIn } from '../measure/table-rows.ts';

/** Shares of the mass, 0 to 1. */
export interface Makeup {
  readonly water: number;
  readonly protein: number;
  readonly fat: number;
  readonly carbohydrate: number;
  readonly ash: number;
}

export type Substance = keyof Makeup | 'ice';

/** At t °C: W/(m K), kg/m³, J/(kg K). */
export interface Substances {
  readonly conductivity: (of: Substance, celsius: number) => number;
  readonly density: (of: Substance, celsius: number) => number;
  readonly heat: (of: Substance, celsius: number) => number;
}

/** °C between which the figures were measured. */
const HELD_BELOW = -40;
export const HELD_ABOVE = 150;

/** Choi and Okos 1986, as in the ASHRAE Handbook, Refrigeration; held at their ends. */
export const substances = once((): Substances => {
  const rows = new Map(rowsIn(text).map(([name = '', ...figures]) => [name, figures.map(Number)]));
  const quadratic =
    (first: number) =>
    (of: Substance, celsius: number): number => {
      const row = rows.get(of) ?? [];
      const t = Math.min(HELD_ABOVE, Math.max(HELD_BELOW, celsius));
      return (row[first] ?? 0) + ((row[first + 1] ?? 0) + (row[first + 2] ?? 0) * t) * t;
    };
  return { conductivity: quadratic(0), density: quadratic(3), heat: quadratic(6) };
});
