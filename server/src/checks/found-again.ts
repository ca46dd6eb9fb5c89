/**
 * Knows how a check of the whole recipe gives what it found before as the same objects, so that it is placed and sorted again only where it is new.
 */
import type { Recipe } from '../recipe/model.ts';
import type { Found } from './check.ts';
import type { House } from './house.ts';
import { type Last, lent } from './over-parts.ts';

interface Gave<V> {
  readonly house: House;
  /** As it was found. */
  readonly raw: readonly Found<V>[];
  readonly found: readonly Found<V>[];
}

interface Kept<V> {
  readonly before: Gave<V> | undefined;
  now?: Gave<V>;
}

/** The function, which gives again what it gave for the recipe before wherever place, severity and every value are the same. */
export function foundAgain<V extends object>(
  find: (recipe: Recipe, house: House) => readonly Found<V>[],
): (recipe: Recipe, house: House) => readonly Found<V>[] {
  const keptFor = lent((_, last?: Last<Kept<V>>): Kept<V> => ({ before: last?.value.now ?? last?.value.before }));
  return (recipe, house) => {
    const kept = keptFor(recipe);
    if (kept.now?.house !== house) {
      const before = kept.now ?? kept.before;
      const raw = find(recipe, house);
      kept.now = { house, raw, found: raw === before?.raw ? before.found : reuse(raw, before?.found) };
    }
    return kept.now.found;
  };
}

function reuse<V extends object>(found: readonly Found<V>[], before: readonly Found<V>[] = []): readonly Found<V>[] {
  const list = found.map((each, i) => {
    const there = before[i];
    // Mostly nothing came or went before it.
    return there !== undefined && isSame(each, there) ? there : (before.find((old) => isSame(each, old)) ?? each);
  });
  return list.length === before.length && list.every((each, i) => each === before[i]) ? before : list;
}

const isSame = <V extends object>(a: Found<V>, b: Found<V>): boolean =>
  a === b || (a.severity === b.severity && isAlike(a.at, b.at) && isAlike(a.values, b.values));

function isAlike<T extends object>(a: T, b: T): boolean {
  const keys = Object.keys(a) as (keyof T)[];
  return keys.length === Object.keys(b).length && keys.every((key) => a[key] === b[key]);
}

/** Of what is found at one place, the first. */
export const oncePerPlace = <V>(found: readonly Found<V>[]): readonly Found<V>[] =>
  found.filter(({ at }, i) => found.findIndex((other) => isAlike(other.at, at)) === i);

/** With what notes tell, where the steps do not say worse of the same. */
export const withTold = <V>(found: readonly Found<V>[], told: readonly Found<V>[]): readonly Found<V>[] =>
  told.length === 0 ? found : oncePerPlace([...found.filter(({ severity }) => severity !== 'info'), ...told, ...found]);
