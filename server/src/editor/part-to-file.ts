/**
 * Knows how a part becomes a file beside the recipe, which then takes it from there.
 * Refuses a part whose steps speak of another part: alone, it could not be read.
 */
import { lineEnd, type TextEdit } from '../edits/text-edit.ts';
import type { Line } from '../notation/tree.ts';
import { titleOf } from '../recipe/names/title.ts';
import { ovenBefore } from '../workspace/oven-before.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { partFrom } from './inherited.ts';
import { partAt } from './place.ts';
import { lastSaying } from './symbols.ts';

export interface MovedPart {
  readonly name: string;
  /** The new file's name; it lies beside the recipe, where there was none. */
  readonly file: string;
  readonly text: string;
  /** What is left in the recipe. */
  readonly edits: readonly TextEdit[];
}

/** The part at a line of the document. */
export function partToFile(snapshot: Snapshot, line: number): MovedPart | undefined {
  const part = partAt(snapshot, line);
  const at = part === undefined ? 0 : (snapshot.recipe.partsAt[part.index] ?? 0);
  const lines = part?.head.source.lines ?? [];
  const [header] = lines;
  const statement = header?.statement;
  const title = titleOf(statement).name;
  if (part === undefined || header === undefined || statement?.kind !== 'part' || title === undefined) return undefined;
  // Lines over a part of the base are no part that stands alone.
  if (partFrom(snapshot, at) !== undefined || snapshot.outline.head.some((h) => h.line.statement.kind === 'from'))
    return undefined;
  const alone = part.steps.every((step) =>
    step.mentions.every((m) => m.part === undefined && m.ingredients.every((i) => i.part === part.index)),
  );
  if (!alone || part.head.ingredients.length === 0) return undefined;
  const name = title.text;
  const file = freeName(snapshot, name);
  if (file === undefined) return undefined;
  const last = lastSaying(lines);
  const eol = lineEnd(snapshot.document);
  const oven = ovenBefore(snapshot.document, snapshot.recipe, part);
  // A note is said of the recipe, wherever it stands.
  const isNote = ({ statement }: Line): boolean => statement.kind === 'text' && statement.field === 'note';
  const notes = lines.slice(0, last + 1).filter(isNote);
  const remark = header.comment === undefined ? '' : `  ${header.comment.text}`;
  return {
    name,
    file,
    text: lines
      .slice(0, last + 1)
      .map(({ text }, i) => (i === oven?.line ? text.slice(0, oven.at) + oven.text + text.slice(oven.at) : text) + eol)
      .filter((_, i) => !isNote(lines[i] as Line))
      .join(''),
    edits: [
      {
        start: { line: at, character: 0 },
        end: { line: at + last, character: lines[last]?.text.length ?? 0 },
        text: [`part ${name} from ${file} : ${name}${remark}`, ...notes.map(({ text }) => text)].join(eol),
      },
    ],
  };
}

const MOST_TRIED = 20;

function freeName(snapshot: Snapshot, name: string): string | undefined {
  const bare = name
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  if (bare === '') return undefined;
  for (let n = 1; n <= MOST_TRIED; n++) {
    const file = n === 1 ? `${bare}.quern` : `${bare}-${n}.quern`;
    if (snapshot.base(file) === undefined) return file;
  }
  return undefined;
}
