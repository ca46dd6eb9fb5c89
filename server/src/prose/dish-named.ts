/**
 * Knows the table of dishes, `data/dishes.tsv`, and which of them a name, or words of a sentence, end with: `Lemon polenta cake` is a cake, `the sausage rolls`
 * are no rolls. Refuses to know lists, and what is done.
 */
import dishesText from '../../data/dishes.tsv';
import { once, onceByText } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { sentenceIn } from '../notation/sentence.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';
import { nounForms } from './forms.ts';
import { jointOf, senseOf } from './lexicon.ts';

/** One way to take a word: `muffin` is made with yeast, or with baking powder. */
export interface Dish {
  /** As it is called. */
  readonly name: string;
  /** Of each, one must lie there. */
  readonly needs: readonly (readonly string[])[];
  /** Rows of `data/heat/spans.tsv`. */
  readonly spans: readonly string[];
}

/** A row of the table: cells that `recipe/names/dishes.ts` reads, and what is held of heat. */
interface DishRow {
  readonly names: readonly string[];
  /** `is`, `of`, `not` and `needs`; absent where it says nothing of the list. */
  readonly held?: readonly string[];
  readonly needs: Dish['needs'];
  /** None where it says nothing of heat. */
  readonly spans: Dish['spans'];
}

/** `as bread`: what the row that begins with it says. */
const AS = 'as ';

export const dishRows = once((): readonly DishRow[] => {
  const said = new Map<string, readonly string[]>();
  return rowsIn(dishesText).map(([words, is = '', of = '', not = '', needs = '', lies, heated]): DishRow => {
    const names = wordsIn(words);
    const cells = said.get(is) ?? [is, of, not, needs];
    if (!said.has(is)) said.set(`${AS}${names[0]}`, cells);
    return {
      names,
      ...(cells.some((cell) => cell !== '') && { held: cells }),
      needs: wordsIn(lies).map((each) => each.split('/')),
      spans: wordsIn(heated),
    };
  });
});

const NONE: readonly Dish[] = [];
/** Words of the longest name in the table. */
const MOST_WORDS = 5;

/** By what names are compared by: small letters without accents. */
const BY_NAME = once((): ReadonlyMap<string, readonly Dish[]> => {
  const dishes = new Map<string, Dish[]>();
  for (const { names, needs, spans } of dishRows())
    for (const name of spans.length === 0 ? [] : names) {
      const dish = { name, needs, spans };
      for (const form of nounForms(name)) dishes.set(form, [...(dishes.get(form) ?? []), dish]);
    }
  return dishes;
});

/** What a title or the name of a part calls it; several for `Pavlova and scones`, and where a word is of several. */
export const dishesNamed = onceByText((name: string): readonly Dish[] => dishesIn(sentenceIn(name).items), {
  texts: 2000,
});

/** The same of the words of a sentence that lie within. */
export function dishesIn(items: readonly SentenceItem[], within?: Span): readonly Dish[] {
  const found: Found[] = [];
  let words: string[] = [];
  const end = (): void => {
    const ended = longestAtEnd(words);
    if (ended === undefined) return;
    // `Bread` was only the beginning of `bread and butter pudding`.
    while ((found.at(-1)?.from ?? -1) >= ended.from) found.pop();
    found.push(ended);
  };
  for (const item of items) {
    if (within !== undefined && (item.start < within.start || item.end > within.end)) continue;
    const isWord = item.kind === 'word';
    if (!isWord || ends(item.word)) end();
    if (isWord) words.push(...comparable(item.word));
    else words = words.map(() => '');
  }
  end();
  return found.length === 0 ? NONE : found.flatMap(({ dishes }) => dishes);
}

interface Found {
  readonly dishes: readonly Dish[];
  /** The first of its words. */
  readonly from: number;
}

/** `Lasagne al forno`, `sole à la meunière`: behind these of other languages stands how a dish is made. */
export const MADE: ReadonlySet<string> = new Set(['al', 'alla', 'all', 'à', 'au', 'aux', 'en', 'con', 'mit']);

/** `Cake with`, `scones and`; `leg of lamb` is one name. */
function ends(word: string): boolean {
  if (MADE.has(word)) return true;
  const joint = jointOf(senseOf(word));
  return joint?.is === 'conjunction' || joint?.is === 'or' || (joint?.is === 'preposition' && joint.way !== 'of');
}

/** `Shortbread fingers` are shortbread, cut after it is baked; a name that has them of its own is found before. */
const CUT: ReadonlySet<string> = new Set(['finger', 'square'].flatMap(nounForms));

function longestAtEnd(words: readonly string[]): Found | undefined {
  const whole = longestOf(words);
  return whole === undefined && CUT.has(words.at(-1) ?? '') ? longestOf(words.slice(0, -1)) : whole;
}

function longestOf(words: readonly string[]): Found | undefined {
  for (let from = Math.max(0, words.length - MOST_WORDS); from < words.length; from++) {
    const dishes = BY_NAME().get(words.slice(from).join(' '));
    if (dishes !== undefined) return { dishes, from };
  }
  return undefined;
}

/** `Vol-au-vents` are three words. */
const comparable = (word: string): readonly string[] => word.normalize('NFD').replace(/\p{M}/gu, '').split('-');
