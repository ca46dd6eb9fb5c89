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
const LEAST = 0.42;

/** Up to three foods, nearest first, for the normalised words of a name that none of the entries has. */
export function nearFoods(entries: Iterable<readonly [string, Meaning]>, words: readonly string[]): readonly Food[] {
  const asked = words.filter((word) => !IGNORED.has(word) && !FORMS.has(word) && word.length < 30).slice(0, 5);
  if (asked.length === 0) return [];
  const scores = new Map<() => Food, number>();
  for (const [key, meant] of entries) {
    const score = likeness(asked, key);
    if (score < LEAST) continue;
    for (const { read } of 'read' in meant ? [meant] : meant) scores.set(read, Math.max(scores.get(read) ?? 0, score));
  }
  const nearest = [...scores].sort(([, a], [, b]) => b - a);
  return nearest.slice(0, MOST).map(([read]) => read());
}

/** 0 to 1: the words found in the name, with the last, the noun, counting double; else the likeness of the spelling. */
function likeness(asked: readonly string[], key: string): number {
  const name = key.split(' ');
  let met = 0;
  let weight = 0;
  asked.forEach((word, at) => {
    const counts = (at === asked.length - 1 ? 2 : 1) * (CHANGES.has(word) ? 0.5 : 1);
    weight += counts;
    met += counts * Math.max(...name.map((other, i) => wordLikeness(word, other) * (i === name.length - 1 ? 1 : 0.8)));
  });
  const spare = Math.max(0, name.length - asked.length);
  const byWords = (met / weight) * (1 - 0.08 * spare);
  return Math.max(byWords, spellingLikeness(asked.join(' '), key));
}

function wordLikeness(a: string, b: string): number {
  if (a === b) return 1;
  const alike = spellingLikeness(a, b);
  return alike >= 0.65 ? alike * 0.9 : 0;
}

function spellingLikeness(a: string, b: string): number {
  const longer = Math.max(a.length, b.length);
  if (Math.abs(a.length - b.length) > longer * 0.4) return 0;
  return 1 - distance(a, b) / longer;
}
