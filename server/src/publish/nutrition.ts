/**
 * Knows what a whole recipe, a serving and 100 g of it hold, and what of it is not known; water lost in cooking is allowed for where a trial weighed it.
 * Refuses to guess a loss, or to count an unknown food as nothing.
 */

import { type Component, compose, type MixComposition } from '../food/composition.ts';
import type { Food, FoodClass } from '../food/food.ts';
import { addedSugarsIn, transFatIn } from '../food/label-shares.ts';
import { MINERALS, type Mineral, mineralIn } from '../food/minerals.ts';
import { likelyGrams } from '../food/weigh.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle, type Range } from '../measure/quantity.ts';
import { baseOf } from '../measure/unit.ts';
import { reducedTo } from '../recipe/journey/reduced.ts';
import { type AsCooked, cookedIn } from '../recipe/label/cooked.ts';
import { namelessLines } from '../recipe/list/not-understood.ts';
import type { Ingredient, Recipe } from '../recipe/model.ts';
import { outOfOven } from '../recipe/trials/out-of-oven.ts';
import { factsOf, isAsTested, type Trial } from '../recipe/trials/trials.ts';
import { yieldNoun } from '../recipe/yield.ts';

/** What the mix holds in grams; null where too much of it does not say. */
export type Contents = Readonly<Record<ContentField, number | null>>;
export type ContentField = 'fat' | 'saturates' | 'carbohydrate' | 'sugars' | 'fibre' | 'protein' | 'alcohol' | 'salt';
export const CONTENT_FIELDS: readonly ContentField[] = [
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'fibre',
  'protein',
  'alcohol',
  'salt',
];

/** What only the label of the United States names, at least and at most: in mg, vitamin D in µg; null as above. */
export type MineralContents = Readonly<Record<Mineral, Range | null>>;

export interface Nutrition {
  /** Null where the weight of some ingredient is not known. */
  readonly rawG: number | null;
  /** What the trials weighed at the end, and how many did; null where none did. */
  readonly cookedG: number | null;
  readonly weighedTrials: number;
  /** What is left was not weighed, but is taken to be the middle of what usually comes out of the oven, or of what the steps boil it down to, in grams. */
  readonly estimatedG?: Range & { readonly by: 'oven' | 'steps' };
  /** Of the whole recipe. */
  readonly whole: Contents;
  readonly minerals: MineralContents;
  /** Grams, at least and at most. */
  readonly addedSugars: Range | null;
  readonly transFat: Range | null;
  /** How many the yield is; null where it is no number of pieces. */
  readonly servings: number | null;
  /** `one of 8 slices`. */
  readonly serving: string;
  /** Ingredients that are not in the figures: no weight, or a food that is not known. */
  readonly notCounted: readonly string[];
}

/** `trials` are those of the recipe's own file; `cooked` takes away what cooking does, by the public tables. */
export function nutritionOf(recipe: Recipe, trials: readonly Trial[], cooked = false): Nutrition {
  const all = counted(recipe);
  const complete =
    !recipe.inherits &&
    all.length > 0 &&
    all.every((i) => i.weighed.known || i.free) &&
    recipe.parts.every((p) => !p.head.nominal && p.head.notUnderstood.length === 0);
  const mix = mixOf(all);
  const rawG = complete ? mix.massG : null;
  const weighed = rawG === null ? { cookedG: null, weighedTrials: 0 } : cookedOf(recipe, trials, rawG, mix);
  const usual = cooked && rawG !== null && weighed.cookedG === null ? usualOf(recipe, rawG, mix) : undefined;
  const kept = cooked ? cookedIn(recipe) : undefined;
  const left = kept === undefined ? mix : mixOf(all.map((i) => ({ ...i, ...withLeft(i, kept.get(i)) })));
  return {
    rawG,
    ...weighed,
    ...(usual !== undefined && { cookedG: middle(usual), estimatedG: usual }),
    whole: Object.fromEntries(CONTENT_FIELDS.map((f) => [f, complete ? totalG(left, f) : null])) as Contents,
    minerals: Object.fromEntries(
      MINERALS.map((m) => [m, complete ? mineralOf(all, m, kept) : null]),
    ) as MineralContents,
    addedSugars: complete ? rangeOf(all, addedSugarsIn) : null,
    transFat: complete ? rangeOf(all, transFatIn) : null,
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

/** What a label counts. */
export const counted = ({ parts }: Recipe): readonly Ingredient[] =>
  parts.flatMap(({ head }) => head.ingredients).filter(({ optional }) => !optional);

/** The food with as much of its salt and alcohol as cooking leaves. */
function withLeft({ food }: Ingredient, cooked: AsCooked | undefined): { readonly food?: Food } {
  if (food === undefined || cooked === undefined || cooked.way === 'raw') return {};
  const { sodium, alcohol } = food.per100;
  return {
    food: {
      ...food,
      per100: {
        ...food.per100,
        ...(sodium !== undefined && { sodium: sodium * cooked.kept.sodium }),
        ...(alcohol !== undefined && { alcohol: alcohol * cooked.alcohol }),
      },
    },
  };
}

const KEEPS = { calcium: 'calcium', iron: 'iron', potassium: 'potassium' } as const;

/** A total in mg or µg, at least and at most, or null where too much of the mix does not say. */
function mineralOf(
  all: readonly Ingredient[],
  mineral: Mineral,
  kept: ReadonlyMap<Ingredient, AsCooked> | undefined,
): Range | null {
  const by = mineral in KEEPS ? KEEPS[mineral as keyof typeof KEEPS] : undefined;
  return rangeOf(all, (food, ingredient) => {
    const of = mineralIn(food, mineral);
    const left = by === undefined ? 1 : (kept?.get(ingredient)?.kept[by] ?? 1);
    return of === undefined ? undefined : { low: of.low * left, high: of.high * left };
  });
}

function rangeOf(
  all: readonly Ingredient[],
  of: (food: Food, ingredient: Ingredient) => Range | undefined,
): Range | null {
  const low = totalOf(all, (food, ingredient) => of(food, ingredient)?.low);
  const high = totalOf(all, (food, ingredient) => of(food, ingredient)?.high);
  return low === null || high === null ? null : { low, high };
}

function totalOf(
  all: readonly Ingredient[],
  of: (food: Food, ingredient: Ingredient) => number | undefined,
): number | null {
  let [total, lacking, mass] = [0, 0, 0];
  for (const ingredient of all) {
    if (!ingredient.weighed.known) continue;
    const grams = likelyGrams(ingredient.weighed);
    const share = ingredient.food === undefined ? undefined : of(ingredient.food, ingredient);
    mass += grams;
    if (share === undefined) lacking += grams;
    else total += (share * grams) / 100;
  }
  return lacking <= mass * NEGLIGIBLE ? total : null;
}

/** What usually comes out of the oven, where its middle is near enough to all of it. */
function usualOf(recipe: Recipe, rawG: number, mix: MixComposition): Nutrition['estimatedG'] {
  const baked = outOfOven(recipe)?.left;
  const left = baked ?? boiledDown(recipe, rawG, mix);
  if (left === undefined || middle(left) >= rawG) return undefined;
  const widest = baked === undefined ? WIDEST_READ : WIDEST;
  return left.high - left.low <= 2 * widest * middle(left)
    ? { ...left, by: baked === undefined ? 'steps' : 'oven' }
    : undefined;
}

/** What the steps say is left, of which a litre weighs about as much as of water where little is dissolved in it. */
function boiledDown(recipe: Recipe, rawG: number, mix: MixComposition): Range | undefined {
  const left = reducedTo(recipe);
  const waterG = totalG(mix, 'water');
  if (left?.ml === undefined || waterG === null || rawG - waterG > left.ml.low * THIN) return left?.grams;
  return { low: Math.max(left.grams.low, left.ml.low), high: Math.min(left.grams.high, left.ml.high * THIN_DENSITY) };
}

/** Grams of what is no water in a millilitre, and what that weighs then: of sugar, 1.1 (judgement). */
const THIN = 0.3;
const THIN_DENSITY = 1.1;

/** Either side of the middle (judgement): a label may be out by a fifth (21 CFR 101.9(g)(5)). */
const WIDEST = 0.12;
/** Where a figure of the text says what is left, read off a jug. */
const WIDEST_READ = 0.16;

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
