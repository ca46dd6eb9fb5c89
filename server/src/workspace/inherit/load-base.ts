/**
 * Knows how another file is read as blocks, written out itself where it builds on others, and what is said where it is not there or comes round.
 * Refuses to know what is taken of it.
 */
import type { BrokenLink } from '../../checks/check.ts';
import { parseTogether } from '../../notation/document.ts';
import { keptOn } from '../../notation/kept.ts';
import { outline } from '../../notation/outline.ts';
import type { Span } from '../../notation/tree.ts';
import { DEEPEST, MOST_LOADS } from '../limits.ts';
import type { Loaded } from '../ports.ts';
import { type Blocks, blocksOf, statementOf, type WrittenLine } from '../written.ts';
import { say, type Writing } from './writing.ts';

/** Without what is missing, nothing that builds on it is whole. */
export const MISSING: ReadonlySet<BrokenLink['kind']> = new Set<BrokenLink['kind']>([
  'missing-file',
  'missing-below',
  'outside',
  'unreadable',
  'too-many',
]);

const CIRCLES: ReadonlySet<BrokenLink['kind']> = new Set<BrokenLink['kind']>(['itself', 'circle', 'circle-below']);

/** Of a file that builds on no other. */
const ALONE = keptOn<Loaded, Blocks>();

/** Another file as blocks; undefined, and said, when it is not there or comes round in a circle. */
export function load(work: Writing, file: string, at: number, span: Span): Blocks | undefined {
  const { loads } = work;
  if (loads.count >= MOST_LOADS) {
    say(work, 'too-many', at, span, file, []);
    return undefined;
  }
  loads.count++;
  const loaded = work.bases.load(work.path, file);
  if (loaded === undefined) {
    sayMissing(work, file, at, span);
    return undefined;
  }
  if (work.above.includes(loaded.path) || work.above.length > DEEPEST) {
    say(work, loaded.path === work.path ? 'itself' : 'circle', at, span, file, [], loaded.path);
    return undefined;
  }
  work.files.add(loaded.path);
  const alone = ALONE.get(loaded);
  if (alone !== undefined) return seenFrom(file, saidEmpty(work, alone, at, span, file));
  const known = loads.done.get(loaded.path);
  if (known !== undefined) {
    loads.count--;
    for (const path of known.files) work.files.add(path);
    sayOfBelow(work, known.broken, at, span, file);
    return seenFrom(file, saidEmpty(work, known.blocks, at, span, file));
  }
  const document = parseTogether(loaded.text);
  const of = outline(document);
  const inner = work.below(loaded.path, document, of);
  for (const path of inner?.files ?? []) work.files.add(path);
  if (inner !== undefined) sayOfBelow(work, inner.broken, at, span, file);
  const lines =
    inner === undefined
      ? document.lines.map(
          (line, i): WrittenLine => ({ text: line.text, origin: { kind: 'base', path: loaded.path, line: i } }),
        )
      : inner.lines.map(
          ({ text, origin }): WrittenLine => ({
            text,
            origin: origin.kind === 'own' ? { kind: 'base', path: loaded.path, line: origin.line } : origin,
          }),
        );
  const blocks = blocksOf(lines);
  if (inner === undefined) ALONE.set(loaded, blocks);
  // In a circle, what is found hangs on where it was entered.
  else if (!inner.broken.some(({ kind }) => CIRCLES.has(kind)))
    loads.done.set(loaded.path, { blocks, files: inner.files, broken: inner.broken });
  return seenFrom(file, saidEmpty(work, blocks, at, span, file));
}

/** The pictures of another folder by their names from the file's own on, so that a recipe written out shows them where it lies. */
function seenFrom(file: string, blocks: Blocks): Blocks {
  const folder = file.slice(0, Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
  if (folder === '') return blocks;
  const named = (line: WrittenLine): WrittenLine => {
    if (!/^\s*picture\s/.test(line.text)) return line;
    const statement = statementOf(line.text);
    if (statement.kind !== 'picture' || statement.file === undefined) return line;
    const { start } = statement.file;
    return { ...line, text: line.text.slice(0, start) + folder + line.text.slice(start) };
  };
  return {
    head: blocks.head.map(named),
    blocks: blocks.blocks.map((block) => ({ ...block, lines: block.lines.map(named) })),
  };
}

function sayMissing(work: Writing, file: string, at: number, span: Span): void {
  const why = work.bases.why?.(work.path, file);
  if (why === undefined) say(work, 'missing-file', at, span, file, work.bases.near?.(work.path, file) ?? []);
  else
    work.broken.push({
      kind: why.kind,
      line: at,
      span: { start: span.start, end: span.end },
      name: file,
      near: [],
      ...(why.kind === 'unreadable' && { why: why.why }),
    });
}

/** A file of foods, or one that is begun, brings nothing; of what is broken below, that is said. */
function saidEmpty(work: Writing, blocks: Blocks, at: number, span: Span, file: string): Blocks {
  if (blocks.blocks.length === 0 && !work.broken.some(({ line }) => line === at))
    say(work, 'nothing-in-it', at, span, file, []);
  return blocks;
}

/** What a base itself builds on in vain. */
function sayOfBelow(work: Writing, broken: readonly BrokenLink[], at: number, span: Span, file: string): void {
  const circle = broken.find(({ kind }) => CIRCLES.has(kind));
  // This file is in the circle too where that closes here or above.
  const through = broken.find(({ kind, round }) => kind === 'circle' && work.above.includes(round ?? ''));
  if (through !== undefined) say(work, 'circle', at, span, file, [], through.round);
  else if (circle !== undefined) say(work, 'circle-below', at, span, file, []);
  else if (broken.some(({ kind }) => MISSING.has(kind))) say(work, 'missing-below', at, span, file, []);
}
