/**
 * Knows how a number is written: `2`, `1/2`, `1 ½`, `2-1/2`, and on a line of the list `one and a half`, `two dozen`.
 * Refuses to know what is counted.
 */
import { VULGAR_FRACTIONS } from '../measure/number-text.ts';
import { addRanges, exactly, type Range } from '../measure/quantity.ts';
import type { Cursor, Run } from './cursor.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { Draft, NumeralNode, SyntaxFault } from './tree.ts';

/** The tokens of one number. */
export interface NumeralRun extends Run {
  /** All of them, `and` too, where they are more than a number and its fraction. */
  readonly words?: readonly Token[];
}

/** Reads a number where one begins. */
export function takeNumeral(cursor: Cursor): NumeralRun | undefined {
  const first = cursor.token;
  if (first === undefined || !isNumber(first.kind)) return undefined;
  if (first.kind === Kind.NumberWord) return takeWords(cursor, []);
  cursor.at++;
  if (first.kind !== Kind.Numeral)
    return isLot(cursor) || (isWord(cursor) && isArticle(cursor.token))
      ? takeWords(cursor, [first])
      : { first, last: first };
  const part = cursor.take(Kind.Fraction) ?? cursor.take(Kind.Vulgar) ?? takeHyphened(cursor, first);
  // `1½ dozen`
  if (part !== undefined) return isLot(cursor) ? takeWords(cursor, [first, part]) : { first, last: part };
  if (isWord(cursor) || joinsPart(cursor)) return takeWords(cursor, [first]);
  return { first, last: first };
}

/** `2-1/2` is one number; `1/2-3/4` and `2-3` are two. */
function takeHyphened(cursor: Cursor, { end }: Token): Token | undefined {
  const dash = cursor.token;
  const after = cursor.tokens[cursor.at + 1];
  if (dash?.kind !== Kind.Dash || dash.start !== end || after?.start !== dash.end) return undefined;
  if (after.kind !== Kind.Fraction && after.kind !== Kind.Vulgar) return undefined;
  cursor.at += 2;
  return after;
}

/** `and a half`, `and 1/2`, `& ½` behind a whole number. */
function joinsPart(cursor: Cursor): boolean {
  const { token, tokens, at } = cursor;
  if (token?.written?.word !== 'and' && token?.kind !== Kind.Other) return false;
  if (token.kind === Kind.Other && token.end !== token.start + 1) return false;
  const after = tokens[at + 1];
  if (after === undefined) return false;
  if (after.kind === Kind.Fraction || after.kind === Kind.Vulgar) return true;
  if (after.kind !== Kind.NumberWord) return false;
  return isPart(after) || (tokens[at + 2]?.kind === Kind.NumberWord && isPart(tokens[at + 2]));
}

/** `a three-ounce package`: the article counts, and the number is of the size. */
function isSizeBehind(before: Token | undefined, { token, tokens, at }: Cursor): boolean {
  const number = token?.written?.number;
  if (!isArticle(before) || number === undefined) return false;
  const loose = number.part === true || number.lot === true || number.low !== number.high;
  return !loose && number.article !== true && tokens[at + 1]?.kind === Kind.Dash;
}

const isWord = (cursor: Cursor): boolean => cursor.kind === Kind.NumberWord;
const isPart = (token: Token | undefined): boolean => token?.written?.number?.part === true;
const isLot = ({ token }: Cursor): boolean => token?.kind === Kind.NumberWord && token.written?.number?.lot === true;
const isArticle = (token: Token | undefined): boolean => /^(?:an?|the)$/.test(token?.written?.word ?? '');

/** The rest of a number some of which is words: `half a`, `three quarters of a`, `one and one-half`, `2 dozen`. */
function takeWords(cursor: Cursor, before: readonly Token[]): NumeralRun | undefined {
  const words = [...before];
  const take = (): void => {
    const { token } = cursor;
    if (token !== undefined) words.push(token);
    cursor.at++;
  };
  while (isWord(cursor) && !isSizeBehind(words.at(-1), cursor)) take();
  if (words.length > 0 && joinsPart(cursor)) {
    take();
    while (isWord(cursor)) take();
    if (cursor.kind === Kind.Fraction || cursor.kind === Kind.Vulgar) take();
  }
  // `half of a lemon`
  const last = words.at(-1);
  if (isPart(last) && cursor.kind === Kind.Of && isArticle(cursor.tokens[cursor.at + 1])) {
    cursor.at++;
    while (isWord(cursor)) take();
  }
  // `2 doz. eggs`
  if (
    /^dozn?$|^dzn?$/.test(words.at(-1)?.written?.word ?? '') &&
    cursor.kind === Kind.Other &&
    cursor.token?.start === words.at(-1)?.end
  )
    cursor.at++;
  const [first] = words;
  const end = words.at(-1);
  return first && end && { first, last: end, words };
}

/** `11/2` is typed for `1 1/2`. */
const GLUED = /^(\d)([1-7]\/[2348])$/;

/** Above this no kitchen amount is meant. */
const LARGEST = 1e9;

/** What a number says; words as well as figures. */
export function numeralOf(line: string, { first, last, words }: NumeralRun, faults: SyntaxFault[]): NumeralNode {
  if (first.kind === Kind.DecimalComma) return withComma(line, first, faults);
  const { start } = first;
  const { end } = last;
  let range: Range;
  const typed =
    words === undefined && last === first && first.kind === Kind.Fraction ? GLUED.exec(line.slice(start, end)) : null;
  if (typed !== null)
    faults.push({
      code: 'bad-number',
      start,
      end,
      detail: `a whole number and a fraction have a space between: \`${typed[1]} ${typed[2]}\`; if it is so many parts, write \`${String(Number(typed[0].split('/')[0]) / Number(typed[0].split('/')[1]))}\``,
    });
  if (words !== undefined) range = valueOfWords(line, words);
  else {
    const value = valueIn(line, first) + (last === first ? 0 : valueIn(line, last));
    range = { low: value, high: value };
  }
  if (!Number.isFinite(range.high) || range.high > LARGEST) {
    faults.push({
      code: 'bad-number',
      start,
      end,
      detail: 'no kitchen amount is this large, and nothing is divided by zero',
    });
    range = { low: 0, high: 0 };
  }
  const node: Draft<NumeralNode> = { start, end, value: range.low, style: styleOf(last, words) };
  if (range.high !== range.low) node.upTo = range.high;
  return node;
}

function styleOf({ kind }: Token, words: readonly Token[] | undefined): NumeralNode['style'] {
  if (words?.some((token) => token.kind === Kind.NumberWord)) return 'word';
  return kind === Kind.Vulgar ? 'glyph' : kind === Kind.Fraction ? 'fraction' : 'decimal';
}

/** `and` adds; whatever else stands together is multiplied, but the ones behind the tens. */
function valueOfWords(line: string, words: readonly Token[]): Range {
  let sum = exactly(0);
  let term = exactly(1);
  let lot = exactly(1);
  let tens = false;
  let before: Token | undefined;
  for (const token of words) {
    if (token.kind !== Kind.NumberWord && !isNumber(token.kind)) {
      sum = addRanges(sum, term);
      term = lot;
      before = undefined;
    } else if (!isArticle(token)) {
      const value = token.written?.number ?? exactly(valueIn(line, token));
      // `a dozen and a half`
      if (token.written?.number?.lot === true) lot = value;
      const adds = (tens && value.low < 10 && value.low >= 1) || isPartOf(token, before);
      term = adds ? addRanges(term, value) : times(term, value);
      tens = value.low >= 20 && value.low % 10 === 0;
      before = token;
    }
  }
  return addRanges(sum, term);
}

/** The fraction of `1½` and `1 1/2`, which is added. */
const isPartOf = ({ kind }: Token, before: Token | undefined): boolean =>
  before?.kind === Kind.Numeral && (kind === Kind.Vulgar || kind === Kind.Fraction);

const times = (a: Range, b: Range): Range => ({ low: a.low * b.low, high: a.high * b.high });

function valueIn(line: string, { kind, start, end }: Token): number {
  if (kind === Kind.Numeral) return decimalIn(line, start, end);
  const image = line.slice(start, end);
  if (kind === Kind.Vulgar) return VULGAR_FRACTIONS[image] ?? 0;
  const [top, bottom] = image.split(/[/⁄]/);
  return Number(top) / Number(bottom);
}

/** So many digits are a whole number exactly, and dividing it by a power of ten rounds as reading it does. */
const EXACT = 15;

/** The value of digits with at most one point among them. */
function decimalIn(line: string, start: number, end: number): number {
  if (end - start > EXACT) return Number(line.slice(start, end));
  let digits = 0;
  let point = end;
  for (let at = start; at < end; at++) {
    const code = line.charCodeAt(at);
    if (code === 46) point = at + 1;
    else digits = digits * 10 + code - 48;
  }
  return point === end ? digits : digits / 10 ** (end - point);
}

function withComma(line: string, { start, end }: Token, faults: SyntaxFault[]): NumeralNode {
  const groups = line.slice(start, end).split(',');
  const thousands = groups.slice(1).every((g) => g.length === 3);
  const write = thousands ? groups.join('') : `${groups[0]}.${groups.slice(1).join('')}`;
  const detail = thousands
    ? `write \`${write}\`, without the comma (or \`${groups.join('.')}\` if a decimal was meant)`
    : `write \`${write}\`, with a point`;
  faults.push({ code: 'decimal-comma', start, end, detail, write });
  const value = Number(write);
  return { start, end, value: Number.isFinite(value) && value <= LARGEST ? value : 0, style: 'decimal' };
}
