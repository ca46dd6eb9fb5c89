/**
 * Knows the runs of words that begin with one word, and finds one of many by all its words.
 * Refuses to know what they name.
 */
import type { Run } from '../model.ts';

/** Fewer are compared one by one sooner than a key is made. */
const FEW = 8;

/** Runs in the order in which they came; no two have the same words. */
export class RunList<R extends Run = Run> {
  readonly runs: R[] = [];
  private byWords: Map<string, R> | undefined;
  /** Words in the longest. */
  private longest = 0;

  push(run: R): void {
    this.runs.push(run);
    this.longest = Math.max(this.longest, run.words.length);
    this.byWords?.set(keyOf(run.words), run);
  }

  /** The run of just these words. */
  of(words: readonly string[]): R | undefined {
    return this.runs.length <= FEW
      ? this.runs.find((run) => sameWords(run.words, words))
      : this.index().get(keyOf(words));
  }

  /** The longest of those for which it holds that the words from a place on begin with. */
  longestAt(words: readonly string[], from: number, holds: (run: R) => boolean): R | undefined {
    let best: R | undefined;
    if (this.runs.length <= FEW) {
      for (const run of this.runs) {
        if (best !== undefined && run.words.length <= best.words.length) continue;
        if (beginsWith(run.words, words, from) && holds(run)) best = run;
      }
      return best;
    }
    const index = this.index();
    let said = words[from] ?? '';
    for (let length = 1; length <= this.longest; length++) {
      const run = index.get(said);
      if (run !== undefined && holds(run)) best = run;
      const next = words[from + length];
      if (next === undefined) break;
      said += ` ${next}`;
    }
    return best;
  }

  private index(): Map<string, R> {
    this.byWords ??= new Map(this.runs.map((run) => [keyOf(run.words), run]));
    return this.byWords;
  }
}

const keyOf = (words: readonly string[]): string => words.join(' ');

function beginsWith(words: readonly string[], said: readonly string[], from: number): boolean {
  for (let i = 0; i < words.length; i++) if (said[from + i] !== words[i]) return false;
  return true;
}

function sameWords(a: readonly string[], b: readonly string[]): boolean {
  return a === b || (a.length === b.length && beginsWith(a, b, 0));
}
