/**
 * Knows where a name is defined and spoken of in other files: bases, those who build on them, the foods of the house.
 * Refuses to know how the words of one file belong together: `occurrences.ts` does.
 */

import type { Position } from '../notation/document.ts';
import { titleOf } from '../recipe/names/title.ts';
import { sameName } from '../recipe/words.ts';
import type { Link } from '../workspace/folder.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { linkedAt } from './file-links.ts';
import { inheritedBy } from './inherited.ts';
import type { Kitchen } from './kitchen.ts';
import { definition, foodBlock, foodName, references } from './navigation.ts';
import { type Named, namedAt, occurrences } from './occurrences.ts';
import { cursorAt, fromWhole, holds, type Located, type Place, placeOf, toWhole } from './place.ts';
import { nameOf } from './rename.ts';

/** Where what stands under the caret is defined: another file or its part, a base's line, a food of the house, or here. */
export function definitionAcross(snapshot: Snapshot, position: Position, kitchen: Kitchen): Located | undefined {
  return (
    linkedAt(snapshot, position) ??
    changedAt(snapshot, position) ??
    foodAt(snapshot, position, kitchen) ??
    inWhole(snapshot, position) ??
    here(definition(snapshot, position))
  );
}

/** The base's line that a `swap` or `drop` speaks of. */
export function changedAt(snapshot: Snapshot, position: Position): Located | undefined {
  const { line, at, character } = cursorAt(snapshot, position);
  const { statement } = line;
  const old = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
  const base = holds(old, character) ? inheritedBy(snapshot, at) : undefined;
  return base && { path: base.path, at: base.at };
}

/** The definition in the recipe written out in full, where it is written. */
function inWhole(snapshot: Snapshot, position: Position): Located | undefined {
  const there = toWhole(snapshot, position);
  const place = there === undefined ? undefined : definition(snapshot.whole, there);
  return place && fromWhole(snapshot, place);
}

const here = (at: Place | undefined): Located | undefined => at && { at };

/** The block of a food of the house, for an ingredient's line or after `like`. */
function foodAt(snapshot: Snapshot, position: Position, kitchen: Kitchen): Located | undefined {
  const there = toWhole(snapshot, position);
  const name = foodName(snapshot, position) ?? (there === undefined ? undefined : foodName(snapshot.whole, there));
  if (name === undefined) return undefined;
  const own = foodBlock(snapshot, name);
  if (own !== undefined) return { at: own };
  const match = snapshot.house.world.book.find(name);
  return match.kind === 'food' && match.food.house === true
    ? houseFoodAt(snapshot, match.food.name, kitchen)
    : undefined;
}

/** The block that describes a food of the house, in this file or another. */
export function houseFoodAt(snapshot: Snapshot, name: string, kitchen: Kitchen): Located | undefined {
  const own = foodBlock(snapshot, name);
  if (own !== undefined) return { at: own };
  for (const { path, foods } of kitchen.index.entries()) {
    if (foods.length === 0) continue;
    const file = kitchen.snapshotAt(path);
    const at = file && foodBlock(file, name);
    if (at !== undefined) return { path, at };
  }
  return undefined;
}

/**
 * Every place that speaks of it: in this file, and of a recipe's name, a part or a food of the house in all others.
 * `path` is where the file lies; a text that lies nowhere has no users.
 */
export function referencesAcross(
  snapshot: Snapshot,
  path: string | undefined,
  position: Position,
  withDefinition: boolean,
  kitchen: Kitchen,
): Located[] {
  const { line, at, character } = cursorAt(snapshot, position);
  const { statement } = line;
  if (statement.kind === 'food' && holds(statement.name, character)) {
    const own = withDefinition ? [{ at: placeOf(at, statement.name) }] : [];
    return [...own, ...foodUses(snapshot, path, statement.name.text, kitchen)];
  }
  const { name: title } = titleOf(statement);
  if (statement.kind === 'recipe' && holds(title, character))
    return [...(withDefinition ? [{ at: placeOf(at, title) }] : []), ...usersOf(path, undefined, kitchen)];
  const linked = linkedAt(snapshot, position);
  if (linked?.path !== undefined) {
    const part = statement.kind === 'part' && !holds(statement.file, character);
    const name = part ? (statement.filePart ?? title)?.text : undefined;
    const own = definition(snapshot, position);
    return [
      ...(withDefinition ? [linked] : []),
      ...usersOf(linked.path, name, kitchen).map((u) => (u.path === path ? { at: u.at } : u)),
      ...(own === undefined ? [] : references(snapshot, position, false).map((place) => ({ at: place }))),
    ];
  }
  const own = references(snapshot, position, withDefinition).map((place): Located => ({ at: place }));
  const named = namedAt(snapshot, position)?.named;
  if (named?.kind === 'part') return [...own, ...usersOf(path, nameOf(snapshot, named), kitchen)];
  if (named !== undefined) return path === undefined ? own : [...own, ...variantUses(snapshot, path, named, kitchen)];
  const elsewhere = definedElsewhere(snapshot, position);
  const of = elsewhere?.path;
  const base = of === undefined ? undefined : kitchen.snapshotAt(of);
  if (elsewhere === undefined || of === undefined || base === undefined)
    return inheritedUses(snapshot, position, withDefinition);
  const asked = { line: elsewhere.at.line, character: elsewhere.at.start };
  return referencesAcross(base, of, asked, withDefinition, kitchen).map((use) =>
    use.path !== undefined && use.path === path ? { at: use.at } : { path: use.path ?? of, at: use.at },
  );
}

/** The line of a base that what stands under the caret of a variant speaks of. */
export const definedElsewhere = (snapshot: Snapshot, position: Position): Located | undefined =>
  changedAt(snapshot, position) ?? inWhole(snapshot, position);

/** What a text that lies nowhere says of a name it inherits. */
function inheritedUses(snapshot: Snapshot, position: Position, withDefinition: boolean): Located[] {
  const there = toWhole(snapshot, position);
  if (there === undefined) return [];
  return references(snapshot.whole, there, withDefinition).flatMap((place) => fromWhole(snapshot, place) ?? []);
}

/** What the files that build on a file, or on one that does, say of a line of its list. */
function variantUses(snapshot: Snapshot, path: string, named: Named, kitchen: Kitchen): Located[] {
  const name = nameOf(snapshot, named) ?? '';
  const defined = occurrences(snapshot, named).find((o) => o.role === 'definition');
  const found = new Map<string, Located>();
  const seen = new Set([path]);
  for (const of of seen) {
    for (const { entry, link } of kitchen.index.usersOf(of)) {
      const user = entry.path === path ? undefined : kitchen.snapshotAt(entry.path);
      if (user === undefined) continue;
      if (link.part === undefined) seen.add(entry.path);
      const places = inheritedIn(user, { path, line: defined?.line ?? -1 }, name).flatMap((candidate) =>
        occurrences(user.whole, candidate).flatMap((place) => fromWhole(user, place) ?? []),
      );
      const own = places.filter((p) => p.path === undefined).map((p) => p.at);
      for (const at of [...changesOf(user, name), ...own])
        found.set(`${entry.path}:${at.line}:${at.start}`, { path: entry.path, at: placeOf(at.line, at) });
    }
  }
  return [...found.values()];
}

/** The ingredients of a variant, written out in full, that are a line of a base's list. */
export function inheritedIn(
  user: Snapshot,
  base: { readonly path: string; readonly line: number },
  name: string,
): Named[] {
  return user.whole.recipe.parts.flatMap((part) =>
    part.head.ingredients.flatMap((ingredient, index): Named[] => {
      if (!sameName(ingredient.name, name)) return [];
      const named: Named = { kind: 'ingredient', part: part.index, index };
      const defined = occurrences(user.whole, named).find((o) => o.role === 'definition');
      const origin = defined === undefined ? undefined : fromWhole(user, defined);
      return origin?.path === base.path && origin.at.line === base.line ? [named] : [];
    }),
  );
}

/** The lines of a file that swap or drop an ingredient of that name. */
export function changesOf({ document }: Snapshot, name: string): Place[] {
  return document.lines.flatMap(({ statement }, line) => {
    const old = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
    return old !== undefined && sameName(old.text, name) ? [placeOf(line, old)] : [];
  });
}

/** The places of other files that build on a file, or on one part of it. */
function usersOf(path: string | undefined, part: string | undefined, { index }: Kitchen): Located[] {
  if (path === undefined) return [];
  return index
    .usersOf(path)
    .filter(({ link }) => part === undefined || (link.part !== undefined && sameName(link.part, part)))
    .map(({ entry, link }) => ({ path: entry.path, at: linkPlace(link) }));
}

const linkPlace = ({ at, span }: Link): Place => ({ line: at, start: span.start, end: span.end });

/** The lines of all files that list a food of the house, and the foods that are like it. */
function foodUses(snapshot: Snapshot, path: string | undefined, name: string, kitchen: Kitchen): Located[] {
  const match = snapshot.house.world.book.find(name);
  if (match.kind !== 'food') return [];
  const uses = foodUsesIn(snapshot, match.food.id).map((at): Located => ({ at }));
  for (const entry of kitchen.index.entries()) {
    if (entry.path === path) continue;
    const other = kitchen.snapshotAt(entry.path);
    if (other !== undefined) uses.push(...foodUsesIn(other, match.food.id).map((at) => ({ path: entry.path, at })));
  }
  return uses;
}

/** The names of ingredients of one file that are the food, and what is like it. */
function foodUsesIn(snapshot: Snapshot, id: string): Place[] {
  const isIt = (name: string): boolean => {
    const match = snapshot.house.world.book.find(name);
    return match.kind === 'food' && match.food.id === id;
  };
  return snapshot.document.lines.flatMap(({ statement }, line) => {
    const node = statement.kind === 'add' || statement.kind === 'swap' ? statement.ingredient : statement;
    const name = node.kind === 'ingredient' || node.kind === 'like' ? node.name : undefined;
    return name !== undefined && isIt(name.text) ? [placeOf(line, name)] : [];
  });
}
