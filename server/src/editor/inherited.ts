/**
 * Knows which line of a base a line of a variant changes, and which parts it takes.
 * Refuses to write anything out: `workspace/inherit.ts` does; where a line stands in the whole recipe is `place.ts`'s to say.
 */
import type { Span, TextNode } from '../notation/tree.ts';
import type { Ingredient, Part } from '../recipe/model.ts';
import { titleOf } from '../recipe/names/title.ts';
import { sameName, wordsOf } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { originOf, type Place } from './place.ts';

/** A line of a base's list. */
export interface Inherited {
  readonly path: string;
  readonly at: Place;
  readonly part: Part;
  readonly ingredient: Ingredient;
  /** The line from its amount to its end. */
  readonly text: string;
}

/** What a line of a variant changes: the base's line that a `swap`, a `drop` or a line of the same name speaks of. */
export function inheritedBy(snapshot: Snapshot, line: number): Inherited | undefined {
  const statement = snapshot.document.lines[line]?.statement;
  const named =
    statement?.kind === 'swap'
      ? statement.old
      : statement?.kind === 'drop' || statement?.kind === 'ingredient'
        ? statement.name
        : undefined;
  if (named === undefined) return undefined;
  const fits = statement?.kind === 'ingredient' ? sameName : endsWith;
  for (const { base, part } of basesAt(snapshot, line)) {
    const ingredient = part.head.ingredients.find((i) => fits(i.name, named.text));
    if (ingredient !== undefined) return inherited(base, part, ingredient);
  }
  return undefined;
}

/** A part of a base, in the base written out in full. */
export interface BasePart {
  readonly base: Snapshot;
  readonly part: Part;
}

/** The parts that a line of a variant may change: of the file its own part comes from, then of the recipe's base. */
export function basesAt(snapshot: Snapshot, line: number): BasePart[] {
  const own = snapshot.outline.parts.find(({ at, source }) => at <= line && line < at + source.lines.length);
  const header = own?.source.lines[0]?.statement;
  const name = header?.kind === 'part' ? (titleOf(header).name?.text ?? '') : '';
  const found: BasePart[] = [];
  if (own !== undefined) found.push(...(partFrom(snapshot, own.at) ?? []));
  const base = baseOf(snapshot)?.base;
  const parts = base?.recipe.parts.filter((p) => own === undefined || sameName(p.head.name, name)) ?? [];
  if (base !== undefined) found.push(...parts.map((part) => ({ base, part })));
  return found;
}

/** The base of the whole recipe, written out in full, and the line that names it. */
export function baseOf(
  snapshot: Snapshot,
): { readonly line: number; readonly file: TextNode; readonly base: Snapshot | undefined } | undefined {
  for (const { at, line } of snapshot.outline.head) {
    const { statement } = line;
    if (statement.kind === 'from' && statement.file !== undefined)
      return { line: at, file: statement.file, base: snapshot.base(statement.file.text)?.whole };
  }
  return undefined;
}

/** The part that a line `part … from FILE : PART` takes; undefined where the line takes none. */
export function partFrom(snapshot: Snapshot, line: number): BasePart[] | undefined {
  const statement = snapshot.document.lines[line]?.statement;
  if (statement?.kind !== 'part' || statement.file === undefined) return undefined;
  const base = snapshot.base(statement.file.text)?.whole;
  if (base === undefined) return [];
  const wanted = statement.filePart?.text ?? titleOf(statement).name?.text ?? '';
  const { parts } = base.recipe;
  const part =
    parts.find((p) => sameName(p.head.name, wanted)) ??
    (statement.filePart === undefined && parts.length === 1 ? parts[0] : undefined);
  return part === undefined ? [] : [{ base, part }];
}

function inherited(base: Snapshot, part: Part, ingredient: Ingredient): Inherited {
  const line = (base.recipe.partsAt[part.index] ?? 0) + ingredient.line;
  const written = base.document.lines[line]?.text ?? '';
  const name: Span = ingredient.node.name ?? { start: 0, end: written.length };
  const comment = base.document.lines[line]?.comment;
  const origin = originOf(base, line);
  return {
    path: origin.path,
    at: { line: origin.line, start: name.start, end: name.end },
    part,
    ingredient,
    text: written.slice(0, comment?.start).trim().replace(/\s+/g, ' '),
  };
}

function endsWith(name: string, words: string): boolean {
  const [full, end] = [wordsOf(name), wordsOf(words)];
  return end.length > 0 && full.slice(-end.length).join(' ') === end.join(' ');
}
