/**
 * Knows how many per cent of its minerals and salt a food keeps when it is cooked, from `data/label/retention.tsv`, and of its alcohol by the minutes of heat.
 * Refuses to know recipes.
 */
import retentionText from '../../data/label/retention.tsv';
import { once } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { bookIdOf, type Food } from './food.ts';

export const WAYS = ['raw', 'roasted', 'fried', 'drained', 'pot'] as const;
/** How a food is heated: `pot`, with all that it is cooked in, `drained`, without. */
export type Way = (typeof WAYS)[number];

/** Shares from 0 to 1. */
export interface Kept {
  readonly calcium: number;
  readonly iron: number;
  readonly potassium: number;
  readonly sodium: number;
}
export const ALL_KEPT: Kept = { calcium: 1, iron: 1, potassium: 1, sodium: 1 };

const ROWS = once(
  () =>
    new Map(
      rowsIn(retentionText).flatMap(([what, way, ...percents]) => {
        const [calcium = 1, iron = 1, potassium = 1, sodium = 1] = percents
          .slice(0, 4)
          .map((each) => Number(each) / 100);
        return wordsIn(what).map((word): [string, Kept] => [`${word} ${way}`, { calcium, iron, potassium, sodium }]);
      }),
    ),
);

export function keptIn(food: Food, way: Way): Kept {
  return ROWS().get(`${bookIdOf(food)} ${way}`) ?? ROWS().get(`${food.class} ${way}`) ?? ALL_KEPT;
}

/** Stirred in and baked or simmered for so many minutes, so much is left (USDA Table of Nutrient Retention Factors, release 6, 2007). */
const ALCOHOL: readonly (readonly [minutes: number, left: number])[] = [
  [150, 0.05],
  [120, 0.1],
  [90, 0.2],
  [60, 0.25],
  [30, 0.35],
  [15, 0.4],
  [0, 0.85],
];

/** How much of its alcohol is left after so many minutes of heat. */
export const alcoholLeft = (minutes: number): number => ALCOHOL.find(([from]) => minutes >= from)?.[1] ?? 1;
