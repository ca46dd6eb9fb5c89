/**
 * Knows how to tell from the words of an ingredient line which food they name, and when they could be two or none.
 * Refuses to guess: a word that it cannot account for makes the food unknown.
 */
import { countWord } from '../measure/count-words.ts';
import type { Food, FoodClass, FoodMatch } from './food.ts';
import {
  changesFood,
  changesIn,
  FORMS,
  IGNORED,
  isNumber,
  JOINERS,
  LOOKS_CUT,
  MADE_AFTER,
  STATES,
  saysNothing,
} from './modifiers.ts';
import { keyOf, type Phrase, readPhrase } from './names.ts';
import { nearFoods } from './near.ts';
import { once } from './once.ts';
import type { FoodRow } from './tables.ts';

/** What a name may mean: a food, or several that the word does not tell apart, likeliest first. */
export type Meaning = FoodRow | readonly FoodRow[];

/** Every name of a set of foods, and what it means. */
export interface NameIndex {
  get(key: string): Meaning | undefined;
  /** The food whose name has these words, sorted, in whatever order. */
  inAnyOrder(words: string): FoodRow | undefined;
  entries(): Iterable<readonly [string, Meaning]>;
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
  return indexKeys(keys, longestOf(keys), foods, [], under);
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

/** Words in the longest key. */
export function longestOf(keys: readonly (readonly string[])[]): number {
  return keys.flat().reduce((most, key) => Math.max(most, key.split(' ').length), 1);
}

/** The last word of each name, as written, with whatever stands behind it. */
export function endingsOf(foods: readonly FoodRow[]): readonly string[] {
  return [...new Set(foods.flatMap(({ name, names }) => [name, ...names].map(endingOf)))];
}

function endingOf(name: string): string {
  const last = name.search(LAST_LETTER);
  return last < 0 ? '' : name.slice(name.lastIndexOf(' ', last) + 1);
}

const LAST_LETTER = /[\p{L}\p{N}'’][^\p{L}\p{N}'’]*$/u;

/** The same from the keys of each food, which no other has. */
export function indexKeys(
  keys: readonly (readonly string[])[],
  longest: number,
  foods: readonly FoodRow[],
  ambiguous: readonly Ambiguous[],
  under?: NameIndex,
): NameIndex {
  const byKey = new Map<string, Meaning>();
  // So few steps that the engine does not start to compile them anew: a start waits for it.
  foods.forEach((food, at) => {
    keys[at]?.forEach((key) => {
      byKey.set(key, food);
    });
  });
  for (const { word, foods: meant } of ambiguous) {
    const key = keyOf(word);
    if (!byKey.has(key)) byKey.set(key, meant);
  }
  let byWords: Map<string, FoodRow | undefined> | undefined;
  return {
    get: (key) => byKey.get(key) ?? under?.get(key),
    inAnyOrder(words) {
      byWords ??= unordered(byKey);
      return byWords.get(words) ?? under?.inAnyOrder(words);
    },
    *entries() {
      yield* byKey;
      if (under !== undefined) yield* under.entries();
    },
    longest: Math.max(longest, under?.longest ?? 1),
  };
}

/** Names by their sorted words, but where two foods have the same words. */
function unordered(byKey: ReadonlyMap<string, Meaning>): Map<string, FoodRow | undefined> {
  const byWords = new Map<string, FoodRow | undefined>();
  for (const [key, meant] of byKey) {
    if (!isOne(meant) || !key.includes(' ')) continue;
    const sorted = key.split(' ').sort().join(' ');
    byWords.set(sorted, byWords.has(sorted) && byWords.get(sorted) !== meant ? undefined : meant);
  }
  return byWords;
}

/** The food that the words name; never throws, whatever the text. */
export function findFood(index: NameIndex, words: string): FoodMatch {
  const written = words.length > LONGEST_WRITTEN ? undefined : WRITTEN.get(words.trim().toLowerCase());
  const phrase = readPhrase(written ?? words);
  const found = findPhrase(index, phrase);
  if (found !== undefined) return found;
  const near = once(() => nearFoods(index, [...phrase.head, ...phrase.tails.flat()].slice(0, 8)));
  return {
    kind: 'unknown',
    get near(): readonly Food[] {
      return near();
    },
  };
}

/** Whether the words are a whole name of the index, in any number and spelling. */
export function isName(index: NameIndex, words: string): boolean {
  return (
    words.length <= LONGEST_NAME && index.get(keyOf(WRITTEN.get(words.trim().toLowerCase()) ?? words)) !== undefined
  );
}

const LONGEST_NAME = 80;

/** Spellings whose plural or whose side of the ocean tells two foods apart. */
const WRITTEN: ReadonlyMap<string, string> = new Map([
  ['peppers', 'bell pepper'],
  ['chili powder', 'chili powder blend'],
  ['chile powder', 'chili powder blend'],
]);

const LONGEST_WRITTEN = 20;

function findPhrase(index: NameIndex, phrase: Phrase): FoodMatch | undefined {
  const { head, tails, full } = phrase;
  if (head.length === 0) return undefined;
  const [next, ...rest] = tails;
  if (next !== undefined && head.every((word) => IGNORED.has(word) || FORMS.has(word))) {
    const joined = [...head, ...next];
    return findPhrase(index, { head: joined, tails: rest, full: joined });
  }
  const whole = full.length === head.length ? undefined : oneOf(index.get(full.join(' ')));
  if (whole !== undefined) return withForm(whole, NONE, tails);
  const choice = findEither(index, phrase);
  if (choice !== undefined) return choice;
  const narrowed = findNarrowed(index, head, tails);
  if (narrowed !== undefined) return narrowed;
  const run = findRun(index, head);
  if (run === undefined) return undefined;
  const { meant, left, named } = run;
  if (!isOne(meant)) return settleAmbiguous(meant, left, tails);
  return tails.some((tail) => changesFood(tail, meant.read().class)) ? undefined : withForm(meant, left, tails, named);
}

interface Run {
  readonly meant: Meaning;
  /** The words of the head that are not its name. */
  readonly left: readonly string[];
  /** Those that are. */
  readonly named: readonly string[];
}

/** The longest run of words that is a name and leaves nothing unaccounted for; else the names whose words stand in another order. */
function findRun(index: NameIndex, head: readonly string[]): Run | undefined {
  if (head.length > MOST_WORDS) return undefined;
  for (let length = Math.min(head.length, index.longest); length > 0; length--) {
    for (let start = head.length - length; start >= 0; start--) {
      const meant = index.get(length === 1 ? (head[start] ?? '') : head.slice(start, start + length).join(' '));
      if (meant === undefined) continue;
      if (length === head.length) return { meant, left: NONE, named: head };
      const left = [...head.slice(0, start), ...head.slice(start + length)];
      if (left.every((word) => leavesIt(word, meant))) return { meant, left, named: head.slice(start, start + length) };
    }
  }
  const kept = head.filter((word) => !IGNORED.has(word) && !FORMS.has(word) && !JOINERS.has(word) && !isNumber(word));
  if (kept.length === 0) return undefined;
  const meant =
    index.get(kept.join(' ')) ?? (kept.length > 1 ? index.inAnyOrder([...kept].sort().join(' ')) : undefined);
  if (meant === undefined) return undefined;
  const left = head.filter((word) => !kept.includes(word));
  return left.every((word) => JOINERS.has(word) || leavesIt(word, meant)) ? { meant, left, named: kept } : undefined;
}

const MOST_WORDS = 24;
const NONE: readonly string[] = [];

function leavesIt(word: string, meant: Meaning): boolean {
  return saysNothing(word, isOne(meant) ? meant.read() : undefined);
}

/** `butter (unsalted)`, `flour, strong white bread`: what stands after the comma makes the longer name. */
function findNarrowed(index: NameIndex, head: readonly string[], tails: Phrase['tails']): FoodMatch | undefined {
  const name = tails.length === 0 ? NONE : head.filter((word) => !IGNORED.has(word));
  for (const tail of name.length === 0 ? [] : tails.slice(0, 4)) {
    if (tail.length > 8) continue;
    const changes = changesIn(tail);
    const kept = tail.filter(
      (word) => !IGNORED.has(word) && !JOINERS.has(word) && (word !== 'dried' || changes.includes(word)),
    );
    if (kept.length === 0) continue;
    for (const more of kept.length === 1 ? [kept] : [kept, ...kept.map((word) => [word])]) {
      if (more.every((word) => FORMS.has(word) && !STATES.has(word))) continue;
      const food = oneOf(index.get([...more, ...name].join(' '))) ?? oneOf(index.get([...name, ...more].join(' ')));
      if (food !== undefined)
        return withForm(food, NONE, [
          tail.filter((word) => !more.includes(word)),
          ...tails.filter((other) => other !== tail),
        ]);
    }
    const among = index.get(name.join(' '));
    if (among === undefined || isOne(among)) continue;
    const alone = oneOf(index.get(kept.join(' ')));
    if (alone === undefined) continue;
    const kind = alone.read().class;
    if (among.includes(alone) || among.some((row) => row.read().class === kind)) return withForm(alone, NONE, tails);
  }
  return undefined;
}

/** `butter or margarine`, `salt and pepper`: two foods, unless both are one. */
function findEither(index: NameIndex, phrase: Phrase): FoodMatch | undefined {
  const { head } = phrase;
  const at = head.findIndex((word, i) => (word === 'or' || word === 'and') && i > 0 && i < head.length - 1);
  if (at < 0 || head.length > MOST_WORDS || index.get(head.join(' ')) !== undefined) return undefined;
  const right = findRun(index, head.slice(at + 1));
  if (right === undefined) return undefined;
  const noun = head.at(-1) ?? '';
  const left = findRun(index, [...head.slice(0, at), noun]) ?? findRun(index, head.slice(0, at));
  if (left === undefined) return undefined;
  const rows = [...new Set([left.meant, right.meant].flat())];
  const [only] = rows;
  if (rows.length === 1 && only !== undefined) return withForm(only, NONE, phrase.tails);
  return { kind: 'ambiguous', foods: rows.map((row) => row.read()) };
}

/** A word for two foods is settled by what else is said: `ginger, grated` is the root. */
function settleAmbiguous(
  meant: readonly FoodRow[],
  left: readonly string[],
  tails: Phrase['tails'],
): FoodMatch | undefined {
  const changes = tails.flatMap(changesIn);
  const rows = meant.filter((row) => changes.every((word) => isCalled(row, word)));
  if (rows.length === 0) return undefined;
  const foods = rows.map((row) => row.read());
  const [one] = rows;
  if (rows.length === 1 && one !== undefined) return withForm(one, left, tails);
  const cut = [...left, ...tails.flat()].some((word) => (FORMS.has(word) && word !== 'ground') || LOOKS_CUT.has(word));
  if (cut || left.includes('fresh')) {
    const fresh = rows.filter((_, at) => FRESH.has(foods[at]?.class ?? 'other'));
    const [only] = fresh;
    if (fresh.length === 1 && only !== undefined) return withForm(only, left, tails);
  }
  return { kind: 'ambiguous', foods };
}

function isCalled(row: FoodRow, word: string): boolean {
  return [row.name, ...row.names].some((name) => keyOf(name).split(' ').includes(word));
}

const FRESH: ReadonlySet<FoodClass> = new Set<FoodClass>(['vegetable', 'leafy herb', 'fruit', 'mushroom']);

function withForm(
  row: FoodRow,
  left: readonly string[],
  tails: Phrase['tails'],
  named: readonly string[] = NONE,
): FoodMatch {
  const food = row.read();
  const form = formOf(food, left, tails, named);
  return form === undefined ? { kind: 'food', food } : { kind: 'food', food, form };
}

/** The count word or form that a measure of the food depends on, else the first form word there is. */
function formOf(
  food: Food,
  left: readonly string[],
  tails: Phrase['tails'],
  named: readonly string[],
): string | undefined {
  const counted = left.find((word) => isPieceOf(food, word)) ?? named.slice(1).find((word) => isPieceOf(food, word));
  if (counted !== undefined) return counted;
  const forms = [
    ...left.filter((word) => FORMS.has(word)),
    ...tails.flatMap((tail) => tail.filter((word) => FORMS.has(word) && !MADE_AFTER.has(word))),
  ];
  return forms.find((form) => food.measures.some((measure) => measure.form === form)) ?? forms[0];
}

function isPieceOf(food: Food, word: string): boolean {
  const counted = countWord(word);
  return counted !== undefined && food.pieces.some((piece) => piece.word === counted);
}

function isOne(meant: Meaning): meant is FoodRow {
  return 'read' in meant;
}

function oneOf(meant: Meaning | undefined): FoodRow | undefined {
  return meant !== undefined && isOne(meant) ? meant : undefined;
}
