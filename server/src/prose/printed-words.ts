/**
 * Knows the words that stand beside a printed figure, and the numbers and amounts there: `two dozen`, `1-lb`, `half-pint`.
 * Refuses to know what the figures are held against.
 */
import printedText from '../../data/prose/printed.tsv';
import { numberOfWord, numberWord } from '../measure/number-words.ts';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { unitPrinted } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import type { SentenceItem } from '../notation/tree.ts';

export type PrintedWord =
  | 'kcal'
  | 'kJ'
  | 'protein'
  | 'fat'
  | 'carbohydrate'
  | 'portion'
  | 'whole'
  | 'without'
  | 'makes'
  | 'gives'
  | 'fills'
  | 'filled'
  | 'sold'
  | 'hydration'
  | 'brine'
  | 'equal'
  | 'twice'
  | 'times'
  | 'half'
  | 'parts'
  | 'measure'
  | 'ready'
  | 'allow'
  | 'span'
  | 'rows'
  | 'squares';

export type Items = readonly SentenceItem[];

const BY_WORD = once((): ReadonlyMap<string, readonly PrintedWord[]> => {
  const byWord = new Map<string, readonly PrintedWord[]>();
  for (const [is, words] of rowsIn(printedText))
    for (const word of wordsIn(words)) byWord.set(word, [...(byWord.get(word) ?? []), is as PrintedWord]);
  return byWord;
});

const lastOf = (word: string): PrintedWord | undefined => BY_WORD().get(word)?.at(-1);

export const wordAt = (items: Items, at: number): string => {
  const item = items[at];
  return item?.kind === 'word' ? item.word : '';
};

export const markAt = (items: Items, at: number): string => {
  const item = items[at];
  return item?.kind === 'mark' ? item.mark : '';
};

/** What the word at a place says of a figure. */
export const saidAt = (items: Items, at: number): PrintedWord | undefined => lastOf(wordAt(items, at));

/** `To give 700 ml of juice`: what comes of it. */
export const givesAt = (items: Items, at: number): boolean =>
  BY_WORD().get(wordAt(items, at))?.includes('gives') === true;

/** A word of something that is filled and stands so: a jar, a ramekin. */
export const isFilled = (word: string): boolean => lastOf(word) === 'filled';

/** A word of those who eat, or of what one of them gets. */
export const isPortion = (word: string): boolean => lastOf(word) === 'portion';

/** The places of the sentences of a text: from the first item to the one after the last. */
export function sentencesIn(items: Items): readonly (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  let from = 0;
  for (let at = 0; at <= items.length; at++) {
    if (at < items.length && !ENDS.includes(markAt(items, at) || ' ')) continue;
    if (at > from) found.push([from, at]);
    from = at + 1;
  }
  return found;
}
const ENDS = '.;!?';

/** A figure and the item after its last. */
export interface Figure extends Range {
  readonly from: number;
  readonly to: number;
}

/** A number without a unit: `12`, `six`, `two dozen`, `a dozen`. */
export function numberAt(items: Items, at: number): Figure | undefined {
  const item = items[at];
  const lot = numberWord(wordAt(items, at + 1));
  const many = lot?.lot === true ? lot : undefined;
  const word = wordAt(items, at);
  const value =
    item?.kind === 'measured'
      ? item.unit === undefined
        ? { low: item.quantity.low, high: item.quantity.high }
        : undefined
      : many !== undefined && numberWord(word)?.article === true
        ? { low: 1, high: 1 }
        : bare(numberOfWord(word));
  if (value === undefined) return undefined;
  return many === undefined
    ? { ...value, from: at, to: at + 1 }
    : { low: value.low * many.low, high: value.high * many.high, from: at, to: at + 2 };
}

const bare = (value: number | undefined): Range | undefined =>
  value === undefined ? undefined : { low: value, high: value };

/** An amount by weight or volume. */
export interface Amount extends Figure {
  readonly unit: UnitSymbol;
}

/** `120 ml`, `1-lb`, `half-pint` */
export function amountAt(items: Items, at: number): Amount | undefined {
  const item = items[at];
  if (item?.kind === 'measured' && item.unit !== undefined)
    return isSize(item.unit.symbol)
      ? { low: item.quantity.low, high: item.quantity.high, from: at, to: at + 1, unit: item.unit.symbol }
      : undefined;
  const number = numberAt(items, at);
  if (number !== undefined) {
    const unit = markAt(items, number.to) === '-' ? sizeOf(wordAt(items, number.to + 1)) : undefined;
    return unit === undefined ? undefined : { ...number, to: number.to + 2, unit };
  }
  const [part = '', of = '', ...more] = wordAt(items, at).split('-');
  const share = numberWord(part);
  const unit = more.length === 0 && of !== '' ? sizeOf(of) : undefined;
  return share === undefined || unit === undefined
    ? undefined
    : { low: share.low, high: share.high, from: at, to: at + 1, unit };
}

function sizeOf(word: string): UnitSymbol | undefined {
  const unit = unitPrinted(word);
  return unit !== undefined && (unit.dimension === 'mass' || unit.dimension === 'volume') ? unit.symbol : undefined;
}
const isSize = (symbol: UnitSymbol): boolean => sizeOf(symbol) !== undefined;
