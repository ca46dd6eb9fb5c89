/**
 * Knows how the figures of a nutrition label are rounded, in the United States for a serving and in the European Union for 100 g.
 * Refuses to work them out: what is not known is not rounded.
 *
 * US: 21 CFR 101.9(c) and the FDA Food Labeling Guide, appendix H. EU: Regulation (EU) 1169/2011, annexes I, XIV and XV, and the Commission's
 * guidance on tolerances of December 2012, section 6 (from memory).
 */
import { round } from './rounded.ts';

export interface LabelFigure {
  /** As declared; for `less than 1 g` the bound. */
  readonly value: number;
  /** The least that it may be, where it is only known to lie between two; `value` is the most. */
  readonly low?: number;
  readonly text: string;
  /** Per cent of the daily value, where a US label gives one. */
  readonly daily_percent?: number;
}

/** `12 g (15 % DV)`. */
export const figureText = ({ text, daily_percent: daily }: LabelFigure): string =>
  daily === undefined ? text : `${text} (${daily} % DV)`;

/** What to say once where a figure has it. */
export const DAILY_NOTE = 'DV is the daily value of the US label, for 2,000 kcal a day';

// United States.

/** Below 5 it is 0; up to 50 the nearest 5; above, the nearest 10. */
export function usEnergy(kcal: number): LabelFigure {
  const value = kcal < 5 ? 0 : roundTo(kcal, kcal <= 50 ? 5 : 10);
  return { value, text: String(value) };
}

/** Total, saturated, trans, mono- and polyunsaturated fat: below 0.5 g it is 0; below 5 the nearest 0.5; else the nearest 1. */
export function usFat(grams: number): LabelFigure {
  return grammes(grams < 0.5 ? 0 : roundTo(grams, grams < 5 ? 0.5 : 1), 1);
}

/** Below 2 mg it is 0; up to 5 `less than 5 mg`; above, the nearest 5. */
export function usCholesterol(mg: number): LabelFigure {
  if (mg >= 2 && mg <= 5) return { value: 5, text: 'less than 5 mg' };
  return milligrams(mg < 2 ? 0 : roundTo(mg, 5));
}

/** Below 5 mg it is 0; up to 140 the nearest 5; above, the nearest 10. */
export function usSodium(mg: number): LabelFigure {
  return milligrams(mg < 5 ? 0 : roundTo(mg, mg <= 140 ? 5 : 10));
}

/** Carbohydrate, fibre, sugars, added sugars and protein: below 0.5 g it is 0; below 1 `less than 1 g`; else the nearest 1. */
export function usGrams(grams: number): LabelFigure {
  if (grams >= 0.5 && grams < 1) return { value: 1, text: 'less than 1 g' };
  return grammes(grams < 0.5 ? 0 : roundTo(grams, 1), 0);
}

/** Per cent of the daily value of a main nutrient: the nearest 1. */
export const usDailyValue = (amount: number, daily: number): number => Math.round((amount / daily) * 100 + TIE);

/** Per cent of the daily value of a vitamin or mineral: below 2 it is 0; up to 10 the nearest 2; up to 50 the nearest 5; above, the nearest 10. */
export function usMineralDailyValue(percent: number): number {
  if (percent < 2) return 0;
  return roundTo(percent, percent <= 10 ? 2 : percent <= 50 ? 5 : 10);
}

/**
 * Vitamin D, calcium, iron, potassium: amounts to the unit of the daily values or finer, 101.9(c)(8)(ii) and (iv); here the tenth of an mg or µg of what a day needs less than
 * 25 of, the 10 mg of what it needs 250 or more of, as the FDA wrote of supplements in its guidance (quoted in 2018). Below 2 % of a day it may be 0.
 */
export function usMineral(amount: number, unit: 'mg' | 'mcg', daily: number): LabelFigure {
  const percent = usMineralDailyValue((amount / daily) * 100);
  const value = percent === 0 ? 0 : roundTo(amount, daily < 25 ? 0.1 : 10);
  return { value, text: `${plain(value, 1)} ${unit}`, daily_percent: percent };
}

/** A figure that is only known to lie between two: one where the label says the same of both. */
export function between(low: LabelFigure, high: LabelFigure): LabelFigure {
  if (low.text === high.text) return high;
  const { daily_percent: daily, ...most } = high;
  return {
    ...most,
    low: low.value,
    text: `${low.text.replace(/ m?c?g$/, '')} to ${high.text}`,
    ...(daily !== undefined && { daily_percent: daily }),
  };
}

/** From 2 to 5 servings the nearest half, above the nearest whole; `about` where it was rounded. */
export function usServings(servings: number): LabelFigure {
  const value = roundTo(servings, servings <= 5 ? 0.5 : 1);
  return { value, text: Math.abs(value - servings) < 1e-6 ? plain(value, 1) : `about ${plain(value, 1)}` };
}

/** Daily values of 2016: 21 CFR 101.9(c)(8) and (9). */
export const US_DAILY = {
  fatG: 78,
  saturatesG: 20,
  cholesterolMg: 300,
  sodiumMg: 2300,
  carbohydrateG: 275,
  fibreG: 28,
  addedSugarsG: 50,
  proteinG: 50,
  vitaminDMcg: 20,
  calciumMg: 1300,
  ironMg: 18,
  potassiumMg: 4700,
} as const;

// European Union.

/** Kilojoules and kilocalories, each the nearest 1. */
export const euEnergy = (kj: number, kcal: number): LabelFigure => ({
  value: Math.round(kj),
  text: `${Math.round(kj)} kJ / ${Math.round(kcal)} kcal`,
});

/** Fat, carbohydrate, sugars, fibre and protein: from 10 g the nearest 1; below, the nearest 0.1; up to 0.5 it may be 0. */
export function euGrams(grams: number): LabelFigure {
  if (grams <= 0.5) return { value: 0, text: grams === 0 ? '0 g' : '<0.5 g' };
  return grammes(roundTo(grams, grams >= 10 ? 1 : 0.1), 1);
}

/** Saturates: the same, but 0 only up to 0.1 g. */
export function euSaturates(grams: number): LabelFigure {
  if (grams <= 0.1) return { value: 0, text: grams === 0 ? '0 g' : '<0.1 g' };
  return grammes(roundTo(grams, grams >= 10 ? 1 : 0.1), 1);
}

/** Salt: from 1 g the nearest 0.1; below, the nearest 0.01; up to 0.0125 it may be 0. */
export function euSalt(grams: number): LabelFigure {
  if (grams <= 0.0125) return { value: 0, text: grams === 0 ? '0 g' : '<0.01 g' };
  return grammes(roundTo(grams, grams >= 1 ? 0.1 : 0.01), 2);
}

/** Ties go up, also where the tie is not exact in binary. */
const TIE = 1e-9;
const roundTo = (value: number, step: number): number =>
  Number((Math.floor(value / step + 0.5 + TIE) * step).toFixed(4));
const plain = (value: number, decimals: number): string => String(round(value, decimals));
const grammes = (value: number, decimals: number): LabelFigure => ({ value, text: `${plain(value, decimals)} g` });
const milligrams = (value: number): LabelFigure => ({ value, text: `${plain(value, 0)} mg` });
