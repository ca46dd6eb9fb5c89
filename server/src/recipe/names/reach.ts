/**
 * Knows which parts of a recipe a change of names may reach: those whose sentences have the words of what is called otherwise now.
 * Refuses to know whether it does: they are bound again, and may come out as they were.
 */

import type { OutsideUse, PartHead } from '../model.ts';
import { listedMakings, listedWords } from '../part.ts';
import { type BoundSteps, wordsOfSteps } from '../steps.ts';
import { wordsOf } from '../words.ts';
import { Concordance } from './concordance.ts';
import { changedRuns, type NameIndex } from './names.ts';
import { indexFrom } from './sorted.ts';

export interface Reach {
  /** Parts whose mentions may be others. */
  readonly steps: ReadonlySet<number>;
  /** Parts that have a word which a part before them, or no other part, has listed, or lists no more, or one below them is called by, or no more; those below one that lists a class of food which no part before them does, or did, and all where no other part does. */
  readonly words: ReadonlySet<number>;
}

export const NO_REACH: Reach = { steps: new Set(), words: new Set() };

/** Which parts say and list a word. Handed on from edit to edit, and brought up to date when a name is changed. */
export class PartWords {
  readonly said = new Concordance<BoundSteps>(wordsOfSteps);
  readonly listed = new Concordance<PartHead>(listedWords);
}

/** The parts before a change of names. */
interface Before {
  readonly heads: readonly PartHead[];
  readonly steps: readonly BoundSteps[];
  readonly later: readonly (readonly OutsideUse[])[];
  readonly words: PartWords;
}

/** What is reached when these parts are named otherwise: `heads` and `names` are those of after, `before` those of before. */
export function reachOf(
  renamed: readonly number[],
  heads: readonly PartHead[],
  names: NameIndex,
  before: Before,
): Reach {
  const { said, listed } = before.words;
  said.become(before.steps);
  listed.become(heads);
  const steps = new Set(renamed);
  const words = new Set<number>();
  const says = (part: number, word: string): boolean => wordsOfSteps(before.steps[part] as BoundSteps).has(word);
  for (const part of renamed) {
    const [old, now] = [before.heads[part], heads[part]];
    if (old === undefined || now === undefined) continue;
    for (const run of changedRuns(old, now)) {
      const [first = '', ...rest] = run.words;
      for (const other of between(said.partsWith(first), part, names.nextNaming(run, part) ?? heads.length))
        if (rest.every((word) => says(other, word))) steps.add(other);
    }
    // What a step names may be a part below: `the custard`, before it is made.
    for (const word of differing(namedWords([old]), namedWords([now])))
      for (const other of between(said.partsWith(word), -1, part)) words.add(other);
    // Which of several ingredients is meant depends on whether their names are one.
    for (const { use } of before.later[part] ?? []) if (use.mention.ingredients.length > 1) steps.add(use.part);
    // What a later step may speak of as made depends on what there is to make it of.
    for (const kind of differing(listedMakings(old), listedMakings(now))) {
      const lists = (head: PartHead): boolean => listedMakings(head).has(kind);
      const first = heads.findIndex(lists);
      if (first >= 0 && first < part) continue;
      const next = heads.findIndex((head, at) => at > part && lists(head));
      // Above it too, where no other part has it.
      for (let other = next < 0 ? 0 : part + 1; other < (next < 0 ? heads.length : next); other++) words.add(other);
    }
    for (const word of differing(listedWords(old), listedWords(now))) {
      const lists = listed.partsWith(word);
      // It is listed for all below already where a part before lists it.
      if ((lists[0] ?? part) < part) continue;
      const next = lists[indexFrom(lists, part + 1)];
      const above = next === undefined ? -1 : part;
      for (const other of between(said.partsWith(word), above, next ?? heads.length)) words.add(other);
    }
  }
  return { steps, words };
}

const namedWords = (heads: readonly PartHead[]): ReadonlySet<string> =>
  new Set(heads.flatMap(({ name }) => wordsOf(name)));

/** The function that says whether steps have a word that parts are called by, of those parts or these, and not of both. */
export function saysChanged(old: readonly PartHead[], now: readonly PartHead[]): (steps: BoundSteps) => boolean {
  const words = differing(namedWords(old), namedWords(now));
  return (steps) => words.some((word) => wordsOfSteps(steps).has(word));
}

/** The parts of an ascending list that lie between two. */
const between = (parts: readonly number[], above: number, below: number): readonly number[] =>
  parts.slice(indexFrom(parts, above + 1), indexFrom(parts, below));

/** What only one of two sets has. */
const differing = <T>(a: ReadonlySet<T>, b: ReadonlySet<T>): T[] => [
  ...[...a].filter((word) => !b.has(word)),
  ...[...b].filter((word) => !a.has(word)),
];
