/**
 * Knows how one amount of a food is written in another measure: in grams, in US measures, in metric ones.
 * Refuses to know lines, and to guess what nobody has weighed.
 */
import { FLESH, type Food, type FoodClass, type FoodMatch, type Weighed } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import {
  comesTo,
  figureIn,
  figuresText,
  kitchenFigure,
  kitchenFigures,
  kitchenGrams,
  worst,
} from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Quantity } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { endsOf, totalOf } from '../measure/total.ts';
import { baseOf, byHand, dimensionOf } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import { weighQuantity } from '../recipe/list/line-weight.ts';
import type { World } from '../recipe/model.ts';

export type Measure = 'weight' | 'us' | 'metric';

export interface ConvertedAmount {
  /** `125 g`, `1 1/2 cup`, `40-45 g`. */
  readonly text: string;
  /** What is written over what it should be, less one. */
  readonly error: number;
  /** How far the weight behind it may be off either way, as a share. */
  readonly doubt: number;
}

/** Where a converted amount will stand. */
export interface Place {
  readonly world: World;
  /** On a line of the list two measures are read as one amount: `1 cup + 2 tbsp`. */
  readonly sums?: true;
}

/** The amount in another measure; undefined where it is in that measure already, or the weight is not known. */
export function convertAmount(
  quantity: Quantity,
  match: FoodMatch | undefined,
  to: Measure,
  place: Place,
): ConvertedAmount | undefined {
  const { unit } = quantity;
  if (unit === '%' || (unit !== undefined && byHand(unit) !== undefined)) return undefined;
  switch (to) {
    case 'weight':
      return isIn(quantity, 'weight') ? undefined : inGrams(quantity, match, place.world);
    case 'metric':
      return toMetric(quantity, match, place.world);
    case 'us': {
      const us = toUs(quantity, match, place);
      return us === undefined || Math.abs(us.error) > TOO_FAR_OFF ? undefined : us;
    }
  }
}

/** Whether an amount is written in the measure that is wanted. */
export function isIn({ unit }: Quantity, to: Measure): boolean {
  if (unit === undefined) return false;
  if (to === 'weight') return METRIC_MASS.has(unit);
  const metric = METRIC_MASS.has(unit) || METRIC_VOLUME.has(unit);
  return to === 'metric' ? metric : !metric && ['mass', 'volume'].includes(dimensionOf(unit));
}

/** No spoon measures a gram of cream: better grams than a spoon so far off, as there and back is to be within 3 %. */
const TOO_FAR_OFF = 0.025;

const METRIC_MASS: ReadonlySet<UnitSymbol> = new Set(['mg', 'g', 'kg']);
const METRIC_VOLUME: ReadonlySet<UnitSymbol> = new Set(['ml', 'cl', 'dl', 'l']);

/** Foods that a metric kitchen measures by volume. */
const POURED: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'water',
  'milk',
  'cream',
  'juice',
  'stock',
  'alcohol',
  'vinegar',
  'drink',
  'oil',
]);
/** Foods that a US kitchen weighs. */
const WEIGHED: ReadonlySet<FoodClass> = new Set<FoodClass>([
  ...FLESH,
  'cured meat',
  'pasta',
  'bread',
  'chocolate',
  'curing salt',
]);

function toMetric(quantity: Quantity, match: FoodMatch | undefined, world: World): ConvertedAmount | undefined {
  const { unit, count, each } = quantity;
  if (unit === undefined)
    return count === 'stick' || each?.unit === 'oz' || each?.unit === 'lb'
      ? inGrams(quantity, match, world)
      : undefined;
  if (METRIC_MASS.has(unit) || METRIC_VOLUME.has(unit)) return undefined;
  const dimension = dimensionOf(unit);
  if (dimension === 'mass') return plain(quantity, 'g', world);
  const spoons = [unit, ...(quantity.plus ?? []).map((t) => t.unit)].every((u) => u === 'tsp' || u === 'tbsp');
  if (dimension !== 'volume' || spoons) return undefined;
  const poured = match?.kind !== 'food' || POURED.has(match.food.class);
  return poured ? plain(quantity, 'ml', world) : inGrams(quantity, match, world);
}

function toUs(quantity: Quantity, match: FoodMatch | undefined, place: Place): ConvertedAmount | undefined {
  const { unit } = quantity;
  if (unit === undefined) return undefined;
  const { world } = place;
  if (METRIC_VOLUME.has(unit)) return inCups(quantity, baseOf('cup', world.measures) ?? 1, 0, place);
  if (!METRIC_MASS.has(unit)) return undefined;
  const food = match?.kind === 'food' ? match.food : undefined;
  const grams = totalOf(quantity, world.measures)?.low ?? 0;
  const cup = food === undefined || WEIGHED.has(food.class) ? undefined : spoonfulG(food, match, grams, world);
  if (cup !== undefined) return inCups(quantity, cup.grams, cup.doubt, place);
  return plain(quantity, grams >= (baseOf('lb', 'us') ?? 454) ? 'lb' : 'oz', world, place.sums);
}

interface Spoonful {
  /** Grams in a cup. */
  readonly grams: number;
  readonly doubt: number;
}

/** Grams in a cup of the food, by the measure nearest in size to the amount. */
function spoonfulG(food: Food, match: FoodMatch | undefined, grams: number, world: World): Spoonful | undefined {
  const form = match?.kind === 'food' ? match.form : undefined;
  for (const unit of (grams < 40 ? ['tsp', 'tbsp', 'cup'] : ['cup', 'tbsp', 'tsp']) as UnitSymbol[]) {
    const one: Quantity = { low: 1, high: 1, about: false, unit };
    const weighed = world.book.weigh(food, one, world.measures, form);
    if (!weighed.known) continue;
    const likely = likelyGrams(weighed);
    const cups = (baseOf(unit, world.measures) ?? 1) / (baseOf('cup', world.measures) ?? 1);
    if (likely > 0) return { grams: likely / cups, doubt: doubtOf(weighed) };
  }
  return undefined;
}

/** A weight in cups alone, with no second spoon, is no further off. */
const AS_NEAR = 0.025;

const isMassUnit = (unit: UnitSymbol | undefined): boolean => unit !== undefined && dimensionOf(unit) === 'mass';

/** `cup` is what one holds of it, in the base unit of what is written. */
function inCups(quantity: Quantity, cup: number, doubt: number, { world: { measures }, sums }: Place): ConvertedAmount {
  const wanted = basesOf(quantity, measures).map((base) => base / cup);
  const near = isMassUnit(quantity.unit) ? AS_NEAR : undefined;
  return { ...inUnit(wanted, 'cup', measures, quantity.about, sums, near), doubt };
}

/** Amounts in a unit or in what a kitchen takes for it; one of them as two measures where that is read. */
function inUnit(
  wanted: readonly number[],
  unit: UnitSymbol,
  measures: Measures,
  about: boolean,
  sums: true | undefined,
  near?: number,
): Omit<ConvertedAmount, 'doubt'> {
  const [low = 0] = wanted;
  const sign = about ? 'about ' : '';
  if (sums === true && wanted.length === 1) {
    const figures = kitchenFigures(low, unit, measures, 'plain', near);
    return { text: sign + figuresText(figures), error: comesTo(figures, unit, measures) / low - 1 };
  }
  const first = kitchenFigure(low, unit, measures);
  const times = (baseOf(unit, measures) ?? 1) / (baseOf(first.unit, measures) ?? 1);
  const figures = wanted.map((w, i) => (i === 0 ? first : figureIn(w * times, first.unit, 'plain')));
  const errors = figures.map((f, i) => f.value / ((wanted[i] ?? 1) * times) - 1);
  return { text: `${sign}${figures.map((f) => f.text).join('-')} ${first.unit}`, error: worst(errors) };
}

/** Between two units of one dimension. */
function plain(
  quantity: Quantity,
  to: 'g' | 'ml' | 'oz' | 'lb',
  { measures }: World,
  sums?: true,
): ConvertedAmount | undefined {
  const b = baseOf(to, 'us') ?? 1;
  const wanted = basesOf(quantity, measures).map((base) => base / b);
  const [low] = wanted;
  if (low === undefined) return undefined;
  if (to === 'oz' || to === 'lb') {
    if (sums === true && wanted.length === 1)
      return { ...inUnit(wanted, to, measures, quantity.about, sums), doubt: 0 };
  }
  const large = wanted.some((w) => w >= 2000) && (to === 'g' || to === 'ml');
  const first = kitchenFigure(low, to, 'us', 'decimal');
  const unit: UnitSymbol = large && first.unit === to ? (to === 'g' ? 'kg' : 'l') : first.unit;
  const times = b / (baseOf(unit, 'us') ?? 1);
  const figures = wanted.map((w) => figureIn(w * times, unit, to === 'oz' || to === 'lb' ? 'plain' : 'decimal'));
  const errors = figures.map((f, i) => f.value / ((wanted[i] ?? 1) * times) - 1);
  const text = `${quantity.about ? 'about ' : ''}${figures.map((f) => f.text).join('-')} ${unit}`;
  return { text, error: worst(errors), doubt: 0 };
}

/** What an amount comes to, or the ends of its range, in g or ml. */
const basesOf = (quantity: Quantity, measures: Measures): number[] =>
  endsOf(quantity).flatMap((end) => totalOf(end, measures)?.low ?? []);

function inGrams(quantity: Quantity, match: FoodMatch | undefined, world: World): ConvertedAmount | undefined {
  if (match === undefined) return undefined;
  const ends = endsOf(quantity);
  const weights = ends.flatMap((end) => {
    const weighed = weighQuantity({ ...end, about: false }, match, world);
    return weighed.known && weighed.grams.high > 0 ? [weighed] : [];
  });
  const [first] = weights;
  if (first === undefined || weights.length < ends.length) return undefined;
  return { ...gramsText(weights.map(likelyGrams), quantity.about), doubt: weights.length === 1 ? doubtOf(first) : 0 };
}

/** Grams as a scale shows them: `156 g`, `about 40-45 g`. */
export function gramsText(grams: readonly number[], about: boolean): Omit<ConvertedAmount, 'doubt'> {
  const rounded = grams.map(kitchenGrams);
  return {
    text: `${about ? 'about ' : ''}${rounded.map((g) => trimmed(g, 2)).join('-')} g`,
    error: worst(rounded.map((g, i) => g / (grams[i] ?? 1) - 1)),
  };
}

export const doubtOf = (weighed: Extract<Weighed, { known: true }>): number => {
  const likely = likelyGrams(weighed);
  return likely > 0 ? Math.max(weighed.grams.high / likely - 1, 1 - weighed.grams.low / likely) : 0;
};
