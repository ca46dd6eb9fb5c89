/**
 * Knows what the words of one clause say that its event takes: where things begin and end, objects, amounts.
 * Refuses to know what a place, vessel or medium says (`place-taken.ts`), signs, times, temperatures, and what another clause says of it.
 */
import { withOne } from './clauses.ts';
import { alreadyIs, coldBefore } from './described.ts';
import type { Act, Slot } from './event.ts';
import { formOf, isStrange, isTimeAlone, jointOf, senseOf, signOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { FoundTime, Piece } from './pieces.ts';
import { PlaceTaker } from './place-taken.ts';
import type { Way } from './rows.ts';

/** Food there lies and waits: a noun that nobody knows may be a place. */
export const STAYS: ReadonlySet<Act> = new Set(['stay', 'cool', 'rise', 'steep', 'reserve', 'thaw', 'dry']);

/** One walk through the words of a clause. */
export class Filler extends PlaceTaker {
  /** `and` stood since the last preposition: `in the shed and think no more of it`. */
  private isOver = false;
  /** The words of a thing that is not at its end: its first piece and its last so far. */
  private from = -1;
  private head: Piece | undefined;
  /** What stands behind `in`, right behind the verb, is put in. */
  private putsIn = false;

  fill(): void {
    const { pieces, clause } = this;
    for (let at = clause.from; at < clause.to; at++) if (at >= this.past) this.take(pieces[at] as Piece, at);
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
        // `not opened, in the bottom oven`: what it denies stood before the mark.
        if (jointOf(this.pieces[at - 1]?.sense ?? UNKNOWN)?.is !== 'not') this.not = false;
        // `in a pan (covered) …` goes on; a clause has no other marks but these.
        return;
      case 'time':
        this.end();
        this.way = undefined;
        return;
      case 'temperature':
        // `at a steady 62 C` is no place.
        if (this.head !== undefined && isStrange(this.head.sense) && this.pieces[at - 1] === this.head)
          this.head = undefined;
        // `in a 325 F. oven`: the way goes on.
        this.end();
        return;
      case 'amount':
      case 'duration':
        this.end();
        if (piece.sort === 'amount') this.amount(piece);
        return;
      case 'length':
        this.end();
        return;
    }
    if (piece.part === 'joint') this.joint(piece, at);
    // `in the oven about noon`
    else if (piece.sort === 'word' && isTimeAlone(piece.sense)) this.end();
    else {
      if (this.head !== undefined && this.isBy(piece)) this.end();
      if (this.from < 0) this.from = at;
      // `in the fridge door` is the fridge; `the pan juices` are no pan.
      const known = this.head !== undefined && this.way !== undefined && thingOf(this.head.sense) !== undefined;
      // `A week in the fridge turns them`
      const isMore = isStrange(piece.sense) || (thingOf(piece.sense) === undefined && formOf(piece.sense) === 's');
      if (piece.part === 'thing' && !(known && piece.sort === 'word' && isMore)) this.head = piece;
    }
  }

  private amount({ start, end, from }: Piece): void {
    const { event, items } = this;
    event.amounts = withOne(event.amounts, { start, end, item: from });
    // `Process at 10 lb`: nothing else is done at so many pounds.
    const item = items[from];
    const isPressure = this.way === 'at' && item?.kind === 'measured' && item.unit?.symbol === 'lb';
    if (isPressure && (event.act === 'combine' || event.act === 'heat'))
      event.medium ??= { start, end, is: 'pressure', sure: 'inferred' };
  }

  /** `put in`, `set on`, `turn off`: what the last word of a verb says of a place. */
  private wayOfLast(verb: Piece): Way | undefined {
    const item = this.items[verb.to - 1];
    return item?.kind === 'word' ? jointOf(senseOf(item.word))?.way : undefined;
  }

  private joint(piece: Piece, at: number): void {
    const joint = jointOf(piece.sense);
    switch (joint?.is) {
      case 'to':
      case 'preposition':
        this.end();
        if (at < this.past) return;
        this.isOver = false;
        // `in a pail of boiling water`
        this.outer = joint.way === 'of' && this.way !== 'of' ? this.way : undefined;
        this.over = joint.way === 'over';
        this.ofPlace = this.isOfPlace(joint.way, piece.start);
        this.way = joint.way === 'over' ? 'at' : joint.way;
        // `Sprinkle in the yeast`
        this.putsIn = piece.word === 'in' && at - 1 === this.clause.verb && PUTS_IN.has(this.event.act);
        return;
      case 'not':
        this.end();
        this.not = true;
        return;
      case 'it':
      case 'mixture':
      case 'rest':
      case 'all':
        // `In the cellar it lives`: what stands before it is told of on its own.
        if (joint.is === 'it' && this.head !== undefined && thingOf(this.head.sense)?.sort === 'place') {
          this.end();
          this.way = undefined;
        }
        // `All but a spoonful of the fat`: most of what is named behind it.
        if (joint.is === 'all' && joint.way === 'out of' && isMeasured(this.pieces, at + 1)) return;
        // `the remaining sugar`, `all the butter`: the noun behind it is the head.
        if (this.from < 0) this.from = this.pieces.indexOf(piece);
        this.head = piece;
        if (joint.is === 'it' || joint.way !== undefined) this.end();
        // `All but the oil`
        if (joint.way !== undefined && joint.is !== 'rest') this.way = joint.way;
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
      case 'or':
      case 'conjunction':
        this.end();
        // `the rest of the milk and the eggs`
        if (this.way === 'of') this.way = this.outer;
        this.isOther = true;
        this.isOver = true;
        return;
      // An adverb that no row has, too.
      default:
        this.end();
    }
  }

  /** `the shelf above the stove`, `out of the fridge in the garage`: it tells only where that place is. */
  private isOfPlace(way: Way | undefined, start: number): boolean {
    const before = this.event.where.find(({ end }) => end === start - 1);
    if (before === undefined) return false;
    return way === 'over' || way === 'by' || (way === 'at' && before.way === 'out of');
  }

  /** The words of a thing are at their end. */
  private end(): void {
    const { head, from, way, event } = this;
    this.from = -1;
    this.head = undefined;
    if (head === undefined) return;
    this.first = from;
    this.last = head;
    const span = { start: (this.pieces[from] as Piece).start, end: head.end };
    const thing = thingOf(head.sense);
    if (way === 'at' && event.act === 'stay' && isBoil(head) && this.isBehindWay(from, head)) {
      // `Keep it at a full rolling boil`
      event.act = 'heat';
      event.cooks = 'through';
      return;
    }
    this.carried = false;
    const isThing = thing !== undefined && this.isThing(thing, span);
    this.byVerb = undefined;
    if (isThing) return;
    const is = head.part === 'joint' ? jointOf(head.sense)?.is : undefined;
    // `Mince the pork and the fat, and keep both cold`: what was spoken of, and not the whole list.
    const joint = is === 'all' && head.word === 'both' && STAYS.has(event.act) ? 'it' : is;
    const by =
      joint === 'it' || joint === 'mixture' || joint === 'rest' || joint === 'all'
        ? joint
        : thing?.sort === 'vessel' || this.carried
          ? 'vessel'
          : 'name';
    if (way === 'of' || way === 'for' || way === 'without') return;
    // `on the 23rd`
    const before = this.pieces[from - 1];
    const isOrdinal = before?.sort === 'amount' && before.end === head.start;
    // `Beside the pump clips`, too, which are no verb there.
    const isNoun = jointOf(before?.sense ?? UNKNOWN)?.is === 'article';
    const isNowhere =
      isStrange(head.sense) ||
      (thing === undefined && joint === undefined && (way === 'by' || (isNoun && STAYS.has(event.act))));
    const isIn = this.putsIn && !this.mayLie();
    this.putsIn = false;
    if ((way === 'at' || way === 'by') && !isOrdinal && head.sort === 'word' && isNowhere && !isIn) {
      // `In the fridge for whoever comes in hungry`: a place that is known says more.
      const isKnown = event.where.some(
        (place) => place.sure === 'said' && !place.not && (place.way === 'at' || place.way === 'to'),
      );
      if (!this.isOver && !isKnown && this.mayLie())
        this.where({
          ...span,
          is: coldBefore(this.pieces, from, head) ?? 'room',
          sure: 'inferred',
          way: 'at',
          not: this.not,
        });
      return;
    }
    // `Next to the salt`: where it stands.
    if (way === 'by' && head.sort === 'name' && STAYS.has(event.act))
      this.where({ ...span, is: 'room', sure: 'inferred', way: 'at', not: this.not });
    if (way === 'by' || isOrdinal) return;
    const role = ROLES[isIn || way === undefined ? 'what' : way];
    const already = alreadyIs(this.pieces, from, head);
    event.objects = withOne(event.objects, { ...span, role, by, ...(already && { already }) });
  }

  /** Nothing but an article and adjectives stands between the preposition and the thing. */
  private isBehindWay(from: number, head: Piece): boolean {
    const own = this.pieces.slice(from, this.pieces.indexOf(head));
    if (own.some(({ sense }) => jointOf(sense)?.is === 'article')) return false;
    for (let at = from - 1; at >= this.clause.from; at--) {
      const is = jointOf((this.pieces[at] as Piece).sense)?.is;
      if (is === 'preposition') return true;
      if (is !== 'article' && is !== 'adjective') return false;
    }
    return false;
  }

  /** What is put, given or left somewhere for an hour or more lies there. */
  private mayLie(): boolean {
    const { act } = this.event;
    if (STAYS.has(act)) return true;
    if (act !== 'put' && act !== 'unknown') return false;
    // `Place it by the loom and ignore it for two days.`
    for (let at = this.clause.from; at < this.pieces.length; at++) {
      const { time, word } = this.pieces[at] as Piece;
      if (word === '.') return false;
      if (time !== undefined) return isLong(time);
      // `It goes next to the till, and there it stays.`
      if (isThere(this.pieces, at)) return true;
    }
    return false;
  }
}

/** Minutes: so long nothing is worked at where it is put. */
const LONG_MIN = 60;
export const isLong = ({ kind, minutes }: FoundTime): boolean =>
  (kind === 'spent' || kind === 'until') && minutes.low >= LONG_MIN;

const isBoil = ({ sense, part }: Piece): boolean =>
  part === 'thing' &&
  thingOf(sense) === undefined &&
  (signOf(sense)?.tells === 'boiling' || (verbOf(sense)?.noun === true && verbOf(sense)?.cooks === 'through'));

const PUTS_IN: ReadonlySet<Act> = new Set<Act>(['combine', 'put', 'cut', 'unknown']);

const ROLES: Readonly<Record<'what' | 'at' | 'over' | 'to' | 'with' | 'out of' | 'off' | 'beside', Slot['role']>> = {
  what: 'what',
  beside: 'what',
  at: 'with',
  over: 'with',
  to: 'into',
  with: 'with',
  'out of': 'from',
  off: 'from',
};

/** `there it stays`, of what was put somewhere. */
function isThere(pieces: readonly Piece[], at: number): boolean {
  const [there, it, stays] = pieces.slice(at, at + 3);
  return (
    there?.word === 'there' &&
    jointOf(it?.sense ?? UNKNOWN)?.is === 'it' &&
    STAYS.has(verbOf(stays?.sense ?? UNKNOWN)?.act ?? 'unknown')
  );
}

/** `1 tbsp`, `two thirds`, `a thin film of` */
function isMeasured(pieces: readonly Piece[], at: number): boolean {
  const joint = (place: number) => jointOf(pieces[place]?.sense ?? UNKNOWN);
  const is = joint(at)?.is;
  if (pieces[at]?.sort === 'amount' || is === 'number' || is === 'quantity') return true;
  if (is !== 'article') return false;
  let last = at + 1;
  while (pieces[last]?.sort === 'word' && (joint(last) === undefined || joint(last)?.is === 'adjective')) last++;
  return joint(last)?.way === 'of';
}
