/**
 * Knows how long a text says that all of it takes: `ready in 40 minutes`, `allow two hours in all`, `takes an hour`.
 * Refuses to hear a time of one step, and one that leaves something out (`plus chilling`).
 */
import type { Range } from '../measure/quantity.ts';
import type { Span } from '../notation/tree.ts';
import { type Items, markAt, saidAt, sentencesIn, wordAt } from './printed-words.ts';
import { timesIn } from './times.ts';

export interface TotalSaid extends Span {
  readonly minutes: Range;
}

/** So many words before a time stands what it is of. */
const NEAR = 4;

export function totalTimesIn(items: Items): readonly TotalSaid[] {
  if (!items.some((_, at) => OPENS.has(saidAt(items, at) ?? '') || saidAt(items, at) === 'span')) return [];
  const runs = timesIn(items, []);
  return sentencesIn(items).flatMap(([from, to]) => {
    const [run, other] = runs.filter((each) => each.from >= from && each.to <= to);
    if (run === undefined || other !== undefined) return [];
    for (let at = from; at < to; at++) if (saidAt(items, at) === 'without') return [];
    if (!isOfAll(items, from, run.from, run.to, to)) return [];
    const [first, last] = [items[run.from], items[run.to - 1]];
    return first && last ? [{ start: first.start, end: last.end, minutes: run.time.minutes }] : [];
  });
}

const OPENS: ReadonlySet<string> = new Set(['ready', 'allow']);

function isOfAll(items: Items, from: number, first: number, behind: number, to: number): boolean {
  for (let at = behind; at < Math.min(behind + NEAR, to); at++)
    if (saidAt(items, at) === 'span' || (saidAt(items, at) === 'whole' && wordAt(items, at - 1) === 'in')) return true;
  for (let at = first - 1; at >= Math.max(from, first - NEAR); at--) {
    const said = saidAt(items, at);
    // `Total time: 3 h`, `on the table in 20 minutes`
    if (said === 'ready') return at - from <= 2 || wordAt(items, at - 1) === 'is';
    if (said === 'allow') return at - from <= 1 && (behind === to || markAt(items, behind) !== '');
  }
  return false;
}
