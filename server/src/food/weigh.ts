/**
 * Knows how an amount of a food becomes grams, how wide the answer is, and how to say why in one clause; by volume and by the piece
 * it asks beside.
 * Refuses to invent: a measure that nobody has weighed has no grams.
 */

import type { Bias } from '../measure/bias.ts';
import { CAN_SOURCE } from '../measure/can-sizes.ts';
import type { CountWord } from '../measure/count-words.ts';
import { onceByObject, onceByText } from '../measure/once.ts';
import { exactly, type Quantity, type Size, scaleRange } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { baseOf, dimensionOf, sourceOf } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import type { Food, Weighed, WeightReason } from './food.ts';
import { perCentimetre } from './shares.ts';
import { weighLength, weighPiece } from './weigh-piece.ts';
import { FLOWING, weighVolume } from './weigh-volume.ts';
import { known, unknown } from './weighed.ts';

/** `about` in print: a tenth either way (common practice, no source). */
const ABOUT = 0.1;

/** What the quantity of the food weighs; `form` is the word that fits the measure (`chopped`, `packed`). */
export function weighFood(food: Food, quantity: Quantity, measures: Measures, form?: string): Weighed {
  const { low, high } = quantity;
  if (!(Number.isFinite(low) && Number.isFinite(high) && low >= 0 && high >= low))
    return unknown('the amount is not a number');
  const filled = fillOf(food, quantity);
  const one = weighOne(food, quantity, measures, form ?? filled?.form);
  if (!one.known) return one;
  const about = quantity.about ? ABOUT : 0;
  const fill = filled ?? LEVEL;
  const grams = {
    low: one.grams.low * low * (1 - about) * fill.low,
    high: one.grams.high * high * (1 + about) * fill.high,
  };
  const reason = fill.low === fill.high && !quantity.about ? one.reason : loosened(one.reason, fill, quantity.about);
  if (one.typical === undefined && fill.likely === 1) return { known: true, grams, reason };
  const typical = (likelyGrams(one) * fill.likely * (low + high)) / 2;
  const middle = (grams.low + grams.high) / 2;
  const apart = Math.abs(typical - middle) > 1e-9 * middle;
  return apart ? { known: true, grams, reason, typical } : { known: true, grams, reason };
}

type Fill = Pick<Bias, 'words' | 'low' | 'likely' | 'high'>;

/** The reason, with what widens it. */
function loosened(reason: WeightReason, fill: Fill, about: boolean): WeightReason {
  const why = [
    reason.words,
    ...(fill.low === fill.high ? [] : [`${fill.words[0]} is ${fill.low} to ${fill.high} of a level one`]),
    ...(about ? ['a tenth either way for about'] : []),
  ];
  return { ...reason, words: why.join('; ') };
}

const LEVEL: Fill = { words: [], low: 1, likely: 1, high: 1 };

/** How full the measure is said to be, where that means anything: nothing heaps that flows or is weighed. */
function fillOf(food: Food, { bias, unit }: Quantity): Bias | undefined {
  const heaps = unit !== undefined && dimensionOf(unit) === 'volume' && !FLOWING.has(food.class);
  return bias?.heaps && !heaps ? undefined : bias;
}

/** The likeliest single figure of a weight. */
export function likelyGrams(weighed: Extract<Weighed, { known: true }>): number {
  return weighed.typical ?? (weighed.grams.low + weighed.grams.high) / 2;
}

/** So many times the weight. */
export function timesTheWeight<W extends Extract<Weighed, { known: true }>>(weighed: W, by: number): W {
  const { grams, typical } = weighed;
  return { ...weighed, grams: scaleRange(grams, by), ...(typical !== undefined && { typical: typical * by }) };
}

const isLength = ({ unit }: Quantity): boolean => unit !== undefined && dimensionOf(unit) === 'length';

/** One of what the quantity counts; answered before for most lines of a folder. */
function weighOne(food: Food, quantity: Quantity, measures: Measures, form: string | undefined): Weighed {
  const { unit, size, each, count } = quantity;
  if (unit === undefined && each !== undefined) {
    // `8 6-inch tortillas`: where no length weighs anything, it tells of the piece.
    if (count !== undefined || !isLength(each) || perCentimetre(food) !== undefined)
      return weighPackage(food, count, each, measures, form);
  }
  if (unit !== undefined && dimensionOf(unit) === 'mass') return massOf(unit);
  const ones = onesOf(food);
  for (const one of ones)
    if (one.unit === unit && one.form === form && one.count === count && one.size === size && one.measures === measures)
      return one.weighed;
  const weighed =
    unit === undefined ? weighPiece(food, quantity, measures, form) : weighUnit(food, unit, measures, form);
  if (ones.length >= MOST_ONES) ones.length = 0;
  ones.push({ unit, size, count, measures, form, weighed });
  return weighed;
}

/** What was asked of a food, and the answer. */
interface One {
  readonly unit: UnitSymbol | undefined;
  readonly size: Size | undefined;
  readonly count: CountWord | undefined;
  readonly measures: Measures;
  readonly form: string | undefined;
  readonly weighed: Weighed;
}

const onesOf = onceByObject((_: Food): One[] => []);
const MOST_ONES = 30;

/** A weight is the same of every food, and in every system of measures. */
const massOf = onceByText(
  (unit: UnitSymbol): Weighed =>
    known(exactly(baseOf(unit, 'us') ?? Number.NaN), 'weight', 'a weight, as written', sourceOf(unit, 'us') ?? 'SI'),
  { texts: 100 },
);

function weighUnit(food: Food, unit: UnitSymbol, measures: Measures, form: string | undefined): Weighed {
  switch (dimensionOf(unit)) {
    case 'volume':
      return weighVolume(food, unit, measures, form);
    case 'share':
      return unknown('a percentage is of the flour in its part, not a weight of its own');
    case 'length':
      return weighLength(food, unit, measures);
    default:
      return unknown(`${unit} is not a measure of amount`);
  }
}

function weighPackage(
  food: Food,
  count: CountWord | undefined,
  each: Quantity,
  measures: Measures,
  form: string | undefined,
): Weighed {
  const inside = weighFood(food, each, measures, form);
  if (!inside.known) return inside;
  const holder = count ?? 'one';
  if (each.trade !== undefined) {
    const words = `a no. ${each.trade} ${holder} holds ${each.low} to ${each.high} oz, by what is put up in it`;
    return { ...inside, reason: { kind: 'package', words, source: CAN_SOURCE } };
  }
  return {
    ...inside,
    reason: {
      kind: 'package',
      words: `what the ${holder} holds: ${inside.reason.words}`,
      source: inside.reason.source,
    },
  };
}
