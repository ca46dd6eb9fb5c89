/**
 * Knows how the words for a food vary without changing it: plurals, British and American spelling, accents, hyphens.
 * Refuses to know which foods there are.
 */
import { onceByText } from '../measure/once.ts';
import { singular } from './singular.ts';
import { JOINS, SPELLINGS } from './spellings.ts';

/** A line is read no further than this; the name of a food is never longer. */
const LONGEST_TEXT = 600;

/** The key under which a name is kept: its words in the singular, one spelling, one space between. */
export function keyOf(name: string): string {
  return tokensOf(plainText(name)).join(' ');
}

export function plainText(text: string): string {
  let plain = text.length > LONGEST_TEXT ? text.slice(0, LONGEST_TEXT) : text;
  plain = plain.toLowerCase();
  if (NOT_ASCII.test(plain)) {
    plain = plain
      .normalize('NFD')
      .replace(/\p{M}+|[’‘ʼ]/gu, '')
      .replace(/œ/g, 'oe')
      .replace(/ß/g, 'ss');
  }
  return plain.includes("'") || plain.includes('`') ? plain.replace(/['`]/g, '') : plain;
}

export function tokensOf(plain: string): string[] {
  return spellAll(plain.split(NOT_ASCII.test(plain) ? NO_WORD : NO_ASCII_WORD));
}

function spellAll(raw: readonly string[]): string[] {
  const words: string[] = [];
  for (let at = 0; at < raw.length; at++) {
    const word = raw[at];
    if (word === undefined || word === '') continue;
    const joined = JOINS.get(word)?.get(raw[at + 1] ?? '');
    if (joined !== undefined) {
      words.push(joined);
      at++;
      continue;
    }
    const one = spellingOf(word);
    if (one.includes(' ')) words.push(...one.split(' '));
    else words.push(one);
  }
  return words;
}

const NOT_ASCII = /[^\x00-\x7f]/;
const NO_ASCII_WORD = /[^a-z0-9&]+/;
const NO_WORD = /[^\p{L}\p{N}&]+/u;

/** Words already read: the names of the book and the lines of a folder use the same few thousand. */
const spellingOf = onceByText(
  (word: string): string => {
    const one = SPELLINGS.get(word) ?? singular(word);
    return SPELLINGS.get(one) ?? one;
  },
  { texts: 20_000, letters: 30 },
);

/** A set of words from running text. */
export function wordSet(words: string): ReadonlySet<string> {
  return new Set(words.trim().split(/\s+/));
}
