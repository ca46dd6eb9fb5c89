/**
 * The pass that fills events: what they take, where, in what, at what temperature, until what sign.
 * Refuses to know whose a time is (`spans.ts`), and what an event takes over from another (`ellipsis.ts`).
 */
import type { SentenceItem } from '../notation/tree.ts';
import { takesObject } from './ahead.ts';
import { type Clause, EventDraft, withOne } from './clauses.ts';
import { ALREADY, heldAt } from './described.ts';
import type { Act, PlaceKind, Sign, TemperatureSaid, Where } from './event.ts';
import { Filler, STAYS } from './filler.ts';
import { heatUntil, ovenAlone } from './heat-alone.ts';
import { lainIn } from './lain.ts';
import { formOf, jointOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import { goOn, heatAt, inferred, passFigures } from './of-place.ts';
import type { Piece } from './pieces.ts';
import { madeSo, signIn, stateBehind, takeDue } from './signs.ts';
import { temperaturesIn } from './temperatures.ts';
import { topicBits, topicsAt } from './topics.ts';
import { ACT_AT, figureAlone, nameAlone, namesPutIn, verblessEvent, warmthTold } from './verbless.ts';

/** Fills the event of each clause; a clause without a verb that says a place gets one. Signs go to the event that they end or begin. */
export function fill(pieces: readonly Piece[], items: readonly SentenceItem[], clauses: readonly Clause[]): void {
  let before: Clause | undefined;
  let start = 0;
  const told: Clause[] = [];
  const waiting: { readonly sign: Sign; readonly clause: Clause }[] = [];
  for (let at = 0; at < clauses.length; at++) {
    const clause = clauses[at] as Clause;
    if (clause.first) {
      giveSigns(pieces, items, waiting.splice(0), before?.event);
      if (before === undefined) fillFramed(pieces, items, clauses, start, at);
      before = undefined;
      told.length = 0;
      start = at;
    }
    if (clause.frame === 'sign') {
      const sign = signIn(pieces, clause, stateBehind(clauses, at));
      clause.sign = sign;
      const isNext = before === undefined || (sign.from === 'when' && isNewThought(pieces, clause));
      const event = isNext ? undefined : goingOn(clauses, at);
      if (event === undefined) waiting.push({ sign, clause });
      else {
        event.until = withOne(event.until, sign);
        giveFigures(pieces, items, clause, event);
      }
      clause.event = lainIn(pieces, items, clauses, at);
      continue;
    }
    if (clause.frame === 'state') clause.event = lainIn(pieces, items, clauses, at);
    if (clause.event !== undefined && clause.frame === 'state') continue;
    if (clause.frame === 'state' && clause.opener === 'which') {
      giveState(pieces, clause, before?.event);
      if (before?.event !== undefined) staysThere(pieces, clause, before.event);
      giveWarmth(pieces, clause, before?.event);
    }
    const bracketOf = clause.frame === 'verbless' && pieces[clause.from - 1]?.word === '(' ? before?.event : undefined;
    // `at 350 F. (moderate oven)`
    if (bracketOf !== undefined) new Filler(pieces, items, clause, bracketOf).fill();
    else if (clause.frame === 'verbless')
      clause.event =
        verblessEvent(pieces, items, clause) ??
        nameAlone(pieces, clause) ??
        (before === undefined
          ? (heatUntil(pieces, items, clauses, at) ?? ovenAlone(pieces, items, clause) ?? figureAlone(pieces, clause))
          : undefined) ??
        warmthTold(pieces, clause) ??
        namesPutIn(pieces, clause);
    takeDue(pieces, clause);
    const { event } = clause;
    if (event === undefined) {
      // A bracket, or what is only told of what is done: `(375 F)`.
      if (before?.event !== undefined) giveFigures(pieces, items, clause, before.event);
      else if (clause.frame === 'verbless') told.push(clause);
      continue;
    }
    for (const { sign, clause: of } of waiting.splice(0)) {
      event.until = withOne(event.until, sign);
      giveFigures(pieces, items, of, event);
    }
    const filler = new Filler(pieces, items, clause, event);
    filler.fill();
    const made = event.act === 'heat' ? madeSo(pieces, clause) : undefined;
    if (made !== undefined) event.until = withOne(event.until, made);
    impliedBy(pieces[clause.verb], event);
    if (isPutIn(pieces[clause.verb]) || (event.act === 'cut' && isOver(pieces, clause))) event.act = 'combine';
    if (event.craft === 'cut' && isInto(pieces, items, clause)) delete event.craft;
    if (isOnlySteaming(pieces, clause, event)) {
      clause.event = undefined;
      continue;
    }
    actAtPlace(event);
    // An insulated box keeps what lies on ice cold, and so does a table.
    if (event.medium?.is === 'ice') event.where = event.where.map(onIce);
    if (filler.turnedOff && event.where.length === 0) event.where = [turnedOffIn(pieces, clause, event)];
    giveFigures(pieces, items, clause, figured(clauses, at, event));
    // `The oil (180 C) is poured over`
    for (const of of told.splice(0)) giveFigures(pieces, items, of, event);
    heatsAtFigure(event, clause);
    if (before?.event !== undefined) {
      passFigures(event, before.event);
      goOn(event, before.event);
    }
    if (clause.verb >= 0) giveWarmth(pieces, clause, event);
    before = clause;
  }
  giveSigns(pieces, items, waiting, before?.event);
  if (before === undefined) fillFramed(pieces, items, clauses, start, clauses.length);
}

/** What is kept so warm as words say lies nowhere else: `keep it lukewarm in the bain-marie`. */
function giveWarmth(pieces: readonly Piece[], { from, to }: Clause, event: EventDraft | undefined): void {
  if (event?.act !== 'stay') return;
  const warmth = heldAt(pieces, from, to);
  if (warmth !== undefined) event.where = withOne(event.where, warmth);
}

/** `It is pushed to the side of the range, where it sits till nine`: it was put there to lie there. */
function staysThere(pieces: readonly Piece[], { from, to }: Clause, event: EventDraft): void {
  if (!PUTS.has(event.act) || !event.where.some(({ way, not }) => !not && (way === 'at' || way === 'to'))) return;
  const isHere = pieces[from]?.word === 'where';
  const stays = pieces
    .slice(from, to)
    .some(({ part, sense }) => (part === 'framed' || part === 'describes') && verbOf(sense)?.act === 'stay');
  if (!isHere || !stays) return;
  event.act = 'stay';
  event.lasts = 'waits';
}

/** What brings food to a place. */
const PUTS: ReadonlySet<Act> = new Set<Act>(['put', 'remove', 'return', 'unknown', 'cut', 'ready']);

const ON_ICE: ReadonlySet<PlaceKind | undefined> = new Set<PlaceKind>(['hot', 'room', 'outdoors']);
function onIce(where: Where): Where {
  if (!ON_ICE.has(where.is) || where.not) return where;
  const { celsius: _, ...place } = where;
  return { ...place, is: 'cold' };
}

/** `It improves when it is left out overnight`: all that happens is said as a condition. */
function fillFramed(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clauses: readonly Clause[],
  from: number,
  to: number,
): void {
  for (const clause of clauses.slice(from, to)) {
    if (clause.opener !== 'when' && clause.opener !== 'if') continue;
    const verb = pieces
      .slice(clause.from, clause.to)
      .find(
        ({ part, sense }) => (part === 'framed' || part === 'describes') && STAYS.has(verbOf(sense)?.act ?? 'unknown'),
      );
    if (verb === undefined) {
      giveReading(pieces, items, clause);
      continue;
    }
    const event = new EventDraft(
      (pieces[clause.from] as Piece).start,
      (pieces[clause.to - 1] as Piece).end,
      { start: verb.start, end: verb.end },
      verbOf(verb.sense),
      'told',
    );
    event.said = 'if';
    clause.event = event;
    new Filler(pieces, items, clause, event).fill();
    impliedBy(verb, event);
    giveFigures(pieces, items, clause, event);
  }
}

/** `When the probe says 63 C it is done`: a figure that is read is all that is said. */
function giveReading(pieces: readonly Piece[], items: readonly SentenceItem[], clause: Clause): void {
  const event = figureAlone(pieces, clause);
  if (event === undefined) return;
  if (clause.opener === 'if') event.said = 'if';
  giveFigures(pieces, items, clause, event);
  if (event.temperatures.some(({ of }) => of === 'food')) clause.event = event;
}

/** Signs that no event of their sentence follows are of its last. */
function giveSigns(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  waiting: readonly { readonly sign: Sign; readonly clause: Clause }[],
  last: EventDraft | undefined,
): void {
  if (last === undefined) return;
  for (const { sign, clause } of waiting) {
    last.until = withOne(last.until, sign);
    giveFigures(pieces, items, clause, last);
  }
}

/** `Toss, breaking it up, until brown`: what is ordered goes on, and not what is done beside it. */
function goingOn(clauses: readonly Clause[], at: number): EventDraft | undefined {
  let beside: EventDraft | undefined;
  for (let i = at - 1; i >= 0; i--) {
    const { event, first } = clauses[i] as Clause;
    if (event !== undefined && event.as !== 'beside') return event;
    beside ??= event;
    if (first) break;
  }
  return beside;
}

/** `Boil, stirring, to 120 C`: whose the figures of a clause are. */
function figured(clauses: readonly Clause[], at: number, event: EventDraft): EventDraft {
  if (event.as !== 'beside' || event.act !== 'combine' || event.objects.length > 0) return event;
  const main = goingOn(clauses, at);
  return main?.act === 'heat' || main?.act === 'cool' ? main : event;
}

/** What cools is logged from hot to the middle, or to cold (Food Code 2022, 3-501.14). */
const LOGGED_HOT_C = 50;
const LOGGED_COOL_C = 25;

function giveFigures(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clause: Clause,
  event: EventDraft,
): void {
  const figures = temperaturesIn(pieces, items, clause, event);
  if (figures.length === 0) return;
  // `Log 60 → 21 °C inside 2 h`: what is written down is how it cools.
  if (event.act === 'read' && figures.length === 2 && figures.every(({ of }) => of === 'food')) {
    const [from, to] = figures as [TemperatureSaid, TemperatureSaid];
    if (from.celsius.low >= LOGGED_HOT_C && to.celsius.high <= LOGGED_COOL_C) event.act = 'cool';
  }
  // `in the shed, where it is about 8 C`
  const isOfPlace = clause.opener === 'which' || (clause.verb < 0 && clause.event === undefined);
  const of = isOfPlace ? heatAt(event) : undefined;
  const told = of === undefined ? figures : figures.map((said) => inferred(said, of));
  event.temperatures = [...event.temperatures, ...told];
}

/** `beans that have been soaked`: what the last thing named already is. */
function giveState(pieces: readonly Piece[], clause: Clause, event: EventDraft | undefined): void {
  const of = event?.objects.at(-1);
  if (event === undefined || of === undefined) return;
  for (let at = clause.from; at < clause.to; at++) {
    const { sense, part } = pieces[at] as Piece;
    const act = part === 'describes' ? verbOf(sense)?.act : undefined;
    const already = act && ALREADY[act];
    if (already === undefined) continue;
    event.objects = [...event.objects.slice(0, -1), { ...of, already }];
    return;
  }
}

/** Where and in what its verb says by itself: `chill`, `deep-fry`. */
function impliedBy(verb: Piece | undefined, event: EventDraft): void {
  const row = verb && verbOf(verb.sense);
  if (verb === undefined || row === undefined) return;
  // `Take the meat out of the brine`; `take two eggs` only readies them.
  const leaves = event.where.some(({ way }) => way === 'out of' || way === 'off');
  // `Draw the pot off the flame.`
  if ((event.act === 'cut' || event.act === 'ready') && (leaves || event.objects.some(({ role }) => role === 'from')))
    event.act = 'remove';
  const span = { start: verb.start, end: verb.end, sure: 'said' } as const;
  // `Chill on the bottom shelf`: it is cold there.
  const isCold = row.where === 'cold' || row.where === 'frozen';
  const places = event.where.filter(({ way }) => way === 'at' || way === 'to');
  // `Keep hot in the bain-marie`
  const isKeptHot = row.where === 'hot' && places.every(({ is, not }) => !not && is === 'bath');
  // `It just chills on the counter`
  const isAtEase =
    isCold && event.as === 'told' && places.some(({ is, sure, not }) => is === 'room' && sure === 'said' && !not);
  if (
    row.where !== undefined &&
    !isAtEase &&
    (places.length === 0 ||
      isKeptHot ||
      (isCold && places.every(({ is, not }) => !not && is !== undefined && !COLD_KINDS.has(is))))
  )
    event.where = withOne(event.where, {
      ...span,
      is: row.where,
      way: row.act === 'adjust' || row.act === 'remove' ? 'off' : 'at',
      not: false,
    });
  // `Pressure-cook with the stock`
  if (row.medium === 'pressure') event.medium = { ...span, ...event.medium, is: row.medium };
  else if (row.medium !== undefined) event.medium ??= { ...span, is: row.medium };
}

/** `Milk and salt in`: no verb but where they go. */
const isPutIn = (verb: Piece | undefined): boolean =>
  verb !== undefined && verbOf(verb.sense) === undefined && jointOf(verb.sense)?.is === 'preposition';

/** `Snip the cress over`, `crumble the yeast in`, `grate the cheese on top`: it goes on what is there. */
function isOver(pieces: readonly Piece[], { from, to, verb }: Clause): boolean {
  let last = to - 1;
  while (last > from && pieces[last]?.sort === 'mark') last--;
  const { sense = UNKNOWN, word = '' } = pieces[last] ?? {};
  const before = jointOf(pieces[last - 1]?.sense ?? UNKNOWN);
  const isIn = pieces[last]?.part === 'joint' && word === 'in';
  return last > verb && (jointOf(sense)?.way === 'over' || isIn || (word === 'top' && before?.way === 'at'));
}

/** `Cut small slits all over the lamb`: it stays whole. */
function isInto(pieces: readonly Piece[], items: readonly SentenceItem[], { to, verb }: Clause): boolean {
  for (let at = verb + 1; at < to; at++) {
    const { sort, sense, to: end } = pieces[at] as Piece;
    if (sort === 'mark' || jointOf(sense)?.is === 'preposition') return false;
    const { one, several } = topicsAt(items[end - 1]);
    if (((one | several) & SLIT) !== 0) return true;
  }
  return false;
}
const SLIT = topicBits(['slit']);

/** `Pour it still steaming into the tub`, `while it is steaming`: it is hot, and nothing is steamed. */
function isOnlySteaming(
  pieces: readonly Piece[],
  { verb, opener }: Clause,
  { act, as, times, cooks }: EventDraft,
): boolean {
  const { sense = UNKNOWN } = pieces[verb] ?? {};
  const row = verbOf(sense);
  return (
    act === 'heat' &&
    cooks === 'through' &&
    row?.medium === 'steam' &&
    formOf(sense) === 'ing' &&
    (as === 'beside' || opener === 'while') &&
    times.length === 0 &&
    !takesObject(pieces, verb)
  );
}

const COLD_KINDS: ReadonlySet<Where['is'] & string> = new Set(['cold', 'frozen', 'cool']);

/** `Switch off and leave it in the oven`: of what, the sentence says later; else it is the stove. */
function turnedOffIn(pieces: readonly Piece[], clause: Clause, { verb, start, end }: EventDraft): Where {
  const later = pieces.slice(clause.to).find(({ sense }) => thingOf(sense)?.is === 'oven');
  return {
    ...(verb ?? { start, end }),
    is: later === undefined ? 'stove' : 'oven',
    sure: 'inferred',
    way: 'off',
    not: false,
  };
}

/** `; when cold, turn out`, `and when thick add`: the sign is of what comes. */
function isNewThought(pieces: readonly Piece[], clause: Clause): boolean {
  const before = pieces[clause.from - 1];
  return before === undefined || before.sort === 'mark' || jointOf((pieces[clause.from] as Piece).sense)?.is !== 'when';
}

/** `give it ten minutes in the oven`, `get it into the fridge`: an order that says nothing by itself, at a place that does. */
function actAtPlace(event: EventDraft): void {
  // `Pop it in the fridge`: nothing is heated there.
  if (event.act === 'heat' && event.where.some(({ is, way, not }) => !not && COLD.has(is) && way !== 'out of')) {
    event.act = 'put';
    event.lasts = 'waits';
    delete event.cooks;
    return;
  }
  if (event.act !== 'unknown' || event.as !== 'ordered') return;
  const place = event.where.find(({ way, not }) => !not && (way === 'at' || way === 'to'));
  if (place?.is !== undefined && ACT_AT[place.is] === 'heat') {
    event.act = 'heat';
    event.cooks = 'as read';
    event.lasts = 'waits';
  } else if (place?.way === 'to') {
    event.act = 'put';
    event.lasts = 'waits';
  }
}

/** `I give it 40 minutes at 350 F`, `180 C fan, 12 min`: an oven's figure says what is done. */
function heatsAtFigure(event: EventDraft, { verb }: Clause): void {
  // `every strip passes 70 C`
  if (event.act === 'remove' && event.as === 'told' && event.temperatures.some(({ of }) => of === 'food'))
    event.act = 'read';
  if (event.act !== 'unknown' && !(event.act === 'read' && verb < 0)) return;
  if (!event.temperatures.some(({ of, bound }) => of === 'oven' && bound !== 'change')) return;
  event.act = 'heat';
  event.cooks = 'as read';
  event.lasts = 'waits';
}

const COLD: ReadonlySet<PlaceKind | undefined> = new Set(['cold', 'frozen']);
