/**
 * Knows what every part of a recipe gives to a check that looks at all of them: an edit asks only the parts that it changed.
 */
import { keptOn } from '../notation/kept.ts';
import type { Part, Recipe } from '../recipe/recipe.ts';

/** What one part gave. */
export interface Given<V> {
  readonly part: Part;
  readonly value: V;
}

/** The lists of one recipe, by the function that made them, and those of the recipe before it. */
interface Lists {
  readonly parts: readonly Part[];
  readonly made: (readonly Given<unknown>[] | undefined)[];
  readonly before?: { readonly made: Lists['made']; readonly changed: readonly Stretch[] };
}

/** Parts from one on, to before another, took the place of those from the same one on to before `oldTo`. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly oldTo: number;
}

const LISTS = keptOn<Recipe, Lists>();
let functions = 0;

/** Lets a recipe use what was gathered for the one it was edited from. */
export function lendParts(recipe: Recipe, before: Recipe): void {
  const old = LISTS.get(before);
  if (old === undefined || LISTS.get(recipe) !== undefined) return;
  LISTS.set(recipe, {
    parts: recipe.parts,
    made: [],
    before: { made: old.made, changed: changedBetween(old.parts, recipe.parts) },
  });
}

/**
 * The function that gives, in the order of the parts, what `ask` gives for each; undefined is left out. The same list for as long as
 * no part that is asked again gives anything, or gave anything before.
 */
export function overParts<V>(ask: (part: Part) => V | undefined): (recipe: Recipe) => readonly Given<V>[] {
  const place = functions++;
  return (recipe) => {
    const lists = listsOf(recipe);
    let list = lists.made[place];
    if (list === undefined) {
      const old = lists.before?.made[place];
      list =
        lists.before === undefined || old === undefined
          ? askParts(ask, recipe.parts, 0, recipe.parts.length)
          : renewed(old, ask, recipe.parts, lists.before.changed);
      lists.made[place] = list;
    }
    // Only this function writes at its place.
    return list as readonly Given<V>[];
  };
}

/** Whether any part gives something. */
export const anyPart = (ask: (part: Part) => boolean): ((recipe: Recipe) => boolean) => {
  const those = overParts((part) => ask(part) || undefined);
  return (recipe) => those(recipe).length > 0;
};

function listsOf(recipe: Recipe): Lists {
  let lists = LISTS.get(recipe);
  if (lists === undefined) {
    lists = { parts: recipe.parts, made: [] };
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
  old: readonly Given<unknown>[],
  ask: (part: Part) => V | undefined,
  parts: readonly Part[],
  changed: readonly Stretch[],
): readonly Given<unknown>[] {
  let list: Given<unknown>[] | undefined;
  let copied = 0;
  for (const { from, to, oldTo } of changed) {
    const first = placeIn(old, from);
    const last = placeIn(old, oldTo);
    const given = askParts(ask, parts, from, to);
    if (first === last && given.length === 0) continue;
    list ??= [];
    for (; copied < first; copied++) list.push(old[copied] as Given<unknown>);
    for (const each of given) list.push(each);
    copied = last;
  }
  if (list === undefined) return old;
  for (; copied < old.length; copied++) list.push(old[copied] as Given<unknown>);
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

/** Where the parts are others; a part knows its index, so that none is the same after more or fewer parts. */
function changedBetween(old: readonly Part[], parts: readonly Part[]): readonly Stretch[] {
  const changed: Stretch[] = [];
  const length = Math.min(old.length, parts.length);
  for (let at = 0; at < length; at++) {
    if (old[at] === parts[at]) continue;
    const from = at;
    while (at < length && old[at] !== parts[at]) at++;
    changed.push({ from, to: at, oldTo: at });
  }
  if (old.length !== parts.length) changed.push({ from: length, to: parts.length, oldTo: old.length });
  return changed;
}
