/**
 * Knows what a clause waits for: the sign that its words tell, or what its verb says is then seen.
 * Refuses to know whose sign it is.
 */
import { type Clause, EventDraft, withOne } from './clauses.ts';
import type { Act, PlaceKind, Sign, Tells } from './event.ts';
import { evidenceOf, jointOf, signOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';

/** Where what a sign says ends: `until a ball that holds together`, `until thick enough to coat a spoon`. */
export function stateBehind(clauses: readonly Clause[], at: number): number {
  let last = at;
  while (clauses[last + 1]?.frame === 'state') last++;
  return (clauses[last] as Clause).to;
}

/** `until` and what it waits for; its words end before the piece `to`. */
export function signIn(pieces: readonly Piece[], clause: Clause, to: number): Sign {
  let tells: Tells | undefined;
  let celsius: Sign['celsius'];
  let not = false;
  let lacks = false;
  let inside = false;
  for (let at = clause.from; at < to; at++) {
    // `until the juices that run out are clear`: what stands behind tells where nothing before does.
    if (at >= clause.to && tells !== undefined) break;
    const piece = pieces[at] as Piece;
    const row = signOf(piece.sense);
    const joint = piece.part === 'joint' ? jointOf(piece.sense)?.is : undefined;
    if (joint === 'not' || joint === 'aux not') not = true;
    if (joint === 'lacks' || isWithout(pieces, at)) lacks = true;
    inside ||= isInside(piece);
    const thing = thingOf(piece.sense);
    // `the edge is set and the middle still swims`
    if (inside && row !== undefined && UNDONE.has(row.tells)) {
      tells = 'rare';
      break;
    }
    // Of several the last word says most: `until the butter is hot and brown`.
    if (row !== undefined) {
      tells = row.tells;
      celsius = row.celsius ?? celsius;
    } else if (piece.sort === 'temperature') tells ??= 'figure';
    else if (thing?.sort === 'place') tells ??= TELLS_AT[thing.is];
    else tells ??= tellsOf(verbOf(piece.sense)?.act, piece);
  }
  // `it still blushes within`
  if (tells === 'within' && inside) tells = 'rare';
  // `until it no longer steams`
  if (not && tells !== undefined) {
    tells = NO_LONGER[tells];
    celsius = undefined;
  }
  // `until it loses its pink`
  if (lacks && tells !== undefined && NO_LONGER[tells] !== undefined) {
    tells = NO_LONGER[tells];
    celsius = undefined;
  }
  const seenAt = lookedForAt(pieces, clause.from, to);
  const start = (pieces[clause.from] as Piece).start;
  let last = to - 1;
  while (last > clause.from && (pieces[last] as Piece).sort === 'mark') last--;
  return {
    start,
    end: (pieces[last] as Piece).end,
    is: tells,
    sure: tells === undefined ? 'unread' : 'said',
    from: clause.opener === 'until' ? 'until' : 'when',
    ...(seenAt && { at: seenAt }),
    ...(celsius && { celsius }),
  };
}

/** What says of the inside that it is not done. */
export const UNDONE: ReadonlySet<Tells | undefined> = new Set<Tells>(['rare', 'within']);

/** `no raw bits are left`; `grey without and pink within` lacks nothing. */
export const isWithout = (pieces: readonly Piece[], at: number): boolean =>
  pieces[at]?.part === 'joint' &&
  jointOf(pieces[at]?.sense ?? UNKNOWN)?.way === 'without' &&
  pieces[at + 1]?.part !== 'joint';

export const isInside = ({ sense, sort }: Piece): boolean => sort !== 'mark' && evidenceOf(sense)?.inside === true;

/** The vessel, place or medium that a sign speaks of: in which it is tried, or that is seen to be so. */
function lookedForAt(pieces: readonly Piece[], from: number, to: number): Sign['at'] {
  for (let at = from; at < to; at++) {
    const { part, sort, sense, start, end } = pieces[at] as Piece;
    if (part !== 'thing' || sort === 'mark' || thingOf(sense) === undefined) continue;
    return { start, end };
  }
  return undefined;
}

/** `Scramble the eggs firm`: what heat makes of its object stands behind it, at the end. */
export function madeSo(pieces: readonly Piece[], clause: Clause): Sign | undefined {
  const told = leftRare(pieces, clause) ?? warmedTo(pieces, clause);
  if (told !== undefined) return told;
  for (let at = clause.verb + 2; clause.verb >= 0 && at < clause.to; at++) {
    const piece = pieces[at] as Piece;
    const isLast = at + 1 === clause.to || pieces[at + 1]?.sort === 'mark';
    const isBehind = piece.part === 'describes' || (piece.part === 'thing' && pieces[at - 1]?.sort === 'name');
    const tells = isLast && isBehind ? signOf(piece.sense)?.tells : undefined;
    if (tells === 'set' || tells === 'through')
      return { start: piece.start, end: piece.end, is: tells, sure: 'said', from: 'until' };
  }
  return undefined;
}

/** `The juices should run clear`, `it must be white right through`: what is looked for, in a thought of its own. */
export function takeDue(pieces: readonly Piece[], clause: Clause): void {
  if (clause.event !== undefined && clause.event.act !== 'unknown') return;
  const due = mustBe(pieces, clause);
  if (due === undefined) return;
  clause.event ??= new EventDraft(due.start, due.end, undefined, undefined, 'told');
  clause.event.act = 'read';
  clause.event.until = withOne(clause.event.until, due);
}

/** What something is said to have to be, where that is how far it is cooked. */
function mustBe(pieces: readonly Piece[], { from, to, opener }: Clause): Sign | undefined {
  if (opener !== undefined) return undefined;
  let isDue = false;
  for (let at = from; at < to; at++) {
    const { sense, sort } = pieces[at] as Piece;
    const is = sort === 'mark' ? undefined : jointOf(sense)?.is;
    if (is === 'not' || is === 'aux not') return undefined;
    isDue ||= is === 'modal' || is === 'aux';
    if (!isDue || signOf(sense)?.tells !== 'through') continue;
    const [first, last] = [pieces[from] as Piece, pieces[to - 1] as Piece];
    return { start: first.start, end: last.end, is: 'through', sure: 'said', from: 'until' };
  }
  return undefined;
}

/** `4 minutes a side for medium-rare`, `fry the duck rare`: on purpose. */
function leftRare(pieces: readonly Piece[], { from, to, verb }: Clause): Sign | undefined {
  for (let at = Math.max(from, verb + 1); at < to; at++) {
    const { start, end, part, sense } = pieces[at] as Piece;
    if (signOf(sense)?.tells !== 'rare') continue;
    const before = jointOf(pieces[at - 1]?.sense ?? UNKNOWN);
    const next = pieces[at + 1];
    const isLast = at + 1 === to || next?.sort === 'mark' || next?.sort === 'temperature';
    const isFor = before?.way === 'for' || before?.is === 'to' || part === 'describes';
    if (isLast && isFor) return { start, end, is: 'rare', sure: 'said', from: 'until' };
  }
  return undefined;
}

/** `Warm to blood heat in a cup of water` */
function warmedTo(pieces: readonly Piece[], { to, verb }: Clause): Sign | undefined {
  for (let at = verb + 2; verb >= 0 && at < to; at++) {
    const { start, end, sense } = pieces[at] as Piece;
    const row = signOf(sense);
    if (row?.tells === 'warm' && row.celsius !== undefined && jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'to')
      return { start, end, is: 'warm', sure: 'said', from: 'until', celsius: row.celsius };
  }
  return undefined;
}

/** What is left to be said where a sign is denied. */
const NO_LONGER: Readonly<Partial<Record<Tells, Tells>>> = {
  boiling: 'hot',
  hot: 'warm',
  warm: 'cold',
  rare: 'through',
  within: 'set',
};

/** `until at room temperature` */
const TELLS_AT: Readonly<Partial<Record<PlaceKind, Tells>>> = { frozen: 'frozen', cold: 'cold', room: 'warm' };

/** What a verb says is seen where it is waited for: `until it boils`. */
function tellsOf(act: Act | undefined, { part }: Piece): Tells | undefined {
  if (act === undefined || (part !== 'framed' && part !== 'describes')) return undefined;
  return SEEN[act];
}

const SEEN: Readonly<Partial<Record<Act, Tells>>> = {
  heat: 'hot',
  close: 'closed',
  cover: 'closed',
  pack: 'closed',
  cool: 'cold',
  freeze: 'frozen',
  thaw: 'thawed',
  rise: 'risen',
  dry: 'dry',
  combine: 'mixed',
};
