/** Knows how thick a text says that something is: `in one piece 11 cm thick`. Refuses to know what. */
import { baseOf } from '../measure/unit.ts';
import { sentenceIn } from '../notation/sentence.ts';

/** m; the middle of a range, undefined where nothing is said. */
export function thicknessIn(text: string): number | undefined {
  if (!text.includes('thick')) return undefined;
  const { items } = sentenceIn(text);
  for (const [at, item] of items.entries()) {
    const next = items[at + 1];
    if (item.kind !== 'length' || next?.kind !== 'word' || next.word !== 'thick') continue;
    const { quantity, unit } = item.measured;
    const mm = unit === undefined ? undefined : baseOf(unit.symbol, 'us');
    return mm === undefined ? undefined : (((quantity.low + quantity.high) / 2) * mm) / 1000;
  }
  return undefined;
}
