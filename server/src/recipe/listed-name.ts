/**
 * Knows whether a line of the list is of a row of foods, by the food that the book has for it or by what it is called.
 * Refuses to know what the rows are for.
 */
import { bookIdOf, type Food } from '../food/food.ts';
import type { Ingredient } from './model.ts';
import { wordsOf } from './words.ts';

/** The foods that it is, or could be. */
export const foodsIn = ({ match }: Ingredient): readonly Food[] =>
  match.kind === 'food' ? [match.food] : match.kind === 'ambiguous' ? match.foods : [];

export const isOneOf = (ingredient: Ingredient, ids: ReadonlySet<string>): boolean =>
  ids.size > 0 && foodsIn(ingredient).some((food) => ids.has(bookIdOf(food)));

/** All the words of its line, and of the food that the book has for it: `a can of cannellini beans`. */
export function lineWords({ name, node, match }: Ingredient): readonly string[] {
  const own = match.kind === 'food' ? match.food.name : '';
  return wordsOf([name, node.name?.text, node.preparation?.text, node.note?.text, own].join(' '));
}

/**
 * Whether its name ends with one of some, before nothing but words that may stand behind, or where it is from: `fresh foxglove flowers`,
 * `goat's cheese from the market`, and no `elderberry syrup`.
 */
export function isNamedAs(
  ingredient: Ingredient,
  names: readonly (readonly string[])[],
  behind: ReadonlySet<string>,
): boolean {
  const words = wordsOf(ingredient.name);
  return names.some((name) => {
    for (let at = 0; at + name.length <= words.length; at++)
      if (name.every((word, i) => words[at + i] === word) && isEnded(words.slice(at + name.length), behind))
        return true;
    return false;
  });
}

/** A row of foods, and of names as `isNamedAs` takes them. */
interface Row {
  readonly foods: ReadonlySet<string>;
  readonly names: readonly (readonly string[])[];
}

/** The function that tells, without a look at each row, whether an ingredient may be of any: most are of none. */
export function mayBeOf(rows: readonly Row[]): (ingredient: Ingredient) => boolean {
  const foods = new Set(rows.flatMap((row) => [...row.foods]));
  const first = new Set(rows.flatMap(({ names }) => names.map(([word]) => word)));
  return (ingredient) => isOneOf(ingredient, foods) || wordsOf(ingredient.name).some((word) => first.has(word));
}

const isEnded = (after: readonly string[], behind: ReadonlySet<string>): boolean =>
  FROM.has(after[0] ?? '') || after.every((word) => behind.has(word));
/** Behind it stands where a food comes from, or what it was made of. */
const FROM: ReadonlySet<string> = new Set(['from', 'made', 'bought', 'brought', 'straight']);
