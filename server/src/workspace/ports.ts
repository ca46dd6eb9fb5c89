/**
 * Knows what the workspace needs of the machine it runs on; `host/` fulfils it.
 */

export interface Files {
  /** The text of a file, or undefined when it cannot be read. */
  read(path: string): string | undefined;
  /** Every `.quern` file below a folder, sorted, without what git ignores. */
  recipesBelow(folder: string): readonly string[];
  /** The nearest folder, from a file or folder upwards, that holds `quern.json`; undefined when none does. */
  houseAbove(path: string): string | undefined;
  join(folder: string, name: string): string;
}
