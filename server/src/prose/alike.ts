/**
 * Knows by what two sentences are held against each other, word for word, whatever they count.
 * Refuses to know what the words say.
 */
import { numberOfWord } from '../measure/number-words.ts';
import type { Sentence } from '../notation/tree.ts';

/** The words of a sentence, with every figure and number in words taken out. */
export function keyWords({ items }: Sentence): readonly string[] {
  return items.flatMap((item) => {
    if (item.kind === 'word') return [numberOfWord(item.word) === undefined ? item.word : 'number'];
    if (item.kind === 'forced') return item.name.text.toLowerCase().split(/\s+/);
    return item.kind === 'mark' ? [] : [item.kind];
  });
}
