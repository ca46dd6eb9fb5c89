/**
 * Knows how an amount stands on a line of the list: as much as one likes, one term, a range of two, or a sum of several.
 * Refuses to know what is weighed.
 */
import { baseOf } from '../measure/unit.ts';
import { type Amount, dimensionIn, Free, isCounted, type Measure, NO_TERMS } from './amounts.ts';
import type { Cursor } from './cursor.ts';
import { takeNumeral } from './numerals.ts';
import { measure, takeTerm } from './term.ts';
import { isNumber, Kind, Token } from './tokens.ts';

/** Reads the amount of a list line, however it is printed; undefined, and nothing read, where none stands. */
export function takeStated(cursor: Cursor, line: string): Amount | undefined {
  if (!isNumber(cursor.kind) || cursor.kind === Kind.NumberWord) {
    const free = takeFree(cursor);
    if (free !== undefined) return free;
  }
  const first = takeTerm(cursor, line);
  if (first === undefined) return undefined;
  // A word that can be nothing else begins the name.
  if (cursor.kind === Kind.Word && cursor.token?.written?.special === false) return first;
  const upTo = takeUpTo(cursor, line, first);
  if (upTo !== undefined) return { ...first, upTo };
  const half = takePart(cursor, line, first);
  if (half !== undefined) return { ...first, plus: [half] };
  const plus = takeTerms(cursor, line, first);
  return plus.length === 0 ? first : { ...first, plus };
}

/** Words for as much as one likes: `some`, `a little`, `a good splash of`. */
const SOME: ReadonlySet<string> = new Set(['some', 'enough', 'sufficient', 'plenty', 'little', 'whatever']);
const VAGUE =
  /^(?:little|bit|dust|dusting|sprinkling|sprinkle|grating|grain|speck|scraping|touch|trickle|shaving|swirl|smear|shake|spritz|dribble|lick|scattering|grind)s?$/;

function takeFree(cursor: Cursor): Free | undefined {
  const { token, tokens, at } = cursor;
  if (token === undefined) return undefined;
  if (token.kind === Kind.Free) {
    cursor.at++;
    return new Free(token, token);
  }
  if (token.written === undefined) return undefined;
  let last = at;
  const wordAt = (i: number) => tokens[i]?.written?.word ?? '';
  if (SOME.has(wordAt(at)) && at + 1 < tokens.length) {
    // `some` stands for the amount; `some of the` does not.
  } else {
    const article = /^(?:an?|few)$/.test(wordAt(at));
    if (article) last++;
    if (article && /^(?:few|good|big|generous|small|large|fine|fair|tiny)$/.test(wordAt(last))) last++;
    if (!VAGUE.test(wordAt(last)) || !(article || wordAt(last + 1) === 'of')) return undefined;
  }
  if (/^(?:of|extra|more)$/.test(wordAt(last + 1))) last++;
  const end = tokens[last];
  if (end === undefined || last + 1 >= tokens.length) return undefined;
  cursor.at = last + 1;
  return new Free(token, end);
}

/** `1 tsp to 1 tbsp`. */
function takeUpTo(cursor: Cursor, line: string, first: Measure): Measure | undefined {
  if (first.unit === undefined || first.high !== undefined) return undefined;
  const { at, token } = cursor;
  if (token?.kind !== Kind.Dash && token?.written?.word !== 'to') return undefined;
  cursor.at++;
  const upTo = takeTerm(cursor, line);
  if (
    upTo !== undefined &&
    upTo.low !== undefined &&
    dimensionIn(upTo) !== undefined &&
    dimensionIn(upTo) === dimensionIn(first)
  )
    return upTo;
  cursor.at = at;
  return undefined;
}

/** `a pound and a half`: a part of the same unit, which does not stand again. */
function takePart(cursor: Cursor, line: string, { unit }: Measure): Measure | undefined {
  const { at } = cursor;
  if (unit === undefined || !takePlus(cursor, line)) return undefined;
  const low = isNumber(cursor.kind) ? takeNumeral(cursor) : undefined;
  const isPart = low?.last.kind === Kind.Fraction || low?.last.kind === Kind.Vulgar || low?.last.written?.number?.part;
  const ends = cursor.kind !== Kind.UnitWord && cursor.kind !== Kind.CountedWord && cursor.kind !== Kind.SizeWord;
  if (low === undefined || low.first.kind === Kind.Numeral || isPart !== true || !ends) {
    cursor.at = at;
    return undefined;
  }
  const { end } = low.last;
  const given = { about: undefined, minus: undefined, low, high: undefined };
  return measure(given, { unit: new Token(Kind.UnitWord, end, end, unit.written) });
}

/** The terms behind the first: `1 lb 4 oz`, `1 cup plus 2 tbsp`, `1 cup + 2 tbsp`. */
export function takeTerms(cursor: Cursor, line: string, first: Measure): readonly Measure[] {
  let terms: Measure[] | undefined;
  const of = dimensionIn(first);
  const counts = isCounted(first);
  if (of !== 'mass' && of !== 'volume' && !counts) return NO_TERMS;
  for (;;) {
    const { at } = cursor;
    const joined = takePlus(cursor, line);
    // `2 pounds, 3 ounces pork`
    if (!joined && cursor.kind === Kind.Comma && isNumber(cursor.kindAfter(1))) cursor.at++;
    const term = isNumber(cursor.kind) ? takeTerm(cursor, line) : undefined;
    const kind = term && dimensionIn(term);
    const adds = term?.low !== undefined && (counts ? joined && (kind === 'mass' || kind === 'volume') : kind === of);
    // With nothing between, a sum is of falling units.
    if (!adds || (!joined && !(sizeOf(term) < sizeOf(terms?.at(-1) ?? first)))) {
      cursor.at = at;
      return terms ?? NO_TERMS;
    }
    terms ??= [];
    terms.push(term);
  }
}

/** `plus`, `and`, `+`, `&` between two terms. */
export function takePlus(cursor: Cursor, line: string): boolean {
  const { token } = cursor;
  const word = token?.written?.word;
  const mark = token?.kind === Kind.Other ? line[token.start] : undefined;
  if (word !== 'plus' && word !== 'and' && mark !== '+' && mark !== '&') return false;
  cursor.at++;
  return true;
}

/** How much the unit of a term is, as units fall in a sum: the same in every house. */
function sizeOf({ unit }: Measure): number {
  return baseOf(unit?.written?.printed?.symbol ?? 'fl oz', 'us') ?? 0;
}
