/**
 * Knows how the characters of a line fall into words and marks. Every character is in exactly one token, blanks included.
 * Refuses to know what a word stands for on this line: that is `label.ts`.
 */
import { Kind, Token } from './tokens.ts';
import { wordAt } from './words.ts';

const MARKS: Readonly<Record<string, Kind>> = {
  '#': Kind.Comment,
  '\\': Kind.Escaped,
  ',': Kind.Comma,
  '=': Kind.Equals,
  '%': Kind.Percent,
  '°': Kind.Degree,
  // As keyboards have it: the sign of a masculine ordinal.
  º: Kind.Degree,
  '-': Kind.Dash,
  '(': Kind.LeftParen,
  ')': Kind.RightParen,
  '[': Kind.LeftBracket,
  ']': Kind.RightBracket,
  ':': Kind.Colon,
  '½': Kind.Vulgar,
  '¼': Kind.Vulgar,
  '¾': Kind.Vulgar,
};

/** What begins with each of the first 256 characters; a letter goes on a word wherever it begins one. */
const BEGINS = Uint8Array.from({ length: 256 }, (_, code) => {
  const char = String.fromCharCode(code);
  if (/[0-9]/.test(char)) return Kind.Numeral;
  if (/[A-Za-zªµÀ-ÖØ-öø-ÿ]/.test(char)) return Kind.Word;
  if (/[\t\v\f \u00A0]/.test(char)) return Kind.Blank;
  return MARKS[char] ?? Kind.Other;
});

function begins(code: number): Kind {
  if (code < 256) return BEGINS[code] as Kind;
  if (isRareBlank(code)) return Kind.Blank;
  if (isRareLetter(code)) return Kind.Word;
  if (code >= 0x2150 && code <= 0x215e) return Kind.Vulgar; // ⅐ to ⅞
  return code === 0x2013 || code === 0x2014 || code === 0x2212 ? Kind.Dash : Kind.Other; // – — −
}

const isRareBlank = (code: number): boolean =>
  code === 0x1680 ||
  (code >= 0x2000 && code <= 0x200a) ||
  code === 0x202f ||
  code === 0x205f ||
  code === 0x3000 ||
  code === 0xfeff;

const isRareLetter = (code: number): boolean =>
  code <= 0x1fff ||
  (code >= 0x2c00 && code <= 0x2fff) ||
  (code >= 0x3001 && code <= 0xd7ff) ||
  (code >= 0xf900 && code <= 0xfefe);

// Past the end of a line the code is NaN, which is none of these.
const isBlank = (code: number): boolean => (code < 256 ? BEGINS[code] === Kind.Blank : isRareBlank(code));
const isLetter = (code: number): boolean =>
  code < 256 ? BEGINS[code] === Kind.Word : code >= 256 && isRareLetter(code);
const isDigit = (code: number): boolean => code >= 48 && code <= 57;
const isApostrophe = (code: number): boolean => code === 39 || code === 0x2019;

const HYPHEN = 45;
const COMMA = 44;
const POINT = 46;
const SLASH = 47;
const HASH = 35;

/** The tokens of one line, in order. With blanks they cover it without a gap; without, nothing else is left out. */
export function scan(line: string, blanks: 'with blanks' | 'without blanks'): Token[] {
  const tokens: Token[] = [];
  const { length } = line;
  const lists: Lists = { end: 0 };
  let at = 0;
  while (at < length) {
    const start = at;
    const code = line.charCodeAt(start);
    const kind = begins(code);
    if (kind === Kind.Blank) {
      do at++;
      while (at < length && isBlank(line.charCodeAt(at)));
      if (blanks === 'with blanks') tokens.push(new Token(kind, start, at, undefined));
      continue;
    }
    const token =
      kind === Kind.Word
        ? (phrase(line, start, code) ?? word(line, start))
        : kind === Kind.Numeral
          ? number(line, start, lists)
          : mark(line, start, kind);
    tokens.push(token);
    at = token.end;
  }
  return tokens;
}

/** What is neither word nor number. */
function mark(line: string, start: number, kind: Kind): Token {
  switch (kind) {
    case Kind.Comment:
      if (beginsComment(line, start) && !beginsCanSize(line, start) && !isPounds(line, start))
        return new Token(kind, start, line.length, undefined);
      return new Token(Kind.Other, start, otherEnd(line, start), undefined);
    case Kind.Other:
      if (line.charCodeAt(start) === POINT && beginsDecimal(line, start))
        return new Token(Kind.Numeral, start, digitsEnd(line, start + 1), undefined);
      return new Token(Kind.Other, start, otherEnd(line, start), undefined);
    case Kind.Escaped:
      return new Token(kind, start, escapedEnd(line, start), undefined);
    default:
      return new Token(kind, start, start + 1, undefined);
  }
}

/** Letters, with apostrophes in and after them and hyphens between them: `cooks'`, `crème`, `self-raising`. */
function word(line: string, start: number): Token {
  const { length } = line;
  let hash = 0;
  let at = start;
  while (at < length) {
    const code = line.charCodeAt(at);
    if (!isLetter(code) && !isApostrophe(code) && !(code === HYPHEN && isLetter(line.charCodeAt(at + 1)))) break;
    hash = (hash * 31 + code) | 0;
    at++;
  }
  return new Token(Kind.Word, start, at, wordAt(line, start, at, hash));
}

/** `to taste`, `as needed` and `fl oz`, which have blanks in them. */
function phrase(line: string, start: number, code: number): Token | undefined {
  const letter = code | 32;
  const next = line.charCodeAt(start + 1) | 0;
  let end = 0;
  if (letter === 116 && next === 111)
    end = secondEnd(line, start + 2, 'taste'); // to
  else if (letter === 97 && next === 115) end = secondEnd(line, start + 2, 'needed'); // as
  if (end > 0) return new Token(Kind.Free, start, end, undefined);
  if (letter !== 102 || next !== 108) return undefined; // fl
  if (line.startsWith('uid', start + 2))
    end = secondEnd(line, start + 5, 'ounces') || secondEnd(line, start + 5, 'ounce');
  else end = secondEnd(line, start + (line.charCodeAt(start + 2) === POINT ? 3 : 2), 'oz');
  return end > 0 ? new Token(Kind.FluidOunce, start, end, undefined) : undefined;
}

/** The end of the second word of a phrase, after blanks; 0 when another one stands there. */
function secondEnd(line: string, from: number, second: string): number {
  let at = from;
  while (isBlank(line.charCodeAt(at))) at++;
  if (at === from || !line.startsWith(second, at)) return 0;
  const end = at + second.length;
  return isLetter(line.charCodeAt(end)) ? 0 : end;
}

/** Where the last run of numbers with commas ends that was too long for one number, so that it is looked through once. */
interface Lists {
  end: number;
}

/** Digits: `63/64`. */
const LONGEST_DENOMINATOR = 2;

function number(line: string, start: number, lists: Lists): Token {
  const whole = digitsEnd(line, start);
  switch (line.charCodeAt(whole)) {
    case HYPHEN:
      if (isDate(line, start, whole)) return new Token(Kind.DateMark, start, start + 10, undefined);
      break;
    case COMMA: {
      if (start < lists.end) break;
      const end = groupsEnd(line, whole);
      if (end > whole && line.charCodeAt(end) !== COMMA) return new Token(Kind.DecimalComma, start, end, undefined);
      lists.end = end;
      break;
    }
    case SLASH:
    case 0x2044: {
      const end = digitsEnd(line, whole + 1);
      // `gas 6/200C` is two figures.
      const isFraction = end > whole + 1 && end <= whole + 1 + LONGEST_DENOMINATOR;
      if (isFraction && line.charCodeAt(end) !== SLASH) return new Token(Kind.Fraction, start, end, undefined);
      break;
    }
    case POINT: {
      const end = digitsEnd(line, whole + 1);
      if (end > whole + 1) return new Token(Kind.Numeral, start, end, undefined);
    }
  }
  return new Token(Kind.Numeral, start, whole, undefined);
}

function digitsEnd(line: string, from: number): number {
  let at = from;
  while (isDigit(line.charCodeAt(at))) at++;
  return at;
}

/** The end of `,500,000`. */
function groupsEnd(line: string, from: number): number {
  let at = from;
  while (line.charCodeAt(at) === COMMA && isDigit(line.charCodeAt(at + 1))) at = digitsEnd(line, at + 1);
  return at;
}

/** `2026-09-14`, and no digit or hyphen after it. */
function isDate(line: string, start: number, yearEnd: number): boolean {
  if (yearEnd !== start + 4 || digitsEnd(line, start + 5) !== start + 7) return false;
  return (
    line.charCodeAt(start + 7) === HYPHEN &&
    digitsEnd(line, start + 8) === start + 10 &&
    line.charCodeAt(start + 10) !== HYPHEN
  );
}

/** At the start of the line, or after a blank or a line end. */
function beginsComment(line: string, at: number): boolean {
  if (at === 0) return true;
  const before = line.charCodeAt(at - 1);
  return isBlank(before) || before === 10 || before === 13 || before === 0x2028 || before === 0x2029;
}

/** `#2 cans`, `#10 tin`, or `#2` at the end: the size of a can as the trade numbers it. */
function beginsCanSize(line: string, at: number): boolean {
  const size = line.slice(at, at + LONGEST_CAN_SIZE);
  if (isDigit(line.charCodeAt(at + 1))) return CAN_SIZE.test(size);
  return isDigit(line.charCodeAt(at + 2)) && CAN_SIZE_APART.test(size) && BEFORE_CAN_SIZE.test(line.slice(0, at));
}

const CAN_SIZE = /^#\d{1,3}(?:\.5| ?½|[ -]1\/2)?(?:[ -]?(?:cans?|cns?|tins?)\b|\s*$)/;
/** With a blank behind the mark it is one only where a number or comma stands before: `1 # 10 can`, `corn, # 10 can`. */
const CAN_SIZE_APART = /^# \d{1,3}(?:\.5| ?½|[ -]1\/2)?[ -]?(?:cans?|cns?|tins?)\b/;
const BEFORE_CAN_SIZE = /(?:[\d½,(]|\d\s*[x×])\s*$/;
const LONGEST_CAN_SIZE = 16;

/** `2 # bacon`: behind the number that opens the line, and before a name, it is the sign of the pound. */
const isPounds = (line: string, at: number): boolean =>
  /^[\t ]+\p{L}/u.test(line.slice(at + 1, at + LONGEST_CAN_SIZE)) && OPENING_NUMBER.test(line.slice(0, at));

const OPENING_NUMBER = /^[\t ]*(?:\d+(?:[./]\d+)?(?: \d+\/\d+)?[½¼¾]?|[½¼¾])[\t ]+$/;

/** `.5`, with nothing before it that it could be the point of. */
function beginsDecimal(line: string, at: number): boolean {
  if (!isDigit(line.charCodeAt(at + 1))) return false;
  const before = line.charCodeAt(at - 1);
  return at === 0 || isBlank(before) || before === 40 || before === HYPHEN;
}

function escapedEnd(line: string, start: number): number {
  let at = start + 1;
  if (line.charCodeAt(at) === HASH) return at + 1;
  if (!isLetter(line.charCodeAt(at))) return at;
  for (
    let code = line.charCodeAt(at);
    isLetter(code) || isApostrophe(code) || code === HYPHEN;
    code = line.charCodeAt(at)
  )
    at++;
  return at;
}

function otherEnd(line: string, start: number): number {
  const isHigh = (line.charCodeAt(start) & 0xfc00) === 0xd800;
  return isHigh && (line.charCodeAt(start + 1) & 0xfc00) === 0xdc00 ? start + 2 : start + 1;
}
