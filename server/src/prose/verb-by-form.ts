/**
 * Knows whether a word with a row of verbs is one where it stands, by its form and by what is likely there.
 * Refuses to know words that are in no row of verbs (`nouns.ts`).
 */
import {
  hasObject,
  isBehind,
  isBehindPast,
  isBehindThing,
  isDescribed,
  isDoneAnew,
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
  isToldAnew,
  isWordAhead,
  mayDescribe,
  takes,
  takesAsTold,
  takesObject,
} from './ahead.ts';
import { Expecting } from './expects.ts';
import { evidenceOf, formOf, jointOf, timeOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import type { VerbRow } from './rows.ts';

/** Settles a word that may be a verb. */
export class VerbByForm extends Expecting {
  /** Whether the word is a verb here, and which part. */
  protected isVerb(piece: Piece, at: number): boolean {
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
    // `…, but I leave it there`
    if (!this.framed && isDoneAnew(this.pieces, at) && takesObject(this.pieces, at)) return this.verb(piece, 'verb');
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
      return (
        !noun &&
        (row?.act === 'stay' || (KEEPS.has(row?.act ?? 'unknown') && this.pieces[at + 1]?.sort === 'time')) &&
        !isNounAhead(this.pieces, at) &&
        !takesObject(this.pieces, at)
      );
    if (this.expects === 'more')
      return (
        this.hasVerb &&
        (this.framed
          ? !noun
          : !this.ordered && (!noun || takesObject(this.pieces, at) || isPlacedBehind(this.pieces, at)))
      );
    if (this.expects === 'frame' && this.relative) return isBehind(this.pieces, at, 'which');
    // `Make sure it stays cold.`
    const isLooked = verbOf(this.lastVerb?.sense ?? UNKNOWN)?.act === 'read' && !this.framed;
    if (this.expects !== 'behind thing' || (this.hasVerb && !isLooked && !isToldAnew(this.pieces, at))) return false;
    if (isOfSubject(this.pieces, at) || isBehind(this.pieces, at, 'which')) return true;
    return !noun || takesAsTold(this.pieces, at);
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
        // `Half the oil, then the eggs, scrambling until set`: nothing else is ordered.
        if (!this.framed && this.behindComma && jointOf(this.pieces[at + 1]?.sense ?? UNKNOWN)?.is === 'until')
          return this.verb(piece, 'beside');
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
    // `she kept the pot on the sill`, `Peg kept hers on the sill`
    const does = isOfSubject(this.pieces, at) || jointOf(this.pieces[at + 1]?.sense ?? UNKNOWN)?.is === 'it';
    if (this.expects === 'behind thing' && !this.hasVerb && !this.framed && does) return this.verb(piece, 'verb');
    if (this.expects === 'frame') this.hasVerb = true;
    piece.part = 'describes';
    this.expects = this.expects === 'thing' || isNounAhead(this.pieces, at) ? 'thing' : 'behind thing';
    return true;
  }
}

/** `Freezes 3 months.` */
const KEEPS: ReadonlySet<VerbRow['act']> = new Set(['cool', 'freeze']);

/** `comes out of the freezer and thaws on the rail` */
const isPlacedBehind = (pieces: readonly Piece[], at: number): boolean => {
  const next = jointOf(pieces[at + 1]?.sense ?? UNKNOWN);
  return next?.is === 'preposition' && next.way === 'at' && pieces[at - 1]?.word === 'and';
};

/** `Steam rising past her glasses`: what does something then is a thing. */
const isCloud = (sense: number): boolean => {
  const medium = verbOf(sense)?.medium;
  return medium === 'steam' || medium === 'smoke';
};
