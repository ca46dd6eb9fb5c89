/**
 * The pass that settles what each word is in its clause: a verb, a thing, what describes one. The first rule that fires decides.
 * Refuses to know where clauses end and what their verbs take.
 */
import { isAdverb } from './forms.ts';
import { formOf, isStrange, jointOf, signOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
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

const isEnd = (next: Piece | undefined): boolean => next === undefined || next.sort === 'mark';

/** What a clause opens with before its verb: `in a bowl, mix`; `if desired, add`. */
const leads = (is: JointKind | undefined): boolean =>
  is === 'preposition' || is === 'to' || is === 'optional' || is === 'bound' || is === 'adverb';

/** `Cool water`, `brown sugar`: it may stand before a noun. */
const mayDescribe = (sense: number): boolean => signOf(sense) !== undefined || jointOf(sense)?.is === 'adjective';

/** Settles the part of every piece. */
export function settle(pieces: readonly Piece[]): void {
  const scan = new Scan(pieces);
  for (let at = 0; at < pieces.length; at++) scan.take(pieces[at] as Piece, at);
}

class Scan {
  private readonly pieces: readonly Piece[];
  private expects: Expects = 'order';
  /** The clause has its verb: an order, what is told, or the sign of a frame. */
  private hasVerb = false;
  /** An order stands before in this sentence. */
  private ordered = false;
  /** The clause is framed: `until`, `when`, `which`. */
  private framed = false;
  /** The clause opened with where, when or with what, and its verb has not come. */
  private leading = false;
  /** A comma came since the last verb. */
  private behindComma = false;
  /** The last word was an adjective. */
  private adjective = false;
  /** By `which`. */
  private relative = false;
  /** It is, or an `until` came before: a word that may be a sign is one. */
  private signs = false;
  /** `let`, whose verb has not come. */
  private letting = false;
  /** The last word behind which a list of -ing words may go on: `by cutting and baking`. */
  private lastVerb: Piece | undefined;

  constructor(pieces: readonly Piece[]) {
    this.pieces = pieces;
  }

  take(piece: Piece, at: number): void {
    switch (piece.sort) {
      case 'mark':
        this.mark(piece, at);
        return;
      case 'time':
        if (this.expects !== 'order' && this.expects !== 'told') this.expects = 'behind thing';
        return;
      case 'duration':
      case 'temperature':
      case 'length':
        // A figure leaves the place as it is: `For 10 minutes boil`, `in 325 F. oven`.
        if (this.expects === 'object' || this.expects === 'frame' || this.expects === 'base')
          this.expects = 'behind thing';
        return;
      case 'amount':
        this.expects = 'thing';
        return;
      default:
        this.adjective = false;
        this.word(piece, at);
    }
  }

  private mark(piece: Piece, at: number): void {
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

  private comma(at: number): void {
    // `a dark, dry, cool place`
    const next = this.pieces[at + 1]?.sense ?? UNKNOWN;
    if (this.expects === 'order' || (this.expects === 'thing' && this.adjective && mayDescribe(next))) return;
    this.behindComma = true;
    // `In a small bowl, mix`; `if tight, label`; `when it boils, the milk may be added`
    const led = !this.ordered && (this.leading || this.framed);
    if (this.framed && (this.hasVerb || !this.ordered)) this.framed = false;
    this.expects = led ? 'order' : 'more';
    if (led) this.hasVerb = false;
    this.leading = false;
  }

  private word(piece: Piece, at: number): void {
    if (piece.part === 'tail') return;
    const { sense } = piece;
    const joint = jointOf(sense);
    const verb = verbOf(sense);
    if (this.expects === 'order' && leads(joint?.is)) this.leading = true;
    if (joint !== undefined && piece.sort !== 'name' && this.isJointFirst(joint.is, sense, at)) {
      this.joint(piece, joint.is, at);
      return;
    }
    if (verb !== undefined && (piece.sort !== 'name' || piece.to === piece.from + 1) && this.isVerb(piece, at)) return;
    if (piece.sort !== 'name' && joint !== undefined && !(thingOf(sense) && this.expects === 'thing')) {
      this.joint(piece, joint.is, at);
      return;
    }
    if (piece.sort === 'word' && isStrange(sense)) {
      if (isAdverb(piece.word)) {
        piece.part = 'joint';
        return;
      }
      if (this.isUnknownOrder(piece, at)) return;
      if (this.expects === 'base' && this.verb(piece, 'purpose')) return;
    }
    if (signOf(sense) !== undefined && this.describes(at)) {
      piece.part = 'describes';
      if (this.expects === 'frame' || this.expects === 'participle') this.satisfied();
      else if (this.expects === 'base') this.expects = 'thing';
      return;
    }
    // `a nice brown colour`
    if (this.expects !== 'thing' || this.letting || !isStrange(sense) || !this.goesOnTo(at))
      this.expects = 'behind thing';
  }

  /** Words of a sentence before verbs: `remaining`, `using`, and `can` before another verb. */
  private isJointFirst(is: JointKind, sense: number, at: number): boolean {
    if (is === 'aux' || is === 'aux not') return true;
    if (is === 'modal') {
      if (verbOf(sense) === undefined && thingOf(sense) === undefined) return true;
      const subject = jointOf(this.pieces[at - 1]?.sense ?? UNKNOWN)?.is;
      if (subject === 'person' || subject === 'it') return true;
      const next = this.pieces[at + 1];
      const after = next && jointOf(next.sense)?.is;
      return after === 'aux' || after === 'not' || (next !== undefined && formOf(next.sense) === 'base');
    }
    const form = formOf(sense);
    return form === 'ing' || form === 'past'
      ? is === 'rest' || is === 'preposition' || is === 'let'
      : form === 's' && is === 'let';
  }

  /** A frame has said what it waits for, or `is` what something is. */
  private satisfied(): void {
    this.hasVerb = true;
    this.expects = 'behind thing';
  }

  private joint(piece: Piece, is: JointKind, at: number): void {
    piece.part = 'joint';
    switch (is) {
      case 'adjective':
        // `cut very thin,`; `when hot add`
        if (this.expects !== 'thing' && !this.goesOnTo(at)) {
          if (this.expects === 'frame' || this.expects === 'participle') this.hasVerb = true;
          piece.part = 'describes';
          this.expects = 'behind thing';
        } else this.expects = 'thing';
        this.adjective = true;
        return;
      case 'article':
      case 'number':
      case 'quantity':
        this.expects = 'thing';
        return;
      case 'preposition':
        this.expects = jointOf(piece.sense)?.way === 'by' ? 'ing' : 'thing';
        return;
      case 'to':
        this.expects = 'base';
        return;
      case 'optional':
        return;
      case 'conjunction':
      case 'or':
        // `; or broil it`
        if (this.expects !== 'order') this.expects = 'more';
        return;
      case 'then':
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
        this.framed = true;
        this.relative = is === 'which';
        this.signs = is === 'until' || is === 'when';
        this.hasVerb = false;
        this.expects = 'frame';
        return;
      case 'after':
      case 'before':
      case 'while':
        this.framed = false;
        this.hasVerb = false;
        this.expects = is === 'while' && this.isAtOrder(at) ? 'order' : 'ing';
        return;
      case 'purpose':
        this.expects = 'base';
        return;
      case 'rest':
      case 'all':
        this.expects = this.isNounAhead(at) ? 'thing' : 'behind thing';
        return;
      case 'person':
      case 'it':
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

  /** `Apples that are ripe will keep`: the second of its verbs is no more the frame's. */
  private endRelative(): void {
    if (this.framed && this.relative && this.hasVerb) this.framed = false;
  }

  /** `Meanwhile`, with an order behind it. */
  private isAtOrder(at: number): boolean {
    const next = this.pieces[at + 1];
    return next === undefined || next.sort === 'mark' || formOf(next.sense) === 'base';
  }

  /** Whether the word is a verb here, and which part. */
  private isVerb(piece: Piece, at: number): boolean {
    const form = formOf(piece.sense);
    const noun = piece.sort === 'name' || verbOf(piece.sense)?.noun === true;
    switch (form) {
      case 'base':
      case 'base or past':
        return this.isBase(piece, at, noun, form === 'base or past');
      case 's':
        if (!this.isTold(at, noun)) return false;
        return this.verb(piece, this.framed ? 'framed' : 'verb');
      case 'ing':
        return this.isIng(piece, at);
      default:
        return this.isPast(piece, at);
    }
  }

  private isBase(piece: Piece, at: number, noun: boolean, past: boolean): boolean {
    // `cut it thin`, `until brown and dry`
    if (this.signs || this.expects === 'behind thing' || this.expects === 'object')
      if (mayDescribe(piece.sense) && !this.letting && !this.hasObject(at)) return false;
    switch (this.expects) {
      case 'told':
        return this.verb(piece, this.framed ? 'framed' : 'verb');
      case 'participle':
        if (past) return this.verb(piece, this.framed ? 'describes' : 'passive');
        return false;
      case 'base':
        if (this.letting) return this.verb(piece, 'verb');
        if (noun && this.isThingAhead(at)) return false;
        return this.verb(piece, 'purpose');
      case 'order':
        return this.takes(at, noun, true) && this.verb(piece, 'verb');
      case 'more':
        // `to store and ripen`
        if (this.lastVerb?.part === 'purpose' && !this.behindComma && !this.takesObject(at))
          return this.verb(piece, 'purpose');
        return (this.hasVerb || this.ordered || !noun) && this.takes(at, noun, false) && this.verb(piece, 'verb');
      case 'behind thing':
        if (this.letting) return this.verb(piece, 'verb');
        if (!this.hasVerb && (!noun || this.takesAsTold(at) || this.isBehindPerson(at)))
          return this.verb(piece, this.framed ? 'framed' : 'verb');
        // `the lid closely shut`
        if (past && !this.takesObject(at)) return false;
        // `when cold turn out`: an order behind a frame, with no comma.
        return (
          (!noun || (this.framed && this.hasVerb && this.takesObject(at))) &&
          this.takes(at, noun, false) &&
          this.verb(piece, 'verb')
        );
      case 'object':
        // `go and fetch`, `help keep`; `serve hot`, `keep cool`
        return !noun && this.verb(piece, 'verb');
      case 'thing':
        // `Let this simmer gently.`
        return this.letting && this.isBehindArticle(at) && !this.isWordAhead(at) && this.verb(piece, 'verb');
      case 'frame':
      case 'ing':
        return false;
    }
  }

  /** A subject stands before it and no verb: `it simmers`, `the apples keep`. */
  private isTold(at: number, noun: boolean): boolean {
    if (this.expects === 'more') return this.hasVerb && this.framed && !noun;
    if (this.expects !== 'behind thing' || this.hasVerb) return false;
    const before = this.pieces[at - 1];
    const subject = before && jointOf(before.sense)?.is;
    return subject === 'it' || subject === 'person' || subject === 'which' || !noun || this.takesAsTold(at);
  }

  /** A thing, or a verb of which this would be the subject. */
  private isWordAhead(at: number): boolean {
    return this.isNounAhead(at) || verbOf(this.pieces[at + 1]?.sense ?? UNKNOWN) !== undefined;
  }

  private isBehindArticle(at: number): boolean {
    return jointOf(this.pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'article';
  }

  private isBehindPerson(at: number): boolean {
    return jointOf(this.pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'person';
  }

  private isIng(piece: Piece, at: number): boolean {
    const ahead = this.isThingAhead(at);
    switch (this.expects) {
      case 'ing':
        return this.verb(piece, 'beside');
      case 'order':
        return !this.isSubject(at) && this.verb(piece, 'beside');
      case 'more':
        if (this.lastVerb?.part === 'beside' || this.hasVerb || this.ordered)
          return (
            (!ahead || this.takesObject(at) || (this.behindComma && !mayDescribe(piece.sense))) &&
            this.verb(piece, 'beside')
          );
        return false;
      case 'participle':
        return this.verb(piece, this.framed ? 'describes' : 'verb');
      case 'object':
        // `to prevent sticking`, `add boiling stock`
        if (this.lastVerb?.part === 'purpose')
          // `to finish broiling the fish`
          return verbOf(this.lastVerb.sense)?.act === 'heat' && this.verb(piece, 'verb');
        return !ahead && this.verb(piece, 'beside');
      case 'behind thing':
        // `the almond icing is`, `the flavoring.`
        return !ahead && !isEnd(this.pieces[at + 1]) && !this.isSubject(at) && this.verb(piece, 'beside');
      case 'thing': {
        const before = this.pieces[at - 1];
        if (before !== undefined && jointOf(before.sense)?.way === 'for') return this.verb(piece, 'purpose');
        if (ahead) piece.part = 'describes';
        return ahead;
      }
      case 'frame':
        if (this.takesObject(at)) return this.verb(piece, 'beside');
        this.satisfied();
        piece.part = 'describes';
        return true;
      case 'base':
      case 'told':
        return false;
    }
  }

  private isPast(piece: Piece, at: number): boolean {
    if (this.expects === 'participle') return this.verb(piece, this.framed ? 'describes' : 'passive');
    // `left out overnight`, of an ingredient
    if (at === 0 && !this.isNounAhead(at)) return this.verb(piece, 'passive');
    // `it is skimmed, and poured into jars`
    const goesOn = this.expects === 'more' || this.expects === 'order';
    // Of several words the last takes what follows.
    const isLong = piece.to > piece.from + 1;
    if (goesOn && this.lastVerb?.part === 'passive' && (isLong || !this.isNounAhead(at)))
      return this.verb(piece, this.framed ? 'describes' : 'passive');
    if (this.expects === 'frame') this.hasVerb = true;
    piece.part = 'describes';
    this.expects = this.expects === 'thing' || this.isNounAhead(at) ? 'thing' : 'behind thing';
    return true;
  }

  /** `Freezing may crack a jar`, `FRYING.`: what is done is spoken of. */
  private isSubject(at: number): boolean {
    const next = this.pieces[at + 1];
    if (next === undefined || (next.sort === 'mark' && !isSoft(next.word))) return true;
    const is = jointOf(next.sense)?.is;
    const other = is === 'conjunction' || is === 'or' ? this.pieces[at + 2] : undefined;
    if (other !== undefined && formOf(other.sense) === 'ing') return this.isSubject(at + 2);
    return is === 'modal' || is === 'aux' || is === 'had';
  }

  private verb(piece: Piece, part: Piece['part']): true {
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

  /**
   * Whether what stands behind lets it be an order: an object, adverb, preposition or end. A name is one with an object alone, and a word that
   * is a thing as often not before a noun that it may describe.
   */
  private takes(at: number, noun: boolean, first: boolean): boolean {
    const piece = this.pieces[at] as Piece;
    const next = this.pieces[at + 1];
    // `Salt the water`, `sprinkle with sugar`
    const isWith = jointOf(next?.sense ?? UNKNOWN)?.way === 'with';
    if (piece.sort === 'name') return this.takesObject(at) || isWith || (first && this.isThingAhead(at));
    if (next === undefined) return !noun || this.ordered || first;
    switch (next.sort) {
      case 'mark':
        return !noun || first || this.ordered;
      case 'name':
      case 'time':
      case 'duration':
      case 'amount':
      case 'temperature':
        return first || !mayDescribe(piece.sense);
    }
    const is = jointOf(next.sense)?.is;
    switch (is) {
      case 'aux':
      case 'had':
        return false;
      case 'modal':
        return thingOf(next.sense) !== undefined;
      case 'conjunction':
      case 'or': {
        const after = this.pieces[at + 2];
        return !noun || first || (after !== undefined && verbOf(after.sense) !== undefined && after.sort === 'word');
      }
      case 'to':
      case 'preposition':
        return !noun || jointOf(next.sense)?.way !== 'of';
      case undefined:
        return first || !mayDescribe(piece.sense);
      default:
        return true;
    }
  }

  /** An article, a name or the like right behind: an object for sure. */
  private takesObject(at: number): boolean {
    const next = this.pieces[at + 1];
    if (next === undefined) return false;
    if (next.sort === 'name' || next.sort === 'amount') return true;
    switch (jointOf(next.sense)?.is) {
      case 'article':
      case 'number':
      case 'quantity':
      case 'it':
      case 'mixture':
      case 'rest':
      case 'all':
        return true;
      default:
        return false;
    }
  }

  private hasObject(at: number): boolean {
    const next = this.pieces[at + 1];
    return (
      this.takesObject(at) || (next?.sort === 'word' && thingOf(next.sense) !== undefined) || next?.sort === 'name'
    );
  }

  /** Behind a noun that may be its subject: only where a place, time or manner follows. */
  private takesAsTold(at: number): boolean {
    const next = this.pieces[at + 1];
    if (next === undefined) return true;
    if (next.sort === 'time' || next.sort === 'mark') return true;
    const is = jointOf(next.sense)?.is;
    return is === 'preposition' || is === 'to' || is === 'adverb' || is === 'until';
  }

  /** A noun stands right behind. */
  private isThingAhead(at: number): boolean {
    const next = this.pieces[at + 1];
    if (next === undefined) return false;
    if (next.sort === 'name') return true;
    return (
      next.sort === 'word' &&
      jointOf(next.sense) === undefined &&
      (thingOf(next.sense) !== undefined || (isStrange(next.sense) && !isAdverb(next.word)))
    );
  }

  /** An adjective stands before what it describes. */
  private goesOnTo(at: number): boolean {
    const next = this.pieces[at + 1];
    if (next === undefined) return false;
    if (next.sort !== 'word') return next.sort !== 'mark' && next.sort !== 'time';
    const is = jointOf(next.sense)?.is;
    return is === undefined
      ? this.isNounAhead(at) || formOf(next.sense) === 'past'
      : is === 'adjective' || is === 'rest';
  }

  /** The same, or a word that may be one. */
  private isNounAhead(at: number): boolean {
    const next = this.pieces[at + 1];
    return (
      this.isThingAhead(at) ||
      (next?.sort === 'word' &&
        formOf(next.sense) === 'base' &&
        next.to === next.from + 1 &&
        !this.takesObject(at + 1) &&
        jointOf(next.sense) === undefined)
    );
  }

  /** `Spot it with butter`: nobody knows the word, and it stands where an order does, with an object right behind. */
  private isUnknownOrder(piece: Piece, at: number): boolean {
    if (this.expects !== 'order' && !(this.expects === 'more' && this.ordered && !this.framed)) return false;
    const next = this.pieces[at + 1];
    const before = this.pieces[at - 1];
    if (next?.sort === 'amount' && before?.sort === 'word' && isAdverb(before.word))
      return this.verb(this.pieces[at] as Piece, 'verb');
    // `Exhaust to 170 F.`
    const after = this.pieces[at + 2];
    const isFigure = after?.sort === 'temperature' || after?.sort === 'time';
    if (next?.sort === 'temperature' || next?.time?.kind === 'spent') return this.verb(piece, 'verb');
    if (next?.sort !== 'word') return false;
    const is = jointOf(next.sense)?.is;
    if (isFigure && (is === 'to' || is === 'preposition')) return this.verb(piece, 'verb');
    if (is !== 'it' && is !== 'article' && is !== 'rest') return false;
    return this.verb(piece, 'verb');
  }

  /** A word that a sign may be stands where it tells what something is. */
  private describes(at: number): boolean {
    return this.expects !== 'thing' || this.isThingAhead(at);
  }
}
