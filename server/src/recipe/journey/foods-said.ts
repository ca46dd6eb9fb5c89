/**
 * Knows which foods a step names that none of its mentions is, how each is brought in, and by which verb.
 * Refuses to know whether one is missing from a list.
 */
import type { FoodBook } from '../../food/book.ts';
import type { Food } from '../../food/food.ts';
import { lastKeyOf } from '../../food/name-index.ts';
import { keptOn } from '../../notation/kept.ts';
import type { SentenceItem, Span, WordNode } from '../../notation/tree.ts';
import type { Act, Event } from '../../prose/event.ts';
import { formOf, senseOf, verbOf } from '../../prose/lexicon.ts';
import type { VerbRow } from '../../prose/rows.ts';
import type { Step } from '../model.ts';
import { OBJECTS, VERBS_OF_FOOD } from '../names/names-as-verbs.ts';
import { opensClause, portionBefore } from '../names/portions.ts';
import { ADJECTIVES, FUNCTION_WORDS, wordsOf } from '../words.ts';
import { type BoundEvent, boundEvents } from './bind.ts';

export interface FoodSaid {
  /** What the words may be: one food, or several that share the name. */
  readonly foods: readonly Food[];
  /** As they are compared. */
  readonly words: readonly string[];
  readonly start: number;
  readonly end: number;
  /** `the honey`, which may be what a step has made; not `honey`, `some honey`. */
  readonly definite: boolean;
  /** What is done that takes it; undefined where nothing takes it in. */
  readonly taken: Event | undefined;
  /** `,` or `and` joins it to salt. */
  readonly besideSalt: boolean;
  /** `A splash of wine`: nobody says how much. */
  readonly vague: boolean;
  /** Told off in one breath with what is listed: `whisk the flour, salt and yeast`. */
  readonly among: boolean;
}

/** The foods a step names, from left to right; the same for as long as the step is. */
export function foodsSaid(step: Step, book: FoodBook): readonly FoodSaid[] {
  const kept = SAID.get(step);
  if (kept?.book === book) return kept.foods;
  const foods = foodsIn(step, book);
  SAID.set(step, { book, foods });
  return foods;
}

const SAID = keptOn<Step, { readonly book: FoodBook; readonly foods: readonly FoodSaid[] }>();

function foodsIn(step: Step, book: FoodBook): readonly FoodSaid[] {
  const { items } = step.sentence;
  const { mentions } = step;
  const events = boundEvents(step);
  const mentioned = new Set<number>();
  /** Words that name something of the list, and may be the end of another name: `baking powder`, where cocoa powder is listed. */
  const shared = new Set<number>();
  for (const { from, to, forced } of mentions) {
    for (let i = from; i <= to; i++) mentioned.add(i);
    if (from === to && !forced) shared.add(from);
  }
  const heads = vocabulary(book);
  const found: (Omit<FoodSaid, 'among'> & { readonly from: number; readonly at: number; among: boolean })[] = [];
  for (let at = 0; at < items.length; at++) {
    const isShared = shared.has(at);
    if ((mentioned.has(at) && !isShared) || !heads.has(wordAt(items, at)) || !endsThere(items, at)) continue;
    const run = runEndingAt(items, at, mentioned, book);
    // `Sugar syrup` is made of the sugar that is listed.
    if (run === undefined || (isShared && run.from === at) || mentioned.has(run.from - 1)) continue;
    if (isOrderHere(items, at, run)) continue;
    const { from, definite, isPortion = false, vague = false } = introduced(items, run.from) ?? {};
    if (from === undefined || definite === undefined) continue;
    const [first, head] = [items[run.from], items[at]];
    if (first === undefined || head === undefined) continue;
    const before = endIndexBefore(items, from);
    // `Lemon` was only the beginning of `lemon juice`.
    if (first.start === found.at(-1)?.start) found.pop();
    const last = found.at(-1);
    // What is told off in one breath is taken by one verb.
    const together = before !== undefined && last !== undefined && items[before]?.end === last.end;
    // `Almonds or hazelnuts`: either will do.
    const isOther = wordAt(items, from - 1) === 'or';
    // `Fold in the flour, then the carrots`: the same is done with them. `Then fish out the bones`: that is an order.
    const isNext = wordAt(items, from - 1) === 'then' && (definite || !isOrderWith(items, at));
    // `Trim the bread of its crusts`: they are there with it.
    const taken =
      isOther || wordAt(items, from) === 'its'
        ? undefined
        : together
          ? last.taken
          : takenBy(
              events,
              { start: items[partOf(items, from)]?.start ?? first.start, end: head.end },
              isPortion,
              isNext,
              definite && wordAt(items, from - 1) === 'with',
            );
    found.push({
      foods: run.foods,
      words: run.words,
      start: first.start,
      end: head.end,
      definite,
      taken,
      besideSalt: wordAt(items, before ?? -1) === 'salt',
      vague,
      from,
      at,
      among:
        before !== undefined &&
        !isArticle(wordAt(items, from)) &&
        ((together && last.among) || mentions.some((m) => m.to === before && !m.verb)),
    });
  }
  for (const [i, said] of [...found.entries()].reverse()) {
    const next = isArticle(wordAt(items, said.from)) ? undefined : nextIndex(items, said.at);
    said.among ||=
      next !== undefined &&
      ((found[i + 1]?.from === next && found[i + 1]?.among === true) ||
        mentions.some((m) => m.from === nounFrom(items, next) && !m.verb));
  }
  return found;
}

/** The item behind the `,` or `and` that follows. */
function nextIndex(items: readonly SentenceItem[], at: number): number | undefined {
  const behind = isComma(items[at + 1]) ? at + 2 : at + 1;
  return wordAt(items, behind) === 'and' ? behind + 1 : behind > at + 1 ? behind : undefined;
}

/** Behind its article, and how it is prepared. */
function nounFrom(items: readonly SentenceItem[], at: number): number {
  let from = at;
  while (from < at + 4 && (DEFINITE.has(wordAt(items, from)) || isModifier(wordAt(items, from)))) from++;
  return from;
}

/** Whether the noun stands before it in one of the steps. */
export const isSaidBefore = ({ words, start }: FoodSaid, steps: readonly Step[], { line }: Step): boolean =>
  steps.some((other) =>
    other.sentence.items.some(
      (item) =>
        item.kind === 'word' &&
        (other.line < line || (other.line === line && item.start < start)) &&
        wordsOf(item.word).some((word) => word === words.at(-1)),
    ),
  );

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
    // `Bicarbonate of soda`
    if (word === 'of' && from < at) {
      words.unshift(word);
      continue;
    }
    if (word === '' || FUNCTION_WORDS.has(word) || (from < at && (mentioned.has(from) || opensWithOrder(items, from))))
      break;
    words.unshift(word);
    const text = words.join(' ');
    const match = book.findInText(text);
    const foods = match.kind === 'food' ? [match.food] : match.kind === 'ambiguous' ? match.foods : [];
    // `The thickness of double cream`
    if (words.includes('of') && !book.knows(text)) continue;
    if (foods.length === 0 || (isSame(foods, best?.foods) && (isModifier(word) || !book.knows(text)))) continue;
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
):
  | { readonly from: number; readonly definite: boolean; readonly isPortion?: true; readonly vague?: boolean }
  | undefined {
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
        (FUNCTION_WORDS.has(before.word) || isOrderAt(items, start - 1))) ||
      JOINING.has(before.word);
    return open ? { from: definite || isArticle(wordAt(items, start - 1)) ? start - 1 : start, definite } : undefined;
  }
  const vague = portion.kind === 'some';
  return { from: isArticle(wordAt(items, from - 1)) ? from - 1 : from, definite, isPortion: true, vague };
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
  orderOf(word) === undefined &&
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
function isDone(word: string): boolean {
  const form = formOf(senseOf(word));
  return form === 'past' || form === 'ing';
}

/** `Milk`, of what is milked; `fish out`. */
const isOrderWith = (items: readonly SentenceItem[], at: number): boolean =>
  orderOf(wordAt(items, at)) !== undefined || orderOf(`${wordAt(items, at)} ${wordAt(items, at + 1)}`) !== undefined;

/** What is a thing as often orders where an order stands: `then butter`, not `the bag juices`. */
function isOrderAt(items: readonly SentenceItem[], at: number): boolean {
  const order = orderOf(wordAt(items, at));
  return order !== undefined && (!order.noun || opensClause(items, at) || wordAt(items, at).endsWith('ing'));
}

/** `Snip coriander`, but `baking powder`. */
const opensWithOrder = (items: readonly SentenceItem[], at: number): boolean =>
  opensClause(items, at) && orderOf(wordAt(items, at)) !== undefined && !wordAt(items, at).endsWith('ing');

/** What a word gives as an order, or as what goes on: `stir`, `stirring`; undefined for `stirred` and for what is no verb. */
function orderOf(word: string): VerbRow | undefined {
  const sense = senseOf(word);
  const form = formOf(sense);
  return form === 'base' || form === 'base or past' || form === 'ing' ? verbOf(sense) : undefined;
}

/** Food is taken as their object, or with `in`, `with` and the like: `add`, not `serve` or `discard`. */
const TAKES: ReadonlySet<Act> = new Set([
  'heat',
  'combine',
  'put',
  'cut',
  'mince',
  'steep',
  'return',
  'cover',
  'pack',
  'shape',
  'divide',
]);

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
  const order = orderOf(word);
  if (from !== at || order === undefined) return false;
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

/** Where `tufts of the rosemary` begins: what is taken of it is what the verb takes. */
const partOf = (items: readonly SentenceItem[], from: number): number =>
  wordAt(items, from - 1) === 'of' && items[from - 2]?.kind === 'word' ? from - 2 : from;

/** What takes the words: an event that has them as what it acts on, or as what lies around that. */
function takenBy(
  events: readonly BoundEvent[],
  words: Span,
  isPortion: boolean,
  isNext: boolean,
  isWith: boolean,
): FoodSaid['taken'] {
  // The last of `ham, peas and rice`, or `baking powder`, may be read as another order, which takes nothing: it is one of the list before it.
  const at = events.findIndex(
    ({ event }) =>
      isWithin(words, event.verb) && event.objects.every((slot) => slot.by === 'nothing' || isWithin(words, slot)),
  );
  const taking = (
    at > 0
      ? events[at - 1]
      : events.find(
          ({ event: { objects, medium, vessel } }) =>
            objects.some((slot) => slot.role !== 'from' && isWithin(words, slot)) ||
            isWithin(words, medium) ||
            isWithin(words, vessel),
        )
  )?.event;
  const own =
    taking ??
    (isPortion ? events.find(({ event }) => isBehindVerb(event, words))?.event : undefined) ??
    // `Melt the sugar with the water`
    (isWith ? events.find(({ event: { start, end } }) => start < words.start && words.end <= end)?.event : undefined) ??
    (isNext ? events.findLast(({ event }) => event.end <= words.start && event.objects.length > 0)?.event : undefined);
  return own !== undefined && isTaking(own) ? own : undefined;
}

/** `Stir in two thirds of the stilton, the mustard and the salt`: the verb takes what stands right behind it, before all that is listed. */
const isBehindVerb = ({ verb, objects, act, until, ...event }: Event, words: Span): boolean =>
  verb !== undefined &&
  (act === 'combine' || act === 'put') &&
  words.start >= verb.end &&
  words.end <= event.end &&
  objects.every(({ start, role, by }) => by === 'nothing' || (role === 'what' && start > words.start)) &&
  until.every((sign) => !isWithin(words, sign));

const isWithin = ({ start, end }: Span, slot: Span | undefined): boolean =>
  slot !== undefined && start < slot.end && slot.start < end;

/** Ordered, and not only spoken of: `while you fry the fish`. */
const isTaking = ({ act, craft, as, said }: Event): boolean =>
  TAKES.has(act) && craft !== 'make' && as !== 'told' && said !== 'not';

interface Vocabulary {
  readonly has: (word: string) => boolean;
}

const VOCABULARIES = keptOn<FoodBook, Vocabulary>();

/** Whether a food's name ends with the word, so that the book is asked only where it may know. */
function vocabulary(book: FoodBook): Vocabulary {
  let own = VOCABULARIES.get(book);
  if (own === undefined) {
    own = makeVocabulary(book);
    VOCABULARIES.set(book, own);
  }
  return own;
}

function makeVocabulary(book: FoodBook): Vocabulary {
  const heads = new Set(book.endings());
  const known = new Map<string, boolean>();
  return {
    has(word) {
      let is = known.get(word);
      if (is === undefined) {
        is = word !== '' && heads.has(lastKeyOf(word));
        if (known.size < MOST_KNOWN) known.set(word, is);
      }
      return is;
    },
  };
}

const MOST_KNOWN = 20_000;

/** A food that an amount in a sentence is of. */
export interface FoodRun {
  readonly food: Food;
  readonly words: readonly string[];
  readonly start: number;
  readonly end: number;
  readonly to: number;
  /** `A cup of the broth`: of what is there. */
  readonly definite: boolean;
}

/** The food that an amount at `at` is of: the longest run of words behind it, four at most, that names one and is no mention. */
export function foodBehind(
  items: readonly SentenceItem[],
  at: number,
  { mentions }: Step,
  book: FoodBook,
): FoodRun | undefined {
  let from = at + 1;
  while (from < at + 4 && FILLERS.has(wordAt(items, from))) from++;
  const words: WordNode[] = [];
  for (let i = from; i < items.length && words.length < 4; i++) {
    const item = items[i];
    if (
      item?.kind !== 'word' ||
      FUNCTION_WORDS.has(item.word) ||
      mentions.some((m) => m.start <= item.start && m.end >= item.end)
    )
      break;
    words.push(item);
  }
  for (let n = words.length; n > 0; n--) {
    const run = words.slice(0, n);
    const compared = run.flatMap((w) => wordsOf(w.word));
    const match = book.findInText(run.map((w) => w.word).join(' '));
    const [first] = run;
    const last = run.at(-1);
    // `550 ml of the fish water` is no fish.
    const isOther = n === words.length - 1 && BROTHS.has(words[n]?.word ?? '');
    // `Cream` is one of several, and not on the list whichever it is.
    const food = match.kind === 'food' ? match.food : match.kind === 'ambiguous' ? match.foods[0] : undefined;
    if (food !== undefined && first !== undefined && last !== undefined && !isOther) {
      const definite = DEFINITE.has(wordAt(items, from - 1));
      return { food, words: compared, start: first.start, end: last.end, to: from + n - 1, definite };
    }
  }
  return undefined;
}

/** What something was cooked or soaked in. */
const BROTHS: ReadonlySet<string> = new Set(['water', 'liquor', 'liquid', 'juices', 'stock', 'broth']);

/** `100 ml of the`, `2 tbsp more` */
const FILLERS: ReadonlySet<string> = new Set(['of', 'the', 'more', 'extra']);

function wordAt(items: readonly SentenceItem[], i: number): string {
  const item = items[i];
  return item?.kind === 'word' ? item.word : '';
}

/** Whether the step takes out again what is called by one of the words. */
export const liftsOut = (step: Step, words: readonly string[]): boolean =>
  boundEvents(step).some(
    ({ event: { act, craft, objects } }) =>
      act === 'remove' &&
      // `Drain the beans`, `wash the rice`: what is washed is no weight on a crust.
      craft === undefined &&
      step.sentence.items.some(
        (item) =>
          item.kind === 'word' &&
          wordsOf(item.word).some((word) => words.includes(word)) &&
          objects.some((slot) => slot.start <= item.start && item.end <= slot.end),
      ),
  );
