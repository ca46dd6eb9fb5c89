/**
 * Knows the figures that a label declares of a serving or of 100 g, and by which rule each is rounded.
 * Refuses to work out what the whole holds, and what stands beside the figures.
 */

import type { Mineral } from '../food/minerals.ts';
import type { Range } from '../measure/quantity.ts';
import {
  between,
  euEnergy,
  euGrams,
  euSalt,
  euSaturates,
  type LabelFigure,
  US_DAILY,
  usCholesterol,
  usDailyValue,
  usEnergy,
  usFat,
  usGrams,
  usMineral,
  usSodium,
} from './label.ts';
import { CONTENT_FIELDS, type Contents, type Nutrition } from './nutrition.ts';
import { round } from './rounded.ts';

/** Figures of a label, rounded; null where not known. */
export interface Label {
  /** `one of 8 slices` or `100 g`. */
  readonly of: string;
  readonly basis: 'before cooking' | 'as weighed after cooking' | 'as estimated after cooking';
  readonly mass_g: number | null;
  readonly energy: LabelFigure | null;
  readonly fat: LabelFigure | null;
  readonly saturates: LabelFigure | null;
  /** Of the United States alone, as cholesterol, added sugars and minerals are: null on a label of the European Union, too. */
  readonly trans_fat: LabelFigure | null;
  readonly cholesterol: LabelFigure | null;
  readonly carbohydrate: LabelFigure | null;
  readonly sugars: LabelFigure | null;
  readonly added_sugars: LabelFigure | null;
  readonly fibre: LabelFigure | null;
  readonly protein: LabelFigure | null;
  readonly salt: LabelFigure | null;
  readonly sodium: LabelFigure | null;
  readonly vitamin_d: LabelFigure | null;
  readonly calcium: LabelFigure | null;
  readonly iron: LabelFigure | null;
  readonly potassium: LabelFigure | null;
}

/** Salt is sodium × 2.5 (Regulation (EU) 1169/2011, annex I). */
const SALT_PER_SODIUM = 2.5;

/** A serving, rounded as 21 CFR 101.9(c) has it; null where the yield is no number of servings. `by` is another serving: its share of the whole, and its words. */
export function usLabel(nutrition: Nutrition, by?: { readonly share: number; readonly of: string }): Label | null {
  const { servings, minerals } = nutrition;
  const part = by?.share ?? (servings === null ? null : 1 / servings);
  if (part === null) return null;
  const share = contentsTimes(nutrition.whole, part);
  const { fat, carbohydrate, protein, alcohol } = share;
  // Atwater factors, 21 CFR 101.9(c)(1)(i)(B).
  const kcal = sum([fat, 9], [carbohydrate, 4], [protein, 4], [alcohol, 7]);
  const sodiumMg = share.salt === null ? null : (share.salt / SALT_PER_SODIUM) * 1000;
  const mineral = (of: Mineral, unit: 'mg' | 'mcg', daily: number): LabelFigure | null =>
    ranged(minerals[of], (amount) => usMineral(amount, unit, daily));
  const ranged = (range: Range | null, round: (value: number) => LabelFigure): LabelFigure | null =>
    range === null ? null : between(round(range.low * part), round(range.high * part));
  return {
    ...labelHead(nutrition, by?.of ?? nutrition.serving, part),
    energy: rounded(kcal, (v) => ({ ...usEnergy(v), text: `${usEnergy(v).text} kcal` })),
    fat: rounded(fat, ofDay(usFat, US_DAILY.fatG)),
    saturates: rounded(share.saturates, ofDay(usFat, US_DAILY.saturatesG)),
    trans_fat: ranged(nutrition.transFat, usFat),
    cholesterol: ranged(minerals.cholesterol, ofDay(usCholesterol, US_DAILY.cholesterolMg)),
    carbohydrate: rounded(carbohydrate, ofDay(usGrams, US_DAILY.carbohydrateG)),
    sugars: rounded(share.sugars, usGrams),
    added_sugars: ranged(nutrition.addedSugars, ofDay(usGrams, US_DAILY.addedSugarsG)),
    fibre: rounded(share.fibre, ofDay(usGrams, US_DAILY.fibreG)),
    protein: rounded(protein, usGrams),
    salt: null,
    sodium: rounded(sodiumMg, ofDay(usSodium, US_DAILY.sodiumMg)),
    vitamin_d: mineral('vitamin D', 'mcg', US_DAILY.vitaminDMcg),
    calcium: mineral('calcium', 'mg', US_DAILY.calciumMg),
    iron: mineral('iron', 'mg', US_DAILY.ironMg),
    potassium: mineral('potassium', 'mg', US_DAILY.potassiumMg),
  };
}

/** The figure with its share of a day, which is of the amount before it is rounded, as 21 CFR 101.9(d)(7)(ii) allows (from memory). */
const ofDay =
  (round: (value: number) => LabelFigure, daily: number) =>
  (value: number): LabelFigure => ({ ...round(value), daily_percent: usDailyValue(value, daily) });

/** 100 g, rounded as the European Union's guidance has it; carbohydrate without fibre. */
export function euLabel(nutrition: Nutrition): Label | null {
  const massG = nutrition.cookedG ?? nutrition.rawG;
  if (massG === null || massG <= 0) return null;
  const share = contentsTimes(nutrition.whole, 100 / massG);
  const { fat, carbohydrate, fibre, protein, alcohol } = share;
  const available = carbohydrate === null || fibre === null ? null : Math.max(0, carbohydrate - fibre);
  // Regulation (EU) 1169/2011, annex XIV.
  const kj = sum([fat, 37], [available, 17], [fibre, 8], [protein, 17], [alcohol, 29]);
  const kcal = sum([fat, 9], [available, 4], [fibre, 2], [protein, 4], [alcohol, 7]);
  return {
    ...labelHead(nutrition, '100 g', 100 / massG),
    energy: kj === null || kcal === null ? null : euEnergy(kj, kcal),
    fat: rounded(fat, euGrams),
    saturates: rounded(share.saturates, euSaturates),
    ...OF_US_ALONE,
    carbohydrate: rounded(available, euGrams),
    sugars: rounded(share.sugars, euGrams),
    fibre: rounded(fibre, euGrams),
    protein: rounded(protein, euGrams),
    salt: rounded(share.salt, euSalt),
    sodium: null,
  };
}

const OF_US_ALONE = {
  trans_fat: null,
  cholesterol: null,
  added_sugars: null,
  vitamin_d: null,
  calcium: null,
  iron: null,
  potassium: null,
} as const;

function labelHead(
  { cookedG, rawG, estimatedG }: Nutrition,
  of: string,
  by: number,
): Pick<Label, 'of' | 'basis' | 'mass_g'> {
  const massG = cookedG ?? rawG;
  return {
    of,
    basis:
      cookedG === null
        ? 'before cooking'
        : estimatedG === undefined
          ? 'as weighed after cooking'
          : 'as estimated after cooking',
    mass_g: massG === null ? null : round(massG * by, 1),
  };
}

function contentsTimes(contents: Contents, by: number): Contents {
  return Object.fromEntries(
    CONTENT_FIELDS.map((f) => [f, contents[f] === null ? null : (contents[f] ?? 0) * by]),
  ) as Contents;
}

/** A sum of products; null where a part is not known, but for alcohol, which few tables give for foods that have none. */
function sum(...terms: readonly (readonly [number | null, number])[]): number | null {
  let total = 0;
  for (const [value, factor] of terms) {
    if (value === null && factor !== 7 && factor !== 29) return null;
    total += (value ?? 0) * factor;
  }
  return total;
}

const rounded = (value: number | null, round: (value: number) => LabelFigure): LabelFigure | null =>
  value === null ? null : round(value);
