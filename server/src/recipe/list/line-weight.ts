/**
 * Knows what an amount of a food weighs in a house, and which of several measures on a line is taken.
 * Refuses to know names.
 */
import { type Food, type FoodClass, type FoodMatch, foodsOf, type UnknownFood, type Weighed } from '../../food/food.ts';
import { drainedShare, lumpIn } from '../../food/shares.ts';
import { likelyGrams } from '../../food/weigh.ts';
import { addRanges, type Quantity, type Range } from '../../measure/quantity.ts';
import { totalOf } from '../../measure/total.ts';
import { baseOf, byHand, dimensionOf } from '../../measure/unit.ts';
import type { Dimension } from '../../measure/unit-row.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import { saidAgain } from '../../notation/item-amounts.ts';
import type { BesideNode, IngredientNode, MeasuredNode } from '../../notation/tree.ts';
import type { World } from '../model.ts';

/** What goes into the part by its line: the weight that is written where there is one, else the volume, else the count. */
export function weighLine(node: IngredientNode, match: FoodMatch, world: World): Weighed {
  const said = node.beside?.find((beside) => beside.drained === true);
  if (said !== undefined && node.amount?.kind === 'measured') return saidDrained(node.amount, said, match, world);
  const weighed = weighAmounts(node, match, world);
  return weighed.known && isDrained(node) && match.kind === 'food' ? drainedOf(weighed, match.food) : weighed;
}

function saidDrained(amount: MeasuredNode, beside: BesideNode, match: FoodMatch, world: World): Weighed {
  const grams = gramsOf(beside.amount.quantity);
  if (grams === undefined) return { known: false, why: 'its drained weight is no weight' };
  const by = isEach(amount, beside, match, world) ? amount.quantity : ONE;
  return {
    known: true,
    grams: { low: grams.low * by.low, high: grams.high * by.high },
    reason: { kind: 'weight', words: 'the drained weight that stands on this line', source: 'this recipe' },
  };
}

/** `1 (15 oz) can black beans, rinsed and drained`: the weight on a can is that of its liquid too. */
const isDrained = ({ amount, preparation }: IngredientNode): boolean =>
  amount?.kind === 'measured' &&
  amount.quantity.each !== undefined &&
  (amount.quantity.count === 'can' || amount.quantity.count === 'tin' || amount.quantity.count === 'jar') &&
  preparation !== undefined &&
  DRAINED.test(preparation.text) &&
  !/\b(?:not|no|never|or)\b/i.test(preparation.text);

/** What comes in lumps that lie as heavy as water. */
const LUMPS: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'fat',
  'yeast',
  'other',
  'cheese',
  'dairy',
  'chocolate',
  'sugar',
  'vegetable',
  'fruit',
  'condiment',
  'meat',
  'ground meat',
  'cured meat',
  'fish',
]);

const DRAINED = /^(?:[^(]*\W)?drained\b(?! weight)/i;

function drainedOf(weighed: Extract<Weighed, { known: true }>, food: Food): Weighed {
  const share = drainedShare(food);
  if (share === undefined) return weighed;
  const { grams, reason } = weighed;
  return {
    known: true,
    grams: { low: grams.low * share.range.low, high: grams.high * share.range.high },
    typical: likelyGrams(weighed) * share.typical,
    reason: {
      ...reason,
      words: `${reason.words}; drained, ${Math.round(share.typical * 100)} % of it stays`,
      source: share.source,
    },
  };
}

/** `a piece of butter the size of an egg`. */
function weighLump({ name, preparation }: IngredientNode, { bias, quantity }: MeasuredNode, match: FoodMatch) {
  const { low, high, unit } = quantity;
  if (unit !== undefined || !foodsOf(match).some((food) => LUMPS.has(food.class))) return undefined;
  const lump = lumpIn(`${name?.text ?? ''} ${preparation?.text ?? ''} ${bias?.text ?? ''}`);
  if (lump === undefined) return undefined;
  const { typical, range, source } = lump;
  const weighed: Weighed = {
    known: true,
    grams: { low: range.low * low, high: range.high * high },
    typical: (typical * (low + high)) / 2,
    reason: { kind: 'piece', words: `a lump of that size weighs ${range.low} to ${range.high} g`, source },
  };
  return weighed;
}

function weighAmounts(node: IngredientNode, match: FoodMatch, world: World): Weighed {
  const { amount, beside } = node;
  if (amount === undefined) return { known: false, why: 'no amount is written' };
  if (amount.kind === 'free') return { known: false, why: 'it is added to taste' };
  const lump = weighLump(node, amount, match);
  if (lump !== undefined) return lump;
  if (beside !== undefined && dimensionIn(amount.quantity) !== 'mass') {
    const first = saidAgain(amount, beside);
    if (first !== amount) {
      const said = weighAmounts({ ...node, amount: first }, match, world);
      const later = amount.plus?.slice(first.plus?.length ?? 0) ?? [];
      return later.reduce((sum, term) => addWeights(sum, weighQuantity(term.quantity, match, world)), said);
    }
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
  { means, drained, amount: beside }: BesideNode,
  match: FoodMatch,
  world: World,
): boolean {
  const { low, high, each } = amount.quantity;
  // `2 x 400 g tins chickpeas (240 g drained)`: of each tin, unless one does not hold so much.
  const [holds, stays] = [each && gramsOf(each), gramsOf(beside.quantity)];
  if (drained && holds !== undefined && stays !== undefined) return stays.low <= holds.high;
  if (means !== 'either') return means === 'each';
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
  if (quantity.plus === undefined && quantity.upTo === undefined) return weighTerm(quantity, match, world);
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
  if (match.kind === 'food' && match.part !== undefined && isCounted(quantity))
    return { known: false, why: `nobody has weighed a ${match.part}: write a weight` };
  if (match.kind === 'food') return world.book.weigh(match.food, quantity, world.measures, match.form);
  if (dimensionIn(quantity) === 'mass') {
    const any = world.book.byId('water');
    if (any !== undefined) return world.book.weigh(any, quantity, world.measures);
  }
  return match.kind === 'ambiguous' ? weighEach(quantity, match.foods, world) : weighLiquid(quantity, match, world);
}

/** A bare count. */
const isCounted = ({ unit, count, each }: Quantity): boolean => (unit ?? count ?? each) === undefined;

/** From the least to the most that foods which one name could mean weigh; likeliest what the first does. */
function weighEach(quantity: Quantity, foods: readonly Food[], world: World): Weighed {
  let all: Extract<Weighed, { known: true }> | undefined;
  for (const food of foods) {
    const one = world.book.weigh(food, quantity, world.measures);
    if (!one.known) return { known: false, why: 'the name could be two foods' };
    const grams = all === undefined ? one.grams : hullOf(all.grams, one.grams);
    all = all === undefined ? { ...one, typical: likelyGrams(one) } : { ...all, grams };
  }
  if (all === undefined) return { known: false, why: 'the name could be two foods' };
  const names = foods.map(({ name }) => name);
  const words = `${all.reason.words}; the range is that of ${names.slice(0, -1).join(', ')} and ${names.at(-1)}, whichever it is`;
  return { ...all, reason: { ...all.reason, words } };
}

const hullOf = (a: Range, b: Range): Range => ({ low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) });

/** Classes of which a cup weighs about what water does. */
const LIQUIDS: ReadonlySet<FoodClass> = new Set<FoodClass>(['milk', 'cream', 'stock', 'juice', 'water']);
/** g/ml. */
const LIQUID: Range = { low: 0.95, high: 1.05 };
const LIQUID_SOURCE =
  'USDA SR26: a cup of whole milk 244 g (NDB 01211), of heavy whipping cream 238 g (NDB 01053), of orange juice 248 g (NDB 09206), of water 237 g (NDB 14411)';

/** A measure of a liquid that nobody knows, by its noun; of anything else what it weighs is not known. */
function weighLiquid({ unit, low, high, each, about }: Quantity, match: UnknownFood, world: World): Weighed {
  if (unit === undefined && each !== undefined) {
    const inside = weighLiquid(each, match, world);
    return inside.known ? timesWeighed(inside, { low, high }) : inside;
  }
  const ml = unit !== undefined && dimensionOf(unit) === 'volume' ? baseOf(unit, world.measures) : undefined;
  if (ml === undefined || match.class === undefined || !LIQUIDS.has(match.class))
    return { known: false, why: 'the food is not known' };
  const loose = about ? 0.1 : 0;
  const hand = (unit && byHand(unit)) ?? ONE;
  return {
    known: true,
    grams: {
      low: low * ml * LIQUID.low * (1 - loose) * hand.low,
      high: high * ml * LIQUID.high * (1 + loose) * hand.high,
    },
    reason: {
      kind: 'density',
      words: `as any ${match.class}, ${LIQUID.low} to ${LIQUID.high} g/ml`,
      source: LIQUID_SOURCE,
    },
  };
}

const timesWeighed = (weighed: Extract<Weighed, { known: true }>, by: Range): Weighed => ({
  ...weighed,
  grams: { low: weighed.grams.low * by.low, high: weighed.grams.high * by.high },
});

/** Grams of a mass, all terms; undefined for anything else. */
function gramsOf(quantity: Quantity): Range | undefined {
  const { unit, each, low, high } = quantity;
  if (unit === undefined && each !== undefined) {
    const one = gramsOf(each);
    return one && { low: one.low * low, high: one.high * high };
  }
  const total = totalOf(quantity, 'us');
  return total?.dimension === 'mass' ? { low: total.low, high: total.high } : undefined;
}
