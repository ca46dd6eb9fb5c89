/**
 * The pass that settles what each word is in its clause: a verb, a thing, what describes one. The first rule that fires decides.
 * Refuses to know where clauses end, what their verbs take, and which forms of a verb are one where they stand (`verb-by-form.ts`).
 */
import {
  goesOnTo,
  isBehind,
  isNounAhead,
  isThingOrder,
  isUnknownTold,
  leads,
  takesAsTold,
  takesObject,
} from './ahead.ts';
import { contactAt, undoneBehind } from './contact.ts';
import { isAdverb } from './forms.ts';
import { formOf, isStrange, isTimeAlone, jointOf, signOf, thingOf, timeOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import type { JointKind } from './rows.ts';
import { VerbByForm } from './verb-by-form.ts';

/** Settles the part of every piece. */
export function settle(pieces: readonly Piece[]): void {
  const scan = new Scan(pieces);
  for (let at = 0; at < pieces.length; at++) {
    if (at === 0 || isStop(pieces[at - 1])) at = headingEnd(pieces, at);
    scan.take(pieces[at] as Piece, at);
  }
}

const DASHES: ReadonlySet<string> = new Set(['-', '–', '—']);

const isStop = (piece: Piece | undefined): boolean =>
  piece?.sort === 'mark' && (piece.word === '.' || piece.word === '?' || piece.word === '!');

/** The words of a heading (judgement). */
const LONGEST_HEADING = 5;

/** `ROAST BEEF.--Take a rib`: a few words before a point and a dash right behind it order nothing. The piece behind them. */
function headingEnd(pieces: readonly Piece[], from: number): number {
  for (let at = from; at < pieces.length - 1 && at <= from + LONGEST_HEADING; at++) {
    const { sort, end, word } = pieces[at] as Piece;
    const dash = pieces[at + 1] as Piece;
    if (sort === 'mark') return word === '.' && DASHES.has(dash.word) && dash.start === end ? at : from;
    if (sort !== 'word' && sort !== 'name') return from;
  }
  return from;
}

class Scan extends VerbByForm {
  /** The piece behind a clause that only describes. */
  private past = 0;

  take(piece: Piece, at: number): void {
    if (at < this.past) {
      piece.part = 'describes';
      return;
    }
    switch (piece.sort) {
      case 'mark':
        this.mark(piece, at);
        return;
      case 'time':
        if (this.expects === 'order') this.leading = true;
        else if (this.expects !== 'told') this.expects = 'behind thing';
        return;
      case 'length':
      case 'duration':
      case 'temperature':
        // A figure leaves the place as it is: `For 10 minutes boil`, `in 325 F. oven`.
        if (this.expects === 'object' || this.expects === 'frame' || this.expects === 'base')
          this.expects = 'behind thing';
        // `Above 2,000 ft process for 15 minutes.`
        if (piece.sort === 'length' && this.leading && formOf(this.pieces[at + 1]?.sense ?? UNKNOWN) === 'base')
          this.expects = 'order';
        return;
      case 'amount':
        this.expects = 'thing';
        return;
      default:
        this.adjective = false;
        this.word(piece, at);
    }
  }

  private word(piece: Piece, at: number): void {
    if (piece.part === 'tail') return;
    const undone = undoneBehind(this.pieces, at);
    if (undone > 0) {
      this.past = at + 1 + undone;
      this.expects = 'behind thing';
      piece.part = 'joint';
      return;
    }
    const described = contactAt(this.pieces, at);
    if (described > 0) {
      this.past = at + described;
      piece.part = 'describes';
      return;
    }
    const { sense } = piece;
    const joint = jointOf(sense);
    const verb = verbOf(sense);
    if (this.expects === 'order' && leads(joint?.is)) this.leading = true;
    // `Saturday, rub`
    if (
      this.expects === 'order' &&
      piece.sort === 'word' &&
      (isTimeAlone(sense) || (timeOf(sense) && formOf(sense) === 'ing'))
    ) {
      this.leading = true;
      return;
    }
    if (joint !== undefined && piece.sort !== 'name' && this.isJointFirst(joint.is, sense, at)) {
      this.joint(piece, joint.is, at);
      return;
    }
    if (verb !== undefined && (piece.sort !== 'name' || piece.to === piece.from + 1) && this.isVerb(piece, at)) return;
    if (piece.sort !== 'name' && joint !== undefined && !(thingOf(sense) && this.expects === 'thing')) {
      this.joint(piece, joint.is, at);
      return;
    }
    if (piece.sort === 'word' && this.mayOrder() && isThingOrder(this.pieces, at, this.expects === 'more')) {
      this.verb(piece, 'verb');
      return;
    }
    if (piece.sort === 'word' && isStrange(sense)) {
      if (isAdverb(piece.word)) {
        piece.part = 'joint';
        return;
      }
      if (this.isUnknownOrder(piece, at)) return;
      if (this.isUnknownDoing(piece, at)) {
        this.verb(piece, 'verb');
        return;
      }
      // `the strips should bend`, `do not disturb`
      // `let the pressure fall by itself`
      const isLet = this.letting && this.expects === 'behind thing' && takesAsTold(this.pieces, at);
      if (isLet || (this.expects === 'told' && isUnknownTold(this.pieces, at))) {
        this.verb(piece, this.framed ? 'framed' : 'verb');
        return;
      }
      if (this.expects === 'base' && this.verb(piece, 'purpose')) return;
    }
    if (signOf(sense) !== undefined && (this.expects !== 'thing' || isNounAhead(this.pieces, at))) {
      piece.part = 'describes';
      if (this.expects === 'thing') return;
      if (this.expects === 'frame' || this.expects === 'participle') this.satisfied();
      else if (this.expects === 'base') this.expects = 'thing';
      return;
    }
    // `a nice brown colour`
    if (this.expects !== 'thing' || this.letting || !isStrange(sense) || !goesOnTo(this.pieces, at))
      this.expects = 'behind thing';
  }

  /** Words of a sentence before verbs: `remaining`, `using`, and `can` before another verb. */
  private isJointFirst(is: JointKind, sense: number, at: number): boolean {
    // `get it into the fridge`
    if (is === 'aux' && formOf(sense) === 'base') return this.expects !== 'order' && !takesObject(this.pieces, at);
    if (is === 'aux' || is === 'aux not') return true;
    if (is === 'modal') {
      if (verbOf(sense) === undefined && thingOf(sense) === undefined) return true;
      const subject = jointOf(this.pieces[at - 1]?.sense ?? UNKNOWN)?.is;
      if (subject === 'person' || subject === 'it') return true;
      const next = this.pieces[at + 1];
      const after = next && jointOf(next.sense)?.is;
      // `Do you chill it?`
      return (
        after === 'person' ||
        after === 'aux' ||
        after === 'not' ||
        (next !== undefined && formOf(next.sense) === 'base')
      );
    }
    // `(see Sauces)`
    if (is === 'elsewhere') return this.pieces[at - 1]?.word === '(';
    const form = formOf(sense);
    // `carve like a roast`
    if (form === 'base' && is === 'preposition')
      return !isBehind(this.pieces, at, 'person') && !isBehind(this.pieces, at, 'modal');
    return form === 'ing' || form === 'past'
      ? is === 'rest' || is === 'preposition' || is === 'let'
      : form === 's' && is === 'let';
  }

  /** `It rides there until the last table`: what food does where it is, in a word that nobody knows. */
  private isUnknownDoing({ word }: Piece, at: number): boolean {
    if (this.framed || this.hasVerb || this.expects !== 'behind thing' || !/[^s]s$/.test(word)) return false;
    const subject = jointOf(this.pieces[at - 1]?.sense ?? UNKNOWN);
    const next = this.pieces[at + 1];
    return subject?.is === 'it' && this.pieces[at - 1]?.word === 'it' && next?.word === 'there';
  }

  private mayOrder(): boolean {
    return !this.framed && (this.expects === 'order' || (this.expects === 'more' && this.ordered));
  }

  /** `Spot it with butter`: nobody knows the word, and it stands where an order does, with an object right behind. */
  private isUnknownOrder(piece: Piece, at: number): boolean {
    if (this.expects !== 'order' && !(this.expects === 'more' && this.ordered && !this.framed)) return false;
    const next = this.pieces[at + 1];
    const before = this.pieces[at - 1];
    // `pints 25 minutes and quarts 30 minutes`
    if (next?.sort === 'time' && before?.sort !== 'mark' && /[^s]s$/.test(piece.word)) return false;
    if (next?.sort === 'amount' && before?.sort === 'word' && isAdverb(before.word))
      return this.verb(this.pieces[at] as Piece, 'verb');
    // `Exhaust to 170 F.`
    const after = this.pieces[at + 2];
    const isFigure = after?.sort === 'temperature' || after?.sort === 'time';
    if (next?.sort === 'temperature' || next?.time?.kind === 'spent') return this.verb(piece, 'verb');
    if (next?.sort !== 'word') return false;
    const is = jointOf(next.sense)?.is;
    // `tweezer out the bones`
    const behind = is === 'particle' ? jointOf(after?.sense ?? UNKNOWN)?.is : undefined;
    if (behind === 'article' || behind === 'it') return this.verb(piece, 'verb');
    if (isFigure && (is === 'to' || is === 'preposition')) return this.verb(piece, 'verb');
    if (is !== 'it' && is !== 'article' && is !== 'rest') return false;
    return this.verb(piece, 'verb');
  }
}
