/**
 * Knows how the measures of a formula are worked out from composition: what stands above the line, and what below.
 * Refuses to judge them: the bands are in `kinds.ts`. What a food counts for is in `measures/`.
 */

import type { Food } from '../food/food.ts';
import { percentRange, significant } from '../measure/number-text.ts';
import type { Range } from '../measure/quantity.ts';
import { keptOn } from '../notation/kept.ts';
import type { Ingredient } from './ingredient.ts';
import { freezingPointC, lactoseShare, otherDepression, sucroseEquivalent } from './measures/freezing.ts';
import { gelatineG, isAgar } from './measures/gelling.ts';
import { bakingPowder, bakingSoda, instantYeast, lift } from './measures/leavening.ts';
import { ratioOf, type Term } from './measures/ratio.ts';
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
  type Share,
  saltShare,
  settingStarch,
  solidsShare,
  stockSolids,
  sugarSolids,
  sugarsButLactose,
  thickenerShare,
  waterShare,
  whiteShare,
  yolkShare,
  yolkStrength,
} from './measures/shares.ts';

export type MeasureName = keyof typeof DEFINITIONS;

export type MeasureValue =
  | { readonly known: true; readonly value: Range }
  | { readonly known: false; readonly why: string };

interface Ratio {
  /** Completes "The … is 31 %". */
  readonly words: string;
  /** Of what stands below the line: per cent of it, or so many times it. */
  readonly unit: 'percent' | 'times';
  readonly top: (food: Food, ingredient?: Ingredient) => Share;
  /** The grams above the line, where they are not a share of the weight. */
  readonly topG?: (ingredient: Ingredient) => Range | undefined;
  readonly bottom: (food: Food) => Share;
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

const all = (): number => 1;

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
    top: (f) => (isAgar(f) ? 1 : 0),
    bottom: mayLieIn,
    per: 'mix',
    without: 'agar',
  },
  'salt share': { words: 'salt in the whole', unit: 'percent', top: saltShare, bottom: all, per: 'mix' },
  'brine salt': {
    words: 'salt of the vegetables and the water',
    unit: 'percent',
    top: saltShare,
    bottom: all,
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
  'oil share': { words: 'oil in the whole', unit: 'percent', top: oilShare, bottom: all, per: 'mix', without: 'oil' },
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
  'fat share': { words: 'fat in the mix', unit: 'percent', top: (f) => part(f, 'fat'), bottom: all, per: 'mix' },
  'yolk share': {
    words: 'egg yolk in the mix',
    unit: 'percent',
    top: yolkShare,
    bottom: all,
    per: 'mix',
    without: 'egg yolk',
  },
  'milk solids': {
    words: 'share of milk solids not fat in the mix',
    unit: 'percent',
    top: milkSolids,
    bottom: all,
    per: 'mix',
    without: 'milk',
  },
  'sugars share': {
    words: 'sugar, lactose apart, in the mix',
    unit: 'percent',
    top: sugarsButLactose,
    bottom: all,
    per: 'mix',
  },
  'total solids': { words: 'share of solids in the mix', unit: 'percent', top: solidsShare, bottom: all, per: 'mix' },
  'lactose in water': {
    words: 'lactose per water',
    unit: 'percent',
    top: lactoseShare,
    bottom: waterShare,
    per: 'water',
    without: 'milk',
  },
  'freezing point': { words: 'freezing point', unit: 'celsius', compute: freezingPoint },
} satisfies Readonly<Record<string, Definition>>;

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

/** A band of the measure as a cook reads it: `18 to 40 %`, `up to 2 %`, `from 1.3`. */
export function bandText(name: MeasureName, [low, high]: readonly [number | null, number | null]): string {
  if (high === null) return `from ${measureText(name, low ?? 0, low ?? 0)}`;
  return low === null || low === 0 ? `up to ${measureText(name, high, high)}` : measureText(name, low, high);
}

/** Ingredients of unknown composition are ignored up to this share of the whole. */
const NEGLIGIBLE = 0.03;
const NOTHING: Range = { low: 0, high: 0 };

function ratio(definition: Ratio, ingredients: readonly Ingredient[]): MeasureValue {
  const { top, topG, bottom, per } = definition;
  const terms: Term[] = [];
  let whole = 0;
  let unknown = 0;
  const missing: string[] = [];
  for (const ingredient of ingredients) {
    if (ingredient.free) continue;
    const { weighed, food } = ingredient;
    const above = food === undefined ? undefined : rangeOf(top(food, ingredient));
    const below = food === undefined ? undefined : rangeOf(bottom(food));
    const own = topG?.(ingredient);
    if (!weighed.known) {
      const counts =
        above === undefined || below === undefined || above.high > 0 || below.high > 0 || (own?.high ?? 0) > 0;
      if (counts && !isPinch(ingredient))
        return { known: false, why: `the weight of ${ingredient.name} is not known: ${weighed.why}` };
      continue;
    }
    const grams = ingredient.optional ? { low: 0, high: weighed.grams.high } : weighed.grams;
    whole += grams.high;
    if (above === undefined || below === undefined) {
      unknown += grams.high;
      missing.push(ingredient.name);
    }
    terms.push({ grams, top: above ?? NOTHING, bottom: below ?? NOTHING });
    if (own !== undefined && own.high > 0) terms.push({ grams: ONE, top: own, bottom: NOTHING });
  }
  if (unknown > whole * NEGLIGIBLE)
    return { known: false, why: `the composition of ${missing.join(', ')} is not known` };
  if (definition.without !== undefined && terms.every((t) => t.top.high === 0))
    return { known: false, why: `there is no ${definition.without}` };
  const value = ratioOf(terms);
  return value === undefined ? { known: false, why: `there is no ${per}` } : { known: true, value };
}

const ONE: Range = { low: 1, high: 1 };

function rangeOf(share: Share): Range | undefined {
  if (typeof share !== 'number') return share;
  return share === 0 ? NOTHING : share === 1 ? ONE : { low: share, high: share };
}

function isPinch(ingredient: Ingredient): boolean {
  const amount = ingredient.node.amount;
  const unit = amount?.kind === 'measured' ? amount.unit?.symbol : undefined;
  return unit === 'pinch' || unit === 'dash' || unit === 'drop' || unit === 'tsp';
}

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
  return { known: true, value: freezingPointC(sugars.value, solids.value, others.value) };
}
