/**
 * Knows where a position is: its line, the statement there, the part it belongs to, and where it stands in the whole recipe that a
 * variant is written out to. No feature works that out for itself.
 * Refuses to know what is asked about it.
 */
import { clamp, type Position } from '../notation/document.ts';
import type { IngredientNode, Line, Span } from '../notation/tree.ts';
import type { Ingredient, Part } from '../recipe/model.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { isSpacer, shiftOf } from '../workspace/written.ts';

/** A run of characters of one line of the document. */
export interface Place extends Span {
  readonly line: number;
}

export interface Cursor {
  /** The line's number in the document. */
  readonly at: number;
  readonly character: number;
  readonly line: Line;
  readonly part?: Part;
  /** The line's number in its part. */
  readonly inPart: number;
}

/** A position moved into the text where it lies outside, and before a character that it would cut in two. */
export function caretIn({ document }: Pick<Snapshot, 'document'>, position: Position): Position {
  const { line, character } = clamp(document, position);
  const text = document.lines[line]?.text ?? '';
  return { line, character: isHigh(text, character - 1) && isLow(text, character) ? character - 1 : character };
}

const isHigh = (text: string, at: number): boolean => (text.charCodeAt(at) & 0xfc00) === 0xd800;
const isLow = (text: string, at: number): boolean => (text.charCodeAt(at) & 0xfc00) === 0xdc00;

/** The cursor at a position of the text. */
export function cursorAt(snapshot: Snapshot, position: Position): Cursor {
  const { line: at, character } = caretIn(snapshot, position);
  const line = snapshot.document.lines[at] as Line;
  const part = partAt(snapshot, at);
  const start = part === undefined ? 0 : (snapshot.recipe.partsAt[part.index] ?? 0);
  return { at, character, line, ...(part && { part }), inPart: at - start };
}

/** The part that holds a line of the document. */
export function partAt(snapshot: Snapshot, line: number): Part | undefined {
  const { partsAt, parts } = snapshot.recipe;
  let index = partsAt.length - 1;
  while (index >= 0 && (partsAt[index] ?? 0) > line) index--;
  const part = parts[index];
  return part !== undefined && line < (partsAt[index] ?? 0) + part.head.source.lines.length ? part : undefined;
}

/** The ingredient under the caret, of several on a line the one whose name or item it is; its place in the list of its part. */
export function ingredientAt({
  part,
  inPart,
  character,
  line: { text },
}: Cursor): { ingredient: Ingredient; index: number } | undefined {
  const here = (part?.head.ingredients ?? []).flatMap((ingredient, index) =>
    ingredient.line === inPart ? [{ ingredient, index }] : [],
  );
  if (here.length < 2) return here[0];
  const named = here.find(({ ingredient }) => namesOn(ingredient).some((name) => holds(name, character)));
  return named ?? here.findLast(({ ingredient: { node } }) => itemSpan(node, text).start <= character) ?? here[0];
}

/** Where an ingredient is named on its line: its own name first, then those of its alternatives. */
export const namesOn = ({ nameNode, others = [] }: Ingredient): readonly Span[] => [
  nameNode,
  ...others.map((other) => other.name),
];

/** All that a line says of one item; `text` is the line's. */
export function itemSpan(node: IngredientNode, text: string): Span {
  const { optional, taken, amount, beside = [], shareOf, name, bought, preparation, note, others = [] } = node;
  const sums = amount?.kind === 'measured' ? (amount.plus ?? []) : [];
  const spans = [optional, taken, amount, ...sums, ...beside, shareOf, name, bought, preparation, note, ...others];
  const known = spans.filter((s) => s !== undefined);
  // A bracket closes behind its words, once it is typed.
  const inBracket = (s: Span): boolean => s === note || beside.some((b) => b === s && b.sign === '(');
  const ends = known.map((s) => (inBracket(s) && text[s.end] === ')' ? s.end + 1 : s.end));
  return { start: Math.min(...known.map((s) => s.start)), end: Math.max(...ends) };
}

export const holds = (span: Span | undefined, character: number): span is Span =>
  span !== undefined && span.start <= character && character <= span.end;

export const placeOf = (line: number, span: Span): Place => ({ line, start: span.start, end: span.end });

/** Whether a line is where the size of the whole recipe is spoken of: the one that opens it, its yield, its pan. */
export function speaksOfSize({ outline, recipe }: Snapshot, line: number): boolean {
  return line === (outline.recipe?.at ?? 0) || line === recipe.yield?.at || line === recipe.pan?.at;
}

/** The line of the document on which a line of a part stands. */
export const lineOfPart = (snapshot: Snapshot, part: number, line: number): number =>
  (snapshot.recipe.partsAt[part] ?? 0) + line;

/** A place in a file by its path, or without one in the file at hand. */
export interface Located {
  readonly path?: string;
  readonly at: Place;
}

/** The position in the whole recipe; undefined for a line that is not in it, such as `from` or `drop`. */
export function toWhole(snapshot: Snapshot, { line, character }: Position): Position | undefined {
  const { written, whole } = snapshot;
  if (written === undefined || whole === snapshot) return undefined;
  const at = written.lines.findIndex(
    (w) => w.origin.kind === 'own' && w.origin.line === line && !isSpacer(w, snapshot.document),
  );
  if (at < 0) return undefined;
  const shift = shiftOf(written.lines[at]?.text ?? '', snapshot.document.lines[line]?.text ?? '');
  return { line: at, character: Math.max(0, character - shift) };
}

/** Where a place of the whole recipe is written: in the file itself or in a base. */
export function fromWhole(snapshot: Snapshot, place: Place): Located | undefined {
  const { written, whole } = snapshot;
  if (written === undefined || whole === snapshot) return { at: place };
  const line = written.lines[place.line];
  if (line === undefined) return undefined;
  const { origin, text } = line;
  const document = origin.kind === 'own' ? snapshot.document : snapshot.base(origin.path)?.document;
  const shift = shiftOf(text, document?.lines[origin.line]?.text ?? text);
  const at = { line: origin.line, start: place.start + shift, end: place.end + shift };
  return origin.kind === 'own' ? { at } : { path: origin.path, at };
}

/** Where a line of a recipe written out in full stands: on a line of the file itself, or of the base at `path`. */
export function lineFromWhole(
  { writtenFrom }: Snapshot,
  line: number,
): { readonly path?: string; readonly line: number } {
  const origin = writtenFrom?.lines[line]?.origin;
  if (origin === undefined) return { line };
  return origin.kind === 'own' ? { line: origin.line } : { path: origin.path, line: origin.line };
}

/** Where a line of a base written out stands. */
export function originOf(base: Snapshot, line: number): { readonly path: string; readonly line: number } {
  const at = lineFromWhole(base, line);
  return { path: at.path ?? base.uri, line: at.line };
}

/** `line 7`; of a line that a variant inherits, `line 7 of scones.quern`; `file` names the file itself too, where several are spoken of. */
export function sayLine(snapshot: Snapshot, line: number, file?: string): string {
  const at = lineFromWhole(snapshot, line);
  const of = at.path === undefined ? file : fileName(at.path);
  return `line ${at.line + 1}${of === undefined ? '' : ` of ${of}`}`;
}

/** The same of the lines of the recipe as a cook cooks it. */
export const sayLineIn =
  ({ whole }: Snapshot, file?: string): ((line: number) => string) =>
  (line) =>
    sayLine(whole, line, file);

/** Of a line of the recipe as a cook cooks it, the line of its own file; undefined where a base says it. */
export const ownLineIn =
  ({ whole }: Snapshot): ((line: number) => number | undefined) =>
  (line) => {
    const at = lineFromWhole(whole, line);
    return at.path === undefined ? at.line : undefined;
  };

/** The same, or the line of its own file that takes in what a base says. */
export const takenInAt = (snapshot: Snapshot): ((line: number) => number) => {
  const own = ownLineIn(snapshot);
  return (line) => {
    for (let at = line; at >= 0; at--) {
      const found = own(at);
      if (found !== undefined) return found;
    }
    return 0;
  };
};

/** The name of a file without its folders. */
export const fileName = (path: string): string =>
  path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
