/**
 * Knows where the pictures of a recipe lie: files of its house, looked for by name and never opened.
 * Refuses whatever lies elsewhere, and to fetch anything.
 */
import { distance } from 'fastest-levenshtein';
import type { PictureFile } from '../checks/check.ts';
import { PICTURE_ENDINGS } from '../notation/picture-endings.ts';
import type { Bases, Files } from './ports.ts';

/** Names that near are offered for one that is not there. */
const MOST_NEAR = 3;
const MOST_APART = 3;

/** More pictures than a kitchen names. */
const MOST_KEPT = 10_000;

export const isPicture = (path: string): boolean =>
  PICTURE_ENDINGS.includes(path.slice(path.lastIndexOf('.') + 1).toLowerCase());

type Pictures = Required<Pick<Bases, 'picture' | 'pictureNames' | 'forgetPictures'>>;

/** Looks each up once until it is told to forget; a `Files` that lists no names knows of no picture. */
export function picturesOver(files: Files, mayTake: (from: string, path: string) => boolean): Partial<Pictures> {
  const { namesIn } = files;
  if (namesIn === undefined) return {};
  const names = new Map<string, readonly string[] | undefined>();
  const found = new Map<string, PictureFile | undefined>();

  const listed = (folder: string): readonly string[] | undefined => {
    if (!names.has(folder)) names.set(folder, namesIn(folder));
    return names.get(folder);
  };
  const look = (from: string, file: string): PictureFile | undefined => {
    const path = files.beside(from, file);
    if (!mayTake(from, path)) return { kind: 'outside' };
    const [folder, name] = parted(file);
    const there = listed(folderOf(files, from, folder));
    if (there === undefined) return undefined;
    if (there.includes(name)) return { kind: 'there', path };
    return { kind: 'missing', near: nearest(name, there).map((near) => folder + near) };
  };

  return {
    picture: (from, file) => {
      const key = `${from}\n${file}`;
      if (!found.has(key)) {
        const state = look(from, file);
        if (found.size >= MOST_KEPT) found.clear();
        found.set(key, state);
      }
      return found.get(key);
    },
    pictureNames: (from, begun) => {
      const [folder] = parted(begun);
      const path = folderOf(files, from, folder);
      if (!mayTake(from, files.join(path, 'picture'))) return [];
      // What was begun may have been put there a moment ago.
      return (namesIn(path) ?? [])
        .filter((name) => isPicture(name) || (name.endsWith('/') && !name.startsWith('.') && name !== 'node_modules/'))
        .map((name) => folder + name);
    },
    forgetPictures: () => {
      names.clear();
      found.clear();
    },
  };
}

/** `pictures/` and `tart.jpg` */
function parted(file: string): readonly [folder: string, name: string] {
  const at = Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1;
  return [file.slice(0, at), file.slice(at)];
}

const folderOf = (files: Files, from: string, folder: string): string =>
  files.beside(from, folder === '' ? '.' : folder);

/** Pictures of nearly that name, or of that name with another ending. */
function nearest(name: string, there: readonly string[]): readonly string[] {
  const far = (other: string): number =>
    stem(other) === stem(name)
      ? 0
      : Math.abs(other.length - name.length) > MOST_APART
        ? Number.POSITIVE_INFINITY
        : distance(other.toLowerCase(), name.toLowerCase());
  return there
    .filter(isPicture)
    .map((other) => ({ other, far: far(other) }))
    .filter(({ far }) => far <= MOST_APART)
    .sort((a, b) => a.far - b.far)
    .slice(0, MOST_NEAR)
    .map(({ other }) => other);
}

const stem = (name: string): string => name.slice(0, name.lastIndexOf('.')).toLowerCase();
