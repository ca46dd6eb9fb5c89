/**
 * Knows how one amount of a food is written in another measure: in grams, in US measures, in metric ones.
 * Refuses to know lines, and to guess what nobody has weighed.
 */
import { FLESH, type Food, type FoodClass, type FoodMatch, type Weighed } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import { figureIn, kitchenFigure, kitchenGrams, worst } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Quantity } from '../measure/quantity.ts';
import { baseOf, dimensionOf, type UnitSymbol } from '../measure/unit.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import { weighQuantity } from '../recipe/line-weight.ts';
import type { World } from '../recipe/world.ts';

export type Measure = 'weight' | 'us' | 'metric';

export interface ConvertedAmount {
  /** `125 g`, `1 1/2 cup`, `40-45 g`. */
  readonly text: string;
  /** What is written over what it should be, less one. */
  readonly error: number;
  /** How far the weight behind it may be off either way, as a share. */
  readonly doubt: number;
}

/** The amount in another measure; undefined where it is in that measure already, or the weight is not known. */
export function convertAmount(
  node: MeasuredNode,
  match: FoodMatch | undefined,
  to: Measure,
  world: World,
): ConvertedAmount | undefined {
  const unit = node.unit?.symbol;
  if (unit === '%' || BY_HAND.has(unit ?? 'g')) return undefined;
  switch (to) {
    case 'weight':
      return unit !== undefined && METRIC_MASS.has(unit) ? undefined : inGrams(node, match, world);
    case 'metric':
      return toMetric(node, match, world);
    case 'us': {
      const us = toUs(node, match, world);
      return us === undefined || Math.abs(us.error) > TOO_FAR_OFF ? undefined : us;
    }
  }
}

/** No spoon measures a gram of cream: better grams than a spoon so far off. */
const TOO_FAR_OFF = 0.08;

/** A pinch, a dash and a drop are no weight. */
const BY_HAND: ReadonlySet<UnitSymbol> = new Set(['pinch', 'dash', 'drop']);
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

function toMetric(node: MeasuredNode, match: FoodMatch | undefined, world: World): ConvertedAmount | undefined {
  const unit = node.unit?.symbol;
  if (unit === undefined)
    return node.quantity.count === 'stick' || unitOfEach(node) === 'oz' || unitOfEach(node) === 'lb'
      ? inGrams(node, match, world)
      : undefined;
  if (METRIC_MASS.has(unit) || METRIC_VOLUME.has(unit)) return undefined;
  const dimension = dimensionOf(unit);
  if (dimension === 'mass') return plain(node, unit, 'g');
  if (dimension !== 'volume' || unit === 'tsp' || unit === 'tbsp') return undefined;
  const poured = match?.kind !== 'food' || POURED.has(match.food.class);
  return poured ? plain(node, unit, 'ml', world) : inGrams(node, match, world);
}

const unitOfEach = (node: MeasuredNode): UnitSymbol | undefined => node.each?.unit?.symbol;

function toUs(node: MeasuredNode, match: FoodMatch | undefined, world: World): ConvertedAmount | undefined {
  const unit = node.unit?.symbol;
  if (unit === undefined) return undefined;
  if (METRIC_VOLUME.has(unit))
    return inCups(node, (baseOf(unit, 'us') ?? 1) / (baseOf('cup', world.measures) ?? 1), 0, world);
  if (!METRIC_MASS.has(unit)) return undefined;
  const food = match?.kind === 'food' ? match.food : undefined;
  const grams = baseOf(unit, 'us') ?? 1;
  const cup =
    food === undefined || WEIGHED.has(food.class)
      ? undefined
      : spoonfulG(food, match, node.quantity.low * grams, world);
  if (cup !== undefined) return inCups(node, grams / cup.grams, cup.doubt, world);
  return plain(node, unit, node.quantity.low * grams >= (baseOf('lb', 'us') ?? 454) ? 'lb' : 'oz');
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

/** `perUnit` is how many cups one of the written unit is. */
function inCups(node: MeasuredNode, perUnit: number, doubt: number, { measures }: World): ConvertedAmount {
  const wanted = valuesOf(node).map((v) => v * perUnit);
  const [low = 0] = wanted;
  const first = kitchenFigure(low, 'cup', measures);
  const times = (baseOf('cup', measures) ?? 1) / (baseOf(first.unit, measures) ?? 1);
  const figures = wanted.map((w, i) => (i === 0 ? first : figureIn(w * times, first.unit, 'plain')));
  const errors = figures.map((f, i) => f.value / ((wanted[i] ?? 1) * times) - 1);
  return { text: `${aboutOf(node)}${figures.map((f) => f.text).join('-')} ${first.unit}`, error: worst(errors), doubt };
}

/** Between two units of one dimension. */
function plain(
  node: MeasuredNode,
  from: UnitSymbol,
  to: 'g' | 'ml' | 'oz' | 'lb',
  world?: World,
): ConvertedAmount | undefined {
  const a = baseOf(from, world?.measures ?? 'us');
  const b = baseOf(to, 'us');
  if (a === undefined || b === undefined) return undefined;
  const wanted = valuesOf(node).map((v) => (v * a) / b);
  const [low = 0] = wanted;
  const large = wanted.some((w) => w >= 2000) && (to === 'g' || to === 'ml');
  const first = kitchenFigure(low, to, 'us', 'decimal');
  const unit: UnitSymbol = large && first.unit === to ? (to === 'g' ? 'kg' : 'l') : first.unit;
  const times = b / (baseOf(unit, 'us') ?? 1);
  const figures = wanted.map((w) => figureIn(w * times, unit, to === 'oz' || to === 'lb' ? 'plain' : 'decimal'));
  const errors = figures.map((f, i) => f.value / ((wanted[i] ?? 1) * times) - 1);
  return { text: `${aboutOf(node)}${figures.map((f) => f.text).join('-')} ${unit}`, error: worst(errors), doubt: 0 };
}

function inGrams(node: MeasuredNode, match: FoodMatch | undefined, world: World): ConvertedAmount | undefined {
  if (match === undefined) return undefined;
  const weighed = weighQuantity({ ...node.quantity, about: false }, match, world);
  if (!weighed.known) return undefined;
  if (weighed.grams.high <= 0) return undefined;
  const [low, high] = valuesOf(node);
  const likely = likelyGrams(weighed);
  const middle = ((low ?? 0) + (high ?? low ?? 0)) / 2;
  if (middle <= 0) return undefined;
  const wanted = valuesOf(node).map((v) => (v * likely) / middle);
  const rounded = wanted.map(kitchenGrams);
  return {
    text: `${aboutOf(node)}${rounded.map((g) => trimmed(g, 2)).join('-')} g`,
    error: worst(rounded.map((g, i) => g / (wanted[i] ?? 1) - 1)),
    doubt: node.high === undefined ? doubtOf(weighed) : 0,
  };
}

const doubtOf = (weighed: Extract<Weighed, { known: true }>): number => {
  const likely = likelyGrams(weighed);
  return likely > 0 ? Math.max(weighed.grams.high / likely - 1, 1 - weighed.grams.low / likely) : 0;
};

const valuesOf = (node: MeasuredNode): number[] =>
  node.high === undefined ? [node.low.value] : [node.low.value, node.high.value];
const aboutOf = (node: MeasuredNode): string => (node.quantity.about ? 'about ' : '');
