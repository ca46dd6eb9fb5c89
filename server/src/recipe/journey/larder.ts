/**
 * Knows of a part's list what following it needs: what is an animal's and not safe raw, what is frozen, which lines are parts made before,
 * what no step ever names, what a step puts in by name, which lines have one name, and which are to taste.
 * Refuses to know amounts, so that changing one leaves the fold as it is.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Act } from '../../prose/event.ts';
import { isIn, isOf, listedAs } from '../list/families.ts';
import { foodOf } from '../list/stand-in.ts';
import type { Ingredient, Part, Step } from '../model.ts';
import { listedPart } from '../part.ts';
import { boundEvents } from './bind.ts';
import { WAS } from './bodies.ts';

export interface Larder {
  /** Bits of `FoodState.was` that each ingredient comes with. */
  readonly was: readonly number[];
  readonly minced: readonly boolean[];
  /** Earlier parts that lines of the list take in, by ingredient; -1 for the others. */
  readonly takesIn: readonly number[];
  /** Ingredients that no step names, but for what is added to taste. */
  readonly unnamed: readonly number[];
  /** Meat, poultry and fish, raw. */
  readonly flesh: readonly number[];
  /** No step names anything that is listed. */
  readonly isNameless: boolean;
  /** Where it is put in by name last (`placeOf`), with heat behind that; -1 for the others. */
  readonly goesIn: readonly number[];
  /** The first ingredient of the same name. */
  readonly alike: readonly number[];
  /** Added to taste, or as needed. */
  readonly free: readonly boolean[];
}

const LARDERS = keptOn<Part, Larder>();

export function larderOf(part: Part): Larder {
  let larder = LARDERS.get(part);
  if (larder === undefined) {
    larder = make(part);
    LARDERS.set(part, larder);
  }
  return larder;
}

type OfList = Pick<Larder, 'was' | 'minced' | 'flesh' | 'alike' | 'free'>;

const OF_LIST = keptOn<readonly Ingredient[], OfList>();

/** What hangs on the list alone. */
function ofList(ingredients: readonly Ingredient[]): OfList {
  let known = OF_LIST.get(ingredients);
  if (known === undefined) {
    known = readList(ingredients);
    OF_LIST.set(ingredients, known);
  }
  return known;
}

function readList(ingredients: readonly Ingredient[]): OfList {
  const was = ingredients.map((ingredient) => {
    const food = foodOf(ingredient);
    const states = listedAs(ingredient);
    const animal = food?.roles.includes('raw risk') === true && (isOf(food, 'flesh') || food.class === 'egg');
    return (
      (isIn(ingredient, 'raw flour') ? WAS.flour : 0) |
      (isOf(food, 'fat') ? WAS.fat : 0) |
      (animal && !states.has('cooked') && !states.has('treated') ? WAS.animal : 0) |
      (states.has('frozen') && !states.has('thawed') ? WAS.frozen : 0)
    );
  });
  return {
    was,
    minced: ingredients.map((ingredient) => isOf(foodOf(ingredient), 'mince') || listedAs(ingredient).has('minced')),
    flesh: ingredients.flatMap((ingredient, i) =>
      isOf(foodOf(ingredient), 'flesh') && ((was[i] ?? 0) & WAS.animal) !== 0 ? [i] : [],
    ),
    alike: alikeIn(ingredients),
    free: ingredients.map(({ free }) => free),
  };
}

function alikeIn(ingredients: readonly Ingredient[]): readonly number[] {
  const firsts = new Map<string, number>();
  return ingredients.map(({ name }, i) => {
    const first = firsts.get(name) ?? i;
    firsts.set(name, first);
    return first;
  });
}

function make({ index, head, heads, includes, ledger, steps }: Part): Larder {
  const { ingredients } = head;
  const takesIn = ingredients.map(() => -1);
  for (const other of includes) {
    const line = listedPart(head, other.name);
    const at = line === undefined ? -1 : ingredients.indexOf(line);
    if (at >= 0) takesIn[at] = heads.indexOf(other);
  }
  return {
    ...ofList(ingredients),
    takesIn,
    unnamed: ingredients.flatMap(({ free, ofPart }, i) =>
      (free && ofPart === undefined) || (ledger[i]?.uses.length ?? 0) > 0 ? [] : [i],
    ),
    isNameless: ledger.every(({ uses }) => uses.length === 0),
    goesIn: goingIn(index, ingredients.length, steps),
  };
}

/** `Add the beans and simmer for 20 min` */
function goingIn(part: number, count: number, steps: readonly Step[]): readonly number[] {
  const places = new Array<number>(count).fill(-1);
  let waiting: { readonly ingredient: number; readonly place: number }[] = [];
  for (const step of steps)
    for (const [at, { event, names }] of boundEvents(step).entries()) {
      if (event.said !== 'yes') continue;
      if (event.act === 'heat') {
        for (const { ingredient, place } of waiting) places[ingredient] = place;
        waiting = [];
      } else if (GOES_IN.has(event.act))
        for (const { role, mention } of names)
          if (role === 'what')
            for (const { part: of, ingredient } of mention.ingredients)
              if (of === part) waiting.push({ ingredient, place: placeOf(step, at) });
    }
  return places;
}

/** Of an event among those of its part, by the order of its step's, so that a character more leaves it as it is. */
export const placeOf = ({ line }: Step, event: number): number => line * MOST_EVENTS + event;
const MOST_EVENTS = 1000;
const GOES_IN: ReadonlySet<Act> = new Set<Act>(['combine', 'put']);

export function isSameLarder(a: Larder, b: Larder): boolean {
  return (
    a === b ||
    (a.isNameless === b.isNameless &&
      isSame(a.was, b.was) &&
      isSame(a.flesh, b.flesh) &&
      isSame(a.minced, b.minced) &&
      isSame(a.takesIn, b.takesIn) &&
      isSame(a.unnamed, b.unnamed) &&
      isSame(a.alike, b.alike) &&
      isSame(a.free, b.free) &&
      isSame(a.goesIn, b.goesIn))
  );
}

const isSame = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a === b || (a.length === b.length && a.every((each, i) => each === b[i]));
