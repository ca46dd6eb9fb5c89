/**
 * Knows whether what no known order cooks is raw by the state that it is in at the end too: a word that nobody knows is no danger by itself.
 */
import { journeysOf } from '../../recipe/journey/fold.ts';
import type { Recipe } from '../../recipe/recipe.ts';
import type { Found, Place } from '../check.ts';
import type { House } from '../house.ts';
import { onceInHouse } from '../once.ts';
import { undercooked } from './undercooked.ts';

const rawLines = onceInHouse(
  (house: House, recipe: Recipe): ReadonlySet<string> =>
    new Set(
      journeysOf(recipe)
        .flatMap((journey) => undercooked(house, journey))
        .map(({ listed }) => keyOf(listed)),
    ),
);

const keyOf = ({ part, line }: Pick<Place, 'part' | 'line'>): string => `${part} ${line}`;

/** Of what is found in one part, strictest first: the first that is so by its state too; where none is, the first, as a question. */
export function saidOrAsked<V>(
  recipe: Recipe,
  house: House,
  found: readonly Found<V>[],
  claimsRaw: (values: V) => boolean,
  asked: (values: V) => V,
): readonly Found<V>[] {
  const [first] = found;
  const certain = found.find(({ at, values }) => !claimsRaw(values) || rawLines(house, recipe).has(keyOf(at)));
  if (certain !== undefined) return [certain];
  return first === undefined ? [] : [{ at: first.at, values: asked(first.values), severity: 'info' }];
}
