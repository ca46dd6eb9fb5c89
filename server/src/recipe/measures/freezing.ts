/**
 * Knows at which temperature a mix begins to freeze: from its sugars, milk salts, alcohol and salt in its water.
 * Refuses to know how it is churned, or how cold it is kept.
 */
import data from '../../../data/freezing.json' with { type: 'json' };
import type { Food } from '../../food/food.ts';
import type { Range } from '../../measure/quantity.ts';
import { milkSolids, part, type Share } from './shares.ts';

const { disaccharide, monosaccharide, lactosePerMilkSolids } = data.sucroseEquivalents;
const REST: Range = {
  low: data.sucroseEquivalents.syrupRest[0] ?? 0,
  high: data.sucroseEquivalents.syrupRest[1] ?? 1,
};

/** Sucrose that lowers the freezing point as much as what the food holds; a range where its sugars are not told apart. */
export function sucroseEquivalent(food: Food): Share {
  const solids = milkSolids(food);
  const { sugars, sucrose, carbohydrate, fibre } = food.per100;
  if (solids === undefined) return undefined;
  if (solids > 0) return solids * lactosePerMilkSolids * disaccharide + ((sucrose ?? 0) / 100) * disaccharide;
  if (sugars === undefined) return food.class === 'sugar' || food.class === 'syrup' ? undefined : 0;
  const { lactose = 0, glucose = 0, fructose = 0 } = food.per100;
  const double = (sucrose ?? 0) + lactose;
  const single = glucose + fructose;
  const untold = Math.max(0, sugars - double - single);
  const longer =
    food.class === 'syrup' || food.class === 'sugar'
      ? Math.max(0, (carbohydrate ?? sugars) - sugars - (fibre ?? 0))
      : 0;
  const sure = (double * disaccharide + single * monosaccharide) / 100;
  return {
    low: sure + (untold * disaccharide + longer * REST.low) / 100,
    high: sure + (untold * monosaccharide + longer * REST.high) / 100,
  };
}

/** °C, times grams of water for a gram of the food, by which its alcohol or its salt lowers the freezing point. */
export function otherDepression(food: Food): number {
  if (food.class === 'salt') return data.celsiusPerGramOfWater.salt;
  return (part(food, 'alcohol') ?? 0) * data.celsiusPerGramOfWater.alcohol;
}

/** Lactose as ice-cream makers reckon it. */
export function lactoseShare(food: Food): number | undefined {
  const solids = milkSolids(food);
  if (solids === undefined) return undefined;
  return solids > 0 ? solids * lactosePerMilkSolids : (part(food, 'lactose') ?? 0);
}

const ROWS = data.depressionBySucrose.rows as unknown as readonly (readonly [number, number])[];

/** °C below 0 at which water with so much sucrose, per gram of water, begins to freeze; undefined beyond the table. */
export function depressionC(sucrosePerWater: number): number | undefined {
  const per100 = sucrosePerWater * 100;
  const above = ROWS.findIndex(([sucrose]) => sucrose >= per100);
  const [high, highC] = ROWS[above] ?? [];
  if (high === undefined || highC === undefined) return undefined;
  const [low, lowC] = ROWS[above - 1] ?? [high, highC];
  return high === low ? highC : lowC + ((highC - lowC) * (per100 - low)) / (high - low);
}

/** °C below 0 that the salts of milk add: solids not fat × 2.37 / water (Goff, University of Guelph). */
export const saltDepressionC = (milkSolidsPerWater: number): number => milkSolidsPerWater * data.milkSaltsPerSolids;

/** The freezing point of a mix: `sugars` and `solids` per gram of water, `otherC` what alcohol and salt add. Beyond the table its last slope goes on. */
export function freezingPointC(sugars: Range, solids: Range, otherC: Range = { low: 0, high: 0 }): Range {
  const at = (ratio: number) => depressionC(ratio) ?? beyond(ratio);
  return {
    low: -(at(sugars.high) + saltDepressionC(solids.high) + otherC.high),
    high: -(at(sugars.low) + saltDepressionC(solids.low) + otherC.low),
  };
}

function beyond(ratio: number): number {
  const [last = [0, 0], before = [0, 0]] = [ROWS.at(-1), ROWS.at(-2)];
  return last[1] + ((ratio * 100 - last[0]) * (last[1] - before[1])) / (last[0] - before[0]);
}
