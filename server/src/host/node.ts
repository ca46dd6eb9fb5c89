/**
 * Knows the machine: files, what git ignores, the terminal. The only folder that imports `node:*`.
 * Refuses to know recipes.
 */
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import ignore, { type Ignore } from 'ignore';
import type { Io } from '../cli/io.ts';
import type { Files } from '../workspace/ports.ts';
import { today } from './clock.ts';
import { nodeGit } from './git.ts';
import { nodeWorkers } from './workers.ts';

const NEVER_ENTERED: ReadonlySet<string> = new Set(['.git', 'node_modules', '.hg', '.svn']);

export function nodeFiles(): Files {
  return {
    read: readText,
    recipesBelow: (folder) => {
      const found: string[] = [];
      walk(folder, ignoresAbove(folder), found);
      return found;
    },
    houseAbove,
    join,
    beside: (path, name) => resolve(dirname(path), name),
  };
}

/** The terminal; `script` is the bundle that workers run, where there is one. */
export function nodeIo(script?: string): Io {
  const { stdout, stderr, stdin, env } = process;
  // A reader that closes its end early (`| head`) is no error.
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
  });
  const cwd = process.cwd();
  return {
    files: remembering(nodeFiles()),
    workers: script === undefined ? undefined : nodeWorkers(script),
    today,
    git: nodeGit(),
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
      for await (const chunk of stdin) chunks.push(Buffer.from(chunk));
      return Buffer.concat(chunks).toString('utf8');
    },
    write: (path, text) => {
      writeFileSync(path, text);
    },
    resolve: (path) => resolve(cwd, path),
    shown: (path) => {
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

function readText(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
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

/** One `.gitignore` and the folder its patterns are relative to. */
interface IgnoreRules {
  readonly folder: string;
  readonly rules: Ignore;
}

function walk(folder: string, above: readonly IgnoreRules[], found: string[]): void {
  const ignores = withRules(above, folder);
  let entries: ReturnType<typeof entriesOf>;
  try {
    entries = entriesOf(folder);
  } catch {
    return; // Not to be read: nothing of it is ours.
  }
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (!NEVER_ENTERED.has(entry.name) && !isIgnored(`${path}/`, ignores)) walk(path, ignores, found);
    } else if (entry.name.endsWith('.quern') && entry.isFile() && !isIgnored(path, ignores)) found.push(path);
  }
}

const entriesOf = (folder: string) =>
  readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));

function withRules(above: readonly IgnoreRules[], folder: string): readonly IgnoreRules[] {
  const text = readText(join(folder, '.gitignore'));
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
