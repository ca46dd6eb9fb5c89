/**
 * Knows how the files that a recipe builds on are found beside it.
 */
import { distance } from 'fastest-levenshtein';
import type { Bases, Files, Loaded } from './ports.ts';

/** Names that near are offered for one that is not there. */
const MOST_NEAR = 3;

/** More bases than a kitchen has. */
const MOST_KEPT = 1000;

export function basesOver(files: Files): Bases {
  const last = new Map<string, Loaded>();
  return {
    load: (from, name) => {
      const path = files.beside(from, name);
      const text = path.endsWith('.quern') ? files.read(path) : undefined;
      if (text === undefined) return undefined;
      const kept = last.get(path);
      if (kept?.text === text) return kept;
      const loaded = { path, text };
      if (last.size >= MOST_KEPT) last.clear();
      last.set(path, loaded);
      return loaded;
    },
    near: (from, name) => {
      // Below the recipe's own folder, and below the one that the name points to.
      const named = name.slice(0, name.lastIndexOf('/') + 1);
      const below = (start: string) => {
        const folder = files.beside(from, start === '' ? '.' : start);
        return files.recipesBelow(folder).map((path) => {
          const inside = path.slice(folder.length).replaceAll('\\', '/');
          return `${start}${inside.replace(/^\//, '')}`;
        });
      };
      const names = [...new Set([...below(''), ...(named === '' ? [] : below(named))])];
      const end = (path: string) => path.slice(path.lastIndexOf('/') + 1);
      return names
        .filter((n) => files.beside(from, n) !== from)
        .map((n) => ({ n, far: Math.min(distance(end(n), end(name)), distance(end(n), `${end(name)}.quern`)) }))
        .filter(({ far }) => far <= 3)
        .sort((a, b) => a.far - b.far)
        .slice(0, MOST_NEAR)
        .map(({ n }) => n);
    },
  };
}
