/**
 * Knows where a sentence says a vessel with its size before it: `a deep 20 cm tin`, `a 9 x 13-inch pan`, `a 2 litre dish`.
 * Refuses to know how much one holds whose sides are said.
 */
import { baseOf, dimensionOf, unitSpelled } from '../measure/unit.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';
import { jointOf, senseOf, thingOf } from './lexicon.ts';

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

export interface Holding extends Span {
  /** The most that it can hold to the brim. */
  readonly ml: number;
}

/** Those of a volume, one of each: `a 4 l pot`; of `two 1-litre jars` each holds less than is meant. */
export const holdingsIn = (items: readonly SentenceItem[]): readonly Holding[] =>
  sizedVesselsIn(items).flatMap(({ start, end }) => {
    const at = items.findIndex((item) => item.start === start);
    const size = items[at];
    if (size?.kind !== 'measured' || items[at - 1]?.kind !== 'word') return [];
    const behind = isHyphen(items[at + 1]) ? items[at + 2] : undefined;
    const spelled = behind?.kind === 'word' ? unitSpelled(behind.word) : undefined;
    const symbol = (size.unit ?? spelled)?.symbol;
    if (symbol === undefined || dimensionOf(symbol) !== 'volume') return [];
    return [{ start, end, ml: size.quantity.high * (baseOf(symbol, 'imperial') ?? Infinity) }];
  });

function sizeBefore(items: readonly SentenceItem[], vessel: number): number | undefined {
  let last = vessel - 1;
  for (; last >= 0 && vessel - last <= BETWEEN; last--) {
    const item = items[last];
    // Of `60 ml water in a jar` the size is the water's.
    if (item?.kind !== 'word' || jointOf(senseOf(item.word))?.is === 'preposition') break;
  }
  // `2-quart`
  if (isHyphen(items[last])) last--;
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

const isHyphen = (item: SentenceItem | undefined): boolean => item?.kind === 'mark' && item.mark === '-';

const isFigure = ({ kind }: SentenceItem): boolean => kind === 'length' || kind === 'measured';
