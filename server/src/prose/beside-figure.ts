/**
 * Knows what stands right before and behind a temperature: what opens it (`to`, `below`), and which of its neighbours is so warm by that.
 * Refuses to know what the rest of the clause says of it (`temperatures.ts`).
 */
import type { TemperatureNode } from '../notation/tree.ts';
import { isDenied } from './ahead.ts';
import type { Clause } from './clauses.ts';
import type { Act, TemperatureSaid } from './event.ts';
import { DENIED } from './figures.ts';
import { evidenceOf, isStrange, jointOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import type { JointRow } from './rows.ts';

export interface BesideFigure {
  /** `to`, `at`, `below`: what opens the figure. */
  readonly joint: JointRow | undefined;
  readonly bound: TemperatureSaid['bound'];
  /** The piece that is brought to so much: `in fat heated to 190 C`; -1 where there is none. */
  readonly brought: number;
  /** It comes to so much by itself: `rises above 21 C`. */
  readonly moves: boolean;
  /** What is named right before is so warm: `cream at 14 C`. */
  readonly isOfName: boolean;
}

/** What stands beside the figure of the pieces `at` to `last`. */
export function besideFigure(
  pieces: readonly Piece[],
  clause: Clause,
  at: number,
  last: number,
  node: TemperatureNode,
): BesideFigure {
  const opened = openerOf(pieces, clause, at);
  const { at: opens, joint } = opened ?? openerOfList(pieces, clause, at) ?? { at: -1, joint: undefined };
  const bound = boundBehind(pieces, last, node) ?? boundBefore(pieces, clause, at) ?? 'is';
  return {
    joint,
    // `which never gets above 10 C`
    bound:
      (clause.frame === 'state' && isDenied(pieces, clause.from, at)) || isNeverSo(pieces, clause, at)
        ? DENIED[bound]
        : bound,
    brought: opens > 0 ? broughtTo(pieces, opens) : -1,
    moves: opens > 0 && movesTo(pieces, opens),
    isOfName: at > 0 && isNameAt(pieces, opens > 0 ? opens : at - 1),
  };
}

/** `It thaws in there, and the thermometer must never be above 5 C`: denied behind the verb of its clause, right before. */
function isNeverSo(pieces: readonly Piece[], { from, verb, frame }: Clause, at: number): boolean {
  if (frame === 'state') return false;
  for (let i = at - 1; i > verb && i >= at - NEVER_BEFORE; i--) {
    const { sort, sense } = pieces[i] as Piece;
    if (sort !== 'word') return false;
    const is = jointOf(sense)?.is;
    if (is === 'not' || is === 'aux not') return verb >= 0 || i > from;
  }
  return false;
}
const NEVER_BEFORE = 4;

interface Opener {
  readonly at: number;
  readonly joint: JointRow;
}

/** The word that opens the figure, behind what may stand before it (`an internal temperature of`). */
function openerOf(pieces: readonly Piece[], { from }: Clause, at: number): Opener | undefined {
  for (let i = at - 1; i >= 0; i--) {
    const piece = pieces[i] as Piece;
    const row = piece.sort === 'word' ? jointOf(piece.sense) : undefined;
    if (row !== undefined && row.adds.length > 0) {
      // `to below 5 C`
      const outer = jointOf(pieces[i - 1]?.sense ?? UNKNOWN);
      return row.bound !== undefined && outer?.is === 'to' ? { at: i - 1, joint: outer } : { at: i, joint: row };
    }
    if (!passes(piece, row) || i < from) return undefined;
  }
  return undefined;
}

/** `at a checked 75 C`, `at a steady 62 C` */
function passes(piece: Piece, row: JointRow | undefined): boolean {
  if (row !== undefined) return PASSES.has(row.is) || row.way === 'of';
  const isSaidOf = piece.sort === 'word' && (piece.part === 'describes' || isStrange(piece.sense));
  return isSaidOf || evidenceOf(piece.sense) !== undefined;
}

const PASSES: ReadonlySet<JointRow['is']> = new Set(['article', 'adjective', 'adverb', 'bound', 'quantity', 'number']);

/** `to 60 C for rare, 70 C for well done`: of a list the first says how all are meant. */
function openerOfList(pieces: readonly Piece[], clause: Clause, at: number): Opener | undefined {
  const before = pieces[at - 1];
  const is = jointOf(before?.sense ?? UNKNOWN)?.is;
  if (before?.word !== ',' && is !== 'or' && is !== 'conjunction') return undefined;
  for (let i = at - 1; i >= clause.from; i--) {
    const { sort, sense, part } = pieces[i] as Piece;
    if (sort === 'temperature') return openerOf(pieces, clause, i) ?? openerOfList(pieces, clause, i);
    if (part === 'verb' || (jointOf(sense)?.adds.length ?? 0) > 0) return undefined;
  }
  return undefined;
}

function boundBefore(pieces: readonly Piece[], { from }: Clause, at: number): TemperatureSaid['bound'] | undefined {
  let bound: TemperatureSaid['bound'] | undefined;
  for (let i = at - 1; i >= 0; i--) {
    const piece = pieces[i] as Piece;
    const row = piece.sort === 'word' ? jointOf(piece.sense) : undefined;
    bound = row?.bound ?? bound;
    if ((row !== undefined && row.adds.length > 0) || !passes(piece, row) || i < from) break;
  }
  return bound;
}

/** So many words behind it say what it is set against. */
const NEAR = 3;
/** Two heats that a cook sets against each other are no further apart, on either scale (judgement). */
export const MOST_APART = 60;

/** `41 F. or lower`; `8 degrees above that of water` is a difference, and `above 3,500 feet` says nothing of the figure. */
function boundBehind(
  pieces: readonly Piece[],
  last: number,
  { lowDegrees, highDegrees, unit }: TemperatureNode,
): TemperatureSaid['bound'] | undefined {
  const row = jointOf(pieces[last + 1]?.sense ?? UNKNOWN);
  if (row === undefined || row.is !== 'preposition') return row?.bound;
  if (row.bound === undefined && row.way !== 'over') return undefined;
  // `60 C over the warm water` is a place.
  const isApart = pieces
    .slice(last + 2, last + 2 + NEAR)
    .some(({ sense }) => evidenceOf(sense) !== undefined || jointOf(sense)?.is === 'which');
  return isApart && lowDegrees > 0 && highDegrees <= MOST_APART && unit !== 'gas' ? 'change' : undefined;
}

/** The thing that the words before `to` say is brought there: `in fat heated to 190 C`. What is cooked to so much is the food. */
function broughtTo(pieces: readonly Piece[], to: number): number {
  const by = pieces[to - 1];
  if (by?.part !== 'describes' || jointOf((pieces[to] as Piece).sense)?.is !== 'to') return -1;
  const row = verbOf(by.sense);
  return row !== undefined && BRINGS.has(row.act) && (row.act !== 'heat' || row.cooks === 'barely') ? to - 2 : -1;
}

const BRINGS: ReadonlySet<Act> = new Set(['heat', 'cool', 'ready']);

/** A verb right before that says only that it comes to be so warm. */
function movesTo(pieces: readonly Piece[], opens: number): boolean {
  const verb = pieces[opens - 1];
  if (verb === undefined || verb.part === 'thing' || verb.part === 'joint') return false;
  const row = verbOf(verb.sense);
  const isBound = jointOf((pieces[opens] as Piece).sense)?.bound !== undefined;
  return row !== undefined && isBound && MOVES.has(row.act);
}

const MOVES: ReadonlySet<Act> = new Set(['unknown', 'rise', 'put']);

/** `cream at 14 C`, `the butter should be about 16 C`: a name before `at` or `is`. */
function isNameAt(pieces: readonly Piece[], opens: number): boolean {
  const isAt = jointOf((pieces[opens] as Piece).sense)?.way === 'at';
  for (let i = isAt ? opens - 1 : opens; i >= 0; i--) {
    const piece = pieces[i] as Piece;
    if (piece.sort === 'name') return isAt || i < opens;
    const is = jointOf(piece.sense)?.is;
    if (is === 'aux' || is === 'modal') continue;
    // `the liquid should be`: of what is around the food it is no more than a name.
    const thing = thingOf(piece.sense);
    return i < opens && thing?.sort === 'medium' && thing.figure.length === 0;
  }
  return false;
}

/** `in a hot 180 C oven`: an article or preposition opens what it describes. */
export function isBeforeThing(pieces: readonly Piece[], at: number): boolean {
  for (let i = at - 1; i >= 0; i--) {
    const { sense, part } = pieces[i] as Piece;
    const joint = jointOf(sense);
    if (joint?.is === 'article') return true;
    if (joint?.is === 'preposition') return joint.adds.length === 0;
    if (joint?.is !== 'adjective' && joint?.is !== 'adverb' && part !== 'describes') return false;
  }
  return false;
}
