/**
 * Knows how a line takes one amount from another, and what is to be written in its place.
 */
import { kitchenLeft } from '../measure/kitchen.ts';
import { dimensionIn } from './amounts.ts';
import type { Item } from './item.ts';
import type { ListLine } from './list-line.ts';
import { takeTerm } from './term.ts';
import type { Token } from './tokens.ts';

export const isLess = (token: Token | undefined): boolean =>
  token?.written?.word === 'less' || token?.written?.word === 'minus';

/** `1 cup less 1 tbsp`: what is left is to be written. */
export function takeLess(on: ListLine, item: Item, from: Token): boolean {
  const { cursor, line } = on;
  const { at } = cursor;
  cursor.at++;
  const term = takeTerm(cursor, line);
  const { measure } = item;
  if (term?.unit === undefined || measure?.unit === undefined || dimensionIn(term) !== dimensionIn(measure)) {
    cursor.at = at;
    return false;
  }
  const whole = on.measured(measure);
  const left = kitchenLeft(whole.quantity, on.measured(term).quantity);
  const { end } = cursor.tokens[cursor.at - 1] ?? from;
  const behind = item.node.name !== undefined;
  on.fault(
    'bad-number',
    behind ? { start: from.start, end } : { start: whole.start, end },
    `no amount is taken from another: write what is left, such as \`${left ?? '3/4 cup + 3 tbsp'}\``,
    behind ? undefined : left,
  );
  return true;
}
