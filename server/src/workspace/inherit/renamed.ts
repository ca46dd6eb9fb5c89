/**
 * Knows how steps speak of what a swap puts in the place of something: in the part that lists it, and in parts that name it.
 * Refuses to change a list.
 */
import { applyEdits, replaceSpan, type TextEdit } from '../../edits/text-edit.ts';
import type { Statement } from '../../notation/tree.ts';
import type { World } from '../../recipe/model.ts';
import { wordsOf } from '../../recipe/words.ts';
import { type Block, namesIt, type Origin, type WrittenLine } from '../written.ts';
import { boundTogether, lineOf, mentionsOf } from './bound-block.ts';

/** The steps of a block with an ingredient's mentions in its new name, where the old words no longer fit it. */
export function renameMentions(
  block: Block,
  ingredientLine: number,
  name: string,
  world: World,
): readonly WrittenLine[] {
  const { document, mentions } = mentionsOf(block, ingredientLine, world);
  const edits: TextEdit[] = mentions
    .filter(({ words }) => !namesIt(name, words))
    .map(({ line, mention }) => replaceSpan(line, mention, name));
  const edited = applyEdits(document, edits);
  return block.lines.map((l, i) => ({ ...l, text: edited.lines[i + 1]?.text ?? l.text }));
}

/** The lines of parts that name what another part lists and a swap takes away, by where they come from, in the new name. */
export function namedElsewhere(
  blocks: readonly Block[],
  holding: readonly Block[],
  { old, ingredient }: Extract<Statement, { kind: 'swap' }>,
  world: World,
): Renamed {
  const texts = new Map<Origin, { readonly was: string; readonly text: string }>();
  const word = wordsOf(old?.text ?? '').at(-1);
  const name = ingredient.name?.text;
  const others = blocks.filter((b) => !holding.includes(b));
  if (old === undefined || name === undefined || word === undefined || holding.length === 0) return texts;
  if (!others.some((b) => b.lines.some(({ text }) => wordsOf(text).includes(word)))) return texts;
  const { lines, document, recipe } = boundTogether(blocks, world);
  const { parts, partsAt } = recipe;
  const gone = new Set(holding.map((b) => b.lines[lineOf(b, old.text)]));
  const elsewhere = new Set(others.flatMap((b) => b.lines));
  const edits = new Map<string, TextEdit>();
  const named = new Map<number, WrittenLine>();
  for (const { ingredient, uses } of parts.flatMap(({ ledger }) => ledger)) {
    const part = parts.find(({ head }) => head.ingredients.includes(ingredient));
    if (part === undefined || !gone.has(lines[(partsAt[part.index] ?? 0) + ingredient.line - 1])) continue;
    for (const use of uses) {
      const at = (partsAt[use.part] ?? 0) + use.line;
      const from = lines[at - 1];
      const { start, end } = use.mention;
      if (from === undefined || !elsewhere.has(from)) continue;
      if (namesIt(name, document.lines[at]?.text.slice(start, end) ?? '')) continue;
      edits.set(`${at}:${start}`, replaceSpan(at, use.mention, name));
      named.set(at, from);
    }
  }
  const edited = applyEdits(document, [...edits.values()]);
  for (const [at, { origin, text: was }] of named) texts.set(origin, { was, text: edited.lines[at]?.text ?? was });
  return texts;
}

/** Lines in a new name, by where they come from. */
type Renamed = ReadonlyMap<Origin, { readonly was: string; readonly text: string }>;

export function renamed(blocks: readonly Block[], lines: Renamed): readonly Block[] {
  if (lines.size === 0) return blocks;
  return blocks.map((block) => ({
    ...block,
    lines: block.lines.map((line) => {
      const now = lines.get(line.origin);
      return now?.was === line.text ? { ...line, text: now.text } : line;
    }),
  }));
}
