/**
 * Knows what a command of the command line is.
 */
import type { Exit, Io } from './io.ts';
import type { OptionKind, Options } from './options.ts';

export interface Command {
  readonly name: string;
  /** After the name: `FILE [--by 1.5]`. */
  readonly usage: string;
  readonly summary: string;
  readonly options: Readonly<Record<string, OptionKind>>;
  readonly examples: readonly string[];
  run(options: Options, io: Io, version: string): Exit | Promise<Exit>;
}
