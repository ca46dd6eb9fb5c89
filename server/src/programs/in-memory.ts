/**
 * Knows a machine whose files are texts that were handed in, by path: what a program gives, and what lies on no disk.
 * Refuses to touch a disk: what is written is kept beside, and nothing is known of any repository.
 */
import { type Machine, UsageError } from '../cli/io.ts';
import type { Git } from '../workspace/git.ts';
import { posix } from './posix.ts';

export interface Texts {
  /** By path; relative ones lie in `cwd`. */
  readonly files: Readonly<Record<string, string>>;
  /** What `--stdin` reads. */
  readonly input?: string;
  /** The day: '2026-09-14'. */
  readonly today: string;
}

/** Where relative paths lie. */
const CWD = '/kitchen';

const NO_GIT: Git = {
  changedSince: () => ({ known: false, why: 'no repository' }),
  textAt: () => ({ known: false, why: 'no repository' }),
  repositoryAt: () => ({ known: false, why: 'no repository' }),
};

/** Everything printed goes to `out` and `err`, which the caller gives. */
export function inMemory({ files, input = '', today }: Texts, { out, err }: Pick<Machine, 'out' | 'err'>): Machine {
  const resolve = (path: string): string => posix(CWD, path);
  const all = new Map(Object.entries(files).map(([path, text]) => [resolve(path), text]));
  const below = (folder: string): readonly string[] =>
    [...all.keys()].filter((path) => path.startsWith(folder === '/' ? '/' : `${folder}/`));
  const houseAbove = (path: string): string | undefined => {
    for (let folder = posix(path, '.'); ; folder = posix(folder, '..')) {
      if (all.has(posix(folder, 'quern.json')) || all.has(posix(folder, 'foods.quern'))) return folder;
      if (folder === '/') return undefined;
    }
  };
  return {
    files: {
      read: (path) => all.get(path),
      recipesBelow: (folder) =>
        below(folder)
          .filter((path) => path.endsWith('.quern'))
          .sort(),
      houseAbove,
      join: posix,
      beside: (path, name) => posix(posix(path, '..'), name),
    },
    git: NO_GIT,
    isTerminal: false,
    color: false,
    columns: 100,
    out,
    err,
    progress: () => undefined,
    readInput: async () => ({ text: input, marked: false }),
    write: () => {
      throw new UsageError('nothing is written here: take the text that is given back');
    },
    resolve,
    shown: (path) => (path.startsWith(`${CWD}/`) ? path.slice(CWD.length + 1) : path === CWD ? '.' : path),
    kind: (path) => (all.has(path) ? 'file' : path === CWD || below(path).length > 0 ? 'folder' : undefined),
    cwd: CWD,
    today: () => today,
    workers: undefined,
  };
}
