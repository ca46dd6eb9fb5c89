/**
 * Knows which foods a name that the book does not have may have meant: by spelling, and by the words they share.
 * Refuses to choose one.
 */
import { distance } from 'fastest-levenshtein';
import type { Meaning } from './find.ts';
import type { Food } from './food.ts';
import { CHANGES, FORMS, IGNORED } from './modifiers.ts';

const MOST = 3;
/** Below this share of likeness a suggestion helps nobody. */
const LEAST = 0.5;
/** Below this the spelling of two words has nothing to do with each other. */
const LEAST_SPELLING = 0.65;

/** Up to three foods, nearest first, for the normalised words of a name that none of the entries has. */
export function nearFoods(entries: Iterable<readonly [string, Meaning]>, words: readonly string[]): readonly Food[] {
  const asked = words.filter((word) => !IGNORED.has(word) && !FORMS.has(word) && word.length < 30).slice(0, 5);
  if (asked.length === 0) return [];
  const names = [...entries].map(([key, meant]) => ({ key, words: key.split(' '), meant }));
  const spoken = new Set(names.flatMap((name) => name.words));
  const weights = asked.map((word, at) => weightOf(word, at === asked.length - 1, spoken.has(word)));
  const scores = new Map<() => Food, number>();
  for (const { key, words: name, meant } of names) {
    const score = Math.max(sharedWords(asked, weights, name), spellingLikeness(asked.join(' '), key));
    if (score < LEAST) continue;
    for (const { read } of 'read' in meant ? [meant] : meant) scores.set(read, Math.max(scores.get(read) ?? 0, score));
  }
  const nearest = [...scores].sort(([, a], [, b]) => b - a);
  return nearest.slice(0, MOST).map(([read]) => read());
}

/** The last word is the noun and counts double; a word of no name, or one that says how a food was changed, counts half. */
function weightOf(word: string, last: boolean, spoken: boolean): number {
  return (last ? 2 : 1) * (CHANGES.has(word) ? 0.5 : 1) * (spoken ? 1 : 0.5);
}

/** 0 to 1: how much of what was asked is in the name, less for every word that the name has over. */
function sharedWords(asked: readonly string[], weights: readonly number[], name: readonly string[]): number {
  let met = 0;
  let all = 0;
  asked.forEach((word, at) => {
    const weight = weights[at] ?? 1;
    all += weight;
    met += weight * Math.max(...name.map((other, i) => wordLikeness(word, other) * (i === name.length - 1 ? 1 : 0.8)));
  });
  return (met / all) * (1 - 0.08 * Math.max(0, name.length - asked.length));
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
