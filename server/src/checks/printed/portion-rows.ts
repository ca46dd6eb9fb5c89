/**
 * Knows the table of what somebody eats at once, and of what pieces weigh.
 * Refuses to know how many there are.
 */
import portionsText from '../../../data/portions.tsv';
import { once } from '../../measure/once.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { singular } from '../../recipe/words.ts';

export interface PortionRow {
  readonly of: readonly string[];
  readonly when: string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

export const portionRows = once((): readonly PortionRow[] =>
  rowsIn(portionsText).map(([of, when = '', low, high, source = '']) => ({
    of: wordsIn(of),
    when,
    low: Number(low),
    high: high === '' ? Number.POSITIVE_INFINITY : Number(high),
    source,
  })),
);

/** Whether everybody gets one of them. */
export const isOneEach = (noun: string): boolean =>
  portionRows().some(({ when, of }) => when === 'one' && of.includes(singular(noun)));
