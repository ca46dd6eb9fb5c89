/** Knows up to which pH a text lets something be: `the pH is below 4.2`, `pH 4.2 or lower`, `until it is about pH 4`. Refuses to know what, and what is safe. */
import type { SentenceItem, Span } from '../notation/tree.ts';

export interface SourLimit extends Span {
  readonly ph: number;
}

/** Words between `pH` and its figure, at the most. */
const NEAR = 6;
/** And before it, behind `until`. */
const AHEAD = 8;

export function sourLimitIn(items: readonly SentenceItem[]): SourLimit | undefined {
  for (const [at, item] of items.entries()) {
    if (!isWord(item, PH)) continue;
    const to = items.slice(at + 1, at + 1 + NEAR).findIndex((each) => each.kind === 'measured');
    const figure = items[at + 1 + to];
    if (to < 0 || figure?.kind !== 'measured' || figure.unit !== undefined) continue;
    const before = items.slice(at + 1, at + 1 + to);
    const isLimit =
      before.some((each) => isWord(each, BELOW)) ||
      isWord(items[at + 3 + to], LESS) ||
      items.slice(Math.max(0, at - AHEAD), at).some((each) => isWord(each, UNTIL));
    if (isLimit) return { ph: figure.quantity.high, start: item.start, end: figure.end };
  }
  return undefined;
}

const isWord = (item: SentenceItem | undefined, words: ReadonlySet<string>): boolean =>
  item?.kind === 'word' && words.has(item.word);
const PH: ReadonlySet<string> = new Set(['ph']);
const BELOW: ReadonlySet<string> = new Set(['below', 'under', 'less', 'lower', 'most', 'above', 'higher', 'more']);
const LESS: ReadonlySet<string> = new Set(['lower', 'less', 'below', 'under']);
const UNTIL: ReadonlySet<string> = new Set(['until', 'till']);
