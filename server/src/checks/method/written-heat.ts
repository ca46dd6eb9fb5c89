/**
 * Knows what is said of one thing that is heated, as types alone: what it is taken for, and its heats and times as they are written.
 */
import type { HeatSpan, HeatWay } from '../../heat/spans.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { HeatFigure } from '../../recipe/journey/figures.ts';

export type NamedBy = 'the step' | 'the part' | 'the title';

export interface Heated {
  readonly way: HeatWay;
  /** `cookie`, `meringue or shortcrust`, `any dough` */
  readonly of: string;
  readonly spans: readonly HeatSpan[];
  /** Where no kind is written: what calls it so. */
  readonly by?: NamedBy;
  /** What is written of its heat. */
  readonly heats: readonly WrittenHeat[];
  readonly times: readonly WrittenTime[];
  /** Minutes of all its heats, Infinity where one does not say. */
  readonly totalMin: number;
}

export interface WrittenHeat {
  /** The part and its line; the head's oven has no part. */
  readonly part?: number;
  readonly line: number;
  readonly figure: Pick<HeatFigure, 'start' | 'end' | 'celsius' | 'written'>;
  /** It is no more than warmed, or goes on to be hotter. */
  readonly isOnTheWay?: boolean;
}

export interface WrittenTime extends Range, Span {
  readonly part: number;
  readonly line: number;
  /** °C while it lasts, as far as it is said. */
  readonly at: readonly number[];
}
