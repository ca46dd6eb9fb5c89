/**
 * Knows what a title says that a dish is, by its last words, from the table of dishes.
 * Refuses to know whether its list bears that out.
 */
import type { FoodClass } from '../../food/food.ts';
import { once, onceByText } from '../../measure/once.ts';
import { wordsIn } from '../../measure/table-rows.ts';
import { dishRows, MADE } from '../../prose/dish-named.ts';
import type { Kind } from '../measures/kind.ts';
import { kindNamed } from '../measures/kinds.ts';
import { type DishNeed, isDishNeed } from '../measures/needs.ts';
import { wordsOf } from '../words.ts';
import { calledName, dishNames } from './title.ts';

export interface Dish {
  /** As the table calls it: `banana bread`. */
  readonly name: string;
  readonly kinds: readonly Kind[];
  /** The least share of the whole, 0 to 1, that foods of these classes are together. */
  readonly of: readonly { readonly classes: ReadonlySet<FoodClass>; readonly least: number }[];
  readonly needs: readonly DishNeed[];
}

interface Row extends Dish {
  readonly not: ReadonlySet<string>;
}

const MOST_TITLES = 500;

/** What the last words of a title name, before what comes with it: `Blueberry muffins with streusel` are muffins. */
export const dishCalled = onceByText(
  (title: string): Dish | undefined => {
    const words = wordsOf(title);
    const [row] = dishNames(title).flatMap((each) => rowOf(wordsUpTo(each)) ?? []);
    return row === undefined || words.some((word) => row.not.has(word)) ? undefined : row;
  },
  { texts: MOST_TITLES },
);

const rowOf = (name: readonly string[]): Row | undefined =>
  calledBy(name) ?? whatIs(name) ?? (FORMS.has(name.at(-1) ?? '') ? calledBy(name.slice(0, -1)) : undefined);

/** Before what comes with it: `Bagels with lox` are bagels. */
export const wordsBefore = (title: string): readonly string[] => wordsUpTo(calledName(title));

function wordsUpTo(name: string): readonly string[] {
  const all = wordsOf(name);
  const end = all.findIndex((word, i) => i > 0 && BESIDE.has(word));
  return end < 0 ? all : all.slice(0, end);
}

/** What its last words name: a dish of the table, else a kind. */
function calledBy(name: readonly string[]): Row | undefined {
  const ends = name.map((_, i) => name.slice(i).join(' '));
  const kind = (end: string): Row | undefined => {
    const named = kindNamed(end);
    return named && { name: end, kinds: [named], of: [], not: NO_WORDS, needs: [] };
  };
  for (const end of ends) {
    const row = ROWS().get(end) ?? kind(end);
    if (row !== undefined) return row;
  }
  return undefined;
}
/** What is made of any food, by one word: `pickled red onions` are pickled food. */
const whatIs = (name: readonly string[]): Row | undefined =>
  name.flatMap((word) => ROWS().get(`${word} food`) ?? [])[0];

const NO_WORDS: ReadonlySet<string> = new Set();

/** These say how far it is made, or its shape: a bun dough is held as buns, shortbread fingers as shortbread. */
const FORMS: ReadonlySet<string> = new Set(['dough', 'batter', 'finger', 'round', 'square', 'wedge']);

/** Behind these stands what lies with it, or on it. */
const BESIDE: ReadonlySet<string> = new Set(['with', 'in', 'on', 'for', 'from', 'over', 'without', 'under', ...MADE]);

const ROWS = once((): ReadonlyMap<string, Row> => {
  const rows = new Map<string, Row>();
  for (const { names, held } of dishRows())
    for (const name of held === undefined ? [] : names) {
      const [kinds, of, not, needs] = held ?? [];
      const row: Row = {
        name,
        kinds: wordsIn(kinds).flatMap((each) => kindNamed(each) ?? []),
        of: wordsIn(of).map(shareOf),
        not: new Set(wordsIn(not).flatMap(wordsOf)),
        needs: wordsIn(needs).filter(isDishNeed),
      };
      // A plural in -ies has two singulars: `brownies`.
      for (const form of [name, `${name}s`]) rows.set(wordsOf(form).join(' '), row);
    }
  return rows;
});

/** `flour+grain 15` */
function shareOf(cell: string): Dish['of'][number] {
  const cut = cell.lastIndexOf(' ');
  const classes = cell.slice(0, cut).split('+') as FoodClass[];
  return { classes: new Set(classes), least: Number(cell.slice(cut + 1)) / 100 };
}
