/**
 * Knows which ingredients a word or two name loosely, as notes do: by their own words, or by what they are (`fruit`, `fat`, `flour`).
 * Refuses to know what of them is used where.
 */
import { addRanges, type Range } from '../../measure/quantity.ts';
import { isFamily, isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Recipe } from '../../recipe/model.ts';
import { wordsOf } from '../../recipe/words.ts';

/** Everything that is listed and goes in. */
export const allListed = ({ parts }: Recipe): readonly Ingredient[] => parts.flatMap(({ head }) => head.ingredients);

/** Those that all the words name, or whose class or family the last of them is. */
export function namedBy(words: readonly string[], list: readonly Ingredient[]): readonly Ingredient[] {
  const { own, kind } = eitherNamed(words, list);
  return kind.length === 0 ? own : kind;
}

/** Those that the words name, and those of a class or family that one word is: who are meant where there are any. */
export function eitherNamed(
  words: readonly string[],
  list: readonly Ingredient[],
): Readonly<Record<'own' | 'kind', readonly Ingredient[]>> {
  const named = wordsOf(words.join(' '));
  const last = named.at(-1) ?? '';
  const own = list.filter(({ name }) => named.every((word) => wordsOf(name).includes(word)));
  const kind = list.filter((each) => foodOf(each)?.class === last || (isFamily(last) && isIn(each, last)));
  return { own, kind: named.length > 1 ? [] : kind };
}

export const NOTHING: Range = { low: 0, high: 0 };

/** Grams of all of them; undefined where one has no weight. */
export function gramsOfAll(list: readonly Ingredient[]): Range | undefined {
  let grams = NOTHING;
  for (const { weighed } of list) {
    if (!weighed.known) return undefined;
    grams = addRanges(grams, weighed.grams);
  }
  return grams;
}
