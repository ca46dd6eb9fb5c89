/**
 * Knows what a word stands for on its line: a unit, a count word, what joins two numbers, or the keyword that opens it.
 * Refuses to know what the tokens mean together.
 */

import type { Keyword } from './keywords.ts';
import { ListLabels, NOT_AN_INCH } from './label-list.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { Written } from './words.ts';

/** What a line is by its first word; `component` for the composition lines of a food. */
export type Opened = Keyword | 'component' | undefined;

/** In this order, each at most once; one may be left out. */
const JOINERS: Partial<Record<Keyword, readonly string[]>> = {
  allow: ['because'],
  trial: ['by'],
  took: ['to', 'in'],
  started: ['at'],
  reached: ['in'],
  weighed: ['out'],
  used: ['in'],
  swap: ['for'],
  price: ['per'],
};

/** Gives the words and marks that stand for something on this line, or in a slot that is no list's, their own kinds, from left to right. */
export function label(line: string, tokens: Token[], as: 'line' | 'slot' = 'line'): Opened {
  const opened = labelOpening(tokens);
  let joiners = (opened === undefined || opened === 'component' ? undefined : JOINERS[opened]) ?? NO_JOINERS;
  // The list is read in its own words: a swap's behind `for`, a trial's from the start.
  let list =
    as === 'line' && opensList(opened) ? new ListLabels(line, tokens, opened === undefined ? 0 : 1) : undefined;
  for (let i = opened === undefined ? 0 : 1; i < tokens.length; i++) {
    const token = tokens[i] as Token;
    const { written } = token;
    const joined = token.kind === Kind.Word && written !== undefined ? joiners.indexOf(written.word) : -1;
    if (joined >= 0) {
      const joiner = joiners[joined];
      if (!(joiner === 'to' && isNumber(kindAt(tokens, i - 1))) && !(joiner === 'in' && isInch(tokens, i))) {
        token.kind = Kind.Joiner;
        joiners = joiners.slice(joined + 1);
        list = opened === 'swap' ? new ListLabels(line, tokens, i + 1) : undefined;
        continue;
      }
    }
    if (list !== undefined) list.label(i, token);
    else labelOne(line, tokens, i, token);
  }
  return opened;
}

const NO_JOINERS: readonly string[] = [];

/** Lines that hold an ingredient as a cook prints it. */
const opensList = (opened: Opened): boolean =>
  opened === undefined || opened === 'optional' || opened === 'add' || opened === 'used';

/** `used 2 in ginger in filling`: the first is a measure. */
const isInch = (tokens: readonly Token[], i: number): boolean =>
  isNumber(kindAt(tokens, i - 1)) && !NOT_AN_INCH.has(tokens[i + 1]?.written?.word);

function labelOne(line: string, tokens: readonly Token[], i: number, token: Token): void {
  switch (token.kind) {
    case Kind.Word:
      if (token.written?.special) token.kind = kindOfWord(tokens, i, token.written);
      break;
    case Kind.Dash:
      if (isMinus(tokens, i, token)) token.kind = Kind.Minus;
      break;
    case Kind.FluidOunce:
    case Kind.Percent:
      token.kind = Kind.UnitWord;
      break;
    case Kind.Other:
      if (line[token.start] === '×') token.kind = Kind.Times;
      else if (line[token.start] === '~' && isNumber(kindAt(tokens, i + 1))) token.kind = Kind.About;
  }
}

function labelOpening(tokens: readonly Token[]): Opened {
  const [first] = tokens;
  const written = first?.kind === Kind.Word ? first.written : undefined;
  if (first === undefined || written === undefined) return undefined;
  const opened = written.keyword ?? (written.component && isNumber(kindAt(tokens, 1)) ? 'component' : undefined);
  if (opened !== undefined) first.kind = Kind.Opening;
  return opened;
}

const kindAt = (tokens: readonly Token[], i: number): Kind => tokens[i]?.kind ?? Kind.End;

function kindOfWord(tokens: readonly Token[], i: number, { word, count, size, unit }: Written): Kind {
  const before = tokens[i - 1];
  const after = tokens[i + 1];
  const kindBefore = before?.kind ?? Kind.End;
  const kindAfter = after?.kind ?? Kind.End;
  const afterNumber = isNumber(kindBefore);
  switch (word) {
    case 'about':
      if (isNumber(kindAfter)) return Kind.About;
      break;
    case 'to':
      if ((afterNumber || kindBefore === Kind.Degree) && isNumber(kindAfter)) return Kind.To;
      break;
    case 'deg':
    case 'degree':
    case 'degrees':
      return afterNumber ? Kind.Degree : Kind.Word;
    case 'x':
      return Kind.Times;
    case 'gas':
      if (isNumber(kindAt(tokens, after?.written?.word === 'mark' ? i + 2 : i + 1))) return Kind.Gas;
      break;
    case 'mark':
      // `at mark 4`; `Mark 12 squares` is an order.
      if (isNumber(kindAfter) && (kindBefore === Kind.LeftParen || before?.written?.word === 'at')) return Kind.Gas;
      break;
    case 'fan':
    case 'fan-forced':
    case 'fan-assisted':
    case 'convection':
      if (afterNumber || (kindBefore === Kind.UnitWord && before?.written?.unit?.dimension === 'temperature'))
        return Kind.Fan;
      break;
    case 'overnight':
      return Kind.Overnight;
    case 'of':
      if (kindBefore === Kind.CountedWord && isNumber(kindAfter)) return Kind.Of;
  }
  if (afterNumber || kindBefore === Kind.Degree || kindBefore === Kind.SizeWord) {
    if (afterNumber && (size !== undefined || (word === 'extra' && after?.written?.word === 'large')))
      return Kind.SizeWord;
    if (kindBefore === Kind.SizeWord && before?.written?.word === 'extra') return Kind.SizeWord;
    if (count !== undefined && kindBefore !== Kind.Degree) return Kind.CountedWord;
    return unit !== undefined && !(word === 'in' && NOT_AN_INCH.has(after?.written?.word)) ? Kind.UnitWord : Kind.Word;
  }
  // `3-inch`
  return kindBefore === Kind.Dash && isNumber(kindAt(tokens, i - 2)) && unit?.dimension === 'length'
    ? Kind.UnitWord
    : Kind.Word;
}

/** A dash that stands apart from what is before it and close to the number after it. */
function isMinus(tokens: readonly Token[], i: number, { start, end }: Token): boolean {
  const before = tokens[i - 1];
  const after = tokens[i + 1];
  if (after === undefined || !isNumber(after.kind) || after.start !== end) return false;
  return before === undefined || (before.end < start && !isNumber(before.kind));
}
