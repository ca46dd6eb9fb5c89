/**
 * Knows the files of the machine, and what git ignores.
 * Refuses to know recipes.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import ignore, { type Ignore } from 'ignore';
import type { Files, ReadFault } from '../workspace/ports.ts';
import { decode } from './decode.ts';
import { codeOf, diskErrorWords } from './disk-errors.ts';

const NEVER_ENTERED: ReadonlySet<string> = new Set(['.git', 'node_modules', '.hg', '.svn']);

export function nodeFiles(): Files {
  const faults = new Map<string, ReadFault>();
  return {
    read: (path) => {
      const { text, fault } = readText(path);
      if (fault === undefined) faults.delete(path);
      else faults.set(path, fault);
      return text;
    },
    faultOf: (path) => faults.get(path),
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

function readText(path: string): { readonly text: string | undefined; readonly fault?: ReadFault } {
  try {
    const { text, other } = decode(readFileSync(path));
    return other === undefined ? { text } : { text, fault: { kind: 'encoding', encoding: other } };
  } catch (error) {
    if (isMissing(error)) return { text: undefined };
    return { text: undefined, fault: { kind: 'refused', why: diskErrorWords(error, 'you may not read it') } };
  }
}

const isMissing = (error: unknown): boolean => ['ENOENT', 'ENOTDIR'].includes(codeOf(error));

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
