/**
 * Knows what an amount of a food weighs in a house, and which of several measures on a line is taken.
 * Refuses to know names.
 */
import type { FoodMatch, Weighed } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import { addRanges, type Quantity, type Range, scaleRange } from '../measure/quantity.ts';
import { baseOf, type Dimension, dimensionOf, type UnitSymbol } from '../measure/unit.ts';
import type { BesideNode, IngredientNode, MeasuredNode } from '../notation/tree.ts';
import type { World } from './world.ts';

/** What goes into the part by its line: the weight that is written where there is one, else the volume, else the count. */
export function weighLine(node: IngredientNode, match: FoodMatch, world: World): Weighed {
  const { amount, beside } = node;
  if (amount === undefined) return { known: false, why: 'no amount is written' };
  if (amount.kind === 'free') return { known: false, why: 'it is added to taste' };
  if (beside !== undefined && dimensionIn(amount.quantity) !== 'mass') {
    const weight = beside.find((b) => dimensionIn(b.amount.quantity) === 'mass');
    if (weight !== undefined) return besideWeight(amount, weight, match, world);
    const volume =
      beside.find((b) => isMetric(b.amount)) ?? beside.find((b) => dimensionIn(b.amount.quantity) === 'volume');
    if (
      volume !== undefined &&
      (dimensionIn(amount.quantity) !== 'volume' || (isMetric(volume.amount) && !isMetric(amount)))
    )
      return weighTimes(amount, volume, match, world);
    const known = weighQuantity(amount.quantity, match, world);
    if (known.known) return known;
    for (const again of beside) {
      const weighed = weighTimes(amount, again, match, world);
      if (weighed.known) return weighed;
    }
    return known;
  }
  return weighQuantity(amount.quantity, match, world);
}

/** Millilitres say more than a spoon or cup, which differ from house to house. */
const isMetric = ({ unit }: MeasuredNode): boolean =>
  unit !== undefined && dimensionOf(unit.symbol) === 'volume' && METRIC.has(unit.symbol);

const METRIC: ReadonlySet<UnitSymbol> = new Set<UnitSymbol>(['ml', 'cl', 'dl', 'l']);

/** What so many of a whole thing give, all that is taken out of it together. */
export const weighTakes = (node: IngredientNode, takes: readonly FoodMatch[], world: World): Weighed =>
  takes.map((match) => weighLine(node, match, world)).reduce(addWeights);

/** What is measured, all terms alike; undefined for a bare count. */
const dimensionIn = ({ unit, each }: Quantity): Dimension | undefined =>
  unit !== undefined ? dimensionOf(unit) : each === undefined ? undefined : dimensionIn(each);

function besideWeight(amount: MeasuredNode, beside: BesideNode, match: FoodMatch, world: World): Weighed {
  const by = isEach(amount, beside, match, world) ? amount.quantity : ONE;
  const written = gramsOf(beside.amount.quantity);
  if (written === undefined) return weighQuantity(amount.quantity, match, world);
  const loose = beside.amount.quantity.about ? { low: written.low * 0.9, high: written.high * 1.1 } : written;
  return {
    known: true,
    grams: { low: loose.low * by.low, high: loose.high * by.high },
    reason:
      beside.sign === '='
        ? { kind: 'house', words: 'weighed by the house on this line', source: 'this recipe' }
        : { kind: 'weight', words: 'the weight that stands beside the measure', source: 'this recipe' },
  };
}

function weighTimes(amount: MeasuredNode, beside: BesideNode, match: FoodMatch, world: World): Weighed {
  const weighed = weighQuantity(beside.amount.quantity, match, world);
  if (!weighed.known || !isEach(amount, beside, match, world)) return weighed;
  const { low, high } = amount.quantity;
  const { typical } = weighed;
  return {
    ...weighed,
    grams: { low: weighed.grams.low * low, high: weighed.grams.high * high },
    ...(typical !== undefined && { typical: (typical * (low + high)) / 2 }),
  };
}

const ONE: Range = { low: 1, high: 1 };

/** Whether a measure beside a count is of each piece: as it says, else by what a piece weighs. */
export function isEach(
  amount: MeasuredNode,
  { means, amount: beside }: BesideNode,
  match: FoodMatch,
  world: World,
): boolean {
  if (means !== 'either') return means === 'each';
  const { low, high } = amount.quantity;
  if (high <= 1) return false;
  const piece = weighQuantity({ ...amount.quantity, low: 1, high: 1 }, match, world);
  const said = weighQuantity(beside.quantity, match, world);
  if (!piece.known || !said.known) return false;
  const off = (grams: number): number => Math.abs(Math.log(likelyGrams(said) / grams));
  const one = likelyGrams(piece);
  return off(one) < off((one * (low + high)) / 2);
}

/** What an amount of a matched food weighs; a mass needs no food, and a sum is all its terms. */
export function weighQuantity(quantity: Quantity, match: FoodMatch, world: World): Weighed {
  const { plus, upTo, ...first } = quantity;
  if (plus !== undefined) {
    let sum = weighTerm(first, match, world);
    for (const term of plus) sum = addWeights(sum, weighTerm(term, match, world));
    return sum;
  }
  if (upTo !== undefined) {
    const [from, to] = [weighTerm(first, match, world), weighTerm(upTo, match, world)];
    if (!from.known || !to.known) return from.known ? to : from;
    return { known: true, grams: { low: from.grams.low, high: to.grams.high }, reason: from.reason };
  }
  return weighTerm(quantity, match, world);
}

function addWeights(a: Weighed, b: Weighed): Weighed {
  if (!a.known || !b.known) return a.known ? b : a;
  const words = a.reason.words === b.reason.words ? a.reason.words : `${a.reason.words}; ${b.reason.words}`;
  return {
    known: true,
    grams: addRanges(a.grams, b.grams),
    typical: likelyGrams(a) + likelyGrams(b),
    reason: { ...a.reason, words },
  };
}

function weighTerm(quantity: Quantity, match: FoodMatch, world: World): Weighed {
  if (quantity.unit === '%') return { known: false, why: 'a percentage of flour that is not known' };
  if (match.kind === 'food') return world.book.weigh(match.food, quantity, world.measures, match.form);
  if (dimensionIn(quantity) === 'mass') {
    const any = world.book.byId('water');
    if (any !== undefined) return world.book.weigh(any, quantity, world.measures);
  }
  return { known: false, why: match.kind === 'ambiguous' ? 'the name could be two foods' : 'the food is not known' };
}

/** Grams of a mass, all terms; undefined for anything else. */
function gramsOf({ unit, each, low, high, plus = [] }: Quantity): Range | undefined {
  if (unit === undefined && each !== undefined) {
    const one = gramsOf(each);
    return one && { low: one.low * low, high: one.high * high };
  }
  if (unit === undefined || dimensionOf(unit) !== 'mass') return undefined;
  const by = baseOf(unit, 'us') ?? 1;
  let sum = scaleRange({ low, high }, by);
  for (const term of plus) {
    const more = gramsOf(term);
    if (more === undefined) return undefined;
    sum = addRanges(sum, more);
  }
  return sum;
}
