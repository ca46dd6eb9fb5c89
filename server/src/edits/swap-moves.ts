/**
 * Knows what a swap moves in a part all the same: water, fat, sugar, salt and egg, before and after.
 */
import { compose } from '../food/composition.ts';
import type { Food } from '../food/food.ts';
import { kitchenGrams } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Ingredient, Part } from '../recipe/model.ts';
import { type Amount, type Change, COMPONENT_OF, gramsOf } from './swap-plan.ts';

/** Grams of a component in the whole part. */
export interface Move {
  readonly component: 'water' | 'fat' | 'sugar' | 'salt' | 'egg';
  readonly beforeG: number;
  readonly afterG: number;
}

export function movesOf(
  part: Part,
  ingredient: Ingredient,
  amounts: readonly Amount[],
  changes: readonly Change[],
): readonly Move[] {
  const lines = part.head.ingredients.filter((i) => i.weighed.known && !i.free);
  const before = lines.map((i) => ({ food: i.food, grams: gramsOf(i) }));
  const after = lines.flatMap((i): { readonly food: Food | undefined; readonly grams: number }[] => {
    if (i === ingredient) return amounts.map(({ food, grams }) => ({ food, grams }));
    const deltaG = changes.find((c) => c.line === i)?.deltaG ?? 0;
    return [{ food: i.food, grams: gramsOf(i) + deltaG }];
  });
  for (const { line, food, deltaG } of changes)
    if (line === undefined) after.push({ food, grams: kitchenGrams(deltaG) });
  const [was, is] = [compose(before), compose(after)];
  const moves = (Object.keys(COMPONENT_OF) as (keyof typeof COMPONENT_OF)[]).flatMap((component): Move[] => {
    const [a, b] = [was.totals[COMPONENT_OF[component]], is.totals[COMPONENT_OF[component]]];
    return a.known && b.known ? [{ component, beforeG: a.grams, afterG: b.grams }] : [];
  });
  const eggs = (list: typeof after) =>
    list.reduce((sum, i) => sum + (i.food?.class === 'egg' ? i.grams * freshOf(i.food) : 0), 0);
  return [...moves, { component: 'egg', beforeG: eggs(before), afterG: eggs(after) }];
}

/** A gram of dried egg is that of a fresh one with as much that is not water. */
function freshOf({ id, per100 }: Food): number {
  return id.startsWith('dried') ? (100 - (per100.water ?? 0)) / (100 - EGG_WATER) : 1;
}

/** USDA SR26, NDB 01123. */
const EGG_WATER = 76.15;

/** What a swap moves, a line a component: `water 120 → 123 g`; what moves by less than a hundredth is left out. */
export function movesText(moves: readonly Move[]): string[] {
  return moves
    .filter(({ beforeG, afterG }) => Math.abs(afterG - beforeG) > Math.max(0.05, 0.01 * beforeG))
    .map(({ component, beforeG, afterG }) => `${component} ${trimmed(beforeG, 1)} → ${trimmed(afterG, 1)} g`);
}
