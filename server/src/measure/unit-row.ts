/**
 * Knows what is said of a unit: one row of the tables in `units/`.
 */
import type { Range } from './quantity.ts';
import type { MeasureSystem } from './systems.ts';
import type { UnitSymbol } from './unit-symbol.ts';

export type Dimension = 'mass' | 'volume' | 'length' | 'temperature' | 'time' | 'share';

export interface Unit {
  readonly symbol: UnitSymbol;
  readonly dimension: Dimension;
  /** Other ways to write it, lower case unless case matters (`C`, `F`). */
  readonly spellings: readonly string[];
  /** Ways to write it that only the list of ingredients reads, alike in case: `T`, `c`, `teaspoonful`. */
  readonly printed?: readonly string[];
  /** Its own name is read in the list alone: in a step it is a thing, to pour into or to take out. */
  readonly vessel?: true;
  /** A measure of older books: it is read, and offered to nobody who writes. */
  readonly old?: true;
  /** Nothing measures it but the hand and eye: how far one of it goes, as shares of its base. */
  readonly byHand?: Range;
  /** Its word orders something too: it opens a line of the list only before `of`. */
  readonly verb?: true;
  /** How much of the base unit (g, ml, mm, s) one of it is, by system where that differs; absent for temperatures and shares. */
  readonly base?: number | Readonly<Partial<Record<MeasureSystem, number>>>;
  /** Of the base; by system where that differs. */
  readonly source?: string | Readonly<Partial<Record<MeasureSystem, string>>>;
}
