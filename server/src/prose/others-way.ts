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
  readonly clauses: readonly Clause[];
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
  / (?:likewise|the same(?! (?:hour|day|evening|minute|moment|morning|afternoon|night|week))|so do (?:i|we)|so did (?:i|we)|and so|still (?:is|do|does|are|stands?)|carry on|(?:i|we) do(?! not)|as (?:she|he|they) did|did it right|was right|were right|knew best|knows best|no harm|never harmed|never hurt|nobody|no one|not one|never (?:once )?(?:ill|sick)|follow (?:her|him|them)|bettered|too|yet) /u;
/** What came of it. */
const HARMED =
  / (?:in bed (?:for|with)|(?:was|were|been|fell|took|taken|made \w+) (?:very |all |both |dreadfully |violently )?(?:ill|sick|poorly|poisoned)|aching|hospital|food poisoning|poisoned|the ambulance|worms|parasites?|regretted|paid for it|buried|inquest|constitution of|laughed at|sheer luck|only luck|by luck|lucky|ha[sd] (?:also |since |once |twice )?had (?:a |the )?(?:worms?|bad stomach|bad night)) /u;
/** Its own way, set against theirs. */
const OWN = / (?:mine|yours|ours|this one|these days|nowadays|not in (?:this|our|my|modern) |do not|don't|never do) /u;
/** What somebody wrote. */
const WRITTEN =
  /^ (?:but )?(?:\S+ ){0,3}(?:\S+'s?|the old|an old|the first|the printed) (?:receipt|recipe|book|cookbook|letter|notebook|method) (?:would|has|says|said|had|tells|told|keeps|kept|leaves|left|lets|let|sets|bids) /u;
/** What was done is done no more. */
const GIVEN_UP =
  / (?:was|were|been|got|is|are) (?:\w+ly |long since |since )?(?:retired|abolished|banned|banished|scrapped|abandoned|outlawed|forbidden|given up|pensioned off|done away with) /u;
/** As another does it, behind what is denied. */
const AS_OTHERS =
  / (?:like|as|the way) (?:(?:my|our|his|her|your|the|some|other) )?(?:[\w-]+ ){1,2}(?:did|does|do|used to|would|is said to) /u;
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
    if (AS_OTHERS.test(sentence.words)) denyOn(pieces, sentence.clauses);
    for (const { event, from, to } of sentence.clauses)
      if (event !== undefined && event.verb === undefined && GIVEN_UP.test(textOf(pieces, items, from, to)))
        event.said = 'advice';
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
    const words = textOf(pieces, items, from, to);
    const isMany = MANY.test(words);
    return {
      clauses: own,
      events: own.flatMap(({ event }) => event ?? []),
      words,
      isMany,
      isOthers: isMany || WRITTEN.test(words) || opensWithOther(pieces, from, to),
    };
  });
}

/** `Don't shut it and push it to the back as my friend did`: neither. */
function denyOn(pieces: readonly Piece[], clauses: readonly Clause[]): void {
  let before: EventDraft | undefined;
  for (const { event, from, first } of clauses) {
    const word = pieces[from]?.word;
    const isOn = !first && (word === 'and' || word === 'or') && pieces[from - 1]?.sort !== 'mark';
    if (event !== undefined && isOn && before?.said === 'not' && event.said === 'yes') event.said = 'not';
    before = event ?? before;
  }
}

/** What stands between two pieces in small letters, a space before, between and after its words. */
const textOf = (pieces: readonly Piece[], items: readonly SentenceItem[], from: number, to: number): string =>
  ` ${wordsOf(items, pieces[from]?.from ?? 0, pieces[to - 1]?.to ?? 0).join(' ')} `;

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
