/**
 * Knows whose a time is: the nearest earlier verb's that can last, or its own clause's where that says a place.
 * Refuses to know how times are said (`times.ts`).
 */
import { type Clause, type EventDraft, withOne } from './clauses.ts';
import type { Act, PlaceKind, TimeKind, TimeSaid } from './event.ts';
import { isTimed } from './frame.ts';
import { jointOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { FoundTime, Piece } from './pieces.ts';

/** Gives every time of the sentence to one event. */
export function giveTimes(pieces: readonly Piece[], clauses: readonly Clause[]): void {
  let clauseAt = 0;
  let last: { readonly event: EventDraft; readonly choice: number } | undefined;
  let choices = 0;
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at] as Piece;
    if (piece.time === undefined) continue;
    while (clauseAt < clauses.length - 1 && (clauses[clauseAt] as Clause).to <= at) clauseAt++;
    const time = usedIn(piece.time, pieces, clauses[clauseAt] as Clause, at);
    if (isOfSign(pieces, at, clauses[clauseAt] as Clause) || isAge(pieces, at)) continue;
    const labelled =
      clauses[clauseAt]?.event?.craft === 'label' && time.kind !== 'every' ? coldOf(clauses, clauseAt) : undefined;
    if (labelled !== undefined) {
      labelled.times = withOne(labelled.times, saidOf(piece, time, 'life', 0));
      continue;
    }
    const event =
      time.orElse && last !== undefined && clauses[clauseAt]?.from !== at
        ? last.event
        : (takerOf(pieces, clauses, clauseAt, at) ?? owner(pieces, clauses, clauseAt, time));
    if (event === undefined || isNewLength(pieces[at - 1], event)) continue;
    let choice = 0;
    if (time.orElse && last?.event === event) {
      choice = last.choice === 0 ? ++choices : last.choice;
      if (last.choice === 0)
        event.times = [...event.times.slice(0, -1), { ...(event.times.at(-1) as TimeSaid), choice }];
    }
    event.times = withOne(event.times, saidOf(piece, time, kindOf(time, event), choice));
    // Nothing is kept hot for days.
    if (event.act === 'stay' && event.cooks === 'as read' && time.minutes.low >= DAY_MIN) delete event.cooks;
    last = { event, choice };
  }
}

/** `Use in 3 days`: by then it is gone. */
function usedIn(time: FoundTime, pieces: readonly Piece[], { verb, event }: Clause, at: number): FoundTime {
  const isNext = verb === at - 1 || (verb === at - 2 && jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'it');
  if (time.kind !== 'spent' || time.minutes.low < DAY_MIN || !isNext || event === undefined) return time;
  const isUsed =
    event.act === 'eat' || (event.act === 'unknown' && verbOf(pieces[verb]?.sense ?? UNKNOWN) !== undefined);
  return isUsed && event.as === 'ordered' ? { ...time, kind: 'limit' } : time;
}

/** `Label 5 days, reach-in`: what is written on it is how long it is good there, where the sentence says a place. */
function coldOf(clauses: readonly Clause[], at: number): EventDraft | undefined {
  let from = at;
  let to = at + 1;
  while (from > 0 && clauses[from]?.first === false) from--;
  while (to < clauses.length && clauses[to]?.first === false) to++;
  return clauses
    .slice(from, to)
    .map(({ event }) => event)
    .findLast((event) => event?.where.some(({ is, not, way }) => !not && way !== 'out of' && COLD.has(is)));
}
const COLD: ReadonlySet<PlaceKind | undefined> = new Set<PlaceKind>(['cold', 'frozen']);

/** `From about nine months, sitting up.`: at the head of a sentence, without an end, it is how old whoever eats it must be. */
function isAge(pieces: readonly Piece[], at: number): boolean {
  const { time } = pieces[at] as Piece;
  const from = pieces[at - 1];
  const isFirst = pieces[at - 2] === undefined || pieces[at - 2]?.word === '.';
  return isFirst && jointOf(from?.sense ?? UNKNOWN)?.way === 'out of' && (time?.minutes.low ?? 0) >= LEAST_AGE_MIN;
}
/** Four months: before that a child drinks. */
const LEAST_AGE_MIN = 120 * 1440;

/** `If left for 10 minutes`, `when it has boiled 20 minutes`: what is waited for, and no time of an order. */
function isOfSign(pieces: readonly Piece[], at: number, { from, frame, opener, event }: Clause): boolean {
  if (event !== undefined) return false;
  if (frame === 'if') return !pieces.slice(from, at).some(({ sort }) => sort === 'mark');
  const { part } = pieces[at - 1] ?? {};
  return frame === 'sign' && opener === 'when' && (part === 'framed' || part === 'describes');
}

/** `it takes two hours to roast`: what a clause of its own says that it takes so long. */
function takerOf(
  pieces: readonly Piece[],
  clauses: readonly Clause[],
  clauseAt: number,
  at: number,
): EventDraft | undefined {
  const isOwn = (clauses[clauseAt] as Clause).verb === at + 2;
  const clause = clauses[isOwn ? clauseAt : clauseAt + 1];
  return clause?.verb === at + 2 && isTimed(pieces, clause) ? clause.event : undefined;
}

/** `Reduce the baking time to 1 hour`: no time is spent. */
function isNewLength(before: Piece | undefined, { act }: EventDraft): boolean {
  const joint = before && jointOf(before.sense);
  return act === 'adjust' && (joint?.is === 'to' || joint?.way === 'by');
}

function saidOf({ start, end }: Piece, { minutes, per, within }: FoundTime, kind: TimeKind, choice: number): TimeSaid {
  return { start, end, minutes, kind, ...(per && { per }), choice, ...(within && { within }), sure: 'said' };
}

/** `Keeps up to 3 days`, `use within a week`: how long it is good. `Add it 10 min before the end`: when, since adding does not last. */
function kindOf({ kind, before, minutes }: FoundTime, event: EventDraft): TimeKind {
  const isFinished = event.act === 'heat' && event.cooks === 'as read' && event.where.length === 0;
  if (
    minutes.low >= DAY_MIN &&
    (isFinished ? kind === 'spent' || kind === 'limit' : kind === 'limit' && event.act === 'heat')
  ) {
    eats(event);
    return 'life';
  }
  // `Chiller to 4 C within the hour`: by then it is cold.
  const isReached = event.temperatures.some(({ of }) => of === 'food');
  if (kind === 'limit' && !isReached && LIVES.has(event.act)) return 'life';
  return kind === 'spent' && before && !canLast(event, kind) ? 'point' : kind;
}
const DAY_MIN = 1440;

/** `Finish it within two days.` */
function eats(event: EventDraft): void {
  event.act = 'eat';
  delete event.cooks;
}

/** Of `use` no row says what it does. */
const LIVES: ReadonlySet<Act> = new Set(['stay', 'eat', 'unknown']);

function owner(
  pieces: readonly Piece[],
  clauses: readonly Clause[],
  at: number,
  { kind, before, minutes }: FoundTime,
): EventDraft | undefined {
  const own = (clauses[at] as Clause).event;
  const left = kind === 'spent' || kind === 'until' ? leftAlone(pieces, clauses, at) : undefined;
  if (left !== undefined) return left;
  const awaited = heatedBefore(clauses, at);
  if (awaited !== undefined && kind === 'spent') return awaited;
  // Nothing is cooked for days: they are of what comes of it.
  const isLong = minutes.low > LONGEST_COOKED_MIN;
  if (own !== undefined && (canLast(own, kind) || kind === 'point' || kind === 'limit' || before || liesSomewhere(own)))
    return own;
  let nearest: EventDraft | undefined;
  // A sentence before has it only where it goes on there.
  let isBehind = false;
  for (let i = at; i >= 0; i--) {
    const clause = clauses[i] as Clause;
    const { event } = clause;
    if (event !== undefined) {
      if (canLast(event, kind) && !(isLong && event.act === 'heat'))
        // `Cover with foil, turn down to 110 C and go to bed`: so long it is heated.
        return own !== undefined && isTurnedTo(own) && CLOSES.has(event.act) ? own : event;
      if (!isBehind) nearest ??= event;
    }
    // `Simmer. Ten minutes.`: back over a sentence that has nothing else.
    if (clause.first && nearest !== undefined) break;
    isBehind ||= clause.first;
  }
  if (own !== undefined || nearest !== undefined) return own ?? nearest;
  // `Next morning.` is when what comes behind it is done.
  let isLabel = kind === 'point' && (clauses[at] as Clause).first;
  for (let i = at + 1; i < clauses.length; i++) {
    const { event, first } = clauses[i] as Clause;
    if (first && !isLabel) return undefined;
    isLabel &&= !first;
    // `Ten minutes before it is done, add the parsley.`
    if (event?.inPassing) nearest ??= event;
    else if (event !== undefined) return event;
  }
  return nearest;
}

/** An oven is set to a figure. */
const isTurnedTo = ({ act, temperatures }: EventDraft): boolean =>
  act === 'adjust' && temperatures.some(({ of, bound }) => of === 'oven' && bound !== 'change');
const CLOSES: ReadonlySet<Act> = new Set<Act>(['cover', 'close', 'put', 'pack']);

/** `Bath at 60 C before they go in. Two hours.`: so long they are in what was made hot for them. */
function heatedBefore(clauses: readonly Clause[], at: number): EventDraft | undefined {
  let last = at;
  if (clauses[at]?.event === undefined) last--;
  const { event, opener } = clauses[last] ?? {};
  if (opener !== 'before' || event?.act !== 'put' || event.where.length > 0 || event.objects.length > 1)
    return undefined;
  const heated = clauses[last - 1]?.event;
  return heated?.act === 'heat' && heated.verb === undefined && heated.temperatures.length > 0 ? heated : undefined;
}

/** `Set it on the counter and do not touch it for two hours`: so long it stands there. */
function leftAlone(pieces: readonly Piece[], clauses: readonly Clause[], at: number): EventDraft | undefined {
  const { event, from, verb, first } = clauses[at] as Clause;
  const before = clauses[at - 1]?.event;
  if (first || before === undefined || event === undefined || !DISTURBS.has(event.act) || event.where.length > 0)
    return undefined;
  const isDenied = pieces.slice(from, verb).some(({ sense }) => jointOf(sense)?.is === 'not');
  return isDenied && (before.lasts === 'waits' || liesSomewhere(before)) ? before : undefined;
}

/** What nobody does to food that is left alone. */
const DISTURBS: ReadonlySet<Act> = new Set([
  'put',
  'remove',
  'combine',
  'cut',
  'open',
  'return',
  'adjust',
  'read',
  'eat',
  'unknown',
]);

/** Bones, or a spit, two days (judgement). */
const LONGEST_COOKED_MIN = 2880;

/** `Set in a cool place 2 hours`, `throw into boiling water; …`. */
const liesSomewhere = ({ act, where, medium }: EventDraft): boolean =>
  where.some(({ way }) => way === 'at' || way === 'to') || (act === 'put' && medium !== undefined);

/** What goes on beside another takes only an interval: `simmer 2 hours, stirring every 10 minutes`. */
const canLast = ({ act, lasts, as, medium }: EventDraft, kind: TimeKind): boolean =>
  as === 'beside' ? kind === 'every' : lasts !== 'no' || (act === 'put' && medium !== undefined);
