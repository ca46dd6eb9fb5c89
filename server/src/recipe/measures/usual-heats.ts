/**
 * Knows how hot a kind is usually baked, proved or done, from `data/usual-heats.tsv`.
 * Refuses to judge by it: no check asks.
 */
import text from '../../../data/usual-heats.tsv';
import { once } from '../../measure/once.ts';
import { rowsIn } from '../../measure/table-rows.ts';

export interface UsualHeat {
  readonly kind: string;
  readonly of: 'oven' | 'food' | 'around';
  readonly celsius: number;
  /** Until when, or where it is read. */
  readonly words: string;
  readonly source: string;
}

const usualHeats = once((): readonly UsualHeat[] =>
  rowsIn(text).map(([kind = '', of = '', celsius = '', words = '', source = '']) => ({
    kind,
    of: of === 'food' || of === 'around' ? of : 'oven',
    celsius: Number(celsius),
    words,
    source,
  })),
);

/** What is usual for a kind of part, by what the temperature is of. */
export const usualHeatsOf = (kind: string | undefined, of: UsualHeat['of']): readonly UsualHeat[] =>
  usualHeats().filter((row) => row.kind === kind && row.of === of);
