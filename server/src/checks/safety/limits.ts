/**
 * Knows the least safe temperature for what a food is, by rule set.
 */
import data from '../../../data/safe-temperatures.json' with { type: 'json' };
import type { Food } from '../../food/food.ts';
import type { FoodSafetyRules } from '../house.ts';

export interface Limit {
  readonly group: string;
  readonly celsius: number;
  readonly fahrenheit: number;
  readonly time: string;
  /** `FDA Food Code 2022, 3-401.11(A)(3)` */
  readonly source: string;
  /** [°C, minutes it must hold], ascending. */
  readonly holds: readonly (readonly [number, number])[];
}

type Group = 'poultry' | 'ground meat' | 'meat' | 'fish' | 'egg';

const GROUPS: Partial<Record<Food['class'], Group>> = {
  poultry: 'poultry',
  'ground poultry': 'poultry',
  'ground meat': 'ground meat',
  meat: 'meat',
  fish: 'fish',
  shellfish: 'fish',
  egg: 'egg',
};

/** The limit for a food that is a risk raw; undefined for any other. */
export function limitFor(food: Food, rules: FoodSafetyRules): Limit | undefined {
  const group = GROUPS[food.class];
  if (group === undefined || !food.roles.includes('raw risk')) return undefined;
  const { title, limits } = data.rules[rules];
  const limit = limits[group];
  return { ...limit, group, source: `${title}, ${limit.section}`, holds: limit.holds as unknown as Limit['holds'] };
}

/** How long, in minutes, the food must be held at a temperature; undefined when no published time covers it. */
export function holdMin(limit: Limit, celsius: number): number | undefined {
  if (celsius >= limit.celsius - 0.5) return 0;
  return limit.holds.findLast(([at]) => at <= celsius)?.[1];
}
