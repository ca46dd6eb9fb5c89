/**
 * Knows the recipes of a folder for as long as they are looked at: each worked out when it is asked for, and again once it, its house, or what
 * it may build on is another.
 * Refuses every file that is no recipe of the folder.
 */
import type { Houses } from '../workspace/houses.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { housesFor, inputAt, isIgnored, snapshotOf } from './inputs.ts';
import { type Io, UsageError } from './io.ts';
import type { Web } from './web.ts';

interface Kept {
  readonly own: string;
  readonly all: string;
  readonly house: string;
  readonly snapshot: Snapshot;
}

export class Shelf {
  readonly folder: string;
  private readonly io: Io;
  private readonly web: Web;
  private houses: Houses;
  /** By the path from the folder on, with `/` between. */
  private byName = new Map<string, string>();
  private readonly kept = new Map<string, Kept>();
  private all = '';
  private house = '';

  constructor(folder: string, io: Io, web: Web) {
    this.folder = folder;
    this.io = io;
    this.web = web;
    this.houses = housesFor(io);
  }

  /** Looks at the folder anew; a word that is another once anything in it is. */
  look(): string {
    const { io } = this;
    const paths = io.files.recipesBelow(this.folder).filter((path) => !isIgnored(path, io, this.houses));
    this.byName = new Map(paths.map((path) => [this.nameOf(path), path]));
    const inHouses = new Set(
      paths.flatMap((path) => {
        const house = io.files.houseAbove(path);
        return [...this.houses.foodFiles(path), ...(house === undefined ? [] : [io.files.join(house, 'quern.json')])];
      }),
    );
    const house = this.web.sumOf([...inHouses]);
    const all = this.web.sumOf([...paths, ...inHouses]);
    if (all !== this.all || house !== this.house) {
      // What was read of houses and bases may be old.
      this.houses = housesFor(io);
      this.houses.opened(this.folder);
    }
    this.all = all;
    this.house = house;
    return all;
  }

  /** The recipes, in the order of their paths. */
  names(): readonly string[] {
    return [...this.byName.keys()].filter((name) => this.snapshot(name)?.outline.recipe !== undefined);
  }

  pathOf(name: string): string | undefined {
    return this.byName.get(name);
  }

  /** Undefined where there is no such recipe, or its file cannot be read. */
  snapshot(name: string): Snapshot | undefined {
    const path = this.byName.get(name);
    if (path === undefined) return undefined;
    const own = this.web.sumOf([path]);
    const kept = this.kept.get(name);
    if (kept !== undefined && kept.own === own && this.isAsKept(kept)) return kept.snapshot;
    try {
      const snapshot = snapshotOf(inputAt(path, name, this.io, this.folder), this.houses);
      this.kept.set(name, { own, all: this.all, house: this.house, snapshot });
      return snapshot;
    } catch (error) {
      if (error instanceof UsageError) return undefined;
      throw error;
    }
  }

  /** A recipe that builds on no other hangs on its house alone. */
  private isAsKept({ all, house, snapshot }: Kept): boolean {
    return all === this.all || (house === this.house && snapshot.whole === snapshot && snapshot.isWhole);
  }

  /** Of a path in the folder. */
  nameOf(path: string): string {
    return path
      .slice(this.folder.length)
      .split(/[\\/]/)
      .filter((part) => part !== '')
      .join('/');
  }
}
