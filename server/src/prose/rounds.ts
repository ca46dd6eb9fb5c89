/**
 * Knows how many times over a sentence takes an amount that it says once: in each of four jars, to a batch, repeated twice.
 * Refuses to know of what the amount is.
 */
import type { Range } from '../measure/quantity.ts';
import { unitPrinted } from '../measure/unit.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { numberSaid } from './counts.ts';
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

/** How many times over the amount at `at` is taken; from none at all where it is only said how strong something is. */
export function roundsOf(items: readonly SentenceItem[], at: number): Range {
  const [from, to] = clauseAt(items, at);
  if (isStrength(items, at, to)) return { low: 0, high: Number.POSITIVE_INFINITY };
  return times(eachIn(items, at, from, to) ?? batchIn(items, at, to) ?? ONCE, repeatsBehind(items, at, to));
}

const times = (a: Range, b: Range): Range => ({ low: a.low * b.low, high: a.high * b.high });

const bitsAt = (item: SentenceItem | undefined): number => {
  const { one, several } = topicsAt(item);
  return one | several;
};

const isWord = (item: SentenceItem | undefined, words: ReadonlySet<string>): boolean =>
  item?.kind === 'word' && words.has(item.word);

/** Between the marks that end a sentence or a part of it; a comma ends nothing. */
function clauseAt(items: readonly SentenceItem[], at: number): readonly [number, number] {
  const ends = (item: SentenceItem | undefined): boolean =>
    item === undefined || (item.kind === 'mark' && isHard(item.mark));
  let [from, to] = [at, at];
  while (from > 0 && !ends(items[from - 1])) from--;
  while (to + 1 < items.length && !ends(items[to + 1])) to++;
  return [from, to];
}

const INTO: ReadonlySet<string> = new Set(['in', 'into', 'to', 'on', 'onto', 'over', 'for', 'inside', 'upon', 'with']);
const ALL: ReadonlySet<string> = new Set(['all']);
const OF: ReadonlySet<string> = new Set(['of']);
const PER: ReadonlySet<string> = new Set(['per']);
const ONE_EACH: ReadonlySet<string> = new Set(['each', 'apiece']);
const ARTICLES: ReadonlySet<string> = new Set(['a', 'the', 'each', 'every']);
const FOR: ReadonlySet<string> = new Set(['for', 'over']);

/** `25 g salt to the litre`, `20 g per kg of meat` */
function isStrength(items: readonly SentenceItem[], at: number, to: number): boolean {
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

/** `In each of the 4 jars`, `per jar`, `4 jars, 60 g each`, `75 g each day for four days`. */
function eachIn(items: readonly SentenceItem[], at: number, from: number, to: number): Range | undefined {
  for (let i = from; i <= to; i++) {
    const isAll = isWord(items[i], ALL) && numberAt(items, i + 1) !== undefined;
    if (!isAll && (bitsAt(items[i]) & EACH) === 0) continue;
    // `On each side`, `after each addition`: of when or where, and no amount.
    const noun = nounBehind(items, i, to);
    if (noun !== undefined && (bitsAt(items[noun]) & TURN) !== 0) continue;
    if (noun !== undefined && (bitsAt(items[noun]) & DAY) !== 0)
      return i > at ? daysBehind(items, noun, to) : undefined;
    // `In the middle of every ramekin`
    const isInto = isWord(items[i - 1], INTO) || (isWord(items[i - 1], OF) && isWord(items[i - 4], INTO));
    const isBehind = isWord(items[i], ONE_EACH) && (i === to || items[i + 1]?.kind === 'mark') && i > at;
    const isCounted = isWord(items[i + 1], OF) && numberBehind(items, i, to) !== undefined;
    if (!isInto && !isBehind && !isCounted && !isWord(items[i], PER)) continue;
    return numberNear(items, i, noun, from, to) ?? (isAll ? undefined : SEVERAL);
  }
  return undefined;
}

/** The noun that `each` is of: the last of the next few words before a preposition, a mark or an amount. */
function nounBehind(items: readonly SentenceItem[], each: number, to: number): number | undefined {
  for (let i = each + 1; i <= Math.min(each + 6, to); i++)
    if ((bitsAt(items[i]) & (SHARE | TURN | BATCH | DAY)) !== 0) return i;
  return undefined;
}

/** How many there are of it: behind `each of the`, else where the same noun is counted in the sentence. */
function numberNear(
  items: readonly SentenceItem[],
  each: number,
  noun: number | undefined,
  from: number,
  to: number,
): Range | undefined {
  const own = numberBehind(items, each, to);
  if (own !== undefined) return own;
  for (let i = from; i < each; i++) {
    const number = numberAt(items, i);
    if (number === undefined) continue;
    const counted = countedAt(items, i, each);
    if (counted.some((each) => isAlike(each, noun === undefined ? undefined : items[noun]))) return number;
  }
  return undefined;
}

const NOT_COUNTED: ReadonlySet<string> = new Set(['of', 'the', 'your', 'these', 'those', 'a', 'an']);

/** `Each of the 4 jars`, `every hole of a twelve-hole tin`. */
function numberBehind(items: readonly SentenceItem[], each: number, to: number): Range | undefined {
  let of = 0;
  for (let i = each + 1; i <= to && of < 2; i++) {
    const number = numberAt(items, i);
    if (number !== undefined) return number;
    if (items[i]?.kind !== 'word') return undefined;
    if (!isWord(items[i], NOT_COUNTED) && !isWord(items[i + 1], NOT_COUNTED)) return undefined;
    if (!isWord(items[i], NOT_COUNTED)) of++;
  }
  return undefined;
}

/** The nouns that a number may count: its own, or one of the next words. */
function countedAt(items: readonly SentenceItem[], at: number, end: number): readonly string[] {
  const item = items[at];
  if (item?.kind === 'measured' && item.counted !== undefined) return [item.counted.text.toLowerCase()];
  const words: string[] = [];
  for (let i = at + 1; i <= Math.min(at + 3, end - 1); i++) {
    const next = items[i];
    if (next?.kind !== 'word') break;
    words.push(next.word);
  }
  return words;
}

/** The same noun; any that a batch is divided into, where none stands behind `each`. */
const isAlike = (counted: string, noun: SentenceItem | undefined): boolean =>
  noun?.kind === 'word'
    ? stem(counted) === stem(noun.word)
    : (bitsAt({ kind: 'word', start: 0, end: 0, word: counted }) & SHARE) !== 0;

const stem = (word: string): string => word.replace(/(?:es|s)$/, '');

/** A whole number of things, `twelve-hole` too. */
function numberAt(items: readonly SentenceItem[], at: number): Range | undefined {
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

/** `In two batches, 800 ml to a batch`; of a batch nobody says how many. */
function batchIn(items: readonly SentenceItem[], at: number, to: number): Range | undefined {
  for (let i = at + 1; i + 2 <= to; i++) {
    if (!isWord(items[i], INTO) || !isWord(items[i + 1], ARTICLES)) continue;
    const noun = items[i + 2];
    if ((bitsAt(noun) & (BATCH | SHARE)) === 0 || topicsAt(noun).one === 0) continue;
    // Of a bowl that nobody counts there is one.
    return countedIn(items, noun);
  }
  return undefined;
}

/** How many of a noun the whole sentence counts, more than one. */
function countedIn(items: readonly SentenceItem[], noun: SentenceItem | undefined): Range | undefined {
  for (let i = 0; i < items.length; i++) {
    const number = numberAt(items, i);
    if (number !== undefined && number.low > 1 && countedAt(items, i, i + 3).some((word) => isAlike(word, noun)))
      return number;
  }
  return undefined;
}

/** `Each day for four days` */
function daysBehind(items: readonly SentenceItem[], from: number, to: number): Range {
  for (let i = from + 1; i + 1 <= to; i++) {
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

const TWICE: ReadonlyMap<string, number> = new Map([
  ['once', 1],
  ['twice', 2],
  ['thrice', 3],
]);
const TIMES: ReadonlySet<string> = new Set(['times', 'time']);

/** `Repeat twice` is three times in all; it repeats the clause it stands in, or, with an amount of its own in none, the sentence before. */
function repeatsBehind(items: readonly SentenceItem[], at: number, to: number): Range {
  let marks = 0;
  for (let i = at + 1; i < items.length; i++) {
    const item = items[i];
    if (item?.kind === 'mark' && isHard(item.mark)) marks++;
    // What follows says amounts of its own.
    if (marks > 1) break;
    if (i <= to + 1 && item?.kind !== 'word') continue;
    if ((bitsAt(item) & AGAIN) === 0) continue;
    const more = countBehind(items, i);
    return more === undefined ? ONCE : { low: more + 1, high: more + 1 };
  }
  return ONCE;
}

/** How often, behind `repeat`: `twice`, `thirteen times more`. */
function countBehind(items: readonly SentenceItem[], repeat: number): number | undefined {
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
