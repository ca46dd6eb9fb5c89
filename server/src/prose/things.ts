/**
 * Knows what a text speaks of, beside foods and what is done, where somebody asks for it: what is held and worked on, how it is, who eats;
 * a closed union for each, from `data/prose/things.tsv`.
 * Refuses to know what it is asked for.
 */
import thingsText from '../../data/prose/things.tsv';
import { onceByText } from '../measure/once.ts';
import { sentenceIn } from '../notation/sentence.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';
import { nounForms } from './forms.ts';
import { phrasesOf } from './phrases.ts';

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

const find = phrasesOf(thingsText, THINGS, nounForms);

/** What the items speak of, from left to right. */
function thingsIn(items: readonly SentenceItem[]): readonly ThingSaid[] {
  return find(items).map(({ is, from, to }) => {
    const start = items[from]?.start ?? 0;
    return { is, item: from, start, end: items[to - 1]?.end ?? start };
  });
}

const NONE: readonly ThingSaid[] = [];

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
