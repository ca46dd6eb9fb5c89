/**
 * Knows which parts of a recipe a change of names may reach: those whose sentences have the words of what is called otherwise now.
 * Refuses to know whether it does: they are bound again, and may come out as they were.
 */
import type { Bound } from './binding.ts';
import { changedRuns } from './names.ts';
import { listedWords, type PartHead } from './part.ts';
import { wordsOfSteps } from './steps.ts';

export interface Reach {
  /** Parts whose mentions may be others. */
  readonly steps: ReadonlySet<number>;
  /** Parts that have a word which a part before them has listed, or lists no more. */
  readonly words: ReadonlySet<number>;
}

export const NO_REACH: Reach = { steps: new Set(), words: new Set() };

/** What is reached when these parts are named otherwise; `before` is bound still as it was, but for its names. */
export function reachOf(renamed: readonly number[], heads: readonly PartHead[], before: Bound): Reach {
  const steps = new Set(renamed);
  const words = new Set<number>();
  const says = (part: number, said: string): boolean => {
    const bound = before.steps[part];
    return bound !== undefined && wordsOfSteps(bound).has(said);
  };
  for (const part of renamed) {
    const [old, now] = [before.heads[part], heads[part]];
    if (old === undefined || now === undefined) continue;
    for (const run of changedRuns(old, now)) {
      const end = before.names.nextNaming(run, part) ?? heads.length;
      for (let i = part + 1; i < end; i++) if (run.words.every((word) => says(i, word))) steps.add(i);
    }
    // Which of several ingredients is meant depends on whether their names are one.
    for (const { use } of before.later[part] ?? []) if (use.mention.ingredients.length > 1) steps.add(use.part);
    for (const word of differing(listedWords(old), listedWords(now)))
      for (const i of partsBelow(word, part, heads)) if (says(i, word)) words.add(i);
  }
  return { steps, words };
}

/** The parts below one for which it matters whether that one lists the word: not where another before them does. */
function* partsBelow(word: string, part: number, heads: readonly PartHead[]): Generator<number> {
  const lists = (i: number): boolean => heads[i] !== undefined && listedWords(heads[i]).has(word);
  for (let i = 0; i < part; i++) if (lists(i)) return;
  for (let i = part + 1; i < heads.length && !lists(i); i++) yield i;
}

/** What only one of two sets has. */
const differing = (a: ReadonlySet<string>, b: ReadonlySet<string>): string[] => [
  ...[...a].filter((word) => !b.has(word)),
  ...[...b].filter((word) => !a.has(word)),
];
