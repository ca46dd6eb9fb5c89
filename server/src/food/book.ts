/**
 * Knows every food there is, the built-in ones and the house's, and finds one by what a cook writes.
 * Refuses to know where in a recipe the words stood.
 */

import { once, onceByText } from '../measure/once.ts';
import type { Quantity } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { cookedFood } from './cooked.ts';
import { findFood, isName } from './find.ts';
import type { Food, FoodMatch, HouseFood, Weighed } from './food.ts';
import { type Below, readHouseFood } from './house.ts';
import { inLanguage, type Language } from './language.ts';
import { endingsOf, indexCalled, indexNames, indexText, keysIn, type NameIndex } from './name-index.ts';
import { BETWEEN_KEYS, nameText } from './name-text.ts';
import { keyOf } from './names.ts';
import { reducedFood } from './reduced.ts';
import { strengthIn, withStrength } from './strength.ts';
import { type FoodRow, readAmbiguous, readEndings, readFoods, readKeys } from './tables.ts';
import { weighFood } from './weigh.ts';

export interface FoodBook {
  /** The food that the words of an ingredient line name: longest and most specific wins. */
  find(words: string): FoodMatch;
  /** The same for words of running text, where every one of them must be understood: `add onion` is none. */
  findInText(words: string): FoodMatch;
  /** Whether the words are a whole name of the book, in any number: `half and half`, `stem ginger`. Cheap. */
  knows(words: string): boolean;
  byId(id: string): Food | undefined;
  /** All foods, the house's first. */
  all(): readonly Food[];
  /** The keys of the last words of all names of all foods. No name is read for them but the house's. */
  endings(): readonly string[];
  /**
   * What the quantity of the food weighs, in grams, with the reason. `form` is the word that fits the measure
   * (`chopped`, `packed`), from the match or the preparation.
   */
  weigh(food: Food, quantity: Quantity, measures: Measures, form?: string): Weighed;
}

export interface HouseFoodProblem {
  readonly food: string;
  readonly words: string;
}

/** The foods that come with Quern; read once. */
export const builtInBook = once(readBook);

/** The same with each food called as the language calls it; every name still finds it. */
export const bookIn = onceByText(
  (language: Language): FoodBook => {
    const shelf = shelfBelow(builtInBook());
    const called = new Map<FoodRow, FoodRow>();
    for (const row of shelf.rows) called.set(row, inLanguage(row, language));
    return new Book({
      rows: [...called.values()],
      index: once(() => indexCalled(shelf.index(), (row) => called.get(row) ?? row)),
      endings: shelf.endings,
    });
  },
  { texts: 10 },
);

/** The same with the house's own foods laid over; a block that cannot be used says why and is left out. */
export function withHouseFoods(
  book: FoodBook,
  foods: readonly HouseFood[],
): { readonly book: FoodBook; readonly problems: readonly HouseFoodProblem[] } {
  if (foods.length === 0) return { book, problems: [] };
  const problems: HouseFoodProblem[] = [];
  const read: FoodRow[] = [];
  const taken = new Map<string, Food>();
  const said = new Set(foods.flatMap((block) => [block.name, ...block.also]).map(keyOf));
  const below: Below = {
    find: (words) => taken.get(keyOf(words)) ?? foodIn(book.find(words)),
    named(name) {
      const food = foodIn(book.find(name));
      const key = keyOf(name);
      return food !== undefined && [food.name, ...food.names].some((word) => keyOf(word) === key) ? food : undefined;
    },
  };
  for (const block of inReadingOrder(foods)) {
    const { food: whole, remarks } = readHouseFood(block, below);
    const food = whole && ownNames(whole, block, said);
    const names = [block.name, ...block.also];
    const clash = names.find((name) => taken.has(keyOf(name)));
    for (const words of remarks) problems.push({ food: block.name, words });
    if (clash !== undefined) problems.push({ food: block.name, words: `${clash} is already a food of the house` });
    if (food === undefined || clash !== undefined) continue;
    for (const name of names) taken.set(keyOf(name), food);
    read.push(rowOf(food));
  }
  const shelf = shelfBelow(book);
  const index = once(() => indexNames(read, shelf.index()));
  const endings = once(() => [...endingsOf(read), ...shelf.endings()]);
  const completed = new Set(read.map(({ id }) => id));
  const rows = [...read, ...shelf.rows.filter(({ id }) => !completed.has(id))];
  return { book: new Book({ rows, index, endings }), problems };
}

const foodIn = (found: FoodMatch): Food | undefined => (found.kind === 'food' ? found.food : undefined);

/** The food without the names of the known one that other blocks describe. */
function ownNames(food: Food, { name, also }: HouseFood, said: ReadonlySet<string>): Food {
  const own = new Set([name, ...also]);
  return { ...food, names: food.names.filter((word) => own.has(word) || !said.has(keyOf(word))) };
}

/** What a book is made of. */
interface Shelf {
  readonly rows: readonly FoodRow[];
  /** Built when a name is first looked up. */
  readonly index: () => NameIndex;
  readonly endings: () => readonly string[];
}
/** A book laid over another need not read all names again. */
const shelfBelow = (book: FoodBook): Shelf => (book instanceof Book ? book.shelf : shelfOf(book.all().map(rowOf)));
/** Phrases kept; a folder repeats its ingredients. */
const MOST_KEPT = 5000;
const LONGEST_KEPT = 120;

function readBook(): FoodBook {
  const rows = readFoods();
  return new Book({
    rows,
    index: once(() => {
      const byId = new Map(rows.map((row) => [row.id, row]));
      const meant = (ids: readonly string[]): FoodRow[] => ids.flatMap((id) => byId.get(id) ?? []);
      const { lines, longest } = readKeys();
      // Most keys are the names in small letters, which are not cut for it.
      const keys = rows.map((row, at) => {
        const line = lines[at] ?? '';
        return line === '' ? row.calledInOne : keysIn(line, row.called).join(BETWEEN_KEYS);
      });
      return indexText(
        nameText(keys),
        longest,
        rows,
        readAmbiguous().map(({ word, ids }) => ({ word, foods: meant(ids) })),
      );
    }),
    endings: readEndings,
  });
}

function shelfOf(rows: readonly FoodRow[]): Shelf {
  return { rows, index: once(() => indexNames(rows)), endings: once(() => endingsOf(rows)) };
}

function rowOf(food: Food): FoodRow {
  return { id: food.id, name: food.name, names: food.names, class: food.class, read: () => food };
}

class Book implements FoodBook {
  readonly shelf: Shelf;
  readonly find: FoodBook['find'];
  readonly all: FoodBook['all'];
  readonly weigh = weighFood;
  private readonly rowsById: () => ReadonlyMap<string, FoodRow>;

  constructor(shelf: Shelf) {
    this.shelf = shelf;
    this.find = onceByText((words: string) => strongFood(shelf.index(), words) ?? wholeOrMade(shelf.index(), words), {
      texts: MOST_KEPT,
      letters: LONGEST_KEPT,
    });
    this.all = once(() => shelf.rows.map((row) => row.read()));
    this.rowsById = once(() => new Map(shelf.rows.map((row) => [row.id, row])));
  }

  findInText(words: string): FoodMatch {
    const found = this.find(words);
    return found.kind === 'food' && found.unread !== undefined ? { kind: 'unknown', near: [found.food] } : found;
  }

  knows(words: string): boolean {
    return isName(this.shelf.index(), words);
  }

  byId(id: string): Food | undefined {
    return this.rowsById().get(id)?.read();
  }

  endings(): readonly string[] {
    return this.shelf.endings();
  }
}

/** What is made with less of something, or cooked, is the food that it is made of, unless the book has it. */
function wholeOrMade(index: NameIndex, words: string): FoodMatch {
  const found = findFood(index, words);
  if (found.kind !== 'unknown' || words.length > LONGEST_KEPT) return found;
  const find = (rest: string): FoodMatch => findFood(index, rest);
  return reducedFood(words, find) ?? cookedFood(words, find) ?? found;
}

/** The food of a strength that is written with it, where it has one that counts; not where a whole name says it (`70 % chocolate`). */
function strongFood(index: NameIndex, words: string): FoodMatch | undefined {
  const strength = words.length > LONGEST_KEPT || isName(index, words) ? undefined : strengthIn(words);
  return strength && withStrength(findFood(index, strength.rest), strength);
}

/** Blocks that are like another block of the house come after it. */
function inReadingOrder(foods: readonly HouseFood[]): readonly HouseFood[] {
  const byKey = new Map<string, HouseFood>();
  for (const food of foods) if (!byKey.has(keyOf(food.name))) byKey.set(keyOf(food.name), food);
  const ordered = new Set<HouseFood>();
  for (const food of foods) {
    const chain = new Set<HouseFood>();
    let next: HouseFood | undefined = food;
    while (next !== undefined && !ordered.has(next) && !chain.has(next)) {
      chain.add(next);
      next = next.like === undefined ? undefined : byKey.get(keyOf(next.like));
    }
    for (const link of [...chain].reverse()) ordered.add(link);
  }
  return [...ordered];
}
