/**
 * Knows what a text speaks of, beside foods and what is done, where somebody asks for it: what is held and worked on, how it is, who eats;
 * a closed union for each, from `data/prose/things.tsv`.
 * Refuses to know what it is asked for.
 */
import thingsText from '../../data/prose/things.tsv';
import { once, onceByText } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { sentenceIn } from '../notation/sentence.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';
import { nounForms } from './forms.ts';

const THINGS = [
  'blender',
  /** It whirls in an open pan. */
  'stick blender',
  'pressure cooker',
  /** Filled as high as it goes. */
  'brim',
  /** Left open, or room left in it. */
  'vent',
  'in the shell',
  'wet',
  'unopened',
  /** A pack with no air in it. */
  'vacuum',
  'flame',
  'bottle',
  /** Colder than any freezer: dry ice, liquid nitrogen. */
  'cryogen',
  /** A piece of it, where the list has some. */
  'pellet',
  /** No harm is left in it, or it stays outside. */
  'gone',
  'cap',
  'board',
  'knife',
  'tongs',
  'brush',
  'bowl',
  'plate',
  'bag',
  /** The one of before, with what is on it. */
  'same',
  /** The one that raw flesh was on, in so many words. */
  'held raw',
  'clean',
  'washed',
  /** What flesh lay in, with no name of its own. */
  'soak',
  /** What no flesh lay in. */
  'kept apart',
  'denial',
  /** Less than a year old; from one year; at school. */
  'baby',
  'toddler',
  'child',
  'pregnant',
  /** Old, ill, or with little resistance. */
  'frail',
  /** Cut so that no round is left. */
  'lengthways',
] as const;
export type Thing = (typeof THINGS)[number];

interface ThingSaid extends Span {
  readonly is: Thing;
  /** The item at which it begins. */
  readonly item: number;
}

/** Words of the longest row. */
const LONGEST = 3;

const BY_WORDS = once((): ReadonlyMap<string, Thing | undefined> => {
  const forms = new Map<string, Thing | undefined>();
  for (const [name = '', words] of rowsIn(thingsText)) {
    const is = THINGS.find((thing) => thing === name);
    for (const word of wordsIn(words)) for (const form of nounForms(word)) forms.set(form, is);
  }
  return forms;
});

/** What the items speak of, from left to right. */
function thingsIn(items: readonly SentenceItem[]): readonly ThingSaid[] {
  const forms = BY_WORDS();
  const found: ThingSaid[] = [];
  for (let at = 0; at < items.length; ) {
    const taken = longestAt(items, at, forms);
    const first = items[at];
    const last = items[at + taken.length - 1];
    if (taken.is !== undefined && first !== undefined && last !== undefined)
      found.push({ is: taken.is, item: at, start: first.start, end: last.end });
    at += Math.max(1, taken.length);
  }
  return found.length === 0 ? NONE : found;
}

const NONE: readonly ThingSaid[] = [];

function longestAt(
  items: readonly SentenceItem[],
  at: number,
  forms: ReadonlyMap<string, Thing | undefined>,
): { readonly is: Thing | undefined; readonly length: number } {
  let text = '';
  let best: { is: Thing | undefined; length: number } = { is: undefined, length: 0 };
  for (let length = 1; length <= LONGEST; length++) {
    const item = items[at + length - 1];
    const word = item?.kind === 'word' ? ownerOf(item.word) : item?.kind === 'mark' ? item.mark : undefined;
    if (word === undefined) break;
    text = length === 1 ? word : `${text} ${word}`;
    if (forms.has(text)) best = { is: forms.get(text), length };
  }
  return best;
}

/** `The baby's`: the one whose it is. */
const ownerOf = (word: string): string => (word.endsWith("'s") ? word.slice(0, -2) : word);

export interface Spoken extends Span {
  readonly is: Thing;
}

/** What a text speaks of and does not deny: a title, a note, a tag. */
export const spokenIn = onceByText((text: string): readonly Spoken[] => spokenOf(sentenceIn(text).items), {
  texts: 2000,
});

/** So many items behind it may deny it: `babies must not have it`. */
const BEHIND = 3;
const ENDS: ReadonlySet<string> = new Set(['.', ';', '!', '?', ':']);

/** The same of items: a denial before it in its sentence, or close behind, takes it back. */
export function spokenOf(items: readonly SentenceItem[]): readonly Spoken[] {
  const all = thingsIn(items);
  if (all.length === 0) return NONE;
  const ends = items.flatMap((item, at) => (item.kind === 'mark' && ENDS.has(item.mark) ? [at] : []));
  const sentenceAt = (item: number): number => ends.filter((end) => end < item).length;
  const denials = all.filter(({ is }) => is === 'denial');
  return all.filter(
    ({ is, item }) =>
      is !== 'denial' &&
      !denials.some(
        (denial) =>
          sentenceAt(denial.item) === sentenceAt(item) && (denial.item < item || denial.item - item <= BEHIND),
      ),
  );
}
