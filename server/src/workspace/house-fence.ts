/**
 * Knows which files a recipe may build on: those of its house; where it lives in none, those of the open folders and its own.
 * Refuses to look at any other, even to see whether it is there.
 */
import { liesIn } from './folders.ts';
import type { Files } from './ports.ts';

/** Says whether a file may be built on from another; `roots` are the folders that somebody opened, or named. */
export function fenceOver(files: Files, roots: () => readonly string[]): (from: string, path: string) => boolean {
  const real = (path: string): string => files.real?.(path) ?? path;
  return (from, path) => {
    const walls = wallsAround(from, files, roots());
    if (!walls.some((wall) => liesIn(path, wall))) return false;
    const followed = real(path);
    return followed === path || walls.some((wall) => liesIn(followed, real(wall)));
  };
}

/** The outermost house: one within another is a part of it. */
function wallsAround(from: string, files: Files, roots: readonly string[]): readonly string[] {
  const declared = files.outermostHouse?.(from);
  if (declared !== undefined) return [declared];
  const house = files.houseAbove(from);
  const own = files.beside(from, '.');
  return [own, ...(house === undefined ? [] : [house]), ...roots.filter((root) => liesIn(own, root))];
}
