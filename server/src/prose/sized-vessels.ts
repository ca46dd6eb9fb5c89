/**
 * Knows where a sentence says a vessel with its size before it: `a deep 20 cm tin`, `a 9 x 13-inch pan`, `a 2 litre dish`.
 * Refuses to know how much it holds.
 */
import type { SentenceItem, Span } from '../notation/tree.ts';
import { senseOf, thingOf } from './lexicon.ts';

/** Of a size and its vessel, so many words may stand between. */
const BETWEEN = 4;

export function sizedVesselsIn(items: readonly SentenceItem[]): readonly Span[] {
  const found: Span[] = [];
  for (const [at, item] of items.entries()) {
    if (item.kind !== 'word' || thingOf(senseOf(item.word))?.sort !== 'vessel') continue;
    const next = items[at + 1];
    // `Pan` of `pan lid`, and the first of `tube pan`.
    if (next?.kind === 'word' && thingOf(senseOf(next.word))?.sort === 'vessel') continue;
    const from = sizeBefore(items, at);
    if (from !== undefined) found.push({ start: from, end: item.end });
  }
  return found;
}

function sizeBefore(items: readonly SentenceItem[], vessel: number): number | undefined {
  let last = vessel - 1;
  while (last >= 0 && vessel - last <= BETWEEN && items[last]?.kind === 'word') last--;
  const figure = items[last];
  if (figure === undefined || !isFigure(figure)) return undefined;
  let from = figure;
  for (let at = last - 1; at > 0; at -= 2) {
    const [by, side] = [items[at], items[at - 1]];
    if (by?.kind !== 'word' || (by.word !== 'x' && by.word !== 'by') || side === undefined || !isFigure(side)) break;
    from = side;
  }
  return from.start;
}

const isFigure = ({ kind }: SentenceItem): boolean => kind === 'length' || kind === 'measured';
