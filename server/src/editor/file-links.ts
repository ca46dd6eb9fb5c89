/**
 * Knows the words of a file that name another file or a part of it: after `from`, and after the colon.
 * Refuses to know where files lie: a snapshot finds its bases.
 */
import type { Position } from '../notation/document.ts';
import type { TextNode } from '../notation/tree.ts';
import { titleOf } from '../recipe/names/title.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { partFrom } from './inherited.ts';
import { cursorAt, holds, type Located, originOf, type Place, placeOf } from './place.ts';

export interface FileLink {
  readonly at: Place;
  /** As written. */
  readonly file: string;
  readonly path: string;
}

/** Every name of a file that is there: recipes, and pictures. */
export function fileLinks(snapshot: Snapshot): FileLink[] {
  return snapshot.document.lines.flatMap(({ statement }, line) => {
    const { kind } = statement;
    const file = kind === 'from' || kind === 'part' || kind === 'picture' ? statement.file : undefined;
    const path = file === undefined ? undefined : pathOf(snapshot, file.text, kind === 'picture');
    return file === undefined || path === undefined ? [] : [{ at: placeOf(line, file), file: file.text, path }];
  });
}

function pathOf(snapshot: Snapshot, file: string, isPicture: boolean): string | undefined {
  if (!isPicture) return snapshot.base(file)?.uri;
  const picture = snapshot.picture(file);
  return picture?.kind === 'there' ? picture.path : undefined;
}

/** The file or part of another file that is named under the caret. */
export function linkedAt(snapshot: Snapshot, position: Position): Located | undefined {
  const { line, at, character } = cursorAt(snapshot, position);
  const { statement } = line;
  if (statement.kind === 'from' && holds(statement.file, character)) return headOf(snapshot, statement.file);
  if (statement.kind !== 'part' || statement.file === undefined) return undefined;
  if (holds(statement.file, character)) return headOf(snapshot, statement.file);
  if (!holds(statement.filePart, character) && !holds(titleOf(statement).name, character)) return undefined;
  const [found] = partFrom(snapshot, at) ?? [];
  if (found === undefined) return undefined;
  const { base, part } = found;
  const line0 = base.recipe.partsAt[part.index] ?? 0;
  const { name } = titleOf(base.document.lines[line0]?.statement);
  const origin = originOf(base, line0);
  return { path: origin.path, at: { line: origin.line, start: name?.start ?? 0, end: name?.end ?? 0 } };
}

/** The first line of a file that names what it holds. */
function headOf(snapshot: Snapshot, file: TextNode): Located | undefined {
  const base = snapshot.base(file.text);
  if (base === undefined) return undefined;
  const opening = base.outline.recipe;
  const { name } = titleOf(opening?.line.statement);
  return {
    path: base.uri,
    at: { line: opening?.at ?? 0, start: name?.start ?? 0, end: name?.end ?? 0 },
  };
}
