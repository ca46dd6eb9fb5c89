/**
 * Knows how the files that a recipe builds on are found beside it, within its house.
 */
import { distance } from 'fastest-levenshtein';
import { liesIn } from './folders.ts';
import { fenceOver } from './house-fence.ts';
import { picturesOver } from './picture-files.ts';
import type { Bases, Files, Loaded } from './ports.ts';
import { faultWords } from './read-fault.ts';

/** Names that near are offered for one that is not there. */
const MOST_NEAR = 3;
const MOST_APART = 3;

/** More bases than a kitchen has. */
const MOST_KEPT = 1000;

/** What is open around the files. */
export interface Around {
  /** The folders that somebody opened, or named. */
  readonly roots: () => readonly string[];
  /** The recipes at hand for a file, by path: no folder is walked for them that was not walked before. */
  readonly atHand: (from: string) => readonly string[];
}

export function basesOver(files: Files, { roots, atHand }: Around): Bases {
  const last = new Map<string, Loaded>();
  const mayTake = fenceOver(files, roots);
  return {
    ...picturesOver(files, mayTake),
    load: (from, name) => {
      const path = files.beside(from, name);
      const text = path.endsWith('.quern') && mayTake(from, path) ? files.read(path) : undefined;
      if (text === undefined) return undefined;
      const kept = last.get(path);
      if (kept?.text === text) return kept;
      const loaded = { path, text };
      if (last.size >= MOST_KEPT) last.clear();
      last.set(path, loaded);
      return loaded;
    },
    why: (from, name) => {
      const path = files.beside(from, name);
      if (!mayTake(from, path)) return { kind: 'outside' };
      const fault = path.endsWith('.quern') ? files.faultOf?.(path) : undefined;
      return fault === undefined ? undefined : { kind: 'unreadable', why: faultWords(fault) };
    },
    near: (from, name) => {
      // Below the recipe's own folder, and below the one that the name points to.
      const named = name.slice(0, name.lastIndexOf('/') + 1);
      const paths = atHand(from).filter((path) => path !== from);
      const below = (start: string) => {
        const folder = files.beside(from, start === '' ? '.' : start);
        return paths.flatMap((path) => {
          if (!liesIn(path, folder)) return [];
          const inside = path.slice(folder.length).replaceAll('\\', '/');
          return [`${start}${inside.replace(/^\//, '')}`];
        });
      };
      const names = [...new Set([...below(''), ...(named === '' ? [] : below(named))])];
      return names
        .map((n) => ({ n, far: apart(endOf(n), endOf(name)) }))
        .filter(({ far }) => far <= MOST_APART)
        .sort((a, b) => a.far - b.far)
        .slice(0, MOST_NEAR)
        .map(({ n }) => n);
    },
  };
}

const endOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** Letters that differ, with the file's ending or without. */
function apart(there: string, written: string): number {
  const least = (other: string): number =>
    Math.abs(there.length - other.length) > MOST_APART ? Number.POSITIVE_INFINITY : distance(there, other);
  return Math.min(least(written), least(`${written}.quern`));
}
