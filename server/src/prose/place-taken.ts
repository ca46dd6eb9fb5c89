/**
 * Knows what a place, a vessel or a medium that a clause names says of its event: where it is done, in what, and which of several counts.
 * Refuses to know where its words begin and end, foods, and amounts.
 */
import type { SentenceItem, Span } from '../notation/tree.ts';
import { type Clause, type EventDraft, withOne } from './clauses.ts';
import { coldBefore } from './described.ts';
import type { PlaceKind, VesselSaid, Where } from './event.ts';
import { jointOf, senseOf, signOf, UNKNOWN } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import type { ThingRow, Way } from './rows.ts';
import { offUntil } from './switched.ts';

/** What a clause has said so far of where it is done and in what. */
export class PlaceTaker {
  protected readonly pieces: readonly Piece[];
  protected readonly items: readonly SentenceItem[];
  protected readonly clause: Clause;
  protected readonly event: EventDraft;
  protected way: Way | undefined;
  /** The way of a verb of two words, for the first thing behind it. */
  protected byVerb: Way | undefined;
  protected not = false;
  turnedOff = false;
  /** The piece behind words that were taken with a place. */
  protected past = 0;
  /** Of the last thing: its first piece, and its head. */
  protected first = 0;
  protected last: Piece | undefined;
  /** The piece behind the last place. */
  private placed = 0;
  /** `or`, `and` stood since the last place: it is another. */
  protected isOther = false;
  /** It is above, below or behind what follows: `over the stove` is on it, `over the freezer` is not. */
  protected over = false;
  /** What follows tells where a place is that was said right before: `the shelf over the stove`. */
  protected ofPlace = false;
  /** The way before an `of`. */
  protected outer: Way | undefined;
  /** Its vessel is one that something lies in. */
  private holds = false;
  /** The thing is what food is carried in. */
  protected carried = false;
  /** The medium so far is only something that goes along. */
  private along = false;

  constructor(pieces: readonly Piece[], items: readonly SentenceItem[], clause: Clause, event: EventDraft) {
    this.pieces = pieces;
    this.items = items;
    this.clause = clause;
    this.event = event;
  }

  /** Whether a place, vessel or medium is said, and no food. */
  protected isThing(row: ThingRow, span: { start: number; end: number }): boolean {
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
        if (this.ofPlace || this.isBeside(span.start)) return true;
        // `With the heat of the animal in it`
        if (row.is === 'stove' && way === 'with' && event.act !== 'heat') return true;
        // `Beat on high`: so fast, and not so hot.
        if (row.is === 'level' && event.act === 'combine' && event.craft !== 'stir') return true;
        if (row.is !== 'room' && this.isOff(way)) {
          this.where({ ...span, is: 'room', sure: 'said', way: 'at', not: this.not });
          return true;
        }
        // `By the boiler`: the warmth is why.
        if (way === 'by' && row.is === 'warm') {
          this.where({ ...span, is: row.is, sure: 'said', way: 'at', not: this.not });
          return true;
        }
        // `Beside the stove`, `over the freezer` is a place in a room.
        if ((way === 'by' && row.is !== 'cool' && row.is !== 'outdoors') || (this.over && IN_ALONE.has(row.is))) {
          this.where({ ...span, is: 'room', sure: 'inferred', way: 'at', not: this.not });
          return true;
        }
        // `Carry the boiler to the porch`: it is what the food is in.
        if (way === undefined && this.isCarried()) {
          this.carried = true;
          return false;
        }
        // `Forget the fridge!`
        const isObject = way === undefined && jointOf(this.pieces[this.first - 1]?.sense ?? UNKNOWN)?.is === 'article';
        const isRun = isObject && event.act === 'stay' && RUNS.has(row.is) && this.isLeftOn();
        if (isRun && row.is !== 'hot') {
          event.act = 'heat';
          event.cooks = 'as read';
        }
        const isShunned = isObject && event.act === 'stay' && event.verb !== undefined && !isRun && !this.hasFigure();
        const to = this.turnedOff ? 'off' : way === 'by' || !moves ? 'at' : way;
        // `The chiller truck`, `a chilled counter`
        const isChilled = row.is === 'room' && coldBefore(this.pieces, this.first, this.last as Piece) === 'cold';
        this.where({
          ...span,
          is: row.is === 'level' ? 'stove' : isChilled ? 'cold' : row.is,
          sure: 'said',
          way: to,
          not: this.not || way === 'without' || isShunned,
          ...(row.celsius && !isChilled && { celsius: row.celsius }),
        });
        return true;
      }
      case 'vessel': {
        if (way === 'of' || way === 'out of') return false;
        // `Beside the kettle`: a place in a room.
        if (way === 'by' && row.on !== undefined) {
          if (!this.ofPlace) this.where({ ...span, is: 'room', sure: 'inferred', way: 'at', not: this.not });
          return true;
        }
        // As an object it is what is in it.
        const holds = way !== undefined;
        const { vessel } = event;
        // The pan that a rack stands in, the paper that a jar is wrapped in.
        if (
          vessel === undefined ||
          (holds && !this.holds && (row.is !== 'tool' || vessel.is === 'tool')) ||
          (vessel.is === 'tool' && row.is !== 'tool')
        )
          this.vessel({ ...span, is: row.is, sure: 'said', ...(row.on && { stands: row.on }) });
        else if (holds) this.also(span);
        // `Toss in a hot wok`: it stands on the fire.
        if (holds && row.on === 'stove' && this.isSaidHot())
          this.where({ ...span, is: row.on, sure: 'inferred', way: 'at', not: this.not });
        this.holds ||= holds;
        return holds;
      }
      case 'medium':
        if (!moves && way !== 'with' && !(way === 'of' && this.outer !== undefined)) return false;
        if (way === 'out of') return false;
        if (row.is === 'microwaves' && this.isOff(way)) {
          this.where({ ...span, is: 'room', sure: 'said', way: 'at', not: this.not });
          return true;
        }
        // `With the lemon juice over simmering water`: what it lies in says more than what goes along.
        // `at 10 lb pressure in the pressure cooker`: of two the one that says how hot.
        if (
          event.medium === undefined ||
          (this.along && way !== 'with') ||
          (event.medium.is === row.is && event.medium.celsius === undefined && row.celsius !== undefined)
        ) {
          event.medium = { ...span, is: row.is, sure: 'said', ...(row.celsius && { celsius: row.celsius }) };
          this.along = way === 'with';
        }
        return true;
    }
  }

  /** `On the sideboard by the fire`: the words of a place that say what another stands beside. */
  private isBeside(start: number): boolean {
    const isBehind = this.event.where.some(({ end, not }) => !not && end === start - 1);
    return isBehind && this.isBy(this.pieces[this.first] as Piece);
  }

  /** It is the object of a verb, and where that goes stands behind it. */
  private isCarried(): boolean {
    const { pieces, event, clause } = this;
    if (event.verb === undefined || jointOf(pieces[this.first - 1]?.sense ?? UNKNOWN)?.is !== 'article') return false;
    if (event.act !== 'stay' && event.act !== 'put' && event.act !== 'remove' && event.act !== 'unknown') return false;
    const behind = pieces.indexOf(this.last as Piece) + 1;
    const next = jointOf(pieces[behind]?.sense ?? UNKNOWN);
    // `Set the circulator to 49 C`
    const isPlaced = jointOf(pieces[behind + 1]?.sense ?? UNKNOWN)?.is === 'article';
    return this.first - 2 === clause.verb && (next?.is === 'to' || next?.way === 'to') && isPlaced;
  }

  /** `by the fire`: one row with its preposition. */
  protected isBy({ from }: Piece): boolean {
    const first = this.items[from];
    return first?.kind === 'word' && jointOf(senseOf(first.word))?.way === 'by';
  }

  /** Whether the words of a vessel, or an adjective before it, say that it is hot. */
  private isSaidHot(): boolean {
    let from = this.first;
    while (jointOf(this.pieces[from - 1]?.sense ?? UNKNOWN)?.is === 'adjective') from--;
    const own = this.pieces.slice(from, this.pieces.indexOf(this.last as Piece));
    return own.some(({ sense }) => signOf(sense)?.tells === 'hot');
  }

  /** Whether it does not work; the words that say so are passed over. */
  private isOff(way: Way | undefined): boolean {
    if (way === undefined ? this.event.verb !== undefined : way !== 'at' && way !== 'to') return false;
    const past = offUntil(this.pieces, this.items, this.first, this.pieces.indexOf(this.last as Piece));
    this.past = Math.max(this.past, past ?? 0);
    return past !== undefined;
  }

  /** `The oven stays on`, `leave the oven on all night`: with nothing that something could be on. */
  private isLeftOn(): boolean {
    const { pieces, clause } = this;
    return pieces.slice(this.first + 1, clause.to).some(({ sense }, i) => {
      if (jointOf(sense)?.is !== 'preposition' || jointOf(sense)?.way !== 'at') return false;
      const next = pieces[this.first + i + 2];
      return next === undefined || next.sort === 'mark' || next.sort === 'time' || jointOf(next.sense)?.is === 'until';
    });
  }

  private hasFigure(): boolean {
    const { from, to } = this.clause;
    return this.pieces.slice(from, to).some(({ sort }) => sort === 'temperature');
  }

  protected vessel(vessel: VesselSaid): void {
    const before = this.event.vessel;
    if (before !== undefined && this.holds) this.also(before);
    this.event.vessel = vessel;
  }

  /** `in a basket or on paper`, `on a rack in a pan`: what it is in or on, too. */
  private also({ start, end }: Span): void {
    this.event.objects = withOne(this.event.objects, { start, end, role: 'with', by: 'vessel' });
  }

  /** Of places one in the other the one that tells more of how warm it is stands last: `the fridge in the garage`. */
  protected where(where: Where): void {
    const all = this.event.where;
    const before = all.at(-1);
    const isIn =
      before !== undefined &&
      !this.isOther &&
      [before, where].every(({ way, not }) => way === 'at' && !not) &&
      // `In our house it stands on the shelf` are two.
      this.pieces.slice(this.placed, this.first).every(({ part, sort }) => part === 'joint' || sort === 'mark');
    // `On the bottom shelf of the refrigerator`: it is no oven's.
    const isShelfOf = isIn && before.is === 'oven' && where.is !== undefined && IN_ALONE.has(where.is);
    this.event.where = isShelfOf
      ? [...all.slice(0, -1), where]
      : isIn && tells(where) <= tells(before)
        ? [...all.slice(0, -1), where, before]
        : withOne(all, where);
    this.not = false;
    this.isOther = false;
    this.placed = this.pieces.indexOf(this.last as Piece) + 1;
  }
}

/** How much a place tells of how warm it is: one made for it most. */
const tells = ({ is, sure }: Where): number => (sure === 'said' ? TELLS[is ?? 'room'] : 0);
const TELLS: Readonly<Record<PlaceKind, number>> = {
  frozen: 3,
  cold: 3,
  hot: 3,
  oven: 3,
  stove: 3,
  level: 3,
  bath: 3,
  smoker: 3,
  warm: 2,
  cool: 2,
  outdoors: 1,
  room: 1,
};

/** What is on or off. */
const RUNS: ReadonlySet<PlaceKind> = new Set(['oven', 'stove', 'level', 'bath', 'hot']);

/** Only in it is it so cold. */
const IN_ALONE: ReadonlySet<PlaceKind> = new Set(['cold', 'frozen']);
