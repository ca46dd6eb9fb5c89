/**
 * Knows which words of a sentence mention an ingredient or a part, and the portion each takes.
 * Refuses to know amounts and what is left: a mention that several ingredients fit keeps them all.
 */
import type { Sentence, SentenceItem, Span } from '../notation/tree.ts';
import type { IngredientRef, NameIndex, NameKey } from './names.ts';
import { type Portion, portionBefore } from './portions.ts';
import { wordsOf } from './words.ts';

export interface Mention extends Span {
  /** The name's own words, without the portion. */
  readonly portion: Portion;
  /** From the portion's first word to the name's last. */
  readonly whole: Span;
  /** What the words name; several when they fit several ingredients of one part. */
  readonly ingredients: readonly IngredientRef[];
  /** The part named, when it is a part. */
  readonly part?: number;
  /** `[butter]` */
  readonly forced: boolean;
  /** The name stands as a verb: `butter the pan`. */
  readonly verb: boolean;
  /** A name only by the food's other names. */
  readonly weak: boolean;
  /** `both sugars`, `the flours`: all that fit are meant. */
  readonly every: boolean;
  /** Indexes of the first and last item. */
  readonly from: number;
  readonly to: number;
}

interface Run {
  readonly keys: readonly NameKey[];
  /** Items the run covers. */
  readonly items: number;
  readonly words: number;
}

/** A word of the sentence as compared, with the item it comes from. */
interface Compared {
  readonly word: string;
  readonly item: number;
  /** The last word of its item. */
  readonly last: boolean;
}

/** The mentions of a sentence in a part, from left to right; none overlaps another. */
export function findMentions(sentence: Sentence, part: number, names: NameIndex): Mention[] {
  const { items } = sentence;
  const compared = compare(items);
  const found: Mention[] = [];
  let w = 0;
  while (w < compared.length) {
    const at = compared[w] as Compared;
    const item = items[at.item] as SentenceItem;
    if (item.kind === 'forced') {
      const mention = forcedMention(items, at.item, part, names);
      if (mention !== undefined) found.push(mention);
      while (w < compared.length && compared[w]?.item === at.item) w++;
      continue;
    }
    const rest = bareRest(items, at.item, found);
    if (rest !== undefined) {
      found.push(rest);
      w++;
      continue;
    }
    const run = longestRun(compared, w, part, names);
    if (run === undefined) {
      w++;
      continue;
    }
    const mention = mentionOf(items, at.item, run, part, found.at(-1));
    if (mention !== undefined) found.push(mention);
    w += run.words;
  }
  return found;
}

/** `… in half the oil, then brown the beef in the rest.`: of what the sentence last took a portion. */
function bareRest(items: readonly SentenceItem[], at: number, found: readonly Mention[]): Mention | undefined {
  const item = items[at];
  const before = items[at - 1];
  const after = items[at + 1];
  if (item?.kind !== 'word' || item.word !== 'rest' || before?.kind !== 'word' || before.word !== 'the')
    return undefined;
  if (after?.kind === 'word' && !['and', 'over', 'on', 'in', 'into', 'with', 'then', 'for', 'to'].includes(after.word))
    return undefined;
  const last = found.findLast(
    (m) =>
      m.ingredients.length > 0 &&
      (m.portion.kind === 'share' || m.portion.kind === 'amount' || m.portion.kind === 'some') &&
      !m.verb,
  );
  if (last === undefined) return undefined;
  const whole = { start: before.start, end: item.end };
  return {
    ...last,
    start: item.start,
    end: item.end,
    whole,
    portion: { kind: 'rest' },
    forced: false,
    from: at,
    to: at,
  };
}

function compare(items: readonly SentenceItem[]): Compared[] {
  const compared: Compared[] = [];
  items.forEach((item, i) => {
    if (item.kind === 'word') {
      const words = wordsOf(item.word);
      words.forEach((word, k) => {
        compared.push({ word, item: i, last: k === words.length - 1 });
      });
    } else compared.push({ word: item.kind === 'forced' ? '[' : '', item: i, last: true });
  });
  return compared;
}

function longestRun(compared: readonly Compared[], from: number, part: number, names: NameIndex): Run | undefined {
  const word = compared[from]?.word ?? '';
  if (word === '' || !names.has(word)) return undefined;
  return (
    longestOf(names.beginning(word, part), compared, from, part) ??
    longestOf(names.beginningWeakly(word, part), compared, from, part)
  );
}

function longestOf(
  keys: readonly NameKey[],
  compared: readonly Compared[],
  from: number,
  part: number,
): Run | undefined {
  let best: NameKey[] = [];
  let length = 0;
  for (const key of keys) {
    if (key.words.length < length || !matches(key.words, compared, from)) continue;
    if (key.words.length > length) {
      best = [];
      length = key.words.length;
    }
    best.push(key);
  }
  if (best.length === 0) return undefined;
  const last = compared[from + length - 1];
  if (last === undefined || !last.last) return undefined;
  return { keys: narrow(best, part), items: last.item - (compared[from]?.item ?? 0) + 1, words: length };
}

function matches(words: readonly string[], compared: readonly Compared[], from: number): boolean {
  for (let i = 1; i < words.length; i++) if (compared[from + i]?.word !== words[i]) return false;
  return true;
}

/** This part's ingredients first, then the name of the nearest part, then the ingredients of the nearest earlier part. */
function narrow(keys: readonly NameKey[], part: number): NameKey[] {
  const own = keys.filter((k) => k.part === part && k.ingredient !== undefined);
  if (own.length > 0) return fullFirst(own);
  const parts = keys.filter((k) => k.ingredient === undefined);
  if (parts.length > 0) return [parts.reduce((a, b) => (b.part > a.part ? b : a))];
  const nearest = Math.max(...keys.map((k) => k.part));
  return fullFirst(keys.filter((k) => k.part === nearest));
}

/** A full name beats the last word of a longer one. */
function fullFirst(keys: readonly NameKey[]): NameKey[] {
  const full = keys.filter((k) => k.full);
  return distinct(full.length > 0 ? full : keys);
}

function distinct(keys: readonly NameKey[]): NameKey[] {
  return keys.filter((k, i) => keys.findIndex((o) => o.ingredient === k.ingredient && o.part === k.part) === i);
}

function mentionOf(
  items: readonly SentenceItem[],
  at: number,
  run: Run,
  part: number,
  previous: Mention | undefined,
): Mention | undefined {
  const first = items[at];
  const to = at + run.items - 1;
  const last = items[to];
  const [key] = run.keys;
  if (first === undefined || last === undefined || key === undefined) return undefined;
  const verb = run.words === 1 && key.ingredient !== undefined && isVerbHere(items, at);
  const before = portionBefore(items, at);
  const inherited = inheritedPortion(items, before, at, previous);
  const portion: Portion = verb ? { kind: 'some' } : (inherited ?? before.portion);
  const from = verb || inherited !== undefined ? at : before.from;
  const start = first.start;
  const end = last.end;
  const whole = { start: Math.min(items[from]?.start ?? start, start), end };
  const base = { start, end, portion, whole, forced: false, verb, weak: key.weak, from: at, to };
  if (key.ingredient === undefined)
    return key.part === part ? undefined : { ...base, ingredients: [], part: key.part, every: false };
  // A weak name that fits several names none of them.
  if (key.weak && run.keys.length > 1) return undefined;
  const every = run.keys.length > 1 && isPlural(last) && (portion.kind === 'all' || portion.kind === 'plain');
  return { ...base, ingredients: refs(run.keys), every };
}

const refs = (keys: readonly NameKey[]): IngredientRef[] =>
  keys.flatMap((k) => (k.ingredient === undefined ? [] : [{ part: k.part, ingredient: k.ingredient }]));

function isPlural(item: SentenceItem): boolean {
  return item.kind === 'word' && item.word.endsWith('s') && wordsOf(item.word).at(-1) !== item.word;
}

const VERBS_OF_FOOD = new Set([
  'butter',
  'flour',
  'oil',
  'salt',
  'sugar',
  'pepper',
  'egg',
  'cream',
  'water',
  'grease',
  'ice',
  'stock',
  'season',
  'honey',
  'crumb',
  'juice',
  'zest',
]);
const OBJECTS = new Set([
  'the',
  'a',
  'an',
  'your',
  'each',
  'both',
  'it',
  'them',
  'and',
  'two',
  'lightly',
  'generously',
  'well',
  'all',
  'any',
]);

/** `Butter the pan`, `flour the board`: the name opens a clause and an object follows. */
function isVerbHere(items: readonly SentenceItem[], at: number): boolean {
  const item = items[at];
  if (item?.kind !== 'word' || !VERBS_OF_FOOD.has(item.word)) return false;
  const next = items[at + 1];
  const before = items[at - 1];
  const opens =
    before === undefined ||
    (before.kind === 'mark' && /[.;,:]/.test(before.mark)) ||
    (before.kind === 'word' && ['and', 'then', 'lightly', 'to'].includes(before.word));
  // `Butter and flour the pan.` opens with verbs; `milk, butter and salt` is a list.
  const listed = next?.kind === 'word' && next.word === 'and' && before !== undefined && !isFullStop(before);
  return opens && next?.kind === 'word' && OBJECTS.has(next.word) && !listed;
}

const isFullStop = (item: SentenceItem): boolean => item.kind === 'mark' && /[.;:]/.test(item.mark);

/** `half the butter and sugar` is half of both. */
function inheritedPortion(
  items: readonly SentenceItem[],
  before: { readonly portion: Portion; readonly determined: boolean },
  at: number,
  previous: Mention | undefined,
): Portion | undefined {
  if (previous === undefined || before.determined || before.portion.kind !== 'plain') return undefined;
  if (previous.portion.kind !== 'share' && previous.portion.kind !== 'some') return undefined;
  if (previous.verb || previous.to !== at - 2) return undefined;
  const join = items[at - 1];
  return join?.kind === 'word' && join.word === 'and' ? previous.portion : undefined;
}

/** The ingredient, or earlier part, that the bracketed words name exactly or by head noun. */
function forcedMention(
  items: readonly SentenceItem[],
  at: number,
  part: number,
  names: NameIndex,
): Mention | undefined {
  const item = items[at];
  if (item?.kind !== 'forced') return undefined;
  const words = wordsOf(item.name.text);
  const compared = words.map((word, i) => ({ word, item: i, last: true }));
  const run = longestRun(compared, 0, part, names);
  const keys = run !== undefined && run.words === words.length ? run.keys : [];
  const before = portionBefore(items, at);
  const whole = { start: items[before.from]?.start ?? item.start, end: item.end };
  const base = {
    start: item.start,
    end: item.end,
    portion: before.portion,
    whole,
    forced: true,
    verb: false,
    weak: false,
    every: false,
    from: at,
    to: at,
  };
  const named = keys.find((k) => k.ingredient === undefined);
  return named === undefined ? { ...base, ingredients: refs(keys) } : { ...base, ingredients: [], part: named.part };
}
