/**
 * Knows how the files that a recipe builds on are found beside it.
 */
import { distance } from 'fastest-levenshtein';
import type { Bases, Files } from './ports.ts';

/** Names that near are offered for one that is not there. */
const MOST_NEAR = 3;

export function basesOver(files: Files): Bases {
  return {
    load: (from, name) => {
      const path = files.beside(from, name);
      const text = path.endsWith('.quern') ? files.read(path) : undefined;
      return text === undefined ? undefined : { path, text };
    },
    near: (from, name) => {
      const folder = files.beside(from, '.');
      const names = files.recipesBelow(folder).map((path) =>
        path
          .slice(folder.length)
          .replace(/^[\\/]/, '')
          .replaceAll('\\', '/'),
      );
      const end = (path: string) => path.slice(path.lastIndexOf('/') + 1);
      return names
        .filter((n) => files.beside(from, n) !== from)
        .map((n) => ({ n, far: distance(end(n), end(name)) }))
        .filter(({ far }) => far <= 3)
        .sort((a, b) => a.far - b.far)
        .slice(0, MOST_NEAR)
        .map(({ n }) => n);
    },
  };
}
