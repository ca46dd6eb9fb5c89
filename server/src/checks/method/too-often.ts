/**
 * Knows where something is to be done at longer intervals than the whole goes on for: `for 7 h, turning it each day`.
 * Refuses to know what.
 */
import type { Span } from '../../notation/tree.ts';
import type { Act, TimeSaid } from '../../prose/event.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import type { Part } from '../../recipe/model.ts';

export interface TooOften extends Span {
  readonly line: number;
  /** Minutes. */
  readonly every: number;
  readonly lasts: number;
}

/** What goes on by itself, and is looked after meanwhile. */
const GOES_ON: ReadonlySet<Act> = new Set<Act>(['heat', 'stay', 'steep', 'rise', 'dry', 'smoke', 'cool', 'freeze']);
/** At so many times its length nobody means it (judgement). */
const FAR = 1.5;

export function tooOftenIn({ steps }: Part): readonly TooOften[] {
  return steps.flatMap((step) => {
    let whole: TimeSaid | undefined;
    return boundEvents(step).flatMap(({ event: { act, as, said, times } }): readonly TooOften[] => {
      if (said !== 'yes') return [];
      const every = times.find(({ kind }) => kind === 'every');
      const spent = times.findLast(({ kind, per, choice }) => kind === 'spent' && per === undefined && choice === 0);
      if (GOES_ON.has(act) && spent !== undefined && as !== 'beside') whole = spent;
      else if (as !== 'beside' && every === undefined) whole = undefined;
      if (every === undefined || whole === undefined || every.minutes.low < whole.minutes.high * FAR) return [];
      const { start, end } = whole;
      return [{ line: step.line, start, end, every: every.minutes.low, lasts: whole.minutes.high }];
    });
  });
}
