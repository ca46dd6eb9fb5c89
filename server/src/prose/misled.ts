/**
 * Knows which words of advice stand together in a sentence, by their kinds (`data/prose/misled.tsv`), and whether it denies them or warns of them.
 * Refuses to know which of them harm.
 */
import misledText from '../../data/prose/misled.tsv';
import { once } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { onceFor } from '../notation/kept.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';

export interface AdviceSaid extends Span {
  readonly kind: string;
}

/** A sentence that has any of them. */
export interface Advice {
  readonly said: readonly AdviceSaid[];
  /** Kinds of those that are no part of a longer one. */
  readonly free: ReadonlySet<string>;
  /** It tells of harm. */
  readonly warns: boolean;
  /** Where it denies what follows. */
  readonly denials: readonly number[];
}

interface Row {
  readonly kind: string;
  readonly words: readonly string[];
}

const BY_FIRST = once((): ReadonlyMap<string, readonly Row[]> => {
  const rows = new Map<string, Row[]>();
  for (const [kind = '', cell] of rowsIn(misledText))
    for (const phrase of wordsIn(cell)) {
      const words = phrase.split(' ').map(stemOf);
      const [first = ''] = words;
      const those = rows.get(first);
      if (those === undefined) rows.set(first, [{ kind, words }]);
      else those.push({ kind, words });
    }
  return rows;
});

/** `Bursts`, `bursting`, `burst`; `baby's`: what is left is no word. */
const stemOf = (word: string): string =>
  word
    .toLowerCase()
    .replace(/'s$/, '')
    .replace(/(?<=...)(?:ing|ed|es|s|e)$/, '')
    .replace(/([^aeiouls])\1$/, '$1');

const ENDS: ReadonlySet<string> = new Set(['.', ';', '!', '?', ':']);

/** The advice of a text, a sentence each. */
export const adviceIn = onceFor((items: readonly SentenceItem[]): readonly Advice[] =>
  sentencesOf(items).flatMap((each) => adviceOf(each) ?? []),
);

function sentencesOf(items: readonly SentenceItem[]): readonly (readonly SentenceItem[])[] {
  const all: SentenceItem[][] = [[]];
  for (const item of items)
    if (item.kind === 'mark' && ENDS.has(item.mark)) all.push([]);
    else all.at(-1)?.push(item);
  return all;
}

function adviceOf(items: readonly SentenceItem[]): Advice | undefined {
  const rows = BY_FIRST();
  const words = items.map((item) => (item.kind === 'word' ? stemOf(item.word) : undefined));
  const all = words.flatMap((word, at) =>
    (word === undefined ? [] : (rows.get(word) ?? [])).flatMap(({ kind, words: of }) => {
      const last = items[at + of.length - 1];
      const first = items[at];
      if (first === undefined || last === undefined || !of.every((each, i) => words[at + i] === each)) return [];
      return [{ kind, start: first.start, end: last.end, many: of.length }];
    }),
  );
  if (all.length === 0) return undefined;
  // `Do not close when tapped`, `no danger`, `a cold jar`: what is a part of more takes nothing back.
  const free = all.filter(
    ({ start, end, many }) => !all.some((other) => other.many > many && other.start <= start && end <= other.end),
  );
  return {
    said: all,
    free: new Set(free.map(({ kind }) => kind)),
    warns: free.some(({ kind }) => kind === 'warns'),
    denials: free.flatMap(({ kind, start }) => (kind === 'denial' ? [start] : [])),
  };
}
