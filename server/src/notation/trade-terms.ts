/**
 * Knows the terms by which kitchens of many say when a food was weighed: `A.P.` as purchased, before it is trimmed; `E.P.`, its edible portion.
 * Refuses to know what is trimmed away.
 */
import type { Cursor } from './cursor.ts';
import { Kind, type Token } from './tokens.ts';

export interface Trade {
  readonly weighed: 'as purchased' | 'edible portion';
  readonly first: Token;
  readonly last: Token;
}

/** `A.P.`, `AP`, `E.P.`, `EP`, in capitals. */
export function takeTrade(cursor: Cursor, line: string): Trade | undefined {
  const { at, tokens, token: first } = cursor;
  const letter = first?.written?.image;
  if (first === undefined || (letter !== 'A' && letter !== 'E' && letter !== 'AP' && letter !== 'EP')) return undefined;
  let last = letter.length === 2 ? first : undefined;
  if (last !== undefined) cursor.at++;
  else if (isPoint(tokens[at + 1], line) && tokens[at + 2]?.written?.image === 'P') {
    last = tokens[at + 2];
    cursor.at += 3;
  }
  if (last === undefined) return undefined;
  const point = cursor.token;
  if (isPoint(point, line) && point?.start === last.end) {
    last = point;
    cursor.at++;
  }
  // `AP flour` is all-purpose.
  if (cursor.token?.written?.word === 'flour') {
    cursor.at = at;
    return undefined;
  }
  return { weighed: letter.startsWith('A') ? 'as purchased' : 'edible portion', first, last };
}

const isPoint = (token: Token | undefined, line: string): boolean =>
  token?.kind === Kind.Other && line[token.start] === '.';
