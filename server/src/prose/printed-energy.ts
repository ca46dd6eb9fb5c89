/**
 * Knows what a text says that one piece, a portion, 100 g or all of it holds: energy, protein, fat and carbohydrate.
 * Refuses to know what there is in it, and how many pieces there are.
 */
import type { Range } from '../measure/quantity.ts';
import type { Span } from '../notation/tree.ts';
import { amountAt, type Items, markAt, numberAt, saidAt, sentencesIn, wordAt } from './printed-words.ts';
import { topicBits, topicsAt } from './topics.ts';

export type Held = 'energy' | 'protein' | 'fat' | 'carbohydrate';

/** Of what a figure is; `noun` is absent of one that is not named (`95 kcal each`). */
export type PerWhat =
  | { readonly is: 'piece'; readonly noun?: string; readonly portion?: true }
  | { readonly is: 'weight'; readonly grams: number }
  | { readonly is: 'whole' }
  | { readonly is: 'unsaid' };

export interface HeldSaid extends Span, Range {
  readonly of: Held;
  /** kcal, or g. */
  readonly unit: 'kcal' | 'g';
  readonly per: PerWhat;
  /** The words behind `without`, `before`: what is in no figure. */
  readonly without: readonly string[];
}

/** kJ of one kcal (Regulation (EU) 1169/2011, annex I: 4.184 by definition of the thermochemical calorie). */
const KJ = 4.184;
const EACH = topicBits(['each']);

/** What a text says it holds, in order. */
export function heldIn(items: Items): readonly HeldSaid[] {
  if (!items.some((_, at) => HELD.has(saidAt(items, at) ?? ''))) return NONE;
  const found: HeldSaid[] = [];
  let before: PerWhat = { is: 'unsaid' };
  for (const [from, to] of sentencesIn(items)) {
    const per: PerWhat = perIn(items, from, to) ?? before;
    before = per;
    const energies = energiesIn(items, from, to);
    const without = wordsBehind(items, from, to);
    if (energies.length === 0 && per.is === 'unsaid') continue;
    for (const each of [...energies, ...nutrientsIn(items, from, to)]) found.push({ ...each, per, without });
  }
  return found;
}

const NONE: readonly never[] = [];
const HELD: ReadonlySet<string> = new Set(['kcal', 'kJ', 'protein', 'fat', 'carbohydrate']);

type Bare = Omit<HeldSaid, 'per' | 'without'>;

function wordsBehind(items: Items, from: number, to: number): readonly string[] {
  for (let at = from; at < to; at++)
    if (saidAt(items, at) === 'without')
      return items.slice(at + 1, to).flatMap((i) => (i.kind === 'word' ? [i.word] : []));
  return NONE;
}

function energiesIn(items: Items, from: number, to: number): readonly Bare[] {
  const found: Bare[] = [];
  for (let at = from; at < to; at++) {
    const said = saidAt(items, at);
    if (said !== 'kcal' && said !== 'kJ') continue;
    // `95 kcal`, `calories: 320`
    const number =
      numberAt(items, at - 1) ??
      numberAt(items, markAt(items, at + 1) === ':' || wordAt(items, at + 1) === 'of' ? at + 2 : at + 1);
    if (number === undefined || (number.from > at && amountAt(items, number.from) !== undefined)) continue;
    const by = said === 'kJ' ? 1 / KJ : 1;
    const [first, last] = [items[Math.min(at, number.from)], items[Math.max(at, number.to - 1)]];
    if (first === undefined || last === undefined) continue;
    found.push({
      of: 'energy',
      unit: 'kcal',
      low: number.low * by,
      high: number.high * by,
      start: first.start,
      end: last.end,
    });
  }
  // `320 kcal / 1340 kJ` is one energy.
  return found.slice(0, 1);
}

function nutrientsIn(items: Items, from: number, to: number): readonly Bare[] {
  const found: Bare[] = [];
  let isBehind: boolean | undefined;
  for (let at = from; at < to; at++) {
    const said = saidAt(items, at);
    if (said !== 'protein' && said !== 'fat' && said !== 'carbohydrate') continue;
    const before = gramsAt(items, wordAt(items, at - 1) === 'of' ? at - 2 : at - 1);
    const behind = gramsAt(items, markAt(items, at + 1) === ':' ? at + 2 : at + 1);
    // One text says them all in one way: `12 g fat`, or `fat 12 g`.
    isBehind ??= before === undefined;
    const grams = isBehind ? behind : before;
    const item = items[at];
    if (grams === undefined || item === undefined) continue;
    found.push({
      of: said,
      unit: 'g',
      low: grams.low,
      high: grams.high,
      start: Math.min(item.start, grams.start),
      end: Math.max(item.end, grams.end),
    });
  }
  return found;
}

function gramsAt(items: Items, at: number): (Range & Span) | undefined {
  const item = items[at];
  return item?.kind === 'measured' && item.unit?.symbol === 'g'
    ? { low: item.quantity.low, high: item.quantity.high, start: item.start, end: item.end }
    : undefined;
}

/** `Per serving:`, `95 kcal a biscuit`, `one slice has`, `per 100 g`, `each` */
function perIn(items: Items, from: number, to: number): PerWhat | undefined {
  for (let at = from; at < to; at++) {
    const word = wordAt(items, at);
    const { one, several } = topicsAt(items[at]);
    const isEach = ((one | several) & EACH) !== 0;
    const isOne = word === 'one' && at === from;
    // `A biscuit` stands right behind the figure.
    const isA = (word === 'a' || word === 'an') && HELD.has(saidAt(items, at - 1) ?? '');
    if (isEach || isOne || isA) return perAt(items, at + 1);
    if (at > from && saidAt(items, at) === 'whole' && wordAt(items, at - 1) !== 'per') return { is: 'whole' };
  }
  return undefined;
}

function perAt(items: Items, at: number): PerWhat {
  const weight = amountAt(items, at);
  if (weight !== undefined)
    return weight.unit === 'g' ? { is: 'weight', grams: weight.low } : { is: 'weight', grams: Number.NaN };
  const noun = wordAt(items, at);
  if (saidAt(items, at) === 'whole') return { is: 'whole' };
  if (saidAt(items, at) === 'portion') return { is: 'piece', noun, portion: true };
  // `Each has`, `each one comes to`
  return isNoun(items, at) ? { is: 'piece', noun } : { is: 'piece' };
}

/** A word, behind which the noun's own end stands: a mark, a figure, or what it has. */
const isNoun = (items: Items, at: number): boolean => {
  const word = wordAt(items, at);
  return word.length > 2 && word !== 'one' && word !== 'has' && word !== 'with';
};
