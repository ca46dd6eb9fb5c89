/**
 * Knows which ingredients the name of a recipe stresses: those that it calls by a name.
 * Refuses to know pictures, and what buyers usually think of with a name.
 */
import type { Ingredient, IngredientRef, Recipe } from '../model.ts';
import { NameIndex } from '../names/names.ts';
import { wordsOf } from '../words.ts';

export function stressedIn({ name, heads }: Recipe): ReadonlySet<Ingredient> {
  const index = new NameIndex(heads);
  const words = wordsOf(name);
  const found = new Set<Ingredient>();
  const take = ({ part, ingredient }: IngredientRef): void => {
    const named = heads[part]?.ingredients[ingredient];
    if (named !== undefined && named.ofPart === undefined) found.add(named);
  };
  for (let at = 0; at < words.length; ) {
    const runs = index.beginning(words[at] ?? '');
    const run = [runs?.strong, runs?.weak]
      .flatMap((list) => list?.longestAt(words, at, ({ lists }) => lists.length > 0) ?? [])
      .sort((a, b) => b.words.length - a.words.length)[0];
    for (const { refs } of run?.lists ?? []) for (const { ref } of refs) take(ref);
    at += run?.words.length ?? 1;
  }
  return found;
}
