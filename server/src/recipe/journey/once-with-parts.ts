/**
 * Knows how what is worked out of a thing, with the lists of its parts and what the head of the recipe says, is kept until one of these is another.
 * Refuses to know what that is: it may read nothing else of the recipe.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Recipe } from '../model.ts';

/** The function, which works out each thing's value again only where a part that it is of, `also`, or the head is another. */
export function onceWithParts<K extends object, V, A = undefined>(
  partsOf: (of: K) => readonly number[],
  make: (recipe: Recipe, of: K, also: A) => V,
): (recipe: Recipe, of: K, also: A) => V {
  const kept = keptOn<K, { readonly on: readonly unknown[]; readonly value: V }>();
  return (recipe, of, also) => {
    const { name, inherits, world, pan, yield: makes, parts } = recipe;
    const on: unknown[] = [also, name, inherits, world, pan?.node, makes?.node];
    for (const index of partsOf(of)) on.push(parts[index]);
    const known = kept.get(of);
    if (known !== undefined && known.on.length === on.length && known.on.every((each, i) => each === on[i]))
      return known.value;
    const value = make(recipe, of, also);
    kept.set(of, { on, value });
    return value;
  };
}
