/**
 * Knows one term of an amount as cooks print it: a number, how its measure is filled, a unit or what is counted, and what one of that holds.
 * Refuses to know sums, and what is weighed.
 */
import { isBareSize } from '../measure/can-sizes.ts';
import { isPackage } from '../measure/count-words.ts';
import { dimensionIn, type Measure, NO_TERMS } from './amounts.ts';
import { type CanRun, isCan, takeCanSize } from './can-size.ts';
import { type Cursor, type Run, takeWhile } from './cursor.ts';
import { type NumeralRun, takeNumeral } from './numerals.ts';
import { isNumber, Kind, type Token } from './tokens.ts';

/** One term: `about? number (-|to number)? …`. */
export function takeTerm(cursor: Cursor, line: string, held: 'held' | 'alone' = 'held'): Measure | undefined {
  const { at } = cursor;
  const about = takeAbout(cursor, line);
  const filled = cursor.kind === Kind.Bias && isNumber(cursor.kindAfter(1)) ? takeWhile(cursor, isBias) : undefined;
  const between = cursor.token?.written?.word === 'between' && isNumber(cursor.kindAfter(1));
  if (between) cursor.at++;
  const minus = cursor.take(Kind.Minus);
  const first = opensCan(cursor, line) ? takeCanSize(cursor, line) : undefined;
  const low = first === undefined ? takeNumeral(cursor) : undefined;
  if (low === undefined && first === undefined && !opensImplied(cursor.kind)) {
    cursor.at = at;
    return undefined;
  }
  const high = low && first === undefined ? takeHigh(cursor, between) : undefined;
  const given: Given = { about, minus, low, high };
  const can = first ?? (low === undefined ? undefined : takeCanSize(cursor, line));
  if (can !== undefined) {
    const holder = takeHolder(cursor, line);
    return measure(given, { can, ...(holder && { counted: holder.counted, point: holder.point }) });
  }
  if (low !== undefined) {
    const sized = takeSized(cursor, line, given);
    if (sized !== undefined) return sized;
  }
  const celsius = skipHyphen(cursor);
  const bias = filled ?? takeWhile(cursor, isBias);
  if (bias !== undefined && low !== undefined) given.low = takeShareOf(cursor, low);
  const unit = cursor.take(Kind.UnitWord);
  if (unit !== undefined) {
    const point = takeSpoon(cursor, unit) ?? takePoint(cursor, line, unit);
    const orTwo = low && high === undefined ? takeOrTwo(cursor) : undefined;
    if (orTwo !== undefined) return measure({ ...given, high: orTwo }, { bias, unit, point });
    const measured = measure(given, { bias, unit, point, celsius });
    if (held === 'alone' || !fits(measured)) return measured;
    const { at: behind } = cursor;
    // `400g/14oz tin`: the tin holds the one that comes first.
    takeAgain(cursor, line);
    const holder = takeHolder(cursor, line);
    if (holder === undefined) cursor.at = behind;
    return holder === undefined ? measured : holding(measured, holder);
  }
  const sizes = takeSizes(cursor, line);
  const packed = bias ?? takeWhile(cursor, isBias);
  const counted = cursor.take(Kind.CountedWord);
  if (counted === undefined) {
    if (low === undefined) {
      cursor.at = at;
      return undefined;
    }
    return measure(given, { bias: packed, sizes });
  }
  const point = takePoint(cursor, line, counted);
  const orTwo = low && high === undefined ? takeOrTwo(cursor) : undefined;
  if (orTwo !== undefined) return measure({ ...given, high: orTwo }, { bias: packed, sizes, counted, point });
  return measure(given, { bias: packed, sizes, counted, point, ...takeContents(cursor, line, counted) });
}

/** `1 scant half cup`: the number with the part that stands behind how the measure is filled. */
function takeShareOf(cursor: Cursor, low: NumeralRun): NumeralRun {
  const { token } = cursor;
  if (token?.kind !== Kind.NumberWord || token.written?.number?.part !== true) return low;
  cursor.at++;
  return { first: low.first, last: token, words: [...(low.words ?? [low.first]), token] };
}

/** `a pinch or two`. */
function takeOrTwo(cursor: Cursor): NumeralRun | undefined {
  const { at, tokens } = cursor;
  const [or, two, next] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (or?.written?.word !== 'or' || two === undefined || !isNumber(two.kind)) return undefined;
  if (two.written?.number?.low !== 2 && next?.written?.word !== 'of') return undefined;
  const isUnit = next?.kind === Kind.UnitWord || next?.kind === Kind.CountedWord || next?.kind === Kind.SizeWord;
  if (isUnit || (next !== undefined && isNumber(next.kind))) return undefined;
  cursor.at++;
  return takeNumeral(cursor);
}

/** `5 ml spoon`: the spoon is named by what it holds. */
function takeSpoon(cursor: Cursor, unit: Token): Token | undefined {
  const { token } = cursor;
  if (unit.written?.printed?.symbol !== 'ml' || !/^spoons?$/.test(token?.written?.word ?? '')) return undefined;
  cursor.at++;
  return token;
}

interface Given {
  readonly about?: Token | undefined;
  readonly minus?: Token | undefined;
  low?: NumeralRun | undefined;
  readonly high?: NumeralRun | undefined;
}

interface Rest {
  readonly bias?: Run | undefined;
  readonly unit?: Token | undefined;
  readonly sizes?: Run | undefined;
  readonly counted?: Token | undefined;
  readonly each?: Measure | undefined;
  readonly can?: CanRun | undefined;
  readonly close?: Token | undefined;
  readonly point?: Token | undefined;
  readonly celsius?: boolean;
}

/** A measure of the list of so much. */
export const measure = ({ about, minus, low, high }: Given, rest: Rest): Measure => ({
  about,
  gas: undefined,
  minus,
  low,
  high,
  bias: rest.bias,
  unit: rest.unit,
  degree: undefined,
  fan: undefined,
  sizes: rest.sizes,
  counted: rest.counted,
  each: rest.each,
  can: rest.can,
  close: rest.close,
  list: rest.celsius !== true,
  point: rest.point,
  upTo: undefined,
  plus: NO_TERMS,
});

/** `lg.` has a point, as a unit may. */
function takeSizes(cursor: Cursor, line: string): Run | undefined {
  const sizes = takeWhile(cursor, isSize);
  if (sizes !== undefined) takePoint(cursor, line, sizes.last);
  return sizes;
}

const isBias = (kind: Kind): boolean => kind === Kind.Bias;
const isSize = (kind: Kind): boolean => kind === Kind.SizeWord;
const opensImplied = (kind: Kind): boolean =>
  kind === Kind.UnitWord || kind === Kind.CountedWord || kind === Kind.SizeWord || kind === Kind.Bias;

function takeAbout(cursor: Cursor, line: string): Token | undefined {
  const about = cursor.take(Kind.About) ?? takeBound(cursor);
  if (about !== undefined) takePoint(cursor, line, about);
  return about;
}

/** `up to 1 cup`, `at least 2 cups`, `no more than 1 cup`: the number is meant, more or less. */
function takeBound(cursor: Cursor): Token | undefined {
  const { tokens, at, token } = cursor;
  const long = tokens[at + 2]?.written?.word === 'than' ? 3 : 2;
  if (token?.written === undefined || !isNumber(tokens[at + long]?.kind ?? Kind.End)) return undefined;
  const words = `${token.written.word} ${tokens[at + 1]?.written?.word}`;
  if (
    !(
      long === 2
        ? /^(?:up to|at (?:least|most)|(?:just|slightly) (?:under|over|above|below)|(?:more|less|fewer) than)$/
        : /^(?:no|not) (?:more|less|fewer)$/
    ).test(words)
  )
    return undefined;
  cursor.at += long;
  return token;
}

/** The point that belongs to the word before it. */
function takePoint(cursor: Cursor, line: string, word: Token): Token | undefined {
  const { token } = cursor;
  if (token?.kind !== Kind.Other || token.start !== word.end || line[token.start] !== '.') return undefined;
  cursor.at++;
  return token;
}

/** `40-45`, `2 or 3`, `3- to 4-lb`. */
function takeHigh(cursor: Cursor, between: boolean): NumeralRun | undefined {
  const { kind } = cursor;
  if (partsSize(cursor)) return undefined;
  const and = between && cursor.token?.written?.word === 'and';
  if (and && isNumber(cursor.kindAfter(1))) cursor.at++;
  else if ((kind === Kind.Dash || kind === Kind.To || kind === Kind.Minus) && isNumber(cursor.kindAfter(1)))
    cursor.at++;
  else if (kind === Kind.Dash && cursor.kindAfter(1) === Kind.To && isNumber(cursor.kindAfter(2))) cursor.at += 2;
  else return undefined;
  return takeNumeral(cursor);
}

/** Whether it was a degree sign, behind which `C` is no cup. */
function skipHyphen(cursor: Cursor): boolean {
  const { kind } = cursor;
  const after = cursor.kindAfter(1);
  if (kind === Kind.Degree || (kind === Kind.Dash && (after === Kind.UnitWord || after === Kind.CountedWord)))
    cursor.at++;
  return kind === Kind.Degree;
}

/** Whether a can of a size may stand here, one being meant: a word or mark, or a size that is no number of cans. */
function opensCan({ kind, tokens, at }: Cursor, line: string): boolean {
  if (kind === Kind.Word || kind === Kind.Other) return true;
  const [token, next] = [tokens[at], tokens[at + 1]];
  if (kind !== Kind.Numeral || token === undefined || next?.kind !== Kind.CountedWord) return false;
  const one = next.written?.word === next.written?.count || tokens[at - 1]?.kind === Kind.Times;
  return one && isBareSize(line.slice(token.start, token.end));
}

/** So many of a size, the size before what holds it: `2 x 400 g tins`, `1 14-oz can`, `1 (14.5-ounce) can`. */
function takeSized(cursor: Cursor, line: string, given: Given): Measure | undefined {
  const { at } = cursor;
  const counts = given.low?.last.kind === Kind.Numeral || given.low?.last.kind === Kind.NumberWord;
  if ((cursor.kind === Kind.Times || partsSize(cursor)) && given.high === undefined) {
    cursor.at++;
    const each = takeTerm(cursor, line);
    if (each?.can !== undefined)
      return measure(given, { can: each.can, point: each.point, ...(each.counted && { counted: each.counted }) });
    if (each?.unit !== undefined || each?.each !== undefined) return ofSize(cursor, line, given, each);
  } else if (counts && isNumber(cursor.kind)) {
    const each = takeTerm(cursor, line);
    if (each?.unit !== undefined || (each?.each !== undefined && each.low === undefined))
      return ofSize(cursor, line, given, each);
  } else if (cursor.kind === Kind.LeftParen) {
    const can = takeBracketedCan(cursor, line);
    const of = can && takeHolder(cursor, line);
    if (can !== undefined && of !== undefined) return measure(given, { ...can, counted: of.counted, point: of.point });
    cursor.at = at + 1;
    const each = takeTerm(cursor, line);
    if (each?.unit !== undefined) {
      const hyphened = isHyphened(line, each);
      takeAgain(cursor, line);
      const perPiece = takeEach(cursor);
      const close = cursor.take(Kind.RightParen);
      if (close !== undefined) {
        const held = takeHolder(cursor, line);
        if (held !== undefined) return measure(given, { counted: held.counted, each, point: held.point });
        if (hyphened || perPiece) return measure(given, { each, close });
      }
    }
  }
  cursor.at = at;
  return undefined;
}

/** `2 - 14 oz. cans`: the dash stands apart, and what is behind it is the size of a package. */
function partsSize({ tokens, at }: Cursor): boolean {
  const [before, dash, number, unit] = [tokens[at - 1], tokens[at], tokens[at + 1], tokens[at + 2]];
  if (dash?.kind !== Kind.Dash || before === undefined || number === undefined || unit?.kind !== Kind.UnitWord)
    return false;
  const apart = dash.start > before.end && number.start > dash.end && isNumber(number.kind);
  const holder = tokens[at + 3]?.kind === Kind.Other ? tokens[at + 4] : tokens[at + 3];
  const count = holder?.kind === Kind.CountedWord ? holder.written?.count : undefined;
  return apart && count !== undefined && isPackage(count);
}

/** The same once more in another measure: `400g/14oz`. */
export function takeAgain(cursor: Cursor, line: string): Measure | undefined {
  const { at } = cursor;
  const sign = cursor.token;
  if (sign?.kind !== Kind.Other || line[sign.start] !== '/') return undefined;
  cursor.at++;
  const again = takeTerm(cursor, line, 'alone');
  if (again?.unit !== undefined) return again;
  cursor.at = at;
  return undefined;
}

export function takeEach(cursor: Cursor): boolean {
  const { token } = cursor;
  if (token === undefined || !saysEach(token)) return false;
  cursor.at++;
  // `10 ea.`
  if (token.end === token.start + 2 && cursor.kind === Kind.Other && cursor.token?.start === token.end) cursor.at++;
  return true;
}

/** `each`, or `ea` in a table. */
export const saysEach = ({ written }: Token): boolean => written?.word === 'each' || written?.word === 'ea';

/** `14.5-ounce`: the size of one. */
const isHyphened = (line: string, { low, high }: Measure): boolean => line[(high ?? low)?.last.end ?? -1] === '-';

function ofSize(cursor: Cursor, line: string, given: Given, each: Measure): Measure {
  // `2 x 400 g tins`: the tin is the inner term's already.
  if (each.low === undefined && each.counted !== undefined && each.each !== undefined)
    return measure(given, { counted: each.counted, each: each.each, point: each.point });
  takeAgain(cursor, line);
  const held = takeHolder(cursor, line);
  return measure(given, { each, ...(held && { counted: held.counted, point: held.point }) });
}

interface Holder {
  readonly counted: Token;
  readonly point: Token | undefined;
}

/** `tin`, `-package`, `pkg.`, behind what it holds. */
function takeHolder(cursor: Cursor, line: string): Holder | undefined {
  const { at } = cursor;
  if (cursor.kind === Kind.Dash) cursor.at++;
  takeWhile(cursor, isSize);
  const counted = cursor.take(Kind.CountedWord);
  if (counted === undefined) {
    cursor.at = at;
    return undefined;
  }
  return { counted, point: takePoint(cursor, line, counted) };
}

/** A mass, a volume or a length is what a package or piece holds. */
function fits(measured: Measure): boolean {
  const dimension = dimensionIn(measured);
  return dimension === 'mass' || dimension === 'volume' || dimension === 'length';
}

/** `400g tin`: one that holds so much. */
function holding(each: Measure, { counted, point }: Holder): Measure {
  return measure({}, { counted, each, point });
}

/** `of 400 g`, `(15 oz)` behind a package, `(14 oz each)` behind any. */
function takeContents(cursor: Cursor, line: string, counted: Token): Pick<Rest, 'each' | 'can' | 'close'> | undefined {
  const { at } = cursor;
  if (cursor.kind === Kind.Of && isNumber(cursor.kindAfter(1))) {
    cursor.at++;
    return { each: takeTerm(cursor, line) };
  }
  if (cursor.kind !== Kind.LeftParen) return undefined;
  const can = isCan(counted) ? takeBracketedCan(cursor, line) : undefined;
  if (can !== undefined) return can;
  cursor.at = at + 1;
  const each = takeTerm(cursor, line);
  if (each?.unit !== undefined) {
    takeAgain(cursor, line);
    const perPiece = takeEach(cursor);
    const count = counted.written?.count;
    const close = cursor.take(Kind.RightParen);
    if (close !== undefined && (perPiece || (count !== undefined && isPackage(count)))) return { each, close };
  }
  cursor.at = at;
  return undefined;
}

/** `(No. 300)`, before or behind the can. */
function takeBracketedCan(cursor: Cursor, line: string): Pick<Rest, 'can' | 'close'> | undefined {
  const { at } = cursor;
  cursor.at++;
  const can = takeCanSize(cursor, line);
  const close = can && cursor.take(Kind.RightParen);
  if (close !== undefined) return { can, close };
  cursor.at = at;
  return undefined;
}
