/**
 * Knows which recipes build on a recipe or on a part of it, and on which it builds: the files that name files.
 * Refuses to know what a step takes from another part: references say it.
 */
import type { Position } from '../notation/document.ts';
import { titleOf } from '../recipe/names/title.ts';
import { sameName } from '../recipe/words.ts';
import type { Entry, Link, Named } from '../workspace/folder.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { linkedAt } from './file-links.ts';
import type { Kitchen } from './kitchen.ts';
import { cursorAt, fileName, type Place } from './place.ts';

/** A recipe, or a part of one, as a file has it. */
export interface Built {
  readonly path: string;
  readonly name: string;
  readonly part: boolean;
  /** Its name where it is written. */
  readonly at: Place;
}

/** One that builds on another, with the places where it says so. */
export interface Building {
  readonly of: Built;
  readonly says: readonly Place[];
}

/** What the caret speaks of: the file or part that a link names, the part that a line opens, else the recipe, from a line of its head. */
export function builtAt(
  snapshot: Snapshot,
  path: string | undefined,
  position: Position,
  kitchen: Kitchen,
): Built | undefined {
  const linked = linkedAt(snapshot, position);
  const of = linked?.path ?? path;
  const entry = of === undefined ? undefined : kitchen.index.entry(of);
  if (entry === undefined) return undefined;
  const { line, at } = linked === undefined ? cursorAt(snapshot, position) : { line: undefined, at: linked.at.line };
  const { name } = titleOf(line?.statement);
  const part = entry.parts.find((each) => each.at === at && (name === undefined || sameName(each.name, name.text)));
  if (part !== undefined) return built(entry, part);
  const opens = line === undefined || line.statement.kind === 'recipe';
  return opens ? recipeOf(entry) : undefined;
}

/** The files that take it in. */
export function buildingOn({ path, name, part }: Built, { index }: Kitchen): Building[] {
  const users = index
    .usersOf(path)
    .filter(({ link }) => !part || (link.part !== undefined && sameName(link.part, name)));
  return grouped(users.map(({ entry, link }) => ({ of: ownerOf(entry, link, part), link })));
}

/** The files that it takes in; of a part, that which it comes from. */
export function builtFrom({ path, part, at }: Built, { index }: Kitchen): Building[] {
  const links = index.entry(path)?.links ?? [];
  return grouped(
    links
      .filter((link) => !part || link.at === at.line)
      .flatMap((link) => {
        const entry = index.entry(link.path);
        const taken = entry?.parts.find(({ name }) => link.part !== undefined && sameName(name, link.part));
        return entry === undefined ? [] : [{ of: taken === undefined ? recipeOf(entry) : built(entry, taken), link }];
      }),
  );
}

/** What of a file says it: its recipe, or asked of parts the part that does. */
function ownerOf(entry: Entry, link: Link, byPart: boolean): Built {
  const part = byPart ? entry.parts.find(({ at }) => at === link.at) : undefined;
  return part === undefined ? recipeOf(entry) : built(entry, part);
}

function recipeOf(entry: Entry): Built {
  const { recipe, path } = entry;
  const nameless: Place = { line: 0, start: 0, end: 0 };
  return recipe === undefined
    ? { path, name: fileName(path), part: false, at: nameless }
    : { ...built(entry, recipe), part: false };
}

const built = ({ path }: Entry, { name, at, span }: Named): Built => ({
  path,
  name,
  part: true,
  at: { line: at, start: span.start, end: span.end },
});

function grouped(found: readonly { readonly of: Built; readonly link: Link }[]): Building[] {
  const byKey = new Map<string, { of: Built; says: Place[] }>();
  for (const { of, link } of found) {
    const key = `${of.path}\n${of.part}\n${of.at.line}`;
    const building = byKey.get(key) ?? { of, says: [] };
    building.says.push({ line: link.at, start: link.span.start, end: link.span.end });
    byKey.set(key, building);
  }
  return [...byKey.values()];
}
