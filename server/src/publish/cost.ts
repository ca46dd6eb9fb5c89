/**
 * Knows what a recipe costs by the house's own prices, whole and a serving, and names what has no price.
 * Refuses to guess a price, and to know the money: figures are in whatever the house counts in.
 */
import type { FoodBook } from '../food/book.ts';
import { likelyGrams } from '../food/weigh.ts';
import { middle } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { Block, Outline } from '../notation/outline.ts';
import { namelessLines } from '../recipe/list/not-understood.ts';
import type { Ingredient, Recipe } from '../recipe/model.ts';
import { servingsOf } from './nutrition.ts';
import { round } from './rounded.ts';

/** Price of one gram, or of one piece where the food is bought by the piece and not weighed; by the food's id. */
export type PriceList = ReadonlyMap<string, { readonly perG?: number; readonly perPiece?: number }>;

export interface Cost {
  /** What is known of it; a lower bound where something has no price. */
  readonly total: number;
  readonly per_serving: number | null;
  readonly complete: boolean;
  readonly lines: readonly CostLine[];
  readonly without_price: readonly string[];
  /** Their share of all that is weighed; null where a weight is not known. */
  readonly without_price_percent: number | null;
}

interface CostLine {
  /** From 1, in the file. */
  readonly line: number;
  readonly part: string;
  readonly name: string;
  readonly cost: number;
  readonly per_serving: number | null;
}

/** The prices in the `food` blocks of a house, as its book knows the foods. */
export function pricesOf(outlines: readonly Outline[], book: FoodBook, measures: Measures): PriceList {
  const prices = new Map<string, { perG?: number; perPiece?: number }>();
  for (const block of outlines.flatMap((o) => o.foods)) {
    const price = priceIn(block, book, measures);
    if (price !== undefined) prices.set(price.id, price.of);
  }
  return prices;
}

function priceIn(block: Block, book: FoodBook, measures: Measures) {
  const [first] = block.lines;
  if (first?.statement.kind !== 'food' || first.statement.name === undefined) return undefined;
  const match = book.find(first.statement.name.text);
  const said = block.lines.flatMap(({ statement }) => (statement.kind === 'price' ? [statement] : [])).at(-1);
  const money = said?.price?.value;
  const per = said?.per?.quantity;
  if (match.kind !== 'food' || money === undefined || per === undefined || !(per.low > 0)) return undefined;
  const { id } = match.food;
  const weighed = book.weigh(match.food, per, measures, match.form);
  if (weighed.known) return { id, of: { perG: money / likelyGrams(weighed) } };
  return per.unit === undefined ? { id, of: { perPiece: money / middle(per) } } : undefined;
}

/** The cost of what is bought; null where the house has no prices at all. `lineOf` says which line of the file, from 1, a line of the recipe is. */
export function costOf(
  recipe: Recipe,
  prices: PriceList,
  lineOf: (line: number) => number = (line) => line + 1,
): Cost | null {
  if (prices.size === 0) return null;
  const servings = servingsOf(recipe);
  const each = (cost: number): number | null => (servings === null ? null : round(cost / servings, 4));
  const lines: CostLine[] = [];
  const without: string[] = [];
  let [weighedG, withoutG] = [0, 0];
  for (const { head, index } of recipe.parts) {
    const first = recipe.partsAt[index] ?? 0;
    for (const ingredient of head.ingredients) {
      // A part that is taken in is paid for in its own list.
      if (ingredient.optional || ingredient.ofPart !== undefined) continue;
      const cost = head.nominal ? undefined : costOfLine(ingredient, prices);
      const grams = gramsOf(ingredient);
      weighedG += grams;
      if (cost === undefined) {
        without.push(ingredient.name);
        withoutG += grams;
      } else
        lines.push({
          line: lineOf(first + ingredient.line),
          part: head.name,
          name: ingredient.name,
          cost: round(cost, 4),
          per_serving: each(cost),
        });
    }
    const nameless = namelessLines(head);
    without.push(...nameless);
    if (nameless.length > 0 || head.nominal) withoutG = Number.NaN;
  }
  const total = lines.reduce((sum, l) => sum + l.cost, 0);
  const missing = (withoutG / weighedG) * 100;
  return {
    total: round(total, 4),
    per_serving: each(total),
    complete: without.length === 0,
    lines,
    without_price: [...new Set(without)],
    without_price_percent: Number.isFinite(missing) ? round(missing, 1) : null,
  };
}

/** Not a number where it is not known; what is only to taste weighs nothing. */
const gramsOf = ({ weighed, free }: Ingredient): number =>
  weighed.known ? likelyGrams(weighed) : free ? 0 : Number.NaN;

function costOfLine(ingredient: Ingredient, prices: PriceList): number | undefined {
  const { food, node, weighed } = ingredient;
  if (food === undefined) return undefined;
  // Water from the tap costs a kitchen nothing worth a line.
  if (food.class === 'water' && !prices.has(food.id)) return 0;
  const price = prices.get(food.id);
  if (price?.perPiece !== undefined && node.amount?.kind === 'measured' && node.amount.unit === undefined)
    return price.perPiece * middle(node.amount.quantity);
  if (price?.perG === undefined) return undefined;
  const grams = boughtG(ingredient) ?? (weighed.known ? likelyGrams(weighed) : undefined);
  return grams === undefined ? undefined : grams * price.perG;
}

/** The weight as bought, where the line says it: what is trimmed away was paid for. */
function boughtG({ node }: Ingredient): number | undefined {
  const bought = node.bought?.kind === 'measured' ? node.bought.quantity : undefined;
  if (bought?.unit === undefined || dimensionOf(bought.unit) !== 'mass') return undefined;
  return middle(bought) * (baseOf(bought.unit, 'us') ?? Number.NaN);
}
