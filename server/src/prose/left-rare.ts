/**
 * Knows the clauses that tell, with no order to cook, that food is left less than done: `the heart keeps rosy`, `it will still be pink`.
 * Refuses to know whose heat that was.
 */
import type { SentenceItem } from '../notation/tree.ts';
import { type Clause, EventDraft } from './clauses.ts';
import type { Act } from './event.ts';
import { jointOf, signOf, UNKNOWN, verbOf } from './lexicon.ts';
import { isHard, type Piece } from './pieces.ts';
import { isInside, isWithout, UNDONE } from './signs.ts';
import { toldIn } from './told-words.ts';

/** What says no more than how something is, or is left. */
const TELLS: ReadonlySet<Act> = new Set(['stay', 'unknown', 'read', 'reserve']);
/** What orders something of its own; of its signs those of more than one word are of the food. */
const LEAVES: ReadonlySet<Act> = new Set(['remove', 'put', 'heat']);
/** `a rosy, trembling heart`: words between. */
const NEAR = 3;

/** Gives each such clause an event that reads the sign. */
export function tellRare(pieces: readonly Piece[], items: readonly SentenceItem[], clauses: readonly Clause[]): void {
  for (const [i, clause] of clauses.entries()) {
    const { frame, event: own } = clause;
    const found = rareIn(pieces, clause, clauses[i - 1]);
    if (found === undefined) continue;
    if (frame === 'sign' || (frame === 'if' && !isCalmed(pieces, items, clauses, i))) continue;
    // `Mine were pink by the bone`: before anything is cooked it is told of another time.
    const isOfOnce = !clauses.some(({ event, from }) => from < clause.from && event?.act === 'heat');
    if (isOfOnce && isInPast(pieces, clause)) continue;
    const { start, end } = pieces[found.at] as Piece;
    const sign = { start, end, is: 'rare', sure: 'said', from: 'until' } as const;
    const isOrdered = own !== undefined && !TELLS.has(own.act) && !(found.isOfInside && own.as === 'told');
    if (isOrdered) {
      // `Lift them out, still purple at the heart`
      if (LEAVES.has(own.act) && (pieces[found.at]?.word === '' || found.isOfInside)) own.until = [...own.until, sign];
      continue;
    }
    const first = pieces[clause.from] as Piece;
    const event =
      own ?? new EventDraft(first.start, (pieces[clause.to - 1] as Piece).end, undefined, undefined, 'told');
    event.act = 'read';
    event.lasts = 'no';
    event.until = [sign];
    clause.event = event;
    clause.frame = 'order';
  }
}

interface Found {
  readonly at: number;
  /** The inside is what it is said of: `the middle still swims`. */
  readonly isOfInside: boolean;
}

function rareIn(pieces: readonly Piece[], clause: Clause, before: Clause | undefined): Found | undefined {
  const { opener, event } = clause;
  const from = opener === 'which' ? behindRelative(pieces, clause) : clause.from;
  if (from === undefined) return undefined;
  // `the middle, where the sausage is, will still be pink`
  let inside = before?.event === undefined && before?.frame === 'verbless' && hasInside(pieces, before);
  let tells = event !== undefined;
  for (let at = from; at < clause.to; at++) {
    const piece = pieces[at] as Piece;
    const { sense, part } = piece;
    const is = part === 'joint' ? jointOf(sense)?.is : undefined;
    // `grey without and pink within` denies nothing, and neither does what stands behind the sign.
    if (is === 'not' || is === 'aux not' || isWithout(pieces, at)) return undefined;
    inside ||= isInside(piece);
    // `then at 170 C for 13 minutes per 500 g for medium-rare`
    tells ||=
      is === 'preposition' && jointOf(sense)?.way === 'for' && signOf(pieces[at + 1]?.sense ?? UNKNOWN) !== undefined;
    tells ||= is === 'aux' || is === 'modal' || verbOf(sense)?.act === 'stay';
    const row = signOf(sense);
    if (inside && row !== undefined && UNDONE.has(row.tells)) return { at, isOfInside: true };
    if (!tells || row?.tells !== 'rare') continue;
    const next = pieces[at + 1];
    const isLast = next === undefined || next.sort === 'mark' || next.part === 'joint';
    const isFor = jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.way === 'for';
    if (part === 'describes' || isFor ? isLast : isOfMiddle(pieces, at)) return { at, isOfInside: false };
    if (isSeenWhenCut(pieces, at)) return { at, isOfInside: true };
  }
  return undefined;
}

/** Where a relative clause is over, and what it stood beside goes on: behind its comma. */
function behindRelative(pieces: readonly Piece[], { from, to }: Clause): number | undefined {
  const comma = pieces.findIndex(({ sort }, at) => at > from && at < to && sort === 'mark');
  const next = pieces[comma + 1];
  const is = next && comma >= 0 && comma + 1 < to ? jointOf(next.sense)?.is : undefined;
  return is === 'aux' || is === 'modal' ? comma + 1 : undefined;
}

const hasInside = (pieces: readonly Piece[], { from, to }: Clause): boolean => pieces.slice(from, to).some(isInside);

/** `If the inside is pink, never mind`: what is found is called no cause to go on. */
function isCalmed(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clauses: readonly Clause[],
  at: number,
): boolean {
  const from = (pieces[(clauses[at] as Clause).from] as Piece).from;
  const last = pieces.findIndex(({ sort, word, from: item }) => sort === 'mark' && item > from && isHard(word));
  const to = last < 0 ? items.length : (pieces[last] as Piece).to;
  return toldIn(items).some((told) => told.is === 'calms' && told.from > from && told.from < to);
}

const isInPast = (pieces: readonly Piece[], { from, to }: Clause): boolean =>
  pieces.slice(from, to).some(({ word }) => word === 'was' || word === 'were');

const isOfMiddle = (pieces: readonly Piece[], at: number): boolean => {
  // `purple as a huckleberry at the heart`
  const near = LIKE.has(pieces[at + 1]?.word ?? '') ? NEAR + SIMILE : NEAR;
  return pieces.slice(at + 1, at + 1 + near).some(isInside);
};
const LIKE: ReadonlySet<string> = new Set(['as', 'like']);
const SIMILE = 3;

/** `they bleed when you cut them` */
function isSeenWhenCut(pieces: readonly Piece[], at: number): boolean {
  const behind = pieces.slice(at + 1, at + 1 + NEAR);
  const isWhen = behind.some(({ sense, part }) => part === 'joint' && WHEN.has(jointOf(sense)?.is ?? ''));
  return isWhen && behind.some(({ sense, part }) => part === 'framed' && verbOf(sense)?.act === 'cut');
}
const WHEN: ReadonlySet<string> = new Set(['when', 'if']);
