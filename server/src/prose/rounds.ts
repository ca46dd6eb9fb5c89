/**
 * Knows how many times over a sentence takes an amount that it says once: in each of four jars, to a batch, repeated twice.
 * Refuses to know of what the amount is.
 */
import type { Range } from '../measure/quantity.ts';
import { unitPrinted } from '../measure/unit.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { numberSaid } from './counts.ts';
import { senseOf, thingOf, verbOf } from './lexicon.ts';
import { isHard } from './pieces.ts';
import { topicBits, topicsAt } from './topics.ts';

const EACH = topicBits(['each']);
const TURN = topicBits(['turn']);
const BATCH = topicBits(['batch']);
const SHARE = topicBits(['share']);
const AGAIN = topicBits(['again']);
const DAY = topicBits(['day']);

const ONCE: Range = { low: 1, high: 1 };
/** Of several, nobody says how many. */
const SEVERAL: Range = { low: 2, high: Number.POSITIVE_INFINITY };

type Items = readonly SentenceItem[];
const NONE: readonly Items[] = [];

/**
 * How many times over the amount at `at` is taken; from none at all where it is only said how strong something is. `others`: the other
 * sentences, which may count the jars.
 */
export function roundsOf(items: Items, at: number, others: readonly Items[] = NONE): Range {
  const [from, to] = clauseAt(items, at);
  if (isStrength(items, at, to)) return { low: 0, high: Number.POSITIVE_INFINITY };
  return times(
    eachIn(items, at, from, to, others) ?? daysIn(items, from, to) ?? batchIn(items, at, to, others) ?? ONCE,
    repeatsBehind(items, at, to),
  );
}

const times = (a: Range, b: Range): Range => ({ low: a.low * b.low, high: a.high * b.high });

const bitsAt = (item: SentenceItem | undefined): number => {
  const { one, several } = topicsAt(item);
  return one | several;
};

const isWord = (item: SentenceItem | undefined, words: ReadonlySet<string>): boolean =>
  item?.kind === 'word' && words.has(item.word);

/** Between the marks that end a sentence or a part of it; a comma ends nothing. */
function clauseAt(items: Items, at: number): readonly [number, number] {
  const ends = (item: SentenceItem | undefined): boolean =>
    item === undefined || (item.kind === 'mark' && isHard(item.mark));
  let [from, to] = [at, at];
  while (from > 0 && !ends(items[from - 1])) from--;
  while (to + 1 < items.length && !ends(items[to + 1])) to++;
  return [from, to];
}

const INTO: ReadonlySet<string> = new Set([
  'in',
  'into',
  'to',
  'on',
  'onto',
  'over',
  'for',
  'inside',
  'upon',
  'with',
  'at',
  'down',
]);
const ALL: ReadonlySet<string> = new Set(['all']);
const OF: ReadonlySet<string> = new Set(['of']);
const PER: ReadonlySet<string> = new Set(['per']);
const CENT: ReadonlySet<string> = new Set(['cent']);
const ONE_EACH: ReadonlySet<string> = new Set(['each', 'apiece']);
const ARTICLES: ReadonlySet<string> = new Set(['a', 'the', 'each', 'every']);
const FOR: ReadonlySet<string> = new Set(['for', 'over']);

/** `25 g salt to the litre`, `20 g per kg of meat` */
function isStrength(items: Items, at: number, to: number): boolean {
  for (let i = at + 1; i < Math.min(at + NEAR, to); i++) {
    if (!isWord(items[i], STRONG)) continue;
    const next = items[isWord(items[i + 1], ARTICLES) ? i + 2 : i + 1];
    if (next?.kind === 'measured') return next.quantity.unit !== undefined;
    const unit = next?.kind === 'word' ? unitPrinted(next.word) : undefined;
    return unit?.dimension === 'mass' || unit?.dimension === 'volume';
  }
  return false;
}
const NEAR = 6;
const STRONG: ReadonlySet<string> = new Set(['to', 'per']);

/** `In each of the 4 jars`, `per jar`, `200 ml a glass`, `4 jars, 60 g each`, `75 g each day for four days`. */
function eachIn(items: Items, at: number, from: number, to: number, others: readonly Items[]): Range | undefined {
  const [first, last] = reachOf(items, at, from, to);
  for (let i = first; i <= last; i++) {
    if (
      isWord(items[i], A) &&
      i > at &&
      isPiece(items[i + 1]) &&
      !isWord(items[i - 1], INTO) &&
      endsAt(items, i + 2, to)
    ) {
      const many = countedIn(items, others, [wordOf(items[i + 1])]);
      if (many !== undefined) return many;
    }
    const isAll = isWord(items[i], ALL) && numberAt(items, i + 1) !== undefined;
    if (!isAll && ((bitsAt(items[i]) & EACH) === 0 || isWord(items[i + 1], CENT))) continue;
    // `On each side`, `after each addition`: of when or where, and no amount.
    const nouns = nounsBehind(items, i, to);
    const bits = nouns.reduce((all, noun) => all | bitsAt(noun), 0);
    if ((bits & TURN) !== 0) continue;
    if ((bits & DAY) !== 0) return i > at ? daysBehind(items, i + 1, to) : undefined;
    // `In the middle of every ramekin`
    const isInto = isWord(items[i - 1], INTO) || (isWord(items[i - 1], OF) && isWord(items[i - 4], INTO));
    const isBehind = isWord(items[i], ONE_EACH) && endsAt(items, i + 1, to) && i > at;
    const isCounted = isWord(items[i + 1], OF) && numberBehind(items, i, to) !== undefined;
    // `Every storey 200 g`
    const isHead = !isAll && i < at && at - i <= 2;
    if (!isInto && !isBehind && !isCounted && !isHead && !isWord(items[i], PER)) continue;
    const own = numberBehind(items, i, to) ?? countedIn(items, others, nouns.map(wordOf));
    // `Sprinkle each with 1 tsp of the sugar`
    const isEachWith = isHead && isWord(items[i + 1], WITH);
    return own ?? ((isAll || isHead) && !isEachWith ? undefined : SEVERAL);
  }
  return undefined;
}

const WITH: ReadonlySet<string> = new Set(['with']);
const A: ReadonlySet<string> = new Set(['a', 'an']);
const endsAt = (items: Items, at: number, to: number): boolean => at > to || items[at]?.kind === 'mark';
const wordOf = (item: SentenceItem | undefined): string => (item?.kind === 'word' ? item.word : '');

/** What a batch is divided into, or filled in. */
const isPiece = (item: SentenceItem | undefined): boolean =>
  item?.kind === 'word' && ((bitsAt(item) & SHARE) !== 0 || thingOf(senseOf(item.word))?.sort === 'vessel');

/** How far what is said of each may stand from an amount: up to a comma that another order stands behind. */
function reachOf(items: Items, at: number, from: number, to: number): readonly [number, number] {
  let [first, last] = [at, at];
  while (first > from && !opensOrder(items, first)) first--;
  while (last < to && !opensOrder(items, last + 1)) last++;
  return [first, last];
}

const opensOrder = (items: Items, at: number): boolean => {
  const [before, item] = [items[at - 1], items[at]];
  return before?.kind === 'mark' && item?.kind === 'word' && verbOf(senseOf(item.word)) !== undefined;
};

/** The words of the noun that `each` is of. */
function nounsBehind(items: Items, each: number, to: number): Items {
  const nouns: SentenceItem[] = [];
  for (let i = each + 1; i <= Math.min(each + 5, to) && items[i]?.kind === 'word'; i++) {
    const item = items[i];
    if (item === undefined || isWord(item, ONE) || isWord(item, NOT_COUNTED)) continue;
    if (isWord(item, INTO)) break;
    nouns.push(item);
  }
  return nouns;
}

const NOT_COUNTED: ReadonlySet<string> = new Set(['of', 'the', 'your', 'these', 'those', 'a', 'an']);

/** `Each of the 4 jars`, `every hole of a twelve-hole tin`. */
function numberBehind(items: Items, each: number, to: number): Range | undefined {
  let of = 0;
  // `Every one of three jars`
  for (let i = isWord(items[each + 1], ONE) ? each + 2 : each + 1; i <= to && of < 2; i++) {
    const number = numberAt(items, i);
    if (number !== undefined) return number;
    if (items[i]?.kind !== 'word') return undefined;
    if (!isWord(items[i], NOT_COUNTED) && !isWord(items[i + 1], NOT_COUNTED)) return undefined;
    if (!isWord(items[i], NOT_COUNTED)) of++;
  }
  return undefined;
}

/** The nouns that a number may count: its own, or one of the next words. */
function countedAt(items: Items, at: number): Items {
  const item = items[at];
  if (item?.kind === 'measured' && item.counted !== undefined)
    return [{ kind: 'word', start: 0, end: 0, word: item.counted.text.toLowerCase() }];
  const words: SentenceItem[] = [];
  for (let i = at + 1; i <= at + 3 && items[i]?.kind === 'word'; i++) words.push(items[i] as SentenceItem);
  return words;
}

/** How many of a noun its own sentence counts, or else another; more than one. Of what pieces there are, where there is no noun. */
function countedIn(own: Items, others: readonly Items[], nouns: readonly string[]): Range | undefined {
  const known = countedHere(own, nouns);
  if (known !== undefined) return known;
  for (const items of others) {
    const number = countedHere(items, nouns);
    if (number !== undefined) return number;
  }
  return undefined;
}

function countedHere(items: Items, nouns: readonly string[]): Range | undefined {
  for (let i = 0; i < items.length; i++) {
    const number = numberAt(items, i);
    if (number === undefined || number.low <= 1) continue;
    const isIt = countedAt(items, i).some((each) =>
      nouns.length === 0 ? isPiece(each) : nouns.some((noun) => stem(noun) === stem(wordOf(each))),
    );
    if (isIt) return number;
  }
  return undefined;
}

const stem = (word: string): string => word.replace(/(?:es|s)$/, '');

/** A whole number of things, `twelve-hole` too. */
function numberAt(items: Items, at: number): Range | undefined {
  const item = items[at];
  if (item?.kind === 'measured') {
    const { quantity } = item;
    return quantity.unit === undefined && Number.isInteger(quantity.low) && Number.isInteger(quantity.high)
      ? { low: quantity.low, high: quantity.high }
      : undefined;
  }
  if (item?.kind !== 'word') return undefined;
  const value = numberSaid(item) ?? numberSaid({ ...item, word: item.word.split('-')[0] ?? '' });
  return value === undefined ? undefined : { low: value, high: value };
}

/** `In two batches, 800 ml to a batch`; of a batch nobody says how many, and of a bowl that nobody counts there is one. */
function batchIn(items: Items, at: number, to: number, others: readonly Items[]): Range | undefined {
  for (let i = at + 1; i + 2 <= to; i++) {
    const noun = items[i + 2];
    if (!isWord(items[i], INTO) || !isWord(items[i + 1], ARTICLES)) continue;
    if (((bitsAt(noun) & BATCH) === 0 && !isPiece(noun)) || wordOf(noun).endsWith('s')) continue;
    return countedIn(items, others, [wordOf(noun)]);
  }
  return undefined;
}

/** `On five mornings running` */
function daysIn(items: Items, from: number, to: number): Range | undefined {
  for (let i = from; i + 2 <= to; i++) {
    const number = isWord(items[i], ON) ? numberAt(items, i + 1) : undefined;
    if (number !== undefined && countedAt(items, i + 1).some((noun) => (bitsAt(noun) & DAY) !== 0)) return number;
  }
  return undefined;
}
const ON: ReadonlySet<string> = new Set(['on']);

/** `Each day for four days` */
function daysBehind(items: Items, from: number, to: number): Range {
  for (let i = from; i + 1 <= to; i++) {
    const next = items[i + 1];
    if (!isWord(items[i], FOR)) continue;
    if (next?.kind === 'duration')
      return next.unitMin === DAY_MIN ? { low: next.lowMin / DAY_MIN, high: next.highMin / DAY_MIN } : SEVERAL;
    const number = numberAt(items, i + 1);
    if (number !== undefined) return number;
  }
  return SEVERAL;
}

const DAY_MIN = 1440;

const ONE: ReadonlySet<string> = new Set(['one']);

const TWICE: ReadonlyMap<string, number> = new Map([
  ['once', 1],
  ['twice', 2],
  ['thrice', 3],
]);
const TIMES: ReadonlySet<string> = new Set(['times', 'time']);

/** `Repeat twice` is three times in all; it repeats the clause it stands in, or, with an amount of its own in none, the sentence before. */
function repeatsBehind(items: Items, at: number, to: number): Range {
  let marks = 0;
  for (let i = at + 1; i < items.length; i++) {
    const item = items[i];
    if (item?.kind === 'mark' && isHard(item.mark)) marks++;
    // What follows says amounts of its own.
    if (marks > 1) break;
    if (i <= to + 1 && item?.kind !== 'word') continue;
    const isAgain = (bitsAt(item) & AGAIN) !== 0 || (isWord(item, DO) && isWord(items[i + 1], THIS));
    if (!isAgain) continue;
    const more = countBehind(items, i);
    return more === undefined ? ONCE : { low: more + 1, high: more + 1 };
  }
  return ONCE;
}

const DO: ReadonlySet<string> = new Set(['do']);
const THIS: ReadonlySet<string> = new Set(['this', 'so', 'it', 'that', 'the']);

/** How often, behind `repeat`: `twice`, `thirteen times more`. */
function countBehind(items: Items, repeat: number): number | undefined {
  for (let i = repeat + 1; i <= repeat + 4; i++) {
    const item = items[i];
    if (item?.kind === 'mark') return undefined;
    if (item?.kind === 'word' && TWICE.has(item.word)) return TWICE.get(item.word);
    const number = numberAt(items, i);
    if (number !== undefined && isWord(items[i + 1], TIMES)) return number.low;
    if (item?.kind === 'measured' && item.counted !== undefined) return item.quantity.low;
  }
  return undefined;
}
