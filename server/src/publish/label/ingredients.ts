/**
 * Knows the list of ingredients of a label by weight, how much of it is what the name stresses, and which allergens each brings by name.
 * Regulation (EU) 1169/2011, articles 18, 21 and 22, annexes II, VII and VIII; 21 CFR 101.4 and 21 U.S.C. 343(w).
 * Refuses to know what a bought food is made of: its own label tells.
 */
import { FLESH, type Food, type FoodClass } from '../../food/food.ts';
import { likelyGrams } from '../../food/weigh.ts';
import { namedAllergens } from '../../food/which.ts';
import { stressedIn } from '../../recipe/label/stressed.ts';
import { allergensListed, foodsHeld } from '../../recipe/list/allergens.ts';
import type { Ingredient, Recipe } from '../../recipe/model.ts';
import { counted, type Nutrition } from '../nutrition.ts';
import { round } from '../rounded.ts';

export interface LabelIngredient {
  readonly name: string;
  /** As it is put in; null where it is not weighed. */
  readonly grams: number | null;
  /** Of what it weighs when it is done, as far as that is known. */
  readonly percent: number | null;
  /** The percentage belongs on the label, as the name of the food stresses it: `18 %`, `105 g per 100 g`; null else. */
  readonly declared: string | null;
  /** To be emphasised: `wheat`, `nuts (almond)`. */
  readonly allergens: readonly string[];
  /** It has ingredients of its own, which stand on its label. */
  readonly own_label: boolean;
}

/** Heaviest first; what is not weighed comes last. */
export function labelIngredients(recipe: Recipe, { rawG, cookedG }: Nutrition): readonly LabelIngredient[] {
  const doneG = cookedG ?? rawG;
  const stressed = stressedIn(recipe);
  const lines = new Map<string, Line>();
  for (const ingredient of counted(recipe)) {
    if (ingredient.ofPart !== undefined) continue;
    const key = ingredient.food?.id ?? ingredient.name.toLowerCase();
    const line = lines.get(key) ?? { name: nameOf(ingredient), grams: 0, stressed: false, of: ingredient };
    const { weighed } = ingredient;
    lines.set(key, {
      ...line,
      grams: line.grams === undefined || !weighed.known ? undefined : line.grams + likelyGrams(weighed),
      stressed: line.stressed || stressed.has(ingredient),
    });
  }
  return [...lines.values()]
    .flatMap((line) => asLeft(line, [...lines.values()], cookedG))
    .sort((a, b) => (b.grams ?? -1) - (a.grams ?? -1))
    .map((line) => ({
      name: line.name,
      grams: line.grams === undefined ? null : round(line.grams, 1),
      percent: line.grams === undefined || doneG === null || doneG <= 0 ? null : round((line.grams / doneG) * 100, 1),
      declared: line.stressed && line.grams !== undefined && doneG !== null ? declared(line.grams, doneG) : null,
      allergens: broughtBy(line.of),
      own_label: line.of.food !== undefined && MADE.has(line.of.food.class),
    }));
}

interface Line {
  readonly name: string;
  /** Undefined where some of it is not weighed. */
  readonly grams: number | undefined;
  readonly stressed: boolean;
  readonly of: Ingredient;
}

const nameOf = ({ food, name }: Ingredient): string => food?.name ?? name;

/** Water counts as what is left of it, and up to 5 % not at all, but with flesh (annex VII, part A, point 1). */
function asLeft(line: Line, all: readonly Line[], cookedG: number | null): readonly Line[] {
  if (line.of.food?.class !== 'water' || cookedG === null || line.grams === undefined) return [line];
  const others = all.filter((each) => each !== line);
  if (others.some(({ grams }) => grams === undefined)) return [line];
  const left = Math.min(line.grams, Math.max(0, cookedG - others.reduce((sum, { grams = 0 }) => sum + grams, 0)));
  const hasFlesh = all.some(({ of: { food } }) => food !== undefined && FLESH.includes(food.class));
  return left <= cookedG * 0.05 && !hasFlesh ? [] : [{ ...line, grams: left }];
}

/** Made of several things by somebody else. */
const MADE: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'bread',
  'chocolate',
  'cured meat',
  'sauce',
  'condiment',
  'stock',
  'other',
  'pasta',
  'drink',
]);

/** To the whole per cent from 10 up; where it lost more than there was besides, by what goes into 100 g (annex VIII, point 4). */
function declared(grams: number, doneG: number): string {
  const percent = (grams / doneG) * 100;
  if (percent > 100) return `${Math.round(percent)} g per 100 g`;
  return `${round(percent, percent < 10 ? 1 : 0)} %`;
}

/** What the law of the European Union has emphasised of it, with its sort. */
function broughtBy(ingredient: Ingredient): readonly string[] {
  const { held } = foodsHeld(ingredient);
  return [
    ...new Set(
      held
        .flatMap(([food]) => (food === undefined ? [] : namedAllergens(food)))
        .flatMap(({ eu, which }) => (eu === null ? [] : [saidOf(eu, which?.flatMap((name) => name ?? []) ?? [])])),
    ),
  ];
}

/** `nuts (almond)`; of a cereal the cereal alone. */
function saidOf(law: string, names: readonly string[]): string {
  if (names.length === 0) return law;
  return law === 'cereals containing gluten' ? names.join(', ') : `${law} (${names.join(', ')})`;
}

/** One allergen of the list of the United States. */
export interface Contained {
  /** `tree nuts (almond)` */
  readonly said: string;
  /** Sentences: of what the sort is not known. */
  readonly unknown: readonly string[];
}

/** What `Contains` names, in the order of the law. */
export function containedIn({ parts }: Recipe): readonly Contained[] {
  const { us } = allergensListed(parts.map(({ head }) => head));
  const sorts = new Map<string, { readonly names: Set<string>; readonly unknown: Set<string>; isNamed: boolean }>();
  for (const ingredient of parts.flatMap(({ head }) => head.ingredients))
    for (const food of likeliestIn(ingredient))
      for (const { us: law, which } of namedAllergens(food)) {
        if (law === null || which === undefined || !us.includes(law) || law === 'wheat') continue;
        const sort = sorts.get(law) ?? { names: new Set(), unknown: new Set(), isNamed: false };
        sorts.set(law, sort);
        for (const name of which)
          if (name === undefined) sort.unknown.add(ingredient.name);
          else sort.names.add(name);
      }
  return us.map((law): Contained => {
    const { names = [], unknown = [] } = sorts.get(law) ?? {};
    const all = [...names, ...([...unknown].length > 0 ? ['one that is not known'] : [])];
    return {
      said: all.length === 0 ? law : `${law} (${all.join(', ')})`,
      unknown: [...unknown].map((by) => `Which ${SORT_OF[law] ?? law} is in ${by}? A label names it.`),
    };
  });
}

const SORT_OF: Readonly<Record<string, string>> = {
  'tree nuts': 'nut',
  'crustacean shellfish': 'crustacean',
};

const likeliestIn = (ingredient: Ingredient): readonly Food[] =>
  foodsHeld(ingredient).held.flatMap(([food]) => food ?? []);
