/**
 * Knows how much of a food's sugars was put to it and how much of its fat is trans fat, at least and at most, from `data/label/shares.tsv`.
 * Refuses to guess where neither its row nor its figures bound it.
 */
import sharesText from '../../data/label/shares.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { bookIdOf, type Food } from './food.ts';
import { likened } from './likened.ts';

/** By what it is of, then by food or class; under '' what holds for all others. */
const SHARES = once(() => {
  const of = new Map<string, Map<string, Range>>();
  for (const [kind = '', what = '', low, high] of rowsIn(sharesText)) {
    const rows = of.get(kind) ?? new Map<string, Range>();
    of.set(kind, rows);
    for (const word of what === '' ? [''] : wordsIn(what)) rows.set(word, { low: Number(low), high: Number(high) });
  }
  return of;
});

function shareOf(of: 'added' | 'trans', food: Food): Range | undefined {
  const rows = SHARES().get(of);
  const id = bookIdOf(food);
  return rows?.get(id) ?? rows?.get(`${food.class} ${id.split('-')[0]}-`) ?? rows?.get(food.class) ?? rows?.get('');
}

/** Grams in 100 g; undefined where nobody knows. */
export function addedSugarsIn(food: Food): Range | undefined {
  const share = shareOf('added', food) ?? { low: 0, high: 1 };
  if (share.high === 0) return NOTHING;
  const { sugars, lactose = 0 } = food.per100;
  const most = mostSugarsIn(food) ?? likened(food, mostSugarsIn)?.high;
  if (most === undefined) return undefined;
  return { low: sugars === undefined ? 0 : (sugars - lactose) * share.low, high: (most - lactose) * share.high };
}

const mostSugarsIn = ({ per100: { sugars, carbohydrate } }: Food): number | undefined => sugars ?? carbohydrate;

/** Grams in 100 g; undefined where its fat is not known. */
export function transFatIn(food: Food): Range | undefined {
  const { fat } = food.per100;
  const held = fat === undefined ? likened(food, ({ per100 }) => per100.fat) : { low: fat, high: fat };
  const share = shareOf('trans', food);
  if (held === undefined || share === undefined) return undefined;
  return { low: held.low * share.low, high: held.high * share.high };
}

const NOTHING: Range = { low: 0, high: 0 };
