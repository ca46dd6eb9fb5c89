/**
 * Knows which foods a name that the book does not have may have meant: by spelling, and by the words they share.
 * Refuses to choose one.
 */
import { distance } from 'fastest-levenshtein';
import type { Meaning, NameIndex } from './find.ts';
import type { Food } from './food.ts';
import { CHANGES, FORMS, IGNORED } from './modifiers.ts';

const MOST = 3;
/** Below this share of likeness a suggestion helps nobody. */
const LEAST = 0.5;
/** Below this the spelling of two words has nothing to do with each other. */
const LEAST_SPELLING = 0.65;

/** All names of an index, cut into words once. */
interface Spellings {
  readonly names: readonly { readonly key: string; readonly words: readonly string[]; readonly meant: Meaning }[];
  /** Every word of any name. */
  readonly spoken: ReadonlySet<string>;
}

const SPELLINGS = new WeakMap<NameIndex, Spellings>();

function spellingsOf(index: NameIndex): Spellings {
  let spellings = SPELLINGS.get(index);
  if (spellings === undefined) {
    const names = [...index.entries()].map(([key, meant]) => ({ key, words: key.split(' '), meant }));
    spellings = { names, spoken: new Set(names.flatMap((name) => name.words)) };
    SPELLINGS.set(index, spellings);
  }
  return spellings;
}

/** Up to three foods, nearest first, for the normalised words of a name that the index does not have. */
export function nearFoods(index: NameIndex, words: readonly string[]): readonly Food[] {
  const asked = words.filter((word) => !IGNORED.has(word) && !FORMS.has(word) && word.length < 30).slice(0, 5);
  if (asked.length === 0) return [];
  const { names, spoken } = spellingsOf(index);
  const weights = asked.map((word, at) => weightOf(word, at === asked.length - 1, spoken.has(word)));
  // Names share their words: each is compared with what was asked once.
  const likeness = asked.map((word) => likeWords(word, spoken));
  const together = asked.join(' ');
  const scores = new Map<() => Food, number>();
  for (const { key, words: name, meant } of names) {
    const score = Math.max(sharedWords(likeness, weights, name), spellingLikeness(together, key));
    if (score < LEAST) continue;
    for (const { read } of 'read' in meant ? [meant] : meant) scores.set(read, Math.max(scores.get(read) ?? 0, score));
  }
  const nearest = [...scores].sort(([, a], [, b]) => b - a);
  return nearest.slice(0, MOST).map(([read]) => read());
}

/** The words of the book that one is like, and how much. */
function likeWords(word: string, spoken: ReadonlySet<string>): ReadonlyMap<string, number> {
  const like = new Map<string, number>();
  for (const other of spoken) {
    const alike = wordLikeness(word, other);
    if (alike > 0) like.set(other, alike);
  }
  return like;
}

/** The last word is the noun and counts double; a word of no name, or one that says how a food was changed, counts half. */
function weightOf(word: string, last: boolean, spoken: boolean): number {
  return (last ? 2 : 1) * (CHANGES.has(word) ? 0.5 : 1) * (spoken ? 1 : 0.5);
}

/** 0 to 1: how much of what was asked is in the name, less for every word that the name has over. */
function sharedWords(
  likeness: readonly ReadonlyMap<string, number>[],
  weights: readonly number[],
  name: readonly string[],
): number {
  let met = 0;
  let all = 0;
  likeness.forEach((like, at) => {
    const weight = weights[at] ?? 1;
    all += weight;
    let best = 0;
    for (let i = 0; i < name.length; i++)
      best = Math.max(best, (like.get(name[i] ?? '') ?? 0) * (i === name.length - 1 ? 1 : 0.8));
    met += weight * best;
  });
  return (met / all) * (1 - 0.08 * Math.max(0, name.length - likeness.length));
}

function wordLikeness(a: string, b: string): number {
  if (a === b) return 1;
  const alike = spellingLikeness(a, b);
  return alike >= LEAST_SPELLING ? alike * 0.9 : 0;
}

function spellingLikeness(a: string, b: string): number {
  const longer = Math.max(a.length, b.length);
  if (Math.abs(a.length - b.length) > longer * 0.35) return 0;
  return 1 - distance(a, b) / longer;
}
