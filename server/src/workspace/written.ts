/**
 * Knows a recipe written out in full as lines that remember where they come from, cut in blocks.
 * Refuses to lay one over another.
 */
import type { BrokenLink } from '../checks/check.ts';
import { type Document, parseTogether } from '../notation/document.ts';
import { outline } from '../notation/outline.ts';
import type { IngredientNode, Line, Statement } from '../notation/tree.ts';
import { titleOf } from '../recipe/names/title.ts';
import { wordsOf } from '../recipe/words.ts';

/** Where a line written out comes from: a line of the file itself, or of another. */
export type Origin =
  | { readonly kind: 'own'; readonly line: number }
  | { readonly kind: 'base'; readonly path: string; readonly line: number };

export interface WrittenLine {
  readonly text: string;
  readonly origin: Origin;
}

export interface WrittenOut {
  readonly lines: readonly WrittenLine[];
  readonly broken: readonly BrokenLink[];
  /** The files it was put together from, by path. */
  readonly files: readonly string[];
}

/** A file as its head and its parts. */
export interface Blocks {
  readonly head: readonly WrittenLine[];
  readonly blocks: readonly Block[];
}

/** A block of lines: a part, or the nameless one. */
export interface Block {
  readonly name: string;
  readonly lines: readonly WrittenLine[];
}

/** The text of a file written out, for working it out and for writing it to disk. */
export const textOf = (written: WrittenOut): string => `${written.lines.map((l) => l.text).join('\n')}\n`;

/** A blank line that stands before a block written out, and for no line of the file. */
export function isSpacer({ text, origin }: WrittenLine, document: Document): boolean {
  return text.trim() === '' && origin.kind === 'own' && (document.lines[origin.line]?.text ?? '').trim() !== '';
}

/** How much further right the words of a line written out stand in the line they come from. */
export function shiftOf(written: string, original: string): number {
  if (written === original) return 0;
  const words = written.trim();
  const found = words === '' ? -1 : original.indexOf(words);
  if (found >= 0) return found - written.indexOf(words);
  // A share of what a swap says: its name is the same, and its numbers are others.
  const [name] = /(?<= )\p{L}.*$/u.exec(words) ?? [''];
  return name !== '' && original.trimEnd().endsWith(name) ? original.trimEnd().length - written.trimEnd().length : 0;
}

export const statementOf = (text: string): Statement => parseTogether(text).lines[0]?.statement ?? { kind: 'blank' };

/** Whether words name an ingredient: in full, or by its last words. */
export function namesIt(name: string | undefined, words: string): boolean {
  if (name === undefined) return false;
  const [full, end] = [wordsOf(name), wordsOf(words)];
  return end.length > 0 && full.slice(-end.length).join(' ') === end.join(' ');
}

export function ingredientName(text: string): string | undefined {
  const statement = statementOf(text);
  return statement.kind === 'ingredient' ? statement.name?.text : undefined;
}

/** What a `part` or `recipe` line says is made. */
export function kindOf(line: WrittenLine | undefined): string | undefined {
  return titleOf(statementOf(line?.text ?? '')).as?.text;
}

export function ingredientText(line: string, node: IngredientNode): string {
  // The amount may stand behind the name, and what is taken before it.
  const said = [node.takes?.[0], node.amount, node.name].flatMap((n) => (n === undefined ? [] : [n.start]));
  const start = said.length === 0 ? 0 : Math.min(...said);
  const comment = parseTogether(line).lines[0]?.comment;
  return line.slice(start, comment?.start).trimEnd();
}

export function withKind(line: Line, kind: string): string {
  const code = line.comment === undefined ? line.text : line.text.slice(0, line.comment.start);
  return `${code.trimEnd()} as ${kind}${line.comment === undefined ? '' : `  ${line.comment.text}`}`;
}

export function fieldName(statement: Statement): string {
  if (statement.kind === 'text') return statement.field;
  return ['recipe', 'yield', 'pan', 'oven', 'time', 'tags'].includes(statement.kind) ? statement.kind : '';
}

/** New lines after the last ingredient of a part. */
export function afterList(lines: readonly WrittenLine[], extra: readonly WrittenLine[]): readonly WrittenLine[] {
  if (extra.length === 0) return lines;
  const last = lines.findLastIndex((l) => statementOf(l.text).kind === 'ingredient');
  return lines.toSpliced(Math.max(last + 1, 1), 0, ...extra);
}

/** A blank line before each block but where one stands. */
export function spaced(lines: readonly WrittenLine[]): readonly WrittenLine[] {
  const [first] = lines;
  if (first === undefined) return lines;
  let end = lines.length;
  while (end > 0 && lines[end - 1]?.text.trim() === '') end--;
  return [{ text: '', origin: first.origin }, ...lines.slice(0, end)];
}

/** A written-out text as its head and its parts; trials and foods stay behind. */
export function blocksOf(lines: readonly WrittenLine[]): Blocks {
  const of = outline(parseTogether(lines.map((l) => l.text).join('\n')));
  const heads = [...(of.recipe === undefined ? [] : [of.recipe]), ...of.head].sort((a, b) => a.at - b.at);
  // A note below a part is said of the recipe.
  const inHead = new Set(heads.map(({ at }) => at));
  const blocks = of.parts.map(({ at, source }): Block => {
    const header = source.lines[0]?.statement;
    return {
      name: header?.kind === 'part' ? (titleOf(header).name?.text ?? '') : '',
      lines: lines.slice(at, at + source.lines.length).filter((_, i) => !inHead.has(at + i)),
    };
  });
  return { head: heads.map(({ at }) => lines[at]).filter((l): l is WrittenLine => l !== undefined), blocks };
}
