/**
 * Knows which foods a name that the book does not have may have meant: by spelling, and by the words they share.
 * Refuses to choose one.
 */

import { distance } from 'fastest-levenshtein';
import { onceByObject } from '../measure/once.ts';
import type { Food } from './food.ts';
import { CHANGES, FORMS, isIgnored } from './modifiers.ts';
import type { NameIndex } from './name-index.ts';
import type { FoodRow } from './tables.ts';

const MOST = 3;
/** Names that were asked for, kept: one is asked for again at every edit of its part. */
const MOST_KEPT = 500;
/** Below this share of likeness a suggestion helps nobody. */
const LEAST = 0.5;
/** Below this the spelling of two words has nothing to do with each other. */
const LEAST_SPELLING = 0.65;
/** From this on a name is another one misspelled. */
const MISSPELLED = 0.78;

/** A text with its letters as bits, so that most others are told to be far off without counting. */
interface Lettered {
  readonly text: string;
  readonly letters: number;
}

/** All names of an index and the words they are made of; in lists of numbers, as they are many and stay. */
interface Spellings {
  readonly names: readonly string[];
  readonly letters: Int32Array;
  readonly words: Words;
  readonly found: Map<string, readonly Food[]>;
  readonly like: Map<string, ReadonlyMap<number, number>>;
}

/** Every word of any name, by its number. */
interface Words {
  readonly texts: readonly string[];
  readonly numbers: ReadonlyMap<string, number>;
  readonly letters: Int32Array;
  /** The places of the names with a word stand from its start to that of the next. */
  readonly starts: Int32Array;
  readonly names: Int32Array;
}

const spellingsOf = onceByObject((index: NameIndex): Spellings => {
  const names = index.keys();
  return {
    names,
    letters: Int32Array.from(names, lettersOf),
    words: wordsIn(names),
    found: new Map(),
    like: new Map(),
  };
});

function wordsIn(names: readonly string[]): Words {
  const each = names.map((name) => name.split(' '));
  const texts = [...new Set(each.flat())];
  const numbers = new Map(texts.map((text, number) => [text, number]));
  const starts = new Int32Array(texts.length + 1);
  const inNames = each.map((words) => words.map((word) => numbers.get(word) ?? 0));
  for (const words of inNames) for (const word of words) starts[word + 1] = (starts[word + 1] ?? 0) + 1;
  for (let word = 0; word < texts.length; word++) starts[word + 1] = (starts[word + 1] ?? 0) + (starts[word] ?? 0);
  const next = starts.slice();
  const places = new Int32Array(starts[texts.length] ?? 0);
  inNames.forEach((words, at) => {
    for (const word of words) {
      places[next[word] ?? 0] = at;
      next[word] = (next[word] ?? 0) + 1;
    }
  });
  return { texts, numbers, letters: Int32Array.from(texts, lettersOf), starts, names: places };
}

/** Up to three foods, nearest first, for the normalised words of a name that the index does not have. */
export function nearFoods(index: NameIndex, words: readonly string[]): readonly Food[] {
  const asked = words.filter((word) => !isIgnored(word) && !FORMS.has(word) && word.length < 30).slice(0, 5);
  if (asked.length === 0) return [];
  const spellings = spellingsOf(index);
  return kept(spellings.found, asked.join(' '), () => search(index, spellings, asked));
}

/** All names as one text, each a line that begins with a blank: what ends with a word is found in it without a step a name. */
const linesOf = onceByObject((index: NameIndex): string => `\n ${index.keys().join('\n ')}\n`);

/** Whether some name ends with the word: a food by itself, or what one is a sort of, as `wheat`. */
export function isNoun(index: NameIndex, word: string): boolean {
  return linesOf(index).includes(` ${word}\n`);
}

/** All names that end with the word. */
function* endingWith(index: NameIndex, word: string): Iterable<string> {
  const lines = linesOf(index);
  const end = ` ${word}\n`;
  for (let at = lines.indexOf(end); at >= 0; at = lines.indexOf(end, at + 1))
    yield lines.slice(lines.lastIndexOf('\n', at) + 2, at + end.length - 1);
}

/** Whether the word before the noun is a misspelling of another name: `swete potato` of `sweet potato`. */
export function isNearName(index: NameIndex, word: string, noun: readonly string[]): boolean {
  const asked = lettered([word, ...noun].join(' '));
  for (const name of endingWith(index, noun.at(-1) ?? ''))
    if (spellingLikeness(asked, name, lettersOf(name), MISSPELLED) >= MISSPELLED) return true;
  return false;
}

function kept<V>(known: Map<string, V>, key: string, make: () => V): V {
  let value = known.get(key);
  if (value === undefined) {
    value = make();
    if (known.size >= MOST_KEPT) known.clear();
    known.set(key, value);
  }
  return value;
}

function search(
  index: NameIndex,
  { names, letters, words, like }: Spellings,
  asked: readonly string[],
): readonly Food[] {
  const weights = asked.map((word, at) => weightOf(word, at === asked.length - 1, words.numbers.has(word)));
  // Names share their words: each is compared with what was asked once.
  const likeness = asked.map((word) => kept(like, word, () => likeWords(word, words)));
  const sharing = new Set<number>();
  for (const alike of likeness)
    for (const word of alike.keys())
      for (const at of words.names.subarray(words.starts[word], words.starts[word + 1])) sharing.add(at);
  const together = lettered(asked.join(' '));
  const scores = new Map<FoodRow, number>();
  for (let at = 0; at < names.length; at++) {
    const name = names[at] as string;
    const shared = sharing.has(at) ? sharedWords(likeness, weights, name, words) : 0;
    const spelled = spellingLikeness(together, name, letters[at] as number, Math.max(LEAST, shared));
    const score = Math.max(shared, spelled);
    if (score < LEAST) continue;
    for (const row of [index.get(name) ?? []].flat()) scores.set(row, Math.max(scores.get(row) ?? 0, score));
  }
  const nearest = [...scores].sort(([, a], [, b]) => b - a);
  return nearest.slice(0, MOST).map(([row]) => row.read());
}

/** The words of the book that one is like, by their numbers, and how much. */
function likeWords(word: string, { texts, letters }: Words): ReadonlyMap<number, number> {
  const asked = lettered(word);
  const like = new Map<number, number>();
  for (let number = 0; number < texts.length; number++) {
    const alike = wordLikeness(asked, texts[number] as string, letters[number] as number);
    if (alike > 0) like.set(number, alike);
  }
  return like;
}

/** The last word is the noun and counts double; a word of no name, or one that says how a food was changed, counts half. */
function weightOf(word: string, last: boolean, spoken: boolean): number {
  return (last ? 2 : 1) * (CHANGES.has(word) ? 0.5 : 1) * (spoken ? 1 : 0.5);
}

/** 0 to 1: how much of what was asked is in the name, less for every word that the name has over. */
function sharedWords(
  likeness: readonly ReadonlyMap<number, number>[],
  weights: readonly number[],
  called: string,
  { numbers }: Words,
): number {
  const name = called.split(' ').map((word) => numbers.get(word) ?? -1);
  let met = 0;
  let all = 0;
  likeness.forEach((like, at) => {
    const weight = weights[at] ?? 1;
    all += weight;
    let best = 0;
    for (let i = 0; i < name.length; i++)
      best = Math.max(best, (like.get(name[i] ?? -1) ?? 0) * (i === name.length - 1 ? 1 : 0.8));
    met += weight * best;
  });
  return (met / all) * (1 - 0.08 * Math.max(0, name.length - likeness.length));
}

function wordLikeness(a: Lettered, b: string, letters: number): number {
  if (a.text === b) return 1;
  const alike = spellingLikeness(a, b, letters, LEAST_SPELLING);
  return alike >= LEAST_SPELLING ? alike * 0.9 : 0;
}

/** 0 to 1; 0 where it cannot come up to what is asked for. */
function spellingLikeness(a: Lettered, b: string, letters: number, least: number): number {
  const longer = Math.max(a.text.length, b.length);
  if (Math.abs(a.text.length - b.length) > longer * 0.35) return 0;
  // Every letter that only one of them has is a change.
  const changes = Math.max(bits(a.letters & ~letters), bits(letters & ~a.letters));
  return 1 - changes / longer < least ? 0 : 1 - distance(a.text, b) / longer;
}

const lettered = (text: string): Lettered => ({ text, letters: lettersOf(text) });

function lettersOf(text: string): number {
  let letters = 0;
  for (let i = 0; i < text.length; i++) letters |= 1 << (text.charCodeAt(i) & 31);
  return letters;
}

/** How many bits of a number are set. */
function bits(number: number): number {
  let left = number - ((number >>> 1) & 0x55555555);
  left = (left & 0x33333333) + ((left >>> 2) & 0x33333333);
  return Math.imul((left + (left >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
