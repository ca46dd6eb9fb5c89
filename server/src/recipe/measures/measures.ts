/**
 * Knows how the measures of a formula are worked out from composition: what stands above the line, and what below.
 * Refuses to judge them: the bands are in `kinds.ts`. What a food counts for is in `measures/`.
 */

import { percentRange, significant } from '../../measure/number-text.ts';
import type { Quantity, Range } from '../../measure/quantity.ts';
import { baseOf } from '../../measure/unit.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Ingredient } from '../model.ts';
import { freezingPointC, lactoseShare, otherDepression, sucroseEquivalent } from './freezing.ts';
import { agarShare, gelatineG } from './gelling.ts';
import type { MeasureName } from './kind.ts';
import { bakingPowder, bakingSoda, instantYeast, lift } from './leavening.ts';
import { countsFor, plainFood, rangeOf, type ShareOf, toldShare } from './open.ts';
import { ratioOf, type Term } from './ratio.ts';
import {
  acidLiquid,
  acidShare,
  addedSugar,
  batterWater,
  butterShare,
  chocolateShare,
  cookingLiquid,
  creamShare,
  dairyShare,
  eggProtein,
  eggShare,
  fatShare,
  fleshShare,
  flourLikeShare,
  flourShare,
  freeWater,
  grainShare,
  liquidShare,
  liquorShare,
  looseLiquidShare,
  mayLieIn,
  milkSolids,
  mixWithoutPieces,
  oilShare,
  part,
  preparedFruit,
  saltShare,
  settingStarch,
  solidsShare,
  stockSolids,
  sugarSolids,
  sugarsButLactose,
  thickenerShare,
  waterShare,
  whiteShare,
  wholeShare,
  yolkShare,
  yolkStrength,
} from './shares.ts';

export type MeasureValue =
  | {
      readonly known: true;
      readonly value: Range;
      /** What the range hangs on for a good part: lines of a food that could be several, or that nobody knows. */
      readonly open?: readonly Ingredient[];
    }
  | { readonly known: false; readonly why: string };

interface Ratio {
  /** Completes "The … is 31 %". */
  readonly words: string;
  /** Of what stands below the line: per cent of it, or so many times it. */
  readonly unit: 'percent' | 'times';
  readonly top: ShareOf;
  /** The grams above the line, where they are not a share of the weight. */
  readonly topG?: (ingredient: Ingredient) => Range | undefined;
  readonly bottom: ShareOf;
  /** What there is none of when nothing stands below the line. */
  readonly per: string;
  /** What there is none of when nothing stands above it, where the measure then says nothing. */
  readonly without?: string;
}

interface Computed {
  readonly words: string;
  readonly unit: 'celsius';
  readonly compute: (ingredients: readonly Ingredient[]) => MeasureValue;
}

type Definition = Ratio | Computed;

const DEFINITIONS = {
  hydration: { words: 'water per flour', unit: 'percent', top: freeWater, bottom: flourShare, per: 'flour' },
  'cake hydration': {
    words: 'water per flour',
    unit: 'percent',
    top: batterWater,
    bottom: flourLikeShare,
    per: 'flour',
  },
  fat: { words: 'fat per flour', unit: 'percent', top: fatShare, bottom: flourLikeShare, per: 'flour' },
  sugar: { words: 'sugar per flour', unit: 'percent', top: addedSugar, bottom: flourLikeShare, per: 'flour' },
  salt: { words: 'salt per flour', unit: 'percent', top: saltShare, bottom: flourShare, per: 'flour' },
  egg: { words: 'egg per flour', unit: 'percent', top: eggShare, bottom: flourLikeShare, per: 'flour' },
  yeast: {
    words: 'yeast, as instant, per flour',
    unit: 'percent',
    top: instantYeast,
    bottom: flourShare,
    per: 'flour',
    without: 'yeast',
  },
  leavening: {
    words: 'leavening, as baking powder, per flour',
    unit: 'percent',
    top: lift,
    bottom: flourLikeShare,
    per: 'flour',
  },
  'baking powder': {
    words: 'baking powder per flour',
    unit: 'percent',
    top: bakingPowder,
    bottom: flourLikeShare,
    per: 'flour',
    without: 'baking powder',
  },
  'baking soda': {
    words: 'baking soda per flour',
    unit: 'percent',
    top: bakingSoda,
    bottom: flourLikeShare,
    per: 'flour',
    without: 'baking soda',
  },
  'egg per fat': { words: 'egg to fat', unit: 'times', top: eggShare, bottom: fatShare, per: 'fat', without: 'egg' },
  'liquid per sugar': {
    words: 'liquid, egg counted in, to sugar',
    unit: 'times',
    top: (food) => (food.class === 'egg' ? eggShare(food) : looseLiquidShare(food)),
    bottom: addedSugar,
    per: 'sugar',
  },
  'egg protein': {
    words: 'egg protein in the mix',
    unit: 'percent',
    top: eggProtein,
    bottom: mixWithoutPieces,
    per: 'mix',
  },
  'yolk per dairy': {
    words: 'egg yolk per milk and cream',
    unit: 'percent',
    top: yolkStrength,
    bottom: dairyShare,
    per: 'milk or cream',
  },
  'starch per dairy': {
    words: 'starch per milk',
    unit: 'percent',
    top: settingStarch,
    bottom: dairyShare,
    per: 'milk',
    without: 'starch',
  },
  'thickener per liquid': {
    words: 'thickener, as flour, per liquid',
    unit: 'percent',
    top: thickenerShare,
    bottom: liquidShare,
    per: 'liquid',
    without: 'starch',
  },
  gelatine: {
    words: 'gelatine, as 200 bloom, in the whole',
    unit: 'percent',
    top: () => 0,
    topG: gelatineG,
    bottom: mayLieIn,
    per: 'mix',
    without: 'gelatine',
  },
  agar: {
    words: 'agar in the whole',
    unit: 'percent',
    top: agarShare,
    bottom: mayLieIn,
    per: 'mix',
    without: 'agar',
  },
  'salt share': { words: 'salt in the whole', unit: 'percent', top: saltShare, bottom: wholeShare, per: 'mix' },
  'brine salt': {
    words: 'salt of the vegetables and the water',
    unit: 'percent',
    top: saltShare,
    bottom: wholeShare,
    per: 'mix',
  },
  'cure salt': {
    words: 'salt on the weight of the fish or meat',
    unit: 'percent',
    top: saltShare,
    bottom: fleshShare,
    per: 'fish or meat',
  },
  'liquor acid': {
    words: 'acid in the liquor',
    unit: 'percent',
    top: acidShare,
    bottom: liquorShare,
    per: 'pickling liquor',
  },
  'oil share': {
    words: 'oil in the whole',
    unit: 'percent',
    top: oilShare,
    bottom: wholeShare,
    per: 'mix',
    without: 'oil',
  },
  'oil per yolk': {
    words: 'oil to egg yolk',
    unit: 'times',
    top: oilShare,
    bottom: yolkShare,
    per: 'egg yolk',
    without: 'oil',
  },
  'oil per acid': {
    words: 'oil to vinegar or sour juice',
    unit: 'times',
    top: oilShare,
    bottom: acidLiquid,
    per: 'vinegar or sour juice',
    without: 'oil',
  },
  'butter per yolk': {
    words: 'butter to egg yolk',
    unit: 'times',
    top: butterShare,
    bottom: yolkShare,
    per: 'egg yolk',
  },
  'sugar per white': {
    words: 'sugar to egg white',
    unit: 'times',
    top: sugarSolids,
    bottom: whiteShare,
    per: 'egg white',
  },
  'sugar per fruit': {
    words: 'sugar to prepared fruit',
    unit: 'times',
    top: sugarSolids,
    bottom: preparedFruit,
    per: 'fruit',
  },
  'chocolate per cream': {
    words: 'chocolate to cream',
    unit: 'times',
    top: chocolateShare,
    bottom: liquidShare,
    per: 'cream',
  },
  'cream per sugar': {
    words: 'cream to sugar',
    unit: 'times',
    top: creamShare,
    bottom: sugarSolids,
    per: 'sugar',
    without: 'cream',
  },
  'liquid per rice': {
    words: 'liquid to rice',
    unit: 'times',
    top: cookingLiquid,
    bottom: grainShare,
    per: 'dry rice',
  },
  'water per bones': {
    words: 'water to bones, meat and vegetables',
    unit: 'times',
    top: (food) => (food.class === 'water' ? 1 : 0),
    bottom: stockSolids,
    per: 'bones or vegetables',
  },
  'fat share': { words: 'fat in the mix', unit: 'percent', top: (f) => part(f, 'fat'), bottom: wholeShare, per: 'mix' },
  'yolk share': {
    words: 'egg yolk in the mix',
    unit: 'percent',
    top: yolkShare,
    bottom: wholeShare,
    per: 'mix',
    without: 'egg yolk',
  },
  'milk solids': {
    words: 'share of milk solids not fat in the mix',
    unit: 'percent',
    top: milkSolids,
    bottom: wholeShare,
    per: 'mix',
    without: 'milk',
  },
  'sugars share': {
    words: 'sugar, lactose apart, in the mix',
    unit: 'percent',
    top: sugarsButLactose,
    bottom: wholeShare,
    per: 'mix',
  },
  'total solids': {
    words: 'share of solids in the mix',
    unit: 'percent',
    top: solidsShare,
    bottom: wholeShare,
    per: 'mix',
  },
  'lactose in water': {
    words: 'lactose per water',
    unit: 'percent',
    top: lactoseShare,
    bottom: waterShare,
    per: 'water',
    without: 'milk',
  },
  'freezing point': { words: 'freezing point', unit: 'celsius', compute: freezingPoint },
} satisfies Readonly<Record<MeasureName, Definition>>;

export const MEASURES: Readonly<Record<MeasureName, Definition>> = DEFINITIONS;

const WORKED = keptOn<readonly Ingredient[], Map<MeasureName, MeasureValue>>();

/** A measure over ingredients; the range carries every range of the amounts. Kept with the list. */
export function measure(name: MeasureName, ingredients: readonly Ingredient[]): MeasureValue {
  let byName = WORKED.get(ingredients);
  if (byName === undefined) {
    byName = new Map();
    WORKED.set(ingredients, byName);
  }
  let value = byName.get(name);
  if (value === undefined) {
    value = workOut(name, ingredients);
    byName.set(name, value);
  }
  return value;
}

/** The same for a list that nobody will ask about again. */
export function workOut(name: MeasureName, ingredients: readonly Ingredient[]): MeasureValue {
  const definition = MEASURES[name];
  return 'compute' in definition ? definition.compute(ingredients) : ratio(definition, ingredients);
}

/** A value of the measure as a cook reads it: `31 to 38 %`, `2.4 to 3`, `−2.6 °C`. */
export function measureText(name: MeasureName, low: number, high: number): string {
  const { unit } = MEASURES[name];
  if (unit === 'percent') return percentRange(low, high);
  const say = (value: number) => (unit === 'celsius' ? value.toFixed(1).replace('-', '−') : significant(value, 2));
  const [a, b] = [say(low), say(high)];
  const words = a === b ? a : unit === 'celsius' ? `${b} to ${a}` : `${a} to ${b}`;
  return unit === 'celsius' ? `${words} °C` : words;
}

/** `, whatever cream it is`: what the range allows for. */
export function whatever(open: readonly Ingredient[] = []): string {
  const [first, ...more] = open;
  if (first === undefined) return '';
  if (more.length > 0) return `, whatever ${open.map((i) => `\`${i.name}\``).join(', ')} are`;
  return first.match.kind === 'ambiguous'
    ? `, whatever \`${first.name}\` it is`
    : `, whatever \`${first.name}\` brings`;
}

/** A band of the measure as a cook reads it: `18 to 40 %`, `up to 2 %`, `from 1.3`. */
export function bandText(name: MeasureName, [low, high]: readonly [number | null, number | null]): string {
  if (high === null) return `from ${measureText(name, low ?? 0, low ?? 0)}`;
  return low === null || low === 0 ? `up to ${measureText(name, high, high)}` : measureText(name, low, high);
}

function ratio(definition: Ratio, ingredients: readonly Ingredient[]): MeasureValue {
  const { top, topG, bottom, per } = definition;
  const terms: Term[] = [];
  let untold: Untold[] | undefined;
  for (const ingredient of ingredients) {
    if (ingredient.free) continue;
    const { weighed } = ingredient;
    const food = plainFood(ingredient);
    const above = food === undefined ? toldShare(top, ingredient) : rangeOf(top(food, ingredient));
    const below = food === undefined ? toldShare(bottom, ingredient) : rangeOf(bottom(food));
    const term = {
      grams: NOTHING,
      top: above ?? countsFor(top, ingredient),
      bottom: below ?? countsFor(bottom, ingredient),
    };
    const own = topG?.(ingredient);
    const written = weighed.known ? weighed.grams : spoonOf(ingredient);
    if (written === undefined) {
      if (term.top.high === 0 && term.bottom.high === 0 && (own === undefined || own.high === 0)) continue;
      const why = weighed.known ? '' : `: ${weighed.why}`;
      return { known: false, why: `the weight of ${ingredient.name} is not known${why}` };
    }
    term.grams = ingredient.optional ? { low: 0, high: written.high } : written;
    terms.push(term);
    if (above === undefined || below === undefined) {
      untold ??= [];
      untold.push({ ingredient, ...term });
    }
    if (own !== undefined && own.high > 0) terms.push({ grams: ONE, top: own, bottom: NOTHING });
  }
  if (definition.without !== undefined && terms.every((t) => t.top.high === 0))
    return { known: false, why: `there is no ${definition.without}` };
  const value = ratioOf(terms);
  if (value === undefined) {
    const mayBe = untold?.filter(({ bottom }) => bottom.high > 0) ?? [];
    const names = mayBe.map(({ ingredient }) => `\`${ingredient.name}\``).join(', ');
    return {
      known: false,
      why: mayBe.length === 0 ? `there is no ${per}` : `there is no other ${per} than what ${names} may be`,
    };
  }
  const open = untold === undefined ? [] : bearing(untold, terms);
  return open.length === 0 ? { known: true, value } : { known: true, value, open };
}

interface Untold extends Term {
  readonly ingredient: Ingredient;
}

/** Less than this share of a sum is not worth naming. */
const NEGLIGIBLE = 0.03;

/** Those on which a good part of what stands above or below the line hangs. */
function bearing(untold: readonly Untold[], terms: readonly Term[]): readonly Ingredient[] {
  const [above, below] = [sumOf(terms, 'top'), sumOf(terms, 'bottom')];
  const hangs = ({ grams, top, bottom }: Term): boolean =>
    (top.high - top.low) * grams.high > NEGLIGIBLE * above ||
    (bottom.high - bottom.low) * grams.high > NEGLIGIBLE * below;
  return untold.filter(hangs).map(({ ingredient }) => ingredient);
}

const sumOf = (terms: readonly Term[], side: 'top' | 'bottom'): number =>
  terms.reduce((sum, term) => sum + term.grams.high * term[side].high, 0);

/**
 * What a spoon of a food that nobody has weighed holds at the most, in g/ml: honey is 1.42, salt 1.22 (USDA SR26, NDB 19296, 02047, by the
 * tablespoon of 14.8 ml).
 */
const HEAVIEST = 1.5;

/** From nothing to the heaviest there is, for a teaspoon and less; undefined for any other measure. */
function spoonOf({ node: { amount } }: Ingredient): Range | undefined {
  const { unit, plus, upTo, high } = amount?.kind === 'measured' ? amount.quantity : NO_QUANTITY;
  if (unit === undefined || !SPOONS.has(unit) || plus !== undefined || upTo !== undefined) return undefined;
  return { low: 0, high: high * (baseOf(unit, 'metric') ?? 0) * HEAVIEST };
}

const NO_QUANTITY: Partial<Quantity> & Range = { low: 0, high: 0 };
const SPOONS: ReadonlySet<UnitSymbol> = new Set<UnitSymbol>(['pinch', 'dash', 'drop', 'tsp']);

const ONE: Range = { low: 1, high: 1 };
const NOTHING: Range = { low: 0, high: 0 };
/** By Leighton's table, with the salts of milk (Goff and Hartel). */
function freezingPoint(ingredients: readonly Ingredient[]): MeasureValue {
  const perWater = (top: Ratio['top']) =>
    ratio({ words: '', unit: 'percent', top, bottom: waterShare, per: 'water' }, ingredients);
  const sugars = perWater(sucroseEquivalent);
  const solids = perWater(milkSolids);
  if (!sugars.known) return sugars;
  if (!solids.known) return solids;
  const others = perWater(otherDepression);
  if (!others.known) return others;
  const open = [...new Set([sugars, solids, others].flatMap((part) => part.open ?? []))];
  const value = freezingPointC(sugars.value, solids.value, others.value);
  return open.length === 0 ? { known: true, value } : { known: true, value, open };
}
