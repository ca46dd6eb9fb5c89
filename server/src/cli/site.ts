/**
 * Knows how a site is written into a folder: what changed alone, all at once, and what an earlier run wrote and this one does not is taken away.
 * Refuses to touch a file that it did not write, or that somebody has changed since: a list of them, each with a word for its content, lies
 * beside the pages.
 */
import type { SiteFile } from '../publish/site/site.ts';
import { liesIn } from '../workspace/folders.ts';
import { type FileChange, type Io, save, UsageError } from './io.ts';

/** The list of what was written. */
const LIST = '.quern-site.json';

export interface SiteWritten {
  readonly written: number;
  readonly same: number;
  readonly removed: number;
}

/** A picture, copied as it is. */
export interface SitePicture {
  readonly path: string;
  readonly from: string;
}

export function writeSite(
  folder: string,
  files: readonly SiteFile[],
  pictures: readonly SitePicture[],
  io: Io,
): SiteWritten {
  const { bytes, digest } = io;
  if (bytes === undefined || digest === undefined) throw new UsageError('nothing can be written from here');
  const at = (path: string): string => io.files.join(folder, path);
  const old = listIn(at(LIST), io);
  const changes: FileChange[] = [];
  const list: Record<string, string> = {};
  let [same, removed] = [0, 0];
  const put = (path: string, content: string | Uint8Array, from?: string): void => {
    const target = at(path);
    fence(target, folder, path, io);
    // The picture lies in the site already.
    if (from !== undefined && real(from, io) === real(target, io)) return;
    const before = bytes(target);
    const word = digest(content);
    if (before === undefined) {
      if (io.kind(target) !== undefined)
        throw new UsageError(`\`${io.shown(target)}\` is there and cannot be read: move it away`);
    } else {
      const now = digest(before);
      if (now === word) same++;
      if (now !== old.get(path)) {
        // What somebody else put there may stay where it says the same, and is theirs.
        if (now === word) return;
        throw new UsageError(
          `\`${io.shown(target)}\` ${old.has(path) ? 'was changed since it was written' : 'is none of this site'}: move it away, or give another folder with --out`,
        );
      }
      if (now === word) {
        list[path] = word;
        return;
      }
    }
    list[path] = word;
    changes.push({ path: target, before, text: content });
  };
  for (const { path, text } of files) put(path, text);
  for (const { path, from } of pictures) {
    const content = bytes(from);
    if (content === undefined) io.trouble(`\`${io.shown(from)}\` cannot be read, and is not in the site`);
    else put(path, content, from);
  }
  const written = changes.length;
  for (const [path, word] of old) {
    if (Object.hasOwn(list, path) || !isBelow(path)) continue;
    const target = at(path);
    const content = bytes(target);
    if (content === undefined || digest(content) !== word || !liesIn(real(target, io), real(folder, io))) continue;
    changes.push({ path: target, before: content, text: undefined });
    removed++;
  }
  const text = `${JSON.stringify({ version: 1, files: list }, null, 2)}\n`;
  const before = bytes(at(LIST));
  if (before === undefined || digest(before) !== digest(text)) changes.push({ path: at(LIST), before, text });
  save(changes, io);
  return { written, same, removed };
}

const real = (path: string, io: Io): string => io.files.real?.(path) ?? path;

/** A link in the folder may lead anywhere. */
function fence(target: string, folder: string, path: string, io: Io): void {
  let there = target;
  while (there !== folder && io.kind(there) === undefined) there = io.files.beside(there, '.');
  if (!isBelow(path) || !liesIn(real(there, io), real(folder, io)))
    throw new UsageError(`\`${io.shown(target)}\` leads out of the site: nothing was written`);
}

const isBelow = (path: string): boolean =>
  path !== '' &&
  !/[\\\0]|^[a-z]:/i.test(path) &&
  path.split('/').every((part) => part !== '' && part !== '.' && part !== '..');

/** What an earlier run wrote, each with a word for its content; nothing of a list that is none. */
function listIn(path: string, io: Io): ReadonlyMap<string, string> {
  const text = io.files.read(path);
  if (text === undefined) return new Map();
  try {
    const { files } = JSON.parse(text) as { readonly files?: unknown };
    if (typeof files !== 'object' || files === null) return new Map();
    return new Map(Object.entries(files).filter((entry): entry is [string, string] => typeof entry[1] === 'string'));
  } catch {
    throw new UsageError(`\`${io.shown(path)}\` is no list of a site: move it away`);
  }
}
