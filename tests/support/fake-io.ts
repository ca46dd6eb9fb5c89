/**
 * A terminal and a disk for the tests of the command line: files by path, what was printed, what was written.
 */
import type { Exit, Machine } from '../../server/src/cli/io.ts';
import { main } from '../../server/src/cli/main.ts';
import { inMemory } from '../../server/src/programs/in-memory.ts';
import type { Git } from '../../server/src/workspace/git.ts';

export interface Ran {
  readonly exit: Exit | 'serving';
  readonly out: string;
  readonly err: string;
  /** Files written, by path. */
  readonly written: Readonly<Record<string, string>>;
}

/** Runs the command over files below `/kitchen`. */
export async function quern(
  args: readonly string[],
  files: Readonly<Record<string, string>> = {},
  input = '',
  git?: Git,
  terminal = false,
  more: Partial<Machine> = {},
): Promise<Ran> {
  let out = '';
  let err = '';
  const written: Record<string, string> = {};
  const io: Machine = {
    ...inMemory(
      { files, input, today: '2026-11-25' },
      {
        out: (text) => {
          out += text;
        },
        err: (text) => {
          err += text;
        },
      },
    ),
    ...(git && { git }),
    isTerminal: terminal,
    color: terminal,
    write: (changes) => {
      for (const { path, text } of changes) if (typeof text === 'string') written[path] = text;
      return undefined;
    },
    ...more,
  };
  const exit = await main(args, io, { lsp: () => {}, mcp: () => {} }, '0.0.0');
  return { exit, out, err, written };
}
