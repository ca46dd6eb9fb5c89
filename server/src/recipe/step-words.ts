/**
 * Knows of which lists of words a step has one: every word is held against all lists once, and every sentence read once for them.
 * Refuses to know what the lists are for.
 */
import { keptOn } from '../notation/kept.ts';
import type { Sentence } from '../notation/tree.ts';
import type { Step } from './recipe.ts';
import { baseForm } from './verbs.ts';

/** A list that steps are searched for, made once for the life of the process. */
export interface WordList {
  readonly has: (word: string) => boolean;
  readonly bank: number;
  readonly bit: number;
}

/** Bits to a bank: a small integer holds so many. */
const BITS = 30;
const LISTS: WordList[] = [];
/** What a word, or all words of a sentence, are on: a bit for every list. */
type Marks = readonly number[];

const MOST_WORDS = 20_000;
const BY_WORD = new Map<string, Marks>();
let bySentence = keptOn<Sentence, Marks>();
let bySteps = keptOn<readonly Step[], Marks>();

/** The words for which `has` holds, whatever stands around them. */
export function wordList(has: (word: string) => boolean): WordList {
  const list = { has, bank: Math.floor(LISTS.length / BITS), bit: 1 << (LISTS.length % BITS) };
  LISTS.push(list);
  // What was marked before knows nothing of it.
  BY_WORD.clear();
  bySentence = keptOn();
  bySteps = keptOn();
  return list;
}

/** These words as they are written. */
export const asWritten = (...words: readonly string[]): WordList => {
  const all = new Set(words);
  return wordList((word) => all.has(word));
};

/** These verbs in any form. */
export const inAnyForm = (...verbs: readonly string[]): WordList => {
  const all = new Set(verbs);
  return wordList((word) => all.has(baseForm(word)));
};

/** Whether a word is on the list. */
export const isOn = (list: WordList, word: string): boolean => ((marksOfWord(word)[list.bank] ?? 0) & list.bit) !== 0;

/** Whether the step says a word of the list. */
export const says = (step: Step, list: WordList): boolean =>
  ((marksOf(step.sentence)[list.bank] ?? 0) & list.bit) !== 0;

/** Whether one of the steps does. */
export function anySays(steps: readonly Step[], list: WordList): boolean {
  let marks = bySteps.get(steps);
  if (marks === undefined) {
    const all = emptyMarks();
    for (const { sentence } of steps) add(all, marksOf(sentence));
    marks = all;
    bySteps.set(steps, marks);
  }
  return ((marks[list.bank] ?? 0) & list.bit) !== 0;
}

const banks = (): number => Math.ceil(LISTS.length / BITS);

function marksOf(sentence: Sentence): Marks {
  let marks = bySentence.get(sentence);
  if (marks === undefined) {
    const all = emptyMarks();
    for (const item of sentence.items) if (item.kind === 'word') add(all, marksOfWord(item.word));
    marks = all;
    bySentence.set(sentence, marks);
  }
  return marks;
}

function marksOfWord(word: string): Marks {
  let marks = BY_WORD.get(word);
  if (marks === undefined) {
    const all = emptyMarks();
    for (const list of LISTS) if (list.has(word)) all[list.bank] = (all[list.bank] ?? 0) | list.bit;
    marks = all;
    if (BY_WORD.size > MOST_WORDS) BY_WORD.clear();
    BY_WORD.set(word, marks);
  }
  return marks;
}

function emptyMarks(): number[] {
  const marks: number[] = [];
  for (let bank = banks(); bank > 0; bank--) marks.push(0);
  return marks;
}

function add(to: number[], marks: Marks): void {
  for (let bank = 0; bank < to.length; bank++) to[bank] = (to[bank] ?? 0) | (marks[bank] ?? 0);
}

/** A sentence as its words with a blank between them, and `;` for all that is no word. */
export function inWords(sentence: Sentence): string {
  let text = IN_WORDS.get(sentence);
  if (text === undefined) {
    text = sentence.items
      .map((i) => (i.kind === 'word' ? i.word : ';'))
      .join(' ')
      .replaceAll(' ;', ';');
    IN_WORDS.set(sentence, text);
  }
  return text;
}

const IN_WORDS = keptOn<Sentence, string>();
