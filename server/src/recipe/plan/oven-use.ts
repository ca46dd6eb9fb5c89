/** Knows how long an oven takes from one heat to another. Refuses to know what is baked. */
import type { OvenNeed } from './task.ts';

/** Heats so near are one, K: no dial is truer (judgement). */
const SAME_K = 5;
/** Minutes; a stone takes 25 to 45 (common practice, no source). */
export const PREHEAT_MIN = 15;
const COOLER_MIN = 5;
const HOTTER_MIN = 15;
/** An oven that stands empty for longer is turned off (judgement). */
export const LEFT_ON_MIN = 45;

/** Minutes from the end of one to the begin of the next. */
export function minutesBetween({ last }: OvenNeed, { first }: OvenNeed): number {
  if (Math.abs(last - first) <= SAME_K) return 0;
  return first < last ? COOLER_MIN : HOTTER_MIN;
}

/** Whether both can be in there at a time, where they fit. */
export const isSameHeat = (a: OvenNeed, b: OvenNeed): boolean => {
  const all = [a.first, a.last, b.first, b.last];
  return Math.max(...all) - Math.min(...all) <= SAME_K;
};
