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
  const like: Taken[] = [];
  const whole = dishCalled(name);
  for (const part of parts) {
    if (part.head.ingredients.length === 0) continue;
    const own = takenByName(part);
    const byTitle = own === undefined && whole !== undefined ? takenByTitle(part, whole) : undefined;
    if (own !== undefined) taken.push(own);
    else if (byTitle !== undefined) like.push(byTitle);
  }
  // Buns have crosses, too, of flour and water.
  const fitting = like.length > 1 ? like.filter(hasAll) : like;
  const [only] = fitting;
  if (only !== undefined && fitting.length === 1) taken.push(only);
  return taken.filter(({ part }) => part.head.kindNode === undefined && !isIncomplete(part));
}

const BY_NAME = keptOn<Part, { readonly taken: Taken | undefined }>();

/** What its own name says. */
function takenByName(part: Part): Taken | undefined {
  let kept = BY_NAME.get(part);
  if (kept === undefined) {
    const dish = part.head.name === '' ? undefined : dishCalled(part.head.name);
    kept = { taken: dish && isOf(part, dish) ? { part, dish, byTitle: false } : undefined };
    BY_NAME.set(part, kept);
  }
  return kept.taken;
}

const BY_TITLE = keptOn<Part, { readonly dish: Dish; readonly taken: Taken | undefined }>();

/** What the title says, where its list may be that. */
function takenByTitle(part: Part, dish: Dish): Taken | undefined {
  let kept = BY_TITLE.get(part);
  if (kept?.dish !== dish) {
    kept = { dish, taken: isOf(part, dish) ? { part, dish, byTitle: true } : undefined };
    BY_TITLE.set(part, kept);
  }
  return kept.taken;
}

const hasAll = ({ part, dish: { needs } }: Taken): boolean =>
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
