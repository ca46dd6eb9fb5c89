/**
 * Knows what every part of a recipe gives to a check that looks at all of them: an edit asks only the parts that it changed.
 */
import { keptOn } from '../notation/kept.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import type { House } from './house.ts';

/** What one part gave. */
export interface Given<V> {
  readonly part: Part;
  readonly value: V;
}

/** What was gathered for one recipe, by the function that did, and for the recipe before it. */
interface Lists {
  readonly parts: readonly Part[];
  /** By what each function asks of a part. */
  readonly made: Map<object, unknown>;
  readonly before?: { readonly made: Lists['made']; readonly changed: readonly Stretch[] };
}

/** What was worked out for the recipe before, and which parts are others since. */
export interface Last<V> {
  readonly value: V;
  readonly changed: readonly Stretch[];
}

/** Those from one on, to before another, took the place of those from the same one on to before `oldTo`. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly oldTo: number;
}

const LISTS = keptOn<Recipe, Lists>();

/** Lets a recipe use what was gathered for the one it was edited from. */
export function lendParts(recipe: Recipe, before: Recipe): void {
  const old = LISTS.get(before);
  if (old === undefined || LISTS.get(recipe) !== undefined) return;
  LISTS.set(recipe, {
    parts: recipe.parts,
    made: new Map(),
    before: { made: old.made, changed: changedBetween(old.parts, recipe.parts) },
  });
}

/**
 * The function that gives, in the order of the parts, what `ask` gives for each; undefined is left out. The same list for as long as
 * no part that is asked again gives anything, or gave anything before.
 */
export function overParts<V>(ask: (part: Part) => V | undefined): (recipe: Recipe) => readonly Given<V>[] {
  return (recipe) => {
    const lists = listsOf(recipe);
    // Only this function writes by what it asks.
    let list = lists.made.get(ask) as readonly Given<V>[] | undefined;
    if (list === undefined) {
      const old = lists.before?.made.get(ask) as readonly Given<V>[] | undefined;
      list =
        lists.before === undefined || old === undefined
          ? askParts(ask, recipe.parts, 0, recipe.parts.length)
          : renewed(old, ask, recipe.parts, lists.before.changed);
      lists.made.set(ask, list);
    }
    return list;
  };
}

/** What was worked out over a list. */
export interface Worked<T, V> {
  readonly list: readonly T[];
  /** One for each of the list. */
  readonly values: readonly V[];
}

/** What `ask` gives for each of a list, which asks again only where it is another; the same values for as long as all of them are. */
export function workedAgain<T, V>(list: readonly T[], ask: (item: T) => V, last?: Worked<T, V>): Worked<T, V> {
  if (last === undefined) return { list, values: list.map(ask) };
  if (last.list === list) return last;
  return { list, values: valuesAgain(list, ask, last.values, changedBetween(last.list, list)) };
}

function valuesAgain<T, V>(
  list: readonly T[],
  ask: (item: T) => V,
  old: readonly V[],
  changed: readonly Stretch[],
): readonly V[] {
  let values: V[] | undefined;
  for (const { from, to, oldTo } of changed) {
    // Nothing else has changed then.
    if (to !== oldTo) return [...old.slice(0, from), ...list.slice(from, to).map(ask), ...old.slice(oldTo)];
    for (let i = from; i < to; i++) {
      const value = ask(list[i] as T);
      if (value === old[i]) continue;
      values ??= old.slice();
      values[i] = value;
    }
  }
  return values ?? old;
}

/**
 * The function that gives, in order, what `ask` gives for each of a list made for a recipe; undefined is left out. Asked for the list of
 * the next recipe, it asks again only what is new there.
 */
export function overList<T, V>(
  ask: (house: House, item: T) => V | undefined,
): (recipe: Recipe, list: readonly T[], house: House) => readonly V[] {
  const lastOf = lent(
    (_, last?: Last<{ now?: Worked<T, V | undefined> & { readonly house: House; readonly given: readonly V[] } }>) =>
      last?.value ?? {},
  );
  return (recipe, list, house) => {
    const last = lastOf(recipe);
    const before = last.now?.house === house ? last.now : undefined;
    if (before?.list === list) return before.given;
    const worked = workedAgain(list, (item) => ask(house, item), before);
    const given = worked.values === before?.values ? before.given : worked.values.filter((v) => v !== undefined);
    last.now = { ...worked, house, given };
    return given;
  };
}

/** The function that works out one value for each recipe, from that of the recipe it was edited from where that was asked for. */
export function lent<V>(make: (recipe: Recipe, last?: Last<V>) => V): (recipe: Recipe) => V {
  return (recipe) => {
    const lists = listsOf(recipe);
    // Only this function writes by what it makes.
    let kept = lists.made.get(make) as { readonly value: V } | undefined;
    if (kept === undefined) {
      const last = lists.before?.made.get(make) as { readonly value: V } | undefined;
      const changed = lists.before?.changed;
      kept = { value: last && changed ? make(recipe, { value: last.value, changed }) : make(recipe) };
      lists.made.set(make, kept);
    }
    return kept.value;
  };
}

/** The function that gives, by part, what `ask` gives for each; the same list for as long as all of it is. */
export const byPart = <V>(ask: (part: Part) => V): ((recipe: Recipe) => readonly V[]) =>
  lent(({ parts }, last?: Last<readonly V[]>) =>
    last === undefined ? parts.map(ask) : valuesAgain(parts, ask, last.value, last.changed),
  );

/** Whether any part gives something. */
export const anyPart = (ask: (part: Part) => boolean): ((recipe: Recipe) => boolean) => {
  const those = overParts((part) => ask(part) || undefined);
  return (recipe) => those(recipe).length > 0;
};

function listsOf(recipe: Recipe): Lists {
  let lists = LISTS.get(recipe);
  if (lists === undefined) {
    lists = { parts: recipe.parts, made: new Map() };
    LISTS.set(recipe, lists);
  }
  return lists;
}

function askParts<V>(ask: (part: Part) => V | undefined, parts: readonly Part[], from: number, to: number): Given<V>[] {
  const given: Given<V>[] = [];
  for (let i = from; i < to; i++) {
    const part = parts[i];
    const value = part === undefined ? undefined : ask(part);
    if (part !== undefined && value !== undefined) given.push({ part, value });
  }
  return given;
}

function renewed<V>(
  old: readonly Given<V>[],
  ask: (part: Part) => V | undefined,
  parts: readonly Part[],
  changed: readonly Stretch[],
): readonly Given<V>[] {
  let list: Given<V>[] | undefined;
  let copied = 0;
  for (const { from, to, oldTo } of changed) {
    const first = placeIn(old, from);
    const last = placeIn(old, oldTo);
    const given = askParts(ask, parts, from, to);
    if (first === last && given.length === 0) continue;
    list ??= [];
    for (; copied < first; copied++) list.push(old[copied] as Given<V>);
    for (const each of given) list.push(each);
    copied = last;
  }
  if (list === undefined) return old;
  for (; copied < old.length; copied++) list.push(old[copied] as Given<V>);
  return list;
}

/** How many of the list stand before the part of an index. */
function placeIn(list: readonly Given<unknown>[], index: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((list[middle]?.part.index ?? 0) < index) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Where two lists differ: the stretches of those that have others in their place, or one stretch where there are more or fewer. */
export function changedBetween(old: readonly unknown[], list: readonly unknown[]): readonly Stretch[] {
  const shorter = Math.min(old.length, list.length);
  let from = 0;
  while (from < shorter && old[from] === list[from]) from++;
  let below = 0;
  while (below < shorter - from && old[old.length - 1 - below] === list[list.length - 1 - below]) below++;
  const end = list.length - below;
  if (old.length !== list.length) return [{ from, to: end, oldTo: old.length - below }];
  const changed: Stretch[] = [];
  for (let at = from; at < end; at++) {
    if (old[at] === list[at]) continue;
    const first = at;
    while (at < end && old[at] !== list[at]) at++;
    changed.push({ from: first, to: at, oldTo: at });
  }
  return changed;
}
