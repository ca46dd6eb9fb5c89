/**
 * Knows the files of the machine, and what git ignores.
 * Refuses to know recipes.
 */
import { existsSync, opendirSync, readdirSync, realpathSync, statSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import ignore, { type Ignore } from 'ignore';
import type { Files, LeftOut, ReadFault } from '../workspace/ports.ts';
import { decode } from './decode.ts';
import { codeOf, diskErrorWords } from './disk-errors.ts';
import { NotOrdinary, readOrdinary } from './reading.ts';

/** Files and folders of a kitchen, ten times over: past them a folder is somebody's whole disk. */
const MOST_ENTRIES = 100_000;

/** More pictures than anybody keeps in one folder. */
const MOST_NAMES = 20_000;

/** Folders in one another. */
const MOST_DEEP = 64;

const NEVER_ENTERED: ReadonlySet<string> = new Set(['.git', 'node_modules', '.hg', '.svn']);

export function nodeFiles(): Files {
  const faults = new Map<string, ReadFault>();
  const larger = new Set<string>();
  return {
    read: (path) => {
      const { text, fault } = readText(path);
      if (fault === undefined) faults.delete(path);
      else faults.set(path, fault);
      return text;
    },
    faultOf: (path) => faults.get(path),
    recipesBelow: (folder, most = MOST_ENTRIES, leftOut) => {
      const walked: Walked = { found: [], links: [], leftOut, left: most, isCut: false };
      walk(folder, ignoresAbove(folder), walked, 0);
      if (walked.left < 0 || walked.isCut) larger.add(folder);
      else larger.delete(folder);
      if (leftOut !== undefined) {
        if (walked.left < 0) leftOut(folder, `what comes after its first ${most} files and folders, as it holds more`);
        tellLinks(folder, walked, leftOut);
      }
      return walked.found;
    },
    holdsMore: (folder) => larger.has(folder),
    namesIn,
    houseAbove,
    outermostHouse,
    real,
    join,
    beside: (path, name) => resolve(dirname(path), name),
  };
}

function readText(path: string): { readonly text: string | undefined; readonly fault?: ReadFault } {
  try {
    const { text, other } = decode(readOrdinary(path));
    return other === undefined ? { text } : { text, fault: { kind: 'encoding', encoding: other } };
  } catch (error) {
    if (isMissing(error)) return { text: undefined };
    if (error instanceof NotOrdinary) return { text: undefined, fault: { kind: 'refused', why: error.message } };
    return { text: undefined, fault: { kind: 'refused', why: diskErrorWords(error, 'you may not read it') } };
  }
}

const isMissing = (error: unknown): boolean => ['ENOENT', 'ENOTDIR'].includes(codeOf(error));

/** Names are read one by one, so that a folder of a million costs no more than one of some thousands. */
function namesIn(path: string): readonly string[] {
  const names: string[] = [];
  try {
    const folder = opendirSync(path);
    try {
      for (let entry = folder.readSync(); entry !== null && names.length < MOST_NAMES; entry = folder.readSync())
        if (entry.isDirectory()) names.push(`${entry.name}/`);
        else if (entry.isFile() || entry.isSymbolicLink()) names.push(entry.name);
    } finally {
      folder.closeSync();
    }
  } catch {
    return [];
  }
  return names.sort();
}

/** The nearest folder with `quern.json`; where there is none, the nearest with `foods.quern`, so that a kitchen's foods need no settings. */
function houseAbove(path: string): string | undefined {
  let withFoods: string | undefined;
  for (let folder = path; ; folder = dirname(folder)) {
    if (existsSync(join(folder, 'quern.json'))) return folder;
    if (withFoods === undefined && existsSync(join(folder, 'foods.quern'))) withFoods = folder;
    if (dirname(folder) === folder) return withFoods;
  }
}

/** The folder furthest up that holds `quern.json`. */
function outermostHouse(path: string): string | undefined {
  let outermost: string | undefined;
  for (let folder = path; ; folder = dirname(folder)) {
    if (existsSync(join(folder, 'quern.json'))) outermost = folder;
    if (dirname(folder) === folder) return outermost;
  }
}

/** A path with its links followed; as it is where nothing is there. */
export function real(path: string): string {
  try {
    return realpathSync.native(path);
  } catch {
    return path;
  }
}

/** A word that is another once the file is; undefined where it is not there. */
export function stampOf(path: string): string | undefined {
  const stat = statSync(path, { throwIfNoEntry: false, bigint: true });
  return stat === undefined ? undefined : `${stat.mtimeNs}-${stat.size}-${stat.ino}`;
}

/** One `.gitignore` and the folder its patterns are relative to. */
interface IgnoreRules {
  readonly folder: string;
  readonly rules: Ignore;
}

/** What is gathered on the way. */
interface Walked {
  readonly found: string[];
  /** Links are not followed. */
  readonly links: string[];
  readonly leftOut: LeftOut | undefined;
  /** Files and folders that may still be looked at; below 0 once there was one more. */
  left: number;
  /** Some folder lies too deep. */
  isCut: boolean;
}

function walk(folder: string, above: readonly IgnoreRules[], walked: Walked, deep: number): void {
  if (deep > MOST_DEEP) {
    walked.isCut = true;
    walked.leftOut?.(folder, `it lies more than ${MOST_DEEP} folders deep`);
    return;
  }
  const ignores = withRules(above, folder);
  let entries: ReturnType<typeof entriesOf>;
  try {
    entries = entriesOf(folder);
  } catch (error) {
    walked.leftOut?.(folder, diskErrorWords(error, 'you may not read it'));
    return;
  }
  for (const entry of entries) {
    if (--walked.left < 0) return;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (!NEVER_ENTERED.has(entry.name) && !isIgnored(`${path}/`, ignores)) walk(path, ignores, walked, deep + 1);
    } else if (entry.isSymbolicLink()) {
      if (walked.leftOut !== undefined && !NEVER_ENTERED.has(entry.name) && !isIgnored(path, ignores))
        walked.links.push(path);
    } else if (entry.name.endsWith('.quern') && !isIgnored(path, ignores)) {
      if (entry.isFile()) walked.found.push(path);
      else walked.leftOut?.(path, 'it is no file');
    }
  }
}

/** Links that may lead to a recipe which is not among those that were found. */
function tellLinks(folder: string, { found, links }: Walked, leftOut: LeftOut): void {
  if (links.length === 0) return;
  const root = realpathSync(folder);
  const known = new Set(found.map((path) => join(root, relative(folder, path))));
  for (const path of links) {
    const target = targetOf(path);
    if (target === undefined) {
      if (path.endsWith('.quern')) leftOut(path, 'it is a link that leads nowhere');
    } else if (target.isFolder) {
      if (!isWalked(relative(root, target.path))) leftOut(path, 'it is a link to a folder elsewhere');
    } else if (path.endsWith('.quern') && !known.has(target.path)) leftOut(path, 'it is a link to a file elsewhere');
  }
}

const isWalked = (below: string): boolean =>
  !isAbsolute(below) && !below.split(sep).some((name) => name === '..' || NEVER_ENTERED.has(name));

function targetOf(link: string): { readonly path: string; readonly isFolder: boolean } | undefined {
  try {
    const path = realpathSync(link);
    return { path, isFolder: statSync(path).isDirectory() };
  } catch {
    return undefined;
  }
}

const entriesOf = (folder: string) =>
  readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));

function withRules(above: readonly IgnoreRules[], folder: string): readonly IgnoreRules[] {
  const { text } = readText(join(folder, '.gitignore'));
  return text === undefined ? above : [...above, { folder, rules: ignore().add(text) }];
}

/** Rules of the folders above, up to the repository's root. */
function ignoresAbove(folder: string): readonly IgnoreRules[] {
  if (existsSync(join(folder, '.git')) || dirname(folder) === folder) return [];
  const parent = dirname(folder);
  return withRules(ignoresAbove(parent), parent);
}

function isIgnored(path: string, ignores: readonly IgnoreRules[]): boolean {
  return ignores.some(({ folder, rules }) => {
    const inside = relative(folder, path).split(sep).join('/');
    return inside !== '' && !inside.startsWith('..') && rules.ignores(path.endsWith('/') ? `${inside}/` : inside);
  });
}
