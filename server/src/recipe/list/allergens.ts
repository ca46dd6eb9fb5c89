/**
 * Knows which allergens a list brings: what it contains for sure, what it may contain by what is chosen, whose labels tell, and what is not known.
 * Refuses to say "none" of a food that nobody knows.
 */
import { type AllergenPair, type Allergens, pairsOf } from '../../food/allergens.ts';
import { type Food, type FoodClass, type FoodMatch, foodsOf } from '../../food/food.ts';
import type { TextNode } from '../../notation/tree.ts';
import { withoutComment } from '../../notation/without-comment.ts';
import type { Ingredient, PartHead } from '../model.ts';

/** Of one ingredient: the foods that are in it, and those that may be. */
export interface FoodsHeld {
  /** Each is in it; of several in a row it is one: `butter` is a row of one food, `cream` one of several creams. */
  readonly held: readonly (readonly Food[])[];
  /** Alternatives, and what is named behind a comma, under the name of the line. */
  readonly possible: readonly { readonly name: TextNode; readonly food: Food }[];
  /** What no food is known for, as written. */
  readonly unknown: readonly string[];
}

export interface LabelToRead extends Allergens {
  /** The ingredient as written. */
  readonly name: string;
}

/** One allergen, and the ingredients that bring it, as written. */
export interface BroughtAllergen extends AllergenPair {
  readonly by: readonly string[];
}

export interface ListedAllergens extends Allergens {
  readonly mayContain: Allergens;
  /** What brings each that is contained for sure, and each that may be by what is chosen, in the order of the alphabet. */
  readonly brought: readonly BroughtAllergen[];
  readonly mayBeBrought: readonly BroughtAllergen[];
  /** Foods of which some makes have what is not contained for sure already. */
  readonly labels: readonly LabelToRead[];
  /** Names of which it is not known, or not whole. */
  readonly notKnown: readonly string[];
}

/** The foods of an ingredient. */
export function foodsHeld({ match, name, others = [], mayHold = [], ofPart }: Ingredient): FoodsHeld {
  if (ofPart !== undefined) return { held: [], possible: [], unknown: [] };
  const held = rowsOf(match, name);
  const beside = [...others, ...mayHold];
  return {
    held,
    possible: beside.flatMap((named) => foodsOf(named.match).map((food) => ({ name: named.name, food }))),
    unknown: [
      ...(held.length === 0 || saysMore(match) ? [name] : []),
      ...beside.flatMap((named) => (named.match.kind === 'unknown' ? [named.name.text] : [])),
    ],
  };
}

/** A word that nobody knows may say what was put to it, but for a plant as it grew. */
const saysMore = (match: FoodMatch): boolean =>
  match.kind === 'food' && match.unread !== undefined && !AS_GROWN_PLANTS.has(match.food.class);

const AS_GROWN_PLANTS: ReadonlySet<FoodClass> = new Set<FoodClass>(['vegetable', 'fruit', 'mushroom', 'leafy herb']);

/** Of two foods that are measured together, both are in it: `1 cup milk and water`. */
function rowsOf(match: FoodMatch, name: string): readonly (readonly Food[])[] {
  const foods = foodsOf(match);
  if (foods.length === 0) return [];
  return match.kind === 'ambiguous' && /(?:\band\b|&)/i.test(name) ? foods.map((food) => [food]) : [foods];
}

/** Lines of the list that name no food anyone could read. */
export function unreadOn({ ingredients, notUnderstood, source }: PartHead): readonly string[] {
  return notUnderstood.flatMap((at) => {
    const text = withoutComment(source.lines[at]);
    return text === '' || ingredients.some(({ line }) => line === at) ? [] : [text];
  });
}

/** What the lists of parts bring, by the lists of both sides, sorted by name. */
export function allergensListed(heads: readonly PartHead[]): ListedAllergens {
  const contains = new Names();
  const may = new Names();
  const labels = new Map<string, Names>();
  const notKnown = new Set<string>(heads.flatMap(unreadOn));
  const readLabel = (name: string, food: Food): void => {
    const { label } = food.allergens;
    if (label !== undefined) named(labels, name).add(label, name);
  };
  for (const ingredient of heads.flatMap((head) => head.ingredients)) {
    const { held, possible, unknown } = foodsHeld(ingredient);
    for (const word of unknown) notKnown.add(word);
    for (const foods of held) {
      contains.add(ofEach(foods), ingredient.name);
      if (foods.length > 1 && !areAlike(foods)) notKnown.add(ingredient.name);
      for (const food of foods) {
        if (foods.length > 1) may.add(food.allergens, ingredient.name);
        if (food.allergens.unsaid === true) notKnown.add(ingredient.name);
        readLabel(ingredient.name, food);
      }
    }
    for (const { name, food } of possible) {
      may.add(food.allergens, name.text);
      may.add(food.allergens.label ?? NO_ALLERGENS, name.text);
      if (food.allergens.unsaid === true) notKnown.add(name.text);
      readLabel(name.text, food);
    }
  }
  return {
    ...contains.sorted(),
    mayContain: may.sorted(contains),
    brought: contains.brought(),
    mayBeBrought: may.brought(contains),
    labels: [...labels].flatMap(([name, of]) => {
      const { us, eu } = of.sorted(contains);
      return us.length + eu.length === 0 ? [] : [{ name, us, eu }];
    }),
    notKnown: [...notKnown],
  };
}

const NO_ALLERGENS: Allergens = { us: [], eu: [] };

/** Names of allergens, by the list of each side. */
class Names {
  private readonly us = new Set<string>();
  private readonly eu = new Set<string>();
  private readonly from: (Allergens & { readonly by: string })[] = [];

  add({ us, eu }: Allergens, by: string): void {
    for (const name of us) this.us.add(name);
    for (const name of eu) this.eu.add(name);
    if (us.length + eu.length > 0) this.from.push({ us, eu, by });
  }

  /** In the order of the alphabet, without those of `but`. */
  sorted(but?: Names): Allergens {
    return {
      us: [...this.us].filter((name) => but?.us.has(name) !== true).sort(),
      eu: [...this.eu].filter((name) => but?.eu.has(name) !== true).sort(),
    };
  }

  /** The same one by one, each with who brings it. */
  brought(but?: Names): BroughtAllergen[] {
    const all = new Map<string, AllergenPair & { readonly by: Set<string> }>();
    for (const { us, eu, by } of this.from)
      for (const pair of pairsOf({
        us: us.filter((name) => but?.us.has(name) !== true),
        eu: eu.filter((name) => but?.eu.has(name) !== true),
      })) {
        const key = sortedBy(pair);
        const known = all.get(key) ?? { ...pair, by: new Set() };
        all.set(key, known);
        known.by.add(by);
      }
    return [...all]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([, { us, eu, by }]): BroughtAllergen => ({ us, eu, by: [...by] }));
  }
}

const sortedBy = ({ us, eu }: AllergenPair): string => `${eu ?? us ?? ''}|${us ?? ''}`;

function named(of: Map<string, Names>, name: string): Names {
  const known = of.get(name) ?? new Names();
  of.set(name, known);
  return known;
}

/** What each of them has. */
function ofEach(foods: readonly Food[]): Allergens {
  const all = (side: 'us' | 'eu'): readonly string[] =>
    (foods[0]?.allergens[side] ?? []).filter((name) => foods.every((food) => food.allergens[side].includes(name)));
  return { us: all('us'), eu: all('eu') };
}

/** Whichever it is, it brings the same. */
function areAlike(foods: readonly Food[]): boolean {
  const [first] = foods;
  return foods.every((food) => saidOf(food) === saidOf(first));
}

function saidOf(food: Food | undefined): string {
  const { us = [], eu = [], label } = food?.allergens ?? {};
  return [us, eu, label?.us ?? [], label?.eu ?? []].map((names) => [...names].sort().join()).join('|');
}
