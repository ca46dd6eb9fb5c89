/**
 * Knows how much of an ingredient a sentence takes: `half the`, `60 ml of the`, `the rest of the`.
 * Refuses to know how much there is: the ledger does.
 */
import { biasOf } from '../../measure/bias.ts';
import { numberOfWord } from '../../measure/number-words.ts';
import type { Range } from '../../measure/quantity.ts';
import { unitPrinted } from '../../measure/unit.ts';
import type { MeasuredNode, SentenceItem } from '../../notation/tree.ts';
import { givesAt } from '../../prose/printed-words.ts';
import type { Portion } from '../model.ts';
import { FUNCTION_WORDS } from '../words.ts';

export interface PortionFound {
  readonly portion: Portion;
  /** Index of the first item that belongs to the portion. */
  readonly from: number;
  /** Whether `the` or the like stood there, so that nothing is inherited from the mention before. */
  readonly determined: boolean;
}

const DETERMINERS = new Set(['the', 'this', 'these', 'that', 'those', 'your', 'its']);
const FRACTIONS: ReadonlyMap<string, number> = new Map(
  Object.entries({
    half: 1 / 2,
    halves: 1 / 2,
    third: 1 / 3,
    thirds: 1 / 3,
    quarter: 1 / 4,
    quarters: 1 / 4,
    fifth: 1 / 5,
    fifths: 1 / 5,
    sixth: 1 / 6,
    sixths: 1 / 6,
    eighth: 1 / 8,
    eighths: 1 / 8,
    tenth: 1 / 10,
    tenths: 1 / 10,
  }),
);
const COUNTS: ReadonlyMap<string, number> = new Map(
  Object.entries({
    a: 1,
    an: 1,
    one: 1,
    two: 2,
    three: 3,
    four: 4,
    five: 5,
    six: 6,
    seven: 7,
    eight: 8,
    nine: 9,
    ten: 10,
  }),
);
const RESTS = new Set(['rest', 'remainder', 'remaining', 'leftover']);
/** These are what is left of something; `rest the chicken` orders it to lie. */
const REST_OF = new Set(['rest', 'remainder']);
const SOME = new Set([
  'some',
  'little',
  'few',
  'bit',
  'most',
  'more',
  'splash',
  'spoonful',
  'spoonfuls',
  'ladle',
  'ladleful',
  'handful',
  'handfuls',
  'pinch',
  'knob',
  'dash',
  'drizzle',
  'drop',
  'drops',
  'dusting',
  'extra',
  'enough',
  'much',
  'any',
  'plenty',
  'top',
  'several',
  'part',
  'parts',
  'sprinkle',
  'sprinkling',
  'spare',
  'squeeze',
  'glug',
  'grating',
  'scattering',
  'dollop',
  'dollops',
  'sprig',
  'sprigs',
  'pinches',
  'knobs',
  'splashes',
  'pat',
  'pats',
]);
const ALL = new Set(['all', 'both', 'whole', 'entire', 'every']);

/** The portion that stands before the item at `at`. */
export function portionBefore(items: readonly SentenceItem[], at: number): PortionFound {
  const plain: PortionFound = { portion: { kind: 'plain' }, from: at, determined: false };
  let i = skipAdjectives(items, at - 1);
  let determined = false;
  if (DETERMINERS.has(wordAt(items, i))) {
    determined = true;
    i--;
  }
  const of = wordAt(items, i) === 'of';
  if (of) i--;
  const item = items[i];
  if (item === undefined) return { ...plain, from: i + 1, determined };
  if (item.kind === 'measured') {
    // `Strain, to give 700 ml of juice`: no portion of what is listed.
    if (givesAt(items, i - 1)) return { ...plain, from: i, determined: true };
    const portion = asShare(item, of || determined) ?? amountOf(item, !of && DETERMINERS.has(wordAt(items, i - 1)));
    return { portion, from: i, determined: true };
  }
  const word = wordAt(items, i);
  if (REST_OF.has(word) && !of) return { ...plain, from: i + 1, determined };
  const number = items[i - 2];
  // `75 per cent of the mince`
  if (of && word === 'cent' && wordAt(items, i - 1) === 'per' && number?.kind === 'measured') {
    const share = { kind: 'share' as const, of: Math.min(number.quantity.low / 100, 1), remaining: false };
    return { portion: share, from: i - 2, determined: true };
  }
  const spooned = of ? wordsMeasured(items, i) : undefined;
  if (spooned !== undefined) return spooned;
  const joined = joinedShare(word);
  if (joined !== undefined)
    return { portion: { kind: 'share', of: joined, remaining: false }, from: i, determined: true };
  const fraction = FRACTIONS.get(word);
  if (fraction !== undefined && !(word === 'quarter' && !of && opensClause(items, i)))
    return fractionBefore(items, i, fraction);
  if (RESTS.has(word)) {
    const inner = wordAt(items, i - 1) === 'the' ? i - 2 : i - 1;
    const share = FRACTIONS.get(wordAt(items, wordAt(items, inner) === 'of' ? inner - 1 : inner));
    if (share !== undefined)
      return { portion: { kind: 'share', of: share, remaining: true }, from: inner, determined: true };
    return { portion: { kind: 'rest' }, from: wordAt(items, i - 1) === 'the' ? i - 1 : i, determined: true };
  }
  if (word === 'last' && of) return { portion: { kind: 'rest' }, from: i, determined: true };
  if (ALL.has(word)) return { portion: { kind: 'all' }, from: i, determined: true };
  // `Pat the chicken dry` is no pat of it.
  const isOrder = determined && !of && opensClause(items, i);
  if (SOME.has(word) && !isOrder) return { portion: { kind: 'some' }, from: i, determined: true };
  // `A shower of Parmesan`: some of it, where something is said of the rest.
  if (of && !determined && (wordAt(items, i - 1) === 'a' || wordAt(items, i - 1) === 'an'))
    return { portion: { kind: 'plain', loose: true }, from: i - 1, determined: true };
  const count = COUNTS.get(word);
  if (count !== undefined && (count > 1 || of || word === 'one'))
    return { portion: countPortion(item, count), from: i, determined: true };
  return { ...plain, from: i + 1, determined };
}

/** `Two teaspoonfuls of`, `half a cup of`, `3 heaped tablespoonfuls of`: a unit that a sentence writes out, with a number before it. */
function wordsMeasured(items: readonly SentenceItem[], at: number): PortionFound | undefined {
  const noun = items[at];
  const unit = noun?.kind === 'word' ? unitPrinted(noun.word) : undefined;
  const isSize = unit?.dimension === 'mass' || unit?.dimension === 'volume';
  // A squeeze, a knob: nobody knows how much.
  if (noun === undefined || unit === undefined || !isSize || unit.byHand !== undefined) return undefined;
  const bias = biasOf(wordAt(items, at - 1));
  const from = bias === undefined ? at - 1 : at - 2;
  const number = numberBefore(items, from);
  if (number === undefined) return undefined;
  const { start } = items[number.from] ?? noun;
  const { low, high } = number;
  const quantity = { low, high, about: false, unit: unit.symbol, ...(bias !== undefined && { bias }) };
  const numeral = { start, end: (items[from] ?? noun).end, value: low, style: 'decimal' as const };
  const written = { start: noun.start, end: noun.end, symbol: unit.symbol };
  const measured = { kind: 'measured' as const, start, end: noun.end, quantity, low: numeral, unit: written };
  return { portion: { kind: 'amount', measured }, from: number.from, determined: true };
}

/** `two`, `3`, `a`, `half a`, that ends at `at`. */
function numberBefore(items: readonly SentenceItem[], at: number): (Range & { readonly from: number }) | undefined {
  const item = items[at];
  if (item?.kind === 'measured')
    return item.quantity.unit === undefined && item.quantity.count === undefined
      ? { low: item.quantity.low, high: item.quantity.high, from: at }
      : undefined;
  const word = wordAt(items, at);
  const part = word === 'a' || word === 'an' ? FRACTIONS.get(wordAt(items, at - 1)) : undefined;
  if (part !== undefined) return { low: part, high: part, from: at - 1 };
  const count = COUNTS.get(word) ?? numberOfWord(word);
  return count === undefined ? undefined : { low: count, high: count, from: at };
}

/** `two-thirds`, `three-quarters` */
function joinedShare(word: string): number | undefined {
  const [many = '', part = '', ...more] = word.split('-');
  const [count, fraction] = [COUNTS.get(many), FRACTIONS.get(part)];
  return count === undefined || fraction === undefined || more.length > 0 ? undefined : Math.min(count * fraction, 1);
}

/** Whether a word stands where an order does: first, or after a mark, `and` or `then`. `Quarter the lemons` cuts them all. */
export function opensClause(items: readonly SentenceItem[], at: number): boolean {
  const before = items[at - 1];
  return (
    before === undefined ||
    before.kind === 'mark' ||
    (before.kind === 'word' && (before.word === 'and' || before.word === 'then'))
  );
}

function skipAdjectives(items: readonly SentenceItem[], from: number): number {
  for (let i = from, skipped = 0; skipped <= 3; i--, skipped++) {
    const word = wordAt(items, i);
    if (items[i]?.kind === 'measured' || OPENING.has(word) || joinedShare(word) !== undefined) return i;
    if (word === '' || FUNCTION_WORDS.has(word)) return from;
  }
  return from;
}

const OPENING: ReadonlySet<string> = new Set([
  ...DETERMINERS,
  'of',
  ...RESTS,
  ...SOME,
  ...ALL,
  ...FRACTIONS.keys(),
  ...COUNTS.keys(),
]);

function wordAt(items: readonly SentenceItem[], i: number): string {
  const item = items[i];
  return item?.kind === 'word' ? item.word : '';
}

function fractionBefore(items: readonly SentenceItem[], i: number, fraction: number): PortionFound {
  const before = wordAt(items, i - 1);
  if (before === 'other' || (before === 'second' && fraction === 1 / 2))
    return { portion: { kind: 'rest' }, from: i - 1, determined: true };
  const item = items[i - 1];
  const times = item?.kind === 'measured' && item.unit === undefined ? item.quantity.low : COUNTS.get(before);
  const share = Math.min((times ?? 1) * fraction, 1);
  return {
    portion: { kind: 'share', of: share, remaining: false },
    from: times === undefined ? i : i - 1,
    determined: true,
  };
}

/** `The 200 ml water` names what is listed as that much. */
const amountOf = (measured: MeasuredNode, named: boolean): Portion =>
  named ? { kind: 'amount', measured, named } : { kind: 'amount', measured };

/** Whether words of a line tell it into several: `1 chopped and 1 sliced`, `half melted, half left whole`. */
export function tellsApart(items: readonly SentenceItem[]): boolean {
  let told = 0;
  for (const [i, item] of items.entries()) {
    if (item.kind === 'measured') {
      if (item.unit === undefined) told++;
      continue;
    }
    const word = wordAt(items, i);
    const opens = i === 0 || opensClause(items, i);
    if (opens && word !== 'a' && word !== 'an' && (COUNTS.has(word) || FRACTIONS.has(word) || word === 'some')) told++;
    else if (RESTS.has(word) || word === 'other' || word === 'others') told++;
  }
  return told > 1;
}

/** `2/3 of the`, `50 % of the`; anything else with a number is an amount. */
function asShare(item: MeasuredNode, ofThe: boolean): Portion | undefined {
  const { quantity } = item;
  if (!ofThe) return undefined;
  if (quantity.unit === '%') return { kind: 'share', of: Math.min(quantity.low / 100, 1), remaining: false };
  if (quantity.unit === undefined && quantity.count === undefined && item.low.style !== 'decimal' && quantity.low < 1) {
    return { kind: 'share', of: quantity.low, remaining: false };
  }
  return undefined;
}

function countPortion(item: SentenceItem, count: number): Portion {
  const { start, end } = item;
  const low = { start, end, value: count, style: 'decimal' as const };
  return {
    kind: 'amount',
    measured: { kind: 'measured', start, end, quantity: { low: count, high: count, about: false }, low },
  };
}
