/**
 * Knows how a file's own parts are laid over those of its base: a line of the same name, all steps, new parts where the file puts them.
 * Refuses to read other files but for a part that is taken from one.
 */
import { titleOf } from '../../recipe/names/title.ts';
import { sameName } from '../../recipe/words.ts';
import { withOven } from '../taken-oven.ts';
import {
  afterList,
  type Block,
  ingredientName,
  ingredientText,
  kindOf,
  statementOf,
  type WrittenLine,
} from '../written.ts';
import { load } from './load-base.ts';
import { namedElsewhere, renamed } from './renamed.ts';
import { change, nothingToChange, sayNothing } from './swap-and-drop.ts';
import { say, type Writing } from './writing.ts';

/** A part that comes from another file, with the file's own lines laid over it. */
export function withPartFrom(work: Writing, block: Block): Block {
  const [header] = block.lines;
  const statement = header === undefined ? undefined : statementOf(header.text);
  if (
    header === undefined ||
    statement?.kind !== 'part' ||
    statement.file === undefined ||
    header.origin.kind !== 'own'
  )
    return block;
  const loaded = load(work, statement.file.text, header.origin.line, statement.file);
  if (loaded === undefined) return block;
  const wanted = statement.filePart?.text ?? block.name;
  const found =
    loaded.blocks.find((b) => sameName(b.name, wanted)) ??
    (statement.filePart === undefined && loaded.blocks.length === 1 ? loaded.blocks[0] : undefined);
  if (found === undefined) {
    // What is not whole may have the part once it is mended.
    if (work.broken.some(({ line }) => line === header.origin.line)) return block;
    const span = statement.filePart ?? statement.file;
    say(
      work,
      'unknown-part',
      header.origin.line,
      span,
      wanted,
      loaded.blocks.map((b) => b.name).filter((n) => n !== ''),
    );
    return block;
  }
  const own = titleOf(statement);
  const title = header.text.slice(0, (own.as?.end ?? own.name?.end) || undefined);
  const kinds = [...found.lines.slice(0, 1), ...(found.name === '' ? loaded.head : [])].map(kindOf);
  const inherited = kinds.find((kind) => kind !== undefined);
  const as = own.as === undefined && inherited !== undefined ? ` as ${inherited}` : '';
  const lines = withOven(found, loaded, work.house.world);
  return merge(
    work,
    { name: block.name, lines },
    { ...block, lines: [{ ...header, text: title + as }, ...block.lines.slice(1)] },
  );
}

/** The base's parts with the file's own of the same name laid over them, and its new ones where it puts them. */
export function place(work: Writing, base: readonly Block[], own: readonly Block[]): readonly Block[] {
  const overs = base.map((b) => own.find((o) => sameName(o.name, b.name)));
  const merged = base.map((b, i) => (overs[i] === undefined ? b : merge(work, b, overs[i])));
  const blocks = [...renamedElsewhere(work, base, overs, merged)];
  own.forEach((o, i) => {
    if (base.some((b) => sameName(b.name, o.name))) return;
    sayNothingToChange(work, o, base);
    const next = own.slice(i + 1).find((n) => base.some((b) => sameName(b.name, n.name)));
    const before = next === undefined ? -1 : blocks.findIndex((b) => sameName(b.name, next.name));
    blocks.splice(before < 0 ? blocks.length : before, 0, o);
  });
  return blocks;
}

/** The parts laid over, each with what the others swapped in its new name. */
function renamedElsewhere(
  work: Writing,
  base: readonly Block[],
  overs: readonly (Block | undefined)[],
  merged: readonly Block[],
): readonly Block[] {
  let before = base;
  let blocks = merged;
  overs.forEach((over, i) => {
    for (const { text } of over?.lines ?? []) {
      const statement = statementOf(text);
      const from = before[i];
      if (statement.kind !== 'swap' || from === undefined) continue;
      const lines = namedElsewhere(before, [from], statement, work.house.world);
      before = renamed(before, lines);
      blocks = renamed(blocks, lines);
    }
  });
  return blocks;
}

/** A part that is the file's own alone has nothing for a swap or a drop to change. */
function sayNothingToChange(work: Writing, { lines }: Block, base: readonly Block[]): void {
  const statement = statementOf(lines[0]?.text ?? '');
  const taken = statement.kind === 'part' && statement.file !== undefined;
  // Of a base that is missing, that is said already.
  if (taken || (base.length === 0 && work.of.head.some(({ line }) => line.statement.kind === 'from'))) return;
  for (const { text, origin } of lines) {
    const statement = statementOf(text);
    if (origin.kind === 'own' && (statement.kind === 'swap' || statement.kind === 'drop'))
      sayNothing(work, statement, origin.line, []);
  }
}

/** Wherever it stands, it is said of its whole recipe. */
function isNote({ text }: WrittenLine): boolean {
  const statement = statementOf(text);
  return statement.kind === 'text' && statement.field === 'note';
}

/** A step, or a picture of one. */
function isOfSteps({ text }: WrittenLine): boolean {
  const { kind } = statementOf(text);
  return kind === 'step' || kind === 'picture';
}

/** Own lines over a base's part: a line of the same name instead of it, steps instead of all its steps, the rest beside. */
function merge(work: Writing, base: Block, own: Block): Block {
  let block = base;
  const [header] = own.lines;
  const named = header !== undefined && statementOf(header.text).kind === 'part';
  const lines = named ? own.lines.slice(1) : own.lines;
  const extra: WrittenLine[] = [];
  const steps: WrittenLine[] = [];
  const notes: WrittenLine[] = [];
  // What is accepted at the head is so for the part; below it, for the next line, wherever that comes to stand.
  const said = lines.filter((l) => statementOf(l.text).kind !== 'blank');
  const below = said.findIndex((l) => statementOf(l.text).kind !== 'allow');
  const atHead = said.slice(0, below < 0 ? said.length : below);
  let allows: WrittenLine[] = [];
  for (const line of said.slice(atHead.length)) {
    const statement = statementOf(line.text);
    const at = line.origin.kind === 'own' ? line.origin.line : 0;
    if (statement.kind === 'allow') {
      allows.push(line);
      continue;
    }
    if (statement.kind === 'swap' || statement.kind === 'drop') {
      const changed = change(work, block, statement, at);
      if (changed === block && line.origin.kind === 'own') nothingToChange(work, statement, at, [block]);
      const index = changed.lines.findIndex(({ origin }) => origin.kind === 'own' && origin.line === at);
      block = index < 0 ? changed : { ...changed, lines: changed.lines.toSpliced(index, 0, ...allows) };
    } else if (statement.kind === 'add')
      extra.push(...allows, { ...line, text: `  ${ingredientText(line.text, statement.ingredient)}` });
    else if (statement.kind === 'ingredient') {
      const index = block.lines.findIndex((l) =>
        sameName(ingredientName(l.text) ?? '', ingredientName(line.text) ?? '?'),
      );
      if (index < 0) extra.push(...allows, line);
      else block = { ...block, lines: block.lines.toSpliced(index, 1, ...allows, line) };
    } else if (statement.kind === 'step' || statement.kind === 'picture') steps.push(...allows, line);
    else if (isNote(line)) notes.push(...allows, line);
    allows = [];
  }
  const kept = steps.length === 0 ? block.lines : [...block.lines.filter((l) => !isOfSteps(l)), ...steps];
  const merged = [...afterList(kept, [...extra, ...allows]), ...notes];
  if (!named || header === undefined) return { ...block, lines: [...atHead, ...merged] };
  const inherited = kindOf(header) === undefined ? kindOf(merged[0]) : undefined;
  const as = inherited === undefined ? '' : ` as ${inherited}`;
  // The nameless part of a recipe without parts has no header to give up.
  const rest = statementOf(merged[0]?.text ?? '').kind === 'part' ? merged.slice(1) : merged;
  return { ...block, lines: [{ ...header, text: header.text.trimEnd() + as }, ...atHead, ...rest] };
}
