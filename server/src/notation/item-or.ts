/**
 * Knows what a line says behind `or` and `weighed as`: the same in another measure, or an alternative with its amount.
 */
import { dimensionIn, Free } from './amounts.ts';
import { takeWhile } from './cursor.ts';
import type { Item } from './item.ts';
import { trimmedName } from './item-name.ts';
import { takeSaid } from './item-said.ts';
import type { ListLine } from './list-line.ts';
import { takeStated } from './stated.ts';
import { isNamePart, type Token } from './tokens.ts';

/** `1 tsp salt, weighed as 4.5 g`. */
export function takeWeighedAs(on: ListLine, item: Item, comma: Token): boolean {
  const { cursor, line } = on;
  const { at } = cursor;
  cursor.at++;
  const word = cursor.token?.written?.word;
  if (word === 'as' || word === 'at') cursor.at++;
  const stated = takeStated(cursor, line);
  if (item.isBare || stated === undefined || stated instanceof Free || dimensionIn(stated) !== 'mass') {
    cursor.at = at;
    return false;
  }
  item.beside(',', comma, on.measured(stated), 'same');
  return true;
}

/** Behind `or`: the same in another measure, an alternative with its amount, or words that are left to the preparation. */
export function takeOr(on: ListLine, item: Item): boolean {
  const { cursor, line } = on;
  const { at, token } = cursor;
  if (token === undefined) return false;
  cursor.at++;
  const stated = takeStated(cursor, line);
  if (stated !== undefined && !(stated instanceof Free)) {
    const amount = on.measured(stated);
    if (cursor.token?.written?.word === 'of') cursor.at++;
    const first = cursor.token;
    const run = takeWhile(cursor, isNamePart);
    if (run === undefined || first === undefined) item.beside('or', token, amount, 'same');
    else {
      const name = trimmedName(on, run.first, run.last);
      if (name !== undefined) {
        item.others ??= [];
        item.others.push({ start: token.start, end: run.last.end, amount, name });
      }
    }
    return true;
  }
  cursor.at = at;
  takeSaid(on, item, token);
  return true;
}
