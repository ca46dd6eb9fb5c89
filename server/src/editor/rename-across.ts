/**
 * Knows how a part, an ingredient or a food of the house is given another name in every file that speaks of it.
 * Refuses, with the reason, where one of them would not be read back as written; then no file is changed.
 */

import { replaceSpan, type TextEdit } from '../edits/text-edit.ts';
import type { Position } from '../notation/document.ts';
import { readLine } from '../notation/statements.ts';
import { titleOf } from '../recipe/names/title.ts';
import { sameName } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { changedAt, changesOf, definedElsewhere, inheritedIn } from './across-files.ts';
import { linkedAt } from './file-links.ts';
import type { FileEdits, Kitchen } from './kitchen.ts';
import { type Named, namedAt, occurrences } from './occurrences.ts';
import { cursorAt, fileName, fromWhole, holds, type Place, placeOf, toWhole } from './place.ts';
import { nameOf, prepareRename, renameNamed, unreadable } from './rename.ts';

export type RenamedAcross =
  | { readonly ok: true; readonly edits: FileEdits; readonly own: readonly TextEdit[] }
  | { readonly ok: false; readonly why: string };

/** What would be renamed here, or in the file that this one has it from. */
export function prepareRenameAcross(snapshot: Snapshot, position: Position): { at: Place; name: string } | undefined {
  const { line, at, character } = cursorAt(snapshot, position);
  const { statement } = line;
  if (statement.kind === 'food' && holds(statement.name, character))
    return { at: placeOf(at, statement.name), name: statement.name.text };
  if (statement.kind === 'part' && holds(statement.filePart, character))
    return { at: placeOf(at, statement.filePart), name: statement.filePart.text };
  const own = prepareRename(snapshot, position);
  if (own !== undefined) return own;
  const old = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
  if (holds(old, character) && changedAt(snapshot, position) !== undefined)
    return { at: placeOf(at, old), name: old.text };
  const there = toWhole(snapshot, position);
  const found = there === undefined ? undefined : prepareRename(snapshot.whole, there);
  const place = found === undefined ? undefined : fromWhole(snapshot, found.at);
  return found === undefined || place === undefined ? undefined : { at: place.at, name: found.name };
}

/** `path` is where the file lies; a text that lies nowhere has only itself. */
export function renameAcross(
  snapshot: Snapshot,
  path: string | undefined,
  position: Position,
  newName: string,
  kitchen: Kitchen,
): RenamedAcross {
  const to = newName.trim().replace(/\s+/g, ' ');
  const { line, character } = cursorAt(snapshot, position);
  const { statement } = line;
  if (statement.kind === 'food' && holds(statement.name, character))
    return renameFood(snapshot, path, statement.name.text, to, kitchen);
  const inFile = statement.kind === 'part' && holds(statement.filePart, character);
  const named = inFile ? undefined : namedAt(snapshot, position)?.named;
  if (named !== undefined) return renameHere(snapshot, path, named, to, kitchen);
  const elsewhere = inFile ? linkedAt(snapshot, position) : definedElsewhere(snapshot, position);
  if (elsewhere?.path === undefined) return refuse('Put the caret on an ingredient, a part or a food of the house.');
  const base = kitchen.snapshotAt(elsewhere.path);
  const inBase = base && namedAt(base, { line: elsewhere.at.line, character: elsewhere.at.start })?.named;
  if (base === undefined || inBase === undefined) return refuse(`${fileName(elsewhere.path)} cannot be changed.`);
  const renamed = renameHere(base, elsewhere.path, inBase, to, kitchen);
  if (!renamed.ok || path === undefined) return renamed;
  const edits = new Map([...renamed.edits, [elsewhere.path, renamed.own] as const]);
  const own = edits.get(path) ?? [];
  edits.delete(path);
  return { ok: true, edits, own };
}

const refuse = (why: string): RenamedAcross => ({ ok: false, why });

/** The file that defines the name, and all that build on it. */
function renameHere(
  snapshot: Snapshot,
  path: string | undefined,
  named: Named,
  to: string,
  kitchen: Kitchen,
): RenamedAcross {
  const name = nameOf(snapshot, named) ?? '';
  const renamed = renameNamed(snapshot, named, to);
  if (!renamed.ok) return renamed;
  const edits = new Map<string, readonly TextEdit[]>();
  if (path === undefined) return { ok: true, edits, own: renamed.edits };
  const defined = occurrences(snapshot, named).find((o) => o.role === 'definition');
  const seen = new Set([path]);
  // The users of a file are the users of all that build on it as a whole.
  for (const of of seen) {
    for (const { entry, link } of kitchen.index.usersOf(of)) {
      if (entry.path === path) continue;
      const user = kitchen.snapshotAt(entry.path);
      if (user === undefined) continue;
      const isWhole = link.part === undefined;
      const change = inUser(user, { path, line: defined?.line ?? -1 }, named.kind, name, to, isWhole);
      if (!change.ok) return refuse(`In ${fileName(entry.path)}: ${change.why}`);
      const links = named.kind === 'part' ? linkEdits(user, link.at, name, to) : [];
      const before = edits.get(entry.path) ?? [];
      const all = [...before, ...change.edits, ...links];
      if (all.length > 0) edits.set(entry.path, once(all));
      if (isWhole) seen.add(entry.path);
    }
  }
  return { ok: true, edits, own: renamed.edits };
}

type Change = { readonly ok: true; readonly edits: readonly TextEdit[] } | { readonly ok: false; readonly why: string };

/** What a file that builds on another says of the name in its own lines. */
function inUser(
  user: Snapshot,
  base: { readonly path: string; readonly line: number },
  kind: Named['kind'],
  name: string,
  to: string,
  isWhole: boolean,
): Change {
  const edits: TextEdit[] = [];
  const { whole } = user;
  const candidates: Named[] =
    kind === 'ingredient'
      ? inheritedIn(user, base, name)
      : whole.recipe.parts.flatMap((part): Named[] =>
          isWhole && sameName(part.head.name, name) ? [{ kind: 'part', part: part.index }] : [],
        );
  for (const candidate of candidates) {
    const renamed = renameNamed(whole, candidate, to);
    if (!renamed.ok) return renamed;
    edits.push(...ownEdits(user, renamed.edits));
  }
  if (kind === 'ingredient') edits.push(...changesOf(user, name).map((at) => replaceSpan(at.line, at, to)));
  else
    user.document.lines.forEach(({ statement }, at) => {
      const title = statement.kind === 'part' ? titleOf(statement).name : undefined;
      if (isWhole && title !== undefined && sameName(title.text, name)) edits.push(replaceSpan(at, title, to));
    });
  return { ok: true, edits };
}

/** Edits of the whole recipe that stand on the file's own lines. */
function ownEdits(user: Snapshot, edits: readonly TextEdit[]): TextEdit[] {
  return edits.flatMap((edit) => {
    const { line, character } = edit.start;
    const place = fromWhole(user, { line, start: character, end: edit.end.character });
    return place === undefined || place.path !== undefined ? [] : [replaceSpan(place.at.line, place.at, edit.text)];
  });
}

/** `part case from FILE : PART` names the part by its new name; without a colon, it must say it from now on. */
function linkEdits(user: Snapshot, line: number, name: string, to: string): TextEdit[] {
  const statement = user.document.lines[line]?.statement;
  if (statement?.kind !== 'part' || statement.file === undefined) return [];
  const { file, filePart } = statement;
  if (filePart !== undefined) return sameName(filePart.text, name) ? [replaceSpan(line, filePart, to)] : [];
  const own = titleOf(statement).name?.text ?? '';
  return sameName(own, name) ? [replaceSpan(line, { start: file.end, end: file.end }, ` : ${to}`)] : [];
}

/** A food of the house by its block, in every list and sentence that uses its name. */
function renameFood(
  snapshot: Snapshot,
  path: string | undefined,
  name: string,
  to: string,
  kitchen: Kitchen,
): RenamedAcross {
  const read = readLine(`food ${to}`).statement;
  if (read.kind !== 'food' || read.name?.text !== to || readLine(`1 g ${to}`).statement.kind !== 'ingredient')
    return refuse(unreadable(to));
  const taken = snapshot.house.world.book.find(to);
  if (taken.kind === 'food' && taken.food.house === true && !sameName(taken.food.name, name))
    return refuse(`The house already has ${taken.food.name}.`);
  const own = foodEdits(snapshot, name, to);
  if (!own.ok) return refuse(own.why);
  const edits = new Map<string, readonly TextEdit[]>();
  for (const entry of path === undefined ? [] : kitchen.index.entries()) {
    const other = entry.path === path ? undefined : kitchen.snapshotAt(entry.path);
    if (other === undefined) continue;
    const change = foodEdits(other, name, to);
    if (!change.ok) return refuse(`In ${fileName(entry.path)}: ${change.why}`);
    if (change.edits.length > 0) edits.set(entry.path, change.edits);
  }
  return { ok: true, edits, own: own.edits };
}

function foodEdits(file: Snapshot, name: string, to: string): Change {
  const edits: TextEdit[] = [];
  file.document.lines.forEach(({ statement }, at) => {
    const names =
      statement.kind === 'food' || statement.kind === 'like' || statement.kind === 'drop'
        ? [statement.name]
        : statement.kind === 'swap'
          ? [statement.old]
          : [];
    for (const found of names)
      if (found !== undefined && sameName(found.text, name)) edits.push(replaceSpan(at, found, to));
  });
  const { whole } = file;
  for (const part of whole.recipe.parts) {
    for (const [index, ingredient] of part.head.ingredients.entries()) {
      if (!sameName(ingredient.name, name)) continue;
      const renamed = renameNamed(whole, { kind: 'ingredient', part: part.index, index }, to);
      if (!renamed.ok) return renamed;
      edits.push(...ownEdits(file, renamed.edits));
    }
  }
  return { ok: true, edits: once(edits) };
}

/** Each place once, in the order of the text. */
function once(edits: readonly TextEdit[]): readonly TextEdit[] {
  const byPlace = new Map(edits.map((e) => [`${e.start.line}:${e.start.character}`, e]));
  return [...byPlace.values()].sort((a, b) => a.start.line - b.start.line || a.start.character - b.start.character);
}
