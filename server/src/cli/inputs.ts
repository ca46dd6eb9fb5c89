/**
 * Knows which files a command is to read: named ones, all recipes below folders, or standard input under a name.
 * Refuses to know what is done with them.
 */
import { Houses } from '../workspace/houses.ts';
import { isLeftOut } from '../workspace/left-out.ts';
import { Snapshot } from '../workspace/snapshot.ts';
import { type Io, UsageError } from './io.ts';
import type { Options } from './options.ts';

export const INPUT_OPTIONS = { stdin: 'flag', 'stdin-name': 'value' } as const;

/** One file to work on. */
export interface Input {
  readonly path: string;
  /** As shown to people. */
  readonly shown: string;
  readonly text: string;
  /** The folder that was named, where it was found below one. */
  readonly within?: string;
}

/** The one file a command takes: a path, or standard input. */
export async function readOne(options: Options, io: Io): Promise<Input> {
  if (options.flags.has('stdin')) return readStdin(options, io);
  const [path, ...more] = options.rest;
  if (path === undefined) throw new UsageError('name the file, or give its text with --stdin');
  if (more.length > 0) throw new UsageError(`name one file; \`${more.join(' ')}\` is left over`);
  return readFile(path, io);
}

/** The files a command takes: paths and folders (the current one when none is named), or standard input. */
export async function readMany(options: Options, io: Io, houses: Houses): Promise<Input[]> {
  if (options.flags.has('stdin')) return [await readStdin(options, io)];
  const named = options.rest.length > 0 ? options.rest : ['.'];
  const inputs = new Map<string, Input>();
  for (const path of named) {
    const absolute = io.resolve(path);
    const kind = io.kind(absolute);
    if (kind === undefined) throw new UsageError(`there is no file or folder \`${path}\``);
    if (kind === 'file') inputs.set(absolute, readFile(path, io));
    else
      for (const input of below(absolute, path, io, houses)) if (!inputs.has(input.path)) inputs.set(input.path, input);
  }
  return [...inputs.values()];
}

function below(folder: string, written: string, io: Io, houses: Houses): Input[] {
  const paths = io.files.recipesBelow(folder);
  if (paths.length === 0) throw new UsageError(`there is no recipe (*.quern) in \`${written}\``);
  return paths.filter((path) => !isIgnored(path, io, houses)).map((path) => inputAt(path, io.shown(path), io, folder));
}

/** A file on disk, read when its text is looked at: a worker may be the only one to do so. */
export function inputAt(path: string, shown: string, io: Io, within?: string): Input {
  let read: string | undefined;
  return {
    path,
    shown,
    ...(within !== undefined && { within }),
    get text() {
      read ??= io.files.read(path);
      if (read === undefined) throw new UsageError(`\`${shown}\` cannot be read`);
      return read;
    },
  };
}

/** Whether the house's `quern.json` leaves the file out. */
export function isIgnored(path: string, io: Io, houses: Houses): boolean {
  const { settings } = houses.of(path);
  const folder = settings.ignore.length === 0 ? undefined : io.files.houseAbove(path);
  return isLeftOut(path, folder, settings.ignore);
}

function readFile(path: string, io: Io): Input {
  const absolute = io.resolve(path);
  const kind = io.kind(absolute);
  if (kind === 'folder') throw new UsageError(`\`${path}\` is a folder: name one file`);
  if (kind === undefined) throw new UsageError(`there is no file \`${path}\``);
  return inputAt(absolute, io.shown(absolute), io);
}

async function readStdin(options: Options, io: Io): Promise<Input> {
  const name = options.values['stdin-name'] ?? 'stdin.quern';
  return { path: io.resolve(name), shown: name, text: await io.readInput() };
}

/** A file worked out under its house. */
export function snapshotOf(input: Input, houses: Houses): Snapshot {
  if (input.within !== undefined) houses.opened(input.within);
  return Snapshot.open(input.path, 0, input.text, houses.of(input.path).house, houses.bases);
}

/** Houses for one run of a command; what is wrong with one is said once, on standard error. */
export function housesFor(io: Io): Houses {
  const houses = new Houses(io.files);
  houses.opened(io.cwd);
  return houses;
}
