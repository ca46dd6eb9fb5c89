/**
 * Knows which foods a name that the book does not have may have meant: by spelling, and by the words they share.
 * Refuses to choose one.
 */

import { distance } from 'fastest-levenshtein';
import { onceByObject } from '../measure/once.ts';
import type { Food } from './food.ts';
import { CHANGES, FORMS, isIgnored } from './modifiers.ts';
import type { Meaning, NameIndex } from './name-index.ts';
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

interface Name extends Lettered {
  readonly words: readonly string[];
  readonly meant: Meaning;
}

/** All names of an index, cut into words once. */
interface Spellings {
  readonly names: readonly Name[];
  /** Every word of any name, with the places of the names it is in. */
  readonly spoken: ReadonlyMap<string, Spoken>;
  readonly found: Map<string, readonly Food[]>;
  readonly like: Map<string, ReadonlyMap<string, number>>;
}

interface Spoken extends Lettered {
  readonly inNames: number[];
}

const spellingsOf = onceByObject((index: NameIndex): Spellings => {
  const names = [...index.entries()].map(([key, meant]) => ({ ...lettered(key), words: key.split(' '), meant }));
  const spoken = new Map<string, Spoken>();
  for (const [at, { words }] of names.entries())
    for (const word of words) {
      const known = spoken.get(word);
      if (known === undefined) spoken.set(word, { ...lettered(word), inNames: [at] });
      else known.inNames.push(at);
    }
  return { names, spoken, found: new Map(), like: new Map() };
});

/** Up to three foods, nearest first, for the normalised words of a name that the index does not have. */
export function nearFoods(index: NameIndex, words: readonly string[]): readonly Food[] {
  const asked = words.filter((word) => !isIgnored(word) && !FORMS.has(word) && word.length < 30).slice(0, 5);
  if (asked.length === 0) return [];
  const spellings = spellingsOf(index);
  return kept(spellings.found, asked.join(' '), () => search(spellings, asked));
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
    if (spellingLikeness(asked, lettered(name), MISSPELLED) >= MISSPELLED) return true;
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

function search({ names, spoken, like }: Spellings, asked: readonly string[]): readonly Food[] {
  const weights = asked.map((word, at) => weightOf(word, at === asked.length - 1, spoken.has(word)));
  // Names share their words: each is compared with what was asked once.
  const likeness = asked.map((word) => kept(like, word, () => likeWords(word, spoken)));
  const sharing = new Set<number>();
  for (const words of likeness)
    for (const word of words.keys()) for (const at of spoken.get(word)?.inNames ?? []) sharing.add(at);
  const together = lettered(asked.join(' '));
  const scores = new Map<FoodRow, number>();
  for (let at = 0; at < names.length; at++) {
    const name = names[at] as Name;
    const shared = sharing.has(at) ? sharedWords(likeness, weights, name.words) : 0;
    const score = Math.max(shared, spellingLikeness(together, name, Math.max(LEAST, shared)));
    if (score < LEAST) continue;
    const { meant } = name;
    for (const row of 'read' in meant ? [meant] : meant) scores.set(row, Math.max(scores.get(row) ?? 0, score));
  }
  const nearest = [...scores].sort(([, a], [, b]) => b - a);
  return nearest.slice(0, MOST).map(([row]) => row.read());
}

/** The words of the book that one is like, and how much. */
function likeWords(word: string, spoken: Spellings['spoken']): ReadonlyMap<string, number> {
  const asked = lettered(word);
  const like = new Map<string, number>();
  for (const other of spoken.values()) {
    const alike = wordLikeness(asked, other);
    if (alike > 0) like.set(other.text, alike);
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

function wordLikeness(a: Lettered, b: Lettered): number {
  if (a.text === b.text) return 1;
  const alike = spellingLikeness(a, b, LEAST_SPELLING);
  return alike >= LEAST_SPELLING ? alike * 0.9 : 0;
}

/** 0 to 1; 0 where it cannot come up to what is asked for. */
function spellingLikeness(a: Lettered, b: Lettered, least: number): number {
  const longer = Math.max(a.text.length, b.text.length);
  if (Math.abs(a.text.length - b.text.length) > longer * 0.35) return 0;
  // Every letter that only one of them has is a change.
  const changes = Math.max(bits(a.letters & ~b.letters), bits(b.letters & ~a.letters));
  return 1 - changes / longer < least ? 0 : 1 - distance(a.text, b.text) / longer;
}

function lettered(text: string): Lettered {
  let letters = 0;
  for (let i = 0; i < text.length; i++) letters |= 1 << (text.charCodeAt(i) & 31);
  return { text, letters };
}

/** How many bits of a number are set. */
function bits(number: number): number {
  let left = number - ((number >>> 1) & 0x55555555);
  left = (left & 0x33333333) + ((left >>> 2) & 0x33333333);
  return Math.imul((left + (left >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
