/**
 * The pass that fills events: what they take, where, in what, at what temperature, until what sign.
 * Refuses to know whose a time is (`spans.ts`), and what an event takes over from another (`ellipsis.ts`).
 */
import type { SentenceItem } from '../notation/tree.ts';
import { type Clause, EventDraft, withOne } from './clauses.ts';
import type { Act, PlaceKind, Sign, Slot, Tells, Where } from './event.ts';
import { formOf, isStrange, jointOf, senseOf, signOf, thingOf, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import type { ThingRow, Way } from './rows.ts';
import { temperaturesIn } from './temperatures.ts';

/** Fills the event of each clause; a clause without a verb that says a place gets one. Signs go to the event that they end or begin. */
export function fill(pieces: readonly Piece[], items: readonly SentenceItem[], clauses: readonly Clause[]): void {
  let before: Clause | undefined;
  let start = 0;
  const waiting: { readonly sign: Sign; readonly clause: Clause }[] = [];
  for (let at = 0; at < clauses.length; at++) {
    const clause = clauses[at] as Clause;
    if (clause.first) {
      giveSigns(waiting.splice(0), before?.event);
      if (before === undefined) fillFramed(pieces, items, clauses, start, at);
      before = undefined;
      start = at;
    }
    if (clause.frame === 'sign') {
      const sign = signIn(pieces, clause, stateBehind(clauses, at));
      clause.sign = sign;
      const event = sign.from === 'when' && isNewThought(pieces, clause) ? undefined : before?.event;
      if (event === undefined) waiting.push({ sign, clause });
      else {
        event.until = withOne(event.until, sign);
        giveFigures(pieces, items, clause, event);
      }
      continue;
    }
    if (clause.frame === 'state' && clause.opener === 'which') giveState(pieces, clause, before?.event);
    const bracketOf = clause.frame === 'verbless' && pieces[clause.from - 1]?.word === '(' ? before?.event : undefined;
    // `at 350 F. (moderate oven)`
    if (bracketOf !== undefined) new Filler(pieces, items, clause, bracketOf).fill();
    else if (clause.frame === 'verbless')
      clause.event =
        verblessEvent(pieces, clause) ??
        nameAlone(pieces, clause) ??
        (before === undefined ? figureAlone(pieces, clause) : undefined);
    const { event } = clause;
    if (event === undefined) {
      // A bracket, or what is only told of what is done: `(375 F)`.
      if (before?.event !== undefined) giveFigures(pieces, items, clause, before.event);
      continue;
    }
    for (const { sign, clause: of } of waiting.splice(0)) {
      event.until = withOne(event.until, sign);
      giveFigures(pieces, items, of, event);
    }
    const filler = new Filler(pieces, items, clause, event);
    filler.fill();
    impliedBy(pieces[clause.verb], event);
    if (filler.turnedOff && event.where.length === 0) event.where = [turnedOffIn(pieces, clause, event)];
    giveFigures(pieces, items, clause, event);
    before = clause;
  }
  giveSigns(waiting, before?.event);
  if (before === undefined) fillFramed(pieces, items, clauses, start, clauses.length);
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
    if (verb === undefined) continue;
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

/** Signs that no event of their sentence follows are of its last. */
function giveSigns(waiting: readonly { readonly sign: Sign }[], last: EventDraft | undefined): void {
  if (last !== undefined) for (const { sign } of waiting) last.until = withOne(last.until, sign);
}

function giveFigures(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clause: Clause,
  event: EventDraft,
): void {
  const figures = temperaturesIn(pieces, items, clause, event);
  if (figures.length > 0) event.temperatures = [...event.temperatures, ...figures];
}

/** `Dough temperature 26 C`: a figure is all that is said. */
function figureAlone(pieces: readonly Piece[], clause: Clause): EventDraft | undefined {
  const run = pieces.slice(clause.from, clause.to);
  if (!run.some(({ sort }) => sort === 'temperature')) return undefined;
  const event = new EventDraft((run[0] as Piece).start, (run.at(-1) as Piece).end, undefined, undefined, 'told');
  event.act = 'read';
  return event;
}

/** `Trout fillet, 3 min a side`: something happens to it for so long, or until so warm. */
function nameAlone(pieces: readonly Piece[], clause: Clause): EventDraft | undefined {
  const run = pieces.slice(clause.from, clause.to);
  if (!run.some(({ sort }) => sort === 'name') || !run.some(({ sort }) => sort === 'time' || sort === 'temperature'))
    return undefined;
  const event = new EventDraft((run[0] as Piece).start, (run.at(-1) as Piece).end, undefined, undefined, 'ordered');
  event.lasts = 'waits';
  return event;
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
  if (event.act === 'ready' && (leaves || event.objects.some(({ role }) => role === 'from'))) event.act = 'remove';
  const span = { start: verb.start, end: verb.end, sure: 'said' } as const;
  if (row.where !== undefined && !event.where.some(({ way }) => way === 'at' || way === 'to'))
    event.where = withOne(event.where, {
      ...span,
      is: row.where,
      way: row.act === 'adjust' ? 'off' : 'at',
      not: false,
    });
  if (row.medium !== undefined) event.medium ??= { ...span, is: row.medium };
}

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

/** A clause that says where, or in what, and no verb. */
function verblessEvent(pieces: readonly Piece[], clause: Clause): EventDraft | undefined {
  for (let at = clause.from; at < clause.to; at++) {
    const piece = pieces[at] as Piece;
    const thing = thingOf(piece.sense);
    if (piece.sort === 'mark' || thing === undefined) continue;
    const way = at > clause.from ? jointOf((pieces[at - 1] as Piece).sense)?.way : undefined;
    if (thing.sort !== 'place' || (way === undefined && !thing.bare)) continue;
    const start = (pieces[clause.from] as Piece).start;
    const event = new EventDraft(start, (pieces[clause.to - 1] as Piece).end, undefined, undefined, 'ordered');
    event.act = ACT_AT[thing.is];
    if (event.act === 'heat') event.cooks = 'as read';
    event.lasts = 'waits';
    return event;
  }
  return undefined;
}

/** What a place by itself says is done there. */
const ACT_AT: Readonly<Record<Where['is'] & string, Act>> = {
  frozen: 'freeze',
  cold: 'stay',
  cool: 'stay',
  room: 'stay',
  outdoors: 'stay',
  warm: 'stay',
  hot: 'stay',
  oven: 'heat',
  stove: 'heat',
  bath: 'heat',
  smoker: 'smoke',
};

/** Where what a sign says ends: `until a ball that holds together`, `until thick enough to coat a spoon`. */
function stateBehind(clauses: readonly Clause[], at: number): number {
  let last = at;
  while (clauses[last + 1]?.frame === 'state') last++;
  return (clauses[last] as Clause).to;
}

/** `until` and what it waits for; its words end before the piece `to`. */
function signIn(pieces: readonly Piece[], clause: Clause, to: number): Sign {
  let tells: Tells | undefined;
  let celsius: Sign['celsius'];
  let not = false;
  for (let at = clause.from; at < clause.to; at++) {
    const piece = pieces[at] as Piece;
    const row = signOf(piece.sense);
    const joint = piece.part === 'joint' ? jointOf(piece.sense)?.is : undefined;
    if (joint === 'not' || joint === 'aux not') not = true;
    const thing = thingOf(piece.sense);
    // Of several the last word says most: `until the butter is hot and brown`.
    if (row !== undefined) {
      tells = row.tells;
      celsius = row.celsius ?? celsius;
    } else if (piece.sort === 'temperature') tells ??= 'figure';
    else if (thing?.sort === 'place') tells ??= TELLS_AT[thing.is];
    else tells ??= tellsOf(verbOf(piece.sense)?.act, piece);
  }
  // `until it no longer steams`
  if (not && tells !== undefined) {
    tells = NO_LONGER[tells];
    celsius = undefined;
  }
  const start = (pieces[clause.from] as Piece).start;
  let last = to - 1;
  while (last > clause.from && (pieces[last] as Piece).sort === 'mark') last--;
  return {
    start,
    end: (pieces[last] as Piece).end,
    is: tells,
    sure: tells === undefined ? 'unread' : 'said',
    from: clause.opener === 'until' ? 'until' : 'when',
    ...(celsius && { celsius }),
  };
}

/** What is left to be said where a sign is denied. */
const NO_LONGER: Readonly<Partial<Record<Tells, Tells>>> = { boiling: 'hot', hot: 'warm', warm: 'cold' };

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

/** Food there lies and waits: a noun that nobody knows may be a place. */
const STAYS: ReadonlySet<Act> = new Set(['stay', 'cool', 'rise', 'steep', 'reserve', 'thaw', 'dry']);

/** One walk through the words of a clause. */
class Filler {
  private readonly pieces: readonly Piece[];
  private readonly items: readonly SentenceItem[];
  private readonly clause: Clause;
  private readonly event: EventDraft;
  private way: Way | undefined;
  /** The way of a verb of two words, for the first thing behind it. */
  private byVerb: Way | undefined;
  private not = false;
  turnedOff = false;
  /** The way before an `of`. */
  private outer: Way | undefined;
  /** Its vessel is one that something lies in. */
  private holds = false;
  /** The words of a thing that is not at its end: its first piece and its last so far. */
  private from = -1;
  private head: Piece | undefined;

  constructor(pieces: readonly Piece[], items: readonly SentenceItem[], clause: Clause, event: EventDraft) {
    this.pieces = pieces;
    this.items = items;
    this.clause = clause;
    this.event = event;
  }

  fill(): void {
    const { pieces, clause } = this;
    for (let at = clause.from; at < clause.to; at++) this.take(pieces[at] as Piece, at);
    this.end();
  }

  private take(piece: Piece, at: number): void {
    if (piece.part === 'tail') {
      this.turnedOff ||= this.event.act === 'adjust' && this.wayOfLast(piece) === 'off';
      if (this.turnedOff) this.event.where = this.event.where.map((where) => ({ ...where, way: 'off' }));
      return;
    }
    if (at === this.clause.verb) {
      this.turnedOff = this.event.act === 'adjust' && this.wayOfLast(piece) === 'off';
      this.end();
      this.way = undefined;
      this.byVerb = piece.to > piece.from + 1 ? this.wayOfLast(piece) : undefined;
      return;
    }
    switch (piece.sort) {
      case 'mark':
        this.end();
        // `in a pan (covered) …` goes on; a clause has no other marks but these.
        return;
      case 'time':
        this.end();
        this.way = undefined;
        return;
      case 'temperature':
        // `in a 325 F. oven`: the way goes on.
        this.end();
        return;
      case 'amount':
      case 'duration':
        this.end();
        if (piece.sort === 'amount')
          this.event.amounts = withOne(this.event.amounts, { start: piece.start, end: piece.end, item: piece.from });
        return;
      case 'length':
        this.end();
        return;
    }
    if (piece.part === 'joint') this.joint(piece);
    else {
      if (this.from < 0) this.from = at;
      // `in the fridge door` is the fridge; `the pan juices` are no pan.
      const known = this.head !== undefined && this.way !== undefined && thingOf(this.head.sense) !== undefined;
      if (piece.part === 'thing' && !(known && piece.sort === 'word' && isStrange(piece.sense))) this.head = piece;
    }
  }

  /** `put in`, `set on`, `turn off`: what the last word of a verb says of a place. */
  private wayOfLast(verb: Piece): Way | undefined {
    const item = this.items[verb.to - 1];
    return item?.kind === 'word' ? jointOf(senseOf(item.word))?.way : undefined;
  }

  private joint(piece: Piece): void {
    const joint = jointOf(piece.sense);
    switch (joint?.is) {
      case 'to':
      case 'preposition':
        this.end();
        // `in a pail of boiling water`
        this.outer = joint.way === 'of' && this.way !== 'of' ? this.way : undefined;
        this.way = joint.way;
        return;
      case 'not':
        this.end();
        this.not = true;
        return;
      case 'it':
      case 'mixture':
      case 'rest':
      case 'all':
        // `the remaining sugar`, `all the butter`: the noun behind it is the head.
        if (this.from < 0) this.from = this.pieces.indexOf(piece);
        this.head = piece;
        if (joint.is === 'it') this.end();
        return;
      case 'adjective':
      case 'article':
      case 'number':
      case 'quantity':
        return;
      case 'adverb':
      case 'bound':
        this.end();
        return;
      // `in a warm place, let the dough rise`: a new thought begins.
      case 'let':
      case 'modal':
        this.end();
        this.way = undefined;
        return;
      // An adverb that no row has, too.
      default:
        this.end();
    }
  }

  /** The words of a thing are at their end. */
  private end(): void {
    const { head, from, way, event } = this;
    this.from = -1;
    this.head = undefined;
    if (head === undefined) return;
    const span = { start: (this.pieces[from] as Piece).start, end: head.end };
    const thing = thingOf(head.sense);
    const isThing = thing !== undefined && this.isThing(thing, span);
    this.byVerb = undefined;
    if (isThing) return;
    const joint = head.part === 'joint' ? jointOf(head.sense)?.is : undefined;
    const by =
      joint === 'it' || joint === 'mixture' || joint === 'rest' || joint === 'all'
        ? joint
        : thing?.sort === 'vessel'
          ? 'vessel'
          : 'name';
    if (way === 'of' || way === 'for' || way === 'by' || way === 'without') return;
    if (way === 'at' && head.sort === 'word' && isStrange(head.sense)) {
      if (STAYS.has(event.act)) this.where({ ...span, is: 'room', sure: 'inferred', way: 'at', not: this.not });
      return;
    }
    const role = ROLES[way ?? 'what'];
    const already = this.already(from, head);
    event.objects = withOne(event.objects, { ...span, role, by, ...(already && { already }) });
  }

  /** The medium so far is only something that goes along. */
  private along = false;

  /** Whether a place, vessel or medium is said, and no food. */
  private isThing(row: ThingRow, span: { start: number; end: number }): boolean {
    const { event } = this;
    const way = this.way ?? this.byVerb;
    const moves = way === 'at' || way === 'to' || way === 'out of' || way === 'off' || way === 'by';
    switch (row.sort) {
      case 'place': {
        if (way === undefined && !row.bare) return false;
        // `raise the oven to 200 C`
        if (way === undefined && event.act === 'rise') {
          event.act = 'adjust';
          event.lasts = 'no';
        }
        // `beside the stove` is a place in a room.
        if (way === 'by' && (row.is === 'stove' || row.is === 'oven' || row.is === 'hot')) {
          this.where({ ...span, is: 'room', sure: 'inferred', way: 'at', not: this.not });
          return true;
        }
        const to = this.turnedOff ? 'off' : way === 'by' || !moves ? 'at' : way;
        this.where({
          ...span,
          is: row.is,
          sure: 'said',
          way: to,
          not: this.not || way === 'without',
          ...(row.celsius && { celsius: row.celsius }),
        });
        return true;
      }
      case 'vessel': {
        if (way === 'of' || way === 'out of') return false;
        // As an object it is what is in it.
        const holds = way !== undefined;
        const { vessel } = event;
        // The pan that a rack stands in, the paper that a jar is wrapped in.
        if (
          vessel === undefined ||
          (holds && !this.holds && (row.is !== 'tool' || vessel.is === 'tool')) ||
          (vessel.is === 'tool' && row.is !== 'tool')
        )
          event.vessel = { ...span, is: row.is, sure: 'said' };
        this.holds ||= holds;
        return holds;
      }
      case 'medium':
        if (!moves && way !== 'with' && !(way === 'of' && this.outer !== undefined)) return false;
        if (way === 'out of') return false;
        // `With the lemon juice over simmering water`: what it lies in says more than what goes along.
        if (event.medium === undefined || (this.along && way !== 'with')) {
          event.medium = { ...span, is: row.is, sure: 'said' };
          this.along = way === 'with';
        }
        return true;
    }
  }

  private where(where: Where): void {
    this.event.where = withOne(this.event.where, where);
    this.not = false;
  }

  /** `the chilled dough`, `hot milk`. */
  private already(from: number, head: Piece): Slot['already'] | undefined {
    for (let at = from; at < this.clause.to; at++) {
      const piece = this.pieces[at] as Piece;
      if (piece === head) return undefined;
      const tells = signOf(piece.sense)?.tells;
      if (tells === 'hot' || tells === 'cold' || tells === 'frozen') return tells;
      const act = formOf(piece.sense) === 'past' ? verbOf(piece.sense)?.act : undefined;
      const already = act && ALREADY[act];
      if (already !== undefined) return already;
    }
    return undefined;
  }
}

const ROLES: Readonly<Record<'what' | 'at' | 'to' | 'with' | 'out of' | 'off', Slot['role']>> = {
  what: 'what',
  at: 'with',
  to: 'into',
  with: 'with',
  'out of': 'from',
  off: 'from',
};

const ALREADY: Readonly<Partial<Record<Act, Slot['already']>>> = {
  heat: 'cooked',
  cool: 'cold',
  freeze: 'frozen',
  steep: 'soaked',
};
