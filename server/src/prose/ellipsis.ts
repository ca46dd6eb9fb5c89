/**
 * The last pass: knows what a clause leaves out because another said it: objects to the left and right, the act of a choice, what a label
 * holds for.
 * Refuses to know foods: where nothing is named, what is meant is settled where bodies are known.
 */
import { type Clause, type EventDraft, NO_TEMPERATURES, NO_TIMES } from './clauses.ts';
import type { Act, PlaceKind, Slot, Where } from './event.ts';
import { jointOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';

export function share(pieces: readonly Piece[], clauses: readonly Clause[]): void {
  let label: EventDraft | undefined;
  let before: EventDraft | undefined;
  let flask: Where | undefined;
  for (let at = 0; at < clauses.length; at++) {
    const clause = clauses[at] as Clause;
    foretold(pieces, clauses, at);
    const { event } = clause;
    if (event === undefined) continue;
    if (before !== undefined && !clause.first && isLaidIn(pieces, clause)) layIn(event, before);
    if (event.verb === undefined && before !== undefined && clause.orElse) {
      // `in a hot oven 20 minutes, or in a slow one 40`
      event.act = before.act;
      if (before.cooks !== undefined) event.cooks = before.cooks;
    }
    underPressure(event);
    restedThere(pieces, clauses, at);
    if (clause.label && event.lasts !== 'no') label = event;
    else if (label !== undefined && PUTS.has(event.act)) {
      // `FERMENT: cover; set in a warm place 2 hours.`
      if (event.times.length > 0 && label.times.length === 0) {
        // One time is spent once.
        label.times = event.times;
        event.times = NO_TIMES;
      }
      if (event.until.length > 0 && label.until.length === 0) label.until = event.until;
      if (event.where.length > 0 && label.where.length === 0) label.where = event.where;
      if (event.temperatures.length > 0 && label.temperatures.length === 0) {
        label.temperatures = event.temperatures;
        event.temperatures = NO_TEMPERATURES;
      }
    }
    // `soak and drain the beans`
    if (before !== undefined && isBare(before) && joined(pieces, clause) && isOfSame(event))
      before.objects = whatOf(event);
    if (event.objects.length === 0) event.objects = NOTHING_NAMED(event);
    if (clause.first) flask = undefined;
    // `Scald the flask, fill and screw down`: it is the flask that is filled.
    if (READIES.has(event.act)) flask = event.where.find(({ is, not }) => is === 'hot' && !not) ?? flask;
    else if (flask !== undefined && PUTS.has(event.act) && event.where.length === 0)
      event.where = [{ ...flask, way: 'to' }];
    before = event;
  }
}

/** `Smoker up to 110 C, fish in, until it is 66 C`: that is where it goes. */
function layIn(event: EventDraft, before: EventDraft): void {
  const place = before.where.find(({ is, not }) => !not && is !== undefined && LAID_IN.has(is));
  if (before.verb !== undefined || place === undefined || event.times.length + event.until.length === 0) return;
  event.act = 'put';
  event.where = [{ ...place, way: 'to' }];
}
const LAID_IN: ReadonlySet<PlaceKind> = new Set<PlaceKind>(['smoker', 'oven', 'bath']);

/** `fish in`, and no more of an order. */
const isLaidIn = (pieces: readonly Piece[], { verb, event, to }: Clause): boolean =>
  event?.act === 'combine' &&
  pieces[verb]?.word === 'in' &&
  event.where.length === 0 &&
  (verb + 1 === to || pieces[verb + 1]?.sort === 'mark');

/** `It must rest three days, but it rests in the refrigerator`: the same, and there. */
function restedThere(pieces: readonly Piece[], clauses: readonly Clause[], at: number): void {
  const { event, verb } = clauses[at] as Clause;
  if (event === undefined || verb < 0 || !LIES.has(event.act) || event.where.length > 0 || event.times.length === 0)
    return;
  const key = verbOf(pieces[verb]?.sense ?? UNKNOWN)?.words[0];
  for (let next = at + 1; next < clauses.length && clauses[next]?.first === false; next++) {
    const { event: other, verb: again } = clauses[next] as Clause;
    if (other === undefined || again < 0 || other.said !== 'yes' || other.where.length === 0) continue;
    if (verbOf(pieces[again]?.sense ?? UNKNOWN)?.words[0] !== key || other.times.length > 0) continue;
    event.where = other.where;
    return;
  }
}
const LIES: ReadonlySet<Act> = new Set<Act>(['stay', 'rise', 'steep']);

/** `Pressure canner, vent 10 min, then 25 min at 11 lb`: what is under pressure for so long is heated, whatever else is done with the steam. */
function underPressure(event: EventDraft): void {
  const isTimed = event.times.some(({ kind }) => kind === 'spent');
  if (event.medium?.is !== 'pressure' || !isTimed || !LETS_STEAM.has(event.act)) return;
  event.act = 'heat';
  event.cooks = 'through';
  event.lasts = 'waits';
}
const LETS_STEAM: ReadonlySet<Act> = new Set<Act>(['open', 'close', 'unknown', 'put', 'adjust', 'ready']);

/** `To hold for tomorrow: spread it, and into the fridge`: what it is for is no stay beside that which the sentence says. */
function foretold(pieces: readonly Piece[], clauses: readonly Clause[], at: number): void {
  const clause = clauses[at] as Clause;
  const { event, label, verb } = clause;
  if (!label || event?.act !== 'stay' || event.where.length > 0 || pieces[verb]?.part !== 'purpose') return;
  for (let next = at + 1; next < clauses.length && clauses[next]?.first === false; next++) {
    const kept = clauses[next]?.event;
    if (kept === undefined || !kept.where.some(({ way, not }) => !not && (way === 'at' || way === 'to'))) continue;
    const times = event.times.filter(({ kind }) => kind !== 'point');
    if (times.length > 0 && kept.times.length === 0) kept.times = times;
    clause.event = undefined;
    return;
  }
}

/** What is done to a vessel before it is filled. */
const READIES: ReadonlySet<Act> = new Set(['heat', 'remove', 'ready']);

/** What is done with a thing that then lies for the time of the label. */
const PUTS: ReadonlySet<Act> = new Set(['put', 'cover', 'close', 'pack', 'return']);

/** A conjunction alone stands between its verb and the verb before it. */
function joined(pieces: readonly Piece[], clause: Clause): boolean {
  const first = pieces[clause.from] as Piece;
  const is = first.part === 'joint' ? jointOf(first.sense)?.is : undefined;
  return (is === 'conjunction' || is === 'or') && clause.verb === clause.from + 1;
}

/** Nothing is named that it acts on. */
const isBare = ({ objects }: EventDraft): boolean =>
  objects.every(({ by, start, end }) => by === 'nothing' && start === end);

/** `Simmer and add the cream`: what is added was not simmered. */
const isOfSame = ({ act, objects }: EventDraft): boolean =>
  objects.length > 0 && (!ADDS.has(act) || objects.every(({ by }) => by === 'vessel'));
const ADDS: ReadonlySet<Act> = new Set([...PUTS, 'combine', 'stuff', 'reserve', 'divide', 'eat', 'discard', 'unknown']);

const whatOf = ({ objects }: EventDraft): readonly Slot[] => objects.filter(({ role }) => role === 'what');

/** A slot of no width at the verb: what is acted on is not said. */
function NOTHING_NAMED({ verb, start }: EventDraft): readonly Slot[] {
  const at = verb?.end ?? start;
  return [{ start: at, end: at, role: 'what', by: 'nothing' }];
}
