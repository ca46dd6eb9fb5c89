/**
 * Knows the measures of a formula: what stands above the line, and what below.
 * Refuses to work them out, and to judge them.
 */
import type { Ingredient } from '../model.ts';
import { freezingPointC, lactoseShare, otherDepression, sucroseEquivalent } from './freezing.ts';
import { agarShare, gelatineG } from './gelling.ts';
import type { MeasureName } from './kind.ts';
import { KITCHEN } from './kitchen-definitions.ts';
import { addedSaltShare } from './kitchen-shares.ts';
import { bakingPowder, bakingSoda, instantYeast, lift } from './leavening.ts';
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
  flourOrMealShare,
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
import { SWEET } from './sweet-definitions.ts';
import { type MeasureValue, type Ratio, ratio } from './worked-ratio.ts';

interface Computed {
  readonly words: string;
  readonly unit: 'celsius';
  readonly compute: (ingredients: readonly Ingredient[]) => MeasureValue;
}

type Definition = Ratio | Computed;

const DEFINITIONS = {
  ...KITCHEN,
  ...SWEET,
  hydration: { words: 'water per flour', unit: 'percent', top: freeWater, bottom: flourOrMealShare, per: 'flour' },
  'cake hydration': {
    words: 'water per flour',
    unit: 'percent',
    top: batterWater,
    bottom: flourLikeShare,
    per: 'flour',
  },
  fat: { words: 'fat per flour', unit: 'percent', top: fatShare, bottom: flourLikeShare, per: 'flour' },
  sugar: { words: 'sugar per flour', unit: 'percent', top: addedSugar, bottom: flourLikeShare, per: 'flour' },
  salt: { words: 'salt per flour', unit: 'percent', top: saltShare, bottom: flourOrMealShare, per: 'flour' },
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
    top: addedSaltShare,
    bottom: wholeShare,
    per: 'mix',
  },
  'cure salt': {
    words: 'salt on the weight of the fish or meat',
    unit: 'percent',
    top: addedSaltShare,
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

/** By Leighton's table, with the salts of milk (Goff, University of Guelph). */
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
