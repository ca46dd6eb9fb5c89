/**
 * Knows what a judgement by state is, and how grave: as sure as the weakest of what it rests on.
 * Refuses to know dangers.
 */
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Sure } from '../../recipe/journey/sure.ts';

export type Level = 'error' | 'warning' | 'ask';

export interface Verdict extends Span {
  /** The code of the check that will say it. */
  readonly code: string;
  readonly level: Level;
  readonly part: number;
  /** The line in its part, from 0. */
  readonly line: number;
  /** A clause that a cook can read. */
  readonly why: string;
}

/** What it says, and where. */
export const keyOf = ({ code, part, line, start }: Verdict): string => `${code} ${part} ${line} ${start}`;

/** How grave it is that a range passes a limit: an error where its mild end does and all is said. */
export function levelOver({ low, high }: Range, limit: number, sure: Sure): Level | undefined {
  if (low > limit) return sure === 'said' ? 'error' : sure === 'inferred' ? 'warning' : 'ask';
  return high > limit ? 'ask' : undefined;
}

export const worse = (a: Level, b: Level): number => RANK[a] - RANK[b];
const RANK: Readonly<Record<Level, number>> = { error: 2, warning: 1, ask: 0 };

/** The severity of a finding, where it is not the check's own. */
export const severityAt = (level: Level): { readonly severity?: 'warning' | 'info' } =>
  level === 'error' ? {} : { severity: level === 'warning' ? 'warning' : 'info' };
