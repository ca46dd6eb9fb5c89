/**
 * Knows what the words of a name tell of a food that the book does not have: its class by the noun, and what it may hold much of.
 * Refuses to know composition, or to take a food for one of the book's.
 */
import nounsText from '../../data/foods/nouns.tsv';
import { once, onceByObject, onceByText } from '../measure/once.ts';
import { type Brings, FLESH, type Food, type FoodClass } from './food.ts';
import type { Meaning, NameIndex } from './name-index.ts';
import type { FoodRow } from './tables.ts';

/** What a word says of the food it stands in the name of. */
export interface Noun {
  /**
   * `animal`, `cut` and `organ` are raw flesh, `made` is made of anything, `changes` makes another food of what follows, `cooked` too and says that
   * it is not raw, `not` says that it is not what it is called; a `hint` says nothing of the class.
   */
  readonly is: 'animal' | 'cut' | 'organ' | 'made' | 'changes' | 'cooked' | 'not' | 'hint';
  readonly class?: FoodClass;
  readonly brings: readonly Brings[];
}

/** The row of each word, which stands in the table as it is looked up (a test holds it). */
const ROWS = once((): ReadonlyMap<string, string> => {
  const rows = nounsText.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return new Map(rows.slice(1).map((row) => [row.slice(0, row.indexOf('\t')), row]));
});

export function nounOf(word: string): Noun | undefined {
  const row = ROWS().get(word);
  return row === undefined ? undefined : nounIn(row);
}

const nounIn = onceByText(
  (row: string): Noun => {
    const [, is = '', kind = '', brings = ''] = row.split('\t');
    const read = { is: is as Noun['is'], brings: brings === '' ? [] : (brings.split(' ') as Brings[]) };
    return kind === '' ? read : { ...read, class: kind as FoodClass };
  },
  { texts: 10_000, letters: 1000 },
);

/** Every word of the table. */
export const nounWords = (): readonly string[] => [...ROWS().keys()];

/** What is known of a food that is not. */
export interface Understood {
  /** By its noun. */
  readonly class?: FoodClass;
  /** Not safe raw, by its noun or by an animal beside one that nobody knows. */
  readonly raw?: true;
  /** What it may hold much of, by its words. */
  readonly brings: readonly Brings[];
}

/** What the words of a name without a food, in its order, tell of it. */
export function understand(index: NameIndex, words: readonly string[], all: readonly string[]): Understood {
  const brings = [...new Set(all.flatMap((word) => nounOf(word)?.brings ?? []))];
  if (words.some((word) => nounOf(word)?.is === 'not')) return { brings };
  // The safe side: whatever it is made for, it may hold nitrite.
  if (namesCure(index, words)) return { class: 'curing salt', brings };
  const kind = classOf(index, words);
  if (kind === undefined) return { brings };
  const { class: named } = kind;
  // The last word may be the cut: a pork roast.
  const raw = kind.raw && !words.slice(0, -1).some((word) => isDone(word, named));
  const ground = words.some((word) => GROUND.has(word)) ? MINCED[named] : undefined;
  return { class: ground ?? named, ...(raw && { raw }), brings };
}

/** `pork cure`, `quick cure mix`; behind the word stands no food that it tells of, as in `dry cure bacon`. */
function namesCure(index: NameIndex, words: readonly string[]): boolean {
  const at = words.findLastIndex((word) => nounOf(word)?.class === 'curing salt');
  return at >= 0 && words.slice(at + 1).every((word) => nounOf(word)?.is === 'made' || index.get(word) === undefined);
}

/** A Scotch egg is cooked, breaded chicken may be raw. */
const isDone = (word: string, kind: FoodClass): boolean => {
  const is = nounOf(word)?.is;
  return word === 'roast' || is === 'cooked' || (is === 'changes' && kind === 'egg');
};

const GROUND: ReadonlySet<string> = new Set(['ground', 'minced', 'mince']);
const MINCED: Partial<Record<FoodClass, FoodClass>> = { meat: 'ground meat', poultry: 'ground poultry' };

interface Kind {
  readonly class: FoodClass;
  readonly raw: boolean;
}

function classOf(index: NameIndex, words: readonly string[]): Kind | undefined {
  const last = words.at(-1);
  if (last === undefined) return undefined;
  const before = words.slice(0, -1);
  const noun = nounOf(last);
  if (noun?.is === 'made') return noun.class === undefined ? undefined : { class: noun.class, raw: false };
  // The steak of a cauliflower is none.
  if (noun?.is === 'cut' || noun?.is === 'organ')
    return beside(index, before, () => true) ?? (noun.class && { class: noun.class, raw: true });
  const named = longestEnding(index, words);
  if (named !== undefined) return kindOf(named);
  if (noun?.is === 'animal') return noun.class && { class: noun.class, raw: true };
  return beside(index, before, ({ raw }) => raw);
}

/** What the longest run of words up to the last is a name of. */
export function longestEnding(index: NameIndex, words: readonly string[]): Meaning | undefined {
  for (let start = Math.max(0, words.length - index.longest); start < words.length; start++) {
    const meant = index.get(words.slice(start).join(' '));
    if (meant !== undefined) return meant;
  }
  return undefined;
}

/** The nearest word before the noun that is such a food or animal. */
function beside(index: NameIndex, words: readonly string[], asked: (kind: Kind) => boolean): Kind | undefined {
  for (const word of words.toReversed()) {
    const noun = nounOf(word);
    const named = index.get(word);
    const kind =
      noun?.is === 'animal' && noun.class !== undefined
        ? { class: noun.class, raw: true }
        : named === undefined
          ? undefined
          : kindOf(named);
    if (kind !== undefined && asked(kind)) return kind;
  }
  return undefined;
}

function kindOf(meant: Meaning): Kind {
  const foods = ('read' in meant ? [meant] : meant).map((row) => row.read());
  const strict = strictestOf(foods);
  return { class: strict?.class ?? 'other', raw: strict !== undefined && isRawAnimal(strict) };
}

const RAW: readonly FoodClass[] = ['poultry', 'ground poultry', 'ground meat', 'meat', 'egg', 'fish', 'shellfish'];

/** Of foods that a word does not tell apart, the one that asks for most care; else the likeliest. */
export const strictestOf = (foods: readonly Food[]): Food | undefined =>
  RAW.flatMap((kind) => foods.find((food) => food.class === kind && isRawAnimal(food)) ?? [])[0] ?? foods[0];

const isRawAnimal = (food: Food): boolean =>
  food.roles.includes('raw risk') && (FLESH.includes(food.class) || food.class === 'egg');

/** All foods of a class, the same list again; those of others are not read for it. */
export const foodsOfClass = (index: NameIndex, kind: FoodClass): readonly Food[] =>
  foodsByClass(index).get(kind)?.() ?? NONE;

const foodsByClass = onceByObject((index: NameIndex): ReadonlyMap<FoodClass, () => readonly Food[]> => {
  const byClass = new Map<FoodClass, FoodRow[]>();
  for (const row of index.foods()) {
    const rows = byClass.get(row.class);
    if (rows === undefined) byClass.set(row.class, [row]);
    else rows.push(row);
  }
  return new Map([...byClass].map(([kind, rows]) => [kind, once(() => rows.map((row) => row.read()))]));
});

const NONE: readonly never[] = [];
