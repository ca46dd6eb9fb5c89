/**
 * Knows the draft of a label: a serving by the law of the United States with its facts, the list of ingredients by that of the European Union, and what is to be asked.
 * Refuses to be more than a draft: what is not known is named, and whoever sells the food answers for its label.
 */
import { type Reference, referenceNamed, referenceOf } from '../../recipe/label/reference.ts';
import type { Recipe } from '../../recipe/model.ts';
import type { Trial } from '../../recipe/trials/trials.ts';
import { euLabel, type Label, usLabel } from '../declared.ts';
import { type LabelFigure, usServings } from '../label.ts';
import { type Nutrition, nutritionOf } from '../nutrition.ts';
import { allergenNames, allergensOf } from '../report-allergens.ts';
import { notKnownFor } from '../report-nutrition.ts';
import type { LabelField } from '../report-shape.ts';
import { assumptions } from './assumed.ts';
import { containedIn, type LabelIngredient, labelIngredients } from './ingredients.ts';
import { servingOf } from './serving.ts';

export interface LabelDraft {
  /** Sentences: that it is a draft, and what its figures take for granted. */
  readonly assumes: readonly string[];
  /** What it weighs when it is done, as far as `basis` says; null where a weight is not known. */
  readonly mass_g: number | null;
  readonly us: {
    /** The amount that is customarily eaten at once; null where the category is not known. */
    readonly reference: ReferenceSaid | null;
    /** `2 cookies (31 g)` */
    readonly serving: string | null;
    readonly serving_g: number | null;
    readonly servings: LabelFigure | null;
    /** Of that serving, else of one of the yield. */
    readonly facts: Label | null;
    readonly contains: readonly string[];
  };
  readonly eu: {
    /** By weight at the time of use. */
    readonly ingredients: readonly LabelIngredient[];
    readonly nutrition: Label | null;
  };
  /** Ingredients of which it is not known, or not whole, what allergens they bring. */
  readonly brings_not_known: readonly string[];
  /** Each a sentence: what only a maker, or the cook, can tell. */
  readonly ask: readonly string[];
  readonly not_known_for: Readonly<Partial<Record<LabelField, readonly string[]>>>;
}

export interface ReferenceSaid {
  readonly category: string;
  readonly name: string;
  readonly grams: number | null;
  readonly measure: string | null;
}

export interface LabelWish {
  /** Takes away what cooking does, by the public tables. */
  readonly cooked?: boolean;
  /** The category of reference amounts, by its id. */
  readonly category?: string;
}

/** `trials` are those of the recipe's own file. */
export function labelDraft(recipe: Recipe, trials: readonly Trial[], wish: LabelWish = {}): LabelDraft {
  const nutrition = nutritionOf(recipe, trials, wish.cooked);
  const reference = wish.category === undefined ? referenceOf(recipe) : referenceNamed(wish.category);
  const massG = nutrition.cookedG ?? nutrition.rawG;
  const contained = containedIn(recipe);
  const allergens = allergensOf(recipe);
  const { not_known: unknown, check_label: labels } = allergens;
  return {
    assumes: assumptions(recipe, nutrition, wish.cooked === true),
    mass_g: massG === null ? null : Math.round(massG),
    us: { ...usServing(recipe, nutrition, reference), contains: contained.map(({ said }) => said) },
    eu: { ingredients: labelIngredients(recipe, nutrition), nutrition: euLabel(nutrition) },
    brings_not_known: unknown,
    ask: [
      ...contained.flatMap(({ unknown }) => unknown),
      ...unknown.map((name) => `What does ${name} bring? No list of allergens is whole without it.`),
      ...labels.map((label) => `Check the label of ${label.food}: some makes have ${allergenNames(label)}.`),
      ...(allergens.may_be_brought.length === 0
        ? []
        : [`Which is taken where the list leaves a choice? It may bring ${allergenNames(allergens.may_contain)}.`]),
      ...(reference === undefined ? [NO_CATEGORY] : []),
    ],
    not_known_for: notKnownFor(recipe, nutrition),
  };
}

const NO_CATEGORY =
  'Which category of reference amounts is it (21 CFR 101.12(b))? No part is of a kind that tells; `quern label FILE --as CATEGORY` names one.';

function usServing(
  recipe: Recipe,
  nutrition: Nutrition,
  reference: Reference | undefined,
): Omit<LabelDraft['us'], 'contains'> {
  const massG = nutrition.cookedG ?? nutrition.rawG;
  const serving = reference === undefined || massG === null ? undefined : servingOf(recipe, massG, reference);
  const share = serving === undefined || massG === null ? undefined : serving.grams / massG;
  return {
    reference:
      reference === undefined
        ? null
        : {
            category: reference.id,
            name: reference.name,
            grams: reference.grams ?? null,
            measure: reference.measure ?? null,
          },
    serving: serving?.words ?? null,
    serving_g: serving?.grams ?? null,
    servings: share === undefined ? null : usServings(1 / share),
    facts: usLabel(nutrition, share === undefined ? undefined : { share, of: serving?.words ?? '' }),
  };
}
