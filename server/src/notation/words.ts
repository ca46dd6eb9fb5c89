/**
 * Knows what a written word may stand for, before its neighbours are looked at; words that come again are known again.
 * Refuses to know foods.
 */

import { biasOf } from '../measure/bias.ts';
import { type CountWord, countWord } from '../measure/count-words.ts';
import { type NumberWord, numberWord } from '../measure/number-words.ts';
import type { Size } from '../measure/quantity.ts';
import { opensUnit, unitPrinted, unitSpelled } from '../measure/unit.ts';
import type { Unit } from '../measure/unit-row.ts';

import { COMPONENTS, type Component, KEYWORDS, type Keyword } from './keywords.ts';

export interface Written {
  /** As it stands in the line. */
  readonly image: string;
  /** Lower case, straight apostrophe. */
  readonly word: string;
  /** The line it opens, in small letters only. */
  readonly keyword: Keyword | undefined;
  readonly component: Component | undefined;
  readonly unit: Unit | undefined;
  /** The unit that it is on a line of the list alone. */
  readonly printed: Unit | undefined;
  /** On a line of the list: what it counts, or the part that it is. */
  readonly number: NumberWord | undefined;
  /** It says, alone or before another word, how a measure is filled. */
  readonly bias: boolean;
  readonly count: CountWord | undefined;
  /** `medium`, `med`, `medium-sized`. */
  readonly size: Size | undefined;
  /** It is the first word of a measure of two, `tea` of `tea spoon`, or a number and its unit in one: `two-inch`. */
  readonly joint: 'measure' | 'number' | undefined;
  /** Whether it can be more than a word at all. */
  readonly special: boolean;
  /** Whether it says nothing of its own where it is left a word behind the amount of a line of the list. */
  readonly plain: boolean;
  /** Whether it says something of the item among the words that are told of it: a purpose, a rest, a wish. */
  readonly tells: boolean;
}

/** What is done to an item of the list with another on its line: `dissolved in 2 tbsp water`. */
export const PUT_INTO: ReadonlySet<string> = new Set([
  'beaten',
  'blended',
  'combined',
  'creamed',
  'diluted',
  'dissolved',
  'infused',
  'loosened',
  'made',
  'mashed',
  'mixed',
  'moistened',
  'slaked',
  'soaked',
  'softened',
  'steeped',
  'stirred',
  'thinned',
  'whisked',
]);

/** Words of the grammar that are no keyword, size, unit or count word. */
const GRAMMAR: ReadonlySet<string> = new Set([
  'mixed',
  'about',
  'and',
  'ap',
  'ep',
  'approx',
  'approximately',
  'around',
  'because',
  'by',
  'ca',
  'circa',
  'deg',
  'degree',
  'degrees',
  'each',
  'ea',
  'as',
  'between',
  'if',
  'sufficient',
  'either',
  'enough',
  'less',
  'minus',
  'q',
  'qs',
  'size',
  'the',
  'tt',
  'extra',
  'fan',
  'fan-forced',
  'fan-assisted',
  'convection',
  'for',
  'from',
  'gas',
  'in',
  'mark',
  'nearly',
  'no',
  'of',
  'or',
  'out',
  'overnight',
  'per',
  'plus',
  'roughly',
  'to',
  'weighing',
  'with',
  'x',
]);
/** Words that say something among those that are told of an item: `, plus more for dusting`. */
const TELLING: ReadonlySet<string> = new Set(['additional', 'extra', 'for', 'if', 'more', 'optional', 'plus', 'to']);
/** Words that are no more than words, and yet open something behind the amount of a line: `, some chopped`, `(just 20 g)`. */
const OPENING: ReadonlySet<string> = new Set(['enough', 'few', 'just', 'little', 'plenty', 'some', 'total']);
/** As they are printed, cards shortening them. */
const SIZES: ReadonlyMap<string, Size> = new Map<string, Size>([
  ['small', 'small'],
  ['medium', 'medium'],
  ['large', 'large'],
  ['jumbo', 'jumbo'],
  ['extra-large', 'extra large'],
  ['sm', 'small'],
  ['med', 'medium'],
  ['lg', 'large'],
  ['lge', 'large'],
]);
export const SIZE_WORDS: readonly string[] = [...SIZES.keys()];
const KEYWORD_OF: ReadonlyMap<string, Keyword> = new Map(KEYWORDS.map((k) => [k, k]));
const COMPONENT_OF: ReadonlyMap<string, Component> = new Map(COMPONENTS.map((c) => [c, c]));

/** Longer words are rare, and a slice of them would hold on to its whole text. */
const LONGEST_KEPT = 12;
const SLOTS = 4096;

/** Two words where they fall together: the older gives way to the next one that falls there, so that no text fills the memory. */
class Seen {
  private readonly slots: (Written | undefined)[] = new Array<Written | undefined>(SLOTS).fill(undefined);

  at(line: string, start: number, end: number, hash: number): Written {
    const { slots } = this;
    const slot = hash & (SLOTS - 2);
    const newer = slots[slot];
    if (newer !== undefined && newer.image.length === end - start && line.startsWith(newer.image, start)) return newer;
    const older = slots[slot + 1];
    if (older !== undefined && older.image.length === end - start && line.startsWith(older.image, start)) return older;
    const made = wordOf(line.slice(start, end));
    if (end - start <= LONGEST_KEPT) {
      slots[slot + 1] = newer;
      slots[slot] = made;
    }
    return made;
  }
}

const SEEN = new Seen();

/** The word between two places of a line; `hash` is any number made of its characters alone. */
export const wordAt = (line: string, start: number, end: number, hash: number): Written =>
  SEEN.at(line, start, end, hash);

/** A word by itself. */
export function wordOf(image: string): Written {
  const word = image.toLowerCase().replaceAll('’', "'");
  const unit = unitSpelled(image) ?? unitSpelled(word);
  const printed = unitPrinted(image) ?? unitPrinted(word) ?? unit;
  const number = numberInWord(word);
  const count = countWord(word);
  const size = SIZES.get(word.replace(/-sized?$/, ''));
  // `walnut-sized`, of a lump
  const likened = size === undefined && count === undefined && /.-sized?$/.test(word);
  const bias = likened || biasOf(word) !== undefined || biasOf(`${word} packed`) !== undefined;
  const joint = opensUnit(word) ? 'measure' : number === undefined && isNumberAndUnit(word) ? 'number' : undefined;
  const operates = number !== undefined || bias || GRAMMAR.has(word);
  const tells = TELLING.has(word);
  return {
    image,
    word,
    keyword: KEYWORD_OF.get(image),
    component: COMPONENT_OF.get(image),
    unit,
    printed,
    number,
    bias,
    count,
    size,
    joint,
    special: operates || count !== undefined || joint !== undefined || printed !== undefined || size !== undefined,
    plain: !operates && !tells && !OPENING.has(word),
    tells,
  };
}

/** The number of a word in small letters, or of several with hyphens: `one-half`, `three-quarters`, `twenty-five`, `two-and-a-half`. */
export function numberInWord(word: string): NumberWord | undefined {
  const hyphen = word.indexOf('-');
  if (hyphen < 0) return numberWord(word);
  const and = word.indexOf('-and-');
  if (and > 0) {
    const [whole, part] = [numberInWord(word.slice(0, and)), numberInWord(word.slice(and + 5))];
    return whole === undefined || part?.part !== true ? undefined : sumOf(whole, part);
  }
  const [a, b] = [numberWord(word.slice(0, hyphen)), numberWord(word.slice(hyphen + 1))];
  if (a === undefined || b === undefined) return undefined;
  if (b.part === true || b.lot === true) return { ...b, low: a.low * b.low, high: a.high * b.high };
  return a.low >= 20 && b.low < 10 ? sumOf(a, b) : undefined;
}

const sumOf = (a: NumberWord, b: NumberWord): NumberWord => ({ low: a.low + b.low, high: a.high + b.high });

const MEASURED: ReadonlySet<string> = new Set(['mass', 'volume', 'length']);

function isNumberAndUnit(word: string): boolean {
  const hyphen = word.lastIndexOf('-');
  if (hyphen < 1 || numberInWord(word.slice(0, hyphen)) === undefined) return false;
  return MEASURED.has(unitPrinted(word.slice(hyphen + 1))?.dimension ?? '');
}
