/**
 * Knows where words of a table stand in a run of items: of rows that begin at a word the longest.
 * Refuses to know what they say.
 */
import { once } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import type { SentenceItem } from '../notation/tree.ts';

export interface Phrase<K> {
  readonly is: K;
  /** Its first item, and the item after its last. */
  readonly from: number;
  readonly to: number;
}

/** Finds the words of a table whose rows are a kind, its words, and a source, in the forms that `formsOf` makes of each. */
export function phrasesOf<K extends string>(
  text: string,
  kinds: readonly K[],
  formsOf: (word: string) => readonly string[],
): (items: readonly SentenceItem[]) => readonly Phrase<K>[] {
  const table = once(() => {
    const byForm = new Map<string, K | undefined>();
    /** By the word that some begin with, how many words the longest of them has. */
    const longest = new Map<string, number>();
    for (const [name, words] of rowsIn(text)) {
      const kind = kinds.find((each) => each === name);
      for (const word of wordsIn(words))
        for (const form of formsOf(word)) {
          byForm.set(form, kind);
          const parts = form.split(' ');
          const [first = ''] = parts;
          longest.set(first, Math.max(longest.get(first) ?? 1, parts.length));
        }
    }
    return { byForm, longest };
  });
  return (items) => {
    const { byForm, longest } = table();
    const found: Phrase<K>[] = [];
    for (let at = 0; at < items.length; ) {
      let said = wordOf(items[at]);
      const most = said === undefined ? undefined : longest.get(said);
      let to = at;
      let is: K | undefined;
      for (let next = at + 1; said !== undefined && next <= at + (most ?? 0); next++) {
        if (byForm.has(said)) {
          is = byForm.get(said);
          to = next;
        }
        const word = wordOf(items[next]);
        said = word === undefined ? undefined : `${said} ${word}`;
      }
      if (is !== undefined) found.push({ is, from: at, to });
      at = Math.max(to, at + 1);
    }
    return found;
  };
}

function wordOf(item: SentenceItem | undefined): string | undefined {
  if (item?.kind === 'mark') return item.mark;
  if (item?.kind !== 'word') return undefined;
  // `The baby's`: the one whose it is.
  return item.word.endsWith("'s") ? item.word.slice(0, -2) : item.word;
}
