/**
 * Knows what marks, joints and verbs make likely of the word that comes next, and what of its clause is there.
 * Refuses to know whether a word that comes is a verb (`verb-by-form.ts`, `nouns.ts`).
 */
import { goesOnTo, isEnd, isNounAhead, mayDescribe, takesObject } from './ahead.ts';
import { formOf, jointOf, UNKNOWN, verbOf } from './lexicon.ts';
import { isHard, isSoft, type Piece } from './pieces.ts';
import type { JointKind } from './rows.ts';

/** What the words before a place make likely there. */
type Expects =
  /** Start, `.;:(`, `then`: an order. */
  | 'order'
  /** Behind a comma or conjunction: an order, or another thing of a list. */
  | 'more'
  /** Behind an article, number, adjective or preposition. */
  | 'thing'
  /** Behind `to`. */
  | 'base'
  /** Behind `may`, `do not`. */
  | 'told'
  /** Behind `is`. */
  | 'participle'
  /** Behind `until`, `when`, `if`, `which`: a sign, or a clause of its own. */
  | 'frame'
  /** Behind `by`, `while`, `before`, `without`. */
  | 'ing'
  /** Behind a thing. */
  | 'behind thing'
  /** Behind a verb. */
  | 'object';

const isIt = (piece: Piece | undefined): boolean => jointOf(piece?.sense ?? UNKNOWN)?.is === 'it';

/** One walk through a sentence, as far as it has come. */
export class Expecting {
  protected readonly pieces: readonly Piece[];
  protected expects: Expects = 'order';
  /** The clause has its verb: an order, what is told, or the sign of a frame. */
  protected hasVerb = false;
  /** An order stands before in this sentence. */
  protected ordered = false;
  /** The clause is framed: `until`, `when`, `which`. */
  protected framed = false;
  /** The clause opened with where, when or with what, and its verb has not come. */
  protected leading = false;
  /** A comma came since the last verb. */
  protected behindComma = false;
  /** The last word was an adjective. */
  protected adjective = false;
  /** By `which`. */
  protected relative = false;
  /** It is, or an `until` came before: a word that may be a sign is one. */
  protected signs = false;
  /** `allow`: a time may follow its object, and no verb. */
  protected allowing = false;
  /** `let`, whose verb has not come. */
  protected letting = false;
  /** The last word behind which a list of -ing words may go on: `by cutting and baking`. */
  protected lastVerb: Piece | undefined;

  constructor(pieces: readonly Piece[]) {
    this.pieces = pieces;
  }

  protected mark(piece: Piece, at: number): void {
    if (isSoft(piece.word)) {
      // `10-pound pressure`
      const [before, after] = [this.pieces[at - 1], this.pieces[at + 1]];
      if (before?.sort === 'amount' && before.end === piece.start && after?.start === piece.end) this.expects = 'thing';
      else this.comma(at);
      return;
    }
    if (!isHard(piece.word)) return;
    this.expects = 'order';
    this.hasVerb = false;
    this.framed = false;
    this.signs = false;
    this.letting = false;
    this.leading = false;
    if (piece.word === '.' || piece.word === ':' || piece.word === ';') {
      this.ordered = false;
      this.lastVerb = undefined;
    }
  }

  protected comma(at: number): void {
    // `a dark, dry, cool place`
    const next = this.pieces[at + 1]?.sense ?? UNKNOWN;
    if (this.expects === 'order' || (this.expects === 'thing' && this.adjective && mayDescribe(next))) return;
    this.behindComma = true;
    // `let it come down, cool the jars`
    if (this.letting) {
      this.letting = false;
      this.ordered = true;
    }
    // `In a small bowl, mix`; `if tight, label`; `when it boils, the milk may be added`
    const led = !this.ordered && (this.leading || this.framed);
    if (this.framed && (this.hasVerb || !this.ordered)) this.framed = false;
    this.expects = led ? 'order' : 'more';
    if (led) this.hasVerb = false;
    this.leading = false;
  }

  /** A frame has said what it waits for, or `is` what something is. */
  protected satisfied(): void {
    this.hasVerb = true;
    this.expects = 'behind thing';
  }

  protected joint(piece: Piece, is: JointKind, at: number): void {
    piece.part = 'joint';
    // `turning once,`
    if (is === 'when' && isEnd(this.pieces[at + 1])) return;
    switch (is) {
      case 'adjective':
        // `cut very thin,`; `when hot add`
        if (this.expects !== 'thing' && !goesOnTo(this.pieces, at)) {
          if (this.expects === 'frame' || this.expects === 'participle') this.hasVerb = true;
          piece.part = 'describes';
          this.expects = 'behind thing';
        } else this.expects = 'thing';
        this.adjective = true;
        return;
      case 'article':
        // `either brown them`
        if (formOf(this.pieces[at + 1]?.sense ?? UNKNOWN) === 'base' && isIt(this.pieces[at + 2])) return;
        this.expects = 'thing';
        return;
      case 'number':
      case 'quantity':
        this.expects = 'thing';
        return;
      case 'preposition':
        // `Lime in, taste`
        if (this.isPutIn(at)) {
          this.verb(piece, 'verb');
          this.expects = 'behind thing';
          return;
        }
        this.expects = jointOf(piece.sense)?.way === 'by' ? 'ing' : 'thing';
        return;
      case 'to':
        this.expects = 'base';
        return;
      case 'optional':
        return;
      case 'conjunction':
      case 'or':
        // `so every strip passes 70 C`
        if (piece.word === 'so') {
          this.hasVerb = false;
          // `We cannot bear it sharp, so boil it in water`: whatever was told of before, this is an order.
          if (formOf(this.pieces[at + 1]?.sense ?? UNKNOWN) === 'base' && takesObject(this.pieces, at + 1)) {
            this.expects = 'order';
            this.framed = false;
            return;
          }
        }
        // `; or broil it`
        if (this.expects !== 'order') this.expects = 'more';
        return;
      case 'then':
        // `The jars are then filled.`
        if (this.expects === 'participle' || this.expects === 'told') return;
        this.expects = 'order';
        this.hasVerb = false;
        this.framed = false;
        this.signs = false;
        return;
      case 'aux':
      case 'aux not':
        this.endRelative();
        this.hasVerb = true;
        this.expects = 'participle';
        return;
      case 'had':
        this.hasVerb = true;
        this.expects = 'participle';
        return;
      case 'modal':
        this.endRelative();
        this.hasVerb = false;
        this.expects = 'told';
        return;
      case 'let':
        this.letting = true;
        this.allowing = jointOf(piece.sense)?.way === 'for';
        this.framed = false;
        this.hasVerb = false;
        this.expects = 'told';
        return;
      case 'not':
        if (this.expects !== 'participle' && this.expects !== 'frame') this.expects = 'told';
        return;
      case 'until':
      case 'when':
      case 'if':
      case 'which':
        // `Not once should you let it stand.`
        if (is === 'if' && jointOf(this.pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'not') {
          piece.part = 'describes';
          this.hasVerb = false;
          this.expects = 'told';
          return;
        }
        // `See that it stays cold.`
        if (is === 'which' && !this.framed && this.isLooked(at)) {
          piece.part = 'describes';
          return;
        }
        this.framed = true;
        this.relative = is === 'which';
        this.signs = is === 'until' || is === 'when';
        this.hasVerb = false;
        this.expects = 'frame';
        return;
      case 'after':
      case 'before':
      case 'while':
        // `After a month, slice`
        if (this.expects === 'order' && !this.ordered) this.leading = true;
        this.framed = false;
        this.hasVerb = false;
        this.expects = is === 'while' && this.isAtOrder(at) ? 'order' : 'ing';
        return;
      case 'purpose':
        this.expects = 'base';
        return;
      case 'rest':
      case 'all':
        this.expects = isNounAhead(this.pieces, at) ? 'thing' : 'behind thing';
        return;
      case 'person':
      case 'it':
        // `Up it goes, and there it stays`: it is told of once more.
        if (this.expects === 'more' && !this.framed && formOf(this.pieces[at + 1]?.sense ?? UNKNOWN) === 's')
          this.hasVerb = false;
        this.expects = 'behind thing';
        return;
      case 'mixture':
        this.expects = 'behind thing';
        return;
      case 'particle':
      case 'adverb':
      case 'bound':
      case 'advice':
      case 'elsewhere':
      case 'now':
      case 'later':
    }
  }

  /** `Mince in, 10 minutes`: behind what is listed, with nothing that it could be in. */
  private isPutIn(at: number): boolean {
    if (this.hasVerb || this.ordered || this.framed || this.pieces[at - 1]?.sort !== 'name') return false;
    const way = jointOf((this.pieces[at] as Piece).sense)?.way;
    if (way !== 'at' && way !== 'to' && way !== 'over') return false;
    const next = this.pieces[at + 1];
    const is = next && jointOf(next.sense)?.is;
    return isEnd(next) || next?.sort === 'time' || is === 'preposition' || is === 'then' || is === 'adverb';
  }

  /** A word right behind `see`, `make sure`, that makes something happen. */
  private isLooked(at: number): boolean {
    const before = this.pieces[at - 1];
    return before !== undefined && before === this.lastVerb && verbOf(before.sense)?.act === 'read';
  }

  /** `Apples that are ripe will keep`: the second of its verbs is no more the frame's. */
  protected endRelative(): void {
    if (this.framed && this.relative && this.hasVerb) this.framed = false;
  }

  /** `Meanwhile`, with an order behind it. */
  protected isAtOrder(at: number): boolean {
    const next = this.pieces[at + 1];
    return next === undefined || next.sort === 'mark' || formOf(next.sense) === 'base';
  }

  protected verb(piece: Piece, part: Piece['part']): true {
    piece.part = part;
    if (part === 'verb') {
      this.ordered = true;
      this.framed = false;
      this.signs = false;
      this.letting = false;
    }
    this.hasVerb = true;
    this.behindComma = false;
    this.lastVerb = piece;
    this.expects = part === 'describes' ? 'behind thing' : 'object';
    return true;
  }
}
