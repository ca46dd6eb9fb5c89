/**
 * Knows how a program asks what a cook asks on the command line: the same commands on a machine of its own, what they print taken in.
 * Refuses to know what the answers mean.
 */
import type { Exit, Machine } from '../cli/io.ts';
import { main } from '../cli/main.ts';

export interface Answer {
  readonly exit: Exit;
  /** What was printed. */
  readonly out: string;
  /** What was said beside it: notes, and why it could not be done. */
  readonly err: string;
}

const nothing = (): void => undefined;

/** Of what a machine prints, the command's own stands in the answer. */
export async function ask(
  args: readonly string[],
  machineOf: (printed: Pick<Machine, 'out' | 'err'>) => Machine,
): Promise<Answer> {
  let out = '';
  let err = '';
  const machine = machineOf({
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  const exit = await main(args, machine, { lsp: nothing, mcp: nothing }, '');
  return { exit: exit === 'serving' ? 2 : exit, out, err };
}
