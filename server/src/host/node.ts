/**
 * Knows the terminal of the machine, and what a command sees of its disk.
 * Refuses to know recipes.
 */
import { statSync } from 'node:fs';
import { dirname, isAbsolute, join, parse, relative, resolve, sep } from 'node:path';
import { type Machine, UsageError } from '../cli/io.ts';
import type { Files } from '../workspace/ports.ts';
import { today } from './clock.ts';
import { decode } from './decode.ts';
import { codeOf, diskErrorWords } from './disk-errors.ts';
import { nodeFiles } from './files.ts';
import { nodeGit } from './git.ts';
import { nodeKeptTexts } from './kept-texts.ts';
import { digest } from './later.ts';
import { MOST_PICTURE_BYTES, readOrdinary } from './reading.ts';
import { nodeWeb } from './web-server.ts';
import { nodeWorkers } from './workers.ts';
import { writeWhole } from './writing.ts';

/** Ends the process, in words, where its output cannot be written. To be asked for once. */
export function endWithOutput({ stdout, stderr }: Pick<NodeJS.Process, 'stdout' | 'stderr'>): void {
  // Whatever was found, not all of it was said.
  stdout.on('error', (error) => {
    const why =
      codeOf(error) === 'EPIPE' ? 'whoever reads it has closed it' : diskErrorWords(error, 'it is not allowed');
    stderr.write(`quern: standard output cannot be written: ${why}\n`);
    process.exit(2);
  });
  // The exit says as much.
  stderr.on('error', () => undefined);
}

/** Ends where all is written: else the engine would first look through a memory that nobody needs, which takes as long as a small file. */
export function endWith(process: NodeJS.Process, exit: number): void {
  process.exitCode = exit;
  // What could not be written is yet to be said.
  if ([process.stdout, process.stderr].every((to) => to.writableLength === 0 && to.errored === null)) process.exit();
}

/** The terminal; `script` is the bundle that workers run, where there is one. */
export function nodeIo(script?: string): Machine {
  const { stdout, stderr, env } = process;
  const here = currentFolder();
  // A folder in which nothing lies: not the root, below which all does.
  const cwd = here ?? join(parse(process.execPath).root, 'no such folder');
  return {
    files: remembering(nodeFiles()),
    workers: script === undefined ? undefined : nodeWorkers(script),
    ...(script !== undefined && { keptTexts: (folder) => nodeKeptTexts(script, folder) }),
    ...(script !== undefined && { web: nodeWeb(script) }),
    today,
    git: nodeGit(),
    isTerminal: stdout.isTTY === true,
    color: stdout.isTTY === true && env.NO_COLOR === undefined,
    columns: stdout.columns ?? 100,
    out: (text) => {
      stdout.write(text);
    },
    err: (text) => {
      stderr.write(text);
    },
    progress: progressOn(stderr),
    readInput: async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk));
      return decode(Buffer.concat(chunks));
    },
    write: writeWhole,
    bytes,
    digest,
    resolve: (path) => {
      if (here === undefined && !isAbsolute(path))
        throw new UsageError('the folder that the command was started in is gone: name files by their whole paths');
      return resolve(cwd, path);
    },
    shown: (path) => {
      if (here === undefined) return path;
      const below = relative(cwd, path);
      if (below === '') return '.';
      return below.startsWith('..') || isAbsolute(below) ? path : below.split(sep).join('/');
    },
    kind: (path) => {
      const stat = statSync(path, { throwIfNoEntry: false });
      return stat === undefined ? undefined : stat.isDirectory() ? 'folder' : 'file';
    },
    cwd,
  };
}

function bytes(path: string): Uint8Array | undefined {
  try {
    return readOrdinary(path, MOST_PICTURE_BYTES);
  } catch {
    return undefined;
  }
}

/** Undefined where the folder was deleted, or may not be looked at. */
function currentFolder(): string | undefined {
  try {
    return process.cwd();
  } catch {
    return undefined;
  }
}

/** One command sees the disk as it was when it first looked for a house. */
function remembering(files: Files): Files {
  const houses = new Map<string, string | undefined>();
  return {
    ...files,
    houseAbove: (path) => {
      const folder = dirname(path);
      // A folder is its own; a file shares what its folder has.
      if (!path.endsWith('.quern')) return files.houseAbove(path);
      if (!houses.has(folder)) houses.set(folder, files.houseAbove(folder));
      return houses.get(folder);
    },
  };
}

const PROGRESS_AFTER_MS = 1000;
const PROGRESS_EVERY_MS = 100;

/** Nothing where nobody looks on, and nothing for a run that is soon done. */
function progressOn(stderr: NodeJS.WriteStream): (text: string) => void {
  if (stderr.isTTY !== true) return () => {};
  const started = Date.now();
  let shownAt = 0;
  let waiting: NodeJS.Timeout | undefined;
  const show = (text: string) => {
    shownAt = Date.now();
    stderr.write(`\r${text}\u001b[K`);
  };
  return (text) => {
    clearTimeout(waiting);
    const left = started + PROGRESS_AFTER_MS - Date.now();
    if (text === '') {
      if (shownAt > 0) stderr.write('\r\u001b[K');
    } else if (left > 0) {
      // While workers work, nothing else may come to say it.
      waiting = setTimeout(show, left, text);
      waiting.unref();
    } else if (Date.now() - shownAt >= PROGRESS_EVERY_MS) show(text);
  };
}
