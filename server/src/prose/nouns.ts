/**
 * The pass that settles what each word is in its clause: a verb, a thing, what describes one. The first rule that fires decides.
 * Refuses to know where clauses end and what their verbs take.
 */
import {
  goesOnTo,
  hasObject,
  isBehind,
  isBehindPast,
  isBehindThing,
  isDescribed,
  isEnd,
  isHeatedAt,
  isInserted,
  isKeptSo,
  isListed,
  isNamedAs,
  isNounAhead,
  isOfSubject,
  isSoHot,
  isSubject,
  isThingAhead,
  isThingOrder,
  isToldAnew,
  isUnknownTold,
  isWordAhead,
  leads,
  mayDescribe,
  takes,
  takesAsTold,
  takesObject,
} from './ahead.ts';
import { contactAt } from './contact.ts';
import { Expecting } from './expects.ts';
import { isAdverb } from './forms.ts';
import {
  evidenceOf,
  formOf,
  isStrange,
  isTimeAlone,
  jointOf,
  signOf,
  thingOf,
  timeOf,
  UNKNOWN,
  verbOf,
} from './lexicon.ts';
import type { Piece } from './pieces.ts';
import type { JointKind } from './rows.ts';

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

class Scan extends Expecting {
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

  /** Whether the word is a verb here, and which part. */
  private isVerb(piece: Piece, at: number): boolean {
    const form = formOf(piece.sense);
    // `and brush over as a glaze`
    const isOrder = this.expects === 'order' || this.expects === 'more';
    const noun =
      piece.sort === 'name' || ((piece.to === piece.from + 1 || !isOrder) && verbOf(piece.sense)?.noun === true);
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
    // `say 20 at a time`, `say a gallon`
    const next = this.pieces[at + 1];
    // `Core 74 C`
    if (next?.sort === 'temperature' && evidenceOf(piece.sense)?.inside) return false;
    if (
      timeOf(piece.sense)?.is === 'bound' &&
      (next?.sort === 'amount' || next?.sort === 'time' || takesObject(this.pieces, at))
    )
      return false;
    // `cut it thin`, `until brown and dry`
    if (this.signs || this.expects === 'behind thing' || this.expects === 'object')
      if (mayDescribe(piece.sense) && !this.letting && !hasObject(this.pieces, at)) return false;
    if (noun && isCloud(piece.sense) && next !== undefined && formOf(next.sense) === 'ing' && next.sort === 'word')
      return false;
    switch (this.expects) {
      case 'told':
        return this.verb(piece, this.framed ? 'framed' : 'verb');
      case 'participle':
        if (past) return this.verb(piece, this.framed ? 'describes' : 'passive');
        return false;
      case 'base':
        if (this.letting) return this.verb(piece, 'verb');
        if (noun && isThingAhead(this.pieces, at)) return false;
        return this.verb(piece, 'purpose');
      case 'order':
        return takes(this.pieces, at, noun, true, this.ordered) && this.verb(piece, 'verb');
      case 'more':
        if (past && (this.behindComma ? isInserted(this.pieces, at) : isBehindPast(this.pieces, at))) {
          piece.part = 'describes';
          this.expects = 'behind thing';
          return true;
        }
        // `with salt, cure, dextrose`
        if (noun && isListed(this.pieces, at)) return false;
        // `bake hollow and crisp`
        if (
          !this.behindComma &&
          mayDescribe(piece.sense) &&
          isDescribed(this.pieces[at - 2]) &&
          !takesObject(this.pieces, at)
        )
          return false;
        // `to store and ripen`
        if (this.lastVerb?.part === 'purpose' && !this.behindComma && !takesObject(this.pieces, at))
          return this.verb(piece, 'purpose');
        return (
          (this.hasVerb || this.ordered || !noun || (this.behindComma && isHeatedAt(this.pieces, at))) &&
          takes(this.pieces, at, noun, false, this.ordered) &&
          this.verb(piece, 'verb')
        );
      case 'behind thing':
        if (this.letting) return this.verb(piece, 'verb');
        if (this.hasVerb && isToldAnew(this.pieces, at)) return this.verb(piece, this.framed ? 'framed' : 'verb');
        if (!this.hasVerb && (!noun || takesAsTold(this.pieces, at) || isOfSubject(this.pieces, at)))
          return this.verb(piece, this.framed ? 'framed' : 'verb');
        // `In a bowl whisk the eggs`
        if (!this.hasVerb && !this.framed && this.leading && isBehindThing(this.pieces, at))
          return this.verb(piece, 'verb');
        // `the lid closely shut`
        if (past && !takesObject(this.pieces, at)) return false;
        // `with a freezer pump.`
        if (this.hasVerb && !this.framed && this.pieces[at - 1]?.part === 'thing' && isEnd(next)) return false;
        // `when cold turn out`: an order behind a frame, with no comma.
        return (
          (!noun ||
            (this.signs && this.hasVerb && !isEnd(next) && isDescribed(this.pieces[at - 1])) ||
            (this.framed && this.hasVerb && takesObject(this.pieces, at))) &&
          takes(this.pieces, at, noun && !(this.signs && !isEnd(next)), false, this.ordered) &&
          this.verb(piece, 'verb')
        );
      case 'object':
        // `go and fetch`, `help keep`; `serve hot`, `keep cool`
        return !noun && this.verb(piece, 'verb');
      case 'thing':
        // `Let this simmer gently.`
        return (
          this.letting &&
          // `Allow the stew eight hours.`, `allowing a pound of sugar`
          !(this.allowing && (this.pieces[at + 1]?.sort === 'time' || this.pieces[at + 1]?.word === 'of')) &&
          isBehind(this.pieces, at, 'article') &&
          (!isWordAhead(this.pieces, at) || formOf(this.pieces[at + 1]?.sense ?? UNKNOWN) === 'past') &&
          this.verb(piece, 'verb')
        );
      case 'frame':
        // `jars that keep for a year`
        return (
          this.relative &&
          isBehind(this.pieces, at, 'which') &&
          (!noun || takesAsTold(this.pieces, at)) &&
          this.verb(piece, 'framed')
        );
      case 'ing':
        return false;
    }
  }

  /** A subject stands before it and no verb: `it simmers`, `the apples keep`. */
  private isTold(at: number, noun: boolean): boolean {
    // `wipe, lids on`
    const piece = this.pieces[at] as Piece;
    const isPlaced = this.expects === 'more' || this.expects === 'order';
    if (isPlaced && piece.to > piece.from + 1 && isEnd(this.pieces[at + 1])) return true;
    // `Keeps a year in the pantry.`
    const row = verbOf(this.pieces[at]?.sense ?? UNKNOWN);
    if (this.expects === 'order')
      return !noun && row?.act === 'stay' && !isNounAhead(this.pieces, at) && !takesObject(this.pieces, at);
    if (this.expects === 'more')
      return this.hasVerb && (this.framed ? !noun : !this.ordered && (!noun || takesObject(this.pieces, at)));
    if (this.expects === 'frame' && this.relative) return isBehind(this.pieces, at, 'which');
    // `Make sure it stays cold.`
    const isLooked = verbOf(this.lastVerb?.sense ?? UNKNOWN)?.act === 'read' && !this.framed;
    if (this.expects !== 'behind thing' || (this.hasVerb && !isLooked && !isToldAnew(this.pieces, at))) return false;
    const before = this.pieces[at - 1];
    const subject = before && jointOf(before.sense)?.is;
    return subject === 'it' || subject === 'person' || subject === 'which' || !noun || takesAsTold(this.pieces, at);
  }

  private isIng(piece: Piece, at: number): boolean {
    const ahead = isThingAhead(this.pieces, at);
    if (isNamedAs(this.pieces, at)) return false;
    switch (this.expects) {
      case 'ing':
        return this.verb(piece, 'beside');
      case 'order':
        return !isSubject(this.pieces, at) && this.verb(piece, 'beside');
      case 'more':
        // `until golden and bubbling`
        if (
          this.framed &&
          this.signs &&
          !this.behindComma &&
          isDescribed(this.pieces[at - 2]) &&
          !takesObject(this.pieces, at)
        ) {
          piece.part = 'describes';
          this.satisfied();
          return true;
        }
        // `ready for wrapping and labeling`
        if (this.lastVerb?.part === 'purpose' && !this.behindComma && formOf(this.lastVerb.sense) === 'ing')
          return this.verb(piece, 'purpose');
        if (this.lastVerb?.part === 'beside' || this.hasVerb || this.ordered)
          return (
            (!ahead || takesObject(this.pieces, at) || (this.behindComma && !mayDescribe(piece.sense))) &&
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
        // `as soon as it stops steaming`
        if (this.framed) {
          piece.part = 'describes';
          this.expects = 'behind thing';
          return true;
        }
        // `Spoon it scalding into jars`
        if (isSoHot(this.pieces, at)) {
          piece.part = 'describes';
          return true;
        }
        // `it will hasten thawing`: of a verb that nobody knows it is the object.
        return !ahead && verbOf(this.lastVerb?.sense ?? UNKNOWN) !== undefined && this.verb(piece, 'beside');
      case 'behind thing':
        // `the almond icing is`, `the flavoring.`
        if (isSoHot(this.pieces, at)) {
          piece.part = 'describes';
          return true;
        }
        return !ahead && !isEnd(this.pieces[at + 1]) && !isSubject(this.pieces, at) && this.verb(piece, 'beside');
      case 'thing': {
        const before = this.pieces[at - 1];
        if (before !== undefined && jointOf(before.sense)?.way === 'for') return this.verb(piece, 'purpose');
        // `the baking powder`
        if (isNounAhead(this.pieces, at)) {
          piece.part = 'describes';
          this.expects = 'thing';
          return true;
        }
        return false;
      }
      case 'frame':
        if (takesObject(this.pieces, at)) return this.verb(piece, 'beside');
        this.satisfied();
        piece.part = 'describes';
        return true;
      case 'told':
        // `don't bother chilling it`
        return isBehind(this.pieces, at, 'not') && this.verb(piece, 'verb');
      case 'base':
        return false;
    }
  }

  private isPast(piece: Piece, at: number): boolean {
    if (this.expects === 'participle') return this.verb(piece, this.framed ? 'describes' : 'passive');
    // `keeps 7 days in the fridge, 3 months frozen`: of the second time it says where.
    if (isKeptSo(this.pieces, at)) return this.verb(piece, 'passive');
    // `left out overnight`, of an ingredient
    if (at === 0 && !isNounAhead(this.pieces, at)) return this.verb(piece, 'passive');
    // `it is skimmed, and poured into jars`
    const goesOn = this.expects === 'more' || this.expects === 'order';
    // Of several words the last takes what follows.
    const isLong = piece.to > piece.from + 1;
    if (goesOn && this.lastVerb?.part === 'passive' && (isLong || !isNounAhead(this.pieces, at)))
      return this.verb(piece, this.framed ? 'describes' : 'passive');
    // `she kept it on the sill`
    if (this.expects === 'behind thing' && !this.hasVerb && !this.framed && isOfSubject(this.pieces, at))
      return this.verb(piece, 'verb');
    if (this.expects === 'frame') this.hasVerb = true;
    piece.part = 'describes';
    this.expects = this.expects === 'thing' || isNounAhead(this.pieces, at) ? 'thing' : 'behind thing';
    return true;
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

/** `Steam rising past her glasses`: what does something then is a thing. */
const isCloud = (sense: number): boolean => {
  const medium = verbOf(sense)?.medium;
  return medium === 'steam' || medium === 'smoke';
};
