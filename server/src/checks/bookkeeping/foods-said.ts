/**
 * Knows which foods a step names that none of its mentions is, how each is brought in, and by which verb.
 * Refuses to know whether one is missing from a list.
 */
import type { FoodBook } from '../../food/book.ts';
import type { Food } from '../../food/food.ts';
import { keyOf } from '../../food/names.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import { OBJECTS, VERBS_OF_FOOD } from '../../recipe/mentions.ts';
import { portionBefore } from '../../recipe/portions.ts';
import type { Step } from '../../recipe/recipe.ts';
import { baseForm, orderedVerb, takesFood } from '../../recipe/verbs.ts';
import { ADJECTIVES, FUNCTION_WORDS, wordsOf } from '../../recipe/words.ts';
import { onceFor, onceWith } from '../once.ts';

export interface FoodSaid {
  /** What the words may be: one food, or several that share the name. */
  readonly foods: readonly Food[];
  /** As they are compared. */
  readonly words: readonly string[];
  readonly start: number;
  readonly end: number;
  /** `the honey`, which may be what a step has made; not `honey`, `some honey`. */
  readonly definite: boolean;
  /** The order that takes it, in its base form; undefined where nothing takes it in. */
  readonly verb: string | undefined;
  /** The word that `,` or `and` joins it to. */
  readonly beside: string;
}

/** The foods a step names, from left to right; the same for as long as the step is. */
export const foodsSaid = onceWith(foodsIn);

function foodsIn({ sentence: { items }, mentions }: Step, book: FoodBook): readonly FoodSaid[] {
  const mentioned = new Set<number>();
  /** Words that name something of the list, and may be the end of another name: `baking powder`, where cocoa powder is listed. */
  const shared = new Set<number>();
  /** The salt of `the flour, salt and sugar` is no order. */
  const named = new Set<number>();
  for (const { from, to, forced, verb } of mentions) {
    for (let i = from; i <= to; i++) {
      mentioned.add(i);
      if (!verb) named.add(i);
    }
    if (from === to && !forced) shared.add(from);
  }
  const heads = vocabulary(book);
  const found: FoodSaid[] = [];
  for (let at = 0; at < items.length; at++) {
    const isShared = shared.has(at);
    if ((mentioned.has(at) && !isShared) || !heads.has(wordAt(items, at)) || !endsThere(items, at)) continue;
    const run = runEndingAt(items, at, mentioned, book);
    // `Sugar syrup` is made of the sugar that is listed.
    if (run === undefined || (isShared && run.from === at) || mentioned.has(run.from - 1)) continue;
    if (isOrderHere(items, at, run)) continue;
    const { from, definite } = introduced(items, run.from) ?? {};
    if (from === undefined || definite === undefined) continue;
    const [first, head] = [items[run.from], items[at]];
    if (first === undefined || head === undefined) continue;
    const before = endIndexBefore(items, from);
    // `Lemon` was only the beginning of `lemon juice`.
    if (first.start === found.at(-1)?.start) found.pop();
    const last = found.at(-1);
    // What is told off in one breath is taken by one verb.
    const together = before !== undefined && last !== undefined && items[before]?.end === last.end;
    const verb = together ? last.verb : verbTaking(items, from, named);
    found.push({
      foods: run.foods,
      words: run.words,
      start: first.start,
      end: head.end,
      definite,
      verb,
      beside: wordAt(items, before ?? -1),
    });
  }
  return found;
}

interface NounRun {
  readonly foods: readonly Food[];
  readonly words: readonly string[];
  readonly from: number;
}

/** The longest run of words, four at most, that names a food and ends with one of them; without what adds nothing: `a little milk`. */
function runEndingAt(
  items: readonly SentenceItem[],
  at: number,
  mentioned: ReadonlySet<number>,
  book: FoodBook,
): NounRun | undefined {
  let best: NounRun | undefined;
  const words: string[] = [];
  for (let from = at; from >= 0 && from > at - 4; from--) {
    const word = wordAt(items, from);
    if (word === '' || FUNCTION_WORDS.has(word) || (mentioned.has(from) && from < at)) break;
    words.unshift(word);
    const match = book.findInText(words.join(' '));
    const foods = match.kind === 'food' ? [match.food] : match.kind === 'ambiguous' ? match.foods : [];
    if (foods.length === 0 || (isModifier(word) && isSame(foods, best?.foods))) continue;
    best = { foods, words: words.flatMap((w) => wordsOf(w)), from };
  }
  return best;
}

const isSame = (a: readonly Food[], b: readonly Food[] = []): boolean =>
  a.length === b.length && a.every((food, i) => food === b[i]);

/** Where what stands before a name begins, and whether it is spoken of as known; undefined where it is part of a longer name, or only compared with. */
function introduced(
  items: readonly SentenceItem[],
  run: number,
): { readonly from: number; readonly definite: boolean } | undefined {
  let start = run;
  // `The well beaten egg`, `a few chopped walnuts`: how it is prepared stands before its name.
  while (start > 0 && run - start < 4 && isModifier(wordAt(items, start - 1))) start--;
  const definite = DEFINITE.has(wordAt(items, start - 1));
  const { portion, from } = portionBefore(items, start);
  if (portion.kind === 'amount' && items[from]?.kind === 'measured') return undefined;
  if (portion.kind === 'plain') {
    const before = items[start - 1];
    if (isResult(items, isArticle(wordAt(items, start - 1)) ? start - 2 : start - 1)) return undefined;
    const open =
      definite ||
      before === undefined ||
      before.kind !== 'word' ||
      ['a', 'an', 'some'].includes(before.word) ||
      (before.word !== 'of' &&
        !EACH.has(before.word) &&
        (FUNCTION_WORDS.has(before.word) || orderedVerb(before.word) !== undefined)) ||
      JOINING.has(before.word);
    return open ? { from: definite || isArticle(wordAt(items, start - 1)) ? start - 1 : start, definite } : undefined;
  }
  return { from: isArticle(wordAt(items, from - 1)) ? from - 1 : from, definite };
}

/** `Boil to a thick syrup`, `blitz into crumbs`: what it becomes. */
const isResult = (items: readonly SentenceItem[], at: number): boolean => ['to', 'into'].includes(wordAt(items, at));

const EACH: ReadonlySet<string> = new Set(['each', 'every']);
const isArticle = (word: string): boolean => word === 'a' || word === 'an';
const DEFINITE: ReadonlySet<string> = new Set(['the', 'this', 'these', 'that', 'those', 'your', 'its']);
/** Words between an order and what it takes that are no verb and no preposition: `whisk together flour and sugar`. */
const JOINING: ReadonlySet<string> = new Set(['together', 'then', 'also', 'well', 'again', 'more', 'in']);

const isModifier = (word: string): boolean =>
  word !== '' &&
  !FUNCTION_WORDS.has(word) &&
  orderedVerb(word) === undefined &&
  (ADJECTIVES.has(word) ||
    /(?:ly|ed)$/.test(word) ||
    ['well', 'beaten', 'frozen', 'little', 'few', 'some', 'more', 'extra'].includes(word));

/** Whether the noun ends with the word: no further noun such as in `egg wash` follows. */
function endsThere(items: readonly SentenceItem[], at: number): boolean {
  const next = items[at + 1];
  // `The zest of the lemons` is of what is listed.
  if (wordAt(items, at + 1) === 'of') return false;
  return (
    next?.kind !== 'word' ||
    FUNCTION_WORDS.has(next.word) ||
    isDone(next.word) ||
    AFTER.has(next.word) ||
    next.word.endsWith('ly')
  );
}

/** `The butter melted in the milk`; in `a garlic press` the verb is a noun. */
const isDone = (word: string): boolean => baseForm(word) !== word && !word.endsWith('s');

const AFTER: ReadonlySet<string> = new Set([
  'together',
  'well',
  'again',
  'there',
  'all',
  'bit',
  'little',
  'one',
  'last',
]);

/** `Butter the tin`, `grease and flour it`, `wrap and chill`: the name is an order. */
function isOrderHere(items: readonly SentenceItem[], at: number, { from }: NounRun): boolean {
  const word = wordAt(items, at);
  if (from !== at || orderedVerb(word) === undefined) return false;
  const [before, next] = [wordAt(items, at - 1), wordAt(items, at + 1)];
  if (isArticle(before) || DEFINITE.has(before)) return false;
  // `Butter and flour the tin` opens with orders; `milk, butter and salt` is a list.
  const opens = at === 0 || (items[at - 1]?.kind === 'mark' && !isComma(items[at - 1]));
  return !VERBS_OF_FOOD.has(word) || (OBJECTS.has(next) && (next !== 'and' || opens)) || before === 'to';
}

/** The item that `,` or `and` joins what begins at `from` to. */
function endIndexBefore(items: readonly SentenceItem[], from: number): number | undefined {
  const isAnd = wordAt(items, from - 1) === 'and';
  if (!isAnd && !isComma(items[from - 1])) return undefined;
  return isAnd && isComma(items[from - 2]) ? from - 3 : from - 2;
}

const isComma = (item: SentenceItem | undefined): boolean => item?.kind === 'mark' && item.mark === ',';

/** The order that takes what stands from an item on; nothing where the words between compare, exclude or say until when. */
function verbTaking(items: readonly SentenceItem[], from: number, named: ReadonlySet<number>): string | undefined {
  for (let i = from - 1; i >= 0; i--) {
    if (named.has(i)) continue;
    const item = items[i];
    if (item?.kind === 'mark' && /[.;:!?(]/.test(item.mark)) return undefined;
    const word = wordAt(items, i);
    if (NOT_TAKEN.has(word)) return undefined;
    const verb = orderedVerb(word) ?? doneWith(items, i);
    const before = wordAt(items, i - 1);
    // `The roll`, `a squeeze of`: nouns.
    if (verb === undefined || DEFINITE.has(before) || isArticle(before) || wordAt(items, i + 1) === 'of') continue;
    // `While you fry the fish`, `a pan to fry it in`: no order.
    if (SUBJECTS.has(before)) return undefined;
    return takesFood(verb) ? verb : undefined;
  }
  return undefined;
}

/** `A tin well rubbed with dripping`: what was done with it. */
function doneWith(items: readonly SentenceItem[], at: number): string | undefined {
  const word = wordAt(items, at);
  return isDone(word) && wordAt(items, at + 1) === 'with' ? baseForm(word) : undefined;
}

const SUBJECTS: ReadonlySet<string> = new Set(['you', 'they', 'it', 'we', 'to', 'that', 'which', 'can', 'will', 'may']);

/** What follows these is only spoken of. */
const NOT_TAKEN: ReadonlySet<string> = new Set([
  'until',
  'till',
  'like',
  'as',
  'when',
  'if',
  'while',
  'because',
  'so',
  'for',
  'from',
  'without',
  'than',
  'instead',
  'or',
  'not',
  'no',
  'never',
  'resemble',
  'resembles',
  'is',
  'are',
]);

/** Whether a food's name ends with the word, so that the book is asked only where it may know. */
const vocabulary = onceFor((book: FoodBook): { readonly has: (word: string) => boolean } => {
  const heads = new Set(book.endings().map(lastKey));
  const known = new Map<string, boolean>();
  return {
    has(word) {
      let is = known.get(word);
      if (is === undefined) {
        is = word !== '' && heads.has(lastKey(word));
        if (known.size < MOST_KNOWN) known.set(word, is);
      }
      return is;
    },
  };
});

const MOST_KNOWN = 20_000;

const lastKey = (words: string): string => keyOf(words).split(' ').at(-1) ?? '';

function wordAt(items: readonly SentenceItem[], i: number): string {
  const item = items[i];
  return item?.kind === 'word' ? item.word : '';
}
