/**
 * Knows the longest time that a step names, in weeks and months too.
 * Refuses to know what waits for so long.
 */
import { numberWord } from '../../measure/number-words.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import type { Step } from '../../recipe/recipe.ts';

export const DAY_MIN = 1440;

/** Days in what is no unit of time in the notation. */
const CALENDAR: ReadonlyMap<string, number> = new Map([
  ['week', 7],
  ['weeks', 7],
  ['fortnight', 14],
  ['month', 30],
  ['months', 30],
  ['winter', 90],
  ['year', 365],
  ['years', 365],
]);

export function longestDays({ sentence: { items } }: Step): number {
  const days = items.map((item, at) => {
    if (item.kind === 'duration') return item.highMin / DAY_MIN;
    const each = item.kind === 'word' ? CALENDAR.get(item.word) : undefined;
    return each === undefined ? 0 : each * countBefore(items[at - 1]);
  });
  return Math.max(0, ...days);
}

/** `three weeks`, `2 months`; `several` is taken for the fewest, and what is no number for one. */
function countBefore(item: SentenceItem | undefined): number {
  if (item?.kind === 'measured') return item.quantity.high;
  return Math.max(1, (item?.kind === 'word' ? numberWord(item.word)?.low : undefined) ?? 1);
}
