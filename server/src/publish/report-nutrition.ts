/**
 * Knows the nutrition figures of a report: a serving, 100 g, both labels, and for each figure that is not known the ingredients it is not known for.
 * Refuses to round for a label: `label.ts` does.
 */
import { type Component, shareOf } from '../food/composition.ts';
import type { Food } from '../food/food.ts';
import { addedSugarsIn, transFatIn } from '../food/label-shares.ts';
import { mineralIn } from '../food/minerals.ts';
import { linesNotUnderstood } from '../recipe/list/not-understood.ts';
import type { Ingredient, Recipe } from '../recipe/model.ts';
import type { Trial } from '../recipe/trials/trials.ts';
import { euLabel, usLabel } from './declared.ts';
import { assumptions, likenessesSaid } from './label/assumed.ts';
import { type ContentField, mixOf, type Nutrition, nutritionOf } from './nutrition.ts';
import { totalG } from './report-part.ts';
import type { LabelField, ReportNutrition, ServingField } from './report-shape.ts';
import { round } from './rounded.ts';

type Figures = Readonly<Record<ServingField, number | null>>;

/** `trials` are those of the recipe's own file; `cooked` takes away what cooking does. */
export function reportNutrition(recipe: Recipe, trials: readonly Trial[], cooked = false): ReportNutrition {
  const nutrition = nutritionOf(recipe, trials, cooked);
  const { cookedG, weighedTrials, notCounted } = nutrition;
  return {
    cooked_g: cookedG === null ? null : round(cookedG, 1),
    weighed_trials: weighedTrials,
    us_per_serving: usLabel(nutrition),
    eu_per_100g: euLabel(nutrition),
    per_100g: per100g(nutrition),
    not_known_for: notKnownFor(recipe, nutrition),
    not_counted: notCounted,
    assumes: cooked ? assumptions(recipe, nutrition, cooked) : likenessesSaid(recipe),
  };
}

/** Of so many pieces, as they go in; null where that is no number. */
export function perServing(all: readonly Ingredient[], pieces: number | undefined): Figures | null {
  if (pieces === undefined || pieces <= 0 || all.length === 0) return null;
  const mix = mixOf(all);
  const complete = all.every((i) => i.weighed.known || i.free || i.optional);
  return figuresOf((component) => (complete ? totalG(mix, component) : null), 1 / pieces);
}

/** The same of what cooking leaves. */
export function perServingCooked(recipe: Recipe, trials: readonly Trial[]): Figures | null {
  const { whole, servings } = nutritionOf(recipe, trials, true);
  return servings === null ? null : figuresOf((field) => whole[field], 1 / servings);
}

function per100g({ whole, cookedG, rawG }: Nutrition): Figures | null {
  const massG = cookedG ?? rawG;
  return massG === null || massG <= 0 ? null : figuresOf((field) => whole[field], 100 / massG);
}

function figuresOf(whole: (of: ContentField) => number | null, by: number): Figures {
  const share = (of: ContentField): number | null => {
    const total = whole(of);
    return total === null ? null : round(total * by, 2);
  };
  const [fat, protein, carbohydrate, salt] = [share('fat'), share('protein'), share('carbohydrate'), share('salt')];
  const energy =
    fat === null || protein === null || carbohydrate === null
      ? null
      : 9 * fat + 4 * protein + 4 * carbohydrate + 7 * (share('alcohol') ?? 0);
  return {
    // Atwater factors, 21 CFR 101.9(c)(1)(i)(B).
    energy_kcal: energy === null ? null : round(energy, 0),
    fat_g: fat,
    saturates_g: share('saturates'),
    carbohydrate_g: carbohydrate,
    sugars_g: share('sugars'),
    fibre_g: share('fibre'),
    protein_g: protein,
    salt_g: salt,
    // Salt is sodium × 2.5, Regulation (EU) 1169/2011, annex I.
    sodium_mg: salt === null ? null : round((salt / 2.5) * 1000, 0),
  };
}

/** What each row of a label hangs on; the energy of the European one on fibre, too. */
const ROWS: Readonly<Partial<Record<LabelField, readonly ContentField[]>>> = {
  energy: ['fat', 'carbohydrate', 'fibre', 'protein'],
  fat: ['fat'],
  saturates: ['saturates'],
  carbohydrate: ['carbohydrate', 'fibre'],
  sugars: ['sugars'],
  fibre: ['fibre'],
  protein: ['protein'],
  salt: ['salt'],
};

/** What of a food each row of the United States' label alone hangs on. */
const ROWS_BY_FOOD: Readonly<Partial<Record<LabelField, (food: Food) => unknown>>> = {
  trans_fat: transFatIn,
  cholesterol: (food) => mineralIn(food, 'cholesterol'),
  added_sugars: addedSugarsIn,
  vitamin_d: (food) => mineralIn(food, 'vitamin D'),
  calcium: (food) => mineralIn(food, 'calcium'),
  iron: (food) => mineralIn(food, 'iron'),
  potassium: (food) => mineralIn(food, 'potassium'),
};

export function notKnownFor(recipe: Recipe, nutrition: Nutrition): ReportNutrition['not_known_for'] {
  const { whole } = nutrition;
  const label = usLabel(nutrition, { share: 1, of: '' });
  const counted = recipe.parts
    .flatMap(({ head }) => head.ingredients)
    .filter(({ optional, ofPart }) => !optional && ofPart === undefined);
  // Where a weight is not known, no figure is: it alone is named.
  const unread = linesNotUnderstood(recipe).flatMap(({ part, text }) => (part === undefined ? [] : [text]));
  const unweighed = [
    ...counted.flatMap(({ weighed, free, name }) =>
      weighed.known || free || unread.some((line) => line.includes(name)) ? [] : [name],
    ),
    ...unread,
  ];
  const lacking = (field: Component): string[] =>
    counted.flatMap(({ food, weighed, name }) =>
      weighed.known && (food === undefined || shareOf(food.per100, field) === undefined) ? [name] : [],
    );
  const lackingBy = (of: (food: Food) => unknown): string[] =>
    counted.flatMap(({ food, weighed, name }) =>
      weighed.known && (food === undefined || of(food) === undefined) ? [name] : [],
    );
  const known = Object.entries(ROWS).flatMap(([row, fields]): [string, string[]][] => {
    const missing = fields.filter((field) => whole[field] === null);
    return missing.length === 0 ? [] : [[row, missing.flatMap(lacking)]];
  });
  const byFood = Object.entries(ROWS_BY_FOOD).flatMap(([row, of]): [string, string[]][] =>
    label?.[row as keyof typeof ROWS_BY_FOOD] === null ? [[row, lackingBy(of)]] : [],
  );
  return Object.fromEntries(
    [...known, ...byFood].map(([row, names]) => [row, [...new Set(unweighed.length > 0 ? unweighed : names)]]),
  );
}
