/**
 * Knows what a part is taken for by what it or its recipe is called, where its list bears that out.
 * Refuses to judge, and says nothing of parts that say their kind.
 */
import { keptOn } from '../notation/kept.ts';
import { gramsOf } from './measures/brought.ts';
import { contentsOf } from './measures/contents.ts';
import { meets } from './measures/needs.ts';
import { isIncomplete } from './measures/part-measure.ts';
import type { Part, Recipe } from './model.ts';
import { type Dish, dishCalled } from './names/dishes.ts';

export interface Taken {
  readonly part: Part;
  readonly dish: Dish;
  /** The title of the recipe says it, and not the part's own name. */
  readonly byTitle: boolean;
}

const TAKEN = keptOn<Recipe, readonly Taken[]>();

/** The parts that are called what they may be; what the whole is called goes for the one part that it fits. */
export function takenFor(recipe: Recipe): readonly Taken[] {
  let taken = TAKEN.get(recipe);
  if (taken === undefined) {
    taken = recipe.inherits ? [] : takenIn(recipe);
    TAKEN.set(recipe, taken);
  }
  return taken;
}

function takenIn({ parts, name }: Recipe): readonly Taken[] {
  const taken: Taken[] = [];
  const others: Part[] = [];
  for (const part of parts) {
    if (part.head.ingredients.length === 0) continue;
    const dish = part.head.name === '' ? undefined : dishCalled(part.head.name);
    if (dish !== undefined && isOf(part, dish)) taken.push({ part, dish, byTitle: false });
    else others.push(part);
  }
  const whole = dishCalled(name);
  const like = whole === undefined ? [] : others.filter((part) => isOf(part, whole));
  // Buns have crosses, too, of flour and water.
  const fitting = like.length > 1 && whole !== undefined ? like.filter((part) => hasAll(part, whole)) : like;
  const [only] = fitting;
  if (whole !== undefined && only !== undefined && fitting.length === 1)
    taken.push({ part: only, dish: whole, byTitle: true });
  return taken.filter(({ part }) => part.head.kindNode === undefined && !isIncomplete(part));
}

const hasAll = (part: Part, { needs }: Dish): boolean =>
  needs.every((need) => contentsOf(part).some(({ food }) => food !== undefined && meets(need, food)));

/** Whether the list has enough of what the dish is made of. */
function isOf(part: Part, { of }: Dish): boolean {
  const contents = contentsOf(part);
  const whole = contents.reduce((sum, each) => sum + gramsOf(each), 0);
  return of.every(({ classes, least }) => {
    const there = contents.reduce((sum, i) => (i.food && classes.has(i.food.class) ? sum + gramsOf(i) : sum), 0);
    return whole > 0 && there >= whole * least;
  });
}
