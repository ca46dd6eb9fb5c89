/**
 * Knows what a command needs of the terminal and the disk; `host/` fulfils it.
 */
import type { Git } from '../workspace/git.ts';
import type { Files, OtherEncoding } from '../workspace/ports.ts';
import type { Web } from './web.ts';

/** The machine that a command runs on. */
export interface Machine {
  readonly files: Files;
  readonly git: Git;
  /** Whether what is printed is shown on a terminal. */
  readonly isTerminal: boolean;
  readonly color: boolean;
  readonly columns: number;
  out(text: string): void;
  err(text: string): void;
  /** Shown over itself on a terminal, once a run takes longer than a second; empty takes it away. */
  progress(text: string): void;
  /** All of standard input. */
  readInput(): Promise<Given>;
  /** Writes all of the files or none, each whole; undefined where they are written. */
  write(changes: readonly FileChange[]): NotWritten | undefined;
  /** The absolute path of one given on the command line. */
  resolve(path: string): string;
  /** The path as shown: relative to where the command runs, when below it. */
  shown(path: string): string;
  kind(path: string): 'file' | 'folder' | undefined;
  readonly cwd: string;
  /** The day where the command runs: '2026-09-14'. */
  today(): string;
  /** Threads that can share the work of one command; absent where there are none. */
  readonly workers: Workers | undefined;
  /** What earlier runs left, in the user's cache or in a folder that is named; absent where nothing is kept. */
  readonly keptTexts?: (folder: string | undefined) => KeptTexts | undefined;
  /** The bytes of an ordinary file, of no more than a picture has; undefined where it cannot be read. */
  bytes?(path: string): Uint8Array | undefined;
  /** A word for what a file holds: of another content it is another. */
  digest?(content: string | Uint8Array): string;
  /** Absent where nothing can be served. */
  readonly web?: Web;
}

/** The same as a command sees it: what is said in `out` and `err` changes nothing of the terminal it is shown on. */
export interface Io extends Machine {
  /** Prints a text that may be kept, as it is; only where it is shown on a terminal, it changes nothing there. */
  document(text: string): void;
  /** Prints lines as they are, with their colours: what a recipe wrote in them shows already. */
  painted(lines: string): void;
  /** Something could not be used or looked at: it is said once, on standard error, and the command ends with 2 whatever else it finds. */
  trouble(words: string): void;
}

/** A text as it was given. */
export interface Given {
  /** Without its byte order mark; undefined where it is in an encoding that cannot be read. */
  readonly text: string | undefined;
  /** It began with a byte order mark. */
  readonly marked: boolean;
  readonly other?: OtherEncoding;
}

/** What a file is to hold: a text, or bytes as they are. */
export interface FileChange {
  readonly path: string;
  /** What it was worked out from, and must hold still; undefined where there was no file. */
  readonly before: string | Uint8Array | undefined;
  /** Undefined where the file is to go. */
  readonly text: string | Uint8Array | undefined;
  /** A new one that is run. */
  readonly executable?: true;
}

/** The file for which nothing was written. */
export interface NotWritten {
  readonly path: string;
  readonly why: string;
}

/** Texts that one run leaves for the next: any may be gone at any time. */
export interface KeptTexts {
  /** What tells this build from others. */
  readonly build: string;
  /** A sum by which two texts are told apart. */
  digest(text: string): string;
  read(name: string): string | undefined;
  /** Why it could not be written; undefined where it was. */
  write(name: string, text: string): string | undefined;
}

export interface Workers {
  readonly count: number;
  /** Does the jobs in order, each by the thread that is free first, and hands on each answer as it comes; both are plain data. */
  run<Job, Answer>(jobs: readonly Job[], answered: (answer: Answer, job: Job) => void): Promise<void>;
}

/** What a command reads: exit codes are 0 fine, 1 findings at or above the level, 2 bad usage or input that cannot be read. */
export type Exit = 0 | 1 | 2;

/** Bad usage; the message says what to write instead. */
export class UsageError extends Error {}

/** Writes the files, or refuses the command in words. */
export function save(changes: readonly FileChange[], io: Io): void {
  const failed = changes.length === 0 ? undefined : io.write(changes);
  if (failed === undefined) return;
  const rest = changes.length > 1 ? '; nothing was written' : '';
  throw new UsageError(`\`${io.shown(failed.path)}\` cannot be written: ${failed.why}${rest}`);
}

/** `--stdin` has no file that `flag` could write. */
export function refuseToWriteStdin(flags: ReadonlySet<string>, flag: 'write' | 'fix'): void {
  if (flags.has('stdin') && flags.has(flag))
    throw new UsageError(`--${flag} writes into a file, and --stdin gives a text without one: give one of them`);
}
