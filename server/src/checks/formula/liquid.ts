/**
 * Knows how the water of a dough is brought into its band: which liquid gives or takes, and by how much.
 */
import { setGrams } from '../../edits/set-amount.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import { freeWater, MEASURES } from '../../recipe/measures.ts';
import type { Fix, Scene } from '../check.ts';
import { type BandValues, middleOf } from './band.ts';

/** The ingredient that brings most added water and can give some up: water first, then milk, juice and the like. */
export function mainLiquid(contents: readonly Ingredient[]): Ingredient | undefined {
  const weighed = contents.filter(
    (i) => i.weighed.known && i.food !== undefined && LIQUIDS.has(i.food.class) && i.percent === undefined,
  );
  const water = weighed.filter((i) => i.food?.class === 'water');
  return largest(water.length > 0 ? water : weighed);
}

const LIQUIDS: ReadonlySet<string> = new Set([
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

function largest(ingredients: readonly Ingredient[]): Ingredient | undefined {
  return ingredients.reduce<Ingredient | undefined>(
    (best, i) => (best === undefined || gramsOf(i) > gramsOf(best) ? i : best),
    undefined,
  );
}

const gramsOf = (i: Ingredient): number => (i.weighed.known ? middleOf(i.weighed.grams) : 0);

/** Gives the main liquid the weight that brings the water to the given ratio of flour. */
export function fixLiquid(values: BandValues, scene: Scene, target: number): Fix[] {
  const part = scene.recipe.parts[values.part];
  const liquid = part === undefined ? undefined : mainLiquid(part.head.ingredients);
  if (part === undefined || liquid?.food === undefined) return [];
  const share = freeWater(liquid.food);
  const flour = flourG(values);
  if (share === undefined || share <= 0 || flour <= 0) return [];
  const now = gramsOf(liquid);
  const change = ((middleOf(values.value) - target) * flour) / share;
  // Whole grams, on the safe side of the band's edge.
  const grams = change > 0 ? Math.floor(now - change) : Math.ceil(now - change);
  if (grams <= 0) return [];
  const set = setGrams(scene.recipe, values.part, liquid, grams);
  if (set === undefined) return [];
  return [
    {
      title: `Write ${set.written} ${liquid.name}, ${Math.abs(Math.round(now - grams))} g ${change > 0 ? 'less' : 'more'}`,
      effect: 'amounts',
      edits: set.edits,
    },
  ];
}

/** Flour in the contents, in grams. */
function flourG(values: BandValues): number {
  return values.contents.filter((i) => i.food?.roles.includes('baking flour')).reduce((sum, i) => sum + gramsOf(i), 0);
}

/** What each ingredient brings, largest first, in a cook's words: `the milk 131 g`. */
export function waterBrought(contents: readonly Ingredient[]): string {
  const rows = contents.flatMap((i) => {
    const share = i.food === undefined ? undefined : MEASURES.hydration.share(i.food);
    return share === undefined || share === 0 || !i.weighed.known
      ? []
      : [{ name: i.name, grams: share * middleOf(i.weighed.grams) }];
  });
  rows.sort((a, b) => b.grams - a.grams);
  return rows
    .filter((r) => r.grams >= 0.5)
    .slice(0, 3)
    .map((r) => `${r.name} ${Math.round(r.grams)} g`)
    .join(', ');
}
