/**
 * Knows which liquid of a dough gives or takes, and where its water comes from.
 */
import type { Food, FoodClass } from '../../food/food.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { flourShare, freeWater } from '../../recipe/measures/shares.ts';
import { likelyOf } from '../../recipe/measures/worked-ratio.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { type BandValues, isHigh, mostOf } from './band.ts';

/** The ingredient that brings most added water and can give some up: water first, then milk, juice and the like. */
export function mainLiquid(contents: readonly Ingredient[]): Ingredient | undefined {
  const liquids = contents.filter((i) => LIQUIDS.has(likelyFood(i)?.class ?? 'other'));
  return (
    mostOf(
      liquids.filter((i) => likelyFood(i)?.class === 'water'),
      gramsOf,
    ) ?? mostOf(liquids, gramsOf)
  );
}

const LIQUIDS: ReadonlySet<FoodClass | undefined> = new Set<FoodClass | undefined>([
  'water',
  'milk',
  'cream',
  'juice',
  'drink',
  'dairy',
  'stock',
  'alcohol',
  'vinegar',
]);

/** The food, the likeliest of several. */
const likelyFood = ({ food, match }: Ingredient): Food | undefined =>
  food ?? (match.kind === 'ambiguous' ? match.foods[0] : undefined);

interface Brought {
  readonly name: string;
  readonly grams: number;
}

/** Water each ingredient brings to a dough, largest first. */
function brought(contents: readonly Ingredient[]): Brought[] {
  return contents
    .map((i) => ({ name: i.name, grams: gramsOf(i) * bringing(i, freeWater) }))
    .filter((b) => b.grams >= 0.5)
    .sort((a, b) => b.grams - a.grams);
}

/** What brings most, in a cook's words: `whole milk 131 g, water 50 g`. */
export const waterBrought = (contents: readonly Ingredient[]): string => sayBrought(brought(contents).slice(0, 3));

/** The herbs, vegetables and fruit that bring a good part of a dough's water; undefined where they do not. */
export function gardenWater(
  contents: readonly Ingredient[],
): { readonly words: string; readonly grams: number } | undefined {
  const green = brought(contents.filter((i) => i.food?.roles.includes('holds its water')));
  const grams = green.reduce((sum, b) => sum + b.grams, 0);
  const all = brought(contents).reduce((sum, b) => sum + b.grams, 0);
  return grams < GARDEN_SHARE * all ? undefined : { words: sayBrought(green.slice(0, 3)), grams };
}

/** Water that is beyond the usual band, or short of it, in grams. */
export function waterOutsideG(values: BandValues): number {
  const { measure, verdict, contents } = values;
  const edge = measure.usual[isHigh(verdict) ? 1 : 0] ?? 0;
  const flour = contents.reduce((sum, i) => sum + gramsOf(i) * bringing(i, flourShare), 0);
  return Math.abs(likelyOf(values) - edge) * flour;
}

/** Below this share of the water they are not worth naming. */
const GARDEN_SHARE = 0.15;

const sayBrought = (rows: readonly Brought[]): string =>
  rows.map((r) => `${r.name} ${Math.round(r.grams)} g`).join(', ');
