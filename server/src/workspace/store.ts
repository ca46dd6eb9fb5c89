/**
 * Knows which texts are open, as snapshots by URI, and keeps them in the house they belong to while houses change.
 * Refuses to know when findings are worked out or who is told: it answers with the URIs whose findings may be others now.
 */
import type { House } from '../checks/house.ts';
import type { Block, Outline } from '../notation/outline.ts';
import { picturesOf } from '../recipe/pictures.ts';
import { Folders, liesIn } from './folders.ts';
import { Houses } from './houses.ts';
import { MISSING } from './inherit/load-base.ts';
import { isLeftOut } from './left-out.ts';
import { isPicture } from './picture-files.ts';
import type { Bases, Files, OtherEncoding } from './ports.ts';
import { DEFAULTS, type Settings } from './settings.ts';
import { type PlacedFault, placedFaults } from './settings-places.ts';
import { type Change, Snapshot } from './snapshot.ts';

export type Uri = string;

/** Where a URI lies on disk; undefined for a text that lies nowhere. */
export type PathOf = (uri: Uri) => string | undefined;
export type UriOf = (path: string) => Uri;

/** What could not be used of a food, on its name. */
export interface FoodFault {
  readonly words: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export class Store {
  private readonly open = new Map<Uri, Snapshot>();
  private readonly uriByPath = new Map<string, Uri>();
  private readonly disk: Files;
  private readonly pathOf: PathOf;
  private readonly uriOf: UriOf;
  private settings: Settings;
  private houses: Houses;
  private roots: readonly string[] = [];
  private readonly folders: Folders;
  /** Open texts are known by URI, files by path. */
  private readonly bases: Bases = {
    load: (from, file) => this.houses.bases.load(this.pathOf(from) ?? from, file),
    near: (from, file) => this.houses.bases.near?.(this.pathOf(from) ?? from, file) ?? [],
    why: (from, file) => this.houses.bases.why?.(this.pathOf(from) ?? from, file),
    picture: (from, file) => this.whereOn(from, (path) => this.houses.bases.picture?.(path, file)),
    pictureNames: (from, begun) => this.whereOn(from, (path) => this.houses.bases.pictureNames?.(path, begun)) ?? [],
    pathOf: (uri) => this.pathOf(uri),
  };

  constructor(disk: Files, pathOf: PathOf, uriOf: UriOf, settings: Settings = DEFAULTS) {
    this.disk = disk;
    this.pathOf = pathOf;
    this.uriOf = uriOf;
    this.settings = settings;
    this.houses = this.newHouses();
    this.folders = new Folders(this.typedOver());
  }

  /** The folders that the editor has open, by path. */
  rooted(roots: readonly string[]): void {
    this.roots = roots;
  }

  /** Every recipe at hand: of the open folders, the houses of open texts, and the folders of those that have none. */
  index(): Folders {
    const open = [...this.uriByPath.keys()];
    const houses = [...this.roots, ...open].flatMap((path) => this.disk.houseAbove(path) ?? []);
    const near = [...this.roots, ...houses];
    const alone = open.filter((path) => !near.some((root) => liesIn(path, root)));
    return this.folders.lookIn(
      near,
      alone.map((path) => this.disk.beside(path, '.')),
    );
  }

  /** How many files the index was made of so far. */
  get indexed(): number {
    return this.folders.size;
  }

  /** A file at hand as it stands: the open text, else the one on disk. */
  snapshotAt(path: string): Snapshot | undefined {
    const uri = this.uriByPath.get(path);
    const open = uri === undefined ? undefined : this.open.get(uri);
    if (open !== undefined) return open;
    const text = this.disk.read(path);
    const encoding = this.encodingOf(path);
    // One that is there in another encoding has that to be said of it.
    if (text === undefined && encoding === undefined) return undefined;
    return Snapshot.open(this.uriOf(path), 0, text ?? '', this.houses.of(path).house, this.bases, encoding);
  }

  /** Another text of a file, in its house and beside its bases. */
  textAt(uri: Uri, text: string): Snapshot {
    return Snapshot.open(uri, 0, text, this.houses.of(this.pathOf(uri)).house, this.bases);
  }

  snapshot(uri: Uri): Snapshot | undefined {
    return this.open.get(uri);
  }

  /** The house that a file has now. */
  houseAt(path: string): House {
    return this.houses.of(path).house;
  }

  uris(): readonly Uri[] {
    return [...this.open.keys()];
  }

  opened(uri: Uri, version: number, text: string): readonly Uri[] {
    const path = this.pathOf(uri);
    if (path !== undefined) this.uriByPath.set(path, uri);
    const encoding = path === undefined ? undefined : this.encodingOnDisk(path);
    this.open.set(uri, Snapshot.open(uri, version, text, this.houses.of(path).house, this.bases, encoding));
    // What is typed may differ from what lies on disk.
    return this.textChanged(uri, path, true);
  }

  /** A URI that is not open is left alone. */
  changed(uri: Uri, version: number, changes: readonly Change[]): readonly Uri[] {
    const before = this.open.get(uri);
    if (before === undefined) return [];
    const after = before.edited(version, changes);
    this.open.set(uri, after);
    return this.textChanged(uri, this.pathOf(uri), !sameBlocks(before.outline.foods, after.outline.foods));
  }

  closed(uri: Uri): readonly Uri[] {
    const path = this.pathOf(uri);
    this.open.delete(uri);
    if (path === undefined) return [];
    this.uriByPath.delete(path);
    // From here on the disk speaks again.
    return this.textChanged(uri, path, true);
  }

  /** Nobody types any more: whether more is found in a text than was said. */
  rested(uri: Uri): boolean {
    const snapshot = this.open.get(uri);
    if (snapshot?.holdsBack !== true) return false;
    this.open.set(uri, snapshot.refreshed());
    return true;
  }

  /** Files were changed, made or deleted on disk; of those that are open, what is typed counts. */
  filesChanged(paths: readonly string[]): readonly Uri[] {
    const closed = paths.filter((path) => !this.uriByPath.has(path));
    for (const path of paths) {
      // One that is open may have come or gone.
      this.houses.forget(path);
      this.folders.forget(path);
    }
    return [...new Set([...this.rehouse(), ...this.refresh(closed), ...paths.flatMap((path) => this.saved(path))])];
  }

  /** An open file was saved, perhaps in another encoding. */
  private saved(path: string): readonly Uri[] {
    const uri = this.uriByPath.get(path);
    const snapshot = uri === undefined ? undefined : this.open.get(uri);
    if (uri === undefined || snapshot === undefined) return [];
    const encoding = this.encodingOnDisk(path);
    if (JSON.stringify(encoding) === JSON.stringify(snapshot.encoding)) return [];
    this.open.set(uri, snapshot.inEncoding(encoding));
    return [uri];
  }

  /** What the file is written in, where that is not UTF-8. An editor that opens it so as well saves it broken. */
  private encodingOnDisk(path: string): OtherEncoding | undefined {
    this.disk.read(path);
    return this.encodingOf(path);
  }

  /** As it was when the file was last read. */
  private encodingOf(path: string): OtherEncoding | undefined {
    const fault = this.disk.faultOf?.(path);
    return fault?.kind === 'encoding' ? fault.encoding : undefined;
  }

  /** The files that are known to lie in a folder, or to have lain there. */
  knownIn(folder: string): readonly string[] {
    const house = this.disk.join(folder, 'quern.json');
    const known = this.knownPaths().filter((path) => liesIn(path, folder));
    return known.length === 0 ? [] : [...known, house];
  }

  /** The names of the folders that hold what is known, from the open folders downwards. */
  folderNames(): readonly string[] {
    const names = this.knownPaths().flatMap((path) => {
      const root = this.roots.find((of) => liesIn(path, of));
      const above = path
        .slice(root?.length ?? 0)
        .split(/[\\/]+/)
        .slice(0, -1);
      return root === undefined ? above.slice(-1) : above;
    });
    return [...new Set(names)].filter((name) => name !== '').sort();
  }

  /** Of the index, open ones, and what those build on. None is looked for. */
  private knownPaths(): readonly string[] {
    const built = [...this.open.values()].flatMap(({ written }) => written?.files ?? []);
    return [...new Set([...this.folders.knownPaths(), ...this.uriByPath.keys(), ...built])];
  }

  /** Everything on disk may be different. */
  diskChanged(): readonly Uri[] {
    this.houses = this.newHouses();
    this.folders.forgetAll();
    const saved = [...this.uriByPath.keys()].flatMap((path) => this.saved(path));
    return [...new Set([...this.rehouse(), ...this.refresh(), ...saved])];
  }

  configured(settings: Settings): readonly Uri[] {
    if (JSON.stringify(settings) === JSON.stringify(this.settings)) return [];
    this.settings = settings;
    this.houses = this.newHouses();
    return this.rehouse();
  }

  /** What could not be used of the house of a file. */
  problems(uri: Uri): readonly string[] {
    return this.houses.of(this.pathOf(uri)).problems;
  }

  /** The mistakes of every `quern.json` at hand, by its path. */
  houseFaults(): ReadonlyMap<string, readonly PlacedFault[]> {
    const paths = [...this.roots, ...this.uriByPath.keys()];
    const folders = new Set(paths.flatMap((path) => this.disk.houseAbove(path) ?? []));
    return new Map(
      [...folders].map((folder) => {
        const path = this.disk.join(folder, 'quern.json');
        return [path, placedFaults(this.disk.read(path) ?? '{}')];
      }),
    );
  }

  /** What could not be used of the foods that an open file describes, on their names. */
  foodFaults(uri: Uri): readonly FoodFault[] {
    const { foodProblems } = this.houses.of(this.pathOf(uri));
    const blocks = this.open.get(uri)?.outline.foods ?? [];
    if (foodProblems.length === 0) return [];
    return blocks.flatMap(({ at, lines }) => {
      const statement = lines[0]?.statement;
      const name = statement?.kind === 'food' ? statement.name : undefined;
      return name === undefined
        ? []
        : foodProblems
            .filter(({ food }) => food === name.text)
            .map(({ words }) => ({ words, line: at, start: name.start, end: name.end }));
    });
  }

  /** The other files whose `food` blocks hold for an open text, the nearest last. */
  foodOutlines(uri: Uri): readonly Outline[] {
    const path = this.pathOf(uri);
    return path === undefined ? [] : this.houses.foodOutlines(path);
  }

  /** Whether the house of a file leaves it out of what is checked as a folder. */
  leavesOut(path: string): boolean {
    return isLeftOut(path, this.disk.houseAbove(path), this.houses.of(path).settings.ignore);
  }

  /** A file's URI, as the editor spells it where it is open. */
  uriAt(path: string): Uri {
    return this.uriByPath.get(path) ?? this.uriOf(path);
  }

  /** The document itself where it is open, those that build on it, and where its foods changed all of its house. */
  private textChanged(uri: Uri, path: string | undefined, foodsMayDiffer: boolean): readonly Uri[] {
    const dirty = new Set(this.open.has(uri) ? [uri] : []);
    if (path === undefined) return [...dirty];
    this.folders.edited(path);
    if (foodsMayDiffer && this.houses.forget(path)) for (const other of this.rehouse()) dirty.add(other);
    for (const other of this.refresh([path], uri)) dirty.add(other);
    return [...dirty];
  }

  /** Asked of a text that lies on the disk. */
  private whereOn<T>(from: string, ask: (path: string) => T): T | undefined {
    const path = this.uriByPath.has(from) ? from : this.pathOf(from);
    return path === undefined ? undefined : ask(path);
  }

  /** Writes out anew what builds on the files, or on one that was missing; on any file where none is given. */
  private refresh(paths?: readonly string[], but?: Uri): readonly Uri[] {
    const dirty: Uri[] = [];
    for (const [uri, snapshot] of this.open) {
      if (uri === but || !(isBuiltOn(snapshot, paths) || showsOneOf(snapshot, paths))) continue;
      this.open.set(uri, snapshot.refreshed());
      dirty.push(uri);
    }
    return dirty;
  }

  private rehouse(): readonly Uri[] {
    const dirty: Uri[] = [];
    for (const [uri, snapshot] of this.open) {
      const { house } = this.houses.of(this.pathOf(uri));
      if (house === snapshot.house) continue;
      this.open.set(uri, snapshot.inHouse(house));
      dirty.push(uri);
    }
    return dirty;
  }

  private newHouses(): Houses {
    return new Houses(this.typedOver(), this.settings, {
      roots: () => this.roots,
      atHand: () => this.index().paths(),
    });
  }

  /** The disk, with open texts in the place of what was saved. */
  private typedOver(): Files {
    const { disk } = this;
    const openAt = (path: string) => this.open.get(this.uriByPath.get(path) ?? '');
    return {
      ...disk,
      read: (path) => openAt(path)?.text ?? disk.read(path),
      faultOf: (path) => (openAt(path) === undefined ? disk.faultOf?.(path) : undefined),
    };
  }
}

/** Whether a text builds on one of the files, or on one that was missing; on any file where none is given. */
function isBuiltOn({ written }: Snapshot, paths: readonly string[] | undefined): boolean {
  if (written === undefined || paths === undefined) return written !== undefined;
  return written.files.some((file) => paths.includes(file)) || written.broken.some((link) => MISSING.has(link.kind));
}

/** Whether a text shows pictures, one of which may have come or gone. */
const showsOneOf = ({ outline }: Snapshot, paths: readonly string[] | undefined): boolean =>
  (paths === undefined || paths.some(isPicture)) && picturesOf(outline).length > 0;

function sameBlocks(a: readonly Block[], b: readonly Block[]): boolean {
  return (
    a.length === b.length &&
    a.every(({ lines }, i) => {
      const others = b[i]?.lines ?? [];
      return lines.length === others.length && lines.every((line, k) => line === others[k]);
    })
  );
}
