/**
 * Knows what a text says of how much of one food there is to another: a percentage, a strength to the litre, a ratio, equal weights, half of it.
 * Refuses to know what is listed.
 */
import type { Range } from '../measure/quantity.ts';
import { unitPrinted } from '../measure/unit.ts';
import type { Span } from '../notation/tree.ts';
import { amountAt, type Figure, type Items, markAt, numberAt, saidAt, wordAt } from './printed-words.ts';

/** `percent` of what stands in `of`; of a `brine` by its water or by all, as the writer has it. */
export interface PercentSaid extends Span {
  readonly percent: Range;
  readonly of: 'hydration' | 'brine' | { readonly food: string; readonly below?: string };
}

/** Foods in the proportion of their values; `within`: the first lies in the second. */
export interface RatioSaid extends Span {
  readonly terms: readonly { readonly value: number; readonly words: readonly string[] }[];
  readonly byWeight: boolean;
  readonly within?: true;
}

/** So many items on stands the name of what a percentage is of. */
const NEAR = 4;

export function percentsIn(items: Items): readonly PercentSaid[] {
  const found: PercentSaid[] = [];
  for (let at = 0; at < items.length; at++) {
    const said = percentAt(items, at) ?? perLitreAt(items, at);
    if (said !== undefined) found.push(said);
  }
  return found;
}

function percentAt(items: Items, at: number): PercentSaid | undefined {
  const item = items[at];
  if (item?.kind !== 'measured') return undefined;
  const isSign = item.unit?.symbol === '%';
  if (!isSign && !(item.unit === undefined && wordAt(items, at + 1) === 'per' && wordAt(items, at + 2) === 'cent'))
    return undefined;
  const to = isSign ? at + 1 : at + 3;
  const { low, high } = item.quantity;
  const span = { start: item.start, end: items[to - 1]?.end ?? item.end };
  const near = nearby(items, at, to);
  if (near !== undefined) return { ...span, percent: { low, high }, of: near };
  const isOf = wordAt(items, to) === 'of' || wordAt(items, to) === 'on' || wordAt(items, to) === 'to';
  const food = isOf || wordAt(items, to) === '' ? nounBefore(items, at) : wordAt(items, to);
  if (food === '') return undefined;
  const joint = isOf ? to : to + 1;
  const isBelow = JOINS_BELOW.has(wordAt(items, joint));
  const below = isBelow ? wordAt(items, ARTICLES.has(wordAt(items, joint + 1)) ? joint + 2 : joint + 1) : '';
  return { ...span, percent: { low, high }, of: { food, ...(below !== '' && { below }) } };
}
const JOINS_BELOW: ReadonlySet<string> = new Set(['of', 'on', 'to']);
const ARTICLES: ReadonlySet<string> = new Set(['the', 'its', 'a', 'every', 'each']);

/** `65 % hydration`, `a hydration of 65 %`, `brine is at 5 %`: in the same clause. */
function nearby(items: Items, at: number, to: number): 'hydration' | 'brine' | undefined {
  for (const step of [1, -1] as const)
    for (let i = step > 0 ? to : at - 1, gone = 0; gone < NEAR && items[i]?.kind === 'word'; i += step, gone++) {
      const said = saidAt(items, i);
      if (said === 'hydration' || said === 'brine') return said;
    }
  return undefined;
}

/** `Salt is 4 %`, `salted at 2 %`, `sugar 3 %` */
function nounBefore(items: Items, at: number): string {
  for (let i = at - 1; i >= at - 3; i--) {
    const word = wordAt(items, i);
    if (word === '') return '';
    if (!LINKS.has(word)) return word === 'salted' ? 'salt' : word;
  }
  return '';
}
const LINKS: ReadonlySet<string> = new Set(['is', 'are', 'at', 'to', 'of', 'about', 'in', 'with', 'be']);

/** `35 g of salt to the litre`, `20 g salt per kilo of cabbage` */
function perLitreAt(items: Items, at: number): PercentSaid | undefined {
  const amount = amountAt(items, at);
  if (amount?.unit !== 'g') return undefined;
  const name = wordAt(items, amount.to) === 'of' ? amount.to + 1 : amount.to;
  const food = wordAt(items, name);
  for (let i = name + 1; food !== '' && i <= name + 2; i++) {
    if (!PER.has(wordAt(items, i))) continue;
    const next = ARTICLES.has(wordAt(items, i + 1)) ? i + 2 : i + 1;
    const whole = amountAt(items, next);
    const unit =
      whole === undefined ? unitPrinted(wordAt(items, next))?.symbol : whole.low === 1 ? whole.unit : undefined;
    const item = items[at];
    if ((unit !== 'l' && unit !== 'kg') || item === undefined) return undefined;
    return {
      start: item.start,
      end: items[next]?.end ?? item.end,
      percent: { low: amount.low / 10, high: amount.high / 10 },
      of: { food },
    };
  }
  return undefined;
}
const PER: ReadonlySet<string> = new Set(['per', 'to', 'for']);

export function ratiosIn(items: Items): readonly RatioSaid[] {
  for (let at = 0; at < items.length; at++) {
    const said =
      colonsAt(items, at) ?? partsAt(items, at) ?? equalAt(items, at) ?? asMuchAt(items, at) ?? halfAt(items, at);
    if (said !== undefined) return [said];
  }
  return [];
}

type Term = RatioSaid['terms'][number];

function ratio(items: Items, from: number, to: number, terms: readonly Term[], more = {}): RatioSaid | undefined {
  const [first, last] = [items[from], items[to - 1]];
  if (first === undefined || last === undefined || terms.some(({ value, words }) => words.length === 0 || value <= 0))
    return undefined;
  const byWeight = items.some((_, at) => wordAt(items, at).startsWith('weight'));
  return { start: first.start, end: last.end, terms, byWeight, ...more };
}

/** `3:2:1 flour, butter and sugar`, `two to one, sugar to water` */
function colonsAt(items: Items, at: number): RatioSaid | undefined {
  const values: Figure[] = [];
  let to = at;
  for (let next = numberAt(items, at); next !== undefined; next = numberAt(items, to + 1)) {
    values.push(next);
    to = next.to;
    if (markAt(items, to) !== ':' && wordAt(items, to) !== 'to') break;
  }
  if (values.length < 2 || values.length > 4) return undefined;
  let from = to;
  while (
    markAt(items, from) === ',' ||
    markAt(items, from) === ':' ||
    wordAt(items, from) === 'of' ||
    wordAt(items, from) === 'ratio'
  )
    from++;
  const list = listAt(items, from);
  if (list.names.length !== values.length) return undefined;
  const terms = values.map(({ low }, i) => ({ value: low, words: list.names[i] ?? [] }));
  return ratio(items, at, list.to, terms);
}

/** Names parted by commas, `and`, `to` or `:`. */
function listAt(
  items: Items,
  from: number,
  parted: ReadonlySet<string> = BETWEEN,
): { readonly names: readonly (readonly string[])[]; readonly to: number } {
  const names: string[][] = [];
  let at = from;
  for (;;) {
    const { words, to } = nameAt(items, at);
    if (words.length === 0) break;
    names.push(words);
    at = to;
    let next = at;
    while (parted.has(wordAt(items, next) || markAt(items, next))) next++;
    if (next === at || nameAt(items, next).words.length === 0) break;
    at = next;
  }
  return { names, to: at };
}
const BETWEEN: ReadonlySet<string> = new Set([',', 'and', 'to', ':', '/', '&', 'as']);
/** No word of a food's name. */
const NO_NAME: ReadonlySet<string> = new Set([
  ...BETWEEN,
  'by',
  'in',
  'of',
  'is',
  'are',
  'for',
  'with',
  'or',
  'here',
  'so',
  'then',
  'throughout',
  'go',
  'it',
  'that',
  'which',
  'a',
  'an',
  'on',
  'at',
  'each',
]);

function nameAt(items: Items, from: number): { readonly words: string[]; readonly to: number } {
  let at = wordAt(items, from) === 'the' ? from + 1 : from;
  const words: string[] = [];
  for (; words.length < 3 && wordAt(items, at) !== '' && !NO_NAME.has(wordAt(items, at)); at++)
    words.push(wordAt(items, at));
  return { words, to: at };
}

/** `Three parts oil to one of vinegar` */
function partsAt(items: Items, at: number): RatioSaid | undefined {
  const terms: Term[] = [];
  let to = at;
  for (let number = numberAt(items, at); number !== undefined; number = numberAt(items, to + 1)) {
    let next = number.to;
    if (saidAt(items, next) === 'parts') next++;
    else if (terms.length === 0) return undefined;
    if (wordAt(items, next) === 'of') next++;
    const name = nameAt(items, next);
    terms.push({ value: number.low, words: name.words });
    to = name.to;
    if (!BETWEEN.has(wordAt(items, to) || markAt(items, to))) break;
  }
  return terms.length < 2 ? undefined : ratio(items, at, to, terms);
}

/** `Equal weights of fruit and sugar`, `the same weight of sugar as fruit` */
function equalAt(items: Items, at: number): RatioSaid | undefined {
  if (saidAt(items, at) !== 'equal') return undefined;
  const measure = saidAt(items, at + 1);
  if ((measure !== 'measure' && measure !== 'parts') || wordAt(items, at + 2) !== 'of') {
    // `Equal fat to flour`
    const list = listAt(items, at + 1, TO);
    return wordAt(items, at) === 'equal' && list.names.length === 2
      ? ratio(
          items,
          at,
          list.to,
          list.names.map((words) => ({ value: 1, words })),
        )
      : undefined;
  }
  const list = listAt(items, at + 3);
  return list.names.length < 2
    ? undefined
    : ratio(
        items,
        at,
        list.to,
        list.names.map((words) => ({ value: 1, words })),
      );
}
const TO: ReadonlySet<string> = new Set(['to']);

/** `Twice as much sugar as fruit`, `four times as much`, `half as much` */
function asMuchAt(items: Items, at: number): RatioSaid | undefined {
  const said = saidAt(items, at);
  const number = numberAt(items, at - 1)?.low;
  const value = said === 'twice' ? 2 : said === 'half' ? 0.5 : said === 'times' ? number : undefined;
  if (value === undefined || wordAt(items, at + 1) !== 'as' || wordAt(items, at + 2) !== 'much') return undefined;
  const first = nameAt(items, at + 3);
  if (wordAt(items, first.to) !== 'as') return undefined;
  const second = nameAt(items, first.to + 1);
  const from = said === 'times' ? at - 1 : at;
  return ratio(items, from, second.to, [
    { value, words: first.words },
    { value: 1, words: second.words },
  ]);
}

/** `Half the flour is wholemeal`, `half fat to flour` */
function halfAt(items: Items, at: number): RatioSaid | undefined {
  if (saidAt(items, at) !== 'half') return undefined;
  const next = wordAt(items, at + 1) === 'of' ? at + 2 : at + 1;
  const first = nameAt(items, next);
  const joint = wordAt(items, first.to);
  if (joint !== 'is' && joint !== 'are' && joint !== 'to') return undefined;
  if (joint !== 'to' && wordAt(items, next) !== 'the') return undefined;
  const second = nameAt(items, first.to + 1);
  if (joint === 'to')
    return wordAt(items, next) === 'the'
      ? undefined
      : ratio(items, at, second.to, [
          { value: 0.5, words: first.words },
          { value: 1, words: second.words },
        ]);
  return ratio(
    items,
    at,
    second.to,
    [
      { value: 0.5, words: second.words },
      { value: 1, words: first.words },
    ],
    {
      within: true,
    },
  );
}
