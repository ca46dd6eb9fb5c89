/**
 * Knows which of the files a command was given are touched by what changed since a revision: themselves, what they build on, their house.
 * Refuses to know what is done with them.
 */
import type { Houses } from '../workspace/houses.ts';
import { type Input, snapshotToCheck } from './inputs.ts';
import { type Io, UsageError } from './io.ts';

/** The inputs that changed since a revision, and those that depend on what did. */
export function touchedSince(inputs: readonly Input[], revision: string, houses: Houses, io: Io): Input[] {
  const answer = io.git.changedSince(io.cwd, revision);
  if (!answer.known) throw new UsageError(`--since ${revision}: ${answer.why}`);
  const changed = new Set(answer.value);
  const gone = answer.value.some((path) => path.endsWith('.quern') && io.kind(path) === undefined);
  const folders = answer.value.filter((p) => baseName(p) === 'quern.json').map(folderOf);
  const foodHouses = new Set(
    answer.value
      .filter((path) => path.endsWith('.quern') && tellsFoods(path, revision, io))
      .flatMap((path) => io.files.houseAbove(path) ?? []),
  );
  return inputs.filter((input) => {
    const { path } = input;
    if (changed.has(path) || folders.some((folder) => isBelow(path, folder))) return true;
    const house = io.files.houseAbove(path);
    if (house !== undefined && foodHouses.has(house)) return true;
    const { written, broken } = snapshotToCheck(input, houses);
    return written?.files.some((file) => changed.has(file)) || (gone && (broken?.length ?? 0) > 0);
  });
}

/** Whether a file has foods of the house in it, or had. */
function tellsFoods(path: string, revision: string, io: Io): boolean {
  if (hasFoods(io.files.read(path) ?? '')) return true;
  const before = io.git.textAt(path, revision);
  return before.known && hasFoods(before.value);
}

const hasFoods = (text: string): boolean => /^[ \t]*food[ \t]/m.test(text);
const slashes = (path: string): string => path.replaceAll('\\', '/');
const baseName = (path: string): string => slashes(path).split('/').at(-1) ?? '';
const folderOf = (path: string): string => slashes(path).split('/').slice(0, -1).join('/');
const isBelow = (path: string, folder: string): boolean => slashes(path).startsWith(`${folder}/`);
