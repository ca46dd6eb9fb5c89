/**
 * Knows how files are written so that each is the old one or the new one, whole, whenever the process or the disk fails: beside each a
 * temporary file is written out and then takes its name. All of them are written, or none where one cannot be.
 * Refuses to write over what is not as it was read, or is not UTF-8.
 */
import {
  accessSync,
  closeSync,
  constants,
  copyFileSync,
  fchmodSync,
  fchownSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  type Stats,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import type { FileChange, NotWritten } from '../cli/io.ts';
import { faultWords } from '../workspace/read-fault.ts';
import { decode, encode } from './decode.ts';
import { diskErrorWords } from './disk-errors.ts';

const DENIED = 'you may not write it, or not in its folder';

/** One file with its new text beside it. */
interface Staged {
  readonly change: FileChange;
  /** Where its bytes lie: what a link leads to. */
  readonly target: string;
  /** Undefined where the file goes. */
  readonly temporary: string | undefined;
  /** Its copy, until all are written. */
  old: string | undefined;
}

/** A file that cannot be written, and why. */
class Refused extends Error {
  readonly path: string;

  constructor(path: string, why: string) {
    super(why);
    this.path = path;
  }
}

/** Writes the files; undefined where all are. */
export function writeWhole(changes: readonly FileChange[]): NotWritten | undefined {
  const litter = new Litter();
  try {
    const staged = changes.map((change) => forFile(change, () => stage(change, litter)));
    for (const file of staged)
      forFile(file.change, () => {
        assertSame(file.target, file.change.before);
        if (staged.length > 1 && file.change.before !== undefined) file.old = litter.copy(file.target);
      });
    takeNames(staged);
    for (const folder of new Set(staged.map(({ target }) => dirname(target)))) settle(folder);
    return undefined;
  } catch (error) {
    if (error instanceof Refused) return { path: error.path, why: error.message };
    throw error;
  } finally {
    litter.clear();
  }
}

function forFile<T>({ path }: FileChange, run: () => T): T {
  try {
    return run();
  } catch (error) {
    throw error instanceof Refused ? error : new Refused(path, diskErrorWords(error, DENIED));
  }
}

/** The new text beside the file, safe on the disk. */
function stage(change: FileChange, litter: Litter): Staged {
  const { path, before, text, executable } = change;
  if (before === undefined) mkdirSync(dirname(path), { recursive: true });
  const target = before === undefined ? path : realpathSync(path);
  const stat = before === undefined ? undefined : statSync(target);
  const marked = assertSame(target, before, path);
  if (stat !== undefined) {
    if (stat.nlink > 1)
      throw new Refused(
        path,
        `it has ${stat.nlink} names, and would be parted from the others; copy it over itself first`,
      );
    // To take its name, its folder alone is asked: a file that may only be read would be replaced.
    accessSync(target, constants.W_OK);
  }
  if (text === undefined) return { change, target, temporary: undefined, old: undefined };
  const temporary = litter.nameBeside(target);
  const file = openSync(temporary, 'wx', stat === undefined ? (executable ? 0o777 : 0o666) : stat.mode & 0o777);
  try {
    writeFileSync(file, typeof text === 'string' ? encode(text, marked) : text);
    if (stat !== undefined) keepRights(file, stat);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  return { change, target, temporary, old: undefined };
}

/** Whether the file began with a byte order mark; refuses one that is another than was read. */
function assertSame(target: string, before: FileChange['before'], path = target): boolean {
  if (before === undefined) {
    if (lstatSync(target, { throwIfNoEntry: false }) === undefined) return false;
    throw new Refused(path, 'there was no such file when it was looked for');
  }
  const bytes = readFileSync(target);
  if (typeof before !== 'string') {
    if (bytes.equals(before)) return false;
    throw new Refused(path, 'it was changed since it was read');
  }
  const { text, marked, other } = decode(bytes);
  if (other !== undefined) throw new Refused(path, `it ${faultWords({ kind: 'encoding', encoding: other })}`);
  if (text !== before) throw new Refused(path, 'it was changed since it was read');
  return marked;
}

function keepRights(file: number, { uid, gid, mode }: Stats): void {
  try {
    fchownSync(file, uid, gid);
  } catch {
    // The file becomes the writer's own, as one that is written anew.
  }
  // After the owner, which takes rights away.
  fchmodSync(file, mode & 0o7777);
}

/** Each temporary file takes the name of its file; where one cannot, those that have give it back. */
function takeNames(staged: readonly Staged[]): void {
  const taken: Staged[] = [];
  for (const file of staged) {
    try {
      if (file.temporary === undefined) unlinkSync(file.target);
      else renameSync(file.temporary, file.target);
    } catch (error) {
      const stuck = taken.filter((other) => !gaveBack(other)).map(({ change }) => `\`${change.path}\``);
      const left = stuck.length === 0 ? '' : `; ${stuck.join(', ')} could not be put back, and is new already`;
      throw new Refused(file.change.path, `${diskErrorWords(error, DENIED)}${left}`);
    }
    taken.push(file);
  }
}

function gaveBack({ target, old }: Staged): boolean {
  try {
    if (old === undefined) unlinkSync(target);
    else renameSync(old, target);
    return true;
  } catch {
    return false;
  }
}

/** The names in a folder, safe on the disk as well, where its system can do that. */
function settle(folder: string): void {
  try {
    const open = openSync(folder, 'r');
    try {
      fsyncSync(open);
    } finally {
      closeSync(open);
    }
  } catch {
    // The files themselves are safe: their names may be the old ones after a power cut.
  }
}

/** Files that are there only while others are written. */
class Litter {
  private readonly paths: string[] = [];

  /** A name that nothing has, of no recipe and no longer than any disk takes. */
  nameBeside(target: string): string {
    const name = `.quern-${process.pid}-${Date.now().toString(36)}-${this.paths.length}.tmp`;
    const path = join(dirname(target), name);
    this.paths.push(path);
    return path;
  }

  /** The file as it is, to come back. Not as a second name of the same bytes: that would stay one where the process is killed. */
  copy(target: string): string {
    const path = this.nameBeside(target);
    copyFileSync(target, path, constants.COPYFILE_EXCL);
    const file = openSync(path, 'r+');
    try {
      keepRights(file, statSync(target));
    } finally {
      closeSync(file);
    }
    return path;
  }

  clear(): void {
    for (const path of this.paths) {
      try {
        unlinkSync(path);
      } catch {
        // It has taken another name, or was never made.
      }
    }
  }
}
