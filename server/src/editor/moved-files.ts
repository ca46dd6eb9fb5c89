/**
 * Knows which lines that name files must be written anew when those are moved: those of the files that move, and those of their users.
 * Refuses to touch a line that still leads where it led.
 */
import { replaceSpan, type TextEdit } from '../edits/text-edit.ts';
import type { Folders } from '../workspace/folders.ts';
import { liesIn } from '../workspace/folders.ts';
import type { FileEdits } from './kitchen.ts';

export interface Move {
  /** Paths of a file, or of a folder with all that lies in it. */
  readonly from: string;
  readonly to: string;
}

/** Edits by the path the files have now, to be made before they move. */
export function mendLinks(moves: readonly Move[], index: Folders): FileEdits {
  const moved = (path: string): string => {
    const move = moves.find(({ from }) => liesIn(path, from));
    return move === undefined ? path : slashed(move.to) + slashed(path).slice(slashed(move.from).length);
  };
  const edits = new Map<string, TextEdit[]>();
  for (const entry of index.entries()) {
    const here = moved(entry.path);
    for (const link of [...entry.links, ...entry.pictures]) {
      const there = moved(link.path);
      if (here === entry.path && there === link.path) continue;
      const text = relativeTo(here, there);
      if (text === link.written || text === relativeTo(entry.path, link.path)) continue;
      edits.set(entry.path, [...(edits.get(entry.path) ?? []), replaceSpan(link.at, link.span, text)]);
    }
  }
  return edits;
}

const slashed = (path: string): string => path.replaceAll('\\', '/').replace(/\/+$/, '');

/** A file's name as written in another: `../pastry/base.quern`. */
export function relativeTo(from: string, to: string): string {
  const here = slashed(from).split('/').slice(0, -1);
  const there = slashed(to).split('/');
  let same = 0;
  while (same < here.length && same < there.length - 1 && here[same] === there[same]) same++;
  return [...here.slice(same).map(() => '..'), ...there.slice(same)].join('/');
}
