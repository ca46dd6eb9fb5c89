/**
 * Knows every recipe that lies in the folders at hand, as one index over them all.
 * Refuses to know which of them are open, and what any recipe comes to.
 */
import { type Entry, Folder, type Link } from './folder.ts';
import { MOST_BESIDE } from './limits.ts';
import type { Files } from './ports.ts';

export class Folders {
  private readonly files: Files;
  private readonly byRoot = new Map<string, Folder>();
  private current: readonly Folder[] = [];

  constructor(files: Files) {
    this.files = files;
  }

  /** The folders to look in; one that lies in another is part of it. Those `beside` a file alone nobody opened. */
  lookIn(roots: readonly string[], beside: readonly string[] = []): this {
    const all = [...roots, ...beside];
    const outer = [...new Set(all)].filter((root) => !all.some((other) => other !== root && liesIn(root, other)));
    this.current = outer.map((root) => {
      const folder =
        this.byRoot.get(root) ?? new Folder(this.files, root, roots.includes(root) ? undefined : MOST_BESIDE);
      this.byRoot.set(root, folder);
      return folder;
    });
    return this;
  }

  /** How many files it holds what they say of. */
  get size(): number {
    return [...this.byRoot.values()].reduce((sum, folder) => sum + folder.size, 0);
  }

  entries(): readonly Entry[] {
    return this.current.flatMap((folder) => folder.entries());
  }

  paths(): readonly string[] {
    return this.current.flatMap((folder) => folder.allPaths());
  }

  knownPaths(): readonly string[] {
    return [...this.byRoot.values()].flatMap((folder) => folder.knownPaths());
  }

  /** Any file, wherever it lies. */
  entry(path: string): Entry | undefined {
    const folder = this.current.find(({ root }) => liesIn(path, root)) ?? this.current[0];
    return folder?.entry(path);
  }

  text(path: string): string | undefined {
    return this.files.read(path);
  }

  /** The files that build on a file, with the line where they say so. */
  usersOf(path: string): readonly { readonly entry: Entry; readonly link: Link }[] {
    return this.current.flatMap((folder) => folder.usersOf(path));
  }

  /** What a file says was changed; which files there are was not. */
  edited(path: string): void {
    for (const folder of this.byRoot.values()) folder.edited(path);
  }

  /** A file was changed, made or deleted. */
  forget(path: string): void {
    for (const folder of this.byRoot.values()) folder.forget(path);
  }

  forgetAll(): void {
    this.byRoot.clear();
    this.current = [];
  }
}

/** Whether a path is a folder's own or below it. */
export function liesIn(path: string, folder: string): boolean {
  const bare = folder.replace(/[\\/]+$/, '');
  return path === folder || path === bare || path.startsWith(`${bare}/`) || path.startsWith(`${bare}\\`);
}
