/**
 * A terminal and a disk for the tests of the command line: files by path, what was printed, what was written.
 */
import type { Exit, Machine } from '../../server/src/cli/io.ts';
import { main } from '../../server/src/cli/main.ts';
import type { Git } from '../../server/src/workspace/git.ts';

export interface Ran {
  readonly exit: Exit | 'serving';
  readonly out: string;
  readonly err: string;
  /** Files written, by path. */
  readonly written: Readonly<Record<string, string>>;
}

/** A folder that no git keeps. */
const NO_GIT: Git = {
  changedSince: () => ({ known: false, why: 'no repository' }),
  textAt: () => ({ known: false, why: 'no repository' }),
  repositoryAt: () => ({ known: false, why: 'no repository' }),
};

/** Runs the command over files below `/kitchen`. */
export async function quern(
  args: readonly string[],
  files: Readonly<Record<string, string>> = {},
  input = '',
  git: Git = NO_GIT,
  terminal = false,
  more: Partial<Machine> = {},
): Promise<Ran> {
  let out = '';
  let err = '';
  const written: Record<string, string> = {};
  const at = (path: string) => (path.startsWith('/') ? path : path === '.' ? '/kitchen' : `/kitchen/${path}`);
  const all = Object.fromEntries(Object.entries(files).map(([path, text]) => [at(path), text]));
  const io: Machine = {
    files: {
      read: (path) => all[path],
      recipesBelow: (folder) =>
        Object.keys(all)
          .filter((p) => p.startsWith(`${folder}/`) && p.endsWith('.quern'))
          .sort(),
      houseAbove: () => ('/kitchen/quern.json' in all ? '/kitchen' : undefined),
      join: (folder, name) => `${folder}/${name}`,
      beside: (path, name) => new URL(name, `file://${path}`).pathname,
    },
    git,
    isTerminal: terminal,
    color: terminal,
    columns: 100,
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    progress: () => {},
    readInput: async () => ({ text: input, marked: false }),
    write: (changes) => {
      for (const { path, text } of changes) if (typeof text === 'string') written[path] = text;
      return undefined;
    },
    resolve: at,
    shown: (path) => path.replace('/kitchen/', ''),
    kind: (path) =>
      path in all
        ? 'file'
        : path === '/kitchen' || Object.keys(all).some((p) => p.startsWith(`${path}/`))
          ? 'folder'
          : undefined,
    cwd: '/kitchen',
    today: () => '2026-11-25',
    workers: undefined,
    ...more,
  };
  const exit = await main(args, io, { lsp: () => {}, mcp: () => {} }, '0.0.0');
  return { exit, out, err, written };
}
