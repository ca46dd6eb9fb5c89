/**
 * Knows how a file that builds on others is written out in full: a text of its own, each line with where it comes from.
 * Refuses to judge it: the text is worked out like any other, and what is found in it is placed back by `variant.ts`.
 */
import type { House } from '../checks/house.ts';
import type { Document } from '../notation/document.ts';
import type { Outline } from '../notation/outline.ts';
import type { Line } from '../notation/tree.ts';
import { titleOf } from '../recipe/names/title.ts';
import { place, withPartFrom } from './inherit/lay-over.ts';
import { load } from './inherit/load-base.ts';
import { changeHead } from './inherit/swap-and-drop.ts';
import { type Loads, say, type Writing } from './inherit/writing.ts';
import type { Bases } from './ports.ts';
import {
  type Block,
  type Blocks,
  fieldName,
  ingredientName,
  namesIt,
  spaced,
  statementOf,
  type WrittenLine,
  type WrittenOut,
  withKind,
} from './written.ts';

/** The file written out; undefined when it builds on no other. */
export function writeOut(
  path: string,
  document: Document,
  of: Outline,
  house: House,
  bases: Bases,
  above: readonly string[] = [],
  loads: Loads = { count: 0, done: new Map() },
): WrittenOut | undefined {
  const from = of.head.find(({ line }) => line.statement.kind === 'from');
  const parts = of.parts.some(({ source }) => fileOf(source.lines[0]) !== undefined);
  if (from === undefined && !parts) return undefined;
  const open = [...above, path];
  return writtenOut({
    path,
    document,
    of,
    house,
    bases,
    above: open,
    below: (other, text, outlined) => writeOut(other, text, outlined, house, bases, open, loads),
    loads,
    broken: [],
    dropped: [],
    files: new Set(),
  });
}

function writtenOut(work: Writing): WrittenOut {
  const base = baseOfHead(work);
  const own = work.of.parts.map(({ at, source }): Block => {
    const header = source.lines[0]?.statement;
    const lines = source.lines.map(
      (line, i): WrittenLine => ({ text: line.text, origin: { kind: 'own', line: at + i } }),
    );
    const block = { name: header?.kind === 'part' ? (titleOf(header).name?.text ?? '') : '', lines };
    return withPartFrom(work, block);
  });
  const changed = changeHead(work, base.blocks);
  const blocks = place(work, changed, own);
  sayStillNamed(work, blocks);
  const trials = work.of.trials.map((block) =>
    block.lines.map((line, i): WrittenLine => ({ text: line.text, origin: { kind: 'own', line: block.at + i } })),
  );
  const lines = [...headOf(work, base), ...blocks.flatMap((b) => spaced(b.lines)), ...trials.flatMap(spaced)];
  return { lines, broken: work.broken, files: [...work.files] };
}

/** The base of the whole recipe, written out itself. */
function baseOfHead(work: Writing): Blocks {
  const from = work.of.head.find(({ line }) => line.statement.kind === 'from');
  const { statement } = from?.line ?? {};
  if (from === undefined || statement?.kind !== 'from' || statement.file === undefined) return { head: [], blocks: [] };
  return load(work, statement.file.text, from.at, statement.file) ?? { head: [], blocks: [] };
}

/** The recipe's line and fields: the file's own, then what only the base says. */
function headOf(work: Writing, base: Blocks): WrittenLine[] {
  const own: WrittenLine[] = [];
  const end = work.of.parts[0]?.at ?? work.of.trials[0]?.at ?? work.of.foods[0]?.at ?? work.document.lines.length;
  const kind = base.head.map(({ text }) => statementOf(text)).find((s) => s.kind === 'recipe');
  const said = new Set<string>();
  for (let at = 0; at < end; at++) {
    const line = work.document.lines[at];
    if (line === undefined) continue;
    const { statement } = line;
    if (statement.kind === 'from' || statement.kind === 'swap' || statement.kind === 'drop' || statement.kind === 'add')
      continue;
    said.add(fieldName(statement));
    const as = statement.kind === 'recipe' && titleOf(statement).as === undefined ? titleOf(kind).as : undefined;
    own.push({ text: as === undefined ? line.text : withKind(line, as.text), origin: { kind: 'own', line: at } });
  }
  const theirs = base.head.filter(({ text }) => {
    const statement = statementOf(text);
    const name = fieldName(statement);
    return name !== '' && name !== 'recipe' && name !== 'by' && (name === 'note' || !said.has(name));
  });
  const trimmedOwn = own.toReversed();
  while (trimmedOwn[0] !== undefined && trimmedOwn[0].text.trim() === '') trimmedOwn.shift();
  return [...trimmedOwn.toReversed(), ...theirs];
}

/** Steps that stay, of those that name what was dropped, where nothing else in their part is called so. */
function sayStillNamed(work: Writing, blocks: readonly Block[]): void {
  for (const { at, name, step, words } of work.dropped) {
    const block = blocks.find((b) => b.lines.some((l) => l.origin === step.origin && l.text.includes(words)));
    const other = block?.lines.some((l) => namesIt(ingredientName(l.text), words)) ?? true;
    const said = work.broken.some((b) => b.kind === 'still-named' && b.line === at);
    if (!other && !said) say(work, 'still-named', at, name, words, []);
  }
}

function fileOf(line: Line | undefined): string | undefined {
  return line?.statement.kind === 'part' ? line.statement.file?.text : undefined;
}
