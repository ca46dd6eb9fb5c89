/**
 * Knows the base form of a verb of lying about, `left` and `kept` among them, which in a list of cooking verbs would be too many things.
 * Refuses to know what lies there.
 */
import { type WordList, wordList } from '../../recipe/step-words.ts';
import { baseForm } from '../../recipe/verbs.ts';

const IRREGULAR: ReadonlyMap<string, string> = new Map([
  ['left', 'leave'],
  ['stood', 'stand'],
  ['kept', 'keep'],
  ['held', 'hold'],
  ['sat', 'sit'],
  ['sits', 'sit'],
  ['lies', 'lie'],
  ['stays', 'stay'],
  ['came', 'come'],
  ['comes', 'come'],
  ['forgotten', 'forget'],
  ['stashed', 'stash'],
  ['parked', 'park'],
  ['displayed', 'display'],
  ['maintained', 'maintain'],
  ['immersed', 'immerse'],
  ['submerged', 'submerge'],
]);

export const lyingForm = (word: string): string => IRREGULAR.get(word) ?? baseForm(word);

/** These verbs in any form. */
export const lying = (...verbs: readonly string[]): WordList => {
  const all = new Set(verbs);
  return wordList((word) => all.has(lyingForm(word)));
};
