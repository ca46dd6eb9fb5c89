/**
 * Knows which kinds a word that is none may have meant.
 * Refuses to choose one.
 */

import { distance } from 'fastest-levenshtein';
import { onceByText } from '../../measure/once.ts';
import { FUNCTION_WORDS } from '../words.ts';
import { KINDS, kindNamed } from './kinds.ts';

const MOST_APART = 4;
/** Letters more than the nearest, from which on another is not meant. */
const MUCH_FARTHER = 1;
const MOST_LETTERS = 40;
/** A kind that is written with more words than this is a sentence. */
const MOST_WORDS = 3;

const NAMES = KINDS.map(({ name, also }) => ({ name, names: [name, ...(also ?? [])].map((n) => n.toLowerCase()) }));
const NOUNS: ReadonlySet<string> = new Set(
  NAMES.flatMap(({ names }) => names.map((n) => n.split(' ').at(-1) ?? '')).filter((w) => w.length > 3),
);

/** Up to three kinds whose name, or other name, is near the word or shares a word with it. */
export function nearKinds(word: string): readonly string[] {
  const written = plain(word);
  const parts = new Set(written.split(' '));
  const apart = (name: string) =>
    name.split(' ').some((w) => w.length > 3 && parts.has(w)) ? 1 : distance(written, name);
  const near = NAMES.map(({ name, names }) => ({ name, far: Math.min(...names.map(apart)) }))
    .filter(({ far }) => far <= farthest(written))
    .sort((a, b) => a.far - b.far);
  const [nearest] = near;
  return near
    .filter(({ far }) => far <= (nearest?.far ?? 0) + MUCH_FARTHER)
    .slice(0, 3)
    .map(({ name }) => name);
}

/** Whether words are a kind, or so nearly one that nothing else was meant: misspelled, or with a word before its noun. */
export const namesKind = (words: string): boolean => kindNamed(words) !== undefined || isNearlyOne(words);

/** Titles are asked about at every edit. */
const isNearlyOne = onceByText((words: string): boolean => isNearly(plain(words)), { texts: 500 });

function isNearly(written: string): boolean {
  const words = written.split(' ');
  if (words.length > MOST_WORDS || !/^[\p{L} -]+$/u.test(written) || words.some((w) => FUNCTION_WORDS.has(w)))
    return false;
  return NOUNS.has(words.at(-1) ?? '') || (words.length < MOST_WORDS && nearKinds(written).length > 0);
}

const plain = (words: string): string => words.trim().toLowerCase().replace(/\s+/g, ' ').slice(0, MOST_LETTERS);
const farthest = (written: string): number => Math.min(MOST_APART, written.length / 2);
