/**
 * Knows how the compositions of foods add up to that of a mix, and how much of the mix is unaccounted for.
 * Refuses to know what happens to it in the oven.
 */
import type { Composition, Food } from './food.ts';

/** A total in grams; where some food's share is not known, how many grams of food that is. */
export interface Total {
  /** Of the foods that say; a lower bound where `known` is false. */
  readonly grams: number;
  readonly known: boolean;
  /** Grams of food in the mix of which this component is not known. */
  readonly lacking: number;
}

export const COMPONENTS = [
  'water',
  'protein',
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'starch',
  'fibre',
  'ash',
  'alcohol',
  'acid',
  'salt',
] as const;
export type Component = (typeof COMPONENTS)[number];

export interface MixComposition {
  readonly massG: number;
  readonly totals: Readonly<Record<Component, Total>>;
  /** By the Atwater factors 4, 9, 4, 7 kcal/g of protein, fat, carbohydrate and alcohol; undefined where one of them is not known. */
  readonly energyKcal: number | undefined;
}

/** Salt is sodium × 2.5 (Regulation (EU) 1169/2011, annex I). */
const SALT_PER_SODIUM = 2.5;

/** What a mix of foods holds in all; an unknown food (`undefined`) lacks everything. */
export function compose(parts: readonly { readonly food: Food | undefined; readonly grams: number }[]): MixComposition {
  const totals = Object.fromEntries(COMPONENTS.map((component) => [component, totalOf(component, parts)])) as Record<
    Component,
    Total
  >;
  const { protein, fat, carbohydrate, alcohol } = totals;
  const known = protein.known && fat.known && carbohydrate.known && alcohol.known;
  return {
    massG: parts.reduce((sum, { grams }) => sum + grams, 0),
    totals,
    energyKcal: known ? 4 * protein.grams + 9 * fat.grams + 4 * carbohydrate.grams + 7 * alcohol.grams : undefined,
  };
}

/** Grams of the component in 100 g of the food. */
export function shareOf(per100: Composition, component: Component): number | undefined {
  if (component !== 'salt') return per100[component];
  return per100.sodium === undefined ? undefined : (per100.sodium * SALT_PER_SODIUM) / 1000;
}

function totalOf(component: Component, parts: Parameters<typeof compose>[0]): Total {
  let total = 0;
  let lacking = 0;
  for (const { food, grams } of parts) {
    const share = food === undefined ? undefined : shareOf(food.per100, component);
    if (share === undefined) lacking += grams;
    else total += (share * grams) / 100;
  }
  return { grams: total, known: lacking === 0, lacking };
}
