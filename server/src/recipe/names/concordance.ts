/**
 * Knows which parts of a recipe have a word, in what is given of each: its list, or its steps.
 * Refuses to know what the word means there.
 */
import { indexFrom } from './sorted.ts';

export class Concordance<T> {
  private items: readonly T[] = [];
  private readonly byWord = new Map<string, number[]>();
  private readonly wordsOf: (item: T) => Iterable<string>;

  /** `wordsOf` gives each word of an item once, and the same words each time. */
  constructor(wordsOf: (item: T) => Iterable<string>) {
    this.wordsOf = wordsOf;
  }

  /** Takes these items, one a part, in place of those it has; reads only those that differ. */
  become(items: readonly T[]): void {
    const before = this.items;
    this.items = items;
    if (before.length !== items.length) this.byWord.clear();
    for (let part = 0; part < items.length; part++) {
      const now = items[part] as T;
      const old = before.length === items.length ? (before[part] as T) : undefined;
      if (old === now) continue;
      if (old !== undefined) for (const word of this.wordsOf(old)) this.drop(word, part);
      for (const word of this.wordsOf(now)) this.put(word, part);
    }
  }

  /** The parts that have the word, in order. */
  partsWith(word: string): readonly number[] {
    return this.byWord.get(word) ?? NONE;
  }

  private put(word: string, part: number): void {
    const parts = this.byWord.get(word);
    if (parts === undefined) this.byWord.set(word, [part]);
    else parts.splice(indexFrom(parts, part), 0, part);
  }

  private drop(word: string, part: number): void {
    const parts = this.byWord.get(word);
    const at = parts === undefined ? 0 : indexFrom(parts, part);
    if (parts?.[at] === part) parts.splice(at, 1);
  }
}

const NONE: readonly number[] = [];
