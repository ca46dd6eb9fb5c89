/**
 * Knows how much room foods take without a bubble of air between them, from their composition.
 * Refuses to know what they are put in.
 */
import type { Food } from '../../food/food.ts';
import type { Range } from '../../measure/quantity.ts';

/** Grams of a food, least and most. */
export interface Weight extends Range {
  readonly food: Food | undefined;
}

/** kg/m³ at 20 °C (Choi and Okos 1986). */
export const DENSITIES = [
  ['water', 998],
  ['protein', 1320],
  ['fat', 917],
  ['carbohydrate', 1593],
  ['ash', 2418],
] as const;
/** Of the whole, what may be of unknown composition; it is taken for water. */
const UNKNOWN = 0.1;

export function volumeMl(weighed: readonly Weight[], side: 'low' | 'high'): number | undefined {
  let massG = 0;
  for (const weight of weighed) massG += weight[side];
  let grams = 0;
  let ml = 0;
  for (const [component, density] of DENSITIES) {
    let total = 0;
    let lacking = 0;
    for (const weight of weighed) {
      const share = weight.food?.per100[component];
      if (share === undefined) lacking += weight[side];
      else total += (share * weight[side]) / 100;
    }
    if (lacking > massG * UNKNOWN && component !== 'ash') return undefined;
    grams += total;
    ml += (total * 1000) / density;
  }
  return ml + Math.max(0, massG - grams);
}
