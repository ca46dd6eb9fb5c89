/**
 * Knows which part and which ingredient of one recipe stands for which of another.
 * Refuses to know what differs between the two of a pair.
 */
import type { Ingredient, Part } from '../../recipe/model.ts';
import { wordsOf } from '../../recipe/words.ts';

export interface Paired<T> {
  readonly both: readonly (readonly [T, T])[];
  readonly dropped: readonly T[];
  readonly added: readonly T[];
}

export function pairParts(before: readonly Part[], after: readonly Part[]): Paired<Part> {
  const byName = pairBy(before, after, (a, b) => nameKey(a.head.name) === nameKey(b.head.name));
  const alike = pairBy(byName.dropped, byName.added, (a, b) => likeness(a, b) >= 0.5);
  // One part each side, whatever they are called, is one recipe.
  const only =
    alike.both.length + byName.both.length === 0 && before.length === 1 && after.length === 1
      ? pairBy(alike.dropped, alike.added, () => true)
      : alike;
  const both = [...byName.both, ...only.both, ...(only === alike ? [] : alike.both)];
  return { both: both.sort(([, a], [, b]) => a.index - b.index), dropped: only.dropped, added: only.added };
}

export const nameKey = (name: string): string => wordsOf(name).join(' ');

/** The share of the ingredients that two parts have in common. */
function likeness(a: Part, b: Part): number {
  const names = new Set(a.head.ingredients.map((i) => nameKey(i.name)));
  const common = b.head.ingredients.filter((i) => names.has(nameKey(i.name))).length;
  const most = Math.max(names.size, b.head.ingredients.length);
  return most === 0 ? 0 : common / most;
}

/** Each of the first with the first of the second that fits and is still free. */
export function pairBy<T>(before: readonly T[], after: readonly T[], fits: (a: T, b: T) => boolean): Paired<T> {
  // No set: two lines may read alike, and are still two.
  const free = [...after];
  const both: [T, T][] = [];
  const dropped: T[] = [];
  for (const a of before) {
    const at = free.findIndex((candidate) => fits(a, candidate));
    const [b] = at < 0 ? [] : free.splice(at, 1);
    if (b === undefined) dropped.push(a);
    else both.push([a, b]);
  }
  return { both, dropped, added: free };
}

export function pairIngredients(a: Part, b: Part): Paired<Ingredient> {
  const [was, is] = [a.head.ingredients, b.head.ingredients];
  const byName = pairBy(was, is, (x, y) => nameKey(x.name) === nameKey(y.name) && sameForm(x, y));
  const looser = pairBy(byName.dropped, byName.added, (x, y) => nameKey(x.name) === nameKey(y.name));
  const byFood = pairBy(looser.dropped, looser.added, (x, y) => x.food !== undefined && x.food === y.food);
  const both = [...byName.both, ...looser.both, ...byFood.both].sort(([, x], [, y]) => x.line - y.line);
  return { both, dropped: byFood.dropped, added: byFood.added };
}

/** Lines of one name in a part are told apart by how they are prepared. */
const sameForm = (a: Ingredient, b: Ingredient): boolean => a.node.preparation?.text === b.node.preparation?.text;
