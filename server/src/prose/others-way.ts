/**
 * Knows what is only told of how others once did it, and what came of that: `Our grandmothers let the pot stand warm for a week`, `Then half
 * the county was in bed`. Where the recipe goes on to do as they did, it is told as its own.
 * Refuses to know what happens to food.
 */
import type { SentenceItem } from '../notation/tree.ts';
import type { Clause, EventDraft } from './clauses.ts';
import { formOf, jointOf } from './lexicon.ts';
import { isHard, type Piece } from './pieces.ts';

/** One sentence: its events, its small words, and who does what in it. */
interface Sentence {
  readonly events: readonly EventDraft[];
  /** Its words with a space between and around. */
  readonly words: string;
  readonly isOthers: boolean;
  readonly isMany: boolean;
}

/** Words before a subject. */
const OPENS: ReadonlySet<string> = new Set([
  'then',
  'but',
  'and',
  'once',
  'the',
  'my',
  'our',
  'your',
  'his',
  'her',
  'old',
  'every',
  'half',
  'all',
]);
const SELF: ReadonlySet<string> = new Set([
  'i',
  'we',
  'one',
  "one's",
  'you',
  'anybody',
  'anyone',
  'everybody',
  'everyone',
  'nobody',
  'somebody',
  'someone',
]);
/** More than one, of another time. */
const MANY =
  / (?:our|the|my) (?:old )?(?:grandmothers|grandfathers|grandparents|mothers|forefathers|forebears|ancestors|old-timers|ancients|old cooks|old hands|old books|cooks of old) | (?:house|kitchen|place|hotel|restaurant) (?:where )?i (?:trained|worked|started|learned|learnt) (?:in|at)? ?/u;
/** It is done so here too. */
const ADOPTED =
  / (?:likewise|the same|so do (?:i|we)|so did (?:i|we)|and so|still (?:is|do|does|are|stands?)|carry on|i do|we do|as (?:she|he|they) did|did it right|was right|were right|knew best|knows best|no harm|never harmed|never hurt|nobody|no one|not one|never (?:once )?(?:ill|sick)|follow (?:her|him|them)|bettered|too|yet) /u;
/** What came of it. */
const HARMED =
  / (?:in bed (?:for|with)|(?:was|were|been|fell|took|taken|made \w+) (?:very |all |both |dreadfully |violently )?(?:ill|sick|poorly|poisoned)|aching|hospital|food poisoning|poisoned|the ambulance|worms|parasites?|regretted|paid for it|buried|inquest|constitution of|laughed at|sheer luck|only luck|by luck|lucky) /u;
/** Its own way, set against theirs. */
const OWN = / (?:mine|yours|ours|this one|these days|nowadays|not in (?:this|our|my|modern) |do not|don't|never do) /u;
/** The writer's own way of another time, and of today. */
const ONCE = / i (?:used to|once) /u;
const NOW = /^ (?:now|nowadays|today|these days) /u;
const DENIED = / (?:not|no|never|nobody|none) /u;

/** Makes `advice` of what is told of others, where the next sentence is set against it, or tells of the harm. */
export function tellOfOthers(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clauses: readonly Clause[],
): void {
  if (!clauses.some(({ event }) => event !== undefined)) return;
  const all = sentencesIn(pieces, items, clauses);
  all.forEach((sentence, at) => {
    const next = all[at + 1]?.words ?? ' ';
    const both = sentence.words + next;
    const isHarm = HARMED.test(sentence.words) && !DENIED.test(sentence.words);
    const isMeant =
      (sentence.isOthers || ONCE.test(sentence.words)) &&
      !ADOPTED.test(both) &&
      (sentence.isMany || NOW.test(next) || OWN.test(next) || (HARMED.test(next) && !DENIED.test(next)));
    if (!isHarm && !isMeant) return;
    for (const event of sentence.events)
      if (isMeant || event.as !== 'ordered' || event.verb === undefined) event.said = 'advice';
  });
}

function sentencesIn(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clauses: readonly Clause[],
): readonly Sentence[] {
  const starts = clauses.flatMap((clause, at) => (at === 0 || clause.first ? [at] : []));
  return starts.map((start, at) => {
    const own = clauses.slice(start, starts[at + 1]);
    const from = own[0]?.from ?? 0;
    const to = clauses[starts[at + 1] ?? clauses.length]?.from ?? pieces.length;
    const words = ` ${wordsOf(items, pieces[from]?.from ?? 0, pieces[to - 1]?.to ?? 0).join(' ')} `;
    const isMany = MANY.test(words);
    return {
      events: own.flatMap(({ event }) => event ?? []),
      words,
      isMany,
      isOthers: isMany || opensWithOther(pieces, from, to),
    };
  });
}

const wordsOf = (items: readonly SentenceItem[], from: number, to: number): readonly string[] =>
  items.slice(from, to).flatMap((item) => (item.kind === 'word' ? [item.word.toLowerCase()] : []));

/** Somebody who is neither the writer nor the reader, before the first verb. */
function opensWithOther(pieces: readonly Piece[], from: number, to: number): boolean {
  for (let at = from; at < to; at++) {
    const { word, sense, sort, part } = pieces[at] as Piece;
    if (sort === 'mark') {
      if (isHard(word)) return false;
      continue;
    }
    if (OPENS.has(word)) continue;
    if (SELF.has(word)) return false;
    if (part === 'joint' && jointOf(sense)?.is === 'person') return jointOf(sense)?.way !== 'without';
    if (part === 'verb' && formOf(sense) === 'base') return false;
    if (at > from + 4) return false;
  }
  return false;
}
