/**
 * Knows how much gelatine of 200 bloom, or agar, an ingredient stands for: by its grade where that is written, by the sheet else.
 * Refuses to know the whole it sets.
 */
import { bookIdOf, type Food, type FoodMatch } from '../../food/food.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Ingredient } from '../model.ts';

export const isGelatine = (food: Food): boolean => food.class === 'gelling' && named(food, /gelatin/);
export const isAgar = (food: Food): boolean => food.class === 'gelling' && named(food, /agar/);

export const agarShare = (food: Food): number => (isAgar(food) ? 1 : 0);

const named = (food: Food, pattern: RegExp): boolean => pattern.test(bookIdOf(food)) || pattern.test(food.name);

/** What the grades are in bloom: bronze 125 to 155, silver 160, gold 190 to 220, platinum 235 to 265 (Lersch, hydrocolloids, as a table of 2012 quotes it). */
const GRADES: Readonly<Record<string, number>> = { bronze: 140, silver: 160, gold: 200, platinum: 250 };
const STANDARD_BLOOM = 200;
/** Sheets are cut so that one of any grade sets alike, as 2 g of 200 bloom: 3.3, 2.5, 2 and 1.7 g (the same table); some packs run heavier. */
const SHEET_G: Range = { low: 2, high: 2.3 };

/** Grams as 200 bloom, from none where it may be another food: m₂ = m₁ √(B₁/B₂) (Ward and Courts 1977, p. 509: bloom goes with the square). Powder without a grade: about 120 bloom in British shops (MM Ingredients), 225 to 250 (Friberg 2003). */
export function gelatineG(ingredient: Ingredient): Range | undefined {
  const { food, weighed, node, match } = ingredient;
  const surely = food === undefined ? maySet(match) : isGelatine(food);
  if (surely === false) return NOTHING;
  const amount = node.amount;
  if (amount?.kind === 'measured' && ['sheet', 'leaf'].includes(amount.quantity.count ?? ''))
    return { low: surely ? amount.quantity.low * SHEET_G.low : 0, high: amount.quantity.high * SHEET_G.high };
  if (!weighed.known) return undefined;
  const bloom = bloomWritten(ingredient);
  const [weak, strong] = bloom === undefined ? POWDER_BLOOM : [bloom, bloom];
  return {
    low: surely ? weighed.grams.low * Math.sqrt(weak / STANDARD_BLOOM) : 0,
    high: weighed.grams.high * Math.sqrt(strong / STANDARD_BLOOM),
  };
}

const NOTHING: Range = { low: 0, high: 0 };
const POWDER_BLOOM = [120, 250] as const;

/** Whether a food that is not told is gelatine: `undefined` where it may be. */
function maySet(match: FoodMatch): false | undefined {
  if (match.kind === 'food') return false;
  const foods = match.kind === 'ambiguous' ? match.foods : (match.range ?? []);
  const hinted = match.kind === 'unknown' && match.brings?.includes('gelling') === true;
  return hinted || foods.some(isGelatine) ? undefined : false;
}

/** `gelatine, 160 bloom` or `gold gelatine`. */
function bloomWritten({ node }: Ingredient): number | undefined {
  const words = [node.name?.text, node.preparation?.text, node.note?.text].join(' ').toLowerCase();
  const number = /(\d{2,3})\s*bloom|bloom\s*(?:of\s*)?(\d{2,3})/.exec(words);
  if (number !== null) return Number(number[1] ?? number[2]);
  const grade = /\b(bronze|silver|gold|platinum)\b/.exec(words);
  return grade === null ? undefined : GRADES[grade[1] ?? ''];
}
