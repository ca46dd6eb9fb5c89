/**
 * The pass that settles what each clause is for: it orders, goes on beside, has no verb, or says something of another.
 * Refuses to know what it takes.
 */

import type { SentenceItem } from '../notation/tree.ts';
import type { Clause } from './clauses.ts';
import { EventDraft } from './clauses.ts';
import type { Act, Manner } from './event.ts';
import { evidenceOf, formOf, jointOf, signOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import { isSoft, type Piece } from './pieces.ts';

/** Settles the frame of every clause, and begins the events of those that make one. */
export function frame(pieces: readonly Piece[], items: readonly SentenceItem[], clauses: readonly Clause[]): void {
  for (const clause of clauses) {
    frameOne(pieces, clause);
    if ((clause.frame !== 'order' && clause.frame !== 'beside') || clause.verb < 0) continue;
    const verb = pieces[clause.verb] as Piece;
    const start = (pieces[clause.from] as Piece).start;
    const end = (pieces[clause.to - 1] as Piece).end;
    clause.event = new EventDraft(
      start,
      end,
      { start: verb.start, end: verb.end },
      verbOf(verb.sense),
      mannerOf(pieces, clause, verb),
    );
    if (clause.opener === 'before') clause.event.inPassing = true;
    if (goesOn(pieces, items, clause.verb)) clause.event.onto = true;
    // `It rides there until the last table`
    if (verbOf(verb.sense) === undefined && clause.event.as === 'told') clause.event.lasts = 'waits';
  }
}

/** `Stir in the butter`, `fold the nuts through` is not told: what the verb's last word, or the next, is. */
function goesOn(pieces: readonly Piece[], items: readonly SentenceItem[], at: number): boolean {
  const verb = pieces[at] as Piece;
  const last = verb.to - verb.from > 1 ? items[verb.to - 1] : undefined;
  const word = last?.kind === 'word' ? last.word.toLowerCase() : (pieces[at + 1]?.word ?? '');
  return ONTO.has(word) && thingOf(pieces[at + 2]?.sense ?? UNKNOWN) === undefined;
}
const ONTO: ReadonlySet<string> = new Set(['in', 'through', 'over', 'on', 'back']);

function frameOne(pieces: readonly Piece[], clause: Clause): void {
  switch (clause.opener) {
    case 'until':
    case 'when':
      clause.frame = 'sign';
      return;
    case 'if':
      clause.frame = 'if';
      return;
    case 'which':
      clause.frame = 'state';
      return;
  }
  const verb = pieces[clause.verb];
  // `while it is still warm`
  const tells = (): boolean =>
    pieces.slice(clause.from, clause.to).some(({ part, sense }) => part === 'describes' && signOf(sense));
  if (verb === undefined && clause.opener === 'while' && tells()) clause.frame = 'sign';
  else if (verb === undefined) clause.frame = clause.opener === undefined ? 'verbless' : 'state';
  else if (verb.part === 'purpose')
    clause.frame =
      isNext(pieces, clause, verb) || isTimed(pieces, clause) || isOnce(pieces, clause) ? 'order' : 'state';
  // `a rosy, trembling heart`
  else if (verb.part === 'beside' && evidenceOf(pieces[clause.verb + 1]?.sense ?? UNKNOWN)?.inside)
    clause.frame = 'state';
  else if (verb.part === 'beside' && clause.opener !== 'before' && clause.opener !== 'after') clause.frame = 'beside';
}

/** `Set on a rack to drain`, `to finish broiling`: it happens by itself, nothing being its object; `to keep it from sticking` is why. */
function isNext(pieces: readonly Piece[], clause: Clause, verb: Piece): boolean {
  const row = verbOf(verb.sense);
  if (formOf(verb.sense) === 'ing' || row?.lasts !== 'waits' || !GOES_ON.has(row.act)) return false;
  const next = clause.verb + 1 < clause.to ? pieces[clause.verb + 1] : undefined;
  if (next === undefined || next.sort === 'time' || next.sort === 'mark') return true;
  const joint = jointOf(next.sense);
  const is = joint?.is;
  // `to keep from burning`
  if (joint?.way === 'out of') return false;
  return is === 'preposition' || is === 'to' || is === 'adverb' || is === 'conjunction' || is === 'or';
}

/** `The cook used to hang it`; a cloth is used to strain it. */
function isOnce(pieces: readonly Piece[], { verb }: Clause): boolean {
  const used = pieces[verb - 2];
  if (used === undefined || jointOf(pieces[verb - 1]?.sense ?? UNKNOWN)?.is !== 'to') return false;
  if (used.word !== 'used' || used.part === 'passive') return false;
  // `Nell used to`; the wood used to smoke it.
  return used.part === 'verb' || pieces[verb - 4] === undefined || pieces[verb - 4]?.sort === 'mark';
}

/** `20 minutes to simmer the jelly`, `it will require two hours to roast`: a time that nothing before it takes is what the verb takes. */
export function isTimed(pieces: readonly Piece[], { from, verb }: Clause): boolean {
  if (pieces[verb]?.part !== 'purpose' || verbOf(pieces[verb].sense)?.lasts === 'no') return false;
  if (jointOf(pieces[verb - 1]?.sense ?? UNKNOWN)?.is !== 'to' || pieces[verb - 2]?.sort !== 'time') return false;
  for (let at = verb - 3; at >= 0; at--) {
    const { sort, part, sense, word } = pieces[at] as Piece;
    if (sort === 'mark') {
      if (at < from || !isSoft(word)) return true;
    } else if (part === 'verb' || part === 'passive' || part === 'beside')
      return verbOf(sense)?.lasts === 'no' && TAKES.has(verbOf(sense)?.act ?? 'unknown');
  }
  return true;
}

/** `takes`, `requires`, `give it` */
const TAKES: ReadonlySet<Act> = new Set(['unknown', 'ready']);

/** What food does by itself. */
const GOES_ON: ReadonlySet<Act> = new Set([
  'heat',
  'cool',
  'freeze',
  'thaw',
  'stay',
  'rise',
  'steep',
  'dry',
  'smoke',
  'remove',
]);

function mannerOf(pieces: readonly Piece[], clause: Clause, verb: Piece): Manner {
  if (clause.opener === 'after') return 'before';
  if (clause.opener === 'before') return 'ordered';
  if (verb.part === 'beside') return 'beside';
  for (let at = clause.from; at < clause.verb; at++) {
    const is = jointOf((pieces[at] as Piece).sense)?.is;
    if (is === 'let') return 'ordered';
    if (is === 'had') return 'before';
    if (is === 'modal') return 'told';
    // `the apples keep`, `what you wish`
    const isPlain = formOf(verb.sense) === 'base' || verbOf(verb.sense) === undefined;
    if (at === clause.verb - 1 && isPlain && (is === 'person' || is === 'it')) return 'told';
  }
  const form = formOf(verb.sense);
  if (verb.part === 'purpose' && (isTimed(pieces, clause) || isOnce(pieces, clause))) return 'told';
  return verb.part === 'passive' || form === 's' || form === 'past' ? 'told' : 'ordered';
}
