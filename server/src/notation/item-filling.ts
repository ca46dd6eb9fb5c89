/**
 * Knows how a line says how its measure is filled, or what is counted, in a bracket or behind the name.
 * Refuses to know which foods can be heaped.
 */
import type { Run } from './cursor.ts';
import type { Item } from './item.ts';
import { takeNote } from './item-said.ts';
import type { ListLine } from './list-line.ts';
import { Kind, type Token } from './tokens.ts';

/** `2 cups (packed) brown sugar`: how the measure is filled, or a note before the name. */
export function takeFilling(on: ListLine, item: Item): void {
  const { cursor } = on;
  const { at } = cursor;
  cursor.at++;
  const bias = biasWords(on);
  if (bias !== undefined && item.measure !== undefined && cursor.take(Kind.RightParen) !== undefined)
    item.measure = { ...item.measure, bias };
  else {
    cursor.at = at;
    takeNote(on, item);
  }
}

/** `1 cup milk (scant)` */
export function takeFilledBehind(on: ListLine, item: Item): boolean {
  const { cursor } = on;
  const { at } = cursor;
  if (item.measure?.unit === undefined || item.measure.bias !== undefined) return false;
  cursor.at++;
  const bias = biasWords(on);
  if (bias === undefined || cursor.take(Kind.RightParen) === undefined) {
    cursor.at = at;
    return false;
  }
  item.measure = { ...item.measure, bias };
  return true;
}

/** Words in a bracket that say how a measure is filled: no number stands before them. */
function biasWords(on: ListLine): Run | undefined {
  const { cursor } = on;
  const first = cursor.token;
  let last: Token | undefined;
  for (; cursor.token?.written?.bias === true; cursor.at++) last = cursor.token;
  return first && last && { first, last };
}

/** `40 bread, slices`: what is counted stands behind the comma. */
export function takeCountedBehind(on: ListLine, item: Item, word: Token): boolean {
  const { cursor } = on;
  const counts = item.measure !== undefined && item.measure.unit === undefined && item.measure.counted === undefined;
  const ends = cursor.kindAfter(1) === Kind.End || cursor.kindAfter(1) === Kind.Comma;
  if (!counts || !ends || word.written?.count === undefined || word.written.word === word.written.count) return false;
  if (item.measure !== undefined) item.measure = { ...item.measure, counted: word };
  cursor.at++;
  return true;
}
