/**
 * Knows the clauses that tell, with no order to cook, that food is left less than done: `the heart keeps rosy`, `it will still be pink`.
 * Refuses to know whose heat that was.
 */
import { type Clause, EventDraft } from './clauses.ts';
import type { Act } from './event.ts';
import { evidenceOf, jointOf, signOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';

/** What says no more than how something is, or is left. */
const TELLS: ReadonlySet<Act> = new Set(['stay', 'unknown', 'read', 'reserve']);
/** What orders something of its own; of its signs those of more than one word are of the food. */
const LEAVES: ReadonlySet<Act> = new Set(['remove', 'put', 'heat']);
/** `a rosy, trembling heart`: words between. */
const NEAR = 3;

/** Gives each such clause an event that reads the sign. */
export function tellRare(pieces: readonly Piece[], clauses: readonly Clause[]): void {
  for (const clause of clauses) {
    const { opener, frame, event: own } = clause;
    const isOfAnother = opener === 'which' || frame === 'sign' || frame === 'if';
    if (isOfAnother) continue;
    const at = rareIn(pieces, clause);
    // `Mine were pink by the bone`: before anything is cooked it is told of another time.
    const isOfOnce = !clauses.some(({ event, from }) => from < clause.from && event?.act === 'heat');
    if (at === undefined || (isOfOnce && isInPast(pieces, clause))) continue;
    const { start, end } = pieces[at] as Piece;
    const sign = { start, end, is: 'rare', sure: 'said', from: 'until' } as const;
    if (own !== undefined && !TELLS.has(own.act)) {
      // `Lift them out, still purple at the heart`
      if (LEAVES.has(own.act) && pieces[at]?.word === '') own.until = [...own.until, sign];
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

function rareIn(pieces: readonly Piece[], { from, to, event }: Clause): number | undefined {
  let tells = event !== undefined;
  for (let at = from; at < to; at++) {
    const { sense, part } = pieces[at] as Piece;
    const is = part === 'joint' ? jointOf(sense)?.is : undefined;
    if (is === 'not' || is === 'aux not' || jointOf(sense)?.way === 'without') return undefined;
    // `then at 170 C for 13 minutes per 500 g for medium-rare`
    tells ||=
      is === 'preposition' && jointOf(sense)?.way === 'for' && signOf(pieces[at + 1]?.sense ?? UNKNOWN) !== undefined;
    tells ||= is === 'aux' || is === 'modal' || verbOf(sense)?.act === 'stay';
    if (!tells || signOf(sense)?.tells !== 'rare') continue;
    const next = pieces[at + 1];
    const isLast = next === undefined || next.sort === 'mark' || next.part === 'joint';
    const isFor = jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.way === 'for';
    if (part === 'describes' || isFor ? isLast : isOfMiddle(pieces, at)) return at;
  }
  return undefined;
}

const isInPast = (pieces: readonly Piece[], { from, to }: Clause): boolean =>
  pieces.slice(from, to).some(({ word }) => word === 'was' || word === 'were');

const isOfMiddle = (pieces: readonly Piece[], at: number): boolean => {
  // `purple as a huckleberry at the heart`
  const near = LIKE.has(pieces[at + 1]?.word ?? '') ? NEAR + SIMILE : NEAR;
  return pieces.slice(at + 1, at + 1 + near).some(({ sense }) => evidenceOf(sense)?.inside === true);
};
const LIKE: ReadonlySet<string> = new Set(['as', 'like']);
const SIMILE = 3;
