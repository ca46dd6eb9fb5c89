/**
 * The pass that cuts a sentence into clauses of at most one verb: at marks and `then`, and at a comma or conjunction only where a verb follows.
 * Refuses to know what the clauses are for.
 */
import { isDoing, isEnd } from './ahead.ts';
import { Clause } from './clauses.ts';
import { jointOf, signOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import { isHard, isSoft, type Part, type Piece } from './pieces.ts';
import type { JointKind, ThingRow, VerbRow } from './rows.ts';

/** The clauses, in order; together they hold every piece but the marks between them. */
export function cut(pieces: readonly Piece[]): readonly Clause[] {
  const cutter = new Cutter(pieces);
  for (let at = 0; at < pieces.length; at++) cutter.take(pieces[at] as Piece, at);
  cutter.close(pieces.length);
  return cutter.clauses;
}

/** What makes a clause that frames nothing an event of its own. */
const isVerb = (part: Part): boolean =>
  part === 'verb' || part === 'beside' || part === 'passive' || part === 'purpose';

class Cutter {
  readonly clauses: Clause[] = [];
  private readonly pieces: readonly Piece[];
  private start = 0;
  /** Where the next clause may begin: behind the last comma, at the last conjunction. */
  private soft = -1;
  private verb = -1;
  private opener: JointKind | undefined;
  private orElse = false;
  private first = true;

  constructor(pieces: readonly Piece[]) {
    this.pieces = pieces;
  }

  take(piece: Piece, at: number): void {
    if (piece.sort === 'mark') this.mark(piece.word, at);
    else if (piece.part === 'joint') this.joint(piece, at);
    else if (piece.time?.orElse && this.isOtherKeeping(at)) this.closeOr(at);
    else if (isVerb(piece.part)) {
      if (this.verb >= 0 || this.isFramed(at) || this.hasOwnWords(at))
        this.close(this.soft > this.start ? this.soft : this.reach(at));
      this.verb = at;
      // What parts the words before a verb parts no clauses.
      this.soft = -1;
    }
  }

  /** The frame has what it says: the verb is the next clause's. */
  private isFramed(at: number): boolean {
    if (this.opener === undefined) return false;
    return !opensVerb(this.opener) || (this.soft > this.start && this.soft <= at);
  }

  private mark(mark: string, at: number): void {
    if (isSoft(mark)) {
      this.soft = at + 1;
      // `if it is good, they will be done`
      // `when cold, fridge`
      const mayPlace = this.opener === 'when' || this.opener === 'if' || this.isUnplaced(at);
      const isHeated = this.verb >= 0 && !canLast(this.pieces[this.verb] as Piece) && this.isTimeOnHeat(at + 1);
      const isPlaced = isHeated || (mayPlace && this.isPlaceAlone(at + 1));
      if (isPlaced || (this.opener !== undefined && this.opener !== 'until' && this.isSubject(at + 1))) {
        this.close(at);
        this.start = at + 1;
      }
    }
    if (!isHard(mark)) return;
    this.close(at, mark === ':');
    this.start = at + 1;
    this.first = mark === '.' || mark === '?' || mark === '!';
  }

  private joint(piece: Piece, at: number): void {
    const is = jointOf(piece.sense)?.is;
    // `turning once,`
    if (is === 'when' && isEnd(this.pieces[at + 1])) return;
    switch (is) {
      case 'conjunction':
      case 'or':
        if (is === 'or' && (this.isOtherPlace(at) || this.isOtherKeeping(at))) {
          this.closeOr(at);
        } else if (piece.word === 'so' && this.pieces[at + 1]?.part === 'verb') this.close(at);
        else if (this.soft !== at) this.soft = at;
        return;
      case 'then':
        if (at === this.start || !this.isInVerb(at)) this.close(at);
        return;
      case 'not':
        // `Serve it rather than letting it stand.`
        if (this.verb >= 0 && this.opener === undefined && this.soft !== at && !this.isInVerb(at)) this.soft = at;
        return;
      case 'preposition':
        // `Eat it instead of leaving it out.`
        if (this.isWithout(at) && this.verb >= 0 && this.opener === undefined) this.soft = at;
        return;
      case 'until':
      case 'when':
      case 'if':
      case 'which':
      case 'after':
      case 'before':
      case 'while':
        // `and when thick`: the conjunction goes with it.
        this.close(this.soft === at - 1 && this.soft >= this.start && this.verb !== this.soft ? this.soft : at);
        this.opener = is;
        return;
    }
  }

  /** Words stand before a first verb that a comma or conjunction parts from it: a clause without a verb. */
  private hasOwnWords(at: number): boolean {
    if (this.soft <= this.start || this.soft > at || this.opener !== undefined) return false;
    const own = this.pieces.slice(this.start, this.soft);
    if (own.some(({ sort }) => sort === 'time')) return true;
    // `In a warm place, let it rise`: where the next is done.
    if (jointOf(own[0]?.sense ?? 0)?.is === 'preposition') return false;
    return own.some((p) => p.sort !== 'mark' && thingOf(p.sense)?.sort === 'place');
  }

  /** `cool, fridge`: an order that says no place. */
  private isUnplaced(at: number): boolean {
    if (this.opener !== undefined || this.verb < 0) return false;
    // `in a dark, cool place`
    const before = this.pieces[at - 1]?.sense ?? UNKNOWN;
    const opened = jointOf(this.pieces[at - 2]?.sense ?? UNKNOWN)?.is;
    const isOpened = opened === 'article' || opened === 'adjective' || this.pieces[at - 2]?.word === ',';
    if (isOpened && (jointOf(before)?.is === 'adjective' || signOf(before) !== undefined)) return false;
    // `turn it in the oil, one night in the fridge`
    if (this.pieces[at + 1]?.sort === 'time') return !canLast(this.pieces[this.verb] as Piece);
    const is = jointOf(this.pieces[at + 1]?.sense ?? UNKNOWN)?.is;
    const own = this.pieces.slice(this.start, at);
    // `bath at 60 C 4 hours, fridge`
    return (
      is === undefined &&
      (own.some(({ sort }) => sort === 'time') || !own.some((p) => thingOf(p.sense)?.sort === 'place'))
    );
  }

  /** `instead of leaving`, `no letting it`: what is not done. */
  private isWithout(at: number): boolean {
    const next = this.pieces[at + 1];
    if (jointOf(this.pieces[at]?.sense ?? UNKNOWN)?.way !== 'without' || next === undefined) return false;
    return isDoing(next);
  }

  /** `are then filled`, `may then stand` */
  private isInVerb(at: number): boolean {
    const is = jointOf(this.pieces[at - 1]?.sense ?? UNKNOWN)?.is;
    return is === 'aux' || is === 'aux not' || is === 'modal' || is === 'had';
  }

  /** A place, or a preposition and a place, and no verb up to the next mark. */
  private isPlaceAlone(begin: number): boolean {
    const { pieces } = this;
    const from = pieces[begin]?.sort === 'time' ? begin + 1 : begin;
    const is = jointOf(pieces[from]?.sense ?? UNKNOWN)?.is;
    const thing = thingOf(pieces[is === 'preposition' || is === 'to' ? from + 1 : from]?.sense ?? UNKNOWN);
    if (thing?.sort !== 'place' || !(thing.bare || is !== undefined)) return false;
    for (let at = from; at < pieces.length; at++) {
      const { sort, word, part } = pieces[at] as Piece;
      if (sort === 'mark' && isHard(word)) break;
      if (isVerb(part)) return false;
    }
    return true;
  }

  /** `4 hours at a bare simmer`: it is heated so long, and nothing is skimmed. */
  private isTimeOnHeat(at: number): boolean {
    const { pieces } = this;
    if (pieces[at]?.sort !== 'time' || jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.way !== 'at') return false;
    for (const { sort, sense, part } of pieces.slice(at + 2)) {
      if (sort === 'mark') return false;
      if (part === 'thing' && verbOf(sense)?.act === 'heat') return true;
    }
    return false;
  }

  /** A thing that something is told of: `they will`, `the milk should`. */
  private isSubject(from: number): boolean {
    const [first, ...rest] = this.pieces.slice(from, from + 5);
    const is = jointOf(first?.sense ?? 0)?.is;
    if (is !== 'it' && is !== 'article' && is !== 'person' && is !== 'mixture' && first?.sort !== 'name') return false;
    return rest.some(({ sense }) => {
      const joint = jointOf(sense)?.is;
      return joint === 'modal' || joint === 'aux';
    });
  }

  /** `in a 325 F. oven 20 minutes or in a 375 F. oven 6`. */
  private isOtherPlace(at: number): boolean {
    const { pieces } = this;
    if (jointOf(pieces[at + 1]?.sense ?? 0)?.is !== 'preposition') return false;
    const placeIn = (from: number, to: number): boolean =>
      pieces.slice(from, to).some((p) => thingOf(p.sense)?.sort === 'place');
    // `bake at 325 F for 20 minutes, or in a convection oven`
    const isPlaced = this.opener === 'until' || verbOf(pieces[this.verb]?.sense ?? 0)?.where === 'oven';
    return placeIn(at + 2, at + 6) && (isPlaced || placeIn(this.start, at));
  }

  /** `Keep for 3 d in the fridge, or 3 months at -18 C`: so long here, and as long there. */
  private isOtherKeeping(at: number): boolean {
    const { pieces } = this;
    const row = verbOf(pieces[this.verb]?.sense ?? UNKNOWN);
    const own = pieces.slice(this.start, at);
    // `Raw sausages keep for 2 d in the fridge, or …`: of a noun and a verb the noun may win.
    const isCold = row === undefined && own.some(({ sense }) => isColdPlace(thingOf(sense)));
    if (row?.act !== 'stay' && row?.act !== 'cool' && !isCold) return false;
    const end = pieces.findIndex(
      ({ sort, word, part }, i) => i > at && (isVerb(part) || (sort === 'mark' && isHard(word))),
    );
    return isKept(own, row?.where) && isKept(pieces.slice(at, end < 0 ? pieces.length : end));
  }

  /** The first of the words right before a verb that belong to it: `do not`, `may`, `gently`. */
  private reach(at: number): number {
    let from = at;
    while (from > this.start) {
      const before = this.pieces[from - 1] as Piece;
      if (before.part !== 'joint') break;
      const joint = jointOf(before.sense);
      // `that nobody leaves it out`
      const isNobody = joint?.is === 'person' && joint.way === 'without';
      if (!joint || !(isNobody || REACHES.has(joint.is) || joint.way === 'by' || joint.way === 'for')) break;
      from--;
    }
    return from;
  }

  private closeOr(at: number): void {
    this.close(at);
    this.orElse = true;
  }

  close(to: number, label = false): void {
    if (to > this.start) {
      const { start, verb, opener, orElse, first } = this;
      this.clauses.push(new Clause(start, to, verb < to ? verb : -1, opener, label, orElse, first));
      this.first = false;
    }
    this.start = Math.max(to, this.start);
    this.soft = -1;
    this.verb = -1;
    this.opener = undefined;
    this.orElse = false;
  }
}

const isColdPlace = (thing: ThingRow | undefined): boolean => thing?.is === 'cold' || thing?.is === 'frozen';

/** A time and a place are said, or how cold it is there. */
const isKept = (pieces: readonly Piece[], where?: VerbRow['where']): boolean =>
  pieces.some(({ time }) => time !== undefined) &&
  (where !== undefined || pieces.some(({ sort, sense }) => sort === 'temperature' || thingOf(sense)?.sort === 'place'));

const canLast = ({ sense }: Piece): boolean => verbOf(sense)?.lasts === 'waits';

/** Frames whose verb is an event: `before carving`, `after you take it off`. */
const opensVerb = (opener: JointKind): boolean => opener === 'after' || opener === 'before' || opener === 'while';

const REACHES: ReadonlySet<JointKind> = new Set([
  'adverb',
  'not',
  'aux not',
  'modal',
  'let',
  'purpose',
  'aux',
  'had',
  'to',
]);
