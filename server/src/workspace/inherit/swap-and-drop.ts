/**
 * Knows how swaps, drops and additions change the parts of a base, and what is said of one that reaches several parts, or none.
 * Refuses to know where they are written: in the head, or in a part.
 */
import { scaleAmount } from '../../edits/amount-text.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { parseTogether } from '../../notation/document.ts';
import { measuresOf } from '../../notation/item-amounts.ts';
import type { IngredientNode, Line, Statement } from '../../notation/tree.ts';
import { afterList, type Block, ingredientName, ingredientText } from '../written.ts';
import { gramsIn, lineOf, mentionsOf } from './bound-block.ts';
import { namedElsewhere, renamed, renameMentions } from './renamed.ts';
import { say, type Writing } from './writing.ts';

/** Swaps, drops and adds of the recipe's head, made to the base's parts. */
export function changeHead(work: Writing, blocks: readonly Block[]): readonly Block[] {
  let changed = blocks;
  for (const { at, line } of work.of.head) {
    const { statement } = line;
    if (statement.kind !== 'swap' && statement.kind !== 'drop' && statement.kind !== 'add') continue;
    const before = changed;
    const reached = reachOf(work, before, statement, at);
    changed = changed.map((b) => change(work, b, statement, at, reached.get(b)));
    if (statement.kind === 'swap') {
      const holding = before.filter((b, i) => b !== changed[i]);
      changed = renamed(changed, namedElsewhere(before, holding, statement, work.house.world));
    }
    if (statement.kind === 'add') changed = added(before, statement.ingredient, at, line);
    else if (changed.every((b, i) => b === before[i])) nothingToChange(work, statement, at, before);
  }
  return changed;
}

/** What each part gets of a swap that reaches several: its share of the new amount by what it had of the old, where both are known. */
function reachOf(
  work: Writing,
  blocks: readonly Block[],
  statement: Statement,
  at: number,
): ReadonlyMap<Block, string> {
  const old = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
  const holding = old === undefined ? [] : blocks.filter((b) => lineOf(b, old.text) >= 0);
  const gets = new Map<Block, string>();
  if (old === undefined || holding.length < 2) return gets;
  if (statement.kind === 'swap') {
    const text = ingredientText(work.document.lines[at]?.text ?? '', statement.ingredient);
    const grams = holding.map((b) => gramsIn(b, lineOf(b, old.text), work.house.world));
    const whole = grams.reduce<number>((sum, g) => sum + (g ?? Number.NaN), 0);
    holding.forEach((b, i) => {
      gets.set(b, whole > 0 ? sharedText(text, (grams[i] ?? 0) / whole) : text);
    });
  }
  const reaches = holding.map((b) => {
    const get = gets.get(b);
    return { part: b.name, ...(get !== undefined && { gets: get }) };
  });
  const { start, end } = old;
  work.broken.push({ kind: 'in-several-parts', line: at, span: { start, end }, name: old.text, near: [], reaches });
  return gets;
}

export function nothingToChange(
  work: Writing,
  statement: Extract<Statement, { kind: 'swap' | 'drop' }>,
  at: number,
  blocks: readonly Block[],
): void {
  const names = blocks.flatMap((b) => b.lines.map((l) => ingredientName(l.text)).filter((n) => n !== undefined));
  if (blocks.length > 0) sayNothing(work, statement, at, names);
}

export function sayNothing(
  work: Writing,
  statement: Extract<Statement, { kind: 'swap' | 'drop' }>,
  at: number,
  names: readonly string[],
): void {
  // What cannot be read is said to be, and that is enough.
  if (statement.kind === 'swap' && statement.ingredient.name === undefined) return;
  const name = statement.kind === 'swap' ? statement.old : statement.name;
  if (name !== undefined) say(work, 'nothing-to-change', at, name, name.text, names);
}

/** The ingredient after the list of the last part that has one. */
function added(blocks: readonly Block[], node: IngredientNode, at: number, line: Line): readonly Block[] {
  const text = `  ${ingredientText(line.text, node)}`;
  const last = blocks.findLastIndex((b) => b.lines.some((l) => ingredientName(l.text) !== undefined));
  return blocks.map((b, i) =>
    i === last ? { ...b, lines: afterList(b.lines, [{ text, origin: { kind: 'own', line: at } }]) } : b,
  );
}

/** One swap or drop in one part, which gets so much of a swap that is shared; the same block when it does not have the ingredient. */
export function change(work: Writing, block: Block, statement: Statement, at: number, gets?: string): Block {
  const old = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
  if (old === undefined) return block;
  const index = lineOf(block, old.text);
  if (index < 0) return block;
  if (statement.kind === 'drop') {
    for (const { line, mention, words } of mentionsOf(block, index, work.house.world).mentions) {
      const step = block.lines[line - 1];
      if (step !== undefined && mention.ingredients.length === 1) work.dropped.push({ at, name: old, step, words });
    }
    return { ...block, lines: block.lines.toSpliced(index, 1) };
  }
  if (statement.kind !== 'swap') return block;
  const own = work.document.lines[at]?.text ?? '';
  const renamed = renameMentions(block, index, statement.ingredient.name?.text ?? old.text, work.house.world);
  const text = `  ${gets ?? ingredientText(own, statement.ingredient)}`;
  return { ...block, lines: renamed.with(index, { text, origin: { kind: 'own', line: at } }) };
}

/** An ingredient line with so much of its amounts. */
function sharedText(text: string, share: number): string {
  const document = parseTogether(text);
  const statement = document.lines[0]?.statement;
  if (statement?.kind !== 'ingredient') return text;
  const edits = measuresOf(statement).flatMap((amount) => scaleAmount(0, amount, share));
  return applyEdits(document, edits).lines[0]?.text ?? text;
}
