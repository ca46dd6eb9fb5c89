/**
 * Knows what a list of foods is in grams: by family, and how much water, salt, acid, sugar, fat and alcohol it holds.
 * Refuses to know what is done with it, and which of the figures matter. Foods without a weight are in no sum, and are counted.
 */
import { likelyGrams } from '../../food/weigh.ts';
import { keptOn } from '../../notation/kept.ts';
import { FAMILIES, type Family, familiesIn, familiesOf } from '../list/families.ts';
import { foodOf } from '../list/stand-in.ts';
import type { Ingredient } from '../model.ts';
import { saltIn } from './shares.ts';

/** An ingredient with the share of it, 0 to 1, that lies in the mixture. */
export interface Portioned {
  readonly ingredient: Ingredient;
  readonly share: number;
}

/** Grams. Of a component that a food does not tell, water counts as all of it, the others as nothing. */
export interface Mixture {
  readonly massG: number;
  readonly waterG: number;
  readonly saltG: number;
  /** Acetic and citric acid of vinegar and of lemon and lime juice. */
  readonly acidG: number;
  readonly sugarG: number;
  readonly fatG: number;
  readonly alcoholG: number;
  readonly of: Readonly<Record<Family, number>>;
  /** Families that something in it is of, weighed or not. */
  readonly has: ReadonlySet<Family>;
  /** Foods without a weight, but for what is added to taste. */
  readonly unweighed: number;
}

/** Grams of acid in 100 g of vinegar or lemon juice, where the book does not say. */
const ACID = 5;
/** Of a lemon or lime that is squeezed, its juice (USDA SR26, NDB 09152: 47 g of one). */
const JUICE = 0.4;

const NOTHING_OF = Object.fromEntries(FAMILIES.map((family) => [family, 0])) as Record<Family, number>;

export function mixtureOf(foods: readonly Portioned[]): Mixture {
  const of = { ...NOTHING_OF };
  let [massG, waterG, saltG, acidG, sugarG, fatG, alcoholG, unweighed] = [0, 0, 0, 0, 0, 0, 0, 0];
  const has = new Set<Family>();
  for (const { ingredient, share } of foods) {
    const whole = broughtBy(ingredient);
    for (const family of whole.has) has.add(family);
    if (!ingredient.weighed.known) {
      if (!ingredient.free) unweighed++;
      continue;
    }
    const grams = whole.massG * share;
    massG += grams;
    waterG += whole.waterG * share;
    saltG += whole.saltG * share;
    acidG += whole.acidG * share;
    fatG += whole.fatG * share;
    sugarG += whole.sugarG * share;
    alcoholG += whole.alcoholG * share;
    for (const family of whole.of) of[family] += grams;
  }
  return { massG, waterG, saltG, acidG, sugarG, fatG, alcoholG, of, has, unweighed };
}

/** What an ingredient brings, in all of what is listed. */
interface Brought extends Omit<Mixture, 'of' | 'unweighed'> {
  readonly of: ReadonlySet<Family>;
}

const BROUGHT = keptOn<Ingredient, Brought>();

function broughtBy(ingredient: Ingredient): Brought {
  let brought = BROUGHT.get(ingredient);
  if (brought === undefined) {
    const grams = ingredient.weighed.known ? likelyGrams(ingredient.weighed) : 0;
    const food = foodOf(ingredient);
    brought = {
      massG: grams,
      waterG: (grams * (food?.per100.water ?? 100)) / 100,
      saltG: grams * ((food && saltIn(food)) ?? 0),
      acidG: addedAcidG(ingredient, grams),
      fatG: (grams * (food?.per100.fat ?? 0)) / 100,
      sugarG: (grams * (food?.per100.sugars ?? 0)) / 100,
      alcoholG: (grams * (food?.per100.alcohol ?? 0)) / 100,
      of: familiesOf(food),
      has: familiesIn(ingredient),
    };
    BROUGHT.set(ingredient, brought);
  }
  return brought;
}

/** Grams of acid that so many grams of vinegar, citric acid, lemon or lime add. */
export function addedAcidG({ food, name, node }: Ingredient, grams: number): number {
  if (food === undefined) return 0;
  const per100 = food.per100.acid;
  if (food.class === 'vinegar') return (grams * (per100 ?? ACID)) / 100;
  if (food.name === 'lemon' || food.name === 'lime')
    return /juic/i.test(`${name} ${node.preparation?.text ?? ''}`) ? (grams * JUICE * ACID) / 100 : 0;
  if (!food.roles.includes('acid')) return 0;
  if (food.class === 'juice') return (grams * (per100 ?? ACID)) / 100;
  return food.class === 'other' ? (grams * (per100 ?? 100)) / 100 : 0;
}
