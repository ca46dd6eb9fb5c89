/**
 * Knows which files a command is to read: named ones, all recipes below folders, or standard input under a name.
 * Refuses to know what is done with them.
 */
import { Houses } from '../workspace/houses.ts';
import { isLeftOut } from '../workspace/left-out.ts';
import type { OtherEncoding, ReadFault } from '../workspace/ports.ts';
import { faultWords } from '../workspace/read-fault.ts';
import { DEFAULTS } from '../workspace/settings.ts';
import { Snapshot } from '../workspace/snapshot.ts';
import { type Io, UsageError } from './io.ts';
import type { Options } from './options.ts';

export const INPUT_OPTIONS = { stdin: 'flag', 'stdin-name': 'value' } as const;

/** One file to work on. */
export interface Input {
  readonly path: string;
  /** As shown to people. */
  readonly shown: string;
  /** Bad usage where it cannot be read. */
  readonly text: string;
  /** The folder that was named, where it was found below one. */
  readonly within?: string;
  /** Of one that is not UTF-8. */
  readonly encoding: OtherEncoding | undefined;
  /** What stands before the text, of standard input: a byte order mark or nothing. */
  readonly mark: string;
  /** The same, to be read anew: an input holds on to what was read. Absent where it can be read but once. */
  readonly again?: () => Input;
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
  const paths = io.files.recipesBelow(folder, undefined, (path, why) => {
    if (!isIgnored(path, io, houses, io.files.beside(path, '.')))
      io.trouble(`\`${io.shown(path)}\` is left out: ${why}; name it, or have it ignored in quern.json`);
  });
  if (paths.length === 0) throw new UsageError(`there is no recipe (*.quern) in \`${written}\``);
  return paths.filter((path) => !isIgnored(path, io, houses)).map((path) => inputAt(path, io.shown(path), io, folder));
}

/** A file on disk, read when its text is looked at: a worker may be the only one to do so. */
export function inputAt(path: string, shown: string, io: Io, within?: string): Input {
  let read: { readonly text: string | undefined; readonly fault: ReadFault | undefined } | undefined;
  const look = () => {
    read ??= { text: io.files.read(path), fault: io.files.faultOf?.(path) };
    return read;
  };
  return {
    path,
    shown,
    mark: '',
    ...(within !== undefined && { within }),
    again: () => inputAt(path, shown, io, within),
    get text() {
      const { text, fault } = look();
      if (text === undefined)
        throw new UsageError(`\`${shown}\` ${fault === undefined ? 'cannot be read' : faultWords(fault)}`);
      return text;
    },
    get encoding() {
      const { fault } = look();
      return fault?.kind === 'encoding' ? fault.encoding : undefined;
    },
  };
}

/** Whether the house's `quern.json` leaves the file out; `from` is where its house is looked for. */
export function isIgnored(path: string, io: Io, houses: Houses, from = path): boolean {
  const settings = houses.settingsOf(from);
  const folder = settings.ignore.length === 0 ? undefined : io.files.houseAbove(from);
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
  const { text, marked, other } = await io.readInput();
  if (text === undefined)
    throw new UsageError(
      `standard input ${other === undefined ? 'cannot be read' : faultWords({ kind: 'encoding', encoding: other })}`,
    );
  return { path: io.resolve(name), shown: name, text, encoding: other, mark: marked && !other ? '\ufeff' : '' };
}

/** A file worked out under its house. */
export const snapshotOf = (input: Input, houses: Houses): Snapshot => opened(input, input.text, houses);

/** The same to be checked: of a file that cannot be read, that alone is found. */
export const snapshotToCheck = (input: Input, houses: Houses, bases = houses.bases): Snapshot =>
  opened(input, input.encoding?.isRead === false ? '' : input.text, houses, bases);

function opened({ path, encoding, within }: Input, text: string, houses: Houses, bases = houses.bases): Snapshot {
  if (within !== undefined) houses.opened(within);
  return Snapshot.open(path, 0, text, houses.of(path, text).house, bases, encoding);
}

/** Houses for one run of a command; what could not be used of one is said, and ends the command with 2. */
export function housesFor(io: Io, tell = io.trouble): Houses {
  const houses = new Houses(io.files, DEFAULTS, { tell });
  houses.opened(io.cwd);
  return houses;
}
