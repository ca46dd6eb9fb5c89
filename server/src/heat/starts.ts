/** Knows how warm things of a kind are as they go into the oven. Refuses to know recipes. */
import text from '../../data/heat/starts.tsv';
import { once } from '../measure/once.ts';
import { rowsIn } from '../measure/table-rows.ts';

/** °C. */
export interface Start {
  readonly usual: number;
  /** Out of the refrigerator. */
  readonly cold: number;
}

export const startOf = (kind: string): Start => STARTS().get(kind) ?? ROOM;
const ROOM: Start = { usual: 20, cold: 5 };

const STARTS = once(
  (): ReadonlyMap<string, Start> =>
    new Map(rowsIn(text).map(([kind = '', usual, cold]) => [kind, { usual: Number(usual), cold: Number(cold) }])),
);
