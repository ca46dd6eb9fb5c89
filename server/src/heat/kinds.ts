/** Knows how each kind of thing heats in an oven: by which coefficient, to what end, and how well that is known. Refuses to know recipes. */
import text from '../../data/heat/kinds.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn } from '../measure/table-rows.ts';

export interface HeatKind {
  readonly name: string;
  readonly form: 'joint' | 'bird' | 'pan' | 'brick' | 'piece' | 'slice' | 'cup';
  /** Of a joint, by its diameter; of a piece its height by that. */
  readonly length: number;
  /** Of the oven's own; undefined of flesh, whose surface is wet. */
  readonly coefficient: number | undefined;
  /** 1 sd of the logarithm of the time. */
  readonly spread: number;
  /** Published cases that the coefficient is fitted to. */
  readonly cases: number;
  readonly porosity: number;
  /** m of pastry. */
  readonly crust: number;
  /** °C at the coldest place when it is done, and who says so. */
  readonly target: Range;
  readonly targetSource: string;
}

export const heatKinds = once(
  (): ReadonlyMap<string, HeatKind> =>
    new Map(
      rowsIn(text).map(
        ([name = '', said = '', coefficient = '', spread, cases, porosity, crust, low, high, by = '']) => {
          const [form, length] = said.split(':');
          return [
            name,
            {
              name,
              form: form as HeatKind['form'],
              length: Number(length ?? 1.3),
              coefficient: coefficient === '' ? undefined : Number(coefficient),
              spread: Number(spread),
              cases: Number(cases),
              porosity: Number(porosity),
              crust: Number(crust) / 1000,
              target: { low: Number(low), high: Number(high) },
              targetSource: by,
            },
          ];
        },
      ),
    ),
);
