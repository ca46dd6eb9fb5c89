/**
 * Knows of whom each thought of a text tells, and of which time: the subject before the first verb, as far as the next subject, or the next
 * order.
 * Refuses to know what follows from it.
 */
import { formOf, isStrange, jointOf, senseOf, thingOf, UNKNOWN } from './lexicon.ts';
import { isHard, type Piece } from './pieces.ts';
import type { JointKind } from './rows.ts';
import type { Told } from './told-words.ts';

/** What the table says of the words of a piece. */
export interface Ear {
  /** Of those that it begins with. */
  readonly at: (piece: Piece) => Told | undefined;
  readonly has: (piece: Piece, told: Told) => boolean;
}

export interface Voice {
  /** Its first piece, and the piece after its last. */
  readonly from: number;
  readonly to: number;
  /** The reader is told what to do, the writer or anybody does it, somebody else, or it happens to a thing. */
  readonly who: 'order' | 'self' | 'nobody' | 'other' | 'thing';
  readonly isPast: boolean;
  /** It opens with `then`: it goes on. */
  readonly isThen: boolean;
}

/** What is told, in order, every piece in one voice. */
export function voicesIn(pieces: readonly Piece[], ear: Ear): readonly Voice[] {
  const voices: Voice[] = [];
  let open: Omit<Voice, 'to'> | undefined;
  for (let at = 0; at < pieces.length; at++) {
    const opens = openingAt(pieces, at);
    if (opens === undefined) continue;
    const next = subjectAt(pieces, at, ear) ?? orderAt(pieces, at, opens, open);
    if (next === undefined) continue;
    if (open !== undefined) voices.push({ ...open, to: at });
    open = { from: at, ...next, isThen: jointOf(pieces[at]?.sense ?? UNKNOWN)?.is === 'then' };
  }
  if (open !== undefined) voices.push({ ...open, to: pieces.length });
  return voices;
}

type Opening = 'sentence' | 'hard' | 'soft';

function openingAt(pieces: readonly Piece[], at: number): Opening | undefined {
  const before = pieces[at - 1];
  if (before === undefined) return 'sentence';
  if (before.sort === 'mark') return ENDS.has(before.word) ? 'sentence' : isHard(before.word) ? 'hard' : 'soft';
  const is = jointOf((pieces[at] as Piece).sense)?.is;
  return is === 'conjunction' || is === 'or' || is === 'then' ? 'soft' : undefined;
}

export const ENDS: ReadonlySet<string> = new Set(['.', '?', '!']);

/** Where no subject stands, a sentence is the reader's, and so is a base form behind a mark. */
function orderAt(
  pieces: readonly Piece[],
  at: number,
  opens: Opening,
  open: Omit<Voice, 'to'> | undefined,
): Pick<Voice, 'who' | 'isPast'> | undefined {
  let next = at;
  while (LEADS.has(jointOf(pieces[next]?.sense ?? UNKNOWN)?.is ?? 'mixture')) next++;
  const { part, sense } = pieces[next] ?? {};
  const form = part === 'verb' ? formOf(sense ?? UNKNOWN) : undefined;
  const isOrder = form === 'base' || (form === 'base or past' && open?.isPast !== true);
  return isOrder || opens === 'sentence' || (opens === 'hard' && open?.isPast !== true)
    ? { who: 'order', isPast: false }
    : undefined;
}

/** Words that a thought may open with before its subject or its order. */
const LEADS: ReadonlySet<JointKind> = new Set(['conjunction', 'or', 'then', 'adverb', 'not']);
const ARTICLES: ReadonlySet<JointKind> = new Set([...LEADS, 'article', 'adjective', 'number', 'quantity', 'all']);
/** So many words between a subject and its verb: `the woman at the end of the lane always left` (judgement). */
const MOST_BETWEEN = 8;

function subjectAt(pieces: readonly Piece[], from: number, ear: Ear): Pick<Voice, 'who' | 'isPast'> | undefined {
  let at = from;
  for (; at < pieces.length; at++) {
    const piece = pieces[at] as Piece;
    if (ear.at(piece) !== undefined || !ARTICLES.has(jointOf(piece.sense)?.is ?? 'mixture')) break;
  }
  if (openingAt(pieces, from) === 'sentence') at = pastPlace(pieces, at, ear);
  const head = pieces[at];
  if (head === undefined || head.sort === 'mark') return undefined;
  const who = whoIs(pieces, at, ear);
  if (who === undefined) return undefined;
  const isGone = pieces.slice(from, at).some((piece) => ear.has(piece, 'no more'));
  const isPast = isGone || pastBehind(pieces, at, who, ear);
  return isPast === undefined ? undefined : { who, isPast };
}

/** `In Auckland we had it`: the subject behind where and when. */
function pastPlace(pieces: readonly Piece[], from: number, ear: Ear): number {
  const is = jointOf(pieces[from]?.sense ?? UNKNOWN)?.is;
  if (is !== 'preposition' && is !== 'before' && is !== 'after' && is !== 'when' && is !== 'while') return from;
  for (let at = from + 1; at < pieces.length && at <= from + MOST_BETWEEN; at++) {
    const piece = pieces[at] as Piece;
    const told = ear.at(piece);
    if (told === 'self' || told === 'other' || jointOf(piece.sense)?.is === 'person') return at;
    if (piece.part === 'verb' || (piece.sort === 'mark' && piece.word !== ',')) return from;
  }
  return from;
}

function whoIs(pieces: readonly Piece[], at: number, ear: Ear): Voice['who'] | undefined {
  const piece = pieces[at] as Piece;
  const told = ear.at(piece);
  if (told === 'self' || told === 'nobody' || told === 'other') return told;
  if (told === 'theirs' || told === 'house') return 'other';
  const is = jointOf(piece.sense)?.is;
  if (is === 'person') return 'other';
  if (isPossessive(piece)) return 'other';
  // `Peg kept it on the sill`: nobody knows the word, and it does something to something.
  const verb = pieces.findIndex((next, i) => i > at && jointOf(next.sense)?.is !== 'adverb');
  if (piece.sort === 'word' && isName(piece) && isDone(pieces, verb, ear)) return 'other';
  if (is === 'it' || is === 'mixture' || is === 'rest' || is === 'number' || piece.sort === 'name') return 'thing';
  return is === undefined && formOf(piece.sense) === undefined ? 'thing' : undefined;
}

/** `Gran's`, `Mrs Tarn's`: what is somebody's; nobody's is `it's`. */
export const isPossessive = ({ word }: Piece): boolean => {
  if (!word.endsWith("'s")) return false;
  const owner = senseOf(word.slice(0, -2));
  return jointOf(owner)?.is === 'person' || (isStrange(owner) && jointOf(senseOf(word)) === undefined);
};

/** A word that may be somebody's name: no row has it. */
const isName = ({ sense, word }: Piece): boolean => isStrange(sense) && jointOf(sense) === undefined && word.length > 2;

/** `kept hers`, `put the pot`: a verb of another time with its object. */
function isDone(pieces: readonly Piece[], at: number, ear: Ear): boolean {
  const verb = pieces[at];
  const object = pieces[at + 1];
  if (verb === undefined || object === undefined) return false;
  if (ear.at(verb) === 'no more') return true;
  const form = formOf(verb.sense);
  const told = ear.at(object);
  // `Rosa had hers`
  if (ear.at(verb) === 'past') return told === 'theirs' || told === 'his';
  if (form !== 'past' && form !== 'base or past') return false;
  const is = jointOf(object.sense)?.is;
  return told === 'theirs' || told === 'his' || is === 'it' || is === 'article';
}

/** Whether what the subject does is of another time; undefined where it does nothing. */
function pastBehind(pieces: readonly Piece[], at: number, who: Voice['who'], ear: Ear): boolean | undefined {
  if (ear.has(pieces[at] as Piece, 'no more')) return true;
  for (let next = at + 1; next < pieces.length && next <= at + MOST_BETWEEN; next++) {
    const piece = pieces[next] as Piece;
    if (piece.sort === 'mark' && piece.word !== ',') return undefined;
    const told = ear.at(piece);
    if (told === 'past' || told === 'no more') return true;
    if (told === 'says') return false;
    switch (jointOf(piece.sense)?.is) {
      case 'aux':
      case 'aux not':
      case 'had':
      case 'modal':
        return false;
    }
    const form = formOf(piece.sense);
    // `Beef left overnight`: of a thing only what it did by itself.
    if (form === 'past') return who !== 'thing' || piece.part === 'verb' ? true : undefined;
    if (form === 's' || form === 'base') return who === 'thing' && piece.part !== 'verb' ? undefined : false;
    if (form === 'base or past') return who !== 'thing' && who !== 'self';
    // `gran kneaded`: nobody knows the verb.
    if (
      piece.sort === 'word' &&
      thingOf(piece.sense) === undefined &&
      isStrange(piece.sense) &&
      /[^e]ed$/u.test(piece.word)
    )
      return true;
  }
  return undefined;
}
