/** Knows how thick a text says that something is: `in one piece 11 cm thick`. Refuses to know what. */
import { baseOf, dimensionOf } from '../measure/unit.ts';
import { sentenceIn } from '../notation/sentence.ts';
import type { SentenceItem } from '../notation/tree.ts';

/** m; the middle of a range, undefined where nothing is said. */
export function thicknessIn(text: string): number | undefined {
  if (!text.includes('thick')) return undefined;
  const { items } = sentenceIn(text);
  for (const [at, item] of items.entries()) {
    if (item.kind !== 'measured') continue;
    // A bare `in` is read as the word.
    const isInch = item.unit === undefined && isWord(items[at + 1], 'in');
    const unit = isInch ? 'in' : item.unit?.symbol;
    if (unit === undefined || dimensionOf(unit) !== 'length' || !isWord(items[at + (isInch ? 2 : 1)], 'thick'))
      continue;
    return (((item.quantity.low + item.quantity.high) / 2) * (baseOf(unit, 'us') ?? Number.NaN)) / 1000;
  }
  return undefined;
}

const isWord = (item: SentenceItem | undefined, word: string): boolean => item?.kind === 'word' && item.word === word;
