/**
 * Knows the least safe temperature for what a food is, and how long, how warm and how cold it may be kept, by rule set.
 * Refuses to know recipes.
 */

import holding from '../../../data/holding-limits.json' with { type: 'json' };
import data from '../../../data/safe-temperatures.json' with { type: 'json' };
import type { Food } from '../../food/food.ts';
import { trimmed } from '../../measure/number-text.ts';
import { onceByText } from '../../measure/once.ts';
import { bothDegrees } from '../../recipe/journey/degrees.ts';
import type { FoodSafetyRules } from '../house.ts';

export type Hold = readonly [celsius: number, seconds: number, fahrenheit?: number];

export interface Limit {
  readonly group: Group;
  readonly celsius: number;
  readonly fahrenheit: number;
  readonly time: string;
  /** `FDA Food Code 2022, 3-401.11(A)(3)` */
  readonly source: string;
  /** [°C, seconds it must hold, °F where the source prints another than the °C rounded], ascending. */
  readonly holds: readonly Hold[];
  /** Where the longer times come from, when not from the same place. */
  readonly holdsSource?: string;
}

export type Group = 'poultry' | 'ground meat' | 'meat' | 'fish' | 'egg' | 'pierced' | 'game';

/** Ends every message of the family. */
export const CAUTION = 'Local rules may ask for more.';

export const HOME_RULES = 'usda-fsis-home' satisfies FoodSafetyRules;
const TRADE_RULES = 'us-food-code-2022' satisfies FoodSafetyRules;

const GROUPS: Partial<Record<Food['class'], Group>> = {
  poultry: 'poultry',
  'ground poultry': 'poultry',
  'ground meat': 'ground meat',
  meat: 'meat',
  fish: 'fish',
  shellfish: 'fish',
  egg: 'egg',
};

/** What a food that is a risk raw counts as; undefined for any other. */
export function groupOf(food: Food): Group | undefined {
  return food.roles.includes('raw risk') ? GROUPS[food.class] : undefined;
}

/** The same object each time. */
export const limitOf = (group: Group, rules: FoodSafetyRules): Limit => LIMITS[rules](group);

const limitsOf = (rules: FoodSafetyRules): ((group: Group) => Limit) =>
  onceByText(
    (group: Group) => {
      const { title, limits } = data.rules[rules];
      const {
        section,
        holds,
        ...rest
      }: Omit<Limit, 'group' | 'source' | 'holds'> & { section: string; holds: unknown } = limits[group];
      return { ...rest, group, source: `${title}, ${section}`, holds: holds as Limit['holds'] };
    },
    { texts: 10 },
  );
const LIMITS: Readonly<Record<FoodSafetyRules, (group: Group) => Limit>> = {
  [HOME_RULES]: limitsOf(HOME_RULES),
  [TRADE_RULES]: limitsOf(TRADE_RULES),
};

/** The figure of the other rule set, as a sentence: the home rule beside the Food Code's, or the other way round. */
export function besideText(group: Group, rules: FoodSafetyRules, scale: 'C' | 'F' = 'C'): string {
  const home = rules !== HOME_RULES;
  const limit = limitOf(group, home ? HOME_RULES : TRADE_RULES);
  const figure = `${bothDegrees(limit, scale)}${limit.time === '' ? '' : `, ${limit.time}`}`;
  return home ? `At home: ${figure} (USDA FSIS).` : `In the trade: ${figure} (FDA Food Code 2022).`;
}

/**
 * How long, in seconds, the food must be held at a temperature; undefined when no published time covers it. What is written in °F is held
 * against the °F of the rows: 150 °F is 65.6 °C, and 145 °F the row that is printed as 63 °C.
 */
export function holdS(limit: Limit, celsius: number, fahrenheit?: number): number | undefined {
  if (celsius >= limit.celsius - THERMOMETER_C) return 0;
  const row = limit.holds.findLast((hold) =>
    fahrenheit === undefined ? hold[0] <= celsius : fahrenheitOf(hold) <= fahrenheit,
  );
  return row?.[1];
}

export const fahrenheitOf = ([celsius, , fahrenheit]: Hold): number => fahrenheit ?? Math.round(celsius * 1.8 + 32);

/** Rounding between °C and °F: 145 °F is 62.8 °C. */
export const THERMOMETER_C = 0.5;

export interface HoldingLimits {
  readonly title: string;
  readonly cooling: {
    readonly section: string;
    readonly fromC: number;
    readonly middleC: number;
    readonly middleMin: number;
    readonly endC: number;
    readonly endMin: number;
  };
  readonly hot: {
    readonly section: string;
    readonly celsius: number;
    readonly fahrenheit: number;
    readonly roastC: number;
  };
  readonly cold: { readonly section: string; readonly celsius: number; readonly fahrenheit: number };
  readonly leftOut: { readonly section: string; readonly min: number };
  /** Ready to eat, in the cold. */
  readonly kept: { readonly section: string; readonly min: number };
  /** Cooked, in the cold, by advice that is no rule. */
  readonly leftovers?: { readonly section: string; readonly min: number };
  readonly reheating: HeatRule;
  readonly microwave: HeatRule;
  /** [°C at most, minutes at least] */
  readonly freezing: { readonly section: string; readonly rows: readonly (readonly number[])[] };
  readonly raw: { readonly section: string };
  readonly molluscs: { readonly section: string };
}

export interface HeatRule {
  readonly section: string;
  readonly celsius: number;
  readonly fahrenheit: number;
  readonly time: string;
}

export const holdingLimits = (rules: FoodSafetyRules): HoldingLimits => holding.rules[rules];

/** Eggs in their shells in a water bath: [°C, seconds]. */
export const EGGS_IN_SHELL = data.eggsInShell;

export const ROASTING_OVEN = holding.roastingOven;

/** From here on nobody counts the hours: three days. */
const LONG = 3 * 1440;

/** `55 s`, `13 min`, `1 h 52 min`, `14 d`: never shorter than what it stands for. */
export function timeText(minutes: number): string {
  const seconds = Math.ceil(minutes * 60 - 0.001);
  if (minutes < 2 || (minutes < 3 && seconds % 60 !== 0)) return `${seconds} s`;
  if (minutes < 90) return `${trimmed(Math.ceil(minutes * 10 - 0.001) / 10, 1)} min`;
  if (minutes > LONG) return `${Math.ceil(minutes / 1440)} d`;
  const h = Math.floor(Math.ceil(minutes) / 60);
  const min = Math.ceil(minutes) - h * 60;
  return min === 0 ? `${h} h` : `${h} h ${min} min`;
}
