/**
 * Knows what a thing that is heated is taken for, where no kind is written: what its step, its part or the recipe calls it, if what lies there
 * can be that; else the kind that its list plainly is; else what lies there (flesh, a dough with yeast, a batter, a custard).
 * Refuses to know heats and times.
 */
import type { FoodClass } from '../../food/food.ts';
import { type HeatSpan, type HeatWay, spansOf } from '../../heat/spans.ts';
import { middle } from '../../measure/quantity.ts';
import { type Dish, dishesIn, dishesNamed } from '../../prose/dish-named.ts';
import type { Event } from '../../prose/event.ts';
import type { Bake } from '../../recipe/baking/bakes.ts';
import type { Body } from '../../recipe/journey/bodies.ts';
import { onceWithParts } from '../../recipe/journey/once-with-parts.ts';
import { plainKind } from '../../recipe/kind-evidence.ts';
import { familiesIn, isFamily, isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { mixtureOf, type Portioned } from '../../recipe/measures/mixture.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { calledName, dishNames } from '../../recipe/names/title.ts';
import type { NamedBy } from './written-heat.ts';

export interface Taken {
  /** `cookie`, `meringue or shortcrust`, `any dough` */
  readonly of: string;
  readonly spans: readonly HeatSpan[];
  readonly by?: NamedBy;
}

interface Lying extends Portioned {
  readonly part: number;
}

/** What lies in a body, or is listed where nobody knows. */
function lyingIn(recipe: Recipe, body: Body | undefined, part: Part): readonly Lying[] {
  return (
    body?.members.flatMap(({ of, share }) => {
      const ingredient = recipe.parts[of.part]?.head.ingredients[of.ingredient];
      return ingredient === undefined ? [] : [{ part: of.part, ingredient, share: middle(share) }];
    }) ?? part.head.ingredients.map((ingredient) => ({ part: part.index, ingredient, share: 1 }))
  );
}

const listedIn = ({ heads }: Recipe): readonly Portioned[] =>
  heads.flatMap(({ ingredients }) => ingredients.map((ingredient) => ({ ingredient, share: 1 })));

interface Where {
  readonly part: Part;
  /** The line in the part, from 0. */
  readonly line: number;
  readonly event: Event;
  readonly body: Body | undefined;
  /** Nothing else of the recipe is baked. */
  readonly isOnly: boolean;
}

function takenAs(way: 'oven' | 'inside'): (recipe: Recipe, bake: Bake, isOnly: boolean) => readonly Taken[] {
  const taken = onceWithParts(
    ({ part, body }: Bake) => [part.index, ...(body?.members ?? []).map(({ of }) => of.part)],
    (recipe, bake, lists: Recipe['heads'] | undefined) =>
      takenBy(recipe, { ...bake, isOnly: lists !== undefined }, way),
  );
  // What alone is baked may be called what any list bears out.
  return (recipe, bake, isOnly) => taken(recipe, bake, isOnly ? recipe.heads : undefined);
}

/** What a bake is taken for, by the heat of the oven and by what it reads inside. */
export const takenInOven = takenAs('oven');
export const takenInside = takenAs('inside');

/** What is in the oven: by the kinds that its parts are, and of what is of no kind by its name, or by what that is. All of these must fit: a lean bread is also a loaf. */
function takenBy(recipe: Recipe, where: Where, way: 'oven' | 'inside'): readonly Taken[] {
  const lying = lyingIn(recipe, where.body, where.part);
  // `Pipe crosses over the buns and bake`: the title may mean what an earlier part made.
  const named =
    namedAt(recipe, where, way, lying) ??
    (where.isOnly && where.part.index > 0 ? namedAt(recipe, where, way, listedIn(recipe)) : undefined);
  const kindAt = ({ part }: Lying): string | undefined => {
    const there = recipe.parts[part];
    return named === undefined ? kindOf(there) : there?.head.kind?.name;
  };
  const names = new Set<string>();
  const spans: HeatSpan[] = [];
  const others: Lying[] = [];
  for (const each of lying) {
    const name = kindAt(each);
    const own = name === undefined ? [] : spansOf(name, way);
    if (name === undefined || own.length === 0) others.push(each);
    else if (!names.has(name)) {
      names.add(name);
      spans.push(...own);
    }
  }
  // A pastry case has no middle, and caramel below a custard bakes as that does.
  const isOther = names.size === 0 || others.some((each) => isMuch(each) && kindAt(each) === undefined);
  // What is put together of several parts is what the recipe is called, and none of them.
  if (named?.by === 'the title' && isOther && new Set(lying.map(({ part }) => part)).size > 1) return [named];
  if (named !== undefined && isOther)
    return [{ of: [...names, named.of].join(' or '), spans: [...spans, ...named.spans], by: named.by }];
  if (isOther) {
    const lies = anyOf(others);
    const isRead = way === 'inside' && (lies === 'any flesh' || lies === 'any fish');
    const any = (isRead ? fleshIn(others.map(({ ingredient }) => ingredient)) : undefined) ?? lies;
    names.add(any);
    spans.push(...spansOf(any, way));
  }
  const byKind = { of: [...names].join(' or '), spans };
  return named === undefined || named.by === 'the part' ? [byKind] : [byKind, named];
}

/** What its step calls it, else its part, else the recipe: if that can be what lies there, and is ever heated so. */
export function namedAt(
  recipe: Pick<Recipe, 'name'>,
  { part, line, event }: Pick<Where, 'part' | 'line' | 'event'>,
  way: HeatWay,
  lying: readonly Portioned[],
): (Taken & { readonly by: NamedBy }) | undefined {
  const step = part.steps.find((each) => each.line === line);
  const inStep = event.objects.flatMap((slot) =>
    slot.role === 'what' && slot.by !== 'nothing' && step !== undefined ? dishesIn(step.sentence.items, slot) : [],
  );
  const calls: readonly (readonly [NamedBy, readonly Dish[]])[] = [
    ['the step', inStep],
    ['the part', dishesNamed(calledName(part.head.name))],
    ['the title', dishNames(recipe.name).map(dishesNamed).find(isSome) ?? []],
  ];
  for (const [by, dishes] of calls) {
    const fitting = dishes.filter(
      ({ needs, spans }) =>
        spans.some((of) => spansOf(of, way).length > 0) && needs.every((row) => liesThere(row, lying)),
    );
    if (fitting.length > 0)
      return {
        of: [...new Set(fitting.map(({ name }) => name))].join(' or '),
        spans: fitting.flatMap((dish) => dish.spans.flatMap((of) => spansOf(of, way))),
        by,
      };
  }
  return undefined;
}

const isSome = (dishes: readonly Dish[]): boolean => dishes.length > 0;

/** `flour`; `egg` or `milk`; `no egg`; `only sugar`, beside water and what sours. */
const liesThere = (row: readonly string[], lying: readonly Portioned[]): boolean =>
  row.some((need) => {
    if (need.startsWith(NO)) return !lying.some(({ ingredient }) => has(ingredient, need.slice(NO.length)));
    if (need.startsWith(ONLY))
      return lying.every(({ ingredient }) =>
        [need.slice(ONLY.length), 'water', 'vinegar', 'sour fruit'].some((each) => has(ingredient, each)),
      );
    return lying.some(({ ingredient }) => has(ingredient, need));
  });
const NO = 'no ';
const ONLY = 'only ';

const has = (ingredient: Ingredient, family: string): boolean => isFamily(family) && familiesIn(ingredient).has(family);

const isOfFish = ({ ingredient }: Portioned): boolean =>
  !isIn(ingredient, 'flesh') || FISH.has(foodOf(ingredient)?.class ?? 'other');
const FISH: ReadonlySet<FoodClass> = new Set<FoodClass>(['fish', 'shellfish']);

/** The flesh of which a figure in the middle is told; undefined where there is none. */
export function fleshIn(foods: readonly Ingredient[]): string | undefined {
  const flesh = foods.filter((each) => isIn(each, 'flesh'));
  if (flesh.length === 0) return undefined;
  const classes = flesh.map((each) => foodOf(each)?.class ?? 'other');
  if (classes.every((each) => FISH.has(each))) return 'any fish';
  return classes.some((each) => each === 'poultry' || each === 'ground poultry') ? 'any poultry' : 'any flesh';
}

/** What is brushed or strewn on it says nothing of what it is. */
const isMuch = ({ ingredient }: Portioned): boolean =>
  !ingredient.weighed.known || ingredient.weighed.grams.high > LITTLE_G;
const LITTLE_G = 60;

/** The kind of a part, written or plain. */
export const kindOf = (part: Part | undefined): string | undefined => part && (part.head.kind ?? plainKind(part))?.name;

/** With yeast and flour in it what is of no kind is a bread. */
export const breadOrKindOf = (part: Part): string | undefined => {
  const kind = kindOf(part);
  if (kind !== undefined) return kind;
  const { of, massG, has } = mixtureOf(part.head.ingredients.map((ingredient) => ({ ingredient, share: 1 })));
  return has.has('yeast') && of.flour > FLOURY * massG ? 'lean bread' : undefined;
};

/** Shares of the mass, by which what is of no kind is one of these (judgement). */
const FLESHY = 0.5;
const FLOURY = 0.15;
const EGGY = 0.12;
const JUICY = 0.75;

function anyOf(foods: readonly Portioned[]): string {
  const { of, massG, has, unweighed } = mixtureOf(foods);
  if (massG <= 0 || unweighed > 0) return 'any';
  if (of.flesh > FLESHY * massG) return foods.every(isOfFish) ? 'any fish' : 'any flesh';
  if (of.flour > FLOURY * massG) return has.has('yeast') || has.has('culture') ? 'any dough' : 'any batter';
  if (of.egg > EGGY * massG && has.has('milk')) return 'any custard';
  return of.juicy > JUICY * massG ? 'any vegetable' : 'any';
}
