/**
 * Knows what temperatures a food, an oven, a place or a medium can have.
 * Refuses to know of what a figure is.
 */
import type { Range } from '../measure/quantity.ts';
import { celsiusOf } from '../notation/celsius.ts';
import type { TemperatureNode } from '../notation/tree.ts';
import type { TemperatureSaid } from './event.ts';
import type { Kind } from './points.ts';
import type { PlaceRow, VerbRow } from './rows.ts';

/** What is possible, °C (judgement): beyond it a figure is in the other scale. */
const POSSIBLE: Readonly<Record<Kind, Range>> = {
  food: { low: -40, high: 200 },
  oven: { low: 65, high: 320 },
  around: { low: -40, high: 120 },
  medium: { low: 0, high: 260 },
};
/** Of a reading in the food as it cooks. */
const INSIDE: Range = { low: 36, high: 110 };
const COLD: Range = { low: -4, high: 20 };
const FROZEN: Range = { low: -80, high: 2 };
const RISING: Range = { low: 0, high: 55 };
/** In fires and stone ovens. */
const HOTTEST_FIRE_C = 550;

/** What stands beside the figure; it is read in the food as it cooks. */
interface Beside {
  readonly place: PlaceRow | undefined;
  readonly verb: VerbRow | undefined;
  readonly isRead: boolean;
}

export function possibleOf(of: Kind, { place, verb, isRead }: Beside): Range {
  switch (of) {
    case 'food':
      return isRead ? INSIDE : POSSIBLE.food;
    case 'around':
      if (place?.is === 'frozen' || verb?.act === 'freeze') return FROZEN;
      if (place?.is === 'cold' || verb?.where === 'cold') return COLD;
      return verb?.act === 'rise' ? RISING : POSSIBLE.around;
    case 'oven':
      if (place?.is === 'stove') return { ...POSSIBLE.oven, high: HOTTEST_FIRE_C };
      // Of a stone oven its row says how hot it gets.
      return { ...POSSIBLE.oven, high: Math.max(POSSIBLE.oven.high, place?.celsius?.high ?? 0) };
    case 'medium':
      return POSSIBLE.medium;
  }
}

/** What a figure without a scale is of as a rule, °C (judgement): in the other scale it would be odd. */
export function usualOf(of: Kind, { verb, isRead }: Beside): Range {
  switch (of) {
    case 'food':
      // `cool to 110 degrees`, `warm to 100 degrees`
      if (verb?.act === 'cool' || verb?.cooks === 'barely') return WARMED;
      return isRead ? SHOWN : POSSIBLE.food;
    case 'oven':
      return BAKED;
    case 'medium':
      return verb?.medium === 'fat' ? FRIED : BATHED;
    case 'around':
      return POSSIBLE.around;
  }
}
/** A syrup's too. */
const SHOWN: Range = { low: INSIDE.low, high: 125 };
/** What is cooled or no more than warmed does not boil. */
const WARMED: Range = { low: -40, high: 95 };
const BAKED: Range = { low: 90, high: POSSIBLE.oven.high };
const FRIED: Range = { low: 120, high: 240 };
const BATHED: Range = { low: 36, high: POSSIBLE.medium.high };

/** Nothing is said beside it. */
const ANY: Beside = { place: undefined, verb: undefined, isRead: false };
/** What only dries or is kept warm lies in a cooler oven. */
const COOLEST_DRYING_C = 35;
/** No fridge is as warm, and any room. */
const ROOM: Range = { low: 12, high: 70 };

export const isIn = (range: Range, of: Range): boolean => range.low >= of.low && range.high <= of.high;

/** What is wrong with a figure: it is meant on the other scale, or can be on neither. */
export type Slip = Pick<TemperatureSaid, 'meant' | 'cannot'>;
export const NO_SLIP: Slip = {};

export function slipIn(node: TemperatureNode, of: Kind, celsius: Range, possible: Range): Slip {
  const meant = meantOn(node, of, celsius, possible);
  if (meant !== undefined) return { meant };
  // Where food may lie nobody says.
  if (of === 'around') return NO_SLIP;
  const { low: least, high } = of === 'food' ? possibleOf(of, ANY) : possible;
  const low = of === 'oven' ? COOLEST_DRYING_C : least;
  // Of degrees without a scale, on one of them.
  const can = node.unit === 'unsaid' ? celsius.low <= high && celsius.high >= low : isIn(celsius, { low, high });
  return can ? NO_SLIP : { cannot: true };
}

/** The other scale, where what is written cannot be and that can. */
function meantOn(node: TemperatureNode, of: Kind, celsius: Range, possible: Range): 'C' | 'F' | undefined {
  const { unit } = node;
  if ((unit !== 'C' && unit !== 'F') || isIn(celsius, possible)) return undefined;
  const other = unit === 'C' ? 'F' : 'C';
  const instead = celsiusOf({ ...node, unit: other });
  // A fridge that a room could be is no better.
  if (of === 'around' && possible.low < 0 && instead.high > ROOM.low && instead.high < ROOM.high) return undefined;
  return isIn(instead, possible) ? other : undefined;
}

/** Figures, °C, from which on it tells what they are of (judgement): a place that is cold; of water at the boil what a thermometer may be off. */
export const TELLING_C = {
  chilled: 12,
  coldestMedium: 30,
  coolestOven: 75,
  coolestHotSmoke: 57,
  coldestOven: 30,
  hottestPlace: 70,
  hottestHeld: 100,
  hottestFood: 110,
  hottestSyrup: 200,
  hottestWater: 104,
} as const;
