/**
 * Knows what a text says of pieces and vessels: so many of such a weight or volume (`six 120 ml ramekins`, `25 g balls, about 30`), and how
 * much comes of it (`makes two dozen`). Refuses to know how much there is.
 */
import type { Range } from '../measure/quantity.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import { onceFor } from '../notation/kept.ts';
import type { Span } from '../notation/tree.ts';
import { divisionsIn, saysEach } from './counts.ts';
import { senseOf, thingOf } from './lexicon.ts';
import {
  type Amount,
  amountAt,
  type Figure,
  type Items,
  isFilled,
  markAt,
  numberAt,
  saidAt,
  sentencesIn,
  wordAt,
} from './printed-words.ts';
import { topicBits, topicsAt } from './topics.ts';

export { isPortion } from './printed-words.ts';

/** So many, each of so much. */
export interface EachSaid extends Span {
  readonly count: Range;
  readonly each: Range & { readonly unit: UnitSymbol };
  /** Where the number stands; absent of `a 2 l jar`. */
  readonly numeral?: Span;
  /** What is filled, and what is made. */
  readonly sort: 'vessel' | 'piece';
  /** It says that they are full: `fills four`. */
  readonly fills: boolean;
  readonly noun: string;
}

/** How much comes of it: so many of a noun, or an amount. */
export interface MakesSaid extends Span, Range {
  readonly unit?: UnitSymbol;
  readonly noun: string;
}

const SHARE = topicBits(['share']);
/** A name of what is made or filled stands so many words behind its amount or its number at the most. */
const NEAR = 3;

export const eachSaidIn = onceFor((items: Items): readonly EachSaid[] => {
  const found: EachSaid[] = [];
  for (let at = 0; at < items.length; ) {
    const amount = amountAt(items, at);
    const said = amount === undefined ? countedAt(items, at) : eachAt(items, amount);
    if (said !== undefined) found.push(said);
    at = amount?.to ?? at + 1;
  }
  return found;
});

/** Before the amount of one. */
const LEADS: ReadonlySet<string> = new Set(['of', 'from', 'at', 'about', 'weighing']);

interface Noun {
  readonly at: number;
  readonly sort: EachSaid['sort'];
}

/** `12 pieces of 74 g`: the count word takes its weight with it. */
function countedAt(items: Items, at: number): EachSaid | undefined {
  const item = items[at];
  if (item?.kind !== 'measured' || item.each === undefined || SOLD.has(item.counted?.text.toLowerCase() ?? ''))
    return undefined;
  const unit = item.each.unit?.symbol;
  const noun = item.counted?.text.toLowerCase() ?? '';
  if (unit === undefined) return undefined;
  const { start, end, quantity, each } = item;
  return {
    start,
    end,
    count: { low: quantity.low, high: quantity.high },
    each: { low: each.quantity.low, high: each.quantity.high, unit },
    numeral: { start: item.low.start, end: (item.high ?? item.low).end },
    sort: isFilled(noun) ? 'vessel' : 'piece',
    fills: opensFull(items, at),
    noun,
  };
}

function eachAt(items: Items, amount: Amount): EachSaid | undefined {
  const noun = nounBehind(items, amount.to);
  if (noun !== undefined) {
    const before = countBefore(items, amount.from);
    if (before !== undefined) return said(items, before, amount, noun);
    if (noun.sort === 'vessel') {
      return isOne(items, amount.from) ? said(items, oneAt(amount), amount, noun, true) : undefined;
    }
    const behind = countBehind(items, noun.at + 1);
    if (behind !== undefined) return said(items, behind, amount, noun);
  }
  const of = ofBefore(items, amount.from);
  if (of !== undefined) return said(items, of.count, amount, of.noun);
  // `A wide pan of 5 l`
  const held = amount.from - 2;
  if (wordAt(items, held + 1) === 'of' && sortAt(items, held) === 'vessel' && isOne(items, held))
    return said(items, oneAt(amount), amount, { at: held, sort: 'vessel' }, true);
  // `Makes 8, from 60 ml batter each`
  if (!saysEach(items, amount.from)) return undefined;
  for (let at = amount.from - 1; at >= 0 && at > amount.from - NEAR - 2; at--) {
    const count = numberAt(items, at);
    if (count !== undefined)
      return count.to <= amount.from ? said(items, count, amount, { at: count.to, sort: 'piece' }) : undefined;
    if (markAt(items, at) !== ',' && !LEADS.has(wordAt(items, at))) return undefined;
  }
  return undefined;
}

const oneAt = ({ from, to }: Amount): Figure => ({ low: 1, high: 1, from, to });

/** `A`, with two words behind it at the most: `a heavy 4 l pot`. */
function isOne(items: Items, to: number): boolean {
  const from = [to - 1, to - 2, to - 3].find((at) => wordAt(items, at) === 'a' || wordAt(items, at) === 'an');
  return from !== undefined && items.slice(from, to).every(({ kind }) => kind === 'word');
}

function said(items: Items, count: Figure, amount: Amount, noun: Noun, isOne = false): EachSaid | undefined {
  const ends = [count.from, count.to - 1, amount.from, amount.to - 1, noun.at].flatMap((at) => items[at] ?? []);
  if (ends.length === 0 || count.low <= 0 || amount.low <= 0) return undefined;
  const { low, high, unit } = amount;
  const [first, last] = [items[count.from], items[count.to - 1]];
  return {
    start: Math.min(...ends.map(({ start }) => start)),
    end: Math.max(...ends.map(({ end }) => end)),
    count: { low: count.low, high: count.high },
    each: { low, high, unit },
    ...(!isOne && first && last && { numeral: { start: first.start, end: last.end } }),
    sort: noun.sort,
    fills: opensFull(items, count.from),
    noun: wordAt(items, noun.at),
  };
}

/** `Fills four`, `makes about six` */
function opensFull(items: Items, at: number): boolean {
  const said = saidAt(items, wordAt(items, at - 1) === 'about' ? at - 2 : at - 1);
  return said === 'fills' || said === 'makes';
}

/** `-`, then the noun behind two words at the most. */
export function nounBehind(items: Items, from: number): Noun | undefined {
  let at = markAt(items, from) === '-' ? from + 1 : from;
  for (const last = at + NEAR; at < last && items[at]?.kind === 'word'; at++) {
    const sort = sortAt(items, at);
    if (sort !== undefined) return { at, sort };
    if (JOINS.has(wordAt(items, at)) || saidAt(items, at) === 'sold') return undefined;
  }
  return undefined;
}
const JOINS: ReadonlySet<string> = new Set([
  'of',
  'and',
  'or',
  'in',
  'into',
  'to',
  'with',
  'each',
  'for',
  'from',
  'per',
]);

function sortAt(items: Items, at: number): EachSaid['sort'] | undefined {
  if (saidAt(items, at) === 'filled' || isVessel(wordAt(items, at))) return 'vessel';
  if (isVessel(`${wordAt(items, at)} ${wordAt(items, at + 1)}`)) return 'vessel';
  const { one, several } = topicsAt(items[at]);
  return ((one | several) & SHARE) === 0 ? undefined : 'piece';
}

/** What holds food: no tin, which is sold full. */
function isVessel(words: string): boolean {
  const thing = thingOf(senseOf(words.toLowerCase()));
  return thing?.sort === 'vessel' && (thing.is === 'open' || thing.is === 'lidded');
}

/** `Six hot`, `12 ×`: a number before the amount, with two words between at the most. */
function countBefore(items: Items, to: number): Figure | undefined {
  for (let at = to - 1; at >= 0 && at >= to - NEAR; at--) {
    const number = numberAt(items, at);
    if (number !== undefined) {
      // `Two dozen` is read from its first word.
      const longer = at > 0 ? numberAt(items, at - 1) : undefined;
      const whole = longer !== undefined && longer.to > at && longer.to <= to ? longer : number;
      return whole.to <= to && amountAt(items, whole.from) === undefined ? whole : undefined;
    }
    const mark = markAt(items, at);
    if (mark !== '' ? mark !== '×' : JOINS.has(wordAt(items, at)) || items[at]?.kind !== 'word') return undefined;
  }
  return undefined;
}

/** `Balls, about 30 of them`, `balls (about 30)` */
function countBehind(items: Items, from: number): Figure | undefined {
  const mark = markAt(items, from);
  if (mark !== ',' && mark !== '(' && mark !== '–' && mark !== '-') return undefined;
  for (let at = from + 1; at <= from + NEAR; at++) {
    const number = numberAt(items, at);
    if (number !== undefined)
      return amountAt(items, at) === undefined &&
        (items[number.to]?.kind !== 'word' ||
          PLURAL.test(wordAt(items, number.to)) ||
          wordAt(items, number.to) === 'of' ||
          wordAt(items, number.to) === 'in')
        ? number
        : undefined;
    if (items[at]?.kind !== 'word') return undefined;
  }
  return undefined;
}
export const PLURAL = /[^s]s$/;

/** `20 balls of about 35 g`, `4 burgers at 150 g` */
function ofBefore(items: Items, from: number): { readonly count: Figure; readonly noun: Noun } | undefined {
  const at = from - (wordAt(items, from - 1) === 'about' ? 2 : 1);
  if (!OF.has(wordAt(items, at))) return undefined;
  const counted = numberAt(items, at - 1);
  const item = items[at - 1];
  // `12 balls`: the number has its count word.
  if (counted !== undefined)
    return item?.kind === 'measured' && item.counted !== undefined && SOLD.has(item.counted.text.toLowerCase())
      ? undefined
      : { count: counted, noun: { at: at - 1, sort: 'piece' } };
  const sort = sortAt(items, at - 1);
  const count = numberBehindWords(items, at - 1);
  if (count === undefined || saidAt(items, at - 1) === 'sold') return undefined;
  return sort === undefined && !PLURAL.test(wordAt(items, at - 1))
    ? undefined
    : { count, noun: { at: at - 1, sort: sort ?? 'piece' } };
}
const OF: ReadonlySet<string> = new Set(['of', 'at', 'weighing', 'holding']);
const SOLD: ReadonlySet<string> = new Set([
  'tin',
  'tins',
  'can',
  'cans',
  'pack',
  'packs',
  'packet',
  'packets',
  'bag',
  'bags',
]);

/** The number of the noun at `at`: right before it, or one word further. */
function numberBehindWords(items: Items, at: number): Figure | undefined {
  for (const before of [at - 1, at - 2]) {
    const number = numberAt(items, before);
    const longer = numberAt(items, before - 1);
    if (longer !== undefined && longer.to === before + 1) return longer;
    if (number !== undefined) return number;
  }
  return undefined;
}

/** `Makes 20 meatballs`, `yields about 2.5 litres`, `makes two dozen` */
export function makesIn(items: Items): readonly MakesSaid[] {
  return sentencesIn(items).flatMap(([from, to]) => {
    for (let at = from; at < Math.min(from + 2, to); at++) {
      if (saidAt(items, at) !== 'makes') continue;
      const next = wordAt(items, at + 1) === 'about' ? at + 2 : at + 1;
      const amount = amountAt(items, next);
      const number = amount ?? numberAt(items, next);
      const [first, last] = [items[at], items[(number?.to ?? 0) - 1]];
      if (number === undefined || first === undefined || last === undefined || saysEach(items, next)) return [];
      const { low, high } = number;
      // `Makes six 450 g jars` says the weight of each.
      if (amount === undefined && items[number.to]?.kind === 'measured') return [];
      const behind = nounOf(items, number);
      const noun = amount === undefined && !OF.has(behind) ? behind : '';
      const said = { start: first.start, end: last.end, low, high, ...(amount && { unit: amount.unit }), noun };
      return [said, ...orAt(items, number.to, to)];
    }
    return [];
  });
}

/** `Makes 1 litre, or 10 scoops` */
function orAt(items: Items, from: number, to: number): readonly MakesSaid[] {
  for (let at = from; at < to; at++) {
    if (wordAt(items, at) !== 'or') continue;
    const number = numberAt(items, at + 1);
    const [first, last] = [items[at], items[(number?.to ?? 0) - 1]];
    const noun = number === undefined ? '' : nounOf(items, number);
    return number && first && last && PLURAL.test(noun)
      ? [{ start: first.start, end: last.end, low: number.low, high: number.high, noun }]
      : [];
  }
  return [];
}

/** So many pieces that a step divides all of it into: `cut into 16 bars`. */
export const dividedIn = (items: Items): readonly MakesSaid[] =>
  divisionsIn(items).flatMap(({ number }) => {
    const count = numberAt(items, number);
    const item = items[number];
    if (count === undefined || item === undefined) return [];
    return [{ start: item.start, end: item.end, low: count.low, high: count.high, noun: nounOf(items, count) }];
  });

/** What is counted: by a word that the number has with it, or by the one behind it. */
function nounOf(items: Items, { from, to }: Figure): string {
  const item = items[from];
  const counted = item?.kind === 'measured' ? item.counted?.text : undefined;
  return counted?.toLowerCase() ?? wordAt(items, to);
}
