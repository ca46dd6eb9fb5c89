/**
 * Knows the files that a client handed in, of folders that the server cannot read by itself: in a browser all, elsewhere those of another
 * provider than the disk. Their paths have slashes, whatever the machine, and begin with the provider where there is one: `memfs:/kitchen/pie.quern`.
 * Refuses to know recipes, and where the client has them from.
 */
import type { Files, HandedFile, HandedIn } from '../workspace/ports.ts';

const SETTINGS = 'quern.json';
const FOODS = 'foods.quern';

/** The files handed in so far, of which any client has a few thousand. */
export class Handed {
  private readonly byPath = new Map<string, HandedFile>();
  /** The names in each folder, those of folders with a `/` behind them. */
  private readonly names = new Map<string, Set<string>>();
  private readonly larger = new Set<string>();

  /** Takes in what changed, and gives the paths of all files that did. */
  take({ files, gone, larger }: HandedIn): readonly string[] {
    const lost = gone.flatMap((path) => this.drop(path));
    for (const file of files) this.add(file);
    for (const folder of larger) this.larger.add(folder);
    return [...new Set([...lost, ...files.map(({ path }) => path)])];
  }

  readonly files: Files = {
    read: (path) => this.byPath.get(path)?.text,
    faultOf: (path) => this.byPath.get(path)?.fault,
    recipesBelow: (folder, most = Number.POSITIVE_INFINITY) => {
      const start = folder.endsWith('/') ? folder : `${folder}/`;
      return [...this.byPath.keys()]
        .filter((path) => path.endsWith('.quern') && path.startsWith(start))
        .sort()
        .slice(0, most);
    },
    holdsMore: (folder) => this.larger.has(folder),
    houseAbove: (path) => this.above(path, [SETTINGS]).at(0) ?? this.above(path, [FOODS]).at(0),
    outermostHouse: (path) => this.above(path, [SETTINGS]).at(-1),
    namesIn: (folder) => {
      const names = this.names.get(bare(folder));
      return names === undefined ? undefined : [...names].sort();
    },
    join: (folder, name) => resolved(folder, name),
    beside: (path, name) => resolved(folderOf(path) ?? path, name),
  };

  private add(file: HandedFile): void {
    this.byPath.set(file.path, file);
    let name = file.path;
    for (let folder = folderOf(name); folder !== undefined; name = folder, folder = folderOf(folder)) {
      const names = this.names.get(folder) ?? new Set();
      this.names.set(folder, names);
      names.add(name.slice(folder.endsWith('/') ? folder.length : folder.length + 1) + (name === file.path ? '' : '/'));
    }
  }

  /** A file, or all that lies in a folder. */
  private drop(path: string): readonly string[] {
    const below = [...this.byPath.keys()].filter((known) => known === path || known.startsWith(`${path}/`));
    for (const known of below) this.byPath.delete(known);
    for (const folder of [...this.names.keys()])
      if (folder === path || folder.startsWith(`${path}/`)) this.names.delete(folder);
    const name = path.slice(path.lastIndexOf('/') + 1);
    const beside = this.names.get(folderOf(path) ?? '');
    beside?.delete(name);
    beside?.delete(`${name}/`);
    return below;
  }

  /** The folders from a file or folder upwards that hold one of the files, the nearest first. */
  private above(path: string, names: readonly string[]): readonly string[] {
    const found: string[] = [];
    for (let folder: string | undefined = bare(path); folder !== undefined; folder = folderOf(folder))
      if (names.some((name) => this.names.get(folder ?? '')?.has(name) === true)) found.push(folder);
    return found;
  }
}

/** Each path is asked of the disk, or of what was handed in, as it begins. */
export function handedBeside(disk: Files, handed: Files): Files {
  const of = (path: string): Files => (ROOT.exec(path)?.[1] === '' ? disk : handed);
  return {
    read: (path) => of(path).read(path),
    faultOf: (path) => of(path).faultOf?.(path),
    recipesBelow: (folder, most, leftOut) => of(folder).recipesBelow(folder, most, leftOut),
    holdsMore: (folder) => of(folder).holdsMore?.(folder) === true,
    houseAbove: (path) => of(path).houseAbove(path),
    outermostHouse: (path) => of(path).outermostHouse?.(path),
    real: (path) => of(path).real?.(path) ?? path,
    namesIn: (folder) => of(folder).namesIn?.(folder),
    join: (folder, name) => of(folder).join(folder, name),
    beside: (path, name) => of(path).beside(path, name),
  };
}

/** The provider, of more letters than a drive has, and where it has its files from. */
const ROOT = /^((?:[A-Za-z][\w+.-]+:(?:\/\/[^/]*)?)?)/;

const bare = (folder: string): string => (folder.length > 1 ? folder.replace(/\/+$/, '') : folder);

/** The folder that something lies in; undefined for the outermost. */
function folderOf(path: string): string | undefined {
  const root = ROOT.exec(path)?.[1] ?? '';
  const below = path.slice(root.length).replace(/\/+$/, '');
  return below === '' ? undefined : root + (below.slice(0, below.lastIndexOf('/')) || '/');
}

/** A name from a folder on, `..` and `.` followed; above the outermost there is nothing. */
function resolved(folder: string, name: string): string {
  const root = ROOT.exec(folder)?.[1] ?? '';
  const parts: string[] = [];
  for (const part of `${name.startsWith('/') ? '' : folder.slice(root.length)}/${name}`.split('/'))
    if (part === '..') parts.pop();
    else if (part !== '' && part !== '.') parts.push(part);
  return `${root}/${parts.join('/')}`;
}
