/**
 * Knows the clauses that tell in passing where food has lain: `once it has stood on the sill overnight, skim it`, `only after it has been in the shed`.
 * Refuses to know clauses that order.
 */
import type { SentenceItem } from '../notation/tree.ts';
import { type Clause, EventDraft } from './clauses.ts';
import type { Act } from './event.ts';
import { Filler, STAYS } from './filler.ts';
import { jointOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import { temperaturesIn } from './temperatures.ts';

/** What has happened before what its sentence orders; undefined where the clause says no place and time of it, or what is then thrown away. */
export function lainIn(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clauses: readonly Clause[],
  at: number,
): EventDraft | undefined {
  const clause = clauses[at] as Clause;
  if (clause.opener !== 'when' && clause.opener !== 'after') return undefined;
  const own = pieces.slice(clause.from, clause.to);
  // `After a rest of two hours on the sill`
  const isNoun = clause.opener === 'after' && clause.verb < 0;
  const isBefore = isNoun || own.some(({ sense }) => jointOf(sense)?.is === 'had');
  if (!isBefore || !own.some(({ sort }) => sort === 'time') || isAgainst(pieces, clauses, at)) return undefined;
  const verb = own.find(
    ({ part, sense }) => (part === 'framed' || part === 'describes') && HAPPENS.has(verbOf(sense)?.act ?? 'unknown'),
  );
  // `it has been in the shed`
  if (verb === undefined && own.some(({ part }) => part === 'framed')) return undefined;
  const span = verb && { start: verb.start, end: verb.end };
  const row = verb && verbOf(verb.sense);
  const event = new EventDraft((own[0] as Piece).start, (own.at(-1) as Piece).end, span, row, 'before');
  if (row === undefined) {
    event.act = 'stay';
    event.lasts = 'waits';
  }
  new Filler(pieces, items, clause, event).fill();
  event.temperatures = temperaturesIn(pieces, items, clause, event);
  // `when it has boiled twenty minutes`
  if (event.act === 'heat' && event.lasts !== 'no') return event;
  const isPlaced = event.where.some(({ way, not }) => way === 'at' && !not);
  return isPlaced || event.temperatures.length > 0 ? event : undefined;
}

const HAPPENS: ReadonlySet<Act> = new Set([...STAYS, 'heat']);

/** `Throw it out once it has stood there`, `never eat it after it has`. */
function isAgainst(pieces: readonly Piece[], clauses: readonly Clause[], at: number): boolean {
  const [before, own, next] = [clauses[at - 1], clauses[at] as Clause, clauses[at + 1]];
  const isLed = !own.first && before !== undefined;
  return [isLed ? before : undefined, next?.first ? undefined : next].some((clause) => {
    if (clause === undefined || clause.verb < 0) return false;
    const isDenied = pieces.slice(clause.from, clause.verb).some(({ sense }) => jointOf(sense)?.is === 'not');
    return isDenied || verbOf(pieces[clause.verb]?.sense ?? UNKNOWN)?.act === 'discard';
  });
}
