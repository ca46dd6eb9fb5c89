/**
 * Knows how an ingredient is written: `AMOUNT [= AMOUNT] NAME [(NOTE)] [from AMOUNT] [, PREPARATION] [from AMOUNT] [(NOTE)]`.
 * Refuses to know what must be there and what it is worth: `statements.ts` says what is missing.
 */
import { type Amount, takeAmount } from './amounts.ts';
import { type Cursor, isAny, type Run, takeWhile } from './cursor.ts';
import { isNamePart, Kind, type Token } from './tokens.ts';

/** The tokens of an ingredient; every piece may be missing. */
export interface IngredientTokens {
  readonly amount: Amount | undefined;
  readonly equals: Second | undefined;
  readonly name: Run | undefined;
  readonly bought: Second | undefined;
  readonly preparation: Run | undefined;
  readonly note: NoteTokens | undefined;
}

/** What follows `=` or `from`, which may be nothing yet. */
export interface Second {
  readonly amount: Amount | undefined;
}

export interface NoteTokens {
  readonly open: Token;
  readonly inside: Run | undefined;
  readonly closed: boolean;
}

/** Reads as much as is an ingredient; what the cursor then stands on is none of it. */
export function takeIngredient(cursor: Cursor): IngredientTokens {
  const amount = takeAmount(cursor);
  const equals = amount && takeSecond(cursor, Kind.Equals);
  const name = takeWhile(cursor, isNamePart);
  const note = takeNote(cursor);
  const bought = takeSecond(cursor, Kind.From);
  let preparation = takePreparation(cursor, isPreparation);
  const boughtLast = takeSecond(cursor, Kind.From);
  const noteLast = takeNote(cursor);
  if (noteLast !== undefined) {
    // `butter, cold (from the fridge), cubed`
    const more = takePreparation(cursor, isAny);
    if (more !== undefined) preparation = { first: preparation?.first ?? more.first, last: more.last };
  }
  return { amount, equals, name, bought: bought ?? boughtLast, preparation, note: note ?? noteLast };
}

function takeSecond(cursor: Cursor, sign: Kind): Second | undefined {
  return cursor.take(sign) && { amount: takeAmount(cursor) };
}

function takePreparation(cursor: Cursor, wanted: (kind: Kind) => boolean): Run | undefined {
  return cursor.take(Kind.Comma) && takeWhile(cursor, wanted);
}

/** `(NOTE)`, in which anything may stand but the bracket that closes it. */
function takeNote(cursor: Cursor): NoteTokens | undefined {
  const open = cursor.take(Kind.LeftParen);
  if (open === undefined) return undefined;
  const inside = takeWhile(cursor, isInside);
  return { open, inside, closed: cursor.take(Kind.RightParen) !== undefined };
}

const isPreparation = (kind: Kind): boolean => isNamePart(kind) || kind === Kind.Comma;
const isInside = (kind: Kind): boolean => kind !== Kind.RightParen;
