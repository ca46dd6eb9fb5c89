/**
 * Knows what the workspace needs of the machine it runs on; `host/` fulfils it.
 */
import type { OtherEncoding, PictureFile } from '../checks/check.ts';

export type { OtherEncoding };

/** Why a file that is there is not read, or not as UTF-8. */
export type ReadFault =
  | { readonly kind: 'encoding'; readonly encoding: OtherEncoding }
  /** `why` stands after `cannot be read: `. */
  | { readonly kind: 'refused'; readonly why: string };

/** `why` stands after `is left out: `. */
export type LeftOut = (path: string, why: string) => void;

export interface Files {
  /** The text of a file without its byte order mark, or undefined when it cannot be read. */
  read(path: string): string | undefined;
  /** What was wrong when a file was last read; undefined where nothing was, or it is not there. */
  faultOf?(path: string): ReadFault | undefined;
  /**
   * Every `.quern` file below a folder, sorted, without what git ignores; of a folder that holds more than `most` files and folders,
   * those that were met by then. `leftOut` is told what else might hold one, and why it was not looked at.
   */
  recipesBelow(folder: string, most?: number, leftOut?: LeftOut): readonly string[];
  /** Whether a folder held more than was looked at when its recipes were last asked for. */
  holdsMore?(folder: string): boolean;
  /** The nearest folder, from a file or folder upwards, that holds `quern.json`, else `foods.quern`; undefined when none does. */
  houseAbove(path: string): string | undefined;
  /** The folder furthest up, from a file or folder, that holds `quern.json`. Absent where there is one house at most. */
  outermostHouse?(path: string): string | undefined;
  /** A path with its links followed. Absent where there are none. */
  real?(path: string): string;
  /**
   * The names of what lies in a folder, those of folders with a `/` behind them; the first of very many, none of one that cannot be read;
   * undefined where nobody can look.
   */
  namesIn?(folder: string): readonly string[] | undefined;
  join(folder: string, name: string): string;
  /** The path of a file named from another one: `../pastry/base.quern`. */
  beside(path: string, name: string): string;
}

/** Files of a folder that only the client can look at, as it hands them in. */
export interface HandedIn {
  /** What there is, in any order: a recipe or a house's settings with its text or why there is none, anything else by its name. */
  readonly files: readonly HandedFile[];
  /** Files and folders that are there no more. */
  readonly gone: readonly string[];
  /** Folders that hold more than was looked at. */
  readonly larger: readonly string[];
}

export interface HandedFile {
  readonly path: string;
  readonly text?: string;
  readonly fault?: ReadFault;
}

export interface Loaded {
  readonly path: string;
  readonly text: string;
}

/** A file that is not built on: it lies outside the house, or cannot be read; `why` stands after its name. */
export type Refused = { readonly kind: 'outside' } | { readonly kind: 'unreadable'; readonly why: string };

/** What a file builds on, found from where it lies. */
export interface Bases {
  /** The file named in a `from` line of another, by habit the same object until its text is another; undefined when it is not there. */
  load(fromPath: string, file: string): Loaded | undefined;
  /** Why `load` gives nothing for a file; undefined where it is simply not there. */
  why?(fromPath: string, file: string): Refused | undefined;
  /** Files that could have been meant, as they would be written there. */
  near?(fromPath: string, file: string): readonly string[];
  /** The picture that a file names; undefined where nobody can look. */
  picture?(fromPath: string, file: string): PictureFile | undefined;
  /** Pictures may have come or gone. */
  forgetPictures?(): void;
  /** Pictures and folders that go on from a name that is begun, as they would be written there. */
  pictureNames?(fromPath: string, begun: string): readonly string[];
  /** The path of a text that is known by a URI, as its bases would give it. */
  pathOf?(uri: string): string | undefined;
}
