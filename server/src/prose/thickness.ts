/** Knows how thick or deep a text says that something is: `in one piece 11 cm thick`, `in a layer 5 cm deep`. Refuses to know what. */
import { middle } from '../measure/quantity.ts';
import { baseOf } from '../measure/unit.ts';
import { sentenceIn } from '../notation/sentence.ts';
import type { Sentence } from '../notation/tree.ts';

/** m; the middle of a range, undefined where nothing is said. */
export const thicknessIn = (text: string): number | undefined =>
  text.includes('thick') ? lengthBefore(sentenceIn(text), THICK) : undefined;

/** The same of a step, how deep something lies in it. */
export const depthSaid = (sentence: Sentence): number | undefined => lengthBefore(sentence, DEEP);

const THICK: ReadonlySet<string> = new Set(['thick']);
const DEEP: ReadonlySet<string> = new Set(['deep', 'thick']);

function lengthBefore({ items }: Sentence, words: ReadonlySet<string>): number | undefined {
  for (const [at, item] of items.entries()) {
    const next = items[at + 1];
    if (item.kind !== 'length' || next?.kind !== 'word' || !words.has(next.word)) continue;
    const { quantity, unit } = item.measured;
    const mm = unit === undefined ? undefined : baseOf(unit.symbol, 'us');
    return mm === undefined ? undefined : (middle(quantity) * mm) / 1000;
  }
  return undefined;
}
