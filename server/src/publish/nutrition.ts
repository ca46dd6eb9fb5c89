/**
 * Knows what a whole recipe, a serving and 100 g of it hold, and what of it is not known; water lost in cooking is allowed for where a trial weighed it.
 * Refuses to guess a loss, or to count an unknown food as nothing.
 */

import { type Component, compose, type MixComposition } from '../food/composition.ts';
import type { FoodClass } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle } from '../measure/quantity.ts';
import { baseOf } from '../measure/unit.ts';
import { namelessLines } from '../recipe/list/not-understood.ts';
import type { Ingredient, Recipe } from '../recipe/model.ts';
import { factsOf, isAsTested, type Trial } from '../recipe/trials/trials.ts';
import { yieldNoun } from '../recipe/yield.ts';
import {
  euEnergy,
  euGrams,
  euSalt,
  euSaturates,
  type LabelFigure,
  US_DAILY,
  usDailyValue,
  usEnergy,
  usFat,
  usGrams,
  usSodium,
} from './label.ts';
import { round } from './rounded.ts';

/** What the mix holds in grams; null where too much of it does not say. */
export type Contents = Readonly<Record<ContentField, number | null>>;
export type ContentField = 'fat' | 'saturates' | 'carbohydrate' | 'sugars' | 'fibre' | 'protein' | 'alcohol' | 'salt';
const FIELDS: readonly ContentField[] = [
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'fibre',
  'protein',
  'alcohol',
  'salt',
];

export interface Nutrition {
  /** Null where the weight of some ingredient is not known. */
  readonly rawG: number | null;
  /** What the trials weighed at the end, and how many did; null where none did. */
  readonly cookedG: number | null;
  readonly weighedTrials: number;
  /** Of the whole recipe. */
  readonly whole: Contents;
  /** How many the yield is; null where it is no number of pieces. */
  readonly servings: number | null;
  /** `one of 8 slices`. */
  readonly serving: string;
  /** Ingredients that are not in the figures: no weight, or a food that is not known. */
  readonly notCounted: readonly string[];
}

/** `trials` are those of the recipe's own file. */
export function nutritionOf(recipe: Recipe, trials: readonly Trial[]): Nutrition {
  const all = recipe.parts.flatMap((p) => p.head.ingredients).filter((i) => !i.optional);
  const complete =
    !recipe.inherits &&
    all.length > 0 &&
    all.every((i) => i.weighed.known || i.free) &&
    recipe.parts.every((p) => !p.head.nominal && p.head.notUnderstood.length === 0);
  const mix = mixOf(all);
  const rawG = complete ? mix.massG : null;
  const { cookedG, weighedTrials } =
    rawG === null ? { cookedG: null, weighedTrials: 0 } : cookedOf(recipe, trials, rawG, mix);
  return {
    rawG,
    cookedG,
    weighedTrials,
    whole: Object.fromEntries(FIELDS.map((f) => [f, complete ? totalG(mix, f) : null])) as Contents,
    servings: servingsOf(recipe),
    serving: servingText(recipe),
    notCounted: [
      ...all
        .filter((i) => i.ofPart === undefined && !isSeasoning(i) && (!i.weighed.known || i.food === undefined))
        .map((i) => i.name),
      ...recipe.parts.flatMap(({ head }) => namelessLines(head)),
    ],
  };
}

/** Pepper to taste moves no figure; salt does. */
const isSeasoning = ({ free, food }: Ingredient): boolean => free && food !== undefined && SEASONINGS.has(food.class);
const SEASONINGS: ReadonlySet<FoodClass> = new Set<FoodClass>(['leafy herb', 'dried herb', 'spice']);

/** The composition of weighed ingredients, by the likeliest of each range; what is not weighed lacks everything. */
export function mixOf(ingredients: readonly Ingredient[]): MixComposition {
  return compose(
    ingredients.flatMap(({ food, weighed, optional }) =>
      weighed.known && !optional ? [{ food, grams: likelyGrams(weighed) }] : [],
    ),
  );
}

/** Components lacking in less than this share of the mix still count as known. */
const NEGLIGIBLE = 0.02;

/** A total in grams, or null where too much of the mix does not say. */
export function totalG(mix: MixComposition, component: Component): number | null {
  const total = mix.totals[component];
  return total.known || total.lacking <= mix.massG * NEGLIGIBLE ? total.grams : null;
}

/** How many pieces the recipe makes. */
export function servingsOf({ yield: made }: Recipe): number | null {
  const amount = made?.node.amount;
  if (amount === undefined || amount.unit !== undefined) return null;
  const pieces = middle(amount.quantity);
  return pieces > 0 ? pieces : null;
}

function servingText(recipe: Recipe): string {
  const pieces = servingsOf(recipe);
  const of = recipe.yield === undefined ? '' : yieldNoun(recipe.yield.node);
  if (pieces === null) return 'a serving';
  return pieces === 1 ? `1 ${of}`.trim() : `one of ${trimmed(pieces, 1)} ${of}`.trim();
}

const OUT_OF_HEAT = /\b(?:oven|pan|pot|tin|tray|dish|fryer|kettle|mould|churn|fridge|press)\b/;
/** A trial that weighed less than this share of what went in weighed one piece of it. */
const LEAST_LEFT = 0.4;

/** The mean of what trials of this very recipe weighed at the end; what it lost may only be water that it had. */
function cookedOf(
  recipe: Recipe,
  trials: readonly Trial[],
  rawG: number,
  mix: MixComposition,
): Pick<Nutrition, 'cookedG' | 'weighedTrials'> {
  const facts = factsOf(recipe);
  const waterG = totalG(mix, 'water');
  const weights = trials
    .filter(({ tested }) => tested === undefined || isAsTested(facts, tested))
    .flatMap(({ weighed }) => {
      const last = weighed.findLast(({ outOf }) => outOf === undefined || OUT_OF_HEAT.test(outOf.text.toLowerCase()));
      const unit = last?.amount.unit?.symbol;
      const grams =
        last === undefined || unit === undefined
          ? undefined
          : middle(last.amount.quantity) * (baseOf(unit, 'us') ?? Number.NaN);
      return grams === undefined || !(grams <= rawG && grams >= rawG * LEAST_LEFT) ? [] : [grams];
    })
    .filter((grams) => waterG === null || rawG - grams <= waterG);
  if (weights.length === 0) return { cookedG: null, weighedTrials: 0 };
  return { cookedG: weights.reduce((a, b) => a + b, 0) / weights.length, weighedTrials: weights.length };
}

/** Figures of a label, rounded; null where not known. */
export interface Label {
  /** `one of 8 slices` or `100 g`. */
  readonly of: string;
  readonly basis: 'before cooking' | 'as weighed after cooking';
  readonly mass_g: number | null;
  readonly energy: LabelFigure | null;
  readonly fat: LabelFigure | null;
  readonly saturates: LabelFigure | null;
  readonly carbohydrate: LabelFigure | null;
  readonly sugars: LabelFigure | null;
  readonly fibre: LabelFigure | null;
  readonly protein: LabelFigure | null;
  readonly salt: LabelFigure | null;
  readonly sodium: LabelFigure | null;
}

/** Salt is sodium × 2.5 (Regulation (EU) 1169/2011, annex I). */
const SALT_PER_SODIUM = 2.5;

/** A serving, rounded as 21 CFR 101.9(c) has it; null where the yield is no number of servings. */
export function usLabel(nutrition: Nutrition): Label | null {
  const { servings } = nutrition;
  if (servings === null) return null;
  const share = contentsTimes(nutrition.whole, 1 / servings);
  const { fat, carbohydrate, protein, alcohol } = share;
  // Atwater factors, 21 CFR 101.9(c)(1)(i)(B).
  const kcal = sum([fat, 9], [carbohydrate, 4], [protein, 4], [alcohol, 7]);
  const sodiumMg = share.salt === null ? null : (share.salt / SALT_PER_SODIUM) * 1000;
  return {
    ...labelHead(nutrition, nutrition.serving, 1 / servings),
    energy: rounded(kcal, (v) => ({ ...usEnergy(v), text: `${usEnergy(v).text} kcal` })),
    fat: rounded(fat, ofDay(usFat, US_DAILY.fatG)),
    saturates: rounded(share.saturates, ofDay(usFat, US_DAILY.saturatesG)),
    carbohydrate: rounded(carbohydrate, ofDay(usGrams, US_DAILY.carbohydrateG)),
    sugars: rounded(share.sugars, usGrams),
    fibre: rounded(share.fibre, ofDay(usGrams, US_DAILY.fibreG)),
    protein: rounded(protein, usGrams),
    salt: null,
    sodium: rounded(sodiumMg, ofDay(usSodium, US_DAILY.sodiumMg)),
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
    carbohydrate: rounded(available, euGrams),
    sugars: rounded(share.sugars, euGrams),
    fibre: rounded(fibre, euGrams),
    protein: rounded(protein, euGrams),
    salt: rounded(share.salt, euSalt),
    sodium: null,
  };
}

function labelHead({ cookedG, rawG }: Nutrition, of: string, by: number): Pick<Label, 'of' | 'basis' | 'mass_g'> {
  const massG = cookedG ?? rawG;
  return {
    of,
    basis: cookedG === null ? 'before cooking' : 'as weighed after cooking',
    mass_g: massG === null ? null : round(massG * by, 1),
  };
}

function contentsTimes(contents: Contents, by: number): Contents {
  return Object.fromEntries(FIELDS.map((f) => [f, contents[f] === null ? null : (contents[f] ?? 0) * by])) as Contents;
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
