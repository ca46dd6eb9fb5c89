/**
 * Knows the cans that the American trade numbers, one row a size, and how much one holds of what is put up in it.
 * Refuses to know foods: the range is that of all of them.
 */
import type { Range } from './quantity.ts';

/** Net weight in oz, liquid and all. */
export interface CanSize extends Range {
  /** As the trade writes it: `2½`. */
  readonly name: string;
}

/** Of all rows. */
export const CAN_SOURCE = 'USDA Food Buying Guide for Child Nutrition Programs, common can and jar sizes (from memory)';

/** The name with a point for its half, by which it is found; then the least and the most that it holds. */
const ROWS: readonly (readonly [string, number, number])[] = [
  ['1', 10.5, 12],
  ['300', 14, 16],
  ['303', 16, 17],
  ['2', 18, 20.5],
  ['2.5', 26, 30],
  ['3', 46, 51],
  ['5', 46, 58],
  ['10', 96, 117],
  ['12', 128, 140],
];

const BY_NUMBER: ReadonlyMap<string, CanSize> = new Map(
  ROWS.map(([number, low, high]) => [number, { name: number.replace('.5', '½'), low, high }]),
);

/** The size that is written `2½`, `2 1/2`, `2-1/2`, `2.5`; undefined for a number that no can has. */
export const canSize = (number: string): CanSize | undefined =>
  BY_NUMBER.get(number.trim().replace(/[\s-]*(?:½|1[/⁄]2)$/, '.5'));

/** Sizes that a line has without `no.` before them, as nobody counts so many: `1 303 can`. */
export const isBareSize = (number: string): boolean => number === '300' || number === '303';
