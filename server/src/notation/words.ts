/**
 * Knows what a written word may stand for, before its neighbours are looked at; words that come again are known again.
 * Refuses to know foods.
 */
import { type CountWord, countWord } from '../measure/count-words.ts';
import { type Unit, unitSpelled } from '../measure/unit.ts';
import { COMPONENTS, type Component, KEYWORDS, type Keyword } from './tokens.ts';

export interface Written {
  /** As it stands in the line. */
  readonly image: string;
  /** Lower case, straight apostrophe. */
  readonly word: string;
  /** The line it opens, in small letters only. */
  readonly keyword: Keyword | undefined;
  readonly component: Component | undefined;
  readonly unit: Unit | undefined;
  readonly count: CountWord | undefined;
  readonly size: boolean;
  /** Whether it can be more than a word at all. */
  readonly special: boolean;
}

/** Words of the grammar that are no keyword, size, unit or count word. */
const GRAMMAR: ReadonlySet<string> = new Set([
  'about',
  'because',
  'by',
  'extra',
  'fan',
  'for',
  'from',
  'gas',
  'in',
  'of',
  'out',
  'overnight',
  'per',
  'to',
  'x',
]);
const SIZES: ReadonlySet<string> = new Set(['small', 'medium', 'large', 'jumbo']);
const KEYWORD_OF: ReadonlyMap<string, Keyword> = new Map(KEYWORDS.map((k) => [k, k]));
const COMPONENT_OF: ReadonlyMap<string, Component> = new Map(COMPONENTS.map((c) => [c, c]));

/** Longer words are rare, and a slice of them would hold on to its whole text. */
const LONGEST_KEPT = 12;
const SLOTS = 4096;
/** One word a slot: it gives way to the next one that falls there, so that no text fills the memory. */
const KEPT: (Written | undefined)[] = new Array<Written | undefined>(SLOTS).fill(undefined);

/** The word between two places of a line; `hash` is any number made of its characters alone. */
export function wordAt(line: string, start: number, end: number, hash: number): Written {
  const slot = hash & (SLOTS - 1);
  const kept = KEPT[slot];
  if (kept !== undefined && kept.image.length === end - start && line.startsWith(kept.image, start)) return kept;
  const made = wordOf(line.slice(start, end));
  if (end - start <= LONGEST_KEPT) KEPT[slot] = made;
  return made;
}

function wordOf(image: string): Written {
  const word = image.toLowerCase().replaceAll('’', "'");
  const unit = unitSpelled(image) ?? unitSpelled(word);
  const count = countWord(word);
  const size = SIZES.has(word);
  return {
    image,
    word,
    keyword: KEYWORD_OF.get(image),
    component: COMPONENT_OF.get(image),
    unit,
    count,
    size,
    special: unit !== undefined || count !== undefined || size || GRAMMAR.has(word),
  };
}
