/**
 * Knows how a printed sentence is scored: read by itself, as the reader of sentences makes events of it, and held against a careful
 * reader's reading: verbs, temperatures of what, minutes of which verb, places, signs. Refuses to know how many must be right.
 */
import { builtInBook } from '../../../server/src/food/book.ts';
import type { Range } from '../../../server/src/measure/quantity.ts';
import { sentenceIn } from '../../../server/src/notation/sentence.ts';
import type { SentenceItem, Span } from '../../../server/src/notation/tree.ts';
import type { Event, HeatOf } from '../../../server/src/prose/event.ts';
import { verbForms } from '../../../server/src/prose/forms.ts';
import { formOf, jointOf, longerSense, senseOf, UNKNOWN, verbOf } from '../../../server/src/prose/lexicon.ts';
import type { NameRun } from '../../../server/src/prose/pieces.ts';
import { read } from '../../../server/src/prose/read.ts';
import { rowsOf } from '../lines/score.ts';

export interface PrintedSentence {
  readonly sentence: string;
  readonly source: string;
  /** It has a reading; the others are for trial alone. */
  readonly hasReading: boolean;
  readonly verbs: readonly string[];
  readonly places: readonly string[];
  readonly temperatures: readonly string[];
  readonly minutes: readonly string[];
  readonly signs: readonly string[];
  readonly mended: boolean;
  /** The first of each pair of rows was open while the rules were written, the second was not. */
  readonly half: 'open' | 'held back';
}

export const SLOTS = ['verbs', 'temperatures', 'minutes', 'places', 'signs'] as const;
export type SlotName = (typeof SLOTS)[number];

/** How many of a slot are right, how many are not there, and how many are there that nobody said. */
export interface Tally {
  readonly right: number;
  readonly missed: readonly string[];
  readonly extra: readonly string[];
}

export interface SentenceScore {
  readonly printed: PrintedSentence;
  readonly slots: Readonly<Record<SlotName, Tally>>;
  readonly isRight: boolean;
}

const listOf = (cell: string, by: RegExp): readonly string[] =>
  cell
    .split(by)
    .map((part) => part.trim())
    .filter((part) => part !== '');

export const readSentences = (table: string): readonly PrintedSentence[] =>
  rowsOf(table).map((row, at) => {
    const cell = (name: string): string => row.get(name) ?? '';
    return {
      sentence: cell('sentence'),
      source: cell('source'),
      hasReading: cell('read') !== '',
      verbs: listOf(cell('verbs'), /[,;]/),
      places: listOf(cell('places'), /;/),
      temperatures: listOf(cell('temperatures'), /;/),
      minutes: listOf(cell('minutes'), /;/),
      signs: listOf(cell('signs'), /;/),
      mended: cell('mended') !== '',
      half: at % 2 === 0 ? 'open' : 'held back',
    };
  });

const BOOK = builtInBook();
const LONGEST_NAME = 4;

/** Foods of the book that the words name, the longest from each word on, as runs of items. */
export function namesIn(items: readonly SentenceItem[]): readonly NameRun[] {
  const runs: NameRun[] = [];
  for (let from = 0; from < items.length; ) {
    const words: string[] = [];
    for (const item of items.slice(from, from + LONGEST_NAME)) {
      if (item.kind !== 'word' || jointOf(senseOf(item.word)) !== undefined) break;
      words.push(item.word);
    }
    while (words.length > 0 && BOOK.findInText(words.join(' ')).kind === 'unknown') words.pop();
    // `cut pork` names pork, and `cake stand` cake; `brown sugar` is a name of its own where no order stands.
    let start = from;
    const before = items[from - 1];
    const opens = before === undefined || (before.kind === 'mark' && /[.;:]/.test(before.mark));
    const isVerb = (word = ''): boolean => formOf(senseOf(word)) !== undefined;
    const isOwn = (): boolean => !opens && BOOK.knows(words.join(' '));
    while (words.length > 1 && isVerb(words[0]) && !isOwn()) {
      words.shift();
      start++;
    }
    while (words.length > 1 && isVerb(words.at(-1)) && !BOOK.knows(words.join(' '))) words.pop();
    if (words.length > 0) runs.push({ from: start, to: start + words.length });
    from = Math.max(start + words.length, from + 1);
  }
  return runs;
}

export function eventsOf(text: string): readonly Event[] {
  const { items } = sentenceIn(text);
  return read(items, namesIn(items));
}

export function scoreSentence(printed: PrintedSentence): SentenceScore {
  const { sentence } = printed;
  const events = eventsOf(sentence);
  const slots: Record<SlotName, Tally> = {
    verbs: verbsScored(printed, events),
    temperatures: temperaturesScored(printed, events),
    minutes: minutesScored(printed, events),
    places: placesScored(printed, events),
    signs: signsScored(printed, events),
  };
  const isRight = SLOTS.every((slot) => slots[slot].missed.length === 0 && slots[slot].extra.length === 0);
  return { printed, slots, isRight };
}

/** The base form of the first word of a verb, in the words that the readings use. */
function baseOf(words: string): string {
  const [first = ''] = words.toLowerCase().split(' ');
  const row = verbOf(senseOf(first));
  for (const verb of row?.words ?? [])
    if (
      !verb.includes(' ') &&
      verbForms(verb, row?.words[0] === verb ? row.forms : []).some(([form]) => form === first)
    )
      return verb;
  return first;
}

/** The row that the words of a verb are of. */
function rowOf(words: string): unknown {
  let sense = UNKNOWN;
  for (const word of words.toLowerCase().split(' '))
    sense = sense === UNKNOWN ? senseOf(word) : longerSense(sense, word);
  return verbOf(sense);
}

const isVerb = (said: string, meant: string): boolean => {
  if (baseOf(said) === baseOf(meant)) return true;
  const row = rowOf(said);
  return row !== undefined && row === rowOf(meant);
};

const cutFrom = (text: string, { start, end }: Span): string => text.slice(start, end);
const withoutBrackets = (text: string): string => text.replace(/\([^)]*\)/g, '').trim();

/** `let`, `continue to` are no orders of their own: what is let and continued is. */
const isHelper = (verb: string, sentence: string): boolean =>
  jointOf(senseOf(verb))?.is === 'let' ||
  (jointOf(longerSense(senseOf(verb), 'to'))?.is === 'modal' && sentence.includes(`${verb} to`));

/** `before serving`, `after it has been boiled`: some readings have the verb, and some have not. */
const isAside = ({ as, start }: Event, sentence: string): boolean =>
  as === 'before' || /^(?:before|previous to|prior to|after)\b/i.test(sentence.slice(start));

function verbsScored({ sentence, verbs }: PrintedSentence, events: readonly Event[]): Tally {
  const meant = verbs.map(withoutBrackets).filter((verb) => verb !== '' && !isHelper(verb, sentence));
  const told = events.filter(({ verb }) => verb !== undefined);
  const words = ({ verb }: Event): string => (verb === undefined ? '' : cutFrom(sentence, verb));
  const tally = inOrder(meant, told.map(words), (a, b) => isVerb(b, a));
  const aside = told.filter((event) => isAside(event, sentence)).map(words);
  return { ...tally, extra: tally.extra.filter((verb) => !aside.includes(verb)) };
}

/** The most of two lists that agree in order. */
function inOrder(meant: readonly string[], said: readonly string[], same: (a: string, b: string) => boolean): Tally {
  const best: number[][] = Array.from({ length: meant.length + 1 }, () => new Array<number>(said.length + 1).fill(0));
  const at = (i: number, j: number): number => best[i]?.[j] ?? 0;
  for (let i = meant.length - 1; i >= 0; i--)
    for (let j = said.length - 1; j >= 0; j--)
      (best[i] as number[])[j] = same(meant[i] as string, said[j] as string)
        ? at(i + 1, j + 1) + 1
        : Math.max(at(i + 1, j), at(i, j + 1));
  const missed: string[] = [];
  const extra: string[] = [];
  let [i, j] = [0, 0];
  while (i < meant.length || j < said.length) {
    if (i < meant.length && j < said.length && same(meant[i] as string, said[j] as string)) {
      i++;
      j++;
    } else if (j >= said.length || (i < meant.length && at(i + 1, j) >= at(i, j + 1)))
      missed.push(meant[i++] as string);
    else extra.push(said[j++] as string);
  }
  return { right: at(0, 0), missed, extra };
}

/** What the readings call it, and what it may be read as. */
const MEANS: Readonly<Record<string, readonly HeatOf[]>> = {
  oven: ['oven'],
  surroundings: ['around'],
  canner: ['medium'],
  griddle: ['medium'],
  fat: ['medium'],
  liquid: ['medium', 'food'],
  syrup: ['food'],
  dough: ['food'],
  food: ['food'],
};

const FIGURE = /([≥≤+]?)\s*(-?\d+(?:\.\d+)?)(?:\s*(?:-|–|to)\s*(-?\d+(?:\.\d+)?))?/;

function temperaturesScored({ temperatures }: PrintedSentence, events: readonly Event[]): Tally {
  const said = events.flatMap((event) => event.temperatures);
  const left = [...said];
  const missed: string[] = [];
  for (const meant of temperatures) {
    const figure = FIGURE.exec(meant);
    const [, sign = '', low = '', high = low] = figure ?? [];
    const of = MEANS[/[a-z]+/.exec(meant)?.[0] ?? ''] ?? [];
    const at = left.findIndex(({ celsius, of: is, bound }) => {
      if (!of.includes(is)) return false;
      if (sign === '+') return bound === 'change';
      const ends = [celsius.low, celsius.high].filter(Number.isFinite);
      return near(ends[0], Number(low)) && near(ends.at(-1), Number(high));
    });
    if (at < 0) missed.push(meant);
    else left.splice(at, 1);
  }
  // Of what nobody knows is nothing said.
  const told = left.filter(({ of }) => of !== 'nothing');
  const extra = told.map(({ celsius, of }) => `${of} ${Math.round(celsius.low)}-${Math.round(celsius.high)}`);
  return { right: temperatures.length - missed.length, missed, extra };
}

const near = (a: number | undefined, b: number): boolean => a !== undefined && Math.abs(a - b) <= 1;

const POUNDS_IN_KG = 1 / 0.45359237;

/** A time without a figure (`a few minutes`) is right where any time of its verb is read. */
function minutesScored({ sentence, minutes }: PrintedSentence, events: readonly Event[]): Tally {
  const left = events.flatMap((event) => event.times.map((time) => ({ event, time })));
  const missed: string[] = [];
  for (const meant of minutes) {
    const figure = FIGURE.exec(withoutBrackets(meant));
    const [, , low = '', high = low] = figure ?? [];
    // Times are read for a kilogram.
    const each = meant.endsWith(' per lb') ? POUNDS_IN_KG : 1;
    const verb = /^\(?([a-zé]+)\)?/.exec(meant)?.[1];
    const at = left.findIndex(
      ({ event, time }) =>
        (figure === null || isRange(time.minutes, each * Number(low), each * Number(high))) &&
        (verb === undefined || event.verb === undefined || isVerb(cutFrom(sentence, event.verb), verb)),
    );
    if (at < 0) missed.push(meant);
    else left.splice(at, 1);
  }
  const extra = left.map(
    ({ event, time }) =>
      `${event.verb === undefined ? '' : cutFrom(sentence, event.verb)} ${time.minutes.low}-${time.minutes.high}`,
  );
  return { right: minutes.length - missed.length, missed, extra };
}

/** The ends agree; one that is open, or nothing, agrees with the other. */
function isRange({ low, high }: Range, from: number, to: number): boolean {
  const same = (a: number, b: number): boolean => Math.abs(a - b) <= 0.02 * Math.max(1, b);
  return (same(low, from) || low === 0) && (same(high, to) || !Number.isFinite(high));
}

/** A place is right where the words that the reading names are in a place, vessel or medium of an event, or what a sign of one is looked for in. */
function placesScored({ sentence, places }: PrintedSentence, events: readonly Event[]): Tally {
  const told = events.flatMap(({ where, vessel, medium, objects, until }) => [
    ...where,
    ...(vessel ? [vessel] : []),
    ...(medium ? [medium] : []),
    ...objects.filter(({ by }) => by === 'vessel'),
    ...until.flatMap(({ at }) => at ?? []),
  ]);
  const missed = places.filter((place) => !spansOf(sentence, place).some((span) => told.some((t) => over(span, t))));
  return { right: places.length - missed.length, missed, extra: [] };
}

function spansOf(text: string, words: string): readonly Span[] {
  const [all, part] = [text.toLowerCase(), words.toLowerCase()];
  const spans: Span[] = [];
  for (let at = all.indexOf(part); at >= 0; at = all.indexOf(part, at + 1))
    spans.push({ start: at, end: at + part.length });
  return spans;
}

const over = (a: Span, b: Span): boolean => a.start < b.end && b.start < a.end;

/** A sign is right where one begins with it and covers most of it. */
function signsScored({ sentence, signs }: PrintedSentence, events: readonly Event[]): Tally {
  const told = events.flatMap(({ until }) => until);
  const isThere = (span: Span): boolean =>
    told.some(
      (sign) =>
        over(span, sign) &&
        Math.min(sign.end, span.end) - Math.max(sign.start, span.start) >= (span.end - span.start) / 2,
    );
  const missed = signs.filter((sign) => !spansOf(sentence, sign).some(isThere));
  return { right: signs.length - missed.length, missed, extra: [] };
}

/** Right of all that is said or meant, of each slot. */
export function sharesOf(scores: readonly SentenceScore[]): Readonly<Record<SlotName, { right: number; of: number }>> {
  const sum = (slot: SlotName): { right: number; of: number } => {
    let right = 0;
    let of = 0;
    for (const { slots } of scores) {
      right += slots[slot].right;
      of += slots[slot].right + slots[slot].missed.length + slots[slot].extra.length;
    }
    return { right, of };
  };
  return {
    verbs: sum('verbs'),
    temperatures: sum('temperatures'),
    minutes: sum('minutes'),
    places: sum('places'),
    signs: sum('signs'),
  };
}
