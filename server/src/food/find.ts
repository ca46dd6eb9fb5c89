/**
 * Knows how to tell from the words of an ingredient line which food they name, and when they could be two or none.
 * Refuses to guess: a word that it cannot account for makes the food unknown.
 */
import { countWord } from '../measure/count-words.ts';
import { once } from '../measure/once.ts';
import type { Food, FoodClass, FoodMatch } from './food.ts';
import { withoutGone } from './gone.ts';
import {
  CHANGES,
  COOKED_BY,
  changesFood,
  changesIn,
  DONE_AFTER,
  FORMS,
  isIgnored,
  isNumber,
  isPart,
  JOINERS,
  LOOKS_CUT,
  looksAdjective,
  MADE_AFTER,
  saysNothing,
} from './modifiers.ts';
import { isOne, type Meaning, type NameIndex, oneOf, type Run } from './name-index.ts';
import { keyOf, wordSet } from './names.ts';
import { nearFoods } from './near.ts';
import { findByNoun, nounLast, refine } from './noun-phrase.ts';
import { foodsOfClass, nounOf, understand } from './nouns.ts';
import { CUTS, type Phrase, readPhrase } from './phrase.ts';
import { joined, simpler } from './spelling.ts';
import type { FoodRow } from './tables.ts';

/** The food that the words name; never throws, whatever the text. */
export function findFood(index: NameIndex, words: string): FoodMatch {
  const comma = words.indexOf(',');
  const first = comma < 0 ? words : words.slice(0, comma);
  const written = first.length > LONGEST_WRITTEN ? undefined : WRITTEN.get(first.trim().toLowerCase());
  const read = withoutGone(readPhrase(written === undefined ? words : written + words.slice(first.length)));
  const phrase = withHead(read, joined(index, read.head));
  const found = findPhrase(index, phrase);
  if (found !== undefined) return found;
  const simple = withHead(phrase, simpler(index, phrase.head));
  const simply = simple === phrase ? undefined : findPhrase(index, simple);
  if (simply !== undefined) return simply;
  const all = [...phrase.head, ...phrase.tails.flat()];
  const near = once(() => nearFoods(index, all.slice(0, 8)));
  const {
    class: kind,
    raw,
    brings,
  } = understand(index, nounLast(index, phrase.head.slice(0, MOST_WORDS)), all.slice(0, MOST_WORDS));
  const unknown = {
    kind: 'unknown',
    get near(): readonly Food[] {
      return near();
    },
    brings,
    ...(raw && { raw }),
  } as const;
  // Not spread in: that would ask for all foods of the class.
  return kind === undefined
    ? unknown
    : Object.defineProperties(unknown, {
        class: { value: kind, enumerable: true },
        range: { get: () => foodsOfClass(index, kind), enumerable: true },
      });
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

const withHead = (phrase: Phrase, head: readonly string[]): Phrase =>
  head === phrase.head ? phrase : { ...phrase, head, full: [...head, ...phrase.full.slice(phrase.head.length)] };

function findPhrase(index: NameIndex, phrase: Phrase): FoodMatch | undefined {
  const { head, tails, full } = phrase;
  if (head.length === 0 || namesOther(index, head)) return undefined;
  const [next, ...rest] = tails;
  if (next !== undefined && head.every((word) => looksAdjective(word) && index.get(word) === undefined)) {
    const joined = [...head, ...next];
    return findPhrase(index, { head: joined, tails: rest, full: joined });
  }
  const whole = full.length === head.length ? undefined : oneOf(index.get(full.join(' ')));
  if (whole !== undefined) return withForm(whole, NONE, tails);
  const choice = findEither(index, phrase);
  if (choice !== undefined) return choice;
  const narrowed = findNarrowed(index, head, tails);
  if (narrowed !== undefined) return narrowed === OTHER ? undefined : narrowed;
  const run = namedTwice(index, head) ?? findRun(index, head) ?? findByNoun(index, head, adjectivesIn(tails));
  if (run === undefined) return undefined;
  const { meant, left, named, unread } = run;
  if (!isOne(meant)) return settleAmbiguous(meant, left, tails);
  return changesFood(tails, meant.read().class) && !changesIn(tails).every((word) => isCalled(meant, word))
    ? undefined
    : withForm(meant, left, tails, named, unread);
}

/** Two words that are a food together which the book does not have: `Spanish rice`, `prickly pear`. */
const namesOther = (index: NameIndex, head: readonly string[]): boolean =>
  head.length <= MOST_WORDS &&
  head.some((word, at) => {
    const pair = `${word} ${head[at + 1]}`;
    return at < head.length - 1 && nounOf(pair) !== undefined && index.get(pair) === undefined;
  });

/** A sort that is a name by itself, and what it is a sort of: `maris piper potatoes`. */
function namedTwice(index: NameIndex, head: readonly string[]): Run | undefined {
  const noun = oneOf(index.get(head.at(-1) ?? ''));
  if (noun === undefined || head.length > MOST_WORDS || index.get(head.join(' ')) !== undefined) return undefined;
  const meant = index.get(head.slice(0, -1).join(' '));
  return meant !== undefined && oneOf(meant) === noun ? { meant, left: NONE, named: head } : undefined;
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
      const behind = head.slice(start + length);
      if (left.every((word) => leavesIt(word, meant)) && !behind.some((word) => isHead(index, word, meant)))
        return { meant, left, named: head.slice(start, start + length) };
    }
  }
  const kept = head.filter((word) => !isIgnored(word) && !FORMS.has(word) && !JOINERS.has(word) && !isNumber(word));
  if (kept.length === 0) return undefined;
  const meant = index.get(kept.join(' ')) ?? inAnotherOrder(index, kept, head.includes('of'));
  if (meant === undefined) return undefined;
  const left = head.filter((word) => !kept.includes(word));
  return left.every((word) => JOINERS.has(word) || leavesIt(word, meant)) ? { meant, left, named: kept } : undefined;
}

/** `tomato condensed soup`: the noun stays where it is, but in `rind of orange`. */
function inAnotherOrder(index: NameIndex, words: readonly string[], turned: boolean): FoodRow | undefined {
  if (words.length < 2) return undefined;
  const row = index.inAnyOrder(words);
  const noun = words.at(-1) ?? '';
  return row !== undefined && (turned || [row.name, ...row.names].some((name) => keyOf(name).endsWith(noun)))
    ? row
    : undefined;
}

/** A name of more words is none. */
export const MOST_WORDS = 24;
const NONE: readonly string[] = [];

function leavesIt(word: string, meant: Meaning): boolean {
  if (isOne(meant)) return saysNothing(word, meant.read()) || (CHANGES.has(word) && isCalled(meant, word));
  return saysNothing(word, undefined) || meant.some((row) => fits(word, row));
}

/** Whether the word behind a name is what is meant: of a shrimp salad the salad, of garlic cloves the garlic. */
function isHead(index: NameIndex, word: string, meant: Meaning): boolean {
  if (index.get(word) === undefined && nounOf(word)?.is !== 'made') return false;
  return ![meant].flat().some((row) => {
    const food = row.read();
    return isPart(word, food.class) || isPieceOf(food, word);
  });
}

/** Whether the word may stand before a name that this food shares with others. */
const fits = (word: string, row: FoodRow): boolean =>
  isCalled(row, word) || (!CHANGES.has(word) && saysNothing(word, row.read()));

/** What stands behind the comma makes it a food that the book does not have. */
const OTHER = 'other';

/** `butter (unsalted)`, `FLOUR,WHEAT,BREAD`: what stands behind the comma makes the longer name. It never brings another food. */
function findNarrowed(
  index: NameIndex,
  head: readonly string[],
  tails: Phrase['tails'],
): FoodMatch | typeof OTHER | undefined {
  const said = tails.length === 0 ? NONE : head.filter((word) => !isIgnored(word));
  const name = index.get(said.join(' ')) === undefined ? said.filter((word) => !FORMS.has(word)) : said;
  if (name.length === 0 || name.length > MOST_WORDS) return undefined;
  const among = index.get(name.join(' '));
  const listed = tails.some(([first = '']) => JOINERS.has(first) || first === 'or');
  const short = tails.slice(0, 4).filter((tail) => tail.length <= 8 && !JOINERS.has(tail[0] ?? '') && tail[0] !== 'or');
  const changes = changesIn(tails);
  const washed = (word: string): boolean => word === 'dried' && !changes.includes(word);
  const states = short.map((tail) => tail.filter((word) => !washed(word)));
  for (const tail of states) {
    const at = tail.indexOf('or');
    if (at <= 0) continue;
    const rows = new Set(
      [
        ...states.slice(0, states.indexOf(tail)).filter((other) => isSort(index, other, among)),
        tail.slice(0, at),
        tail.slice(at + 1),
      ].flatMap(
        (side) =>
          oneSort(index, side, among) ??
          refine(index, side, name, oneOf(among))?.food ??
          (side.every((word) => saysNothing(word, oneOf(among)?.read())) ? (oneOf(among) ?? []) : []),
      ),
    );
    const [only] = rows;
    if (rows.size === 1 && only !== undefined && only !== among) return withForm(only, NONE, tails);
    if (rows.size > 1) return { kind: 'ambiguous', foods: [...rows].map((row) => row.read()) };
  }
  const words = [...said.filter((word) => !name.includes(word)), ...adjectivesIn(states)];
  const caught = FISHES.has(name.join(' ')) ? states.findIndex((tail) => isSort(index, tail, among)) : -1;
  const sort = states[caught];
  if (sort !== undefined) {
    const told = [name, ...states.filter((_, at) => at !== caught)];
    const found = findPhrase(index, { head: sort, tails: told, full: sort });
    if (found !== undefined) return found;
  }
  const refined = refine(index, words, name, oneOf(among)) ?? wholeTail(index, name, states);
  if (refined !== undefined) {
    const { food, used } = refined;
    const rest = tails.map((tail) => tail.filter((word) => !used.includes(word)));
    return changesFood(rest, food.read().class) ? OTHER : withForm(food, NONE, rest);
  }
  const generic = among !== undefined && isOne(among) && nounOf(name.at(-1) ?? '')?.is === 'animal' ? [among] : among;
  if (generic === undefined || isOne(generic)) return undefined;
  for (const tail of states) {
    const alone = oneOf(index.get(tail.filter((word) => !isIgnored(word)).join(' ')));
    if (alone === undefined) continue;
    const kind = alone.read().class;
    if (generic.includes(alone) || (!listed && generic.some((row) => row.read().class === kind)))
      return withForm(alone, NONE, tails);
  }
  return undefined;
}

/** Their sorts are foods by themselves: of `fish, cod, fillets` the fillets are no more than cod. */
const FISHES: ReadonlySet<string> = new Set(['fish', 'fish fillet', 'shellfish', 'seafood']);

const isSort = (index: NameIndex, tail: readonly string[], among: Meaning | undefined): boolean => {
  const row = oneSort(index, tail, among);
  return row !== undefined && row !== among;
};

/** `fish, flounder or sole`: a food of its own that is one of the name's. */
function oneSort(index: NameIndex, side: readonly string[], among: Meaning | undefined): FoodRow | undefined {
  const alone = oneOf(index.get(side.filter((word) => !isIgnored(word) && !FORMS.has(word)).join(' ')));
  const kinds = [among ?? []].flat().map((row) => row.read().class);
  return alone !== undefined && kinds.includes(alone.read().class) ? alone : undefined;
}

/** What stands behind the commas up to `in`, `with`, `or`; none of what a measure of it is for: `sugar to each quart (1 lb) prepared fruit`. */
const adjectivesIn = (tails: Phrase['tails']): readonly string[] =>
  tails.slice(0, Math.min(4, firstPurpose(tails))).flatMap((tail) => {
    // `butter the size of a walnut`
    if (tail[0] === 'sized') return [];
    const end = tail.findIndex((word) => CUTS.has(word) || word === 'or');
    return tail.slice(0, end < 0 ? 8 : Math.min(end, 8)).filter((word) => !DONE_AFTER.has(word));
  });

function firstPurpose(tails: Phrase['tails']): number {
  const at = tails.findIndex(([first = '']) => first === 'to' || first === 'per');
  return at < 0 ? tails.length : at;
}

/** `tuna, in oil`. */
function wholeTail(
  index: NameIndex,
  name: readonly string[],
  tails: Phrase['tails'],
): { readonly food: FoodRow; readonly used: readonly string[] } | undefined {
  for (const tail of tails) {
    const food = oneOf(index.get([...name, ...tail].join(' ')));
    if (food !== undefined) return { food, used: tail };
  }
  return undefined;
}

/** `butter or margarine`, `salt and pepper`: two foods, unless both are one. */
function findEither(index: NameIndex, phrase: Phrase): FoodMatch | undefined {
  const { head } = phrase;
  const at = head.findIndex((word, i) => (word === 'or' || word === 'and') && i > 0 && i < head.length - 1);
  if (at < 0 || head.length > MOST_WORDS || index.get(head.join(' ')) !== undefined) return undefined;
  // `cooked and diced lean pork`, `salt and pepper`
  if (head[at] === 'and' && head.slice(0, at).every((word) => looksAdjective(word) && index.get(word) === undefined))
    return findPhrase(index, { ...phrase, head: [...head.slice(0, at), ...head.slice(at + 1)] });
  const right = findRun(index, head.slice(at + 1)) ?? findByNoun(index, head.slice(at + 1));
  if (right === undefined) return undefined;
  const of = head.indexOf('of', at);
  const noun = of < 0 ? head.slice(-1) : head.slice(of);
  const left = findRun(index, [...head.slice(0, at), ...noun]) ?? findRun(index, head.slice(0, at));
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
  const changes = changesIn(tails);
  const known = meant.filter((row) => changes.every((word) => isCalled(row, word)));
  const rows = known.filter((row) => left.every((word) => JOINERS.has(word) || fits(word, row)));
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
  unread: readonly string[] = NONE,
): FoodMatch {
  const food = row.read();
  const form = formOf(food, left, tails, named);
  const part = left.find((word) => isSmaller(food, word));
  return {
    kind: 'food',
    food,
    ...(form !== undefined && { form }),
    ...(unread.length > 0 && { unread }),
    ...(part !== undefined && { part: MINIATURE.has(part) ? `${part} ${food.name}` : `${part} of ${food.name}` }),
  };
}

/** A part of one of it, or one picked or made small, that the book has not weighed: a chunk, a cut, a `baby` cauliflower. */
const isSmaller = (food: Food, word: string): boolean =>
  MINIATURE.has(word) ||
  (!WHOLE.has(word) && !isPieceOf(food, word) && (isPart(word, food.class) || nounOf(word)?.is === 'cut'));

/** Far smaller than a small one. */
const MINIATURE = wordSet('baby mini miniature dwarf micro');

/** Nearly all of one. */
const WHOLE = wordSet('cap head crown bulb ear cob pod root berry fruit meat flesh button body loaf whole');

/** The count word or form that a measure of the food depends on, cooked before cut; else the first form word there is. */
function formOf(
  food: Food,
  left: readonly string[],
  tails: Phrase['tails'],
  named: readonly string[],
): string | undefined {
  const counted = left.find((word) => isPieceOf(food, word)) ?? named.slice(1).find((word) => isPieceOf(food, word));
  if (counted !== undefined) return counted;
  const isCooked = left.some((word) => COOKED_BY.has(word));
  if (isCooked && food.measures.some(({ form }) => form === 'cooked')) return 'cooked';
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
