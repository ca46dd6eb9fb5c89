/**
 * Knows what a text speaks of, beside foods and what is done, where somebody asks for it: what is held and worked on, how it is, who eats;
 * a closed union for each, from `data/prose/things.tsv`.
 * Refuses to know what it is asked for.
 */
import thingsText from '../../data/prose/things.tsv';
import { onceByText } from '../measure/once.ts';
import { sentenceIn } from '../notation/sentence.ts';
import type { SentenceItem, Span } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import { nounForms } from './forms.ts';
import { jointOf, senseOf } from './lexicon.ts';
import { type Phrase, phrasesOf } from './phrases.ts';
import type { JointKind } from './rows.ts';
import { hasBefore, isAtEnd, type WhomSaid, whomAt } from './whom.ts';

const THINGS = [
  'blender',
  /** Of a blender as often as of the table. */
  'jug',
  /** What a machine does, and how fast. */
  'whirl',
  'shut',
  'boiling',
  /** Of food, as it comes from the shop. */
  'tin',
  'opener',
  /** Somebody opened it; denied, nobody did. */
  'opened',
  /** Not opened, whatever that is. */
  'left shut',
  'door',
  /** What keeps the spores down. */
  'sour',
  /** It whirls in an open pan. */
  'stick blender',
  'pressure cooker',
  /** Filled as high as it goes. */
  'brim',
  'smoking',
  /** Left open, or room left in it. */
  'vent',
  /** Denied, there is room left. */
  'over half',
  'in the shell',
  'wet',
  'unopened',
  /** Of flesh, with ice in it yet. */
  'icy',
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
  /** In which what was washed stands and drips. */
  'drainer',
  /** What flesh leaves where it lay. */
  'dregs',
  'rinsed',
  /** The one of before, with what is on it. */
  'same',
  /** Cleaned for the eye alone. */
  'wiped',
  /** To a place of before. */
  'back',
  'where it was',
  /** The one that raw flesh was on, in so many words. */
  'held raw',
  'clean',
  'washed',
  /** What flesh lay in, with no name of its own. */
  'soak',
  /** What no flesh lay in. */
  'kept apart',
  'denial',
  /** Of who eats: left to them, or to others. */
  'for others',
  'negation',
  /** What is granted behind it is taken as it is. */
  'no matter',
  /** Less than a year old; from one year; at school. */
  'baby',
  /** On a list, what nobody else drinks. */
  'baby milk',
  'toddler',
  'child',
  'pregnant',
  /** Old, ill, or with little resistance. */
  'frail',
  /** Somebody, of whom an age may be said. */
  'person',
  /** Behind weeks or months: of one who bears a child. */
  'term',
  'term to go',
  /** A child, where nothing else follows that they wait for. */
  'expecting',
  /** What somebody may be, and a bill as well. */
  'due',
  /** Cut so that no round is left. */
  'lengthways',
  /** Eaten as it is mixed: dough, batter, mince. */
  'offered raw',
] as const;
export type Thing = (typeof THINGS)[number];

interface ThingSaid extends Spoken {
  /** The item at which it begins. */
  readonly item: number;
}

const find = phrasesOf(thingsText, THINGS, nounForms);

/** What the items speak of, from left to right. */
function thingsIn(items: readonly SentenceItem[]): readonly ThingSaid[] {
  const phrases = find(items);
  const found: ThingSaid[] = [];
  for (let at = 0; at < items.length; ) {
    const whom = whomIn(items, at, phrases);
    const phrase = whom === undefined ? beginningAt(phrases, at) : undefined;
    const first = items[at];
    const last = phrase === undefined ? undefined : items[phrase.to - 1];
    if (whom !== undefined) found.push(whom);
    else if (phrase !== undefined && first !== undefined && last !== undefined)
      found.push({
        is: phrase.is,
        item: at,
        start: first.start,
        end: last.end,
        ...(isNewAt(items, at) && { isNew: true }),
      });
    at = whom?.to ?? phrase?.to ?? at + 1;
  }
  return found.length === 0 ? NONE : found;
}

const beginningAt = (phrases: readonly Phrase<Thing>[], at: number): Phrase<Thing> | undefined =>
  phrases.find(({ from }) => from === at);

const NONE: readonly ThingSaid[] = [];
const PEOPLE: ReadonlySet<Thing | undefined> = new Set(['person', 'baby', 'toddler', 'child']);

/** `Our eighteen-month-old`, `six months gone`, `she has a month to go`. */
function whomIn(items: readonly SentenceItem[], at: number, phrases: readonly Phrase<Thing>[]): WhomSaid | undefined {
  const isPerson = (item: number): boolean => PEOPLE.has(beginningAt(phrases, item)?.is);
  const termAt = (item: number): number => {
    const phrase = beginningAt(phrases, item);
    const isTerm = phrase?.is === 'term' || (phrase?.is === 'term to go' && hasBefore(items, at));
    return phrase !== undefined && isTerm ? phrase.to - phrase.from : 0;
  };
  return whomAt(items, at, isPerson, termAt);
}

/** `A board`, `one big board`, so far before its noun. */
const MOST_BEFORE = 3;

function isNewAt(items: readonly SentenceItem[], at: number): boolean {
  for (let before = at - 1; before >= Math.max(0, at - MOST_BEFORE); before--) {
    const item = items[before];
    if (item?.kind !== 'word') return false;
    const is = jointOf(senseOf(item.word))?.is;
    if (is === 'article') return numberInWord(item.word)?.article === true;
    if (is !== undefined && is !== 'adjective') return false;
  }
  return false;
}

export interface Spoken extends Span {
  readonly is: Thing;
  /** `a board`: none that was spoken of. */
  readonly isNew?: boolean;
}

/** What a text speaks of and does not deny: a title, a note, a tag. */
export const spokenIn = onceByText((text: string): readonly Spoken[] => spokenOf(sentenceIn(text).items), {
  texts: 2000,
});

/** So many items behind it may deny it: `babies must not have it`. */
const BEHIND = 3;
const ENDS: ReadonlySet<string> = new Set(['.', ';', '!', '?', ':']);

/** From the end of the sentence before a place to its own end, in the offsets of the line. */
export function sentenceAt(items: readonly SentenceItem[], place: number): Span {
  let start = 0;
  for (const item of items) {
    if (item.kind !== 'mark' || !ENDS.has(item.mark)) continue;
    if (item.start >= place) return { start, end: item.start };
    start = item.end;
  }
  return { start, end: Number.POSITIVE_INFINITY };
}

/** What is the case where these are denied close before: `not opened`, `never over half full`. */
const OPPOSITE: Partial<Readonly<Record<Thing, { readonly is: Thing; readonly within: number }>>> = {
  opened: { is: 'left shut', within: 2 },
  'over half': { is: 'vent', within: 8 },
};
const DENIES: ReadonlySet<Thing> = new Set(['denial', 'for others', 'negation']);
const EATING: ReadonlySet<Thing> = new Set(['baby', 'toddler', 'child', 'pregnant', 'frail']);
/** Behind these something else is said, and what it denies is not what stood before: `unopened so no ash gets in`. */
const PARTS_FROM: ReadonlySet<JointKind> = new Set(['conjunction', 'purpose', 'then', 'which', 'while', 'if', 'when']);

/**
 * The same of items: a denial before it in its sentence, or close behind, takes it back; and what is granted with a shrug is as it is said
 * (`never mind if the middle is still frozen`).
 */
export function spokenOf(items: readonly SentenceItem[]): readonly Spoken[] {
  const all = thingsIn(items);
  if (all.length === 0) return NONE;
  const ends = items.flatMap((item, at) => (item.kind === 'mark' && ENDS.has(item.mark) ? [at] : []));
  const sentenceOf = (item: number): number => ends.filter((end) => end < item).length;
  const denials = all.filter(({ is }) => DENIES.has(is));
  const denies = (denial: ThingSaid, { is, item }: ThingSaid): boolean => {
    if (sentenceOf(denial.item) !== sentenceOf(item)) return false;
    if (denial.is === 'for others' && !EATING.has(is)) return false;
    if (denial.item > item)
      return denial.item - item <= BEHIND && !items.slice(item + 1, denial.item).some(isPartedFrom);
    return !all.some(
      (each) => each.is === 'no matter' && each.item < item && sentenceOf(each.item) === sentenceOf(item),
    );
  };
  const opposite = (said: ThingSaid): Thing | undefined => {
    const { is, item } = said;
    const other = OPPOSITE[is];
    const isDenied =
      other !== undefined &&
      denials.some(
        (each) => each.is === 'negation' && each.item < item && item - each.item <= other.within && denies(each, said),
      );
    return isDenied ? other?.is : undefined;
  };
  const isOfSomebody = ({ item }: ThingSaid): boolean =>
    all.some(({ is, item: before }) => is === 'person' && before < item && sentenceOf(before) === sentenceOf(item));
  const meant = all.flatMap((each): readonly ThingSaid[] =>
    each.is === 'due' || each.is === 'expecting'
      ? (each.is === 'due' ? isOfSomebody(each) : isAtEnd(items, each.item + 1))
        ? [{ ...each, is: 'pregnant' }]
        : NONE
      : [each],
  );
  return meant.flatMap((each): readonly Spoken[] => {
    if (DENIES.has(each.is)) return NONE;
    const other = opposite(each);
    if (other !== undefined) return [{ ...each, is: other }];
    return denials.some((denial) => denies(denial, each)) ? NONE : [each];
  });
}

const isPartedFrom = (item: SentenceItem): boolean => {
  if (item.kind === 'mark') return true;
  const is = item.kind === 'word' ? jointOf(senseOf(item.word))?.is : undefined;
  return is !== undefined && PARTS_FROM.has(is);
};
