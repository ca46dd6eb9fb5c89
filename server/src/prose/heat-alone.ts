/**
 * Knows what is heated where a clause says neither verb nor place: by a figure that only an oven has, by a sign that only heat makes.
 * Refuses to know clauses that say more (`verbless.ts`).
 */
import { celsiusOf } from '../notation/celsius.ts';
import type { SentenceItem } from '../notation/tree.ts';
import type { Clause, EventDraft } from './clauses.ts';
import type { Tells } from './event.ts';
import type { Piece } from './pieces.ts';
import { signIn, stateBehind } from './signs.ts';
import { LONGEST_IN_POT_MIN, ordered } from './verbless.ts';

/** `200 C, 30 minutes`: only an oven is so hot for so long. */
export function ovenAlone(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  { from, to }: Clause,
): EventDraft | undefined {
  const run = pieces.slice(from, to);
  const isTimed = run.some(({ time }) => time?.kind === 'spent' && time.minutes.low >= LEAST_BAKED_MIN);
  if (!isTimed || !saysAsHot(run, items, LEAST_OVEN_C)) return undefined;
  const event = ordered(pieces, from, to);
  event.as = 'told';
  event.act = 'heat';
  event.cooks = 'as read';
  event.lasts = 'waits';
  return event;
}
const LEAST_OVEN_C = 120;
const LEAST_BAKED_MIN = 5;

/** `Two at a time, two minutes, until just gold`: so long, and until heat has done what it does; nobody says by what. */
export function heatUntil(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clauses: readonly Clause[],
  at: number,
): EventDraft | undefined {
  const { from, to } = clauses[at] as Clause;
  const next = clauses[at + 1];
  const isTimed = pieces
    .slice(from, to)
    .some(({ time }) => time?.kind === 'spent' && time.minutes.high <= LONGEST_IN_POT_MIN);
  if (!isTimed || next?.opener !== 'until' || next.first) return undefined;
  const sign = signIn(pieces, next, stateBehind(clauses, at + 1));
  const isHot = saysAsHot(pieces.slice(next.from, next.to), items, LEAST_HOT_C);
  if (sign.is === undefined || !(isHot || OF_HEAT.has(sign.is))) return undefined;
  const event = ordered(pieces, from, to);
  event.act = 'heat';
  event.cooks = 'as read';
  event.lasts = 'waits';
  return event;
}

/** What lies in the cold, or in water, does not come to look so. */
const OF_HEAT: ReadonlySet<Tells> = new Set(['through', 'tender', 'colour', 'boiling', 'hot']);
const LEAST_HOT_C = 50;

const saysAsHot = (pieces: readonly Piece[], items: readonly SentenceItem[], celsius: number): boolean =>
  pieces.some(({ sort, from }) => {
    const figure = sort === 'temperature' ? items[from] : undefined;
    return figure?.kind === 'temperature' && celsiusOf(figure).low >= celsius;
  });
