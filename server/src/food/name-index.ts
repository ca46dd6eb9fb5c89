/**
 * Knows every name of a set of foods, and what each means; and how the keys of the names are kept.
 * Refuses to know how a phrase is read: a key is a whole name.
 */
import type { NameText } from './name-text.ts';
import { keyOf } from './names.ts';
import type { FoodRow } from './tables.ts';

/** What a name may mean: a food, or several that the word does not tell apart, likeliest first. */
export type Meaning = FoodRow | readonly FoodRow[];

/** Every name of a set of foods, and what it means. */
export interface NameIndex {
  get(key: string): Meaning | undefined;
  /** The one food whose name has these words in whatever order. */
  inAnyOrder(words: readonly string[]): FoodRow | undefined;
  keys(): readonly string[];
  /** All that it has names for. */
  foods(): readonly FoodRow[];
  /** Words in the longest name. */
  readonly longest: number;
}

/** Words that no one food is meant by. */
export interface Ambiguous {
  readonly word: string;
  readonly foods: readonly FoodRow[];
}

/** An index of foods by all their names; the earlier food wins a name, and `under` answers what these do not. */
export function indexNames(foods: readonly FoodRow[], under?: NameIndex): NameIndex {
  const keys = keysOf(foods);
  return indexKeys(keys, longestOf(keys), foods, under);
}

/** The keys of the names of each food, but those that an earlier one has. */
export function keysOf(foods: readonly FoodRow[]): readonly (readonly string[])[] {
  const taken = new Set(['']);
  return foods.map(({ name, names }) =>
    [name, ...names].map(keyOf).filter((key) => {
      const free = !taken.has(key);
      taken.add(key);
      return free;
    }),
  );
}

/** The same as a line of a table for each food: a cell a name, empty where the key is the name in small letters, as of nearly all, and `-` where there is none. */
export function keyLinesOf(foods: readonly FoodRow[]): readonly string[] {
  const keys = keysOf(foods).map((own) => new Set(own));
  return foods.map(({ name, names }, at) => {
    const left = new Set(keys[at]);
    const cells = [name, ...names].map((called) => {
      const key = keyOf(called);
      if (!left.delete(key)) return NO_KEY;
      return key === called.toLowerCase() ? '' : key;
    });
    return cells.join('\t').replace(/\t+$/, '');
  });
}

/** What such a line says of these names. */
export function keysIn(line: string, names: readonly string[]): readonly string[] {
  const small = names.map((name) => name.toLowerCase());
  if (line === '') return small;
  const cells = line.split('\t');
  return small.flatMap((name, at) => (cells[at] === NO_KEY ? [] : cells[at] || name));
}

const NO_KEY = '-';

/** Words in the longest key. */
export function longestOf(keys: readonly (readonly string[])[]): number {
  return keys.flat().reduce((most, key) => Math.max(most, key.split(' ').length), 1);
}

/** The keys of the last words of all names. */
export function endingsOf(foods: readonly FoodRow[]): readonly string[] {
  return [...new Set(foods.flatMap(({ name, names }) => [name, ...names].map(endingOf)))];
}

function endingOf(name: string): string {
  const last = name.search(LAST_LETTER);
  return last < 0 ? '' : lastKeyOf(name.slice(name.lastIndexOf(' ', last) + 1));
}

/** The key of the last word. */
export const lastKeyOf = (words: string): string => keyOf(words).split(' ').at(-1) ?? '';

const LAST_LETTER = /[\p{L}\p{N}'’][^\p{L}\p{N}'’]*$/u;

/** The same names for other rows of the same foods; the same list of several stays one list. */
export function indexCalled(index: NameIndex, called: (row: FoodRow) => FoodRow): NameIndex {
  const lists = new Map<readonly FoodRow[], readonly FoodRow[]>();
  const meaning = (meant: Meaning): Meaning => {
    if (isOne(meant)) return called(meant);
    const known = lists.get(meant) ?? meant.map(called);
    lists.set(meant, known);
    return known;
  };
  return {
    get(key) {
      const meant = index.get(key);
      return meant && meaning(meant);
    },
    inAnyOrder(words) {
      const row = index.inAnyOrder(words);
      return row && called(row);
    },
    keys: () => index.keys(),
    foods: () => index.foods().map(called),
    longest: index.longest,
  };
}

/** Of the keys of each food, which no other has; `under` answers what these do not. */
function indexKeys(
  keys: readonly (readonly string[])[],
  longest: number,
  foods: readonly FoodRow[],
  under?: NameIndex,
): NameIndex {
  const byKey = new Map(keys.flatMap((own, at) => own.map((key): [string, Meaning | undefined] => [key, foods[at]])));
  const get = (key: string): Meaning | undefined => byKey.get(key);
  return {
    get: (key) => get(key) ?? under?.get(key),
    inAnyOrder: (words) => anyOrder(get, words) ?? under?.inAnyOrder(words),
    keys: () => (under === undefined ? [...byKey.keys()] : [...byKey.keys(), ...under.keys()]),
    foods: () => (under === undefined ? foods : [...foods, ...under.foods()]),
    longest: Math.max(longest, under?.longest ?? 1),
  };
}

/** The same of the names of many foods, and of words that no one of them is meant by. */
export function indexText(
  names: NameText,
  longest: number,
  foods: readonly FoodRow[],
  ambiguous: readonly Ambiguous[],
): NameIndex {
  // A name wins over what several are called, and the first of these over another.
  const several = new Map([...ambiguous].reverse().map((each) => [keyOf(each.word), each.foods]));
  const get = (key: string): Meaning | undefined => foods[names.get(key) ?? -1] ?? several.get(key);
  return {
    get,
    inAnyOrder: (words) => anyOrder(get, words),
    keys: () => [...new Set([...names.keys(), ...ambiguous.map(({ word }) => keyOf(word))])],
    foods: () => foods,
    longest,
  };
}

/** More words stand in so many orders that nobody means another. */
const MOST_IN_ANY_ORDER = 5;

/** The food of the names that these words make, but where they make those of two: few words have few orders, and all names many words. */
function anyOrder(get: (key: string) => Meaning | undefined, words: readonly string[]): FoodRow | undefined {
  if (words.length < 2 || words.length > MOST_IN_ANY_ORDER) return undefined;
  const found = new Set<FoodRow>();
  inEachOrder(words, '', (key) => {
    const meant = get(key);
    if (meant !== undefined && isOne(meant)) found.add(meant);
  });
  const [only] = found;
  return found.size === 1 ? only : undefined;
}

function inEachOrder(words: readonly string[], before: string, use: (key: string) => void): void {
  for (let i = 0; i < words.length; i++) {
    const next = before === '' ? (words[i] as string) : `${before} ${words[i]}`;
    if (words.length === 1) use(next);
    else inEachOrder(words.toSpliced(i, 1), next, use);
  }
}

/** What a phrase was found to mean. */
export interface Run {
  readonly meant: Meaning;
  /** The words of the head that are not its name. */
  readonly left: readonly string[];
  /** Those that are. */
  readonly named: readonly string[];
  /** Those of the others that nobody knows. */
  readonly unread?: readonly string[];
}

export function isOne(meant: Meaning): meant is FoodRow {
  return 'read' in meant;
}

export function oneOf(meant: Meaning | undefined): FoodRow | undefined {
  return meant !== undefined && isOne(meant) ? meant : undefined;
}
