/**
 * Knows how a rule is asked of every journey of a recipe: it is given one at a time, and again only where that is another.
 * Refuses to know any rule. What a rule gives hangs on its journey and the house alone: it reads nothing else of the recipe.
 */
import { type Journey, journeysOf } from '../../recipe/journey/fold.ts';
import { journeysTold } from '../../recipe/journey/noted.ts';
import type { Recipe } from '../../recipe/model.ts';
import type { Found } from '../check.ts';
import { foundAgain, withTold } from '../found-again.ts';
import type { House } from '../house.ts';
import { onceFor } from '../once.ts';
import { overList } from '../over-parts.ts';

/** All that a rule gives, in the order of the journeys; the same list for as long as no journey gives another. */
export function overJourneys<V>(
  ask: (house: House, journey: Journey) => readonly V[],
): (recipe: Recipe, house: House) => readonly V[] {
  const lists = overList((house, journey: Journey) => {
    const given = ask(house, journey);
    return given.length === 0 ? undefined : given;
  });
  const flat = onceFor((given: readonly (readonly V[])[]): readonly V[] => given.flat());
  return (recipe, house) => flat(lists(recipe, journeysOf(recipe), house));
}

/** What a rule finds by the steps, and by what notes tell of where it lies in the end. */
export function overTold<V extends object>(
  foundOn: (journey: Journey, isTold: boolean) => readonly Found<V>[],
): (recipe: Recipe, house: House) => readonly Found<V>[] {
  const bySteps = overJourneys((_, journey) => foundOn(journey, false));
  return foundAgain((recipe, house) => {
    const told = journeysTold(recipe).flatMap((journey) => foundOn(journey, true));
    return withTold(bySteps(recipe, house), told);
  });
}
