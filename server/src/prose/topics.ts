/**
 * Knows what a sentence speaks of that is no food, no place and nothing that is done: pieces, batches, lids, foam; a closed union for each.
 * Refuses to know what it is asked for.
 */

import topicsText from '../../data/prose/topics.tsv';
import { once } from '../measure/once.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { nounForms } from './forms.ts';

export const TOPICS = [
  /** What lies on a tray with room around it. */
  'lump',
  /** What a dough or a batch is made into, or served as. */
  'share',
  'each',
  'batch',
  /** When or where something is done each time, which measures nothing out. */
  'turn',
  'day',
  /** What is done is done once more. */
  'again',
  'tin',
  'loaf',
  'flat',
  'case',
  'lid',
  'top',
  'foil',
  'paper',
  'sides',
  'bottom',
  'foam',
  'egg half',
  'curd',
  'offcut',
  'pastry',
  /** What other recipes are made with. */
  'component',
  'everything',
  'ingredients',
  /** How it looks or feels when it is done. */
  'look',
  /** What makes an oven or a fridge work. */
  'power',
  /** What is pushed in to see. */
  'test',
  /** Listed, it is no food: what smokes, ties or holds it together. */
  'gear',
  /** Where milk comes from. */
  'udder',
  'fraction',
  /** Cut into what stays whole. */
  'slit',
] as const;
export type Topic = (typeof TOPICS)[number];

/** Bits of the topics: those of one thing, and of several. */
export interface TopicMarks {
  readonly one: number;
  readonly several: number;
}

const BITS = new Map<string, number>(TOPICS.map((topic, at) => [topic, 1 << at]));

export function topicBits(topics: readonly Topic[]): number {
  let bits = 0;
  for (const topic of topics) bits |= BITS.get(topic) ?? 0;
  return bits;
}

const NONE: TopicMarks = { one: 0, several: 0 };

/** What an item speaks of. */
export function topicsAt(item: SentenceItem | undefined): TopicMarks {
  return item?.kind === 'word' ? topicsOf(item.word) : NONE;
}

/** What a word in small letters speaks of. */
const topicsOf = (word: string): TopicMarks => BY_FORM().get(word) ?? NONE;

const BY_FORM = once((): ReadonlyMap<string, TopicMarks> => {
  const forms = new Map<string, TopicMarks>();
  for (const line of topicsText.split('\n').slice(2)) {
    const [topic = '', words = ''] = line.split('\t');
    const bit = BITS.get(topic) ?? 0;
    for (const word of words === '' ? [] : words.split(';')) {
      const [one = word, several = word] = nounForms(word);
      forms.set(one, { one: (forms.get(one)?.one ?? 0) | bit, several: 0 });
      forms.set(several, { one: 0, several: (forms.get(several)?.several ?? 0) | bit });
    }
  }
  return forms;
});
