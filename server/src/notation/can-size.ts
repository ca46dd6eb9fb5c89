/**
 * Knows how a can of the trade's own size stands on a line: `#10 can`, `# 10 can`, `No. 2½ can`, `303 can`.
 * Refuses to know which sizes there are.
 */
import { type CanSize, canSize, isBareSize } from '../measure/can-sizes.ts';
import type { Cursor, Run } from './cursor.ts';
import { takeNumeral } from './numerals.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { MeasuredNode } from './tree.ts';

/** The tokens that say the size. */
export interface CanRun extends Run {
  readonly size: CanSize;
}

/** Reads the size of a can; what holds it is still to come, but in brackets and behind a `#` that ends the line. */
export function takeCanSize(cursor: Cursor, line: string): CanRun | undefined {
  const { at, token: first } = cursor;
  if (first === undefined) return undefined;
  const mark = first.kind === Kind.Other && line[first.start] === '#';
  const no = first.written?.word === 'no';
  if (!mark && !no && first.kind !== Kind.Numeral) return undefined;
  if (mark || no) cursor.at++;
  if (no && cursor.kind === Kind.Other && line[cursor.token?.start ?? 0] === '.') cursor.at++;
  const number = isNumber(cursor.kind) ? takeNumeral(cursor) : undefined;
  const text = number === undefined ? '' : line.slice(number.first.start, number.last.end);
  const size = mark || no || isBareSize(text) ? canSize(text) : undefined;
  const [next, after] = [cursor.token, cursor.tokens[cursor.at + 1]];
  const held = isCan(next) || (next?.kind === Kind.Dash && isCan(after)) || next?.kind === Kind.RightParen;
  if (number === undefined || size === undefined || !(held || (mark && next === undefined))) {
    cursor.at = at;
    return undefined;
  }
  return { first, last: number.last, size };
}

export function isCan(token: Token | undefined): boolean {
  const { count } = token?.written ?? {};
  return count === 'can' || count === 'tin';
}

/** What one can of the size holds. */
export function canNode({ first, last, size }: CanRun): MeasuredNode {
  const { low, high, name } = size;
  const { start } = first;
  const { end } = last;
  return {
    kind: 'measured',
    start,
    end,
    quantity: { low, high, unit: 'oz', about: false, trade: name },
    low: { start, end, value: low, upTo: high, style: 'decimal' },
  };
}
