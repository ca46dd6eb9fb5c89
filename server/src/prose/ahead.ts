/**
 * Knows what stands around a word that may be a verb or a noun: an object, a noun that it describes, what it is the subject of.
 * Refuses to know what its clause has had so far (`nouns.ts`).
 */
import { isAdverb } from './forms.ts';
import { formOf, isStrange, jointOf, signOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import { isSoft, type Piece } from './pieces.ts';
import type { JointKind } from './rows.ts';

const isBaseForm = (sense: number): boolean => formOf(sense)?.startsWith('base') === true;

/** `Sauce once they are done`, `Salt until they weep`, `Cream, add the eggs` */
function isOpened(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  const after = pieces[at + 2];
  // `Cream, add eggs`
  if (next?.word === ',' && after?.sort === 'word' && isBaseForm(after.sense)) return true;
  const is = jointOf(next?.sense ?? UNKNOWN)?.is;
  return is === 'when' || is === 'until';
}

/** `wash well, salt and set aside`: between orders, and behind nothing that it could be named beside. */
function goesOn(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  const after = pieces[at + 2];
  if (pieces[at - 1]?.word !== ',' || jointOf(next?.sense ?? UNKNOWN)?.is !== 'conjunction') return false;
  const before = pieces[at - 2];
  const is = before?.part === 'joint' ? jointOf(before.sense)?.is : undefined;
  const isFree = before?.part === 'verb' || before?.sort === 'time' || is === 'it' || is === 'adverb';
  return isFree && after?.sort === 'word' && isBaseForm(after.sense);
}

/** `knead well, roll thin, cut`: between commas with no more than how. */
const isSoThen = (pieces: readonly Piece[], at: number): boolean =>
  pieces[at - 1]?.word === ',' &&
  jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.is === 'adjective' &&
  pieces[at + 2]?.word === ',';

/** `a platter or dish and serve`: of two vessels either. */
const isOtherVessel = (pieces: readonly Piece[], at: number): boolean =>
  thingOf((pieces[at] as Piece).sense)?.sort === 'vessel' &&
  jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'or' &&
  thingOf(pieces[at - 2]?.sense ?? UNKNOWN)?.sort === 'vessel';

/** `Wrap in a cloth`: what goes around something is said with `in`. */
function wraps({ sense }: Piece, next: Piece | undefined): boolean {
  const act = verbOf(sense)?.act;
  const way = jointOf(next?.sense ?? UNKNOWN)?.way;
  return (act === 'cover' || act === 'pack' || act === 'close') && (way === 'at' || way === 'to');
}

/** `cover and cool 10 minutes`: a conjunction joins it to a verb, and to nothing that is described. */
function joinsVerb(pieces: readonly Piece[], at: number): boolean {
  const before = pieces[at - 1];
  const is = jointOf(before?.sense ?? UNKNOWN)?.is;
  const other = is === 'conjunction' || is === 'or' || before?.word === ',' ? pieces[at - 2] : undefined;
  return other !== undefined && (other.part === 'verb' || (other.part === 'thing' && !mayDescribe(other.sense)));
}

/** An article, a name or the like right behind: an object for sure. */
export function takesObject(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  if (next === undefined) return false;
  if (next.sort === 'name' || next.sort === 'amount') return true;
  switch (jointOf(next.sense)?.is) {
    // `flour enough to make a dough`
    case 'quantity':
      return jointOf(pieces[at + 2]?.sense ?? UNKNOWN)?.is !== 'to';
    case 'article':
    case 'number':
    case 'it':
    case 'mixture':
    case 'rest':
    case 'all':
      return true;
    default:
      return false;
  }
}

export function hasObject(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  return (
    takesObject(pieces, at) || (next?.sort === 'word' && thingOf(next.sense) !== undefined) || next?.sort === 'name'
  );
}

/** Behind a noun that may be its subject: only where a place, time or manner follows. */
export function takesAsTold(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  if (next === undefined) return true;
  if (next.sort === 'time' || next.sort === 'temperature' || next.sort === 'mark') return true;
  const is = jointOf(next.sense)?.is;
  return is === 'preposition' || is === 'to' || is === 'adverb' || is === 'until';
}

/** A vessel or a place stands before it, and an object behind. */
export const isBehindThing = (pieces: readonly Piece[], at: number): boolean =>
  thingOf(pieces[at - 1]?.sense ?? UNKNOWN) !== undefined && takesObject(pieces, at);

/** `All the cooking it gets`: a noun with what is told of it. */
export function isNamedAs(pieces: readonly Piece[], at: number): boolean {
  const next = jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.is;
  const before = jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is;
  return (next === 'it' || next === 'person') && (before === 'article' || before === 'all');
}

/** A noun stands right behind. */
export function isThingAhead(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  if (next === undefined) return false;
  if (next.sort === 'name') return true;
  return (
    next.sort === 'word' &&
    jointOf(next.sense) === undefined &&
    (thingOf(next.sense) !== undefined || (isStrange(next.sense) && !isAdverb(next.word)))
  );
}

/** An adjective stands before what it describes. */
export function goesOnTo(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  if (next === undefined) return false;
  if (next.sort !== 'word') return next.sort !== 'mark' && next.sort !== 'time';
  const is = jointOf(next.sense)?.is;
  return is === undefined
    ? isNounAhead(pieces, at) || formOf(next.sense) === 'past'
    : is === 'adjective' || is === 'rest';
}

/** The same, or a word that may be one. */
export function isNounAhead(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  return (
    isThingAhead(pieces, at) ||
    (next?.sort === 'word' &&
      formOf(next.sense) === 'base' &&
      next.to === next.from + 1 &&
      !takesObject(pieces, at + 1) &&
      jointOf(next.sense) === undefined)
  );
}

/** `, 3 months frozen`: between a time that begins anew and an end; `or frozen for 2 months`: between two times. */
export function isKeptSo(pieces: readonly Piece[], at: number): boolean {
  const act = verbOf((pieces[at] as Piece).sense)?.act;
  if (act !== 'freeze' && act !== 'cool') return false;
  if (pieces[at - 1]?.sort === 'time') return isEnd(pieces[at + 1]) && beginsAnew(pieces[at - 2]);
  const isTimed = pieces[at + 1]?.sort === 'time' || pieces[at + 2]?.sort === 'time';
  return isTimed && beginsAnew(pieces[at - 1]) && pieces[at - 2]?.sort === 'time';
}

function beginsAnew(piece: Piece | undefined): boolean {
  const is = jointOf(piece?.sense ?? UNKNOWN)?.is;
  return piece?.word === ',' || is === 'or' || is === 'conjunction';
}

const isCounted = (piece: Piece | undefined): boolean =>
  piece?.sort === 'amount' || jointOf(piece?.sense ?? UNKNOWN)?.is === 'number';

/** `peeled and cut in quarters`: a conjunction joins it to what something else is already, with no object of its own. */
export function isBehindPast(pieces: readonly Piece[], at: number): boolean {
  const [before, next] = [pieces[at - 2], pieces[at + 1]];
  const isParts = (pieces[at] as Piece).to > (pieces[at] as Piece).from + 1 && isCounted(next) && next?.sort === 'word';
  const isPast = before?.part === 'describes' && formOf(before.sense) === 'past';
  return isPast && (isParts || !takesObject(pieces, at));
}

/** `the vegetables, cut in slices, and the bread`: between commas behind a thing, and no order follows. */
export function isInserted(pieces: readonly Piece[], at: number): boolean {
  const before = pieces[at - 2];
  if (pieces[at - 1]?.word !== ',' || before === undefined || (before.part !== 'thing' && before.sort !== 'name'))
    return false;
  const way = jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.way;
  const isLong = (pieces[at] as Piece).to > (pieces[at] as Piece).from + 1;
  // `one onion, cut fine, two cups of salt`
  const manner = jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.is;
  if ((manner === 'adjective' || manner === 'adverb') && pieces[at + 2]?.word === ',') return isCounted(pieces[at + 3]);
  if (!isLong && way !== 'at' && way !== 'to') return false;
  for (let i = at + 1; i < pieces.length; i++) {
    const { sort, word, sense } = pieces[i] as Piece;
    if (sort !== 'mark') {
      if (i > at + 1 && isBaseForm(sense)) return false;
      continue;
    }
    if (word !== ',') return false;
    const is = jointOf(pieces[i + 1]?.sense ?? UNKNOWN)?.is;
    const after = pieces[i + 2];
    const isListed = after?.sort === 'name' || jointOf(after?.sense ?? UNKNOWN)?.is === 'article';
    return is === 'conjunction' && isListed && after !== undefined && !isBaseForm(after.sense);
  }
  return false;
}

/** A thing, or a verb of which this would be the subject. */
export function isWordAhead(pieces: readonly Piece[], at: number): boolean {
  return isNounAhead(pieces, at) || verbOf(pieces[at + 1]?.sense ?? UNKNOWN) !== undefined;
}

/** `Freezing may crack a jar`, `FRYING.`: what is done is spoken of. */
export function isSubject(pieces: readonly Piece[], at: number): boolean {
  const next = pieces[at + 1];
  if (next === undefined || (next.sort === 'mark' && !isSoft(next.word))) return true;
  const is = jointOf(next.sense)?.is;
  const other = is === 'conjunction' || is === 'or' ? pieces[at + 2] : undefined;
  if (other !== undefined && formOf(other.sense) === 'ing') return isSubject(pieces, at + 2);
  return is === 'modal' || is === 'aux' || is === 'had';
}

/** `Rub and smoke at 250 F`: an order with another behind it, which has no object of its own. */
function isOneOfTwo(pieces: readonly Piece[], at: number): boolean {
  const [and, verb, behind] = pieces.slice(at + 1, at + 4);
  return (
    jointOf(and?.sense ?? UNKNOWN)?.is === 'conjunction' &&
    verb?.sort === 'word' &&
    formOf(verb.sense) === 'base' &&
    behind !== undefined &&
    (behind.sort === 'temperature' ||
      jointOf(behind.sense)?.is === 'preposition' ||
      jointOf(behind.sense)?.is === 'until')
  );
}

/**
 * Whether what stands behind lets it be an order: an object, adverb, preposition or end. A name is one with an object alone, and a word that
 * is a thing as often not before a noun that it may describe.
 */
export function takes(pieces: readonly Piece[], at: number, noun: boolean, first: boolean, ordered: boolean): boolean {
  const piece = pieces[at] as Piece;
  const next = pieces[at + 1];
  // `Salt the water`, `sprinkle with sugar`
  let behind = at + 1;
  while (PASSED.has(jointOf(pieces[behind]?.sense ?? UNKNOWN)?.is ?? 'then') || isSmallThing(pieces, behind, at))
    behind++;
  const isWith = jointOf(pieces[behind]?.sense ?? UNKNOWN)?.way === 'with';
  if (piece.sort === 'name')
    return (
      takesObject(pieces, at) ||
      isWith ||
      (first && (isThingAhead(pieces, at) || isOpened(pieces, at))) ||
      (ordered && isSoThen(pieces, at)) ||
      (isEnd(next) && isBehind(pieces, at, 'then')) ||
      goesOn(pieces, at) ||
      (first && isOneOfTwo(pieces, at)) ||
      wraps(piece, next)
    );
  if (next === undefined) return !noun || ordered || first;
  switch (next.sort) {
    case 'mark':
      return !noun || first || ordered;
    case 'time':
      // `spread on a tray and cool for 20 min`
      return first || !mayDescribe(piece.sense) || verbOf(piece.sense)?.lasts === 'waits';
    case 'name':
    case 'duration':
    case 'amount':
    case 'temperature':
      return first || !mayDescribe(piece.sense) || joinsVerb(pieces, at);
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
      const after = pieces[at + 2];
      if (isOtherVessel(pieces, at)) return false;
      return !noun || first || (after !== undefined && verbOf(after.sense) !== undefined && after.sort === 'word');
    }
    case 'to':
    case 'preposition':
      // `slice of bread`; `slice as thin as you can`
      return !noun || next.word !== 'of';
    case undefined:
      return first || !mayDescribe(piece.sense);
    default:
      return true;
  }
}

/** `Sprinkle again with sugar`, `sprinkle it well with`. */
const PASSED: ReadonlySet<JointKind> = new Set(['adverb', 'it', 'article', 'all']);

/** `sprinkle fillets with salt` */
const isSmallThing = (pieces: readonly Piece[], behind: number, at: number): boolean =>
  behind === at + 1 && (isThingAhead(pieces, at) || formOf(pieces[behind]?.sense ?? UNKNOWN) === 's');

/** A word that nobody knows is what is told: `the strips should bend`, `do not disturb what remains`. */
export function isUnknownTold(pieces: readonly Piece[], at: number): boolean {
  if (isBehind(pieces, at, 'modal')) return true;
  const before = pieces[at - 2];
  return isBehind(pieces, at, 'not') && (before === undefined || before.sort === 'mark') && takesObject(pieces, at);
}

/** A person, or what was spoken of, stands before it, and adverbs alone between: `she always kept`. */
export function isOfSubject(pieces: readonly Piece[], at: number): boolean {
  let before = at - 1;
  while (jointOf(pieces[before]?.sense ?? UNKNOWN)?.is === 'adverb') before--;
  const is = jointOf(pieces[before]?.sense ?? UNKNOWN)?.is;
  return is === 'person' || is === 'it';
}

/** `leaving`, `letting`, `having`: it says what is done or not done. */
export function isDoing({ sense, sort }: Piece): boolean {
  const is = jointOf(sense)?.is;
  return sort === 'word' && (formOf(sense) === 'ing' || is === 'let' || is === 'had');
}

/** `fork it up`, `tub and date`: a thing without a verb of its own, in one, stands where an order does; behind another, or first. */
export function isThingOrder(pieces: readonly Piece[], at: number, isMore: boolean): boolean {
  const { sense, word } = pieces[at] as Piece;
  if (thingOf(sense)?.sort !== 'vessel' || verbOf(sense) !== undefined || word === '' || word.endsWith('s'))
    return false;
  const is = jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.is;
  if (is === 'it' || is === 'article') return true;
  const after = pieces[at + 2];
  return isMore && is === 'conjunction' && after !== undefined && formOf(after.sense) === 'base';
}

/** Right behind a word of a kind. */
export function isBehind(pieces: readonly Piece[], at: number, kind: JointKind): boolean {
  return jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is === kind;
}

export const isEnd = (next: Piece | undefined): boolean => next === undefined || next.sort === 'mark';

/** What a clause opens with before its verb: `in a bowl, mix`; `if desired, add`. */
export const leads = (is: JointKind | undefined): boolean =>
  is === 'preposition' || is === 'to' || is === 'optional' || is === 'bound' || is === 'adverb';

/** `Cool water`, `brown sugar`: it may stand before a noun. */
export const mayDescribe = (sense: number): boolean =>
  signOf(sense) !== undefined || jointOf(sense)?.is === 'adjective';

/** It tells what something is: `golden`, `hot`. */
export const isDescribed = (piece: Piece | undefined): boolean =>
  piece !== undefined &&
  (piece.part === 'describes' || (piece.part === 'joint' && jointOf(piece.sense)?.is === 'adjective'));

/** A negation stands between two pieces. */
export const isDenied = (pieces: readonly Piece[], from: number, to: number): boolean =>
  pieces.slice(from, to).some(({ sense }) => {
    const is = jointOf(sense)?.is;
    return is === 'not' || is === 'aux not';
  });

/** `Salt, fennel, roast 180 C`: it stands before a figure. */
export function isHeatedAt(pieces: readonly Piece[], at: number): boolean {
  const { sort, sense } = pieces[at] as Piece;
  const isAt = jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.way === 'at';
  const next = pieces[isAt ? at + 2 : at + 1];
  const isFigure = next?.sort === 'temperature' || next?.time?.kind === 'spent';
  return sort === 'word' && isFigure && verbOf(sense)?.act === 'heat';
}

/** `…, and there it stays`, `and in the fridge they stay`: what happens to it is told, whatever verb stood before. */
export function isToldAnew(pieces: readonly Piece[], at: number): boolean {
  const subject = pieces[at - 1];
  const before = pieces[at - 2];
  if (subject === undefined || before === undefined || !SUBJECTS.has(subject.word)) return false;
  const is = jointOf(before.sense)?.is;
  return (
    is === 'adverb' || is === 'conjunction' || (thingOf(before.sense)?.sort === 'place' && before.part === 'thing')
  );
}
/** `…, but I leave`: somebody does it, whatever verb stood before. */
export function isDoneAnew(pieces: readonly Piece[], at: number): boolean {
  const is = jointOf(pieces[at - 2]?.sense ?? UNKNOWN)?.is;
  return isBehind(pieces, at, 'person') && (is === 'conjunction' || is === 'or');
}
/** They stand for what does something, and `it` for both. */
const SUBJECTS: ReadonlySet<string> = new Set(['it', 'they', 'she', 'he']);

/** `salt, cure, dextrose`: between two names, with commas and nothing else. */
export const isListed = (pieces: readonly Piece[], at: number): boolean =>
  pieces[at - 2]?.sort === 'name' &&
  (pieces[at - 1]?.word === ','
    ? pieces[at + 1]?.word === ',' && pieces[at + 2]?.sort === 'name'
    : // `sugar, syrup and salt with the water`
      pieces[at]?.sort === 'name' &&
      jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'conjunction' &&
      pieces[at - 3]?.word === ',' &&
      pieces[at - 4]?.sort === 'name' &&
      jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.is === 'preposition');

/** `it scalding into`: how it is when it is put somewhere. */
export const isSoHot = (pieces: readonly Piece[], at: number): boolean =>
  verbOf(pieces[at]?.sense ?? UNKNOWN)?.act === 'heat' &&
  jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'it' &&
  jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.way === 'to';
