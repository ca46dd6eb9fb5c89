/**
 * Knows what a line counts for at the least and at the most: by its food, by all foods that its name could mean, by all of its noun's class, or
 * from nothing to all of it where nobody knows. Refuses to choose among them.
 */
import freezing from '../../../data/freezing.json' with { type: 'json' };
import leavening from '../../../data/leavening.json' with { type: 'json' };
import type { Brings, Food, FoodClass, FoodMatch, UnknownFood } from '../../food/food.ts';
import { exactly, type Range } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Ingredient } from '../model.ts';
import { otherDepression, sucroseEquivalent } from './freezing.ts';
import { agarShare } from './gelling.ts';
import { cultureShare, dressedShare, mashedShare } from './kitchen-shares.ts';
import { bakingPowder, bakingSoda, instantYeast, lift } from './leavening.ts';
import { preparedFruit, type Share, saltShare, thickenerShare, wholeShare } from './shares.ts';

/** What a gram of a food counts for in a measure. */
export type ShareOf = (food: Food, ingredient?: Ingredient) => Share;

/** The one food that the ingredient is, of which something is known. */
export const plainFood = ({ food, takes }: Ingredient): Food | undefined =>
  food === undefined || takes !== undefined || (food.house === true && isBlank(food)) ? undefined : food;

/** What a gram of the ingredient counts for, where that is told: by one food of which it is known, or by several that count alike. */
export function toldShare(share: ShareOf, ingredient: Ingredient): Range | undefined {
  const { match, takes } = ingredient;
  if (takes !== undefined) return countsFor(share, ingredient);
  const food = plainFood(ingredient);
  if (food !== undefined) return rangeOf(share(food, ingredient));
  if (match.kind !== 'ambiguous') return undefined;
  const hull = countsFor(share, ingredient);
  const alike = match.foods.every((one) => {
    const of = rangeOf(share(one));
    return of?.low === hull.low && of.high === hull.high;
  });
  return alike ? hull : undefined;
}

/** What a gram of the ingredient counts for at the least and the most, whatever it is. */
export function countsFor(share: ShareOf, ingredient: Ingredient): Range {
  const { food, match, takes } = ingredient;
  if (takes !== undefined && takes.length > 0) return takes.map((take) => countsAs(share, take)).reduce(hullOf);
  if (food === undefined) return countsAs(share, match);
  const told = plainFood(ingredient);
  return (told && rangeOf(share(told, ingredient))) ?? openShare(share, hintsOf(food));
}

function countsAs(share: ShareOf, match: FoodMatch): Range {
  switch (match.kind) {
    case 'food':
      return hullOver(share, [match.food]);
    case 'ambiguous':
      return hullOver(share, match.foods);
    case 'unknown': {
      const { brings = NO_HINTS } = match;
      const { range } = match;
      if (range === undefined || range.length === 0 || !tells(match)) return openShare(share, brings);
      const hull = hullOver(share, range);
      return brings.length === 0 ? hull : hullOf(hull, hinted(share, brings) ?? hull);
    }
  }
}

/** Nouns of what is made of anything, `apple butter` and `passion fruit curd`: they tell what it looks like, and not what is in it. */
const MADE_OF_ANYTHING: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'fat',
  'cheese',
  'bread',
  'pasta',
  'sauce',
  'condiment',
  'spice',
  'drink',
  'chocolate',
  'flavouring',
  'other',
]);

const tells = ({ class: kind }: UnknownFood): boolean => kind !== undefined && !MADE_OF_ANYTHING.has(kind);

const HULLS = keptOn<readonly Food[], Map<ShareOf, Range>>();

/** The least and the most over the foods, whatever the line says of them. Kept with the list. */
function hullOver(share: ShareOf, foods: readonly Food[]): Range {
  let byShare = HULLS.get(foods);
  if (byShare === undefined) {
    byShare = new Map();
    HULLS.set(foods, byShare);
  }
  let hull = byShare.get(share);
  if (hull === undefined) {
    hull = foods.map((food) => rangeOf(share(food)) ?? openShare(share, hintsOf(food))).reduce(hullOf, EMPTY);
    byShare.set(share, hull);
  }
  return hull;
}

const EMPTY: Range = { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };

const hullOf = (a: Range, b: Range): Range => ({ low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) });

/** Of a food of the house: nothing but a name or a price is said of it. */
const isBlank = ({ like, per100, class: kind }: Food): boolean =>
  kind === 'other' && like === undefined && Object.keys(per100).length === 0;

const NO_HINTS: readonly Brings[] = [];
const SALT: readonly Brings[] = ['salt'];

/** Of these some are mostly salt. */
const MAY_BE_SALTY: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'salt',
  'curing salt',
  'cured meat',
  'cheese',
  'stock',
  'sauce',
  'condiment',
  'spice',
  'vinegar',
  'other',
]);

const hintsOf = ({ class: kind }: Food): readonly Brings[] => (MAY_BE_SALTY.has(kind) ? SALT : NO_HINTS);

/** What an unknown food may count for where that is not from nothing to its whole weight. */
interface Open {
  /** Where no word of its name hints at it. */
  readonly plain: Range;
  readonly hint?: Brings;
  readonly hinted?: Range;
}

const upTo = (high: number): Range => ({ low: 0, high });
const ANY: Range = upTo(1);
const NONE: Range = upTo(0);
const { celsiusPerGramOfWater, sucroseEquivalents } = freezing;
/** Dishes and foods that do not taste of salt hold no more (common practice, no source). */
const UNSALTED = upTo(0.03);

const OPEN: ReadonlyMap<ShareOf, Open> = new Map<ShareOf, Open>([
  [wholeShare, { plain: exactly(1) }],
  [saltShare, { plain: UNSALTED, hint: 'salt', hinted: ANY }],
  [instantYeast, { plain: NONE, hint: 'yeast', hinted: ANY }],
  [bakingPowder, { plain: NONE, hint: 'leavening', hinted: ANY }],
  [bakingSoda, { plain: NONE, hint: 'leavening', hinted: ANY }],
  // As the strongest of them.
  [
    lift,
    { plain: NONE, hint: 'leavening', hinted: upTo(Math.max(...leavening.sodaAsPowder, ...leavening.ammoniaAsPowder)) },
  ],
  [agarShare, { plain: NONE, hint: 'gelling', hinted: ANY }],
  // As pure starch, as dried fruit or pulses, as a dried culture, as grape sugar, as spirit and as salt.
  [thickenerShare, { plain: upTo(2.2) }],
  [dressedShare, { plain: upTo(3) }],
  [mashedShare, { plain: upTo(3) }],
  [cultureShare, { plain: upTo(100) }],
  [preparedFruit, { plain: upTo(3) }],
  [sucroseEquivalent, { plain: upTo(sucroseEquivalents.monosaccharide) }],
  [
    otherDepression,
    { plain: upTo(celsiusPerGramOfWater.alcohol), hint: 'salt', hinted: upTo(celsiusPerGramOfWater.salt) },
  ],
]);

function openShare(share: ShareOf, brings: readonly Brings[]): Range {
  return hinted(share, brings) ?? OPEN.get(share)?.plain ?? ANY;
}

function hinted(share: ShareOf, brings: readonly Brings[]): Range | undefined {
  const open = OPEN.get(share);
  return open?.hint !== undefined && brings.includes(open.hint) ? open.hinted : undefined;
}

const ONE: Range = exactly(1);

export function rangeOf(share: Share): Range | undefined {
  if (typeof share !== 'number') return share;
  return share === 0 ? NONE : share === 1 ? ONE : exactly(share);
}
