/**
 * Knows the pans of the trade: sizes, usual depths and what they hold, from `data/pans.tsv`.
 * Refuses to know the line that names one.
 */

import text from '../../../data/pans.tsv';
import { once } from '../../measure/once.ts';

export interface TradePan {
  readonly form: string;
  readonly soldAs: string;
  /** Sold by inches or by centimetres. */
  readonly by: 'in' | 'cm';
  /** Across, or the sides; the longer first. */
  readonly innerMm: readonly number[];
  readonly depthMm: number;
  readonly volumeMl: number;
  /** Of a tin with hollows: how many are usual. */
  readonly holes: number;
  readonly source: string;
}

/** Every row, in the order of the table: of those alike, the first is the usual one. Cut when the first pan asks. */
export const tradePans = once((): readonly TradePan[] =>
  text
    .split('\n')
    .slice(1)
    .filter((line) => line !== '')
    .map((line): TradePan => {
      const [form = '', soldAs = '', by = '', inner = '', depth = '', volume = '', holes = '', , source = ''] =
        line.split('\t');
      return {
        form,
        soldAs,
        by: by === 'in' ? 'in' : 'cm',
        innerMm: inner.split(' x ').map(Number),
        depthMm: Number(depth),
        volumeMl: Number(volume),
        holes: Number(holes) || 1,
        source: source.trim(),
      };
    }),
);
