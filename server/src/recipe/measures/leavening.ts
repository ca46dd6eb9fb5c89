/**
 * Knows what raises a dough or a batter: yeast in its three forms, baking powder, soda, and the acid that soda needs.
 * Refuses to know how long it is given.
 */
import data from '../../../data/leavening.json' with { type: 'json' };
import { bookIdOf, type Food } from '../../food/food.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Kind } from './kind.ts';
import { part, type Share } from './shares.ts';

const rangeOf = (pair: readonly number[]): Range => ({ low: pair[0] ?? 0, high: pair[1] ?? pair[0] ?? 0 });

/** By whose ends a part of no kind is judged that is made of flour. */
export const ANY_BAKE = data.anyBake as unknown as Kind;

/** Yeast as instant: fresh counts 0.33 to 0.4, active dry 0.75 to 0.83 of its weight (yeast conversion tables: fresh 1, active dry 0.4, instant 0.33). */
export function instantYeast(food: Food): Share {
  if (food.class !== 'yeast') return 0;
  if ((food.per100.water ?? 0) > 50) return { low: 0.33, high: 0.4 };
  return /active/.test(food.name) ? { low: 0.75, high: 0.83 } : 1;
}

/** Sodium of pure sodium bicarbonate is 27.4 %. */
export const isSoda = (food: Food): boolean => food.class === 'leavening' && (food.per100.sodium ?? 0) > 25_000;

/** An acid salt, as cream of tartar: no gas of its own. */
const isAcidSalt = (food: Food): boolean => food.class === 'leavening' && food.roles.includes('acid');

/** Baking powder, alone or in self-raising flour. */
export function bakingPowder(food: Food): Share {
  if (food.class === 'flour') return food.roles.includes('leavening') ? rangeOf(data.powderPerSelfRaisingFlour) : 0;
  return food.class === 'leavening' && !isSoda(food) && !isAcidSalt(food) && (food.per100.sodium ?? 0) > 0 ? 1 : 0;
}

export const bakingSoda = (food: Food): number => (isSoda(food) ? 1 : 0);

/** All that gives gas without yeast, as baking powder. */
export function lift(food: Food): Share {
  if (isSoda(food)) return rangeOf(data.sodaAsPowder);
  if (food.class === 'leavening' && !isAcidSalt(food) && food.per100.sodium === 0) return rangeOf(data.ammoniaAsPowder);
  return bakingPowder(food);
}

/** Grams of baking soda that a gram of the food neutralises. */
export function neutralises(food: Food): Range {
  const own = (data.ids as Readonly<Record<string, readonly number[]>>)[bookIdOf(food)];
  if (own !== undefined) return rangeOf(own);
  const acid = part(food, 'acid');
  if (acid !== undefined && acid > 0) {
    const by = acid * data.acids[acidOf(food)];
    return { low: by * 0.7, high: by * 1.3 };
  }
  if (acid === undefined && food.roles.includes('acid')) return rangeOf(data.withAcidRole);
  const ofClass = (data.classes as Readonly<Record<string, readonly number[]>>)[food.class];
  return ofClass === undefined ? { low: 0, high: 0 } : rangeOf(ofClass);
}

function acidOf(food: Food): keyof typeof data.acids {
  if (food.class === 'vinegar') return 'acetic';
  if (food.class === 'alcohol') return 'tartaric';
  return food.class === 'milk' || food.class === 'cream' || food.class === 'dairy' || food.class === 'cheese'
    ? 'lactic'
    : 'citric';
}
