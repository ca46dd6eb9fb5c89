/**
 * Knows within what heat and time a kind is heated at all, by the way that it is, from `data/heat/spans.tsv`.
 * Refuses to know recipes, and what is usual or safe within that.
 */
import text from '../../data/heat/spans.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';

export type HeatWay = 'oven' | 'stove' | 'fat' | 'rise' | 'live' | 'inside' | 'shelf' | 'cold' | 'none';

export interface HeatSpan {
  /** °C; an open end where it is not held. */
  readonly celsius: Range;
  readonly minutes: Range;
  /** A family of foods that must be in it. */
  readonly needs: string;
}

const end = (cell: string, open: number): number => (cell === '' ? open : Number(cell));

/** By kind and way. */
const SPANS = once((): ReadonlyMap<string, readonly HeatSpan[]> => {
  const spans = new Map<string, HeatSpan[]>();
  for (const [of, way, needs = '', coldest = '', hottest = '', least = '', most = ''] of rowsIn(text)) {
    const span = {
      celsius: { low: end(coldest, Number.NEGATIVE_INFINITY), high: end(hottest, Number.POSITIVE_INFINITY) },
      minutes: { low: end(least, 0), high: end(most, Number.POSITIVE_INFINITY) },
      needs,
    };
    for (const each of wordsIn(of)) {
      const key = `${each} ${way}`;
      spans.set(key, [...(spans.get(key) ?? []), span]);
    }
  }
  return spans;
});

const NONE: readonly HeatSpan[] = [];

/** Of several one must fit; none where that is not held of it. */
export const spansOf = (of: string, way: HeatWay): readonly HeatSpan[] => SPANS().get(`${of} ${way}`) ?? NONE;
