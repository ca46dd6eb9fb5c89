/**
 * Knows which acts a kind, a food or another act never goes without, from `data/needed-acts.tsv`, and which of them a part's steps lack.
 * Refuses to know where the other parts do them, and what is said of it.
 */
import neededText from '../../data/needed-acts.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { keptOn } from '../notation/kept.ts';
import { sentenceIn } from '../notation/sentence.ts';
import type { SentenceItem } from '../notation/tree.ts';
import type { Event } from '../prose/event.ts';
import { type BoundEvent, boundEvents } from './journey/bind.ts';
import { toldDone } from './journey/told-done.ts';
import { type Foods, foodsOf, isAmong } from './measures/proportions.ts';
import type { Ingredient, Part, Step } from './model.ts';
import { wordsOf } from './words.ts';

/** An act as a cell of the table asks for it. */
type Asked = (bound: BoundEvent, part: Part, foods: Foods | undefined) => boolean;

export interface Needed {
  /** Kinds that it holds for; none where any part may be meant. */
  readonly kinds: ReadonlySet<string>;
  /** Of these, one must be listed; so called where it says how: a leaf. */
  readonly foods: Foods | undefined;
  readonly called: readonly string[];
  /** Before which act it must have come; the end where there is none. */
  readonly when: readonly Asked[];
  /** Behind the last of which. */
  readonly since: readonly Asked[];
  readonly needs: readonly Asked[];
  /** Fewer acts are no method, but a remark that leaves most to the cook. */
  readonly acts: number;
  readonly says: string;
}

/** An act with its step. */
export interface Placed {
  readonly bound: BoundEvent;
  readonly step: Step;
}

export interface Lack {
  readonly row: Needed;
  /** Before which it should have come, or the last act of all. */
  readonly at: Placed;
  /** Nothing of the part is what it should come before. */
  readonly isOpen: boolean;
  /** It is so called by the title of the whole alone. */
  readonly isOfAll: boolean;
}

const PLACED = keptOn<Part, readonly Placed[]>();

export function placedIn(part: Part): readonly Placed[] {
  let placed = PLACED.get(part);
  if (placed === undefined) {
    placed = part.steps.flatMap((step) =>
      boundEvents(step).flatMap((bound) => (isDone(bound.event) ? [{ bound, step }] : [])),
    );
    PLACED.set(part, placed);
  }
  return placed;
}

const isDone = ({ said }: Event): boolean => said !== 'not' && said !== 'asked';

/** What may be any act: a word that nobody knows, or what another text says. */
const isDark = ({ bound: { event } }: Placed): boolean =>
  (event.act === 'unknown' && event.said === 'yes') || event.elsewhere;

/** Whether one of the acts is what the row needs, or the words beside them say that it was done: `the whipped cream`. */
export const isMet = (row: Needed, part: Part, placed: readonly Placed[]): boolean =>
  placed.some((each) => isDark(each) || isNeeded(row, part, each.bound)) ||
  placed.some(({ step }, i) => placed[i - 1]?.step !== step && isTold(row, part, step.sentence.items));

const isNeeded = ({ needs, foods }: Needed, part: Part, bound: BoundEvent): boolean =>
  needs.some((asks) => asks(bound, part, foods));

const isTold = (row: Needed, part: Part, items: readonly SentenceItem[]): boolean =>
  toldDone(items).some((done) => isNeeded(row, part, done));

/** What the steps of a part lack by themselves, as what is one of these kinds, or is called so. */
export function lacksOf(part: Part, kinds: readonly string[], called: string | undefined): readonly Lack[] {
  const placed = placedIn(part);
  const last = placed.findLast(({ bound }) => bound.event.verb !== undefined);
  if (last === undefined) return [];
  return needed().flatMap((row): readonly Lack[] => {
    const { when, since, foods } = row;
    const isOfAll = called !== undefined && row.kinds.has(`"${called}`);
    if (row.kinds.size > 0 && !isOfAll && !isFor(row, kinds)) return [];
    if (foods !== undefined && !part.head.ingredients.some((i) => isRaw(row, foods, i, part))) return [];
    const at = when.length === 0 ? -1 : placed.findIndex((each) => isAsked(when, each, row, part));
    if (when.length > 0 && row.kinds.size === 0 && at < 0) return [];
    const before = at < 0 ? placed : placed.slice(0, at);
    const from = since.length === 0 ? 0 : before.findLastIndex((each) => isAsked(since, each, row, part));
    const end = placed[at];
    // What is said in one breath leaves out what goes without saying: `shape in 12 and bake`.
    if (since.length > 0 && end !== undefined && before[from]?.step === end.step) return [];
    if (from < 0 || isMet(row, part, [...before.slice(from), ...(end === undefined ? [] : [end])])) return [];
    return [{ row, at: end ?? last, isOpen: at < 0, isOfAll }];
  });
}

const isFor = ({ kinds }: Needed, those: readonly string[]): boolean =>
  those.length > 0 && those.every((kind) => kinds.has(kind));

const isAsked = (asked: readonly Asked[], { bound }: Placed, { foods }: Needed, part: Part): boolean =>
  bound.event.said === 'yes' && asked.some((asks) => asks(bound, part, foods));

/** It is listed, and not as done already: `gelatine leaves, soaked`. */
const isRaw = (row: Needed, foods: Foods, listed: Ingredient, part: Part): boolean =>
  isAmong(foods, listed) &&
  (row.called.length === 0 || row.called.some((word) => isCalled(listed, word))) &&
  ![listed.node.name, listed.node.preparation, listed.node.note].some(
    (text) => text !== undefined && isTold(row, part, sentenceIn(text.text).items),
  );

const isCalled = ({ name, node: { amount } }: Ingredient, word: string): boolean =>
  wordsOf(name).includes(word) || (amount?.kind === 'measured' && amount.quantity.count === word);

const SKETCH = 4;

const needed = once((): readonly Needed[] =>
  rowsIn(neededText).map(
    ([kinds, foods = '', when, since, needs, acts, says = '']): Needed => ({
      kinds: new Set(wordsIn(kinds)),
      foods: foods === '' ? undefined : foodsOf(foods),
      called: wordsIn(foods).flatMap((word) => (word.startsWith('#') ? [word.slice(1)] : [])),
      when: wordsIn(when).map(askedIn),
      since: wordsIn(since).map(askedIn),
      needs: wordsIn(needs).map(askedIn),
      acts: Number(acts || SKETCH),
      says,
    }),
  ),
);

/** `stay >60`: all that its words ask. */
function askedIn(cell: string): Asked {
  const all = cell.split(' ').map((word): Asked => {
    const asks = wordOf(word.replace('!', ''));
    return word.startsWith('!') ? (...of) => !asks(...of) : asks;
  });
  return (...of) => all.every((asks) => asks(...of));
}

function wordOf(word: string): Asked {
  const name = word.slice(1);
  switch (word[0]) {
    case '.':
      return ({ event }) => event.craft === name;
    case '@':
      return ({ event }) =>
        event.where.some(({ is, not, way }) => is === name && !not && way !== 'off' && way !== 'out of');
    case '~':
      return ({ event }) => event.medium?.is === name;
    case '%':
      return ({ event }) => event.vessel?.is === name;
    case '?':
      return ({ event }) => event.until.some(({ is }) => is === name);
    case '>':
      return ({ event }) => isLong(event, Number(name));
    case '<':
      return ({ event }) => isShort(event, Number(name));
    case '=':
      return ({ event }) => event.cooks === name;
    default:
      return BY_WORD[word] ?? (({ event }) => event.act === word);
  }
}

/** So long, or until a sign that may take as long. */
const isLong = ({ times, until }: Event, least: number): boolean => {
  const spent = times.filter(({ kind }) => kind === 'spent');
  return spent.length === 0 ? until.length > 0 : spent.some(({ minutes }) => longestOf(minutes) >= least);
};

/** A time is said, and none that is as long. */
const isShort = ({ times }: Event, most: number): boolean =>
  times.some(({ kind }) => kind === 'spent') &&
  times.every(({ kind, minutes }) => kind !== 'spent' || longestOf(minutes) < most);

/** `At least 5 min` are no more than that. */
const longestOf = ({ low, high }: Range): number => (Number.isFinite(high) ? high : low);

/** It names the food of the row, of the part's own list. */
const ofFood: Asked = ({ names }, { index, head }, foods) =>
  foods !== undefined &&
  names.some(
    ({ mention }) =>
      !mention.forced &&
      mention.ingredients.some(({ part, ingredient }) => {
        const listed = part === index ? head.ingredients[ingredient] : undefined;
        return listed !== undefined && isAmong(foods, listed);
      }),
  );

/** It names it, or nothing. */
const ofItsFood: Asked = (bound, part, foods) => bound.names.length === 0 || ofFood(bound, part, foods);

const BY_WORD: Readonly<Record<string, Asked>> = {
  food: ofFood,
  its: ofItsFood,
  untimed: ({ event: { times } }) => times.length === 0,
};
