/**
 * Knows how another file is read as blocks, written out itself where it builds on others, and what is said where it is not there or comes round.
 * Refuses to know what is taken of it.
 */
import type { BrokenLink } from '../../checks/check.ts';
import { parseTogether } from '../../notation/document.ts';
import { keptOn } from '../../notation/kept.ts';
import { outline } from '../../notation/outline.ts';
import type { Span } from '../../notation/tree.ts';
import type { Loaded } from '../ports.ts';
import { type Blocks, blocksOf, type WrittenLine } from '../written.ts';
import { say, type Writing } from './writing.ts';

/** Without what is missing, nothing that builds on it is whole. */
export const MISSING: ReadonlySet<BrokenLink['kind']> = new Set<BrokenLink['kind']>(['missing-file', 'missing-below']);

const CIRCLES: ReadonlySet<BrokenLink['kind']> = new Set<BrokenLink['kind']>(['itself', 'circle', 'circle-below']);

/** More files than this one on another are a mistake. */
const DEEPEST = 20;

/** Of a file that builds on no other. */
const ALONE = keptOn<Loaded, Blocks>();

/** Another file as blocks; undefined, and said, when it is not there or comes round in a circle. */
export function load(work: Writing, file: string, at: number, span: Span): Blocks | undefined {
  const loaded = work.bases.load(work.path, file);
  if (loaded === undefined) {
    say(work, 'missing-file', at, span, file, work.bases.near?.(work.path, file) ?? []);
    return undefined;
  }
  if (work.above.includes(loaded.path) || work.above.length > DEEPEST) {
    say(work, loaded.path === work.path ? 'itself' : 'circle', at, span, file, [], loaded.path);
    return undefined;
  }
  work.files.add(loaded.path);
  const alone = ALONE.get(loaded);
  if (alone !== undefined) return saidEmpty(work, alone, at, span, file);
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
  return saidEmpty(work, blocks, at, span, file);
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
